package split

import "math"

// OfSizes splits as Groups does, but into groups of sizes that allowed says yes
// to; it is asked for sizes from 1 to len(arrival). The split is the best of all
// that keep the order of arrival, and of index among equal arrivals: where these
// weigh differently and a prescribed size cuts through them, another order of
// theirs may cost less, but would hang on the weights instead of on the list.
// Where there is none of count groups, ok is false. Ties are settled as Groups
// settles them.
//
// Where all sizes from the fewest on are allowed it takes as long as Groups, else
// count times len(arrival) times the number of sizes allowed. OfSizes panics where the
// lengths differ.
func OfSizes(arrival, weight []float64, count int, allowed func(size int) bool) (groups [][]int, cost float64, ok bool) {
	if len(arrival) == 0 && len(weight) == 0 {
		return nil, 0, true
	}
	s := NewSplits(arrival, weight, allowed)
	count = max(1, min(count, len(arrival)))
	if groups = s.Groups(count); groups == nil {
		return nil, 0, false
	}
	return groups, s.table.costs[count-1], true
}

// Splits are the splits of the same arrivals into 1, 2 … groups of sizes that will do,
// found as they are asked for: all together cost no more than the last alone.
type Splits struct{ table *table }

// NewSplits takes what OfSizes takes, and panics where that does.
func NewSplits(arrival, weight []float64, allowed func(size int) bool) *Splits {
	if len(arrival) == 0 && len(weight) == 0 {
		return &Splits{}
	}
	return &Splits{newTable(arrival, weight, allowed)}
}

// Groups returns what OfSizes does for count groups, and nil where there is no such
// split, as where count is below 1 or above the number of arrivals. The groups share
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
