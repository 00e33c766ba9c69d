// Package split sorts arrivals into groups that share one delay.
//
// The best split of numbers on a line into K groups by squared residual is
// always a split of the sorted list, and dynamic programming finds it exactly
// (W. D. Fisher, "On grouping for maximum homogeneity", J. Am. Stat. Assoc. 53
// (1958) 789). The cost obeys the quadrangle inequality, so each row of the
// table is filled by divide and conquer in n log n steps (F. F. Yao, SIAM J.
// Alg. Disc. Meth. 3 (1982) 532).
//
// It still holds where groups need at least so many members: take the cost of one
// that is too small for infinite. Where some larger size will not do it no longer
// holds, and the row is filled in full, for each size that will do. With equal
// weights the best split is one of the sorted list still: to swap two members that
// stand the wrong way round keeps all sizes and never raises the cost. With unequal
// weights and few sizes to choose from a split that is not of the sorted list can
// now and then be better by a little; it is not looked for.
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

// Splits are the splits of the same arrivals into 1, 2 … groups of sizes that will do,
// found as they are asked for: all together cost no more than the last alone.
//
// It is the dynamic program: best and last hold, for each prefix of the sorted arrivals,
// the least cost with the current and the last number of groups, and uneven and lastUneven
// the sum of the groups' squared sizes there.
type Splits struct {
	order                 []int     // indices into arrival, sorted
	arrival               []float64 // sorted
	allowed               []bool    // [size of a group]
	fewest, most          int       // the least and the greatest size allowed
	every                 bool      // all sizes from fewest on are allowed
	weight, first, second []pair    // running sums of w, w t, w t^2
	errors                errors
	best, last            []float64
	uneven, lastUneven    []float64
	bound                 []float64 // scratch
	costs                 []float64 // of all arrivals in 1, 2 … groups; +Inf where there is no split
	starts                [][]int32 // starts[k][j]: where the last of k+1 groups over the first j+1 begins
}

// NewSplits splits arrivals in s with weights (not negative, any common unit) so that the
// sum of weight times the squared distance from the group's weighted mean is least, into
// groups of sizes that allowed says yes to; it is asked for sizes from 1 to len(arrival). A
// split is the best of all that keep the order of arrival, and of index among equal
// arrivals: where these weigh differently and a prescribed size cuts through them, another
// order of theirs may cost less, but would hang on the weights instead of on the list.
//
// Of several that are as good but for rounding it takes the one whose groups are most even
// in number (least sum of squared sizes), and of these the one whose later groups are the
// larger. NewSplits panics where the lengths differ.
func NewSplits(arrival, weight []float64, allowed func(size int) bool) *Splits {
	if len(arrival) != len(weight) {
		panic("split: lengths differ")
	}
	n := len(arrival)
	s := &Splits{
		order: make([]int, n), arrival: make([]float64, n), allowed: make([]bool, n+1), fewest: n + 1, every: true,
		weight: make([]pair, n+1), first: make([]pair, n+1), second: make([]pair, n+1),
		best: make([]float64, n), last: make([]float64, n), uneven: make([]float64, n), lastUneven: make([]float64, n),
		bound: make([]float64, n),
	}
	for size := n; size >= 1; size-- {
		if s.allowed[size] = allowed(size); s.allowed[size] {
			s.every = s.every && size == min(s.fewest, n+1)-1
			s.fewest, s.most = size, max(s.most, size)
		}
	}
	for i := range s.order {
		s.order[i] = i
	}
	slices.SortFunc(s.order, func(a, b int) int {
		return cmp.Or(cmp.Compare(arrival[a], arrival[b]), cmp.Compare(a, b))
	})
	for i, o := range s.order {
		// Times from the middle arrival keep the running sums small.
		w, x := pair{high: weight[o]}, sum(arrival[o], -arrival[s.order[n/2]])
		wx := w.times(x)
		s.arrival[i] = arrival[o]
		s.weight[i+1] = s.weight[i].add(w)
		s.first[i+1] = s.first[i].add(wx)
		s.second[i+1] = s.second[i].add(wx.times(x))
		s.errors.widen(x.high, s.weight[i+1].high, s.first[i+1].high, s.second[i+1].high)
	}
	return s
}

// Groups returns the best split into count groups as indices into arrival in order of
// arrival, then index, the earliest group first; nil where there is none, as where count is
// below 1 or above the number of arrivals. The groups share their memory with those of
// other counts.
func (s *Splits) Groups(count int) [][]int {
	if count < 1 || count > len(s.order) {
		return nil
	}
	for len(s.starts) < count {
		s.add()
	}
	if math.IsInf(s.costs[count-1], 1) {
		return nil
	}
	groups := make([][]int, count)
	for k, end := count-1, len(s.order); k >= 0; k-- {
		from := int(s.starts[k][end-1])
		groups[k] = s.order[from:end:end]
		end = from
	}
	return groups
}

// residual returns the weighted squared residual of the sorted arrivals from from
// up to, but not with, to. That of equal arrivals is 0, without rounding.
func (s *Splits) residual(from, to int) float64 {
	w := s.weight[to].sub(s.weight[from])
	if w.high <= 0 || s.arrival[from] == s.arrival[to-1] {
		return 0
	}
	f := s.first[to].sub(s.first[from])
	return max(0, s.second[to].sub(s.second[from]).sub(f.times(f).over(w)).high)
}

// errors bounds what roughly leaves out: fixed, and a part that grows as a group weighs
// less, of arrivals, running sums of weights and of first and second moments up to these.
type errors struct{ furthest, weight, first, second float64 }

func (e *errors) widen(x, weight, first, second float64) {
	e.furthest, e.first = max(e.furthest, math.Abs(x)), max(e.first, math.Abs(first))
	e.weight, e.second = weight, second
}

// roughly returns the residual from sums in single float64, far faster, and by how much it
// may be off: a rounding in each of the sums that are subtracted, times 16 for those here.
func (s *Splits) roughly(from, to int) (residual, off float64) {
	const rounding = 16 * 0x1p-53
	w := s.weight[to].high - s.weight[from].high
	if w <= 0 {
		return 0, 0
	}
	f, square := s.first[to].high-s.first[from].high, s.second[to].high-s.second[from].high
	by := 1 / w
	return square - f*f*by, rounding * (s.errors.second + s.errors.furthest*s.errors.first + square*s.errors.weight*by)
}

// add goes on to one group more. There must be fewer groups than arrivals.
func (s *Splits) add() {
	s.best, s.last = s.last, s.best
	s.uneven, s.lastUneven = s.lastUneven, s.uneven
	n, k := len(s.order), len(s.starts)
	s.starts = append(s.starts, make([]int32, n))
	for j := range s.best {
		s.best[j] = math.Inf(1) // as where there are fewer arrivals than the groups need
	}
	switch {
	case k == 0:
		for j := range s.best {
			if s.uneven[j] = float64((j + 1) * (j + 1)); s.allowed[j+1] {
				s.best[j] = s.residual(0, j+1)
			}
		}
	case s.every:
		s.conquer(k, (k+1)*s.fewest-1, n-1, k*s.fewest, n-s.fewest)
	default:
		for j := range n {
			s.find(k, j, k, j)
		}
	}
	s.costs = append(s.costs, s.best[n-1])
}

// conquer fills best from j = low to high, knowing that the last group begins
// between from and to.
func (s *Splits) conquer(k, low, high, from, to int) {
	if low > high {
		return
	}
	mid := (low + high) / 2
	s.find(k, mid, from, to)
	at := int(s.starts[k][mid])
	s.conquer(k, low, mid-1, from, at)
	s.conquer(k, mid+1, high, at, to)
}

// find fills best for k+1 groups over the first j+1, where the last group begins between
// from and to. Most beginnings are ruled out by rough costs: by far more than sameCost, so
// that what is left is settled as if all were tried.
func (s *Splits) find(k, j, from, to int) {
	const ruledOut = 1 + 1e-6
	from, to = max(from, j+1-s.most), min(to, j+1-s.fewest)
	least := math.Inf(1)
	for i := from; i <= to; i++ {
		s.bound[i] = math.Inf(1)
		if s.allowed[j+1-i] && !math.IsInf(s.last[i-1], 1) {
			cost, off := s.roughly(i, j+1)
			cost += s.last[i-1]
			s.bound[i], least = cost-off, min(least, cost+off)
		}
	}
	c := choice{math.Inf(1), math.Inf(1), math.Inf(1), max(k, from)}
	for i := from; i <= to; i++ { // so that the last group begins later and later
		if !math.IsInf(s.bound[i], 1) && s.bound[i] <= least*ruledOut {
			size := float64(j + 1 - i)
			c.try(i, s.last[i-1]+s.residual(i, j+1), s.lastUneven[i-1]+size*size)
		}
	}
	s.best[j], s.uneven[j], s.starts[k][j] = c.cost, c.uneven, int32(c.at)
}

// choice is where the last group is best to begin, of the places tried so far.
type choice struct {
	least, cost, uneven float64
	at                  int
}

// try takes a beginning where it is better. What is taken is never dearer than the least
// but by sameCost of it.
func (c *choice) try(at int, cost, uneven float64) {
	if cost*(1-sameCost) > c.least {
		return
	}
	c.least = min(c.least, cost)
	if cost < c.cost*(1-sameCost) || uneven < c.uneven {
		c.cost, c.uneven, c.at = cost, uneven, at
	}
}

// Smear returns the smear in s that is left where each group of drivers, given
// as indices into arrival, shares the delay that brings its weighted mean
// arrival into step with the others'. Drivers in no group do not count. It is 0
// where no weight is above 0.
func Smear(groups [][]int, arrival, weight []float64) float64 {
	var square, total float64
	for _, g := range groups {
		var w, mean float64
		for _, i := range g {
			w += weight[i]
			mean += weight[i] * (arrival[i] - arrival[g[0]])
		}
		if w <= 0 {
			continue
		}
		mean = mean/w + arrival[g[0]]
		for _, i := range g {
			off := arrival[i] - mean
			square += weight[i] * off * off
		}
		total += w
	}
	if total <= 0 {
		return 0
	}
	return math.Sqrt(square / total)
}
