package boundary_test

import (
	"math"
	"math/cmplx"
	"testing"
	"time"

	"pappus/layout/body"
	"pappus/timing/ball"
	"pappus/timing/boundary"

	"gonum.org/v1/gonum/spatial/r3"
)

// onBall is the field of a cap on a ball.
func onBall(t *testing.T, radius, coneRadius, k, r, gamma float64) complex128 {
	s, err := ball.NewSeries(ball.Cap{Radius: radius, HalfAngle: math.Asin(coneRadius / radius)}, []float64{k}, 1e-12)
	if err != nil {
		t.Fatal(err)
	}
	s.Move(r)
	out := make([]complex128, 1)
	s.At(out, gamma)
	return out[0] * cmplx.Rect(1/r, -k*r)
}

func TestBallB(t *testing.T) {
	for _, density := range []float64{4, 5, 6, 7} {
		for _, hz := range []float64{250, 1000, 2000, 4000} {
			k := 2 * math.Pi * hz / 343.2
			p := &boundary.Problem{Patches: boundary.CutBall(0.15, -0.2)}
			one := []boundary.Piston{{r3.Vec{Z: 0.15}, r3.Vec{Z: 1}, 0.013}}
			from := time.Now()
			x := p.NewSolver(one).Solve(k, density, 1e-6)
			took := time.Since(from)
			worst := 0.0
			for _, deg := range []float64{0, 30, 60, 90, 120, 150, 180} {
				s, c := math.Sincos(deg * radian)
				got := p.At(one, x, k, 0, r3.Vec{X: 2 * s, Z: 2 * c})
				want := onBall(t, 0.15, 0.013, k, 2, deg*radian)
				worst = max(worst, 20*math.Abs(math.Log10(cmplx.Abs(got/want))))
			}
			t.Logf("density %g, %g Hz: %d nodes, %d rows, %d steps, %v: %.4f dB", density, hz, x.Mesh.Len(), x.Rows, x.Steps, took, worst)
		}
	}
}

func TestGeodesicB(t *testing.T) {
	for _, sub := range []int{1, 2, 3, 4} {
		b, err := body.Geodesic("icosahedron", sub, 0.15)
		if err != nil {
			t.Fatal(err)
		}
		for _, hz := range []float64{250, 1000, 2000, 4000} {
			k := 2 * math.Pi * hz / 343.2
			p := &boundary.Problem{Patches: boundary.Polyhedron(faces(b))}
			c := b.Centroid(0)
			n := b.Normal(0)
			c, n = r3.Vec{X: -c.X, Y: -c.Y, Z: c.Z}, r3.Vec{X: -n.X, Y: -n.Y, Z: n.Z}
			one := []boundary.Piston{{c, n, 0.013}}
			for _, density := range []float64{4, 5, 7} {
				from := time.Now()
				x := p.NewSolver(one).Solve(k, density, 1e-6)
				took := time.Since(from)
				got := p.At(one, x, k, 0, r3.Scale(2, r3.Unit(c)))
				back := p.At(one, x, k, 0, r3.Scale(-2, r3.Unit(c)))
				want := onBall(t, b.BallRadius, 0.013, k, 2, 0)
				want2 := onBall(t, b.BallRadius, 0.013, k, 2, math.Pi)
				t.Logf("sub %d density %g, %g Hz: %d nodes, %d rows %d turns, %d steps, %v: front %.3f dB %.2f, back %.3f dB off the ball", sub, density, hz, x.Mesh.Len(), x.Rows, x.Turns, x.Steps, took, 20*math.Log10(cmplx.Abs(got/want)), cmplx.Phase(got/want)/radian, 20*math.Log10(cmplx.Abs(back/want2)))
			}
		}
	}
}
