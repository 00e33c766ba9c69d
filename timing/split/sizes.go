package split

import "math"

// Splits are the splits of the same arrivals into 1, 2 … groups of sizes that will do,
// found as they are asked for: all together cost no more than the last alone.
type Splits struct{ table *table }

// NewSplits splits arrivals in s with weights as Groups does, but into groups of sizes
// that allowed says yes to; it is asked for sizes from 1 to len(arrival). A split is the
// best of all that keep the order of arrival, and of index among equal arrivals: where
// these weigh differently and a prescribed size cuts through them, another order of
// theirs may cost less, but would hang on the weights instead of on the list. Ties are
// settled as Groups settles them.
//
// Where all sizes from the fewest on are allowed it takes as long as Groups, else the
// count of groups times len(arrival) times the number of sizes allowed. NewSplits panics
// where the lengths differ.
func NewSplits(arrival, weight []float64, allowed func(size int) bool) *Splits {
	if len(arrival) == 0 && len(weight) == 0 {
		return &Splits{}
	}
	return &Splits{newTable(arrival, weight, allowed)}
}

// Groups returns the best split into count groups as indices into arrival, the earliest
// group first, and nil where there is none, as where count is below 1 or above the number of arrivals. The groups share
// their memory with those of other counts.
func (s *Splits) Groups(count int) [][]int {
	if s.table == nil || count < 1 || count > len(s.table.order) {
		return nil
	}
	s.table.upTo(count)
	if math.IsInf(s.table.costs[count-1], 1) {
		return nil
	}
	return s.table.cut(count)
}

// sizes returns the fewest allowed from 1 to n, n+1 where none is, and those that are
// allowed, falling: nil where all from the fewest on are.
func sizes(n int, allowed func(size int) bool) (fewest int, size []int) {
	fewest = n + 1
	for s := n; s >= 1; s-- {
		if allowed(s) {
			fewest, size = s, append(size, s)
		}
	}
	if len(size) == n+1-fewest {
		return fewest, nil
	}
	return fewest, size
}
