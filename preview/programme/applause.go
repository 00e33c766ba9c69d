package programme

import (
	"math"
	"math/rand/v2"

	"gonum.org/v1/gonum/dsp/fourier"
)

const (
	clapSeconds = 4.0   // s, about, in the loop
	clapsASec   = 60    // a crowd of some fifteen, each four times a second
	clapLength  = 0.04  // s
	clapDecay   = 0.004 // s, in which a clap falls to 1/e
)

// Edges of the band of all claps in Hz; above it ends as that of Clicks does.
const (
	clapLow  = 200.0
	clapFull = 400.0
	clapHigh = 10000.0
)

// Applause makes applause-like bursts: 60 claps a second at random times, each a
// few milliseconds of noise with a resonance of its own. The period is the least
// power of two that lasts 4 s.
func Applause(rate int) Loop {
	n := powerOfTwo(int(clapSeconds * float64(rate)))
	random := rand.New(rand.NewPCG(15, 1987))
	mono := make([]float64, n)
	for range clapsASec * n / rate {
		clap(mono, random.IntN(n), rate, random)
	}
	fft := fourier.NewFFT(n)
	spectrum := fft.Coefficients(nil, mono)
	high := min(clapHigh, top(rate))
	for k := range spectrum {
		f := float64(k) * float64(rate) / float64(n)
		spectrum[k] *= complex(band(f, clapLow, clapFull, high), 0)
	}
	return finish(fft.Sequence(mono, spectrum))
}

// clap adds one clap to a loop, over its seam where need be: noise that rises in
// half a millisecond and decays, through the resonance of the hollow between two
// hands, somewhere from 600 to 2400 Hz. All have the same energy to 6 dB.
func clap(mono []float64, start, rate int, random *rand.Rand) {
	centre := 600 * math.Pow(4, random.Float64())
	level := math.Pow(2, random.Float64()-0.5)
	var hollow resonator
	hollow.tune(centre, centre/2, float64(rate))
	one := make([]float64, int(clapLength*float64(rate)))
	energy := 0.0
	for i := range one {
		t := float64(i) / float64(rate)
		one[i] = hollow.step(rise(t, 0, 0.0005) * math.Exp(-t/clapDecay) * random.NormFloat64())
		energy += one[i] * one[i]
	}
	for i, v := range one {
		mono[(start+i)%len(mono)] += level * v / math.Sqrt(energy)
	}
}
