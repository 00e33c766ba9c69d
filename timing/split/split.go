package split

import (
	"cmp"
	"math"
	"slices"
)

// Groups splits arrivals (s) with weights (not negative, any common unit) into
// count groups so that the sum of weight times the squared distance from the
// group's weighted mean is least. It returns the groups, earliest first, as
// indices into arrival in order of arrival, then index: equal arrivals are
// settled the same way each time. cost is that least sum.
//
// count below 1 counts as 1, above len(arrival) as that. Groups panics where
// the lengths differ.
func Groups(arrival, weight []float64, count int) (groups [][]int, cost float64) {
	if len(arrival) != len(weight) {
		panic("split: lengths differ")
	}
	n := len(arrival)
	if n == 0 {
		return nil, 0
	}
	count = max(1, min(count, n))
	order := sorted(arrival)
	t := newTable(arrival, weight, order)
	starts := make([][]int32, count) // starts[k][j]: where the last of k+1 groups over the first j+1 begins
	for k := range starts {
		starts[k] = make([]int32, n)
		t.row(k, starts[k])
	}
	return cut(order, starts), t.best[n-1]
}

// sorted returns the indices into arrival in order of arrival, then index.
func sorted(arrival []float64) []int {
	order := make([]int, len(arrival))
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(a, b int) int {
		return cmp.Or(cmp.Compare(arrival[a], arrival[b]), cmp.Compare(a, b))
	})
	return order
}

// cut cuts the sorted list where the table says that the last group begins, then
// the one before it, and so on.
func cut(order []int, starts [][]int32) [][]int {
	groups := make([][]int, len(starts))
	for k, end := len(starts)-1, len(order); k >= 0; k-- {
		from := int(starts[k][end-1])
		groups[k] = order[from:end:end]
		end = from
	}
	return groups
}

// table is the dynamic program: best and last hold, for each prefix of the
// sorted arrivals, the least cost with the current and the last number of
// groups.
type table struct {
	weight, first, second []float64 // running sums of w, w t, w t^2
	best, last            []float64
}

// newTable takes times from the middle arrival, which keeps the running sums
// of squares from drowning the differences.
func newTable(arrival, weight []float64, order []int) *table {
	n := len(order)
	t := &table{
		weight: make([]float64, n+1),
		first:  make([]float64, n+1),
		second: make([]float64, n+1),
		best:   make([]float64, n),
		last:   make([]float64, n),
	}
	origin := arrival[order[n/2]]
	for i, o := range order {
		w, x := weight[o], arrival[o]-origin
		t.weight[i+1] = t.weight[i] + w
		t.first[i+1] = t.first[i] + w*x
		t.second[i+1] = t.second[i] + w*x*x
	}
	return t
}

// cost returns the weighted squared residual of the sorted arrivals from from
// up to, but not with, to.
func (t *table) cost(from, to int) float64 {
	w := t.weight[to] - t.weight[from]
	if w <= 0 {
		return 0
	}
	f := t.first[to] - t.first[from]
	return max(0, t.second[to]-t.second[from]-f*f/w)
}

// row fills best for k+1 groups from last for k.
func (t *table) row(k int, start []int32) {
	t.best, t.last = t.last, t.best
	if k == 0 {
		for j := range t.best {
			t.best[j] = t.cost(0, j+1)
		}
		return
	}
	for j := range k {
		t.best[j] = math.Inf(1) // fewer arrivals than groups
	}
	t.conquer(k, len(t.best)-1, k, len(t.best)-1, start)
}

// conquer fills best from j = low to high, knowing that the last group begins
// between from and to.
func (t *table) conquer(low, high, from, to int, start []int32) {
	if low > high {
		return
	}
	mid := (low + high) / 2
	least, at := math.Inf(1), from
	for i := from; i <= min(mid, to); i++ {
		if c := t.last[i-1] + t.cost(i, mid+1); c < least {
			least, at = c, i
		}
	}
	t.best[mid] = least
	start[mid] = int32(at)
	t.conquer(low, mid-1, from, at, start)
	t.conquer(mid+1, high, at, to, start)
}
