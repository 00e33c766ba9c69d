package equaliser

import (
	"math"
	"math/cmplx"
	"slices"

	"gonum.org/v1/gonum/dsp/fourier"
	"gonum.org/v1/gonum/dsp/window"
)

// floor is the least magnitude that minimum phase is computed with, over the
// greatest: -120 dB. A true zero has no logarithm.
const floor = 1e-6

// MinimumPhase returns taps of a filter with a magnitude, as factors evenly
// spaced from 0 to half the sampling rate, that lets the sound through as early
// as that magnitude allows. The last eighth of the taps is faded out. There must be at least
// as many magnitudes as taps, two or more, and several times as many where they have sharp
// corners; some must be above 0.
func MinimumPhase(taps int, magnitude []float64) []float64 {
	top := slices.Max(magnitude)
	n := 2 * (len(magnitude) - 1)
	fft := fourier.NewFFT(n)
	spectrum := make([]complex128, len(magnitude))
	for k, m := range magnitude {
		spectrum[k] = complex(math.Log(max(m, top*floor)), 0)
	}
	cepstrum := fft.Sequence(nil, spectrum)
	fold(cepstrum)
	fft.Coefficients(spectrum, cepstrum)
	for k := range spectrum {
		spectrum[k] = cmplx.Exp(spectrum[k])
	}
	h := fft.Sequence(cepstrum, spectrum)[:taps:taps]
	for i := range h {
		h[i] /= float64(n)
	}
	fade(h[taps-taps/8:])
	return h
}

// fold puts all of an even cepstrum onto times of 0 and later, and divides by
// its length, which gonum's transform leaves to the caller.
func fold(c []float64) {
	n := len(c)
	for i := range c {
		switch {
		case i == 0 || i == n/2:
			c[i] /= float64(n)
		case i < n/2:
			c[i] *= 2 / float64(n)
		default:
			c[i] = 0
		}
	}
}

// fade brings values to silence along half a period of a cosine.
func fade(x []float64) {
	for i := range x {
		x[i] *= 0.5 + 0.5*math.Cos(math.Pi*float64(i+1)/float64(len(x)+1))
	}
}

// LinearPhase returns taps, an odd number, of a filter with a magnitude as for
// MinimumPhase that delays all frequencies alike, by (taps-1)/2 samples. It is
// symmetric. The window (Hann) makes details narrower than about four times the
// sampling rate over the number of taps flat. Part of what it does to a sharp
// sound is heard ahead of it.
func LinearPhase(taps int, magnitude []float64) []float64 {
	n := 2 * (len(magnitude) - 1)
	spectrum := make([]complex128, len(magnitude))
	for k, m := range magnitude {
		spectrum[k] = complex(m/float64(n), 0)
	}
	round := fourier.NewFFT(n).Sequence(nil, spectrum)
	h, middle := make([]float64, taps), (taps-1)/2
	shape := window.Hann(slices.Repeat([]float64{1}, taps+2)) // its two zeros fall beside the taps
	for i := range middle + 1 {
		h[middle+i] = round[i] * shape[middle+1+i]
		h[middle-i] = h[middle+i]
	}
	return h
}
