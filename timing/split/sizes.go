package split

import "math"

// OfSizes splits as Groups does, but into groups of sizes that allowed says yes
// to; it is asked for sizes from 1 to len(arrival). The split is the best of all
// that keep the order of arrival, and of index among equal arrivals: where these
// weigh differently and a prescribed size cuts through them, another order of
// theirs may cost less, but would hang on the weights instead of on the list.
// Where there is none of count groups, ok is false. Where several are as good,
// the later groups are the larger ones.
//
// The cost is count times the square of len(arrival); where every size is
// allowed it is that of Groups. OfSizes panics where the lengths differ.
func OfSizes(arrival, weight []float64, count int, allowed func(size int) bool) (groups [][]int, cost float64, ok bool) {
	n := len(arrival)
	size := make([]bool, n+1)
	every := true
	for s := 1; s <= n; s++ {
		size[s] = allowed(s)
		every = every && size[s]
	}
	if every {
		groups, cost = Groups(arrival, weight, count)
		return groups, cost, true
	}
	if len(arrival) != len(weight) {
		panic("split: lengths differ")
	}
	count = max(1, min(count, n))
	order := sorted(arrival)
	t := newTable(arrival, weight, order)
	starts := make([][]int32, count)
	for k := range starts {
		starts[k] = make([]int32, n)
		t.sized(k, starts[k], size)
	}
	if math.IsInf(t.best[n-1], 1) {
		return nil, 0, false
	}
	return cut(order, starts), t.best[n-1], true
}

// sized fills best for k+1 groups of allowed sizes from last for k.
func (t *table) sized(k int, start []int32, allowed []bool) {
	t.best, t.last = t.last, t.best
	for j := range t.best {
		t.best[j] = math.Inf(1)
		if k == 0 {
			if allowed[j+1] {
				t.best[j] = t.cost(0, j+1)
			}
			continue
		}
		for i := k; i <= j; i++ {
			if !allowed[j+1-i] || math.IsInf(t.last[i-1], 1) {
				continue
			}
			if c := t.last[i-1] + t.cost(i, j+1); c < t.best[j] {
				t.best[j], start[j] = c, int32(i)
			}
		}
	}
}
