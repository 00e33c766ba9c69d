package equaliser

import (
	"errors"
	"fmt"
	"math"

	"pappus/layout/prose"
	"pappus/timing/biquad"
)

// Errors that this package wraps.
var (
	ErrSection = errors.New("impossible section")
	ErrCurve   = errors.New("impossible curve")
)

// Shape is what a section does to the level over frequency.
type Shape int8

// The shapes.
const (
	Peaking Shape = iota
	LowShelf
	HighShelf
)

// String names the shape.
func (s Shape) String() string { return [...]string{"peaking", "low shelf", "high shelf"}[s] }

// ShelfQ is the Q of the steepest shelf that does not overshoot.
const ShelfQ = math.Sqrt2 / 2

// Section is one section in the form that processors ask for.
type Section struct {
	Shape     Shape
	Frequency float64 // Hz: of a peak its middle, of a shelf where it has half its gain in dB
	Q         float64
	Gain      float64 // dB
}

// String gives the section's values, such as "peaking at 1250 Hz, Q 2.00, -4.5 dB".
func (s Section) String() string {
	return prose.Sprintf("%v at %.4g Hz, Q %.2f, %+.1f dB", s.Shape, s.Frequency, s.Q, s.Gain)
}

// Digital returns the section's coefficients at a sampling rate in Hz. A
// frequency that is not between 0 and half the rate, a Q that is not above 0 or a
// gain beyond 100 dB either way is an error that wraps ErrSection.
func (s Section) Digital(rate float64) (biquad.Section, error) {
	switch {
	case !(s.Frequency > 0 && s.Frequency < rate/2) || math.IsInf(rate, 0):
		return biquad.Section{}, prose.Errorf("%w: %g Hz at a rate of %g Hz, must be above 0 and below half the rate", ErrSection, s.Frequency, rate)
	case !(s.Q > 0) || math.IsInf(s.Q, 0):
		return biquad.Section{}, prose.Errorf("%w: Q %g, must be above 0", ErrSection, s.Q)
	case !(math.Abs(s.Gain) <= 100):
		return biquad.Section{}, prose.Errorf("%w: gain %g dB, must be from -100 to 100", ErrSection, s.Gain)
	}
	return s.digital(rate), nil
}

// digital works the cookbook's formulae out.
func (s Section) digital(rate float64) biquad.Section {
	a := math.Pow(10, s.Gain/40)
	sin, cos := math.Sincos(2 * math.Pi * s.Frequency / rate)
	alpha := sin / (2 * s.Q)
	if s.Shape == Peaking {
		a0 := 1 + alpha/a
		return biquad.Section{
			B0: (1 + alpha*a) / a0, B1: -2 * cos / a0, B2: (1 - alpha*a) / a0,
			A1: -2 * cos / a0, A2: (1 - alpha/a) / a0,
		}
	}
	if s.Shape == HighShelf {
		cos = -cos // the low shelf's formulae, mirrored at a quarter of the rate
	}
	edge := 2 * math.Sqrt(a) * alpha
	a0 := (a + 1) + (a-1)*cos + edge
	b := biquad.Section{
		B0: a * ((a + 1) - (a-1)*cos + edge) / a0,
		B1: 2 * a * ((a - 1) - (a+1)*cos) / a0,
		B2: a * ((a + 1) - (a-1)*cos - edge) / a0,
		A1: -2 * ((a - 1) + (a+1)*cos) / a0,
		A2: ((a + 1) + (a-1)*cos - edge) / a0,
	}
	if s.Shape == HighShelf {
		b.B1, b.A1 = -b.B1, -b.A1
	}
	return b
}

// Chain returns the coefficients of sections at a sampling rate in Hz, in the
// same order; errors wrap ErrSection and name the section, from 1.
func Chain(sections []Section, rate float64) (biquad.Chain, error) {
	out := make(biquad.Chain, len(sections))
	for i, s := range sections {
		var err error
		if out[i], err = s.Digital(rate); err != nil {
			return nil, fmt.Errorf("section %d: %w", i+1, err)
		}
	}
	return out, nil
}
