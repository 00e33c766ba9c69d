package preview

import (
	"math"
	"math/bits"
	"math/cmplx"

	"pappus/timing"

	"gonum.org/v1/gonum/dsp/fourier"
	"gonum.org/v1/gonum/spatial/r3"
)

const (
	preRoll  = 0.001 // s of an impulse response before the first arrival
	shortest = 0.08  // s, the least length of an impulse response

	// Where the band begins to be closed, in Hz: at bandTop, and at a low rate
	// closingWidth below half the rate, for less would ring past the pre-roll.
	bandTop      = 20000.0
	closingWidth = 3300.0
)

// lasting returns how long an impulse response lasts, in s, for a spread of the
// arrivals and the time from the first sound to the last echo, both in s.
func lasting(spread, echoes float64) float64 {
	return max(shortest, 4*spread, echoes+shortest/4)
}

// sounding is a plan that is heard, with its woofer or without one (nil).
type sounding struct {
	*timing.Spot
	woofer *timing.Woofer
}

// lasting returns how long an impulse response lasts, in s, for the time from the first
// sound to the last echo, in s: with a woofer as long as its filters ring.
func (p sounding) lasting(echoes float64) float64 {
	long := lasting(max(p.Unaligned.Spread, p.Aligned.Spread), echoes)
	if p.woofer != nil {
		long = max(long, echoes+p.woofer.Ring())
	}
	return long
}

// span returns when the first and the last sound of a case reach a place, in s.
func (p sounding) span(c timing.Case, dry bool, place r3.Vec) (first, last float64) {
	if p.woofer != nil {
		return p.woofer.Span(p.Spot, c, dry, place)
	}
	return p.Span(c, dry, place)
}

// frequencies returns those in Hz of the transform of n samples.
func frequencies(n, rate int) []float64 {
	frequency := make([]float64, n/2+1)
	for k := range frequency {
		frequency[k] = float64(k) * float64(rate) / float64(n)
	}
	return frequency
}

// sequence returns the n samples of a spectrum: the band closed, the first arrival, in s,
// moved to preRoll.
func sequence(spectrum []complex128, frequency []float64, first float64, n, rate int) []float64 {
	return newInverse(frequency, n, rate).of(spectrum, first)
}

// inverse turns spectra of n samples into samples.
type inverse struct {
	frequency []float64
	close     []float64 // the band closed, with the transform's norm taken out
	moved     []complex128
	fft       *fourier.FFT
	samples   []float64
}

func newInverse(frequency []float64, n, rate int) *inverse {
	t := &inverse{frequency: frequency, moved: make([]complex128, len(frequency)), fft: fourier.NewFFT(n), samples: make([]float64, n)}
	for _, f := range frequency {
		t.close = append(t.close, closing(f, float64(rate))/float64(n))
	}
	return t
}

// of returns the samples of a spectrum until it is called again, the sound that arrives at
// first, in s, moved to preRoll.
func (t *inverse) of(spectrum []complex128, first float64) []float64 {
	for k, f := range t.frequency {
		t.moved[k] = spectrum[k] * turn(f, first-preRoll) * complex(t.close[k], 0)
	}
	return t.fft.Sequence(t.samples, t.moved)
}

// grid returns the least power of two of samples that last the given time in s.
func grid(seconds float64, rate int) int {
	return 1 << max(1, bits.Len(uint(math.Ceil(seconds*float64(rate))-1)))
}

// turn takes a delay in s out of a pressure at a frequency in Hz.
func turn(frequency, delay float64) complex128 {
	return cmplx.Rect(1, 2*math.Pi*frequency*delay)
}

// closing is 1 up to the top of the band and falls to 0 at half the rate, as the
// running sum of a Blackman window: that keeps the ringing as short as its
// transform's main lobe, three over the width of the fall, and 58 dB down beyond
// it (F. J. Harris, Proc. IEEE 66 (1978) 51).
func closing(frequency, rate float64) float64 {
	begin := min(bandTop, rate/2-closingWidth)
	t := min(max((frequency-begin)/(rate/2-begin), 0), 1)
	sum := 0.42*t - 0.5*math.Sin(2*math.Pi*t)/(2*math.Pi) + 0.08*math.Sin(4*math.Pi*t)/(4*math.Pi)
	return 1 - sum/0.42
}
