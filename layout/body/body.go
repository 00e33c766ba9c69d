package body

import (
	"errors"
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// What can be wrong with a body that is asked for.
var (
	ErrUnknownShape = errors.New("no such shape")
	ErrSubdivision  = errors.New("subdivision must be from 1 to 16")
	ErrRadius       = errors.New("radius must be a finite length above 0")
	ErrHeight       = errors.New("the cut height is not a number")
	ErrNothingLeft  = errors.New("nothing of the body is left above the cut")
	ErrSides        = errors.New("sides must be from 3 to 256")
	ErrProportion   = errors.New("height must be 0, for equal edges, or from a hundredth to a hundred times the radius")
	ErrNoDual       = errors.New("the centre is not well inside, so there is no dual")
)

// Body is a convex closed surface whose centre is the origin, wound outward.
// A ball has neither vertices nor faces.
type Body struct {
	Name     string
	Vertices []r3.Vec // m
	Faces    []Face
	// Radius is the circumradius of the uncut body, in m.
	Radius float64
	// BallRadius is the radius, in m, of the ball that the acoustics take for the body,
	// and BallCentre is where its centre is, in m: the ball whose volume is that of the
	// uncut body, about the origin; but see InOpenAir.
	BallRadius float64
	BallCentre r3.Vec
	// Cut is the height of the cut plane in m; valid where IsCut is true.
	Cut   float64
	IsCut bool
}

// Face is one flat face: its corners in order, counter-clockwise seen from
// outside, as indices into the body's vertices.
type Face struct {
	Corners []int
	// Base is true for the flat face that a cut leaves.
	Base bool
}

// tolerance is the length over the radius within which points count as one, as
// level, or as lying on a surface. It is far over rounding, and on the largest
// body that anyone builds far under what a saw or a printer keeps.
const tolerance = 1e-6

// rounding is the length over the radius that arithmetic may be off by, with a
// thousandfold reserve.
const rounding = 1e-12

// Ball returns a ball of a radius in m.
func Ball(radius float64) *Body {
	return &Body{Name: "ball", Radius: radius, BallRadius: radius}
}

// IsBall tells whether the body is a ball, whole or cut.
func (b *Body) IsBall() bool { return len(b.Faces) == 0 }

// Lowest returns the height of the body's lowest point, in m.
func (b *Body) Lowest() float64 {
	if b.IsBall() {
		if b.IsCut {
			return b.Cut
		}
		return -b.Radius
	}
	low := math.Inf(1)
	for _, v := range b.Vertices {
		low = min(low, v.Z)
	}
	return low
}

// highest returns the height of the body's highest point, in m.
func (b *Body) highest() float64 {
	if b.IsBall() {
		return b.Radius
	}
	high := math.Inf(-1)
	for _, v := range b.Vertices {
		high = max(high, v.Z)
	}
	return high
}

// Contains tells whether a point in m is inside the body or on it; a point that
// is outside by rounding only counts as on it.
func (b *Body) Contains(p r3.Vec) bool {
	slack := rounding * b.Radius
	if !(r3.Norm(p) <= b.Radius+slack) || b.IsCut && p.Z < b.Cut-slack {
		return false
	}
	for f, face := range b.Faces {
		out := b.areaVector(f)
		beyond := r3.Dot(out, r3.Sub(p, b.Vertices[face.Corners[0]]))
		if beyond > 0 && beyond > slack*r3.Norm(out) {
			return false
		}
	}
	return true
}

// OnBall returns the place on the ball that the acoustics take that stands for a place
// in m on or near the body, as a vector from the ball's centre: the place moved out,
// or in, along its own direction seen from there. The centre itself has none; it
// stays where it is.
func (b *Body) OnBall(p r3.Vec) r3.Vec {
	from := r3.Sub(p, b.BallCentre)
	if d := r3.Norm(from); d > 0 {
		return r3.Scale(b.BallRadius/d, from)
	}
	return from
}

// InBall tells whether a point in m is in the ball that the acoustics take for the
// body, or on it.
func (b *Body) InBall(p r3.Vec) bool { return r3.Norm(r3.Sub(p, b.BallCentre)) <= b.BallRadius }

// wholeBall returns the radius of the ball of a volume.
func wholeBall(volume float64) float64 { return math.Cbrt(3 * volume / (4 * math.Pi)) }

// usable tells whether a radius can be one.
func usable(radius float64) bool { return radius > 0 && !math.IsInf(radius, 1) }
