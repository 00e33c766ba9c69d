package programme

import (
	"math"
	"math/cmplx"

	"pappus/preview/limit"

	"gonum.org/v1/gonum/dsp/fourier"
)

// Edges of a click's band in Hz: the level rises from clickLow to clickFull and
// falls from 0.8 of the top to the top, both as a raised cosine, so that the
// click rings little.
const (
	clickLow  = 150.0
	clickFull = 300.0
)

// Clicks makes a train of band-limited clicks, about three a second: the period
// is the least power of two that lasts a quarter of a second. The first click
// stands a quarter into the period.
func Clicks(rate int) Loop {
	n := powerOfTwo(rate / 4)
	high := top(rate)
	spectrum := make([]complex128, n/2+1)
	for k := range spectrum {
		f := float64(k) * float64(rate) / float64(n)
		spectrum[k] = cmplx.Rect(band(f, clickLow, clickFull, high), -math.Pi/2*float64(k%4))
	}
	return finish(fourier.NewFFT(n).Sequence(nil, spectrum))
}

// band rises from low to full and falls from 0.8 of high to high.
func band(f, low, full, high float64) float64 {
	return rise(f, low, full) * (1 - rise(f, 0.8*high, high))
}

// rise goes from 0 at low to 1 at high as a raised cosine.
func rise(f, low, high float64) float64 { return limit.Rise((f - low) / (high - low)) }
