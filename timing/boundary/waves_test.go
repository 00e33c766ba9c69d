package boundary_test

import (
	"gonum.org/v1/gonum/spatial/r3"
	"math"
	"math/cmplx"
	"pappus/layout/body"
	"pappus/timing/boundary"
	"testing"
)

func TestWaves(t *testing.T) {
	whole, _ := body.Platonic("dodecahedron", 0.15)
	p := &boundary.Problem{Patches: boundary.Polyhedron(faces(whole))}
	one := []boundary.Piston{pistons["top"]}
	for _, hz := range []float64{1, 100, 1000, 3000} {
		k := 2 * math.Pi * hz / 343.2
		x := p.NewSolver(one).Solve(k, 7, 1e-8)
		for _, deg := range []int{12, 20, 30, 40} {
			w := x.Waves(deg, 0.15)
			for _, r := range []float64{0.17, 0.2, 2} {
				worst := 0.0
				for _, a := range []float64{5, 40, 90, 120, 180} {
					s, c := math.Sincos(a * radian)
					at := r3.Vec{X: r * s * 0.8, Y: r * s * 0.6, Z: r * c}
					v := p.At(one, x, k, 0, at)
					u := boundary.Heard(w[0], deg, k, 0.15, at)
					worst = max(worst, cmplx.Abs(u-v)/cmplx.Abs(v))
				}
				t.Logf("%g Hz %d %g: %.2e", hz, deg, r, worst)
			}
		}
	}
}
