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
// count times the square of len(arrival). OfSizes panics where the lengths differ.
func OfSizes(arrival, weight []float64, count int, allowed func(size int) bool) (groups [][]int, cost float64, ok bool) {
	if len(arrival) == 0 && len(weight) == 0 {
		return nil, 0, true
	}
	t := newTable(arrival, weight, allowed)
	for range max(1, min(count, len(arrival))) {
		t.add()
	}
	if math.IsInf(t.cost(), 1) {
		return nil, 0, false
	}
	return t.cut(), t.cost(), true
}

// UpTo returns what OfSizes does for 1, 2 … most groups, in that order and no more
// than there are arrivals; nil where there is no such split. All together cost no
// more than the last alone.
func UpTo(arrival, weight []float64, most int, allowed func(size int) bool) [][][]int {
	most = min(most, len(arrival))
	if most < 1 {
		return nil
	}
	t := newTable(arrival, weight, allowed)
	out := make([][][]int, most)
	for k := range out {
		if t.add(); !math.IsInf(t.cost(), 1) {
			out[k] = t.cut()
		}
	}
	return out
}

// sizes returns the fewest allowed from 1 to n, n+1 where none is, and which are
// allowed: nil where all from the fewest on are.
func sizes(n int, allowed func(size int) bool) (fewest int, size []bool) {
	fewest, size = n+1, make([]bool, n+1)
	gaps := false
	for s := 1; s <= n; s++ {
		if size[s] = allowed(s); size[s] {
			fewest = min(fewest, s)
		}
		gaps = gaps || s > fewest && !size[s]
	}
	if !gaps {
		size = nil
	}
	return fewest, size
}
