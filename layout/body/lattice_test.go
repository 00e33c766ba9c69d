package body_test

import (
	"fmt"
	"math"
	"testing"

	"pappus/layout/body"
	"pappus/testdata/testkit"

	"github.com/google/go-cmp/cmp"
	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// TestLatticeCounts: T = m*m + m*n + n*n triangles of each face (Caspar and
// Klug, 1962; Coxeter, 1971), for every m and n, and 6 neighbours of each point
// that is no corner of the base, unless a dent was mended.
func TestLatticeCounts(t *testing.T) {
	faces := map[string]int{"icosahedron": 20, "octahedron": 8, "tetrahedron": 4}
	for _, base := range bases {
		for m := 0; m <= body.MostSubdivision; m++ {
			for n := 0; m+n <= body.MostSubdivision; n++ {
				if m+n == 0 {
					continue
				}
				b := testkit.Body(t)(body.GeodesicMN(base, m, n, radius))
				f := faces[base] * (m*m + m*n + n*n)
				if len(b.Faces) != f || len(b.Vertices) != f/2+2 || len(b.Edges()) != f*3/2 {
					t.Errorf("%s: %d faces, %d vertices, %d edges", b.Name, len(b.Faces), len(b.Vertices), len(b.Edges()))
				}
				if base != "icosahedron" {
					continue
				}
				five := 0
				for _, degree := range degrees(b) {
					if degree == 5 {
						five++
					} else if degree != 6 {
						t.Errorf("%s: a vertex of %d faces", b.Name, degree)
					}
				}
				if five != 12 {
					t.Errorf("%s: %d vertices of 5 faces", b.Name, five)
				}
			}
		}
	}
}

func degrees(b *body.Body) []int {
	out := make([]int, len(b.Vertices))
	for _, face := range b.Faces {
		for _, v := range face.Corners {
			out[v]++
		}
	}
	return out
}

// TestLatticeClosed: every division is closed, convex and wound outward.
func TestLatticeClosed(t *testing.T) {
	if testing.Short() {
		t.Skip("goes through every division")
	}
	for _, base := range bases {
		for m := 1; m <= body.MostSubdivision; m++ {
			for n := 1; m+n <= body.MostSubdivision; n += 1 + (m+n)/6 {
				testkit.Closed(t, testkit.Body(t)(body.GeodesicMN(base, m, n, radius)), 2e-9*radius)
			}
		}
	}
}

// TestLatticeClasses: class I is Geodesic; (1, 1) on an icosahedron has the
// corners of a dodecahedron besides its own, on an octahedron those of a cube.
func TestLatticeClasses(t *testing.T) {
	for _, base := range bases {
		want := geodesic(t, base, 3)
		for _, d := range [][2]int{{3, 0}, {0, 3}} {
			if diff := cmp.Diff(want, testkit.Body(t)(body.GeodesicMN(base, d[0], d[1], radius))); diff != "" {
				t.Errorf("%s %v: %s", base, d, diff)
			}
		}
	}
	for base, dual := range map[string]string{"icosahedron": "dodecahedron", "octahedron": "cube"} {
		got := testkit.Body(t)(body.GeodesicMN(base, 1, 1, radius))
		points := append(append([]r3.Vec{}, platonic(t, base).Vertices...), testkit.Body(t)(body.Dual(platonic(t, base))).Vertices...)
		testkit.SamePoints(t, got.Vertices, points, 1e-12)
		testkit.SamePoints(t, testkit.Body(t)(body.Dual(platonic(t, base))).Vertices, platonic(t, dual).Vertices, 1e-12)
	}
}

// TestLatticeMirror: m and n changed over give the mirror image, which for
// class III no turn lays on the body.
func TestLatticeMirror(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		base := rapid.SampledFrom(bases).Draw(t, "base")
		m := rapid.IntRange(1, 8).Draw(t, "m")
		n := rapid.IntRange(1, 8).Draw(t, "n")
		b := testkit.Body(t)(body.GeodesicMN(base, m, n, radius))
		mirror := testkit.Body(t)(body.GeodesicMN(base, n, m, radius))
		flipped := make([]r3.Vec, len(b.Vertices))
		for i, v := range b.Vertices {
			flipped[i] = r3.Vec{X: v.X, Y: -v.Y, Z: v.Z}
		}
		testkit.SamePoints(t, mirror.Vertices, flipped, 1e-12)
		testkit.Near(t, "volume", mirror.Volume(), b.Volume(), 1e-12)
	})
	b := testkit.Body(t)(body.GeodesicMN("icosahedron", 2, 1, radius))
	for _, v := range b.Vertices {
		if d := r3.Norm(r3.Sub(r3.Vec{X: v.X, Y: -v.Y, Z: v.Z}, b.Vertices[1])); d < 1e-3*radius {
			t.Errorf("the first vertex of (2, 1) below the top has a mirror image")
		}
	}
}

// TestLatticeHand: from the top of an icosahedron, the next of the base's
// corners lies m steps along and n to the left, so the first ring of points is
// turned to the right of the corners, seen from outside.
func TestLatticeHand(t *testing.T) {
	b := testkit.Body(t)(body.GeodesicMN("icosahedron", 3, 1, radius))
	least := math.Inf(1)
	for _, v := range b.Vertices[1:6] {
		if a := math.Atan2(v.Y, v.X); math.Abs(a) < math.Abs(least) {
			least = a
		}
	}
	// In the flat lattice the corner is at atan(sqrt(3)/2 / 3.5) = 13.9 degrees
	// to the left of the first step; the fifth part of a turn takes 72 for 60.
	if least > -10*math.Pi/180 || least < -20*math.Pi/180 {
		t.Errorf("the ring is turned by %.2f degrees", least*180/math.Pi)
	}
}

func TestLatticeErrors(t *testing.T) {
	cases := []struct {
		base   string
		m, n   int
		radius float64
		want   error
	}{
		{"cube", 2, 1, 1, body.ErrUnknownShape},
		{"icosahedron", 0, 0, 1, errSubdivision},
		{"icosahedron", -1, 3, 1, errSubdivision},
		{"icosahedron", 3, -1, 1, errSubdivision},
		{"icosahedron", 9, 8, 1, errSubdivision},
		{"icosahedron", math.MaxInt, math.MaxInt, 1, errSubdivision},
		{"icosahedron", 2, 1, math.NaN(), errRadius},
	}
	for _, c := range cases {
		if _, err := body.GeodesicMN(c.base, c.m, c.n, c.radius); !testkit.Says(err, c.want) {
			t.Errorf("%s %d %d %g: %v", c.base, c.m, c.n, c.radius, err)
		}
	}
}

func ExampleGeodesicMN() {
	b, err := body.GeodesicMN("icosahedron", 2, 1, 0.15)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, c := range b.EdgeClasses() {
		fmt.Printf("%d edges %s of %.1f mm\n", len(c.Edges), c.Name, 1000*c.Length)
	}
	// Output:
	// 60 edges A of 59.0 mm
	// 60 edges B of 68.0 mm
	// 30 edges C of 70.1 mm
	// 60 edges D of 72.1 mm
}

func BenchmarkGeodesicMN(b *testing.B) {
	for _, d := range [][2]int{{1, 1}, {8, 8}} {
		b.Run(fmt.Sprint(d[0], d[1]), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				testkit.Body(b)(body.GeodesicMN("icosahedron", d[0], d[1], radius))
			}
		})
	}
}
