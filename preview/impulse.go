package preview

import (
	"math"
	"math/cmplx"

	"pappus/timing"

	"gonum.org/v1/gonum/dsp/fourier"
)

const (
	preRoll  = 0.001 // s of an impulse response before the first arrival
	shortest = 0.08  // s, the least length of an impulse response
	bandTop  = 20000 // Hz, where the band begins to be closed
)

// Impulse returns the impulse response from the array to the listening spot,
// one value for each sample of 1/rate s, in units of timing.Plan.Transfer. The
// first arrival stands 1 ms after its beginning; the way of the sound before
// that is taken out, in each case its own.
//
// The length is a power of two that lasts at least 80 ms and four times the
// spread of the arrivals: 4096 at 48 kHz. From 20 kHz, or 0.9 of half the rate
// where that is lower, to half the rate the response falls as a raised cosine,
// so that arrivals between samples ring little. rate is at least 8000.
func Impulse(p *timing.Plan, c timing.Case, rate int) []float64 {
	return impulse(func(dst []complex128, frequency []float64) {
		p.Transfer(dst, c, frequency)
	}, p.FirstArrival(c), max(p.Unaligned.Spread, p.Aligned.Spread), rate)
}

// impulse is Impulse for any transfer function, first arrival and spread in s.
func impulse(transfer func([]complex128, []float64), first, spread float64, rate int) []float64 {
	n := grid(max(shortest, 4*spread), rate)
	step := float64(rate) / float64(n)
	frequency := make([]float64, n/2)
	for k := range frequency {
		frequency[k] = float64(k+1) * step
	}
	spectrum := make([]complex128, n/2+1)
	transfer(spectrum[1:], frequency)
	// A loudspeaker has no sound at 0 Hz to ask about. The value there that the
	// next one leads to: its real part, once the delay is out.
	spectrum[0] = complex(real(spectrum[1]*turn(frequency[0], first)), 0)
	for k, f := range frequency {
		spectrum[k+1] *= turn(f, first-preRoll) * complex(closing(f, float64(rate))/float64(n), 0)
	}
	spectrum[0] /= complex(float64(n), 0)
	return fourier.NewFFT(n).Sequence(nil, spectrum)
}

// grid returns the least power of two of samples that last the given time in s.
func grid(seconds float64, rate int) int {
	n := 2
	for float64(n) < seconds*float64(rate) {
		n *= 2
	}
	return n
}

// turn takes a delay in s out of a pressure at a frequency in Hz.
func turn(frequency, delay float64) complex128 {
	return cmplx.Rect(1, 2*math.Pi*frequency*delay)
}

// closing is 1 up to the top of the band and falls to 0 at half the rate.
func closing(frequency, rate float64) float64 {
	begin := min(bandTop, 0.9*rate/2)
	t := min(max((frequency-begin)/(rate/2-begin), 0), 1)
	return (1 + math.Cos(math.Pi*t)) / 2
}
