package recording

import (
	"math"
	"math/cmplx"

	"pappus/timing/sweep"

	"gonum.org/v1/gonum/dsp/fourier"
)

// rings is for how long in periods of Start the band's edges ring, on each side.
const rings = 15

// edges is how much of a frequency in Hz is taken: all within the band, nothing outside,
// and between them a running sum of a Hann window over log frequency, which rings briefly.
func edges(s sweep.Sweep, hz float64) float64 {
	switch {
	case hz <= edgeLow*s.Start || hz >= edgeHigh*s.Stop:
		return 0
	case hz < bandLow*s.Start:
		return step(math.Log(hz/(edgeLow*s.Start)) / math.Log(bandLow/edgeLow))
	case hz > bandHigh*s.Stop:
		return step(math.Log(edgeHigh*s.Stop/hz) / math.Log(edgeHigh/bandHigh))
	}
	return 1
}

// step rises from 0 at 0 to 1 at 1 as the running sum of a Hann window.
func step(t float64) float64 { return t - math.Sin(2*math.Pi*t)/(2*math.Pi) }

// ringing returns what the band alone makes of one sound at the time of the strongest:
// its edges ring both ways, and a window cuts some of that off.
func (h *impulse) ringing(s sweep.Sweep) *impulse {
	n := length(int(2 * rings / s.Start * h.rate))
	spectrum := make([]complex128, n/2+1)
	part := h.at - float64(h.peak())
	for k := range spectrum {
		x := float64(k) / float64(n)
		spectrum[k] = cmplx.Rect(edges(s, x*h.rate)/float64(n), -2*math.Pi*x*part)
	}
	return &impulse{h: fourier.NewFFT(n).Sequence(nil, spectrum), rate: h.rate, at: part, lead: h.lead}
}
