// Package crossover is the high-pass and low-pass filters that share the work
// between loudspeakers and keep their cones alive, as sections of first and
// second order: as analog responses and as coefficients for a processor.
//
//   - Butterworth, order 1 to 8: flattest; -3.01 dB at the corner (S. Butterworth,
//     "On the theory of filter amplifiers", Experimental Wireless 7 (1930) 536).
//   - Linkwitz-Riley, order 2, 4, 6 and 8: a Butterworth filter of half the order
//     twice; -6.02 dB at the corner; low-pass and high-pass add up to an
//     all-pass, for order 2 and 6 with one of them inverted (S. H. Linkwitz,
//     "Active crossover networks for noncoincident drivers", J. Audio Eng. Soc.
//     24 (1976) 2; S. P. Lipshitz and J. Vanderkooy, J. Audio Eng. Soc. 31 (1983)
//     82).
//   - Bessel, order 1 to 8: flattest delay of the low-pass (W. E. Thomson, Proc.
//     IEE 96 III (1949) 487), scaled so that the level at the corner is -3.01 dB;
//     other scalings, by delay or by phase, are in use too. The high-pass is the
//     low-pass with s turned into 1/s: its slope is the same, but its delay is
//     not flat.
//
// The digital filters come from the bilinear transform, prewarped so that the
// response at the corner is exactly the analog one (A. V. Oppenheim and R. W.
// Schafer, Discrete-Time Signal Processing, chapter 7).
package crossover

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"pappus/layout/prose"
	"pappus/timing/biquad"
)

// ErrRate tells of a sampling rate that is too low for a filter.
var ErrRate = errors.New("impossible sampling rate")

// Kind tells what a filter lets pass.
type Kind int8

// The kinds of filter.
const (
	LowPass Kind = iota
	HighPass
)

// String names the kind.
func (k Kind) String() string { return [...]string{"low-pass", "high-pass"}[k] }

// Family tells what a filter is best at.
type Family int8

// The families of filters.
const (
	Butterworth Family = iota
	LinkwitzRiley
	Bessel
)

// String names the family.
func (f Family) String() string { return [...]string{"Butterworth", "Linkwitz-Riley", "Bessel"}[f] }

// Orders returns the orders that a family has, rising.
func (f Family) Orders() []int {
	if f == LinkwitzRiley {
		return []int{2, 4, 6, 8}
	}
	return []int{1, 2, 3, 4, 5, 6, 7, 8}
}

// Section is one factor of a filter, in the form that processors ask for.
type Section struct {
	Frequency float64 // Hz, of its poles
	Q         float64 // of its poles; 0 for a section of first order
}

// Filter is a high-pass or low-pass. It is never changed after it is made, and
// serves several goroutines at once. Its phase is that of time factor exp(+i
// omega t).
type Filter struct {
	kind    Kind
	family  Family
	order   int
	corner  float64
	section []Section // frequencies as factors of the corner
}

// New returns a filter with a corner in Hz, above 0. It panics where the family has no such
// order or the corner is none: a design can name no such filter.
func New(kind Kind, family Family, order int, corner float64) Filter {
	if !slices.Contains(family.Orders(), order) || !(corner > 0) || math.IsInf(corner, 0) {
		panic(fmt.Sprintf("crossover: no %v of order %d at %v Hz", family, order, corner))
	}
	f := Filter{kind: kind, family: family, order: order, corner: corner, section: prototype(family, order)}
	if kind == HighPass {
		for i := range f.section {
			f.section[i].Frequency = 1 / f.section[i].Frequency
		}
	}
	return f
}

// Kind returns what the filter lets pass.
func (f Filter) Kind() Kind { return f.kind }

// Family returns the filter's family.
func (f Filter) Family() Family { return f.family }

// Order returns the order; each adds 6 dB an octave to the slope.
func (f Filter) Order() int { return f.order }

// Corner returns the corner in Hz.
func (f Filter) Corner() float64 { return f.corner }

// Moved returns the filter moved to another corner in Hz, above 0.
func (f Filter) Moved(corner float64) Filter {
	f.corner = corner
	return f
}

// String names the filter, such as "Bessel high-pass of order 4 at 250 Hz".
func (f Filter) String() string {
	return prose.Sprintf("%v %v of order %d at %.4g Hz", f.family, f.kind, f.order, f.corner)
}

// Sections returns the sections, that of first order first, then Q rising.
func (f Filter) Sections() []Section {
	out := slices.Clone(f.section)
	for i := range out {
		out[i].Frequency *= f.corner
	}
	return out
}

// Response returns the analog response at a frequency in Hz, 0 or above.
func (f Filter) Response(hz float64) complex128 {
	h := complex(1, 0)
	for _, s := range f.section {
		x := hz / (f.corner * s.Frequency)
		pass := complex(0, x)
		low := complex(1, x)
		if s.Q > 0 {
			pass = complex(-x*x, 0)
			low = complex(1-x*x, x/s.Q)
		}
		if f.kind == HighPass {
			h *= pass
		}
		h /= low
	}
	return h
}

// Digital returns the filter at a sampling rate in Hz. All sections are
// prewarped at the filter's own corner, where the response is exact. A corner at
// or above half the rate is an error that wraps ErrRate.
func (f Filter) Digital(rate float64) (biquad.Chain, error) {
	if !(f.corner < rate/2) || math.IsInf(rate, 0) {
		return nil, prose.Errorf("%w: %g Hz, must be above twice the corner at %g Hz", ErrRate, rate, f.corner)
	}
	warp := 1 / math.Tan(math.Pi*f.corner/rate) // s = warp (1-z)/(1+z), in units of the corner
	out := make(biquad.Chain, len(f.section))
	for i, s := range f.section {
		out[i] = s.digital(f.kind, warp/s.Frequency)
	}
	return out, nil
}

// digital returns a section with s = k (1-z)/(1+z) in units of its own
// frequency, z being one sample's delay.
func (s Section) digital(kind Kind, k float64) biquad.Section {
	if s.Q == 0 {
		a0 := 1 + k
		b := biquad.Section{B0: 1 / a0, B1: 1 / a0, A1: (1 - k) / a0}
		if kind == HighPass {
			b.B0, b.B1 = k/a0, -k/a0
		}
		return b
	}
	a0 := 1 + k/s.Q + k*k
	b := biquad.Section{B0: 1 / a0, B1: 2 / a0, B2: 1 / a0, A1: 2 * (1 - k*k) / a0, A2: (1 - k/s.Q + k*k) / a0}
	if kind == HighPass {
		pass := k * k / a0
		b.B0, b.B1, b.B2 = pass, -2*pass, pass
	}
	return b
}
