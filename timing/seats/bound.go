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
	n := len(f.Frequency)
	share := make([][]float64, len(f.Place))
	for p, pressure := range f.Place {
		share[p] = make([]float64, n)
		for i := range n {
			inPhase, inStep := 0.0, 0.0
			for g, drivers := range groups {
				var one complex128
				magnitude, factor := 0.0, 1.0
				for _, d := range drivers {
					one += pressure[d*n+i]
					magnitude += cmplx.Abs(pressure[d*n+i])
				}
				if gain != nil {
					factor = max(gain[g], -gain[g])
				}
				inPhase += factor * cmplx.Abs(one)
				inStep += factor * magnitude
			}
			if inStep > 0 {
				share[p][i] = inPhase * inPhase / (inStep * inStep)
			}
		}
	}
	return f.summed(share)
}
