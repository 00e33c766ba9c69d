package body_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"pappus/layout/body"
	"pappus/testdata/reference"
	"pappus/testdata/testkit"

	"gonum.org/v1/gonum/spatial/r3"
)

var archimedeans = []string{
	"truncated tetrahedron", "cuboctahedron", "truncated cube", "truncated octahedron", "rhombicuboctahedron",
	"truncated cuboctahedron", "snub cube", "icosidodecahedron", "truncated dodecahedron", "truncated icosahedron",
	"rhombicosidodecahedron", "truncated icosidodecahedron", "snub dodecahedron",
}

// TestArchimedeanTable checks against polyhedra.csv (Coxeter, Regular
// Polytopes, table I; Cundy and Rollett, Mathematical Models), to the printed
// digits.
func TestArchimedeanTable(t *testing.T) {
	rows, err := reference.Table("polyhedra.csv")
	if err != nil {
		t.Fatal(err)
	}
	found := 0
	for _, row := range rows {
		if !slices.Contains(archimedeans, row["name"]) {
			continue
		}
		found++
		t.Run(row["name"], func(t *testing.T) {
			b := testkit.Body(t)(body.Archimedean(row["name"], radius))
			edges := b.Edges()
			got := [3]float64{float64(len(b.Vertices)), float64(len(edges)), float64(len(b.Faces))}
			if want := [3]float64{row.Float("vertices"), row.Float("edges"), row.Float("faces")}; got != want {
				t.Errorf("vertices, edges, faces: %v, want %v", got, want)
			}
			want := strings.Split(row["dihedral_deg"], "|")
			seen := map[string]bool{}
			for _, e := range edges {
				angle := fmt.Sprintf("%.4f", b.Dihedral(e)*180/math.Pi)
				seen[angle] = true
				if !slices.Contains(want, angle) {
					t.Errorf("dihedral angle of edge %d-%d: %s degrees", e.A, e.B, angle)
				}
				if l := testkit.Length(b, e) / radius; math.Abs(l-row.Float("edge_over_circumradius")) > 0.00000050001 {
					t.Errorf("length of edge %d-%d over radius: %.8f", e.A, e.B, l)
				}
			}
			if len(seen) != len(want) {
				t.Errorf("dihedral angles %v, want %v", seen, want)
			}
		})
	}
	if found != 4 {
		t.Errorf("%d solids in the table, want 4", found)
	}
}

// TestArchimedean checks the faces round each corner and the volume for an edge
// of 1 (Cundy and Rollett, Mathematical Models, 3.7; R. Williams, The
// Geometrical Foundation of Natural Structure, 1979, chapter 3; the formulae
// quoted from memory). The snub dodecahedron's volume is the known number.
func TestArchimedean(t *testing.T) {
	s2, s5 := math.Sqrt2, math.Sqrt(5)
	s33 := math.Sqrt(33)
	tri := (1 + math.Cbrt(19-3*s33) + math.Cbrt(19+3*s33)) / 3 // the tribonacci constant
	cases := []struct {
		name   string
		corner []int // the faces round each, counter-clockwise from the smallest that comes first
		volume float64
		faces  map[int]int
	}{
		{"truncated tetrahedron", []int{3, 6, 6}, 23 * s2 / 12, map[int]int{3: 4, 6: 4}},
		{"cuboctahedron", []int{3, 4, 3, 4}, 5 * s2 / 3, map[int]int{3: 8, 4: 6}},
		{"truncated cube", []int{3, 8, 8}, 7 + 14*s2/3, map[int]int{3: 8, 8: 6}},
		{"truncated octahedron", []int{4, 6, 6}, 8 * s2, map[int]int{4: 6, 6: 8}},
		{"rhombicuboctahedron", []int{3, 4, 4, 4}, 4 + 10*s2/3, map[int]int{3: 8, 4: 18}},
		{"truncated cuboctahedron", []int{4, 6, 8}, 22 + 14*s2, map[int]int{4: 12, 6: 8, 8: 6}},
		{"snub cube", []int{3, 3, 3, 3, 4}, (3*math.Sqrt(tri-1) + 4*math.Sqrt(tri+1)) / (3 * math.Sqrt(2-tri)), map[int]int{3: 32, 4: 6}},
		{"icosidodecahedron", []int{3, 5, 3, 5}, (45 + 17*s5) / 6, map[int]int{3: 20, 5: 12}},
		{"truncated dodecahedron", []int{3, 10, 10}, 5 * (99 + 47*s5) / 12, map[int]int{3: 20, 10: 12}},
		{"truncated icosahedron", []int{5, 6, 6}, (125 + 43*s5) / 4, map[int]int{5: 12, 6: 20}},
		{"rhombicosidodecahedron", []int{3, 4, 5, 4}, (60 + 29*s5) / 3, map[int]int{3: 20, 4: 30, 5: 12}},
		{"truncated icosidodecahedron", []int{4, 6, 10}, 95 + 50*s5, map[int]int{4: 30, 6: 20, 10: 12}},
		{"snub dodecahedron", []int{3, 3, 3, 3, 5}, 37.61664996273336, map[int]int{3: 80, 5: 12}},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			b := testkit.Body(t)(body.Archimedean(c.name, radius))
			edges := b.Edges()
			edge := testkit.Length(b, edges[0])
			for _, e := range edges {
				testkit.Near(t, "edge", testkit.Length(b, e), edge, 1e-12)
			}
			testkit.Near(t, "volume", b.Volume(), c.volume*math.Pow(edge, 3), 1e-11)
			testkit.Near(t, "volume of the ball", 4*math.Pi/3*math.Pow(b.BallRadius, 3), b.Volume(), 1e-13)
			area := 0.0
			for sides, count := range c.faces {
				n := float64(sides)
				area += float64(count) * n / 4 / math.Tan(math.Pi/n) * edge * edge
			}
			testkit.Near(t, "area", b.Area(), area, 1e-11)
			around := make([][]int, len(b.Vertices))
			for f, face := range b.Faces {
				n := float64(len(face.Corners))
				testkit.Near(t, "inscribed radius", b.InscribedRadius(f), edge/2/math.Tan(math.Pi/n), 1e-11)
				for _, v := range face.Corners {
					around[v] = append(around[v], len(face.Corners))
				}
				c.faces[len(face.Corners)]--
			}
			for sides, left := range c.faces {
				if left != 0 {
					t.Errorf("%d faces too few of %d sides", left, sides)
				}
			}
			want := slices.Sorted(slices.Values(c.corner))
			for v, sides := range around {
				slices.Sort(sides)
				if !slices.Equal(sides, want) {
					t.Errorf("faces round vertex %d: %v, want %v", v, sides, want)
				}
				testkit.Near(t, "distance from the centre", r3.Norm(b.Vertices[v]), radius, 1e-14)
			}
		})
	}
}

// TestSnubHand holds the hand that the package comment tells: the top square's
// corners against those of a cube, and the five-sided face's against those of a
// dodecahedron. The angle of the cube is that of the coordinates (1, 1/t, t)
// (Coxeter, Longuet-Higgins and Miller, Uniform polyhedra, 1954), that of the
// dodecahedron 13.106 degrees; both quoted from memory.
func TestSnubHand(t *testing.T) {
	const tri = 1.8392867552141612
	b := testkit.Body(t)(body.Archimedean("snub cube", radius))
	v := b.Vertices[0]
	if got, want := math.Atan2(v.Y, v.X), math.Atan(1/tri); math.Abs(got-want) > 1e-12 {
		t.Errorf("the first corner is at %.4f, want %.4f degrees", got*180/math.Pi, want*180/math.Pi)
	}
	testkit.Near(t, "height", v.Z/math.Hypot(v.X, v.Y), tri/math.Hypot(1, 1/tri), 1e-12)
	d := testkit.Body(t)(body.Archimedean("snub dodecahedron", radius))
	if len(d.Faces[0].Corners) != 5 || math.Abs(d.Normal(0).Z-1) > 1e-12 {
		t.Errorf("on top is %v", d.Faces[0])
	}
	w := d.Vertices[0]
	if got := 36 - math.Atan2(w.Y, w.X)*180/math.Pi; math.Abs(got-13.106) > 0.0005 {
		t.Errorf("the top face is turned by %.4f degrees", got)
	}
}

// TestArchimedeanStance: a regular face on top, level, and one below but for
// the truncated tetrahedron, whose hexagon is below.
func TestArchimedeanStance(t *testing.T) {
	for _, name := range archimedeans {
		b := testkit.Body(t)(body.Archimedean(name, radius))
		last := len(b.Faces) - 1
		if math.Abs(b.Normal(0).Z-1) > 1e-12 || math.Abs(b.Normal(last).Z+1) > 1e-12 {
			t.Errorf("%s: on top %v, below %v", name, b.Normal(0), b.Normal(last))
		}
	}
}

func TestArchimedeanErrors(t *testing.T) {
	for _, name := range []string{"", "cube", "snub tetrahedron"} {
		if _, err := body.Archimedean(name, 1); !testkit.Says(err, body.ErrUnknownShape) {
			t.Errorf("%q: %v", name, err)
		}
	}
	for _, r := range []float64{0, -1, math.NaN(), math.Inf(1)} {
		if _, err := body.Archimedean("snub cube", r); !testkit.Says(err, errRadius) {
			t.Errorf("%g: %v", r, err)
		}
	}
}

func ExampleArchimedean() {
	b, err := body.Archimedean("truncated icosahedron", 0.15)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, c := range b.EdgeClasses() {
		fmt.Printf("%d edges of %.1f mm, %.1f degrees inside\n", len(c.Edges), 1000*c.Length, c.Dihedral*180/math.Pi)
	}
	// Output:
	// 30 edges of 60.5 mm, 138.2 degrees inside
	// 60 edges of 60.5 mm, 142.6 degrees inside
}

func BenchmarkArchimedean(b *testing.B) {
	for _, name := range []string{"cuboctahedron", "truncated icosidodecahedron"} {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				testkit.Body(b)(body.Archimedean(name, radius))
			}
		})
	}
}
