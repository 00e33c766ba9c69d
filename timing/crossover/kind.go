package crossover

import "fmt"

// Kind tells what a filter lets pass.
type Kind int8

// The kinds of filter.
const (
	LowPass Kind = iota
	HighPass
)

// String names the kind.
func (k Kind) String() string {
	switch k {
	case LowPass:
		return "low-pass"
	case HighPass:
		return "high-pass"
	}
	return fmt.Sprintf("Kind(%d)", int8(k))
}

// Family tells what a filter is best at.
type Family int8

// The families of filters.
const (
	Butterworth Family = iota
	LinkwitzRiley
	Bessel
)

// String names the family.
func (f Family) String() string {
	switch f {
	case Butterworth:
		return "Butterworth"
	case LinkwitzRiley:
		return "Linkwitz-Riley"
	case Bessel:
		return "Bessel"
	}
	return fmt.Sprintf("Family(%d)", int8(f))
}

// MostOrder is the highest order.
const MostOrder = 8

// Orders returns the orders that a family has, rising; nil for no family.
func (f Family) Orders() []int {
	switch f {
	case Butterworth, Bessel:
		return []int{1, 2, 3, 4, 5, 6, 7, 8}
	case LinkwitzRiley:
		return []int{2, 4, 6, 8}
	}
	return nil
}
