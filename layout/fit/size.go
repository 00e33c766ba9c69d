package fit

import (
	"fmt"

	"pappus/layout/body"
	"pappus/layout/prose"

	"gonum.org/v1/gonum/spatial/r3"
)

// Tolerance is how near over its own size a size is found.
const Tolerance = 1e-6

// LargestDriver returns the largest driver with the proportions of d that fits
// on every mount of a body within the limits. Its screws keep their size. It is
// found by halving, and fits itself; one that is [Tolerance] larger does not.
// A driver behind its flange only grows with its size, so that it is the
// largest of all; a terminal moves back as it grows, and one that would come
// clear of its neighbours again at a far larger size is not looked for.
//
// Errors are those of [Check], and [ErrNoFit]: even the smallest is in the way,
// or what fits is too small for its screws.
func LargestDriver(b *body.Body, mounts []Mount, d Driver, l Limits) (Driver, error) {
	if err := valid(b, mounts, d, l); err != nil {
		return Driver{}, err
	}
	w := newWalls(b)
	at := func(factor float64) bool { return allFit(w, mounts, d.times(factor), l) }
	// Nothing larger than the body can fit, nor anything that no tool can make.
	high := 4 * b.Radius / d.FlangeRadius
	if b.IsBall() { // whose flange sits on a flat seat, a circle of the ball
		high = b.Radius / d.FlangeRadius
	}
	low := 1e-4 * high
	if !at(low) {
		return Driver{}, prose.Errorf("%w: even a flange of %.3g m across is in the way", ErrNoFit, 2*low*d.FlangeRadius)
	}
	for high-low > Tolerance*low {
		if middle := (low + high) / 2; at(middle) {
			low = middle
		} else {
			high = middle
		}
	}
	best := d.times(low)
	if !best.takesScrews(l) {
		return Driver{}, prose.Errorf("%w: the largest that fits, with a flange of %.3g m across, has no room for its screws", ErrNoFit, 2*best.FlangeRadius)
	}
	return best, nil
}

// most is the largest factor that SmallestBody tries, and 1/most the least.
const most = 1 << 20

// SmallestBody returns the factor by which every length of a body and its
// mounts must be multiplied so that it just takes a driver on every mount
// within the limits; the walls keep their thickness. It is found by halving, at
// most [Tolerance] too large, and the driver fits at it.
//
// Errors are those of [Check], and [ErrNoFit]: two mounts share a place, or the
// driver has no room for its screws.
func SmallestBody(b *body.Body, mounts []Mount, d Driver, l Limits) (float64, error) {
	if err := valid(b, mounts, d, l); err != nil {
		return 0, err
	}
	if !d.takesScrews(l) {
		return 0, fmt.Errorf("%w: there is no room for screws between cut-out and flange", ErrNoFit)
	}
	scaled := make([]Mount, len(mounts))
	at := func(factor float64) bool {
		for i, m := range mounts {
			m.Point = r3.Scale(factor, m.Point)
			scaled[i] = m
		}
		return allFit(newWalls(times(b, factor)), scaled, d, l)
	}
	high := 1.0
	for ; !at(high); high *= 2 {
		if high >= most {
			return 0, fmt.Errorf("%w: not even a body %d times as large takes it", ErrNoFit, most)
		}
	}
	low := high / 2
	for ; low > 1.0/most && at(low); low /= 2 {
		high = low
	}
	for high-low > Tolerance*high {
		if middle := (low + high) / 2; at(middle) {
			high = middle
		} else {
			low = middle
		}
	}
	return high, nil
}

// times returns a body with every length times a factor.
func times(b *body.Body, factor float64) *body.Body {
	out := *b
	out.Vertices = make([]r3.Vec, len(b.Vertices))
	for i, v := range b.Vertices {
		out.Vertices[i] = r3.Scale(factor, v)
	}
	out.Radius *= factor
	out.BallRadius *= factor
	out.BallCentre = r3.Scale(factor, b.BallCentre)
	out.Cut *= factor
	return &out
}
