package body

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"
)

// Order returns the indices of points from the top down and, those of one
// height, by azimuth from x and then from the axis outward. Heights and
// azimuths that differ by less than a millionth of the farthest point's
// distance count as one; among points that are one their order is kept.
func Order(points []r3.Vec) []int {
	reach := 0.0
	for _, p := range points {
		reach = max(reach, r3.Norm(p))
	}
	keys := make([]key, len(points))
	index := make([]int, len(points))
	for i, p := range points {
		keys[i], index[i] = keyOf(p, tolerance*reach), i
	}
	// A ring ends where the next height is a step away, so that rounding can
	// not tear a ring apart.
	slices.SortStableFunc(index, func(a, b int) int { return cmp.Compare(points[b].Z, points[a].Z) })
	for from, to := 0, 0; from < len(index); from = to {
		for to = from + 1; to < len(index) && points[index[to-1]].Z-points[index[to]].Z <= tolerance*reach; {
			to++
		}
		slices.Sort(index[from:to])
		slices.SortStableFunc(index[from:to], func(a, b int) int { return keys[a].compare(keys[b]) })
	}
	return index
}

// key is a place in a ring, in whole steps.
type key struct{ azimuth, out float64 }

func keyOf(p r3.Vec, step float64) key {
	out := math.Hypot(p.X, p.Y)
	if !(out > step) {
		return key{}
	}
	turn := math.Atan2(p.Y, p.X)
	if turn < -tolerance {
		turn += 2 * math.Pi
	}
	return key{math.Round(turn / tolerance), math.Round(out / step)}
}

func (k key) compare(l key) int {
	return cmp.Or(cmp.Compare(k.azimuth, l.azimuth), cmp.Compare(k.out, l.out))
}
