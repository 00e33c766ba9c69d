package recording

import (
	"math"
	"pappus/timing/sweep"
)

// taps is how far on each side samples count for a value between two of them. A Hann window so long passes what is
// more than 2/(2 taps + 2) of the rate below half of it (F. J. Harris, On the Use of Windows for Harmonic Analysis
// with the Discrete Fourier Transform, Proc. IEEE 66 (1978) 51: the main lobe's half width): up to 0.47 of the rate,
// and sweeps rise to 0.46 at most.
const taps = 32 // free: from 24 on they pass as much as sweeps have

// impulse is an impulse response on a circle: lags below 0 stand at its end.
type impulse struct {
	h    []float64
	rate float64 // Hz
	at   float64 // lag of the strongest sound, in samples
	lead int     // samples before it that belong to it: the band's edge rings both ways
}

// lag returns the value at a lag.
func (h *impulse) lag(i int) float64 {
	if i %= len(h.h); i < 0 {
		i += len(h.h)
	}
	return h.h[i]
}

// part returns the values of lags from one to before another.
func (h *impulse) part(from, to int) []float64 {
	out := make([]float64, max(0, to-from))
	for i := range out {
		out[i] = h.lag(from + i)
	}
	return out
}

// peak returns the lag next to the strongest sound.
func (h *impulse) peak() int { return int(math.Round(h.at)) }

// findPeak finds the strongest sound from so many samples before lag 0 to so many after.
func (h *impulse) findPeak(before, after int) {
	best := 0
	for i := -before; i <= after; i++ {
		if math.Abs(h.lag(i)) > math.Abs(h.lag(best)) {
			best = i
		}
	}
	h.at = float64(best)
	sign := math.Copysign(1, h.lag(best))
	for reach := 0.5; reach > 1e-5; reach /= 4 { // free: how the search closes in, to a hundred thousandth of a sample
		last, now, next := sign*h.value(h.at-reach), sign*h.value(h.at), sign*h.value(h.at+reach)
		if bend := last - 2*now + next; bend < 0 {
			h.at += reach * max(-1, min(1, (last-next)/(2*bend)))
		}
	}
}

// value returns the value at a lag between samples, by a sinc in a Hann window.
func (h *impulse) value(at float64) float64 {
	whole := int(math.Floor(at))
	sum := 0.0
	for i := whole - taps + 1; i <= whole+taps; i++ {
		x := at - float64(i)
		w := math.Cos(math.Pi / 2 * x / (taps + 1))
		sum += h.lag(i) * w * w * sinc(x)
	}
	return sum
}

func sinc(x float64) float64 {
	if math.Abs(x) < 1e-9 { // free: the sine is its argument there, to the last digit
		return 1
	}
	return math.Sin(math.Pi*x) / (math.Pi * x)
}

// beyond returns the lag of the strongest sound that comes later than one, and within half of the circle, where most of
// the energy is near that; 0 elsewhere. A fifth of it (wholeShare) a thump may have that is heard beside nothing.
func (h *impulse) beyond(after int) int {
	later, at := *h, after
	for i := after; i <= len(h.h)/2; i++ {
		if math.Abs(h.lag(i)) > math.Abs(h.lag(at)) {
			at = i
		}
	}
	if later.at = float64(at); math.Abs(h.lag(at)) < math.Abs(h.lag(h.peak())) || later.share() < lateShare {
		return 0
	}
	return at
}

// share returns how much of the energy is near the strongest sound.
func (h *impulse) share() float64 {
	all, close := 0.0, 0.0
	for _, v := range h.h {
		all += v * v
	}
	for _, v := range h.part(h.peak()-h.lead, h.peak()+int(near*h.rate)) {
		close += v * v
	}
	return close / all
}

// Where noise is looked for, over the way to the second harmonic: ahead of the linear
// response and well after that one.
const (
	noiseFrom  = 0.75 // a quarter after the second harmonic began: 0.3 s of a sweep of 10 s, where half a second's room is 40 dB down
	noiseTo    = 0.22 // clear of leadMost by a tenth
	noiseWidth = 3.0  // parts of an octave over which it is averaged: as bands are
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
	size := Length(to - from)
	square := 0.0
	x := h.part(from, to)
	for i := range x {
		w := math.Sin(math.Pi * (float64(i) + 0.5) / float64(len(x))) // free: the middle of a sample, of hundreds and more
		x[i] *= w * w
		square += w * w * w * w
	}
	spectrum := Spectrum(x, size)
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
	const reach = 0.1 // free: of a sample: the bend hardly changes over half of one
	bend := (h.value(h.at-reach) - 2*h.value(h.at) + h.value(h.at+reach)) / (reach * reach)
	return math.Sqrt(slope) / math.Abs(bend) / h.rate
}

// correctedLevel is a level in dB of an energy, as a microphone would have it that is right.
func correctedLevel(energy, hz float64, o Options) float64 {
	return 10*math.Log10(energy) - o.reads(hz)
}
