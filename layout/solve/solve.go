// Package solve finds one unknown: where a function is zero, and where it is least.
package solve

import "math"

// Root returns where f changes sign between low and high, by halving the interval until it
// is narrower than tolerance or as narrow as float64 has it (R. P. Brent, Algorithms for
// Minimization without Derivatives, chapter 4). f(low) and f(high) must not have the same
// sign; if they have, ok is false.
func Root(f func(float64) float64, low, high, tolerance float64) (x float64, ok bool) {
	atLow, atHigh := f(low), f(high)
	if !(atLow*atHigh <= 0) {
		return math.NaN(), false
	}
	if atLow == 0 {
		return low, true
	}
	for high-low > tolerance {
		middle := low + (high-low)/2
		if middle <= low || middle >= high {
			break
		}
		if at := f(middle); (at < 0) == (atLow < 0) && at != 0 {
			low, atLow = middle, at
		} else {
			high = middle
		}
	}
	return low + (high-low)/2, true
}

// Least returns where f is least between low and high, to tolerance, by golden section (J.
// Kiefer, Proc. American Mathematical Society 4 (1953) 502). Where f has more than one dip it
// finds one of them.
func Least(f func(float64) float64, low, high, tolerance float64) float64 {
	ratio := (math.Sqrt(5) - 1) / 2
	a, b := high-ratio*(high-low), low+ratio*(high-low)
	atA, atB := f(a), f(b)
	for high-low > tolerance && a < b {
		if atA <= atB {
			high, b, atB = b, a, atA
			a = high - ratio*(high-low)
			atA = f(a)
		} else {
			low, a, atA = a, b, atB
			b = low + ratio*(high-low)
			atB = f(b)
		}
	}
	return low + (high-low)/2
}

// Edge returns the last place from yes on towards no where something holds, by halving the way
// between them until that is narrower than a tolerance, than a share of that place, or than
// float64 has it. It holds at yes, and does not at no.
func Edge(holds func(float64) bool, yes, no, tolerance, share float64) float64 {
	for math.Abs(no-yes) > max(tolerance, share*math.Abs(yes)) {
		middle := (yes + no) / 2
		if middle == yes || middle == no {
			break
		}
		if holds(middle) {
			yes = middle
		} else {
			no = middle
		}
	}
	return yes
}
