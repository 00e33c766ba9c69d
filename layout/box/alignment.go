package box

import (
	"errors"
	"math"
	"math/cmplx"

	"pappus/layout/prose"
	"pappus/layout/solve"

	"gonum.org/v1/gonum/mat"
)

// ErrTarget is a Q that no vent gives.
var ErrTarget = errors.New("the Q that is asked for is out of reach")

// Room is what of a body's volume drivers share. All in m3.
type Room struct {
	Gross, Walls, Drivers, Braces float64
	Net                           float64
	Share                         float64 // of each driver
}

// ErrFull is a body that nothing is left of inside.
var ErrFull = errors.New("nothing is left of the volume")

// Divide takes walls, n drivers of a volume each (from the flange back; the
// makers' sheets have it, or take the magnet and the basket for cylinders), and
// braces off a gross volume in m3. ErrFull tells that nothing is left: Net is then what is lacking.
func Divide(gross, walls, driver, braces float64, n int) (Room, error) {
	r := Room{Gross: gross, Walls: walls, Drivers: float64(n) * driver, Braces: braces}
	if r.Net = gross - walls - r.Drivers - braces; !(r.Net > 0) {
		return r, prose.Errorf("%w: %g m3 less %g m3", ErrFull, gross, walls+r.Drivers+braces)
	}
	r.Share = r.Net / float64(n)
	return r, nil
}

// Closed is the low end of drivers in one closed box (Small 1972).
type Closed struct {
	Alpha     float64 // stiffness of the box over that of the drivers
	Resonance float64 // Hz
	Q         float64
	F3        float64 // Hz, where the level is 3 dB (a factor of sqrt 2) down
	Peak      float64 // dB over the level far above; 0 where there is none
	PeakAt    float64 // Hz; +Inf where there is none
}

// Close puts n drivers, alike and in step, on one closed box of a volume in m3.
// It takes Fs, Qts and Vas. Errors wrap [ErrMissing].
func Close(d Driver, n int, volume float64) (Closed, error) {
	if err := d.need("Fs", "Qts", "Vas"); err != nil {
		return Closed{}, err
	}
	alpha := float64(n) * d.Vas / volume
	up := math.Sqrt(1 + alpha)
	c := Closed{Alpha: alpha, Resonance: d.Fs * up, Q: d.Qts * up, PeakAt: math.Inf(1)}
	a := 1/(c.Q*c.Q) - 2
	c.F3 = c.Resonance * math.Sqrt((a+math.Hypot(a, 2))/2)
	if c.Q > math.Sqrt2/2 {
		c.Peak = Hump(c.Q)
		c.PeakAt = c.Resonance / math.Sqrt(1-1/(2*c.Q*c.Q))
	}
	return c, nil
}

// Hump is how far, in dB, the level of a closed box of a Q is above that of high tones where it is highest
// (Small 1972); 0 where it is nowhere above.
func Hump(q float64) float64 {
	if q <= math.Sqrt2/2 {
		return 0
	}
	return 20 * math.Log10(q*q/math.Sqrt(q*q-0.25))
}

// Vented is a box with a resistive vent: an opening filled with felt, foam or
// cloth that lets air through slowly. Fill it by Damp.
type Vented struct {
	Driver     Driver
	Number     int     // of drivers
	Volume     float64 // m3
	Air        Air
	Resistance float64 // Pa s/m3, of all of the vent
	Mass       float64 // kg/m4, of the air in all of the vent; Damp leaves it out
	Q          float64 // of the pair of complex poles; with a mass, as DampHeavy has it
	Resonance  float64 // Hz, of that pair
}

// Damp finds the greatest resistance of a vent that brings the Q of n drivers in
// one box of a volume in m3 down to a target: the one that is nearest to the
// closed box. It takes Fs, Qts and Vas.
//
// Errors wrap [ErrMissing] and [ErrTarget]: the target is no less than the closed
// box's Q, or less than any vent gives; the message says what the least is. A target
// under 0.5 is out of reach: the poles are no pair there.
func Damp(d Driver, n int, volume, q float64, a Air) (Vented, error) {
	return DampHeavy(d, n, volume, q, 0, a)
}

// DampHeavy is Damp with a vent whose air has a mass in kg/m4. That makes a port of it, and Q is
// the greater of two: that of the pair of poles that rings most, and that of a closed box whose
// level is as far above that of high tones where it is highest. For a port may sound where the
// cones no longer do: it can lower every pole's Q and raise the hump.
func DampHeavy(d Driver, n int, volume, q, mass float64, a Air) (Vented, error) {
	c, err := Close(d, n, volume)
	if err != nil {
		return Vented{}, err
	}
	if !(q < c.Q) {
		return Vented{}, prose.Errorf("%w: the closed box has %.3g already, which is not above %g", ErrTarget, c.Q, q)
	}
	if q < leastQ {
		return Vented{}, prose.Errorf("%w: under %g, as %g is, the poles are no pair", ErrTarget, leastQ, q)
	}
	v := Vented{Driver: d, Number: n, Volume: volume, Air: a, Mass: mass}
	tau, least, ok := greatest(d.Qts, c.Alpha, v.port(), q)
	v.Resistance = tau * a.Stiffness() / (2 * math.Pi * d.Fs * volume)
	v.settle(c.Alpha, tau)
	if !ok {
		return v, prose.Errorf("%w: no vent brings it below %.3g, to %g", ErrTarget, least, q)
	}
	return v, nil
}

// With returns the box with another vent: of a resistance in Pa s/m3, whose air has a mass in
// kg/m4.
func (v Vented) With(resistance, mass float64) Vented {
	v.Resistance, v.Mass = resistance, mass
	v.settle(float64(v.Number)*v.Driver.Vas/v.Volume, 2*math.Pi*v.Driver.Fs*resistance*v.Volume/v.Air.Stiffness())
	return v
}

// Heavy is the reactance of the vent's air over its resistance, at the resonance.
func (v Vented) Heavy() float64 { return 2 * math.Pi * v.Resonance * v.Mass / v.Resistance }

// port is the mass in units of 1/(omega_s2 Cab).
func (v Vented) port() float64 {
	w := 2 * math.Pi * v.Driver.Fs
	return w * w * v.Mass * v.Volume / v.Air.Stiffness()
}

// settle finds the resonance and its Q.
func (v *Vented) settle(alpha, tau float64) {
	w, q := pair(v.Driver.Qts, alpha, tau, v.port())
	v.Q, v.Resonance = q, v.Driver.Fs*w
}

// leastQ is the Q of two poles that are one: under it they are real, and each goes its own way.
const leastQ = 0.5

// Vents of a tau from 1/widest to widest are looked at, this many for each
// factor of e.
const (
	widest = 1e5 // free: to spare; the least Q is near 1
	fine   = 16  // free: how closely it looks before it closes in
)

// greatest returns the greatest tau at which Q is a target; where none is so low, that of the
// least Q that there is.
func greatest(qts, alpha, mu, target float64) (tau, least float64, ok bool) {
	of := func(logTau float64) float64 {
		_, q := pair(qts, alpha, math.Exp(logTau), mu)
		return q
	}
	high := math.Log(widest)
	at := high
	least = of(high)
	for l := high; l > -high && least > target; l -= 1.0 / fine {
		if q := of(l); q < least {
			least, at = q, l
		}
	}
	if least > target {
		at = solve.Least(of, at-1.0/fine, at+1.0/fine, 1e-6) // free: how far it closes in
		least = of(at)
	}
	if least > target {
		return math.Exp(at), least, false
	}
	if at < high {
		at, _ = solve.Root(func(l float64) float64 { return of(l) - target }, at, high, 0)
	}
	return math.Exp(at), least, true
}

// pair returns the frequency, over that of the driver, and the Q of the two
// poles of the vented box that are left beside a real one. Of three real poles
// the two nearest to each other are the pair. With a mass, mu, there are four poles: the pair
// of the highest Q, which is 0 of four real ones; or the Q of its hump, where that is higher.
func pair(qts, alpha, tau, mu float64) (w, q float64) {
	v := motion{tau, mu, tau + mu/qts, 1 + tau/qts + mu*(1+alpha), 1/qts + tau*(1+alpha)}
	if mu > 0 {
		w, q = v.highest()
		return w, max(q, v.humped(math.Sqrt(1+alpha)))
	}
	a3, a2, a1 := v.a3, v.a2, v.a1
	// All coefficients are above 0, so that real poles are below 0, and none is
	// beyond the sum of their sizes over the first.
	root, _ := solve.Root(func(s float64) float64 { return ((a3*s+a2)*s+a1)*s + 1 }, -(1 + (a2+a1+1)/a3), 0, 0)
	// a3 s3 + a2 s2 + a1 s + 1 = (s - root)(a3 s2 + b s + c)
	c := -1 / root
	b := (a1 - c) / -root
	if math.Abs(a3*root) > math.Abs(a2)/2 { // free: both are exact; this one loses fewer digits there
		b = a2 + a3*root
	}
	return math.Sqrt(c / a3), math.Sqrt(a3*c) / b
}

// motion is the vented box over the driver's resonance: the coefficients of its poles, the roots of
// a4 s4 + a3 s3 + a2 s2 + a1 s + 1, and tau, of the vent's resistance, as a4 is of its mass.
type motion struct{ tau, a4, a3, a2, a1 float64 }

// highest returns the frequency and the Q of the pair of the highest Q of four poles, which are the
// eigenvalues of their companion matrix.
func (v motion) highest() (w, q float64) {
	// In units in which the product of all roots is 1, so that none is far from it.
	u := math.Sqrt(math.Sqrt(1 / v.a4))
	var eig mat.Eigen
	companion := mat.NewDense(4, 4, []float64{
		-v.a3 / (v.a4 * u), -v.a2 / (v.a4 * u * u), -v.a1 / (v.a4 * u * u * u), -1,
		1, 0, 0, 0, 0, 1, 0, 0, 0, 0, 1, 0})
	if !eig.Factorize(companion, mat.EigenNone) {
		return math.NaN(), math.NaN()
	}
	for _, p := range eig.Values(nil) {
		if at := -cmplx.Abs(p) / (2 * real(p)); imag(p) > 0 && at > q {
			w, q = u*cmplx.Abs(p), at
		}
	}
	return w, q
}

// humped returns the Q of the closed box whose level is as high over that of high tones where it is
// highest; 0 where there is no hump. The closed box's resonance tells how far up it looks.
func (v motion) humped(closed float64) float64 {
	least, most := math.Log(0.2), math.Log(20*closed) // free: far beyond any resonance
	const steps = 120                                 // free: a hump is an octave wide
	level := func(logW float64) float64 { return -v.sounding(math.Exp(logW)) }
	at := least
	for i := 1; i <= steps; i++ {
		if l := least + (most-least)*float64(i)/steps; level(l) < level(at) {
			at = l
		}
	}
	step := (most - least) / steps
	p := -level(solve.Least(level, at-step, at+step, 1e-9)) // free: how far it closes in; the square of how much higher
	if p <= 1 {
		return 0
	}
	return math.Sqrt((p + math.Sqrt(p*(p-1))) / 2) // Small 1972: p = Q4/(Q2 - 1/4)
}

// sounding returns the square of the level of cones and vent together at w, over that far above:
// their flows' difference sounds, since the vent is fed from behind.
func (v motion) sounding(w float64) float64 {
	w2 := w * w
	even := 1 - w2*v.a2 + v.a4*w2*w2
	odd := w * (v.a1 - w2*v.a3)
	return w2 * w2 * w2 * (v.tau*v.tau + v.a4*v.a4*w2) / (even*even + odd*odd)
}

// Flow returns the volume velocities, in m3/s, of all cones and of the vent for a
// voltage at each driver and a frequency in Hz above 0: RMS for RMS, peak for peak. It
// takes Re, BL, Mms and Sd too; complete the driver. Errors wrap [ErrMissing].
func (v Vented) Flow(volt, hz float64) (cones, vent float64, err error) {
	d := v.Driver
	if err := d.need("Fs", "Qms", "Vas", "Re", "BL", "Mms", "Sd"); err != nil {
		return 0, 0, err
	}
	n, w, ws := float64(v.Number), 2*math.Pi*hz, 2*math.Pi*d.Fs
	cas, cab := d.Vas/v.Air.Stiffness(), v.Volume/v.Air.Stiffness()
	j := complex(0, w)
	driver := complex(d.BL*d.BL/(d.Re*d.Sd*d.Sd)+1/(ws*d.Qms*cas), 0) + j*complex(1/(ws*ws*cas), 0) + 1/(j*complex(cas, 0))
	through := complex(v.Resistance, w*v.Mass)
	box := 1 / (j*complex(cab, 0) + 1/through)
	one := complex(volt*d.BL/(d.Re*d.Sd), 0) / (driver + complex(n, 0)*box)
	return n * cmplx.Abs(one), n * cmplx.Abs(one*box) / cmplx.Abs(through), nil
}
