package crossover

import (
	"math"
	"math/cmplx"
)

// IsOpposed tells whether two filters work against each other where they meet,
// half way in log frequency between their corners, so that inverting the
// polarity of one gives the louder sum. For two filters of a family and order
// that share a corner it is so for Butterworth and Linkwitz-Riley of order 2 and
// 6. A quarter turn, as for odd orders, counts as not.
func IsOpposed(a, b Filter) bool {
	hz := math.Sqrt(a.corner * b.corner)
	x, y := a.Response(hz), b.Response(hz)
	return real(x*cmplx.Conj(y)) < -1e-9*cmplx.Abs(x)*cmplx.Abs(y)
}

// Sum fills dst with the sum of two filters at frequencies in Hz, b inverted if
// invert is true: what is heard where both arrive in step. It panics where the
// lengths differ and allocates nothing.
func Sum(dst []complex128, a, b Filter, invert bool, frequency []float64) {
	if len(dst) != len(frequency) {
		panic("crossover: lengths differ")
	}
	sign := complex(1, 0)
	if invert {
		sign = -1
	}
	for i, hz := range frequency {
		dst[i] = a.Response(hz) + sign*b.Response(hz)
	}
}
