package split

import "math"

// pair is a number as the sum of two, the second within half a rounding of the
// first: about 32 digits (T. J. Dekker, "A floating-point technique for extending
// the available precision", Numer. Math. 18 (1971) 224). Running sums are kept so:
// the squares of a few arrivals close together are the small difference of two
// large sums, and what rounding leaves of it would settle which split is best.
type pair struct{ high, low float64 }

// sum returns a+b without rounding (D. E. Knuth's two-sum).
func sum(a, b float64) pair {
	s := a + b
	back := s - a
	return pair{s, (a - (s - back)) + (b - back)}
}

// product returns a b without rounding.
func product(a, b float64) pair {
	p := a * b
	return pair{p, math.FMA(a, b, -p)}
}

func (a pair) add(b pair) pair {
	s := sum(a.high, b.high)
	return sum(s.high, s.low+a.low+b.low)
}

func (a pair) sub(b pair) pair { return a.add(pair{-b.high, -b.low}) }

func (a pair) times(b pair) pair {
	p := product(a.high, b.high)
	return sum(p.high, p.low+math.FMA(a.high, b.low, a.low*b.high))
}

func (a pair) over(b pair) pair {
	q := a.high / b.high
	rest := a.sub(b.times(pair{high: q}))
	return sum(q, rest.high/b.high)
}
