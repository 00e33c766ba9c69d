package boundary

import (
	"errors"
	"math"

	"pappus/layout/prose"

	"gonum.org/v1/gonum/spatial/r3"
)

// Plane is a rigid flat surface without end that mirrors the sound: all of the body is on the
// side of its normal.
type Plane struct {
	Present bool
	Normal  r3.Vec  // of unit length
	Height  float64 // of the plane along the normal, seen from the origin, m
}

// mirrored returns a place mirrored in the plane.
func (p Plane) mirrored(v r3.Vec) r3.Vec {
	return r3.Sub(v, r3.Scale(2*(r3.Dot(v, p.Normal)-p.Height), p.Normal))
}

// Problem is a body and what is beside it.
type Problem struct {
	Patches []Patch
	Inside  r3.Vec // a place well inside, m
	Centre  r3.Vec // about which the field is expanded, m
	Plane   Plane
}

// Reach returns the greatest distance of the surface from the centre, in m.
func (p *Problem) Reach() float64 {
	_, reach := p.size()
	return reach
}

// size returns the greatest distance of the surface from the origin, in m, and from the centre.
func (p *Problem) size() (origin, centre float64) {
	for i := range p.Patches {
		// On a curved patch the farthest place may be inside.
		for _, u := range []float64{0, 0.5, 1} {
			for _, v := range []float64{0, 0.5, 1} {
				at, _, _ := p.Patches[i].at(u, v)
				origin, centre = max(origin, r3.Norm(at)), max(centre, r3.Norm(r3.Sub(at, p.Centre)))
			}
		}
	}
	return origin, centre
}

// What is impossible of a problem.
var (
	ErrNoBody = errors.New("the body has no surface")
	ErrInside = errors.New("the place inside is not one from which all of the surface is seen")
	ErrPlane  = errors.New("the body is not on the side of the plane's normal")
	ErrPiston = errors.New("not a piston on or before the body")
)

// closed is the height in m over a plane up to which a flat face that looks at it is taken to
// lie on it. Air in so thin a gap moves hardly: its viscous layers, sqrt(2 nu/omega), 0.07 mm
// thick at 1 kHz and 0.14 mm at 250 Hz, fill half of it (Morse and Ingard, Theoretical Acoustics,
// 6.4). The equations themselves hold down to a gap of 0.1 mm.
const closed = 0.3e-3

// open returns the problem without flat faces that lie on the plane: there is no air before
// them, and what they add is what their image takes.
func (p *Problem) open() *Problem {
	if !p.Plane.Present {
		return p
	}
	out := *p
	out.Patches = nil
	for i := range p.Patches {
		highest := math.Inf(-1)
		for _, at := range p.Patches[i].corners() {
			highest = max(highest, p.Plane.over(at))
		}
		if p.Patches[i].flat < 0 || highest > closed {
			out.Patches = append(out.Patches, p.Patches[i])
		}
	}
	return &out
}

// over returns how far a place is above the plane, in m.
func (p Plane) over(v r3.Vec) float64 { return r3.Dot(v, p.Normal) - p.Height }

// corners returns the places where patches meet, each once.
func (p *Problem) corners(size float64) []r3.Vec {
	var out []r3.Vec
	for i := range p.Patches {
		for _, at := range p.Patches[i].corners() {
			out = append(out, at)
		}
	}
	there := newPlaces(out, size)
	var once []r3.Vec
	for i, at := range out {
		if there.find(at) == i {
			once = append(once, at)
		}
	}
	return once
}

// each visits places of the surface with their normals, which are not of unit length: five by
// five of each patch, at its edges and within.
func (p *Problem) each(visit func(patch *Patch, at, normal r3.Vec)) {
	for i := range p.Patches {
		for u := range 5 {
			for v := range 5 {
				at, du, dv := p.Patches[i].at(float64(u)/4, float64(v)/4)
				visit(&p.Patches[i], at, r3.Cross(du, dv))
			}
		}
	}
}

// check names what is impossible of a body and its plane; nil: nothing.
func (p *Problem) check() error {
	size, _ := p.size()
	if len(p.Patches) == 0 || !(size > 0) || math.IsInf(size, 1) {
		return ErrNoBody
	}
	var err error
	if n := r3.Norm(p.Plane.Normal); p.Plane.Present && !(math.Abs(n-1) < same) {
		return prose.Errorf("%w: it is %g long, not 1", ErrPlane, n)
	}
	p.each(func(_ *Patch, at, normal r3.Vec) {
		if !(r3.Dot(r3.Sub(at, p.Inside), normal) > 0) && r3.Norm(normal) > 1e-12*size*size {
			err = prose.Errorf("%w: %g, %g, %g m", ErrInside, p.Inside.X, p.Inside.Y, p.Inside.Z)
		}
		if p.Plane.Present && p.Plane.over(at) < -same*size {
			err = prose.Errorf("%w: it reaches %g m below", ErrPlane, -p.Plane.over(at))
		}
	})
	return err
}

// shallow is how deep in the body, as a part of its size, a piston may seem to be by the places
// of a curved surface that are looked at.
const shallow = 0.05

// checkPiston names what is impossible of a piston; nil: nothing. Its middle must not be in the
// body, which is convex, and it must look outward.
func (p *Problem) checkPiston(one Piston, size float64) error {
	if !(one.Radius > 0 && one.Radius < size) || !(math.Abs(r3.Norm(one.Axis)-1) < same) {
		return prose.Errorf("%w: a radius of %g m, an axis %g long", ErrPiston, one.Radius, r3.Norm(one.Axis))
	}
	out := math.Inf(-1)
	p.each(func(patch *Patch, at, normal r3.Vec) {
		depth := r3.Dot(r3.Sub(one.At, at), r3.Unit(normal))
		if patch.flat < 0 {
			depth += shallow * size
		}
		if !math.IsNaN(depth) {
			out = max(out, depth)
		}
	})
	if !(out > -1e-4*size) || !(r3.Dot(r3.Sub(one.At, p.Inside), one.Axis) > 0) {
		return prose.Errorf("%w: its middle is at %g, %g, %g m, its axis %g, %g, %g", ErrPiston,
			one.At.X, one.At.Y, one.At.Z, one.Axis.X, one.Axis.Y, one.Axis.Z)
	}
	return nil
}
