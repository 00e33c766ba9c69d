package split

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"
)

// alike is how close in m two places may be along an axis and still count as
// level, so that rounding does not settle the order of a symmetric body's places.
const alike = 1e-9

// Neighbours splits places (m) into count groups of neighbours, as equal in
// number as can be, as indices into place. The places are cut in two by a plane
// across the axis (x, y or z) along which they reach furthest, in the proportion
// of the groups to come on either side, and so on with each part. On a convex
// body every group is of one piece.
//
// It is recursive coordinate bisection (M. J. Berger and S. H. Bokhari, IEEE
// Trans. Comput. C-36 (1987) 570). Ties are settled by x, y, z and index, in that
// order; the groups are in the order of the cuts, from the furthest along an axis
// to the least. count below 1 counts as 1, above len(place) as that.
func Neighbours(place []r3.Vec, count int) [][]int {
	if len(place) == 0 {
		return nil
	}
	all := make([]int, len(place))
	for i := range all {
		all[i] = i
	}
	return bisect(nil, place, all, max(1, min(count, len(place))))
}

// bisect appends count groups of some places to dst.
func bisect(dst [][]int, place []r3.Vec, some []int, count int) [][]int {
	if count == 1 {
		slices.Sort(some)
		return append(dst, some)
	}
	axis := furthest(place, some)
	slices.SortFunc(some, func(a, b int) int {
		order := along(place[b], axis, place[a])
		for next := range 3 {
			order = cmp.Or(order, along(place[b], next, place[a]))
		}
		return cmp.Or(order, cmp.Compare(a, b))
	})
	half := count / 2
	at := len(some) * half / count
	dst = bisect(dst, place, some[:at:at], half)
	return bisect(dst, place, some[at:], count-half)
}

// along compares two places along an axis, in steps of alike.
func along(a r3.Vec, axis int, b r3.Vec) int {
	step := func(v r3.Vec) float64 { return math.Round(coordinate(v, axis) / alike) }
	return cmp.Compare(step(a), step(b))
}

func coordinate(v r3.Vec, axis int) float64 { return [3]float64{v.X, v.Y, v.Z}[axis] }

// furthest returns the axis along which some places reach furthest; the first of
// several that are alike.
func furthest(place []r3.Vec, some []int) int {
	best, most := 0, math.Inf(-1)
	for axis := range 3 {
		low, high := math.Inf(1), math.Inf(-1)
		for _, i := range some {
			low = min(low, coordinate(place[i], axis))
			high = max(high, coordinate(place[i], axis))
		}
		if high-low > most+2*alike {
			best, most = axis, high-low
		}
	}
	return best
}
