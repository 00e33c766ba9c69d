package body_test

import (
	"fmt"
	"math"
	"testing"

	"pappus/layout/body"
	"pappus/testdata/testkit"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// TestDual: counts change over, and the dual of the dual has the body's corners
// and name. On a few tetrahedra divided finely, triangles lie in one plane and
// make one corner of the dual, so there the way back joins them.
func TestDual(t *testing.T) {
	all(t, func(t *testing.T, b *body.Body) {
		dual := testkit.Body(t)(body.Dual(b))
		back := testkit.Body(t)(body.Dual(dual))
		if len(dual.Faces) != len(b.Vertices) || len(dual.Vertices) != len(back.Faces) || back.Name != b.Name {
			t.Errorf("%s: %d faces, %d vertices; %s", dual.Name, len(dual.Faces), len(dual.Vertices), back.Name)
		}
		flat := 0
		for _, e := range b.Edges() {
			if b.Dihedral(e) > math.Pi-1e-7 {
				flat++
			}
		}
		if len(back.Faces) != len(b.Faces)-flat {
			t.Errorf("%s: %d faces, %d flat edges; %d faces after", b.Name, len(b.Faces), flat, len(back.Faces))
		}
		testkit.SamePoints(t, back.Vertices, b.Vertices, 1e-8*radius)
		testkit.Near(t, "volume", back.Volume(), b.Volume(), 1e-8)
	})
}

// TestDualSolids: the regular solids are each other's duals (Coxeter, Regular
// Polytopes, table I), and they stand on each other's faces. The dual of the
// cuboctahedron has 12 rhombs with diagonals as 1 to the root of 2; that of the
// truncated octahedron 24 triangles (Cundy and Rollett, Mathematical Models).
func TestDualSolids(t *testing.T) {
	for name, want := range map[string]string{"cube": "octahedron", "octahedron": "cube", "dodecahedron": "icosahedron", "icosahedron": "dodecahedron"} {
		testkit.SamePoints(t, testkit.Body(t)(body.Dual(platonic(t, name))).Vertices, platonic(t, want).Vertices, 1e-14)
	}
	rhombic := testkit.Body(t)(body.Dual(testkit.Body(t)(body.Archimedean("cuboctahedron", radius))))
	for f, face := range rhombic.Faces {
		c := face.Corners
		p := r3.Norm(r3.Sub(rhombic.Vertices[c[0]], rhombic.Vertices[c[2]]))
		q := r3.Norm(r3.Sub(rhombic.Vertices[c[1]], rhombic.Vertices[c[3]]))
		if len(c) != 4 || math.Abs(max(p, q)/min(p, q)-math.Sqrt2) > 1e-12 {
			t.Errorf("face %d: %d corners, diagonals %g and %g", f, len(c), p, q)
		}
	}
	for _, e := range rhombic.Edges() {
		testkit.Near(t, "dihedral angle", rhombic.Dihedral(e), 2*math.Pi/3, 1e-13)
	}
}

// TestDualGeodesic: faces of five and six sides, twelve of the former.
func TestDualGeodesic(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := rapid.IntRange(0, 8).Draw(t, "m")
		n := rapid.IntRange(1, 8).Draw(t, "n")
		b := testkit.Body(t)(body.Dual(testkit.Body(t)(body.GeodesicMN("icosahedron", m, n, radius))))
		sides := map[int]int{}
		for _, face := range b.Faces {
			sides[len(face.Corners)]++
		}
		six := 10*(m*m+m*n+n*n) - 10
		if sides[5] != 12 || sides[6] != six {
			t.Errorf("%s: sides %v", b.Name, sides)
		}
		testkit.Closed(t, b, 1e-12*radius)
		most := 0.0
		for _, v := range b.Vertices {
			most = max(most, r3.Norm(v))
		}
		testkit.Near(t, "radius", most, radius, 1e-14)
	})
}

func TestDualOfBallAndCut(t *testing.T) {
	ball := testkit.Body(t)(body.Dual(body.Ball(radius)))
	if !ball.IsBall() || ball.Radius != radius {
		t.Errorf("%+v", ball)
	}
	for _, b := range []*body.Body{
		testkit.Body(t)(body.Ball(radius).CutAt(-0.1)),
		testkit.Body(t)(platonic(t, "icosahedron").CutAt(0)),
		testkit.Body(t)(platonic(t, "icosahedron").CutAt(0.01)),
	} {
		if _, err := body.Dual(b); !testkit.Says(err, errNoDual) {
			t.Errorf("%s: %v", b.Name, err)
		}
	}
	low := testkit.Body(t)(platonic(t, "icosahedron").CutAt(-0.01))
	dual := testkit.Body(t)(body.Dual(low))
	if len(dual.Vertices) != len(low.Faces) || dual.IsCut {
		t.Errorf("%+v", dual)
	}
	testkit.Closed(t, dual, 1e-11*dual.Radius)
}

func ExampleDual() {
	b, _ := body.Geodesic("icosahedron", 3, 0.15)
	dual, err := body.Dual(b)
	if err != nil {
		fmt.Println(err)
		return
	}
	sides := map[int]int{}
	for _, face := range dual.Faces {
		sides[len(face.Corners)]++
	}
	fmt.Println(sides[5], "faces of 5 sides,", sides[6], "of 6")
	// Output:
	// 12 faces of 5 sides, 80 of 6
}

func BenchmarkDual(b *testing.B) {
	for _, n := range []int{2, 16} {
		whole := geodesic(b, "icosahedron", n)
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				testkit.Body(b)(body.Dual(whole))
			}
		})
	}
}

// TestShallow: a face nearer to the centre than a thousandth of the radius has no pole.
func TestShallow(t *testing.T) {
	cube := platonic(t, "cube")
	testkit.Body(t)(body.Dual(cutAt(t, cube, -1.15e-3*radius)))
	if _, err := body.Dual(cutAt(t, cube, -0.85e-3*radius)); !testkit.Says(err, errNoDual) {
		t.Errorf("got %v", err)
	}
}
