package equaliser

import (
	"fmt"
	"math"
	"math/cmplx"
	"sort"

	"pappus/layout/prose"

	"gonum.org/v1/gonum/dsp/fourier"
	"gonum.org/v1/gonum/dsp/window"
)

// floor is the least magnitude that minimum phase is computed with, over the
// greatest: -120 dB. A true zero has no logarithm.
const floor = 1e-6

// Magnitude fills dst with magnitudes, as factors, at len(dst) frequencies
// evenly spaced from 0 to half a sampling rate in Hz, from a level in dB at
// frequencies in Hz that rise from above 0: straight over log frequency, and
// held outside. A curve that does not rise or is not finite is an error that
// wraps ErrCurve. It panics where the lengths differ.
func Magnitude(dst []float64, rate float64, frequency, level []float64) error {
	if len(frequency) != len(level) {
		panic("equaliser: lengths differ")
	}
	if len(frequency) == 0 {
		return fmt.Errorf("%w: no points", ErrCurve)
	}
	for i, hz := range frequency {
		if !(hz > 0) || math.IsInf(hz, 0) || (i > 0 && hz <= frequency[i-1]) || !(math.Abs(level[i]) <= 1000) {
			return prose.Errorf("%w: point %d: %g Hz, %g dB", ErrCurve, i+1, hz, level[i])
		}
	}
	last := len(frequency) - 1
	for k := range dst {
		hz := rate / 2 * float64(k) / float64(max(1, len(dst)-1))
		db := level[last]
		if i := sort.SearchFloat64s(frequency, hz); i == 0 {
			db = level[0]
		} else if i <= last {
			share := math.Log(hz/frequency[i-1]) / math.Log(frequency[i]/frequency[i-1])
			db = level[i-1] + share*(level[i]-level[i-1])
		}
		dst[k] = math.Pow(10, db/20)
	}
	return nil
}

// MinimumPhase returns taps of a filter with a magnitude, as factors evenly
// spaced from 0 to half the sampling rate, that lets the sound through as early
// as that magnitude allows. The last eighth of the taps is faded out. The
// magnitude must have at least as many values as there are taps, and several
// times as many where it has sharp corners; else the error wraps ErrTaps, or
// ErrCurve where a magnitude is below 0, endless, or all are 0.
func MinimumPhase(taps int, magnitude []float64) ([]float64, error) {
	top, err := checkTaps(taps, magnitude)
	if err != nil {
		return nil, err
	}
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
	return h, nil
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
// sound is heard ahead of it. Errors are as for MinimumPhase.
func LinearPhase(taps int, magnitude []float64) ([]float64, error) {
	if _, err := checkTaps(taps, magnitude); err != nil {
		return nil, err
	}
	if taps%2 == 0 {
		return nil, fmt.Errorf("%w: %d, must be odd for linear phase", ErrTaps, taps)
	}
	n := 2 * (len(magnitude) - 1)
	spectrum := make([]complex128, len(magnitude))
	for k, m := range magnitude {
		spectrum[k] = complex(m/float64(n), 0)
	}
	round := fourier.NewFFT(n).Sequence(nil, spectrum)
	h, middle := make([]float64, taps), (taps-1)/2
	shape := make([]float64, taps+2) // its two zeros fall beside the taps
	for i := range shape {
		shape[i] = 1
	}
	window.Hann(shape)
	for i := range middle + 1 {
		h[middle+i] = round[i] * shape[middle+1+i]
		h[middle-i] = h[middle+i]
	}
	return h, nil
}

// checkTaps returns the greatest magnitude.
func checkTaps(taps int, magnitude []float64) (top float64, err error) {
	if taps < 1 || taps > len(magnitude) || len(magnitude) < 2 {
		return 0, fmt.Errorf("%w: %d taps from %d magnitudes, must be from 1 to as many, and 2 magnitudes or more", ErrTaps, taps, len(magnitude))
	}
	for k, m := range magnitude {
		if !(m >= 0) || math.IsInf(m, 0) {
			return 0, prose.Errorf("%w: magnitude %d is %g, must be 0 or above", ErrCurve, k+1, m)
		}
		top = max(top, m)
	}
	if top == 0 {
		return 0, fmt.Errorf("%w: all magnitudes are 0", ErrCurve)
	}
	return top, nil
}
