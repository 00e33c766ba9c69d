package excursion

import "math"

// Bounded returns the peak voltage over the driver that no signal whatever moves its cone past
// most metres with, one way, with or without a high-pass before it: what a peak limiter behind
// all filters is set to. It is +Inf where the driver is not known or most is endless.
//
// A linear system that is given at most V answers at most V times the integral of the magnitude
// of its impulse response (the bound is reached by a signal of V and -V that follows the signs of
// that response backwards; e.g. Oppenheim and Willsky, Signals and Systems, 2.3.6 on stability).
// For a resonance of second order that integral is the total of all rises and falls of its step
// response, each overshoot r = exp(-pi z / sqrt(1-z^2)) times the one before, z = 1/(2 Qtc):
//
//	1 + 2r + 2r^2 + ... = coth(pi z / (2 sqrt(1-z^2))), and 1 where Qtc <= 1/2
//
// times the excursion under a constant voltage.
func (d Driver) Bounded(most float64) float64 {
	if !d.IsKnown() || !(most > 0) || math.IsInf(most, 1) {
		return math.Inf(1)
	}
	return most / (d.Excursion(0) / math.Sqrt2) * lessThan(d.Q)
}

// lessThan returns by what factor a resonance of a Q answers less, at its worst, to a constant
// voltage than to any that is no greater.
func lessThan(q float64) float64 {
	z := 1 / (2 * q)
	if z >= 1 {
		return 1
	}
	return math.Tanh(math.Pi * z / (2 * math.Sqrt(1-z*z)))
}
