package boundary

import (
	"context"
	"errors"
	"math"
	"math/cmplx"
	"testing"

	"pappus/layout/body"
	"pappus/timing/harmonic"

	"gonum.org/v1/gonum/spatial/r3"
)

// TestBetween: what is taken between a table's steps is what is solved for there, within 2e-3 of
// the far field, RMS, near the lowest step, in the middle and at the top; with a plane beside the
// body and without.
func TestBetween(t *testing.T) {
	b, err := body.Platonic("dodecahedron", 0.15)
	if err != nil {
		t.Fatal(err)
	}
	var faces [][]r3.Vec
	for _, f := range b.Faces {
		var one []r3.Vec
		for _, c := range f.Corners {
			one = append(one, b.Vertices[c])
		}
		faces = append(faces, one)
	}
	for name, plane := range map[string]Plane{
		"free":         {},
		"over a plane": {Present: true, Normal: r3.Vec{Z: 1}, Height: -0.15},
	} {
		t.Run(name, func(t *testing.T) {
			p := &Problem{Patches: Polyhedron(faces), Plane: plane}
			s, err := p.NewSolver([]Piston{{r3.Vec{Z: b.Vertices[0].Z}, r3.Vec{Z: 1}, 0.025}})
			if err != nil {
				t.Fatal(err)
			}
			table, err := s.Table(context.Background(), Plan{Top: 2 * math.Pi * 1500 / 343.2, Most: 1000}, nil)
			if err != nil {
				t.Fatal(err)
			}
			for _, at := range []float64{0.3, 5.5, float64(len(table.Waves)) - 1.4} {
				k := at * table.Step
				off, err := off(s, table, k)
				if err != nil || off > 2e-3 {
					t.Errorf("%.1f steps, %.0f Hz: %.1e off, %v", at, k*343.2/2/math.Pi, off, err)
				}
			}
			if last := table.Off[len(table.Off)-1]; !(last > 0 && last < 0.01) {
				t.Errorf("the coarser mesh is %g off", last)
			}
		})
	}
}

// off returns how far a table is from what is solved for at a wavenumber.
func off(s *Solver, table *Table, k float64) (float64, error) {
	degree := table.Degree[len(table.Degree)-1]
	x, err := s.Solve(k, density, 1e-6)
	if err != nil {
		return 0, err
	}
	want, between := x.Waves(degree, table.Reach)[0], table.Between(k)
	got := make([]complex128, len(want))
	for i, f := range between.Factor {
		d := table.Degree[between.First+i]
		one := make([]complex128, Wide(d))
		for j, v := range table.Waves[between.First+i][0] {
			one[j] = f * complex128(v)
		}
		harmonic.AddWaves(got, degree, one, d)
	}
	far := make([]complex128, degree+1)
	table.Radial(far, k, math.Inf(1))
	var apart, all float64
	for m := range degree + 1 {
		for n := m; n <= degree; n++ {
			for _, j := range []int{harmonic.Index(degree, n, m), len(want)/2 + harmonic.Index(degree, n, m)} {
				e, v := cmplx.Abs(far[n]*(got[j]-want[j])), cmplx.Abs(far[n]*want[j])
				apart += e * e / float64(2*n+1)
				all += v * v / float64(2*n+1)
			}
		}
	}
	return math.Sqrt(apart / all), nil
}

// TestTableEnds: a table ends with its context, and lower where the whole would take too long,
// but never with fewer steps than a polynomial goes through.
func TestTableEnds(t *testing.T) {
	s, err := (&Problem{Patches: CutBall(0.1, -1)}).NewSolver([]Piston{{r3.Vec{Z: 0.1}, r3.Vec{Z: 1}, 0.01}})
	if err != nil {
		t.Fatal(err)
	}
	ctx, stop := context.WithCancel(context.Background())
	stop()
	if _, err := s.Table(ctx, Plan{Top: 40, Most: 100}, nil); !errors.Is(err, context.Canceled) {
		t.Errorf("ended with %v", err)
	}
	done := 0.0
	table, err := s.Table(context.Background(), Plan{Top: 40, Most: 0}, func(part, _ float64) { done = part })
	if err != nil || len(table.Waves) != through || math.Abs(done-1) > 1e-12 {
		t.Errorf("%d steps, %g done, %v", len(table.Waves), done, err)
	}
}
