package recording

import (
	"math"
	"math/cmplx"
	"pappus/timing/sweep"

	"gonum.org/v1/gonum/dsp/fourier"
)

// leastShare is the least magnitude that is divided by, over what the sweep has there.
const leastShare = 0.03 // -30 dB: less would lift noise by more than the sweep is over it

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
	d.n = Length(d.to - d.from)
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

// rings is for how long in periods of Start the band's edges ring, on each side.
const rings = 15 // free: all but -123 dB of the energy is within that, and all but -116 dB within 12

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
	n := Length(int(2 * rings / s.Start * h.rate))
	spectrum := make([]complex128, n/2+1)
	part := h.at - float64(h.peak())
	for k := range spectrum {
		x := float64(k) / float64(n)
		spectrum[k] = cmplx.Rect(edges(s, x*h.rate)/float64(n), -2*math.Pi*x*part)
	}
	return &impulse{h: fourier.NewFFT(n).Sequence(nil, spectrum), rate: h.rate, at: part, lead: h.lead}
}

// Length returns the least length from n on that is a product of twos, threes and
// fives with at least one of each: transforms of powers of two alone are slow,
// since their strides meet in the processor's cache.
func Length(n int) int {
	best := 0
	for five := 5; best == 0 || five < best; five *= 5 {
		for three := 3 * five; best == 0 || three < best; three *= 3 {
			size := three
			for size < n || size%2 == 1 {
				size *= 2
			}
			if best == 0 || size < best {
				best = size
			}
		}
	}
	return best
}

// Spectrum returns the transform of samples with zeros up to n.
func Spectrum(x []float64, n int) []complex128 {
	padded := make([]float64, n)
	copy(padded, x)
	return fourier.NewFFT(n).Coefficients(nil, padded)
}
