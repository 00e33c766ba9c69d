package box

import (
	"math"

	"pappus/layout/prose"

	"gonum.org/v1/gonum/optimize"
)

// Vented is a box with a resistive vent: an opening filled with felt, foam or
// cloth that lets air through slowly. Fill it by Damp.
type Vented struct {
	Driver     Driver
	Number     int     // of drivers
	Volume     float64 // m3
	Air        Air
	Resistance float64 // Pa s/m3, of all of the vent
	Q          float64 // of the pair of complex poles
	Resonance  float64 // Hz, of that pair
}

// Damp finds the greatest resistance of a vent that brings the Q of n drivers in
// one box of a volume in m3 down to a target: the one that is nearest to the
// closed box. It takes Fs, Qts and Vas.
//
// Errors wrap [ErrMissing], [ErrValue] and [ErrTarget]: the target is no less
// than the closed box's Q, or less than any vent gives; the message says what
// the least is. A target under 0.5 is out of reach: the poles are no pair there.
func Damp(d Driver, n int, volume, q float64, a Air) (Vented, error) {
	if err := a.check(); err != nil {
		return Vented{}, err
	}
	c, err := Close(d, n, volume)
	if err != nil {
		return Vented{}, err
	}
	if !(q < c.Q) {
		return Vented{}, prose.Errorf("%w: the closed box has %.3g already, which is not above %g", ErrTarget, c.Q, q)
	}
	tau, least := greatest(d.Qts, c.Alpha, q)
	if math.IsNaN(tau) {
		return Vented{}, prose.Errorf("%w: no vent brings it below %.3g, to %g", ErrTarget, least, q)
	}
	v := Vented{Driver: d, Number: n, Volume: volume, Air: a}
	v.Resistance = tau * a.Stiffness() / (2 * math.Pi * d.Fs * volume)
	w, got := pair(d.Qts, c.Alpha, tau)
	v.Q, v.Resonance = got, d.Fs*w
	return v, nil
}

// Vents of a tau from 1/widest to widest are looked at, this many for each
// factor of e.
const (
	widest = 1e5
	fine   = 16
)

// greatest returns the greatest tau at which Q is a target, or NaN and the
// least Q that there is.
func greatest(qts, alpha, target float64) (tau, least float64) {
	of := func(logTau float64) float64 {
		_, q := pair(qts, alpha, math.Exp(logTau))
		return q
	}
	high := math.Log(widest)
	at := high
	least = of(high)
	for l := high; l > -high; l -= 1.0 / fine {
		if q := of(l); q < least {
			least, at = q, l
		}
		if least <= target {
			break
		}
	}
	if least > target {
		at, least = lowest(of, at)
	}
	target = max(target, 0.5)
	if least > target {
		return math.NaN(), least
	}
	low := at
	for range 100 {
		if middle := (low + high) / 2; of(middle) > target {
			high = middle
		} else {
			low = middle
		}
	}
	return math.Exp(low), least
}

// lowest refines where a function is least.
func lowest(of func(float64) float64, at float64) (x, least float64) {
	r, err := optimize.Minimize(optimize.Problem{Func: func(x []float64) float64 { return of(x[0]) }},
		[]float64{at}, nil, &optimize.NelderMead{SimplexSize: 1.0 / fine})
	if err != nil || r == nil {
		return at, of(at)
	}
	return r.X[0], r.F
}

// pair returns the frequency, over that of the driver, and the Q of the two
// poles of the vented box that are left beside a real one. Of three real poles
// the two nearest to each other are the pair.
func pair(qts, alpha, tau float64) (w, q float64) {
	a3, a2, a1 := tau, 1+tau/qts, 1/qts+tau*(1+alpha)
	at := func(s float64) float64 { return ((a3*s+a2)*s+a1)*s + 1 }
	// All coefficients are above 0, so that real poles are below 0, and none is
	// beyond the sum of their sizes over the first.
	low, high := -(1 + (a2+a1+1)/a3), 0.0
	for range 200 {
		if middle := (low + high) / 2; at(middle) > 0 {
			high = middle
		} else {
			low = middle
		}
	}
	root := (low + high) / 2
	// a3 s3 + a2 s2 + a1 s + 1 = (s - root)(a3 s2 + b s + c)
	c := -1 / root
	b := (a1 - c) / -root
	if math.Abs(a3*root) > math.Abs(a2)/2 {
		b = a2 + a3*root
	}
	return math.Sqrt(c / a3), math.Sqrt(a3*c) / b
}

// Flow returns the volume velocities, in m3/s, of all cones and of the vent for a
// voltage at each driver and a frequency in Hz: RMS for RMS, peak for peak. It
// takes Re, BL, Mms and Sd too; complete the driver. Errors wrap [ErrMissing]
// and [ErrValue].
func (v Vented) Flow(volt, hz float64) (cones, vent float64, err error) {
	d := v.Driver
	if err := d.need("Fs", "Qms", "Vas", "Re", "BL", "Mms", "Sd"); err != nil {
		return 0, 0, err
	}
	if err := positive("frequency in Hz", hz); err != nil {
		return 0, 0, err
	}
	n, w, ws := float64(v.Number), 2*math.Pi*hz, 2*math.Pi*d.Fs
	cas, cab := d.Vas/v.Air.Stiffness(), v.Volume/v.Air.Stiffness()
	j := complex(0, w)
	driver := complex(d.BL*d.BL/(d.Re*d.Sd*d.Sd)+1/(ws*d.Qms*cas), 0) + j*complex(1/(ws*ws*cas), 0) + 1/(j*complex(cas, 0))
	box := 1 / (j*complex(cab, 0) + complex(1/v.Resistance, 0))
	one := complex(volt*d.BL/(d.Re*d.Sd), 0) / (driver + complex(n, 0)*box)
	return n * abs(one), n * abs(one*box) / v.Resistance, nil
}

func abs(z complex128) float64 { return math.Hypot(real(z), imag(z)) }

// Vent is a vent as it is built: equal round holes.
type Vent struct {
	Radius float64 // m, of one hole
	Number int
	Depth  float64 // m, of the hole
}

// Area returns the area of all holes in m2.
func (v Vent) Area() float64 { return float64(v.Number) * math.Pi * v.Radius * v.Radius }

// Holes returns the least number of holes of a radius in m that have an area in
// m2, or 0 where that is no number.
func Holes(area, radius float64) int {
	n := math.Ceil(area/(math.Pi*radius*radius) - 1e-9)
	if !(n > 0) || n > 1e9 {
		return 0
	}
	return int(n)
}

// Specific returns the flow resistance, in Pa s/m, that a sheet over all holes
// must have for a vent of a resistance in Pa s/m3. Sheets lie in series:
// divide it by that of one to find how many.
func (v Vent) Specific(resistance float64) float64 { return resistance * v.Area() }

// Velocity returns the speed of the air in m/s for a volume velocity in m3/s.
// Common practice: keep a bare opening below 17 m/s peak, a twentieth of the
// speed of sound; and one behind felt below 1 m/s, over which its resistance
// is no longer the same for loud and soft.
func (v Vent) Velocity(flow float64) float64 { return flow / v.Area() }

// MassRatio returns the reactance of the air that moves in the holes over a
// resistance in Pa s/m3 at a frequency in Hz. Where it is not far below 1 at the
// system's resonance the vent is a port, not a resistance: make more of the
// area, or more and smaller holes. The mass is that of the depth and an end of
// 0.85 radii at each side (Beranek and Mellow, for a hole in a wide wall).
func (v Vent) MassRatio(resistance, hz float64, a Air) float64 {
	mass := a.Density * (v.Depth + 2*0.85*v.Radius) / v.Area()
	return 2 * math.Pi * hz * mass / resistance
}

// GapRatio returns the free area at the edge of a stand, all round a body of a
// perimeter in m at its foot and a gap below it in m, over a vent's area: what
// feeds a vent in the base. Common practice: at least 1, better 2; legs and
// cables take some of it.
func (v Vent) GapRatio(perimeter, gap float64) float64 { return perimeter * gap / v.Area() }
