package recording

import (
	"math"
	"math/cmplx"

	"pappus/timing/sweep"

	"gonum.org/v1/gonum/dsp/fourier"
)

// clock returns the recorder's rate by the player's clock: from the time between the
// markers, of which the first begins at a sample. Whatever the sound went through,
// echoes too, is the same in both.
func clock(x []float64, first int, apart float64, width int, rate float64, s sweep.Sweep) float64 {
	slack := int(math.Ceil(clocks*apart)) + 1
	lead, n := width/4, length(2*width+4*slack)
	second := first + int(math.Round(apart))
	fft := fourier.NewFFT(n)
	a := fft.Coefficients(nil, excerpt(x, first-lead, width+2*lead, n))
	b := fft.Coefficients(nil, excerpt(x, second-lead, width+2*lead, n))
	low, high := s.MarkerBand()
	from, to := int(low/rate*float64(n)), min(int(high/rate*float64(n))+1, len(a)-1)
	for k := range a {
		if k < from || k > to {
			b[k] = 0
		}
		b[k] *= cmplx.Conj(a[k])
	}
	best, top := 0, math.Inf(-1)
	for lag, v := range fft.Sequence(nil, b) {
		if lag > n/2 {
			lag -= n
		}
		if v > top && lag >= -slack && lag <= slack {
			best, top = lag, v
		}
	}
	delay := refine(b[from:to+1], from, n, float64(best))
	return rate * (float64(second-first) + delay) / apart
}

// excerpt returns n samples: width of x from a sample on, faded at both ends, and
// zeros.
func excerpt(x []float64, from, width, n int) []float64 {
	out := make([]float64, n)
	edge := width / 8
	for i := range width {
		at := from + i
		if at < 0 || at >= len(x) {
			continue
		}
		out[i] = x[at]
		if near := min(i, width-1-i); near < edge {
			out[i] *= (1 - math.Cos(math.Pi*float64(near)/float64(edge))) / 2
		}
	}
	return out
}

// refine returns the lag in samples, near a start, at which a cross spectrum, given from
// bin from of a transform of n on, correlates most: by Newton's steps.
func refine(cross []complex128, from, n int, lag float64) float64 {
	for range 20 {
		var slope, bend float64
		for i, c := range cross {
			w := 2 * math.Pi * float64(from+i) / float64(n)
			turned := c * cmplx.Rect(1, w*lag)
			slope -= w * imag(turned)
			bend -= w * w * real(turned)
		}
		if !(bend < 0) {
			break
		}
		step := slope / bend
		lag -= max(-0.5, min(0.5, step))
		if math.Abs(step) < 1e-9 {
			break
		}
	}
	return lag
}
