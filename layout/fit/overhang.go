package fit

import (
	"math"

	"pappus/layout/body"

	"gonum.org/v1/gonum/spatial/r3"
)

// Overhang returns by how many m a flange at a point (m) of a face reaches over
// the edge of that face; 0 or below where it fits, by so much less. Where the
// point is outside of the face it is more than the flange's radius.
//
// A face below 0 is none: a mount on a vertex, an edge or a ball. Nothing says
// where its flange ends up, so it is -Inf, but for a cut ball: there the edge
// is the cut, and the flange is taken to lie square to its direction from the
// centre.
func Overhang(b *body.Body, face int, point r3.Vec, flangeRadius float64) float64 {
	switch {
	case face >= 0:
		return flangeRadius - b.Margin(face, point)
	case b.IsBall() && b.IsCut:
		return flangeRadius - rim(b, point)
	}
	return math.Inf(-1)
}

// rim returns how far from its centre a disc that touches a ball can reach
// before it meets the cut.
func rim(b *body.Body, point r3.Vec) float64 {
	slope := math.Hypot(point.X, point.Y) / r3.Norm(point) // of the disc, downward
	if slope < rounding {
		return math.Inf(1)
	}
	return (point.Z - b.Cut) / slope
}
