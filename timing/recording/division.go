package recording

import (
	"math"

	"pappus/timing/sweep"

	"gonum.org/v1/gonum/dsp/fourier"
)

// leastShare is the least magnitude that is divided by, over what the sweep has there.
const leastShare = 0.03

// division takes the sweep out of the part of a recording between the markers. Bin k of
// its spectra is at k rate/n; lag 0 is the sweep's own beginning.
type division struct {
	take     Take
	sweep    sweep.Sweep
	rate     float64
	from, to int // the part, in samples of the recording
	n        int
	fft      *fourier.FFT
	sent     []complex128 // the sweep, or what the reference has of it
	gain     float64      // of what was sent, over a sweep of amplitude 1
	inverted bool         // what was sent is upside down
	work     []float64
}

func newDivision(t Take, s sweep.Sweep, where found) *division {
	begin := float64(where.first) + (s.Begin()-s.First())*where.rate
	d := &division{take: t, sweep: s, rate: where.rate, gain: 1}
	d.from = int(begin - min(early, s.Gap/2)*d.rate)
	d.to = int(begin + (s.Length+s.Tail-late)*d.rate)
	d.n = length(d.to - d.from)
	d.fft = fourier.NewFFT(d.n)
	d.work = make([]float64, d.n)
	s.Fill(d.work[:d.to-d.from], d.rate, begin-float64(d.from))
	d.sent = d.fft.Coefficients(nil, d.work)
	return d
}

// reference puts the reference in place of the sweep. It returns how much of its energy
// stands together once the sweep is taken out.
func (d *division) reference() float64 {
	heard := d.heard(d.take.Reference)
	var ours, theirs float64
	for k, v := range d.sent {
		if edges(d.sweep, d.hz(k)) == 1 {
			ours += real(v)*real(v) + imag(v)*imag(v)
			theirs += real(heard[k])*real(heard[k]) + imag(heard[k])*imag(heard[k])
		}
	}
	kept := append([]complex128(nil), heard...)
	h := d.over(heard)
	h.findPeak(int(early*d.rate), int(early*d.rate))
	d.sent, d.gain, d.inverted = kept, math.Sqrt(theirs/ours), h.value(h.at) < 0
	return h.share()
}

// impulse returns the microphone's impulse response.
func (d *division) impulse() *impulse { return d.over(d.heard(d.take.Samples)) }

// heard returns the spectrum of the part of a channel.
func (d *division) heard(x []float64) []complex128 {
	clear(d.work)
	for i := max(d.from, 0); i < min(d.to, len(x)); i++ {
		d.work[i-d.from] = x[i]
	}
	return d.fft.Coefficients(nil, d.work)
}

// over divides a spectrum, which it changes, by what was sent.
func (d *division) over(heard []complex128) *impulse {
	for k, v := range heard {
		share := edges(d.sweep, d.hz(k))
		if share == 0 {
			heard[k] = 0
			continue
		}
		s := d.sent[k]
		least := leastShare * d.gain * d.expected(k)
		energy := max(real(s)*real(s)+imag(s)*imag(s), least*least)
		heard[k] = v * complex(real(s), -imag(s)) * complex(share/energy/float64(d.n), 0)
	}
	return &impulse{h: d.fft.Sequence(nil, heard), rate: d.rate}
}

// expected returns the magnitude of the sweep's spectrum at a bin, by the method of
// stationary phase: half of the square root of L/f, times the rate.
func (d *division) expected(k int) float64 {
	return d.rate * math.Sqrt(d.sweep.Growth()/d.hz(k)) / 2
}

// hz returns the frequency of a bin.
func (d *division) hz(k int) float64 { return float64(k) * d.rate / float64(d.n) }
