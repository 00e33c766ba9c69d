package fit

import (
	"math"

	"pappus/layout/body"

	"gonum.org/v1/gonum/spatial/r3"
)

// All tells whether every report of [Check] would fit, and the driver has room
// for its screws. It stops at the first that does not, and does not look how far
// things are from each other, so that it is much faster. Errors are those of Check.
func All(b *body.Body, mounts []Mount, d Driver, l Limits) (bool, error) {
	if err := valid(b, mounts, d, l); err != nil {
		return false, err
	}
	return d.takesScrews(l) && allFit(newWalls(b), mounts, d, l), nil
}

// OffBase tells of each mount whether a driver there, alone, keeps its flange, its
// cut-out, its screws and all behind it off the base that a cut leaves; of a body
// without a cut they all do. Errors are those of [Check].
func OffBase(b *body.Body, mounts []Mount, d Driver, l Limits) ([]bool, error) {
	if err := valid(b, mounts, d, l); err != nil {
		return nil, err
	}
	w := newWalls(b).base()
	out := make([]bool, len(mounts))
	for i, m := range mounts {
		r := alone(w, m, d, l, l.Apart)
		out[i] = r.fitsBody(l)
	}
	return out, nil
}

// base returns the walls without all but the base of a cut.
func (w *walls) base() *walls {
	out := &walls{body: w.body, whole: w.whole, planes: make([]plane, len(w.planes)), sides: make([][]side, len(w.sides)), baseOnly: true}
	for i := range out.planes {
		out.planes[i].offset = math.Inf(1)
		if i >= len(w.body.Faces) || w.body.Faces[i].Base() {
			out.planes[i] = w.planes[i]
		}
	}
	for f, sides := range w.sides {
		for _, s := range sides {
			if w.body.Faces[s.beyond].Base() {
				out.sides[f] = append(out.sides[f], s)
			}
		}
	}
	return out
}

// LeastAngle returns the least angle in rad, seen from the centre, between two
// drivers on an uncut ball (radius in m) whose flanges, baskets and terminals keep
// the limits; +Inf where not even two that face away from each other do. It is
// found by halving, at most a millionth of a rad too large. Errors are those of
// [Check].
func LeastAngle(radius float64, d Driver, l Limits) (float64, error) {
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
		return gap >= l.Apart && (d.Depth == 0 && d.TerminalReach == 0 || insideFits(pair, d, l))
	}
	low, high := 0.0, math.Pi
	if !at(high) {
		return math.Inf(1), nil
	}
	for high-low > 1e-6 {
		if middle := (low + high) / 2; at(middle) {
			high = middle
		} else {
			low = middle
		}
	}
	return high, nil
}
