package fit

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"
)

// nearest finds for each point the other one to which a distance is least: the lower numbered
// of several that are as near but for [Slack]. The distance must never be less than that of
// the points less both their reaches; where it cannot be less than a limit any such value will
// do. Points are swept along x, outward from each.
func nearest(points []r3.Vec, reach float64, distance func(i, j int, limit float64) float64) (least []float64, to []int) {
	least, to = make([]float64, len(points)), make([]int, len(points))
	order := make([]int, len(points))
	for i := range order {
		order[i], least[i], to[i] = i, math.Inf(1), -1
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(points[a].X, points[b].X) })
	for at, i := range order {
		for _, step := range [2]int{-1, 1} {
			for k := at + step; k >= 0 && k < len(order); k += step {
				j := order[k]
				across := r3.Sub(points[j], points[i])
				limit := least[i] + Slack
				if math.Abs(across.X)-2*reach > limit {
					break
				}
				if r3.Norm(across)-2*reach > limit {
					continue
				}
				d := distance(i, j, limit)
				if d < limit && (d < least[i]-Slack || j < to[i]) {
					to[i] = j
				}
				least[i] = min(least[i], d)
			}
		}
	}
	return least, to
}
