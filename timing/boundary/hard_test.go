package boundary_test

import (
	"errors"
	"math"
	"testing"

	"pappus/layout/body"
	"pappus/testdata/thorough"
	"pappus/timing/boundary"

	"gonum.org/v1/gonum/spatial/r3"
)

func prism(t *testing.T, sides int, radius, height float64) *body.Body {
	t.Helper()
	b, err := body.Prism(sides, radius, height)
	return must(t, b, err)
}

// TestHardBodies: sharp corners, thin slabs, slivers of faces, discs that reach over an edge or a
// corner and narrow gaps: a mesh of nearly twice the density, with more nodes on short sides and
// smaller elements at edges, changes the field 2 m away by no more than want, in dB. What is thin,
// a slab or a gap, is less sure: two surfaces see each other from nearer than their nodes are apart.
func TestHardBodies(t *testing.T) {
	corner := func(f [][]r3.Vec) boundary.Piston { // a disc that hovers over a corner
		at := f[0][0]
		return boundary.Piston{At: r3.Scale(1.001, at), Axis: r3.Unit(at), Radius: 0.015}
	}
	edge := func(f [][]r3.Vec) boundary.Piston { // a disc of a face that reaches over its edge
		one := onFaces(f, 0.015)[0]
		one.At = r3.Add(half(f[0][0], f[0][1]), r3.Scale(0.1, r3.Sub(one.At, half(f[0][0], f[0][1]))))
		return one
	}
	face := func(f [][]r3.Vec) boundary.Piston { return onFaces(f, 0.015)[0] }
	over := func(gap float64, b *body.Body) boundary.Plane {
		low, _ := b.Span()
		return boundary.Plane{Present: true, Normal: r3.Vec{Z: 1}, Height: low - gap}
	}
	whole := solid(t, "dodecahedron", 0.15)
	top := cut(t, whole, 0)
	for i, c := range []struct {
		name   string
		body   *body.Body
		inside r3.Vec
		plane  boundary.Plane
		piston func([][]r3.Vec) boundary.Piston
		want   float64
	}{
		{"tetrahedron", solid(t, "tetrahedron", 0.2), r3.Vec{}, boundary.Plane{}, face, 0.03},
		{"octahedron, over an edge", solid(t, "octahedron", 0.15), r3.Vec{}, boundary.Plane{}, edge, 0.1},
		{"cube, over a corner", solid(t, "cube", 0.15), r3.Vec{}, boundary.Plane{}, corner, 0.1},
		{"prism", prism(t, 5, 0.1, 0.3), r3.Vec{}, boundary.Plane{}, face, 0.03},
		{"slab", prism(t, 8, 0.15, 0.03), r3.Vec{}, boundary.Plane{}, face, 0.06},
		{"slivers", cut(t, whole, -0.118), r3.Vec{}, boundary.Plane{}, face, 0.03},
		{"slivers of corners", cut(t, whole, 0.0275), r3.Vec{Z: 0.08}, boundary.Plane{}, face, 0.04},
		{"stand of 25 mm", top, r3.Vec{Z: 0.05}, over(0.025, top), face, 0.03},
		{"stand of 5 mm", top, r3.Vec{Z: 0.05}, over(0.005, top), face, 0.06},
		{"stand of 2 mm", top, r3.Vec{Z: 0.05}, over(0.002, top), face, 0.08},
		{"stand of 1 mm", top, r3.Vec{Z: 0.05}, over(0.001, top), face, 0.15},
		{"stand of 0.5 mm", top, r3.Vec{Z: 0.05}, over(0.0005, top), face, 0.15},
		{"on the plane", top, r3.Vec{Z: 0.05}, over(0, top), face, 0.03},
	} {
		if i%3 != 0 && !thorough.Set {
			continue
		}
		f := faces(c.body)
		p := &boundary.Problem{Patches: boundary.Polyhedron(f), Inside: c.inside, Plane: c.plane}
		one := []boundary.Piston{c.piston(f)}
		coarse, fine := ready(t, p, one), ready(t, p, one)
		fine.Choices().Least, fine.Choices().Graded = 7, 0.1
		for _, hz := range []float64{500, 2000} {
			x, y := solved(t, coarse, number(hz), density), solved(t, fine, number(hz), 8)
			dB := off(roundAbout(x, 0), roundAbout(y, 0))
			t.Logf("%s, %g Hz: %.4f dB, %d and %d nodes, %d rounds", c.name, hz, dB, x.Nodes(), y.Nodes(), x.Rounds())
			if !(dB < c.want) {
				t.Errorf("%s, %g Hz: %.4f dB", c.name, hz, dB)
			}
		}
	}
}

func half(a, b r3.Vec) r3.Vec { return r3.Scale(0.5, r3.Add(a, b)) }

// TestImpossible: what is impossible of a problem is told.
func TestImpossible(t *testing.T) {
	f := faces(solid(t, "cube", 0.15))
	good := onFaces(f, 0.02)[0]
	up := boundary.Plane{Present: true, Normal: r3.Vec{Z: 1}, Height: -0.2}
	change := func(f func(p *boundary.Problem, one *boundary.Piston)) (boundary.Problem, boundary.Piston) {
		p, one := boundary.Problem{Patches: boundary.Polyhedron(faces(solid(t, "cube", 0.15))), Plane: up}, good
		f(&p, &one)
		return p, one
	}
	for _, c := range []struct {
		name   string
		change func(p *boundary.Problem, one *boundary.Piston)
		want   error
	}{
		{"good", func(*boundary.Problem, *boundary.Piston) {}, nil},
		{"no patches", func(p *boundary.Problem, _ *boundary.Piston) { p.Patches = nil }, boundary.ErrNoBody},
		{"not a number", func(p *boundary.Problem, _ *boundary.Piston) {
			f := faces(solid(t, "cube", 0.15))
			f[0][0].X = math.NaN()
			p.Patches = boundary.Polyhedron(f)
		}, boundary.ErrNoBody},
		{"inside is outside", func(p *boundary.Problem, _ *boundary.Piston) { p.Inside.X = 0.2 }, boundary.ErrInside},
		{"inside is on a face", func(p *boundary.Problem, _ *boundary.Piston) { p.Inside.X = 0.15 / math.Sqrt(3) }, boundary.ErrInside},
		{"plane through the body", func(p *boundary.Problem, _ *boundary.Piston) { p.Plane.Height = 0 }, boundary.ErrPlane},
		{"plane's normal too long", func(p *boundary.Problem, _ *boundary.Piston) { p.Plane.Normal.Z = 2 }, boundary.ErrPlane},
		{"no radius", func(_ *boundary.Problem, one *boundary.Piston) { one.Radius = 0 }, boundary.ErrPiston},
		{"larger than the body", func(_ *boundary.Problem, one *boundary.Piston) { one.Radius = 1 }, boundary.ErrPiston},
		{"no axis", func(_ *boundary.Problem, one *boundary.Piston) { one.Axis = r3.Vec{} }, boundary.ErrPiston},
		{"in the body", func(_ *boundary.Problem, one *boundary.Piston) { one.At = r3.Scale(0.9, one.At) }, boundary.ErrPiston},
		{"looks inward", func(_ *boundary.Problem, one *boundary.Piston) { one.Axis = r3.Scale(-1, one.Axis) }, boundary.ErrPiston},
		{"nowhere", func(_ *boundary.Problem, one *boundary.Piston) { one.At.X = math.NaN() }, boundary.ErrPiston},
	} {
		p, one := change(c.change)
		if _, err := p.NewSolver([]boundary.Piston{one}); !errors.Is(err, c.want) {
			t.Errorf("%s: %v, want %v", c.name, err, c.want)
		}
	}
}
