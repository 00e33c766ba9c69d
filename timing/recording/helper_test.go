package recording_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"pappus/timing/recording"
	"pappus/timing/sweep"

	"gonum.org/v1/gonum/dsp/fourier"
)

const (
	rate       = 48000.0
	sweepStart = 100.0
)

// usual is a sweep as it may be for a small array.
func usual(t testing.TB, seconds float64) sweep.Sweep {
	t.Helper()
	s, err := sweep.New(sweepStart, 20000, seconds)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// through passes a signal through a system that is known by its response at frequencies in
// Hz, by one long transform.
func through(x []float64, rate float64, response func(hz float64) complex128) []float64 {
	n := recording.Length(len(x) + int(rate))
	padded := make([]float64, n)
	copy(padded, x)
	fft := fourier.NewFFT(n)
	spectrum := fft.Coefficients(nil, padded)
	for k := range spectrum {
		spectrum[k] *= response(float64(k)*rate/float64(n)) / complex(float64(n), 0)
	}
	return fft.Sequence(padded, spectrum)[:len(x)]
}

// noisy adds white noise so many dB below the RMS of a sweep of an amplitude.
func noisy(x []float64, amplitude, snr float64, seed uint64) []float64 {
	random := rand.New(rand.NewPCG(seed, 8))
	size := amplitude / math.Sqrt2 * math.Pow(10, -snr/20)
	out := make([]float64, len(x))
	for i, v := range x {
		out[i] = v + size*random.NormFloat64()
	}
	return out
}

// scaled returns a signal times a factor.
func scaled(x []float64, by float64) []float64 {
	out := make([]float64, len(x))
	for i, v := range x {
		out[i] = by * v
	}
	return out
}
