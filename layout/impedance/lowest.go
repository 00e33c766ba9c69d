package impedance

import (
	"math"
	"math/cmplx"
)

// perOctave is how closely Lowest looks before it closes in: a dip of any
// driver is much wider.
const perOctave = 48

// Lowest returns the lowest magnitude of the load, in ohm, that a bank of equal
// drivers makes from low to high Hz, and where. It looks at 48 frequencies in
// each octave, and at those of a measured table, and closes in on the lowest by
// golden section, to a millionth of its frequency. Both frequencies must be above 0 and low below high; else it
// panics.
func (b Bank) Lowest(c Curve, low, high float64) (hz, ohm float64) {
	if !(0 < low && low < high) || math.IsInf(high, 0) {
		panic("impedance: frequencies must be above 0 and rise")
	}
	size := func(log float64) float64 {
		z := c.At(math.Exp(log))
		return cmplx.Abs(b.load(func(int) complex128 { return z }))
	}
	from, to := math.Log(low), math.Log(high)
	steps := int(math.Ceil((to-from)/math.Ln2*perOctave)) + 1
	step := (to - from) / float64(steps)
	at, least := from, size(from)
	look := func(x float64) {
		if z := size(x); z < least {
			at, least = x, z
		}
	}
	for i := 1; i <= steps; i++ {
		look(from + step*float64(i))
	}
	for _, n := range c.node { // a table may have a kink between two looks
		if n.log > from && n.log < to {
			look(n.log)
		}
	}
	look(golden(size, max(from, at-step), min(to, at+step)))
	return math.Exp(at), least
}

// golden returns where a function of one dip is least, to 1e-6.
func golden(f func(float64) float64, low, high float64) float64 {
	const ratio = 0.6180339887498949
	a, b := high-ratio*(high-low), low+ratio*(high-low)
	fa, fb := f(a), f(b)
	for high-low > 1e-6 {
		if fa < fb {
			high, b, fb = b, a, fa
			a = high - ratio*(high-low)
			fa = f(a)
		} else {
			low, a, fa = a, b, fb
			b = low + ratio*(high-low)
			fb = f(b)
		}
	}
	return (low + high) / 2
}
