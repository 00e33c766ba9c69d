package rehearsal

import (
	"math"
	"math/cmplx"
	"math/rand/v2"

	"pappus/timing/crossover"

	"gonum.org/v1/gonum/dsp/fourier"
)

// What a wire picks up of what a microphone does, and how low a noise goes.
const (
	wireHum   = -40.0 // dB, of the hum
	harmonics = 10    // of the hum, the fundamental counted
	noiseLow  = 20.0  // Hz
)

// disturb adds to samples at a rate in Hz what is heard beside the loudspeaker, and to the wire
// what it picks up.
func (v *Variation) disturb(heard, wire []float64, rate float64, r *rand.Rand) {
	if v.Noise.SNR != 0 {
		for i, x := range v.Noise.samples(len(heard), rate, r) {
			heard[i] += x
		}
	}
	v.Hum.add(heard, rate, 0)
	v.Hum.add(wire, rate, wireHum)
	for _, p := range v.Pops {
		p.add(heard, rate)
	}
}

// samples returns noise of a slope, whose RMS from noiseLow up is as said.
func (n Noise) samples(count int, rate float64, r *rand.Rand) []float64 {
	size := 2
	for size < count {
		size *= 2
	}
	spectrum, square := make([]complex128, size/2+1), 0.0
	for k := range spectrum {
		if hz := float64(k) * rate / float64(size); hz >= noiseLow {
			gain := math.Pow(hz/noiseLow, n.Slope/(20*math.Log10(2)))
			spectrum[k] = complex(gain*r.NormFloat64(), gain*r.NormFloat64())
			square += 4 * gain * gain // of both halves of the spectrum, real and imaginary part
		}
	}
	gain := full / math.Sqrt2 * math.Pow(10, -n.SNR/20) / math.Sqrt(square)
	out := fourier.NewFFT(size).Sequence(nil, spectrum)[:count]
	for i := range out {
		out[i] *= gain
	}
	return out
}

// add adds a hum, so many dB over what the microphone hears of it.
func (h Hum) add(x []float64, rate, over float64) {
	if h.Hz == 0 {
		return
	}
	gain := full * math.Pow(10, (h.Level+over)/20)
	for i := range x {
		turn := 2*math.Pi*h.Hz*float64(i)/rate + h.Begin
		for k, each := 1, gain; k <= harmonics; k, each = k+1, each/2 {
			x[i] += each * math.Sin(float64(k)*turn)
		}
	}
}

// add adds a pop: a sudden step that dies away.
func (p Pop) add(x []float64, rate float64) {
	gain := full * math.Pow(10, p.Level/20)
	from := int(p.At * float64(len(x)))
	for i := from; i < len(x); i++ {
		fallen := float64(i-from) / rate / p.Lasts
		if fallen > 20 {
			return
		}
		x[i] += gain * math.Exp(-fallen)
	}
}

// add adds to what is heard, as a spectrum of n samples at a rate in Hz, what a woofer gives of
// what was sent.
func (w Woofer) add(heard, sent []complex128, n int, rate float64) {
	if w.Corner == 0 {
		return
	}
	gain := full * math.Pow(10, w.Level/20)
	low := crossover.New(crossover.LowPass, crossover.LinkwitzRiley, 4, w.Corner)
	for k, v := range sent {
		hz := float64(k) * rate / float64(n)
		heard[k] += v * low.Response(hz) * cmplx.Rect(gain, -2*math.Pi*hz*w.Late)
	}
}
