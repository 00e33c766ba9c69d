package split

import (
	"cmp"
	"math"
	"slices"
)

// sameCost is by what share two sums of squares may differ and still count as
// equal. Far more than their rounding, it takes in that of arrivals which would be
// alike but for the roundings on their way here.
const sameCost = 1e-12

// Groups splits arrivals (s) with weights (not negative, any common unit) into
// count groups so that the sum of weight times the squared distance from the
// group's weighted mean is least. Of several that are as good but for rounding it
// takes the one whose groups are most even in number (least sum of squared sizes),
// and of these the one whose later groups are the larger. It returns the groups,
// earliest first, as indices into arrival in order of arrival, then index: equal
// arrivals are settled the same way each time. cost is that least sum.
//
// count below 1 counts as 1, above len(arrival) as that. Groups panics where
// the lengths differ.
func Groups(arrival, weight []float64, count int) (groups [][]int, cost float64) {
	if len(arrival) == 0 && len(weight) == 0 {
		return nil, 0
	}
	t := newTable(arrival, weight, func(int) bool { return true })
	count = max(1, min(count, len(arrival)))
	t.upTo(count)
	return t.cut(count), t.costs[count-1]
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

// table is the dynamic program: best and last hold, for each prefix of the
// sorted arrivals, the least cost with the current and the last number of
// groups, and uneven and lastUneven the sum of the groups' squared sizes there.
type table struct {
	order                 []int     // indices into arrival, sorted
	arrival               []float64 // sorted
	size                  []int     // which sizes of group will do, falling; nil: all from fewest
	fewest                int       // in a group
	kept                  []float64 // residuals of the sizes that will do, [last][size]; NaN: not yet found
	weight, first, second []pair    // running sums of w, w t, w t^2
	best, last            []float64
	uneven, lastUneven    []float64
	costs                 []float64 // of all arrivals in 1, 2 … groups; +Inf where there is no split
	starts                [][]int32 // starts[k][j]: where the last of k+1 groups over the first j+1 begins
}

// newTable takes times from the middle arrival, which keeps the running sums
// small. It panics where the lengths differ.
func newTable(arrival, weight []float64, allowed func(size int) bool) *table {
	if len(arrival) != len(weight) {
		panic("split: lengths differ")
	}
	n := len(arrival)
	t := &table{
		order:   sorted(arrival),
		arrival: make([]float64, n),
		weight:  make([]pair, n+1),
		first:   make([]pair, n+1),
		second:  make([]pair, n+1),
		best:    make([]float64, n), last: make([]float64, n),
		uneven: make([]float64, n), lastUneven: make([]float64, n),
	}
	t.fewest, t.size = sizes(n, allowed)
	origin := arrival[t.order[n/2]]
	for i, o := range t.order {
		w, x := pair{high: weight[o]}, sum(arrival[o], -origin)
		wx := w.times(x)
		t.arrival[i] = arrival[o]
		t.weight[i+1] = t.weight[i].add(w)
		t.first[i+1] = t.first[i].add(wx)
		t.second[i+1] = t.second[i].add(wx.times(x))
	}
	return t
}

// residual returns the weighted squared residual of the sorted arrivals from from
// up to, but not with, to. That of equal arrivals is 0, without rounding.
func (t *table) residual(from, to int) float64 {
	w := t.weight[to].sub(t.weight[from])
	if w.high <= 0 || t.arrival[from] == t.arrival[to-1] {
		return 0
	}
	f := t.first[to].sub(t.first[from])
	return max(0, t.second[to].sub(t.second[from]).sub(f.times(f).over(w)).high)
}

// add goes on to one group more. There must be fewer groups than arrivals.
func (t *table) add() {
	t.best, t.last = t.last, t.best
	t.uneven, t.lastUneven = t.lastUneven, t.uneven
	n, k := len(t.order), len(t.starts)
	t.starts = append(t.starts, make([]int32, n))
	switch enough := (k + 1) * t.fewest; {
	case k == 0:
		for j := range t.best {
			t.best[j], t.uneven[j] = math.Inf(1), float64((j+1)*(j+1))
			if t.will(j + 1) {
				t.best[j] = t.residual(0, j+1)
			}
		}
	case t.size != nil:
		for j := range n {
			t.findOfSize(k, j)
		}
	default:
		for j := range min(enough-1, n) {
			t.best[j] = math.Inf(1) // fewer arrivals than the groups need
		}
		t.conquer(k, enough-1, n-1, k*t.fewest, n-t.fewest)
	}
}

// will tells whether a size will do.
func (t *table) will(size int) bool {
	return size >= t.fewest && (t.size == nil || slices.Contains(t.size, size))
}

// conquer fills best from j = low to high, knowing that the last group begins
// between from and to.
func (t *table) conquer(k, low, high, from, to int) {
	if low > high {
		return
	}
	mid := (low + high) / 2
	t.find(k, mid, from, min(mid+1-t.fewest, to))
	at := int(t.starts[k][mid])
	t.conquer(k, low, mid-1, from, at)
	t.conquer(k, mid+1, high, at, to)
}

// find fills best for k+1 groups over the first j+1, where the last group begins
// between from and to and all sizes from the fewest on will do.
func (t *table) find(k, j, from, to int) {
	c := newChoice(from)
	for i := from; i <= to; i++ {
		if j+1-i >= t.fewest && !math.IsInf(t.last[i-1], 1) {
			c.try(t, i, j, t.residual(i, j+1))
		}
	}
	t.best[j], t.uneven[j], t.starts[k][j] = c.cost, c.uneven, int32(c.at)
}

// mostKept bounds the residuals that are kept for further groups.
const mostKept = 1 << 17

// findOfSize fills best for k+1 groups over the first j+1, where only some sizes will
// do. Their residuals are the same for every number of groups.
func (t *table) findOfSize(k, j int) {
	if n := len(t.order) * len(t.size); t.kept == nil && n <= mostKept {
		t.kept = make([]float64, n)
		for i := range t.kept {
			t.kept[i] = math.NaN()
		}
	}
	c := newChoice(k)
	for s, size := range t.size { // falling, so that the last group begins later and later
		i := j + 1 - size
		if i < k || math.IsInf(t.last[i-1], 1) {
			continue
		}
		if t.kept == nil {
			c.try(t, i, j, t.residual(i, j+1))
			continue
		}
		r := &t.kept[j*len(t.size)+s]
		if math.IsNaN(*r) {
			*r = t.residual(i, j+1)
		}
		c.try(t, i, j, *r)
	}
	t.best[j], t.uneven[j], t.starts[k][j] = c.cost, c.uneven, int32(c.at)
}

// choice is where the last group is best to begin, of the places tried so far.
type choice struct {
	least, cost, uneven float64
	at                  int
}

func newChoice(at int) choice { return choice{math.Inf(1), math.Inf(1), math.Inf(1), at} }

// try takes a last group from i to j, of that residual, where it is better. What is
// taken is never dearer than the least but by sameCost of it.
func (c *choice) try(t *table, i, j int, residual float64) {
	cost := t.last[i-1] + residual
	if cost*(1-sameCost) > c.least {
		return
	}
	c.least = min(c.least, cost)
	n := float64(j + 1 - i)
	if u := t.lastUneven[i-1] + n*n; cost < c.cost*(1-sameCost) || u < c.uneven {
		c.cost, c.uneven, c.at = cost, u, i
	}
}

// upTo goes on until there are count groups.
func (t *table) upTo(count int) {
	for len(t.starts) < count {
		t.add()
		t.costs = append(t.costs, t.best[len(t.best)-1])
	}
}

// cut cuts the sorted list into count groups where the table says that the last group
// begins, then the one before it, and so on.
func (t *table) cut(count int) [][]int {
	groups := make([][]int, count)
	for k, end := count-1, len(t.order); k >= 0; k-- {
		from := int(t.starts[k][end-1])
		groups[k] = t.order[from:end:end]
		end = from
	}
	return groups
}
