package boundary_test

import (
	"errors"
	"fmt"
	"math"
	"math/cmplx"
	"runtime"
	"testing"

	"pappus/layout/body"
	"pappus/timing/boundary"

	"gonum.org/v1/gonum/spatial/r3"
)

// roundAbout is what a piston gives 2 m away round about, at even angles in two planes.
func roundAbout(x *boundary.Pressure, piston int) []complex128 {
	var out []complex128
	for angle := 0.0; angle < 360; angle += 30 {
		sin, cos := math.Sincos(angle * radian)
		out = append(out, x.At(piston, r3.Vec{X: 2 * sin, Z: 2 * cos}), x.At(piston, r3.Vec{X: 1.2 * sin, Y: 2 * cos, Z: 1.6 * sin}))
	}
	return out
}

// TestTurns: with a body's symmetry and without the field is the same.
func TestTurns(t *testing.T) {
	over := boundary.Plane{Present: true, Normal: r3.Vec{Z: 1}, Height: -0.2}
	for _, c := range []struct {
		name  string
		body  *body.Body
		plane boundary.Plane
		turns int
	}{
		{"dodecahedron", solid(t, "dodecahedron", 0.15), boundary.Plane{}, 120},
		{"cube", solid(t, "cube", 0.15), boundary.Plane{}, 48},
		{"cube over a plane", solid(t, "cube", 0.15), over, 8},
		{"half dodecahedron", cut(t, solid(t, "dodecahedron", 0.15), 0), boundary.Plane{}, 10},
		{"dodecahedron over a plane", solid(t, "dodecahedron", 0.15), over, 10},
	} {
		f := faces(c.body)
		p := &boundary.Problem{Patches: boundary.Polyhedron(f), Inside: r3.Vec{Z: 0.02}, Plane: c.plane}
		if c.turns > 10 {
			p.Inside = r3.Vec{}
		}
		all := onFaces(f, 0.02)
		s, plain := ready(t, p, all), ready(t, p, all)
		if s.Turns() != c.turns {
			t.Errorf("%s: %d turns, want %d", c.name, s.Turns(), c.turns)
		}
		plain.NoTurns()
		const k = 12
		a, errA := s.Solve(k, 3, 1e-11)
		b, errB := plain.Solve(k, 3, 1e-11)
		if err := errors.Join(errA, errB); err != nil {
			t.Fatal(err)
		}
		for i := range all {
			one, other := roundAbout(a, i), roundAbout(b, i)
			for j := range one {
				if e := cmplx.Abs(one[j]-other[j]) / cmplx.Abs(one[j]); e > 1e-9 {
					t.Fatalf("%s: piston %d: %.1e apart", c.name, i, e)
				}
			}
		}
	}
}

// TestCores: the same to the bit on any number of cores.
func TestCores(t *testing.T) {
	f := faces(cut(t, solid(t, "dodecahedron", 0.15), 0.02))
	p := &boundary.Problem{
		Patches: boundary.Polyhedron(f), Inside: r3.Vec{Z: 0.06},
		Plane: boundary.Plane{Present: true, Normal: r3.Vec{Z: 1}},
	}
	before := runtime.GOMAXPROCS(0)
	defer runtime.GOMAXPROCS(before)
	var want string
	for _, cores := range []int{1, 2, 5} {
		runtime.GOMAXPROCS(cores)
		x := solved(t, ready(t, p, onFaces(f, 0.02)), 20, density)
		got := fmt.Sprint(x.Waves(8, p.Reach()), roundAbout(x, 1))
		if want == "" {
			want = got
		}
		if got != want {
			t.Errorf("%d cores: not the same as on one", cores)
		}
	}
}

// TestConverges: geodesic bodies of more and more faces have the field of the ball whose volume
// they have, and that of a cut ball does not change with density.
func TestConverges(t *testing.T) {
	last := math.Inf(1)
	for _, sub := range []int{1, 2, 4} {
		b := geodesic(t, sub, ballRadius)
		f := faces(b)
		p := &boundary.Problem{Patches: boundary.Polyhedron(f)}
		one := onFaces(f, 0.008)[:1]
		worst := 0.0
		for _, hz := range []float64{500, 1500} {
			x := solved(t, ready(t, p, one), number(hz), density)
			axis := r3.Unit(one[0].At)
			var got, want []complex128
			for _, angle := range []float64{0, 60, 120, 180} {
				side := r3.Unit(r3.Cross(axis, r3.Vec{X: 0.1, Y: 0.2, Z: 0.3}))
				sin, cos := math.Sincos(angle * radian)
				got = append(got, x.At(0, r3.Add(r3.Scale(2*cos, axis), r3.Scale(2*sin, side))))
				want = append(want, onBall(t, b.BallRadius, 0.008, number(hz), 2, angle*radian))
			}
			worst = max(worst, off(got, want))
		}
		t.Logf("subdivision %d: %.3f dB off the ball", sub, worst)
		if worst > 0.6*last {
			t.Errorf("subdivision %d: %.3f dB off the ball, with fewer faces %.3f", sub, worst, last)
		}
		last = worst
	}
	if last > 0.2 {
		t.Errorf("320 faces: %.3f dB off the ball", last)
	}
}

// TestCutBallConverges: a denser mesh changes the field of a cut ball by no more than 0.03 dB.
func TestCutBallConverges(t *testing.T) {
	p := &boundary.Problem{Patches: boundary.CutBall(ballRadius, -0.05), Inside: r3.Vec{Z: 0.03}}
	one := []boundary.Piston{{At: towards(ballRadius, 65), Axis: towards(1, 65), Radius: 0.02}}
	for _, hz := range []float64{500, 2000} {
		s := ready(t, p, one)
		got, fine := roundAbout(solved(t, s, number(hz), density), 0), roundAbout(solved(t, s, number(hz), 9), 0)
		if dB := off(got, fine); dB > 0.03 {
			t.Errorf("%g Hz: %.4f dB off a mesh of 9 nodes to a wavelength", hz, dB)
		}
	}
}

// TestStandsOnThePlane: half a ball, and half a dodecahedron, on the plane with one piston are the
// whole with two: its face at the plane is left out.
func TestStandsOnThePlane(t *testing.T) {
	axis := towards(1, 50)
	for _, c := range []struct {
		name        string
		half, whole []boundary.Patch
	}{
		{"ball", boundary.CutBall(ballRadius, 0), boundary.CutBall(ballRadius, -1)},
		{"cube", boundary.Polyhedron(faces(cut(t, solid(t, "cube", 0.2), 0))), boundary.Polyhedron(faces(solid(t, "cube", 0.2)))},
	} {
		one := boundary.Piston{At: r3.Scale(ballRadius, axis), Axis: axis, Radius: 0.02}
		if c.name == "cube" {
			one = boundary.Piston{At: r3.Vec{X: 0.2 / math.Sqrt(3), Z: 0.05}, Axis: r3.Vec{X: 1}, Radius: 0.02}
		}
		plane := boundary.Plane{Present: true, Normal: r3.Vec{Z: 1}}
		other := boundary.Piston{At: mirrored(plane, one.At), Axis: mirrored(plane, one.Axis), Radius: one.Radius}
		half := &boundary.Problem{Patches: c.half, Inside: r3.Vec{Z: 0.05}, Plane: plane}
		whole := &boundary.Problem{Patches: c.whole}
		for _, hz := range []float64{300, 1200, 3000} {
			x := solved(t, ready(t, half, []boundary.Piston{one}), number(hz), density)
			y := solved(t, ready(t, whole, []boundary.Piston{one, other}), number(hz), density)
			var got, want []complex128
			for angle := 0.0; angle < 90; angle += 15 {
				at := towards(2, angle)
				got = append(got, x.At(0, at)+x.At(0, mirrored(plane, at)))
				want = append(want, y.At(0, at)+y.At(1, at))
			}
			dB := off(got, want)
			t.Logf("%s, %g Hz: %.4f dB", c.name, hz, dB)
			if dB > 0.05 {
				t.Errorf("%s, %g Hz: %.4f dB off the whole with two pistons", c.name, hz, dB)
			}
		}
	}
}
