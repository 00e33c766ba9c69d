package layout

import (
	"cmp"
	"math"
	"slices"
)

// sameHeight is how near, over the radius, heights in one ring are.
const sameHeight = 1e-6

// number sorts mounts from the top down, ring by ring, each ring
// counter-clockwise from x, and numbers them from 1. radius is the body's, in m.
// Mounts of a list have their numbers and their order already.
func number(m []Mount, radius float64) {
	if len(m) > 0 && m[0].ID > 0 {
		return
	}
	slices.SortStableFunc(m, func(a, b Mount) int { return cmp.Compare(b.Point.Z, a.Point.Z) })
	for from := 0; from < len(m); {
		to := from + 1
		for to < len(m) && m[from].Point.Z-m[to].Point.Z <= sameHeight*radius {
			to++
		}
		slices.SortStableFunc(m[from:to], func(a, b Mount) int {
			return cmp.Compare(azimuth(a, radius), azimuth(b, radius))
		})
		from = to
	}
	for i := range m {
		m[i].ID = i + 1
	}
}

// azimuth is counter-clockwise from x, from 0 to less than a full turn but for
// rounding, which must not send the first mount of a ring to its end.
func azimuth(m Mount, radius float64) float64 {
	if math.Hypot(m.Point.X, m.Point.Y) < rounding*radius {
		return 0
	}
	a := math.Atan2(m.Point.Y, m.Point.X)
	if a < -rounding {
		a += 2 * math.Pi
	}
	return a
}
