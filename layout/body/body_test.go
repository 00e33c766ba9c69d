package body_test

import (
	"math"
	"slices"
	"testing"

	"pappus/layout/body"
	"pappus/testdata/reference"
	"pappus/testdata/testkit"

	"gonum.org/v1/gonum/spatial/r3"
)

const radius = 0.15 // m

var solids = []string{"tetrahedron", "cube", "octahedron", "dodecahedron", "icosahedron"}

var bases = []string{"icosahedron", "octahedron", "tetrahedron"}

func platonic(t testing.TB, name string) *body.Body {
	t.Helper()
	b, err := body.Platonic(name, radius)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func geodesic(t testing.TB, base string, subdivision int) *body.Body {
	t.Helper()
	b, err := body.Geodesic(base, subdivision, radius)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// all calls f with every body that has faces.
func all(t *testing.T, f func(*testing.T, *body.Body)) {
	var bodies []*body.Body
	for _, name := range solids {
		bodies = append(bodies, platonic(t, name))
	}
	for _, base := range bases {
		for n := 1; n <= body.MostSubdivision; n++ {
			bodies = append(bodies, geodesic(t, base, n))
		}
	}
	for _, name := range archimedeans {
		bodies = append(bodies, testkit.Body(t)(body.Archimedean(name, radius)))
	}
	for _, base := range bases {
		for _, d := range [][2]int{{1, 1}, {2, 1}, {1, 3}, {8, 8}, {9, 7}, {1, 15}} {
			bodies = append(bodies, testkit.Body(t)(body.GeodesicMN(base, d[0], d[1], radius)))
		}
	}
	for _, sides := range []int{3, 4, 7, 256} {
		bodies = append(bodies, testkit.Body(t)(body.Prism(sides, radius, 0.3)), testkit.Body(t)(body.Antiprism(sides, radius, 0.3)))
	}
	for _, b := range bodies {
		if len(b.Faces) <= 1300 {
			bodies = append(bodies, testkit.Body(t)(body.Dual(b)))
		}
	}
	for _, b := range bodies {
		t.Run(b.Name, func(t *testing.T) { f(t, b) })
	}
}

// TestPlatonic checks against polyhedra.csv (Coxeter, Regular Polytopes, table
// I; Cundy and Rollett, Mathematical Models), to the printed digits.
func TestPlatonic(t *testing.T) {
	rows, err := reference.Table("polyhedra.csv")
	if err != nil {
		t.Fatal(err)
	}
	found := 0
	for _, row := range rows {
		if !slices.Contains(solids, row["name"]) {
			continue
		}
		found++
		t.Run(row["name"], func(t *testing.T) {
			b := platonic(t, row["name"])
			edges := b.Edges()
			got := [3]float64{float64(len(b.Vertices)), float64(len(edges)), float64(len(b.Faces))}
			want := [3]float64{row.Float("vertices"), row.Float("edges"), row.Float("faces")}
			if got != want {
				t.Errorf("vertices, edges, faces: %v, want %v", got, want)
			}
			for _, e := range edges {
				if d := b.Dihedral(e) * 180 / math.Pi; math.Abs(d-row.Float("dihedral_deg")) > 0.00005001 {
					t.Errorf("dihedral angle of edge %d-%d: %.6f degrees", e.A, e.B, d)
				}
				if l := testkit.Length(b, e) / radius; math.Abs(l-row.Float("edge_over_circumradius")) > 0.00000050001 {
					t.Errorf("length of edge %d-%d over radius: %.8f", e.A, e.B, l)
				}
			}
		})
	}
	if found != len(solids) {
		t.Errorf("%d solids in the table, want %d", found, len(solids))
	}
}

// TestSolidMeasures checks closed forms for an edge of 1 (Coxeter, Regular
// Polytopes, table I; the inscribed circle of a regular p-gon of edge a has the
// radius a/2 cot(pi/p)).
func TestSolidMeasures(t *testing.T) {
	s2, s3, s5 := math.Sqrt2, math.Sqrt(3), math.Sqrt(5)
	cases := []struct {
		name         string
		volume, area float64
		sides        float64
	}{
		{"tetrahedron", s2 / 12, s3, 3},
		{"cube", 1, 6, 4},
		{"octahedron", s2 / 3, 2 * s3, 3},
		{"dodecahedron", (15 + 7*s5) / 4, 3 * math.Sqrt(25+10*s5), 5},
		{"icosahedron", 5 * (3 + s5) / 12, 5 * s3, 3},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			b := platonic(t, c.name)
			edge := testkit.Length(b, b.Edges()[0])
			testkit.Near(t, "volume", b.Volume(), c.volume*edge*edge*edge, 1e-13)
			testkit.Near(t, "area", b.Area(), c.area*edge*edge, 1e-13)
			testkit.Near(t, "volume of the ball", 4*math.Pi/3*math.Pow(b.BallRadius, 3), b.Volume(), 1e-13)
			for f := range b.Faces {
				testkit.Near(t, "inscribed radius", b.InscribedRadius(f), edge/2/math.Tan(math.Pi/c.sides), 1e-12)
			}
		})
	}
}

// TestChords checks against geodesic_chords.csv (Kenner, Geodesic Math and How
// to Use It, 1976), to the printed digits.
func TestChords(t *testing.T) {
	rows, err := reference.Table("geodesic_chords.csv")
	if err != nil {
		t.Fatal(err)
	}
	total := map[int]int{}
	for _, row := range rows {
		n := int(row.Float("frequency"))
		b := geodesic(t, "icosahedron", n)
		count := 0
		for _, e := range b.Edges() {
			if math.Abs(testkit.Length(b, e)/radius-row.Float("chord_factor")) < 0.0000050001 {
				count++
			}
		}
		if count != int(row.Float("edges_in_full_sphere")) {
			t.Errorf("divided in %d, chord %s: %d edges, want %s", n, row["letter"], count, row["edges_in_full_sphere"])
		}
		total[n] += count
	}
	for n, count := range total {
		if edges := len(geodesic(t, "icosahedron", n).Edges()); edges != count {
			t.Errorf("divided in %d: %d edges, %d of them in the table", n, edges, count)
		}
	}
}

// TestGeodesicCounts: a class I division in n makes n*n triangles of each (T in
// Coxeter, Virus macromolecules and geodesic domes, 1971).
func TestGeodesicCounts(t *testing.T) {
	faces := map[string]int{"icosahedron": 20, "octahedron": 8, "tetrahedron": 4}
	for _, base := range bases {
		for n := 1; n <= body.MostSubdivision; n++ {
			b := geodesic(t, base, n)
			f := faces[base] * n * n
			if len(b.Faces) != f || len(b.Vertices) != f/2+2 || len(b.Edges()) != f*3/2 {
				t.Errorf("%s: %d faces, %d vertices, %d edges", b.Name, len(b.Faces), len(b.Vertices), len(b.Edges()))
			}
			for _, v := range b.Vertices {
				testkit.Near(t, "distance from the centre", r3.Norm(v), radius, 1e-14)
			}
		}
	}
}

func TestClosed(t *testing.T) {
	all(t, func(t *testing.T, b *body.Body) { testkit.Closed(t, b, 1e-12*radius) })
}

// TestOrder: places run from the top down, rings by azimuth.
func TestOrder(t *testing.T) {
	all(t, func(t *testing.T, b *body.Body) {
		inOrder(t, b.Vertices)
		var faces, edges []r3.Vec
		for f := range b.Faces {
			faces = append(faces, b.Centroid(f))
		}
		inOrder(t, faces)
		for _, e := range b.Edges() {
			edges = append(edges, r3.Scale(0.5, r3.Add(b.Vertices[e.A], b.Vertices[e.B])))
		}
		inOrder(t, edges)
	})
}

func inOrder(t *testing.T, points []r3.Vec) {
	t.Helper()
	turn := func(p r3.Vec) float64 {
		a := math.Atan2(p.Y, p.X)
		if a < -1e-6 {
			a += 2 * math.Pi
		}
		return a
	}
	for i := 1; i < len(points); i++ {
		p, q := points[i-1], points[i]
		if drop := p.Z - q.Z; drop < -1e-6*radius || drop < 1e-6*radius && turn(q) < turn(p)-1e-6 {
			t.Errorf("%d before %d: %v, %v", i-1, i, p, q)
		}
	}
}

// TestStance holds the orientations of the package comment.
func TestStance(t *testing.T) {
	for _, name := range []string{"tetrahedron", "octahedron", "icosahedron"} {
		b := platonic(t, name)
		if b.Vertices[0] != (r3.Vec{Z: radius}) {
			t.Errorf("%s: top is %v", name, b.Vertices[0])
		}
		if v := b.Vertices[1]; v.Y != 0 || v.X <= 0 {
			t.Errorf("%s: the first vertex of the next ring is %v", name, v)
		}
	}
	for name, slope := range map[string]float64{"cube": 0, "dodecahedron": 1 / math.Sqrt(5)} {
		b := platonic(t, name)
		if n := b.Normal(0); math.Abs(n.Z-1) > 1e-14 {
			t.Errorf("%s: the top faces %v", name, n)
		}
		if n := b.Normal(1); math.Abs(n.Y) > 1e-14 || math.Abs(n.Z-slope) > 1e-14 || n.X <= 0 {
			t.Errorf("%s: the first side faces %v", name, n)
		}
	}
}

// TestEquator: an octahedron has 4n edges at z = 0 exactly, an icosahedron 5n
// where n is even.
func TestEquator(t *testing.T) {
	for n := 1; n <= body.MostSubdivision; n++ {
		if got := level(geodesic(t, "octahedron", n)); got != 4*n {
			t.Errorf("octahedron divided in %d: %d edges", n, got)
		}
		if got := level(geodesic(t, "icosahedron", n)); n%2 == 0 && got != 5*n {
			t.Errorf("icosahedron divided in %d: %d edges", n, got)
		}
	}
}

func level(b *body.Body) int {
	n := 0
	for _, e := range b.Edges() {
		if b.Vertices[e.A].Z == 0 && b.Vertices[e.B].Z == 0 {
			n++
		}
	}
	return n
}

// TestFineIsBall: the finest divisions come near to the ball, from inside.
func TestFineIsBall(t *testing.T) {
	for _, base := range bases {
		last := 0.0
		for _, n := range []int{1, 2, 4, 8, 16} {
			b := geodesic(t, base, n)
			if b.BallRadius <= last || b.BallRadius >= radius {
				t.Errorf("%s: ball radius %g after %g", b.Name, b.BallRadius, last)
			}
			last = b.BallRadius
		}
		if last < 0.985*radius {
			t.Errorf("%s: ball radius %g", base, last)
		}
	}
}

func TestBall(t *testing.T) {
	b := body.Ball(radius)
	if !b.IsBall() || b.BallRadius != radius || b.Lowest() != -radius || len(b.Edges()) != 0 {
		t.Errorf("%+v", b)
	}
	testkit.Near(t, "volume", b.Volume(), 4*math.Pi/3*radius*radius*radius, 1e-14)
	testkit.Near(t, "area", b.Area(), 4*math.Pi*radius*radius, 1e-14)
}

func TestErrors(t *testing.T) {
	make := func(b *body.Body, err error) error { return err }
	solid := func(n string, r float64) error { return make(body.Platonic(n, r)) }
	divided := func(b string, n int, r float64) error { return make(body.Geodesic(b, n, r)) }
	cases := []struct {
		name      string
		err, want error
	}{
		{"unknown solid", solid("prism", 1), body.ErrUnknownShape},
		{"no name", solid("", 1), body.ErrUnknownShape},
		{"no radius", solid("cube", 0), errRadius},
		{"negative radius", solid("cube", -1), errRadius},
		{"radius is no number", solid("cube", math.NaN()), errRadius},
		{"endless radius", solid("cube", math.Inf(1)), errRadius},
		{"base that cannot be divided", divided("cube", 2, 1), body.ErrUnknownShape},
		{"subdivision 0", divided("icosahedron", 0, 1), errSubdivision},
		{"subdivision 17", divided("icosahedron", 17, 1), errSubdivision},
		{"geodesic without radius", divided("icosahedron", 2, 0), errRadius},
	}
	for _, c := range cases {
		if !testkit.Says(c.err, c.want) {
			t.Errorf("%s: %v, want %v", c.name, c.err, c.want)
		}
	}
}
