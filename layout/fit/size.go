package fit

import (
	"fmt"
	"math"

	"pappus/layout/body"
	"pappus/layout/prose"
	"pappus/layout/solve"

	"gonum.org/v1/gonum/spatial/r3"
)

// tolerance is how near over its own size a size is found.
const tolerance = 1e-6

// LargestDriver returns the largest driver with the proportions of d that fits
// on every mount of a body within the limits. Its screws keep their size. It is
// found by halving, and fits itself; one that is a millionth larger does not.
// A driver behind its flange only grows with its size, so that it is the
// largest of all; a terminal moves back as it grows, and one that would come
// clear of its neighbours again at a far larger size is not looked for.
//
// Errors are those of [Check], and that even the smallest is in the way, or what fits is too
// small for its screws.
func LargestDriver(b *body.Body, mounts []Mount, d Outline, l Limits) (Outline, error) {
	if err := valid(b, mounts, d, l); err != nil {
		return Outline{}, err
	}
	w := newWalls(b, false)
	at := func(factor float64) bool { return allFit(w, mounts, d.Times(factor), l) }
	// Nothing larger than the body can fit, nor anything that no tool can make.
	high := 4 * b.Radius / d.FlangeRadius
	if b.IsBall() { // whose flange sits on a flat seat, a circle of the ball
		high = b.Radius / d.FlangeRadius
	}
	low := 1e-4 * high
	if !at(low) {
		return Outline{}, prose.Errorf("%w: even a flange of %.3g m across is in the way", errNoFit, 2*low*d.FlangeRadius)
	}
	best := d.Times(solve.Edge(at, low, high, 0, tolerance))
	if !best.takesScrews(l) {
		return Outline{}, prose.Errorf("%w: the largest that fits, with a flange of %.3g m across, has no room for its screws", errNoFit, 2*best.FlangeRadius)
	}
	return best, nil
}

// most is the largest factor that SmallestBody tries, and 1/most the least.
const most = 1 << 20

// SmallestBody returns the factor by which every length of a body and its
// mounts must be multiplied so that it just takes a driver on every mount
// within the limits; the walls keep their thickness. It is found by halving, at
// most a millionth too large, and the driver fits at it.
//
// Errors are those of [Check], and that two mounts share a place, or the driver has no room
// for its screws.
func SmallestBody(b *body.Body, mounts []Mount, d Outline, l Limits) (float64, error) {
	return SmallBody(b, mounts, d, l, tolerance)
}

// SmallBody is SmallestBody but at most a share too large, which is found the sooner.
func SmallBody(b *body.Body, mounts []Mount, d Outline, l Limits, share float64) (float64, error) {
	if err := valid(b, mounts, d, l); err != nil {
		return 0, err
	}
	if !d.takesScrews(l) {
		return 0, fmt.Errorf("%w: there is no room for screws between cut-out and flange", errNoFit)
	}
	scaled := make([]Mount, len(mounts))
	at := func(factor float64) bool {
		for i, m := range mounts {
			m.Point = r3.Scale(factor, m.Point)
			scaled[i] = m
		}
		return allFit(newWalls(b.Times(factor), false), scaled, d, l)
	}
	high := 1.0
	for ; !at(high); high *= 2 {
		if high >= most {
			return 0, fmt.Errorf("%w: not even a body %d times as large takes it", errNoFit, most)
		}
	}
	low := high / 2
	for ; low > 1.0/most && at(low); low /= 2 {
		high = low
	}
	return solve.Edge(at, high, low, 0, share), nil
}

// LeastAngle returns the least angle in rad, seen from the centre, between two
// drivers on an uncut ball (radius in m) whose flanges, baskets and terminals keep
// the limits; +Inf where not even two that face away from each other do. It is
// found by halving, at most a millionth of a rad too large. Errors are those of
// [Check].
func LeastAngle(radius float64, d Outline, l Limits) (float64, error) {
	if err := valid(body.Ball(radius), nil, d, l); err != nil {
		return 0, err
	}
	at := func(angle float64) bool {
		sin, cos := math.Sincos(angle)
		pair := make([]Mount, 2)
		for i, n := range []r3.Vec{{Z: 1}, {X: sin, Z: cos}} {
			pair[i] = Mount{Point: r3.Scale(radius, n), Normal: n, Face: -1}
		}
		gap := Gap(pair[0].Point, pair[0].Normal, pair[1].Point, pair[1].Normal, d.FlangeRadius)
		return gap >= l.Apart && insides(pair, d).keep(l.Apart)
	}
	if !at(math.Pi) {
		return math.Inf(1), nil
	}
	return solve.Edge(at, math.Pi, 0, 1e-6, 0), nil
}
