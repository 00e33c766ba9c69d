package boundary_test

import (
	"testing"

	"pappus/timing/boundary"
)

// BenchmarkSolve solves at 4 kHz: the dodecahedron, half a geodesic over a table, and a body
// without symmetry with as many pistons.
func BenchmarkSolve(b *testing.B) {
	whole := faces(solid(b, "dodecahedron", 0.15))
	dome, pistons := domed(b)
	odd := askew(faces(cut(b, geodesic(b, 2, 0.15), 0)))
	cases := []struct {
		name    string
		problem *boundary.Problem
		pistons []boundary.Piston
	}{
		{"dodecahedron", &boundary.Problem{Patches: boundary.Polyhedron(whole)}, onFaces(whole, 0.025)},
		{"dome", dome, pistons},
		{"askew", &boundary.Problem{Patches: boundary.Polyhedron(odd), Inside: dome.Inside, Plane: dome.Plane}, onFaces(odd, 0.013)},
	}
	for _, c := range cases {
		b.Run(c.name, func(b *testing.B) {
			s := ready(b, c.problem, c.pistons)
			b.ReportAllocs()
			for b.Loop() {
				solved(b, s, number(4000), density)
			}
		})
	}
}
