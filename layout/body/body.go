package body

import (
	"errors"
	"fmt"
	"io"
	"math"

	"pappus/layout/poly"
	"pappus/layout/prose"

	"gonum.org/v1/gonum/spatial/r3"
)

// What can be wrong with a body that is asked for.
var (
	ErrUnknownShape = errors.New("no such shape")
	ErrNothingLeft  = errors.New("nothing of the body is left above the cut")

	errRadius = errors.New("radius must be a finite length above 0")
)

// Body is a convex closed surface whose centre is the origin, wound outward.
// A ball has neither vertices nor faces.
type Body struct {
	Name string
	poly.Solid
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

// rounding is the length over the radius that arithmetic may be off by, with a
// thousandfold reserve.
const rounding = 1e-12

// Ball returns a ball of a radius in m.
func Ball(radius float64) *Body {
	return &Body{Name: "ball", Radius: radius, BallRadius: radius}
}

// FromFile reads a convex body from an STL or OFF file, as [poly.Read] does. The file's origin
// stays the centre, Radius is the distance of the farthest corner, and the name is that of the
// body and stands in the errors.
func FromFile(name string, r io.Reader, stl bool) (*Body, error) {
	s, err := poly.Read(name, r, stl)
	if err != nil {
		return nil, err
	}
	return fitted(name, s, poly.Farthest(s.Vertices)), nil
}

// fitted returns a body whose farthest corner is at a radius in m, from a solid in any scale.
func fitted(name string, s poly.Solid, radius float64) *Body {
	return settle(&Body{Name: name, Radius: radius, Solid: s.Times(1 / poly.Farthest(s.Vertices))})
}

// settle brings a body on the unit sphere to its radius, takes rounding off coordinates that
// are 0, and puts vertices, faces and corners in order.
func settle(b *Body) *Body {
	tidy := func(v float64) float64 {
		if math.Abs(v) < rounding {
			return 0
		}
		return v * b.Radius
	}
	b.Solid = b.Ordered()
	for i, v := range b.Vertices {
		b.Vertices[i] = r3.Vec{X: tidy(v.X), Y: tidy(v.Y), Z: tidy(v.Z)}
	}
	b.BallRadius = wholeBall(b.Volume())
	return b
}

// Times returns the body with every length times a factor.
func (b *Body) Times(factor float64) *Body {
	out := *b
	out.Solid = b.Solid.Times(factor)
	out.Radius *= factor
	out.BallRadius *= factor
	out.BallCentre = r3.Scale(factor, b.BallCentre)
	out.Cut *= factor
	return &out
}

// IsBall tells whether the body is a ball, whole or cut.
func (b *Body) IsBall() bool { return len(b.Faces) == 0 }

// Span returns the heights of the body's lowest and highest points, in m.
func (b *Body) Span() (low, high float64) {
	switch {
	case !b.IsBall():
		return poly.Span(b.Vertices)
	case b.IsCut:
		return b.Cut, b.Radius
	}
	return -b.Radius, b.Radius
}

// Extent returns how far the body reaches from its centre in a direction of unit length, in
// m.
func (b *Body) Extent(direction r3.Vec) float64 {
	if b.IsBall() {
		if !b.IsCut || b.Radius*direction.Z >= b.Cut {
			return b.Radius
		}
		return b.Cut*direction.Z + b.rim()*across(direction)
	}
	most := math.Inf(-1)
	for _, v := range b.Vertices {
		most = max(most, r3.Dot(direction, v))
	}
	return most
}

// BaseExtent returns how far all of a cut body's base reaches from its centre in a direction
// of unit length, in m: the point of the base that does least. It is 0 for a whole body.
func (b *Body) BaseExtent(direction r3.Vec) float64 {
	switch {
	case !b.IsCut:
		return 0
	case b.IsBall():
		return b.Cut*direction.Z - b.rim()*across(direction)
	}
	least := math.Inf(1)
	for _, face := range b.Faces {
		for _, v := range face.Corners {
			if face.Base() {
				least = min(least, r3.Dot(direction, b.Vertices[v]))
			}
		}
	}
	return least
}

// rim is the radius of a cut ball's base, in m.
func (b *Body) rim() float64 { return math.Sqrt(max(0, b.Radius*b.Radius-b.Cut*b.Cut)) }

// across is the level part of a direction of unit length.
func across(direction r3.Vec) float64 { return math.Hypot(direction.X, direction.Y) }

// Lowest returns the height of the body's lowest point, in m.
func (b *Body) Lowest() float64 {
	low, _ := b.Span()
	return low
}

// Contains tells whether a point in m is inside the body or on it; a point that
// is outside by rounding only counts as on it.
func (b *Body) Contains(p r3.Vec) bool {
	slack := rounding * b.Radius
	if !(r3.Norm(p) <= b.Radius+slack) || b.IsCut && p.Z < b.Cut-slack {
		return false
	}
	for f, face := range b.Faces {
		out := b.AreaVector(f)
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

// BallZone returns the volume in m3 of a ball between two heights above its centre (the
// integral of pi (r^2 - z^2); Archimedes, On the Sphere and Cylinder).
func BallZone(radius, low, high float64) float64 {
	if !(high > low) {
		return 0
	}
	return math.Pi * (high - low) * (radius*radius - (high*high+high*low+low*low)/3)
}

// Volume returns the volume in m3 of what the surface encloses.
func (b *Body) Volume() float64 {
	if b.IsBall() {
		low, high := b.Span()
		return BallZone(b.Radius, low, high)
	}
	return b.Solid.Volume()
}

// VolumeCentroid returns the middle in m of what the surface encloses, each part as heavy as
// it is large.
func (b *Body) VolumeCentroid() r3.Vec {
	if b.IsBall() {
		// The first moment of the part above a plane, from the integral of z pi (R^2 - z^2).
		low, r := b.Span()
		return r3.Vec{Z: math.Pi / 4 * (r - low) * (r - low) * (r + low) * (r + low) / b.Volume()}
	}
	return b.Solid.VolumeCentroid()
}

// Area returns the surface in m2, a cut's base included.
func (b *Body) Area() float64 {
	if b.IsBall() {
		low, high := b.Span()
		return math.Pi * (high - low) * (2*b.Radius + b.Radius + low)
	}
	return b.Solid.Area(nil)
}

// Deviation returns how far the middles of the faces, a cut's base left out, lie off the
// ball that stands for the body at most, over its radius; 0 for a ball.
func (b *Body) Deviation() float64 {
	most := 0.0
	for f, face := range b.Faces {
		if !face.Base() {
			most = max(most, math.Abs(r3.Norm(r3.Sub(b.Centroid(f), b.BallCentre))/b.BallRadius-1))
		}
	}
	return most
}

// checkRadius tells what keeps a radius in m from being one.
func checkRadius(radius float64) error {
	if !(radius > 0) || math.IsInf(radius, 1) {
		return prose.Errorf("%w: %g m", errRadius, radius)
	}
	return nil
}

// unknown is the error for a shape that there is not.
func unknown(name string) error { return fmt.Errorf("%w: %q", ErrUnknownShape, name) }
