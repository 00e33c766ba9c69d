package recording

import (
	"math"
	"sort"

	"pappus/timing/sweep"

	"gonum.org/v1/gonum/dsp/fourier"
)

// Where noise is looked for, over the way to the second harmonic: ahead of the linear
// response and well after that one.
const (
	noiseFrom  = 0.75
	noiseTo    = 0.22
	noiseWidth = 3 // parts of an octave over which it is averaged
)

// noise is the energy density of an impulse response's noise.
type noise struct {
	hz   float64   // between bins
	sums []float64 // of the bins' energy up to each
}

// noise looks at the stretch ahead of the response.
func (h *impulse) noise(s sweep.Sweep) noise {
	from := h.peak() - int(noiseFrom*s.Ahead(2)*h.rate)
	to := h.peak() - max(int(noiseTo*s.Ahead(2)*h.rate), h.lead)
	size := length(to - from)
	x := make([]float64, size)
	square := 0.0
	for i, v := range h.part(from, to) {
		w := math.Sin(math.Pi * (float64(i) + 0.5) / float64(to-from))
		x[i] = v * w * w
		square += w * w * w * w
	}
	spectrum := fourier.NewFFT(size).Coefficients(nil, x)
	out := noise{h.rate / float64(size), make([]float64, len(spectrum)+1)}
	for k, v := range spectrum {
		out.sums[k+1] = out.sums[k] + (real(v)*real(v)+imag(v)*imag(v))/square
	}
	return out
}

// density returns the energy of a transform of noise for each sample of it, at a frequency
// in Hz.
func (n noise) density(hz float64) float64 {
	half := math.Exp2(0.5 / noiseWidth)
	low, high := int(math.Round(hz/half/n.hz)), int(math.Round(hz*half/n.hz))
	low, high = max(low, 0), min(max(high, low+4), len(n.sums)-1)
	return (n.sums[high] - n.sums[low]) / float64(high-low)
}

// late returns the standard deviation in s of the strongest sound's time: the noise's
// slope over the bend of the top (P. M. Woodward, Probability and Information Theory, with
// Applications to Radar, 1953, chapter 6).
func (n noise) late(h *impulse) float64 {
	bins := len(n.sums) - 1
	slope := 0.0
	for k := range bins {
		w := math.Pi * float64(k) / float64(bins)
		slope += w * w * (n.sums[k+1] - n.sums[k]) / float64(bins)
	}
	const reach = 0.1
	bend := (h.value(h.at-reach) - 2*h.value(h.at) + h.value(h.at+reach)) / (reach * reach)
	return math.Sqrt(slope) / math.Abs(bend) / h.rate
}

// correctedLevel is a level in dB of an energy, as a microphone would have it that is right.
func correctedLevel(energy, hz float64, o Options) float64 {
	return 10*math.Log10(energy) - o.reads(hz)
}

// indexRange returns the frequencies from low to before high, of some that rise.
func indexRange(frequency []float64, low, high float64) (from, to int) {
	return sort.SearchFloat64s(frequency, low), sort.SearchFloat64s(frequency, high)
}
