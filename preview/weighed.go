package preview

import (
	"pappus/preview/loudness"
	"pappus/preview/programme"
	"pappus/timing/band"

	"gonum.org/v1/gonum/dsp/fourier"
)

// weighedBands is how many bands of one octave a programme is weighed in: narrow enough that
// combs of arrivals 5 ms apart are told within 0.2 dB from what they are at the middles.
const weighedBands = 24

// Weighed returns how much of a programme's loudness, weighted as in ITU-R BS.1770-5, is in
// narrow bands from 20 Hz up: their middles in Hz, and the mean square of the samples there. How
// loud it is through a response H is the sum of energy |H|^2, without the gates.
func Weighed(loop programme.Loop, rate int) (hz, energy []float64) {
	n := len(loop)
	spectrum := fourier.NewFFT(n).Coefficients(nil, loop)
	frequency := frequencies(n, rate)
	weight := make([]complex128, len(frequency))
	loudness.Weighting(float64(rate)).Fill(weight, frequency, float64(rate))
	hz = make([]float64, 10*weighedBands-1)
	band.Log(hz, 20, 20000)
	energy = make([]float64, len(hz))
	k := 1
	for i, centre := range hz {
		for _, high := band.Edges(centre, weighedBands); k < len(frequency)-1 && frequency[k] < high; k++ {
			v := spectrum[k] * weight[k]
			energy[i] += 2 * (real(v)*real(v) + imag(v)*imag(v)) / float64(n) / float64(n)
		}
	}
	return hz, energy
}
