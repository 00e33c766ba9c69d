package fit

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"
)

// nearest finds for each point the other one to which a distance is least: the
// lower numbered of several. The distance must never be less than that of the
// points less both their reaches; where it cannot be less than a limit any such
// value will do. Points are swept along x, outward from each.
func nearest(points []r3.Vec, reach float64, distance func(i, j int, limit float64) float64) (least []float64, to []int) {
	least, to = make([]float64, len(points)), make([]int, len(points))
	order := make([]int, len(points))
	for i := range order {
		order[i], least[i], to[i] = i, math.Inf(1), -1
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(points[a].X, points[b].X) })
	for at, i := range order {
		consider := func(j int) bool {
			across := r3.Sub(points[j], points[i])
			if math.Abs(across.X)-2*reach > least[i] {
				return false
			}
			if r3.Norm(across)-2*reach > least[i] {
				return true
			}
			d := distance(i, j, least[i])
			if d < least[i] || d == least[i] && !math.IsInf(d, 1) && j < to[i] {
				least[i], to[i] = d, j
			}
			return true
		}
		down, up := at-1, at+1
		for down >= 0 || up < len(order) {
			if down >= 0 {
				if down--; !consider(order[down+1]) {
					down = -1
				}
			}
			if up < len(order) {
				if up++; !consider(order[up-1]) {
					up = len(order)
				}
			}
		}
	}
	return least, to
}
