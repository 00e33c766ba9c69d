package pareto

import (
	"cmp"
	"math"
	"slices"
)

// Layers returns for each point its layer: 0 on the front, where no other dominates it, and
// then one more than the greatest layer among those that do. Points that are equal share a
// layer. It takes O(n log^(aims-1) n). Points of unequal lengths are a programmer's error.
func Layers(points [][]float64) []int {
	layer := make([]int, len(points))
	if len(points) == 0 {
		return layer
	}
	s := newSorter(points)
	all := make([]int32, len(s.layer))
	for i := range all {
		all[i] = int32(i)
	}
	if aims := len(points[0]); aims > 1 {
		s.among(all, aims-1)
	} else if aims == 1 {
		copy(s.layer, all)
	}
	for i, u := range s.unique {
		layer[i] = int(s.layer[u])
	}
	return layer
}

// sorter holds points without their doubles, in the order of their first value, then second …
type sorter struct {
	unique []int32   // for each point given, which of the sorter's it is
	rank   [][]int32 // [aim][point] place of the value among all of that aim, equal ones alike
	layer  []int32   // the greatest found so far
	best   []int32   // Fenwick's tree (1994) over ranks of aim 1: greatest layer + 1 below
}

// newSorter sorts points. Ranks stand for values, so that NaN and infinities need no care.
func newSorter(points [][]float64) *sorter {
	order := byValues(points)
	s := &sorter{unique: make([]int32, len(points))}
	n := int32(-1)
	var kept []int
	for k, i := range order {
		if k == 0 || compare(points[order[k-1]], points[i]) != 0 {
			n++
			kept = append(kept, i)
		}
		s.unique[i] = n
	}
	for a := range points[0] {
		s.rank = append(s.rank, ranks(points, kept, a))
	}
	s.layer = make([]int32, len(kept))
	s.best = make([]int32, len(kept)+1)
	return s
}

// byValues returns indices of points by their first value, then the second …, then the index.
func byValues(points [][]float64) []int {
	order := make([]int, len(points))
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(i, j int) int {
		return cmp.Or(compare(points[i], points[j]), cmp.Compare(i, j))
	})
	return order
}

// compare compares points by their first value, then by the second …
func compare(p, q []float64) int {
	if len(p) != len(q) {
		panic("pareto: points of unequal lengths")
	}
	for a := range p {
		if c := cmp.Compare(known(p[a]), known(q[a])); c != 0 {
			return c
		}
	}
	return 0
}

// known returns a value, or +Inf for NaN.
func known(v float64) float64 {
	if math.IsNaN(v) {
		return math.Inf(1)
	}
	return v
}

// ranks returns for each of kept the place of its value of one aim among all.
func ranks(points [][]float64, kept []int, aim int) []int32 {
	values := make([]float64, len(kept))
	for k, i := range kept {
		values[k] = known(points[i][aim])
	}
	sorted := slices.Clone(values)
	slices.Sort(sorted)
	sorted = slices.Compact(sorted)
	rank := make([]int32, len(kept))
	for k, v := range values {
		at, _ := slices.BinarySearch(sorted, v)
		rank[k] = int32(at)
	}
	return rank
}

// few is how many pairs are compared one by one rather than split further. It decides nothing
// but speed: over 10^5 points in 3 to 5 aims 1,000 and 3,000 are the same within a twentieth,
// 200 a tenth slower, 50 a quarter.
const few = 1000

// among finds layers of points that are equal in all aims above k, from what dominates them
// among themselves. It splits by aim k: the lower half, what that does to the upper half in
// the aims left, the upper half.
func (s *sorter) among(points []int32, k int) {
	if len(points)*len(points) <= 2*few {
		for i, p := range points {
			s.each(points[:i], p, k)
		}
		return
	}
	if k == 1 {
		s.sweep(points, points)
		return
	}
	least, most := s.span(points, k)
	if least == most {
		s.among(points, k-1)
		return
	}
	low, high := s.split(points, k, (least+most)/2)
	s.among(low, k)
	s.above(low, high, k-1)
	s.among(high, k)
}

// above raises layers of points over those of others, known already, that are nowhere
// greater in aims 0 to k, and less in one above.
func (s *sorter) above(others, points []int32, k int) {
	if len(others) == 0 || len(points) == 0 {
		return
	}
	if len(others)*len(points) <= few {
		for _, p := range points {
			s.each(others, p, k)
		}
		return
	}
	if k == 1 {
		s.sweep(others, points)
		return
	}
	least, most := s.span(others, k)
	lowest, highest := s.span(points, k)
	switch {
	case least > highest:
	case most <= lowest:
		s.above(others, points, k-1)
	default:
		middle := (min(least, lowest) + max(most, highest)) / 2
		low, high := s.split(others, k, middle)
		under, over := s.split(points, k, middle)
		s.above(low, under, k)
		s.above(low, over, k-1)
		s.above(high, over, k)
	}
}

// each raises the layer of a point over those of others that are nowhere greater in aims 0 to k.
func (s *sorter) each(others []int32, p int32, k int) {
next:
	for _, o := range others {
		if s.layer[o] < s.layer[p] {
			continue
		}
		for a := 0; a <= k; a++ {
			if s.rank[a][o] > s.rank[a][p] {
				continue next
			}
		}
		s.layer[p] = s.layer[o] + 1
	}
}

// sweep raises layers over those of others that are nowhere greater in aims 0 and 1: points
// come by aim 0, and a tree over aim 1 has the greatest layer so far. Where both are the same
// points, each is raised over those before it.
func (s *sorter) sweep(others, points []int32) {
	first, second := s.rank[0], s.rank[1]
	same := &others[0] == &points[0]
	put := 0
	for _, p := range points {
		for !same && put < len(others) && first[others[put]] <= first[p] {
			s.put(others[put])
			put++
		}
		for at := second[p] + 1; at > 0; at -= at & -at {
			s.layer[p] = max(s.layer[p], s.best[at])
		}
		if same {
			s.put(p)
			put++
		}
	}
	for _, o := range others[:put] {
		for at := second[o] + 1; int(at) < len(s.best); at += at & -at {
			s.best[at] = 0
		}
	}
}

// put tells the tree of a point's layer.
func (s *sorter) put(p int32) {
	for at := s.rank[1][p] + 1; int(at) < len(s.best); at += at & -at {
		s.best[at] = max(s.best[at], s.layer[p]+1)
	}
}

// span returns the least and the greatest rank of points in an aim.
func (s *sorter) span(points []int32, aim int) (least, most int32) {
	rank := s.rank[aim]
	least, most = rank[points[0]], rank[points[0]]
	for _, p := range points[1:] {
		least, most = min(least, rank[p]), max(most, rank[p])
	}
	return least, most
}

// split parts points by their rank in an aim, up to a middle and above, in their order.
func (s *sorter) split(points []int32, aim int, middle int32) (low, high []int32) {
	rank := s.rank[aim]
	low = make([]int32, 0, len(points))
	for _, p := range points {
		if rank[p] <= middle {
			low = append(low, p)
		} else {
			high = append(high, p)
		}
	}
	return low, high
}
