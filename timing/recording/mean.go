package recording

import (
	"errors"
	"fmt"
	"math"
	"math/cmplx"

	"pappus/timing/sweep"

	"gonum.org/v1/gonum/dsp/fourier"
)

// leastAlike is how much of two recordings of one place must be alike, as the greatest value of
// their correlation over that of equal ones: more than not.
const leastAlike = 0.5

// errUnlike tells that a recording is not of the place of another.
var errUnlike = errors.New("the recording is not like the first of this place")

// Mean analyses recordings of one sweep at one place as one: the mean of their impulse responses,
// each brought to the time of the first by the top of their correlation, and without a reference
// to its gain by least squares,
//
//	h(t) = sum g_i h_i(t + tau_i) / n
//
// Noise that is another in each falls by the root of n in that, as is measured ahead of the mean
// response. One that cannot be used, or is unlike the first, is left out, and has an error; each
// is what the others tell by themselves. Where the first cannot be used there is no mean.
func Mean(takes []Take, s sweep.Sweep, o Options) (mean Measured, each []Measured, errs []error) {
	each, errs = make([]Measured, len(takes)), make([]error, len(takes))
	var first listened
	var sum []float64
	count := 0.0
	for i, t := range takes {
		l, err := listen(t, s, o)
		if err == nil {
			each[i], err = l.tell(l.impulse)
		}
		if i == 0 && err == nil {
			first, sum = l, make([]float64, len(l.h))
		}
		if err == nil {
			err = first.add(sum, l)
		}
		if errs[i] = err; err == nil {
			count++
		}
		if errs[0] != nil {
			return Measured{}, each, errs
		}
	}
	if count == 1 {
		return each[0], each, errs
	}
	for i := range sum {
		sum[i] /= count
	}
	h := *first.impulse
	h.h = sum
	h.findPeak(int(early*h.rate), int(first.span*h.rate/2))
	mean, errs[0] = first.tell(&h)
	return mean, each, errs
}

// add adds the impulse response of another recording in the time of this one.
func (l listened) add(sum []float64, other listened) error {
	if (l.take.Reference == nil) != (other.take.Reference == nil) || !isOneRate(l.rate, other.rate) {
		return fmt.Errorf("%w: it has another rate, or a wire from the player where that has none", errUnlike)
	}
	n := len(l.h)
	fft := fourier.NewFFT(n)
	ours := fft.Coefficients(nil, l.near(n, l.peak()))
	theirs := fft.Coefficients(nil, other.near(n, other.peak()))
	cross := make([]complex128, len(ours))
	var one, two float64
	for k, v := range theirs {
		cross[k] = v * cmplx.Conj(ours[k]) / complex(float64(n), 0)
		one, two = one+energy(ours[k]), two+energy(v)
	}
	c := impulse{h: fft.Sequence(nil, cross), rate: l.rate}
	c.findPeak(n/4, n/4)                  // free: sounds of one place are milliseconds apart, as the air has it
	top := c.value(c.at) * float64(n) / 2 // as the sums, of half of the bins
	if !(top >= leastAlike*math.Sqrt(one*two)) {
		return fmt.Errorf("%w: was it made at the same place, of the same channels?", errUnlike)
	}
	gain := 1.0
	if l.take.Reference == nil {
		gain = top / two
	}
	moved := fft.Coefficients(nil, other.part(-n/2, n-n/2))
	for k := range moved {
		moved[k] *= cmplx.Rect(gain/float64(n), 2*math.Pi*float64(k)*(c.at-float64(n/2))/float64(n))
	}
	for i, v := range fft.Sequence(nil, moved) {
		sum[i] += v
	}
	return nil
}

// rateApart is by how much two clocks of one make differ at most, as a share: a hundred times
// what quartz does (common practice), and a sixteenth of what parts 44.1 from 48 kHz.
const rateApart = 5e-3

// isOneRate tells whether two rates in Hz are one, by two clocks.
func isOneRate(a, b float64) bool { return math.Abs(b/a-1) <= rateApart }

// near returns the response near its strongest sound, at its place on a circle of n values.
func (h *impulse) near(n, peak int) []float64 {
	out := make([]float64, n)
	for i, v := range h.part(peak-h.lead, peak+int(near*h.rate)) {
		out[((peak-h.lead+i)%n+n)%n] = v
	}
	return out
}

func energy(v complex128) float64 { return real(v)*real(v) + imag(v)*imag(v) }
