package seats

import "math/cmplx"

// Bound returns what no processing of groups of drivers can beat at any seat, whatever phase
// each channel has at each frequency: each seat as if it were alone, with all channels in
// phase there,
//
//	r(p,f) = (sum over channels of |sum over its drivers of P(p,d,f)|)^2 / (sum over drivers of |P(p,d,f)|)^2
//
// so that Worst, Mean, and each loss of a seat are the least there can be. Between is that of
// these losses, and no bound. gain as in Judge, whose signs do not count.
func (f *Field) Bound(groups [][]int, gain []float64) Figures {
	if gain != nil && len(gain) != len(groups) {
		panic("seats: lengths differ")
	}
	return f.shares(groups, gain, inPhase)[0]
}

// inPhase is the share with all channels in phase.
func inPhase(_ int, channel []complex128) float64 {
	sum := 0.0
	for _, v := range channel {
		sum += cmplx.Abs(v)
	}
	return sum * sum
}
