package crossover

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"pappus/layout/prose"
	"pappus/timing/biquad"
)

// Errors that this package wraps.
var (
	ErrFilter = errors.New("impossible filter")
	ErrRate   = errors.New("impossible sampling rate")
)

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

// New returns a filter with a corner in Hz, above 0. Errors wrap ErrFilter.
func New(kind Kind, family Family, order int, corner float64) (Filter, error) {
	if kind != LowPass && kind != HighPass {
		return Filter{}, fmt.Errorf("%w: %v, must be low-pass or high-pass", ErrFilter, kind)
	}
	if orders := family.Orders(); !slices.Contains(orders, order) {
		return Filter{}, fmt.Errorf("%w: %v of order %d, must be one of %v", ErrFilter, family, order, orders)
	}
	if !(corner > 0) || math.IsInf(corner, 0) {
		return Filter{}, prose.Errorf("%w: corner at %g Hz, must be above 0", ErrFilter, corner)
	}
	f := Filter{kind: kind, family: family, order: order, corner: corner, section: prototype(family, order)}
	if kind == HighPass {
		for i := range f.section {
			f.section[i].Frequency = 1 / f.section[i].Frequency
		}
	}
	return f, nil
}

// Kind returns what the filter lets pass.
func (f Filter) Kind() Kind { return f.kind }

// Family returns the filter's family.
func (f Filter) Family() Family { return f.family }

// Order returns the order; each adds 6 dB an octave to the slope.
func (f Filter) Order() int { return f.order }

// Corner returns the corner in Hz.
func (f Filter) Corner() float64 { return f.corner }

// Moved returns the filter moved to another corner in Hz, above 0; else it panics.
func (f Filter) Moved(corner float64) Filter {
	if !(corner > 0) || math.IsInf(corner, 0) {
		panic("crossover: corner must be above 0")
	}
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

// Fill fills dst with the analog response at frequencies in Hz, 0 or above. It
// panics where the lengths differ and allocates nothing.
func (f Filter) Fill(dst []complex128, frequency []float64) {
	if len(dst) != len(frequency) {
		panic("crossover: lengths differ")
	}
	for i, hz := range frequency {
		dst[i] = f.Response(hz)
	}
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
