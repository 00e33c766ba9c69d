package shell

import (
	"cmp"
	"math"
	"slices"

	"pappus/layout/solve"

	"gonum.org/v1/gonum/spatial/r3"
)

// extent returns half of a disc's width along a unit direction.
func (c Hole) extent(u r3.Vec) float64 {
	along := r3.Dot(u, c.Normal)
	return c.Radius * math.Sqrt(max(0, 1-along*along))
}

// off returns how far a disc is from a plane through the axis at an azimuth, on
// its side of the axis alone: infinitely far where it is on the other.
func (c Hole) off(sin, cos float64) float64 {
	out, across := r3.Vec{X: cos, Y: sin}, r3.Vec{X: -sin, Y: cos}
	if behind := -r3.Dot(c.Point, out) - c.extent(out); behind > 0 {
		return math.Hypot(behind, max(0, math.Abs(r3.Dot(c.Point, across))-c.extent(across)))
	}
	return math.Abs(r3.Dot(c.Point, across)) - c.extent(across)
}

// onAxis tells whether every plane through the axis comes within a margin of
// the disc: the ellipse that it is seen as from above, widened by the margin,
// has the axis inside.
func (c Hole) onAxis(margin float64) bool {
	flat := math.Hypot(c.Normal.X, c.Normal.Y)
	along, across := math.Hypot(c.Point.X, c.Point.Y), 0.0
	if flat > rounding {
		along = (c.Point.X*c.Normal.X + c.Point.Y*c.Normal.Y) / flat
		across = (c.Point.X*c.Normal.Y - c.Point.Y*c.Normal.X) / flat
	}
	a, b := c.Radius*math.Abs(c.Normal.Z)+margin, c.Radius+margin
	return a > 0 && (along/a)*(along/a)+(across/b)*(across/b) < 1
}

// blocked returns the range of azimuths of planes that come within a margin of
// a disc that is not on the axis.
func (c Hole) blocked(margin float64) [2]float64 {
	middle := math.Atan2(c.Point.Y, c.Point.X)
	reach := func(way float64) float64 {
		clear := func(at float64) bool { return c.off(math.Sincos(middle+way*at)) >= margin }
		return solve.Edge(clear, math.Pi, 0, 1e-14, 0)
	}
	return [2]float64{middle - reach(-1), middle + reach(1)}
}

// bestTurn returns the azimuth of the first of k planes through the axis that
// keep out of ranges of azimuth: the middle of the widest gap, the first of
// several; false where there is none.
func bestTurn(k int, blocked [][2]float64) (turn float64, ok bool) {
	if len(blocked) == 0 {
		return 0, true
	}
	pitch := 2 * math.Pi / float64(k)
	var folded [][2]float64 // into three pitches, so that a gap over the end of one shows whole
	for _, r := range blocked {
		from := math.Mod(math.Mod(r[0], pitch)+pitch, pitch)
		for i := range 3 {
			at := from + float64(i-1)*pitch
			folded = append(folded, [2]float64{at, at + r[1] - r[0]})
		}
	}
	widest := 0.0
	for _, r := range between(folded, 0, 2*pitch) {
		if gap := r[1] - r[0]; gap > widest+1e-9 {
			widest, turn, ok = gap, math.Mod(r[0]+gap/2, pitch), true
		}
	}
	return turn, ok
}

// gaps returns the ranges of height that no disc comes within a margin of, from
// below, between two heights.
func gaps(holes []Hole, margin, low, high float64) [][2]float64 {
	taken := make([][2]float64, len(holes))
	for i, c := range holes {
		reach := c.extent(r3.Vec{Z: 1}) + margin
		taken[i] = [2]float64{c.Point.Z - reach, c.Point.Z + reach}
	}
	return between(taken, low, high)
}

// between returns what ranges leave free between two values. It puts them in order.
func between(taken [][2]float64, low, high float64) (free [][2]float64) {
	slices.SortFunc(taken, func(p, q [2]float64) int { return cmp.Compare(p[0], q[0]) })
	at := low
	for _, t := range taken {
		if t[0] >= at && at < high {
			free = append(free, [2]float64{at, min(t[0], high)})
		}
		at = max(at, t[1])
	}
	if at < high {
		free = append(free, [2]float64{at, high})
	}
	return free
}

// heights returns where to cut between two heights into at most n levels, the
// tallest as low as can be; false where no cut is clean. Cuts are made in gaps.
func heights(n int, low, high float64, free [][2]float64) (cuts []float64, ok bool) {
	short, tall := (high-low)/float64(n), high-low
	if n == 1 {
		return nil, true
	}
	if cuts, ok = climb(n, short, low, high, free); !ok {
		tall = solve.Edge(func(step float64) bool {
			_, ok := climb(n, step, low, high, free)
			return ok
		}, tall, short, 0, 0)
		cuts, ok = climb(n, tall, low, high, free)
	}
	return cuts, ok && len(cuts) == n-1
}

// climb cuts as high as it may each time; false where that does not reach the
// top.
func climb(n int, step, low, high float64, free [][2]float64) ([]float64, bool) {
	var cuts []float64
	for at := low; at+step < high-rounding*(high-low); {
		next := math.Inf(-1)
		for _, g := range free {
			if g[0] <= at+step {
				next = min(g[1], at+step)
			}
		}
		if next <= at || len(cuts) == n-1 {
			return nil, false
		}
		cuts = append(cuts, next)
		at = next
	}
	return cuts, true
}
