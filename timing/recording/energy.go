package recording

import (
	"math"
	"math/cmplx"

	"gonum.org/v1/gonum/dsp/fourier"
)

// Energy returns the envelope of the impulse response over time, in dB over its strongest
// sound, as the most within each step in s; time in s is the middle of each step. The
// envelope is the size of the analytic signal at the samples; between two of them it may be half a decibel
// higher.
func (m Measured) Energy(step float64) (time, level []float64) {
	n := length(len(m.Impulse))
	x := make([]complex128, n)
	for i, v := range m.Impulse {
		x[i] = complex(v, 0)
	}
	fft := fourier.NewCmplxFFT(n)
	fft.Coefficients(x, x)
	clear(x[n/2+1:])
	fft.Sequence(x, x)
	top := 0.0
	for _, v := range x[:len(m.Impulse)] {
		top = max(top, cmplx.Abs(v))
	}
	each := max(1, int(math.Round(step*m.Rate)))
	for from := 0; from < len(m.Impulse); from += each {
		most := 0.0
		to := min(from+each, len(m.Impulse))
		for _, v := range x[from:to] {
			most = max(most, cmplx.Abs(v))
		}
		time = append(time, m.Begin+float64(from+to-1)/2/m.Rate)
		level = append(level, 20*math.Log10(max(most/top, 1e-15)))
	}
	return time, level
}
