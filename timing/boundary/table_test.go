package boundary_test

import (
	"context"
	"math"
	"math/cmplx"
	"testing"
	"time"

	"pappus/layout/body"
	"pappus/timing/boundary"
	"pappus/timing/harmonic"

	"gonum.org/v1/gonum/spatial/r3"
)

func TestTableB(t *testing.T) {
	b, err := body.Geodesic("icosahedron", 2, 0.15)
	if err != nil {
		t.Fatal(err)
	}
	b, err = b.CutAt(0)
	if err != nil {
		t.Fatal(err)
	}
	for _, plane := range []bool{false, true} {
		p := &boundary.Problem{Patches: boundary.Polyhedron(faces(b)), Inside: r3.Vec{Z: 0.06}}
		if plane {
			p.Plane = boundary.Plane{Present: true, Normal: r3.Vec{Z: 1}, Height: -0.025}
		}
		var all []boundary.Piston
		for f, face := range b.Faces {
			if face.Base() {
				continue
			}
			c, n := b.Centroid(f), b.Normal(f)
			all = append(all, boundary.Piston{r3.Vec{X: -c.X, Y: -c.Y, Z: c.Z}, r3.Vec{X: -n.X, Y: -n.Y, Z: n.Z}, 0.013})
		}
		s, err := p.NewSolver(all)
		if err != nil {
			t.Fatal(err)
		}
		from := time.Now()
		tab, err := s.Table(context.Background(), boundary.Plan{Top: 2 * math.Pi * 4000 / 343.2, Most: 1000}, func(done, seconds float64) {
			if int(done*1000)%50 == 0 {
				t.Logf("%.3f of %.0f s: %v", done, seconds, time.Since(from))
			}
		})
		if err != nil {
			t.Fatal(err)
		}
		t.Logf("plane %v: %d pistons, %d steps of %.0f Hz, %v, off %.2g", plane, len(all), len(tab.Waves), tab.Step*343.2/2/math.Pi, time.Since(from), tab.Off)
		for _, at := range []float64{0.3, 3.5, 10.5, 20.5, 29.5, 33.4} {
			k := at * tab.Step
			if k > tab.Top() {
				continue
			}
			degree := tab.Degree[len(tab.Degree)-1]
			x, err := s.Solve(k, 6, 1e-6)
			if err != nil {
				t.Fatal(err)
			}
			w := x.Waves(degree, tab.Reach)
			bet := tab.Between(k)
			var off, sum float64
			rad := make([]complex128, degree+1)
			tab.Radial(rad, k, math.Inf(1))
			for i := range all {
				for m := range degree + 1 {
					for n := m; n <= degree; n++ {
						for _, odd := range []bool{false, true} {
							j := harmonic.Index(degree, n, m)
							want := w[i][j]
							if odd {
								want = w[i][harmonic.Count(degree)+j]
							}
							var got complex128
							for q, f := range bet.Factor {
								d := tab.Degree[bet.First+q]
								if n > d {
									continue
								}
								l := harmonic.Index(d, n, m)
								if odd {
									l += harmonic.Count(d)
								}
								got += f * complex128(tab.Waves[bet.First+q][i][l])
							}
							e := cmplx.Abs(got-want) * cmplx.Abs(rad[n])
							v := cmplx.Abs(want) * cmplx.Abs(rad[n])
							off += e * e / float64(2*n+1)
							sum += v * v / float64(2*n+1)
						}
					}
				}
			}
			t.Logf("between at %.0f Hz: %.1e", k*343.2/2/math.Pi, math.Sqrt(off/sum))
		}
	}
}
