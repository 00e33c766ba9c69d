package measure

import (
	"math"
	"math/cmplx"
)

// Over returns by how much one response is over another, in level, in dB, and in time, in s, over
// frequencies in Hz, whichever way round it is: the level by the energy, and the time by the least
// squares of the phase between both, which may stay within half a turn, weighted by both
// magnitudes. It panics where the lengths differ.
func Over(frequency []float64, h, other []complex128) (level, late float64) {
	var together complex128
	for f, v := range h {
		together += v * cmplx.Conj(other[f])
	}
	sign := complex(math.Copysign(1, real(together)), 0)
	var one, all, turned, square float64
	for f, hz := range frequency {
		a, b := cmplx.Abs(h[f]), cmplx.Abs(other[f])
		one, all = one+a*a, all+b*b
		turned -= a * b * hz * cmplx.Phase(sign*h[f]*cmplx.Conj(other[f]))
		square += a * b * hz * hz * 2 * math.Pi
	}
	return 10 * math.Log10(one/all), turned / square
}
