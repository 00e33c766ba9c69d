package impedancefit_test

import (
	"math"
	"math/cmplx"
	"math/rand/v2"

	"pappus/layout/impedance"
	"pappus/timing/impedancefit"

	"gonum.org/v1/gonum/dsp/fourier"
)

// madeUp is a driver that has what the fitted circuit does not know of.
type madeUp struct {
	mass, cms, rms, bl, re, area float64
	// creep is by how much the suspension is softer a decade lower (M. H. Knudsen and J. G. Jensen,
	// Low-Frequency Loudspeaker Models That Include Suspension Creep, J. Audio Eng. Soc. 41
	// (1993) 3: C0 (1 - creep log10(i omega/omega0)), about 0.1).
	creep, reference float64
	bumps            []bump
	coil             func(s complex128) complex128
	// What differs in a second measurement.
	added, aside, rocks float64 // kg; its distance from the middle, squared over the radius of gyration's; where the cone rocks, rad/s
	box, leak           float64 // m3; Q of the leak at the resonance
	wire                float64 // ohm, a part of Re for whoever measures at its end
}

// bump is a small resonance of cone or surround: ohm at its top.
type bump struct{ hz, q, ohm float64 }

// drawn draws between two values, evenly on a logarithmic scale.
func drawn(random *rand.Rand, low, high float64) float64 {
	return low * math.Pow(high/low, random.Float64())
}

// even draws between two values.
func even(random *rand.Rand, low, high float64) float64 { return low + (high-low)*random.Float64() }

// newMadeUp draws a driver: small ones to woofers, with one of six coils.
func newMadeUp(random *rand.Rand) madeUp {
	fs, qms, qes, re := drawn(random, 50, 400), drawn(random, 1.2, 10), drawn(random, 0.4, 3), drawn(random, 3, 16)
	w := 2 * math.Pi * fs
	d := madeUp{mass: drawn(random, 0.5e-3, 20e-3), re: re, creep: even(random, 0, 0.15), reference: w, wire: even(random, 0, 0.2)}
	d.cms, d.rms = 1/(w*w*d.mass), w*d.mass/qms
	d.bl = math.Sqrt(w * d.mass * re / qes)
	d.area = 6e-4 * math.Pow(d.mass/0.7e-3, 2.0/3)
	for range random.IntN(4) {
		d.bumps = append(d.bumps, bump{drawn(random, 4*fs, 60*fs), drawn(random, 3, 15), re * drawn(random, 0.002, 0.03)})
	}
	d.coil = newCoil(random, re)
	return d
}

// newCoil draws a coil whose reactance at 1 kHz is a hundredth to a fifth of Re: an
// inductance, solid iron, an inductance beside a resistance, Leach's power law (see the package),
// Wright's two powers (J. R. Wright, An Empirical Model for Loudspeaker Motor Impedance, J. Audio
// Eng. Soc. 38 (1990) 749), and one beside both a resistance and iron (K. Thorborg and A. D.
// Unruh, Electrical Equivalent Circuit Model for Dynamic Moving-Coil Transducers Incorporating
// a Semi-Inductor, J. Audio Eng. Soc. 56 (2008) 696). The last two are not among those fitted.
func newCoil(random *rand.Rand, re float64) func(s complex128) complex128 {
	const w = 2 * math.Pi * 1000
	x := re * drawn(random, 0.01, 0.2)
	share := even(random, 0.2, 0.8)
	le, l2 := complex(x*share/w, 0), complex(x*(1-share)/w, 0)
	k, r2 := complex(x*(1-share)/math.Sqrt(w/2), 0), complex(x*drawn(random, 1, 10), 0)
	n, m := even(random, 0.6, 0.75), even(random, 0.6, 0.9)
	return []func(s complex128) complex128{
		func(s complex128) complex128 { return s * complex(x/w, 0) },
		func(s complex128) complex128 { return s*le + k*cmplx.Sqrt(s) },
		func(s complex128) complex128 { return s*le + 1/(1/(s*l2)+1/r2) },
		func(s complex128) complex128 {
			return complex(x/math.Sin(n*math.Pi/2), 0) * cmplx.Pow(s/w, complex(n, 0))
		},
		func(s complex128) complex128 {
			v := imag(s) / w
			return complex(0.6*x*math.Pow(v, n), x*math.Pow(v, m))
		},
		func(s complex128) complex128 { return s*le + 1/(1/(s*l2)+1/r2+1/(k*cmplx.Sqrt(s))) },
	}[random.IntN(6)]
}

// compliance returns that of the suspension, m/N.
func (d madeUp) compliance(s complex128) complex128 {
	return complex(d.cms, 0) * (1 - complex(d.creep, 0)*cmplx.Log(s/complex(d.reference, 0))/math.Ln10)
}

// mechanical returns the mechanical impedance, N s/m.
func (d madeUp) mechanical(s complex128) complex128 {
	w := imag(s)
	m := d.mass
	if d.added > 0 {
		m += d.added * (1 + d.added/d.mass*d.aside/(d.rocks*d.rocks/(w*w)-1))
	}
	z := complex(d.rms, 0) + s*complex(m, 0) + 1/(s*d.compliance(s))
	if d.box > 0 {
		spring := complex(air.Density*air.SoundSpeed*air.SoundSpeed*d.area*d.area/d.box, 0)
		closed := spring / s
		leak := spring * complex(d.leak/d.reference, 0)
		z += closed * leak / (closed + leak)
	}
	return z
}

// at returns the impedance in ohm at its terminals, wire included.
func (d madeUp) at(hz float64) complex128 {
	s := complex(0, 2*math.Pi*hz)
	z := complex(d.re+d.wire, 0) + d.coil(s) + complex(d.bl*d.bl, 0)/d.mechanical(s)
	for _, b := range d.bumps {
		z += impedance.Motional(b.ohm, b.q, hz/b.hz)
	}
	return z
}

// truth are the values that a fit should find: those at the resonance.
type truth struct{ fs, qms, qes, re, cms float64 }

func (d madeUp) truth() truth {
	low, high := 0.3*d.reference, 3*d.reference
	for range 60 {
		w := math.Sqrt(low * high)
		if imag(d.mechanical(complex(0, w))) > 0 {
			high = w
		} else {
			low = w
		}
	}
	// The part of 1/(s C) that is in phase with the velocity is a loss.
	spring := 1 / (complex(0, low) * d.compliance(complex(0, low)))
	re := d.re + d.wire
	return truth{low / (2 * math.Pi), low * d.mass / (d.rms + real(spring)), low * d.mass * re / (d.bl * d.bl), re, -1 / (low * imag(spring))}
}

// tabled measures by a meter: noise that rises towards low frequencies, a scale that is off by
// half a percent, a coil that warms by 2 K at most, and hum in some.
func tabled(at func(hz float64) complex128, random *rand.Rand) []impedance.Point {
	noise, scale, warm := drawn(random, 5e-4, 0.01), 1+0.005*random.NormFloat64(), 0.008*random.Float64()
	hum, mains := 0.0, []float64{50, 60}[random.IntN(2)]
	if random.IntN(3) == 0 {
		hum = drawn(random, 0.01, 0.2)
	}
	points := measure(at, drawn(random, 10, 25), drawn(random, 5000, 20000), 12+random.IntN(36), 0, nil)
	cold := real(at(1e-3))
	for i, p := range points {
		sigma := noise * (1 + math.Sqrt(30/p.Frequency))
		z := at(p.Frequency) + complex(cold*warm*float64(i)/float64(len(points)), 0)
		z *= complex(scale*(1+sigma*random.NormFloat64()), scale*sigma*random.NormFloat64())
		if n := math.Round(p.Frequency / mains); n >= 1 && n <= 5 && math.Abs(p.Frequency/mains/n-1) < 0.01 {
			z *= 1 + cmplx.Rect(hum/n, 2*math.Pi*random.Float64())
		}
		points[i] = impedance.Point{Frequency: p.Frequency, Ohm: cmplx.Abs(z), Degrees: cmplx.Phase(z) * 180 / math.Pi}
	}
	return points
}

// taken records a sweep through a resistor that is off by a percent at most, with hum, white and
// pink noise in both inputs, whose gains differ by a half percent.
func taken(at func(hz float64) complex128, random *rand.Rand) impedancefit.Recording {
	const rate, seconds, low, high = 24000, 4, 20, 10000
	const n = 1 << 17
	series := drawn(random, 4.7, 47)
	exact := series * (1 + 0.01*even(random, -1, 1))
	whole := make([]float64, n)
	for i := range seconds * rate {
		t := float64(i) / rate
		ease := min(1, t/0.05, (seconds-t)/0.02)
		whole[i+rate/2] = 0.4 * ease * math.Sin(2*math.Pi*low*seconds/math.Log(high/low)*(math.Exp(t/seconds*math.Log(high/low))-1))
	}
	fft := fourier.NewFFT(n)
	spectrum := fft.Coefficients(nil, whole)
	for i := range spectrum {
		z := at(max(1, float64(i)*rate/n))
		spectrum[i] *= z / (z + complex(exact, 0)) / n
	}
	driver := fft.Sequence(nil, spectrum)
	gain := 1 + 0.005*random.NormFloat64()
	white, pink, hum, mains := drawn(random, 1e-5, 1e-2), drawn(random, 1e-5, 1e-3), drawn(random, 1e-5, 3e-3), []float64{50, 60}[random.IntN(2)]
	for k, side := range [][]float64{whole, driver} {
		scale := []float64{1, gain}[k]
		phase, slow := 2*math.Pi*random.Float64(), 0.0
		for i := range side {
			slow = 0.998*slow + pink*random.NormFloat64()
			w := 2 * math.Pi * mains * float64(i) / rate
			side[i] = scale * (side[i] + white*random.NormFloat64() + slow + hum*(math.Sin(w+phase)+0.4*math.Sin(3*w+phase)))
		}
	}
	return impedancefit.Recording{Whole: whole, Driver: driver, Rate: rate, SeriesOhm: series, Low: low, High: high}
}

// makes are what may be wrong with a channel.
const (
	sound = iota
	openString
	shortedDriver
	shortedString
	anotherChannel
	leaking
	anotherMake
	makes
)

// channel is strings of drivers that differ, in a box of their own, and what is planned.
type channel struct {
	strings [][]madeUp
	dead    map[[2]int]impedance.State
	feed    float64 // ohm
	planned impedance.Bank
	driver  impedance.Curve
}

// newChannel draws a channel with something wrong.
func newChannel(wrong int, random *rand.Rand) channel {
	base := newMadeUp(random)
	base.wire = 0
	base.box = air.Density * air.SoundSpeed * air.SoundSpeed * base.area * base.area * base.cms / even(random, 0.3, 4)
	base.leak = drawn(random, 20, 200)
	if wrong == leaking {
		base.leak = drawn(random, 1, 5)
	}
	strings, length := 1+random.IntN(5), 1+random.IntN(5)
	for strings*length == 1 {
		strings, length = 1+random.IntN(5), 1+random.IntN(5)
	}
	c := channel{dead: map[[2]int]impedance.State{}, feed: even(random, 0, 0.02) * base.re}
	other := func(n int) (int, int) { // another load by a tenth at least
		for {
			s, l := 1+random.IntN(5), 1+random.IntN(5)
			if math.Abs(math.Log(float64(l*n)/float64(s*length))) > 0.1 {
				return s, l
			}
		}
	}
	lengths := make([]int, strings)
	for i := range lengths {
		lengths[i] = length
	}
	c.planned, _ = impedance.NewBank(lengths, c.feed, 0)
	// A design has what one driver was measured to have, or a data sheet says.
	w := base.truth()
	off := func(by float64) float64 { return math.Exp(by * random.NormFloat64()) }
	c.driver, _ = impedance.New(impedance.Driver{Resonance: w.fs * off(0.05), QMS: w.qms * off(0.1), QES: w.qes * off(0.05), DCOhm: base.re * off(0.015),
		Inductance: max(0, imag(base.coil(complex(0, 2*math.Pi*1000)))/(2*math.Pi*1000)*off(0.2))})
	if wrong == anotherChannel {
		strings, length = other(strings)
	}
	for range strings {
		var one []madeUp
		for range length {
			d := base
			d.re, d.cms, d.rms, d.bl = base.re*off(0.02), base.cms*off(0.1), base.rms*off(0.15), base.bl*off(0.03)
			one = append(one, d)
		}
		c.strings = append(c.strings, one)
	}
	c.breaks(wrong, random)
	return c
}

// breaks does what is wrong with a single driver or string.
func (c *channel) breaks(wrong int, random *rand.Rand) {
	s := random.IntN(len(c.strings))
	d := random.IntN(len(c.strings[s]))
	switch wrong {
	case openString:
		c.dead[[2]int{s, d}] = impedance.Open
	case shortedDriver:
		c.dead[[2]int{s, d}] = impedance.Shorted
	case shortedString:
		for d := range c.strings[s] {
			c.dead[[2]int{s, d}] = impedance.Shorted
		}
	case anotherMake:
		one := &c.strings[s][d]
		by := []float64{0.5, 2}[random.IntN(2)] // 4 or 16 ohm in place of 8
		coil := one.coil
		one.coil = func(s complex128) complex128 { return complex(by, 0) * coil(s) }
		one.re, one.bl, one.cms = one.re*by, one.bl*math.Sqrt(by), one.cms*drawn(random, 0.4, 2.5)
	}
}

// at returns the impedance in ohm at the channel's terminals.
func (c channel) at(hz float64) complex128 {
	var siemens complex128
	for s, one := range c.strings {
		ohm, open := complex(1e-6, 0), false
		for d := range one {
			switch c.dead[[2]int{s, d}] {
			case impedance.Open:
				open = true
			case impedance.Alive:
				ohm += one[d].at(hz)
			}
		}
		if !open {
			siemens += 1 / ohm
		}
	}
	if siemens == 0 {
		return 1e5
	}
	return complex(c.feed, 0) + 1/siemens
}
