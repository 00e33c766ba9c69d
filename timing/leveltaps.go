package timing

import (
	"math"
	"math/cmplx"

	"pappus/timing/biquad"
	"pappus/timing/equaliser"

	"gonum.org/v1/gonum/dsp/fourier"
)

// How long filters of taps are: twice as long again, until they are near enough.
const (
	leastTaps = 256
	mostTaps  = 65536
	nearTaps  = 0.05 // dB
	fineTaps  = 4    // magnitudes for each tap, so that nothing falls between them
)

// Taps is a filter as the samples of its impulse response.
type Taps struct {
	Samples []float64
	Latency float64 // s, by which all frequencies are late alike
	Off     float64 // dB, the greatest distance from the sections' level, from 100 Hz to half the rate
}

// Correction is a levelling in the forms that processors ask for. Each does the
// same to the level, so only one of them is to be used.
type Correction struct {
	Rate            float64           // Hz
	Sections        []ProcessorFilter // in the order of the levelling
	Minimum, Linear Taps              // of minimum and of linear phase
}

// Boost returns the most in dB that the sections raise the level anywhere, 0 where
// they only lower it.
func (l Levelling) Boost() float64 {
	most := 0.0
	for f := range l.After {
		most = max(most, l.After[f]-l.Before[f])
	}
	return most
}

// Correction works out the coefficients of the sections at a sampling rate in Hz,
// and filters of as many taps, a power of two or one less, as bring them within
// 0.05 dB of the sections, 65536 at most. Linear phase takes the more the lower and
// the narrower the sections are. Errors wrap equaliser.ErrSection.
func (l Levelling) Correction(rate float64) (Correction, error) {
	chain, err := equaliser.Chain(l.Sections, rate)
	if err != nil {
		return Correction{}, err
	}
	out := Correction{Rate: rate, Sections: equaliserFilters(l.Sections, chain)}
	out.Minimum = taps(chain, rate, equaliser.MinimumPhase, 0)
	out.Linear = taps(chain, rate, equaliser.LinearPhase, 1)
	out.Linear.Latency = float64(len(out.Linear.Samples)-1) / 2 / rate
	return out, nil
}

// taps returns the shortest filter near enough to a chain, of a power of two taps
// and so many fewer.
func taps(chain biquad.Chain, rate float64, design func(int, []float64) []float64, fewer int) Taps {
	for n := leastTaps; ; n *= 2 {
		size := magnitudes(chain, rate, fineTaps*n)
		h := design(n-fewer, size)
		if off := offBy(h, size, rate); off <= nearTaps || n == mostTaps {
			return Taps{Samples: h, Off: off}
		}
	}
}

// magnitudes returns a chain's magnitude at n+1 frequencies evenly spaced from 0
// to half the rate in Hz.
func magnitudes(chain biquad.Chain, rate float64, n int) []float64 {
	frequency, response, out := make([]float64, n+1), make([]complex128, n+1), make([]float64, n+1)
	for k := range frequency {
		frequency[k] = rate / 2 * float64(k) / float64(n)
	}
	chain.Fill(response, frequency, rate)
	for k, h := range response {
		out[k] = cmplx.Abs(h)
	}
	return out
}

// offBy returns by how many dB the level of taps is off at most from magnitudes
// evenly spaced from 0 to half the rate, from levelLow on.
func offBy(h, size []float64, rate float64) float64 {
	last := len(size) - 1
	spectrum := fourier.NewFFT(2*last).Coefficients(nil, append(h[:len(h):len(h)], make([]float64, 2*last-len(h))...))
	worst := 0.0
	for k, want := range size {
		if rate/2*float64(k)/float64(last) >= levelLow {
			worst = max(worst, math.Abs(20*math.Log10(cmplx.Abs(spectrum[k])/want)))
		}
	}
	return worst
}
