package boundary_test

import (
	"math"
	"math/cmplx"
	"testing"

	"pappus/layout/body"
	"pappus/timing/ball"
	"pappus/timing/boundary"

	"gonum.org/v1/gonum/spatial/r3"
)

const (
	radian  = math.Pi / 180
	speed   = 343.2 // of sound in faceted_given.csv, m/s
	density = 5.0
)

// number returns the wavenumber of a frequency.
func number(hz float64) float64 { return 2 * math.Pi * hz / speed }

// level returns a ratio in dB.
func level(ratio complex128) float64 { return 20 * math.Log10(cmplx.Abs(ratio)) }

// faces returns the corners of a body's faces, half a turn round its axis as faceted_given.csv
// has them.
func faces(b *body.Body) [][]r3.Vec {
	var out [][]r3.Vec
	for _, f := range b.Faces {
		var one []r3.Vec
		for _, c := range f.Corners {
			one = append(one, about(b.Vertices[c]))
		}
		out = append(out, one)
	}
	return out
}

func about(v r3.Vec) r3.Vec { return r3.Vec{X: -v.X, Y: -v.Y, Z: v.Z} }

// onFaces returns a piston in the middle of each of some faces, but those that look straight down.
func onFaces(faces [][]r3.Vec, radius float64) []boundary.Piston {
	var out []boundary.Piston
	for _, corners := range faces {
		var middle r3.Vec
		for _, c := range corners {
			middle = r3.Add(middle, r3.Scale(1/float64(len(corners)), c))
		}
		axis := r3.Unit(r3.Cross(r3.Sub(corners[1], corners[0]), r3.Sub(corners[2], corners[1])))
		if axis.Z > -0.99 {
			out = append(out, boundary.Piston{At: middle, Axis: axis, Radius: radius})
		}
	}
	return out
}

// must returns a body that can be made.
func must(t testing.TB, b *body.Body, err error) *body.Body {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func solid(t testing.TB, name string, radius float64) *body.Body {
	t.Helper()
	b, err := body.Platonic(name, radius)
	return must(t, b, err)
}

func cut(t testing.TB, b *body.Body, height float64) *body.Body {
	t.Helper()
	c, err := b.CutAt(height)
	return must(t, c, err)
}

func geodesic(t testing.TB, subdivision int, radius float64) *body.Body {
	t.Helper()
	b, err := body.Geodesic("icosahedron", subdivision, radius)
	return must(t, b, err)
}

// domed is half a geodesic of 80 faces, over a table.
func domed(t testing.TB) (*boundary.Problem, []boundary.Piston) {
	f := faces(cut(t, geodesic(t, 2, 0.15), 0))
	p := &boundary.Problem{
		Patches: boundary.Polyhedron(f), Inside: r3.Vec{Z: 0.06},
		Plane: boundary.Plane{Present: true, Normal: r3.Vec{Z: 1}, Height: -0.025},
	}
	return p, onFaces(f, 0.013)
}

// askew returns faces pulled out of shape, so that no turn is left.
func askew(faces [][]r3.Vec) [][]r3.Vec {
	for _, f := range faces {
		for i, v := range f {
			f[i] = r3.Vec{X: 1.05*v.X + 0.12*v.Y, Y: 0.9*v.Y + 0.07*v.Z, Z: 0.97*v.Z - 0.05*v.X}
		}
	}
	return faces
}

// onBall is the pressure of a cap on a rigid ball, over that of a point source at 1 m.
func onBall(t testing.TB, radius, coneRadius, k, r, gamma float64) complex128 {
	t.Helper()
	s, err := ball.NewSeries(ball.Cap{Radius: radius, HalfAngle: math.Asin(coneRadius / radius)}, []float64{k}, 1e-12)
	if err != nil {
		t.Fatal(err)
	}
	s.Move(r)
	out := make([]complex128, 1)
	s.At(out, gamma)
	return out[0] * cmplx.Rect(1/r, -k*r)
}

// towards returns a place at a distance in m, at an angle in degrees from the z axis to the x axis.
func towards(r, degrees float64) r3.Vec {
	sin, cos := math.Sincos(degrees * radian)
	return r3.Vec{X: r * sin, Z: r * cos}
}

// ready returns the solver of a problem that can be solved.
func ready(t testing.TB, p *boundary.Problem, pistons []boundary.Piston) *boundary.Solver {
	t.Helper()
	s, err := p.NewSolver(pistons)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// solved returns the pressure to 1e-6.
func solved(t testing.TB, s *boundary.Solver, k, density float64) *boundary.Pressure {
	t.Helper()
	x, err := s.Solve(k, density, 1e-6)
	if err != nil {
		t.Fatal(err)
	}
	return x
}
