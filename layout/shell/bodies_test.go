package shell_test

import (
	"math"
	"testing"

	"pappus/layout/body"
	"pappus/layout/poly"
	"pappus/layout/shell"
	"pappus/testdata/testkit"

	"pgregory.net/rapid"
)

// TestAnyBody: bodies of all kinds, cut anywhere, with walls from thin to thick
// and holes up to what their faces hold, are closed, no larger than the body,
// and as heavy as wall times surface says, but for edges and corners.
func TestAnyBody(t *testing.T) {
	prisms := rapid.Custom(func(t *rapid.T) *body.Body {
		sides, height := rapid.IntRange(3, 12).Draw(t, "sides"), rapid.Float64Range(0.05, 0.2).Draw(t, "height")
		if rapid.Bool().Draw(t, "anti") {
			return must(body.Antiprism(sides, 0.15, height))
		}
		return must(body.Prism(sides, 0.15, height))
	})
	solids := rapid.Custom(func(t *rapid.T) *body.Body {
		name := rapid.SampledFrom([]string{"cuboctahedron", "truncated icosahedron", "snub cube", "icosidodecahedron"}).Draw(t, "solid")
		return must(body.Archimedean(name, 0.15))
	})
	lattices := rapid.Custom(func(t *rapid.T) *body.Body {
		base := rapid.SampledFrom([]string{"tetrahedron", "octahedron", "icosahedron"}).Draw(t, "base")
		return must(body.GeodesicMN(base, rapid.IntRange(1, 4).Draw(t, "m"), rapid.IntRange(0, 4).Draw(t, "n"), 0.15))
	})
	duals := rapid.Map(rapid.OneOf(solids, lattices), func(b *body.Body) *body.Body { return must(body.Dual(b)) })
	rapid.Check(t, func(t *rapid.T) {
		b := rapid.OneOf(prisms, solids, lattices, duals).Draw(t, "body")
		if rapid.Bool().Draw(t, "cut") {
			low, high := b.Lowest(), b.Lowest()
			for _, v := range b.Vertices {
				high = max(high, v.Z)
			}
			b = must(b.CutAt(low + (high-low)*rapid.Float64Range(0.05, 0.8).Draw(t, "share")))
		}
		wall := rapid.Float64Range(0.0005, 0.008).Draw(t, "wall")
		var holes []shell.Hole
		if rapid.Bool().Draw(t, "drilled") {
			for f, face := range b.Faces {
				if r := 0.5 * b.InscribedRadius(f); !face.Base() && r > 2*wall {
					holes = append(holes, shell.Hole{ID: f, Point: b.Centroid(f), Face: f, Radius: r - wall/2})
				}
			}
		}
		m, err := shell.Make(b, wall, holes)
		if b.IsCut && testkit.Says(err, errWall) {
			t.Skip("a wall thicker than what the cut left")
		}
		if err != nil {
			t.Fatalf("%s: %v", b.Name, err)
		}
		surface, out := 0.0, 0.0
		for f, face := range b.Faces {
			if !face.Base() {
				surface += area(b, f)
			}
		}
		for _, h := range holes {
			out += prism(h.Radius, wall)
		}
		if v := m.Volume(); v > wall*surface-out+1e-12 || v < 0 || v > b.Volume() {
			t.Errorf("%s: volume %g m3, wall times surface %g", b.Name, v, wall*surface-out)
		}
		if holes == nil { // a cut may go through none
			sum := 0.0
			for _, p := range wedges(3, rapid.Float64Range(0, 2).Draw(t, "azimuth")) {
				part, err := m.Part(p...)
				if err != nil {
					t.Fatalf("%s: %v", b.Name, err)
				}
				if err := part.Check(); err != nil {
					t.Fatalf("%s: %v", b.Name, err)
				}
				sum += part.Volume()
			}
			// Points within a hundred-thousandth of the size count as on a cut.
			if math.Abs(sum/m.Volume()-1) > 2e-5 {
				t.Errorf("%s: segments have %g m3 of %g", b.Name, sum, m.Volume())
			}
		}
	})
}

// TestFlatPairs: the tetrahedron of class II at 1,1 is a cube whose squares are
// cut in two; the two halves of one share their face inside.
func TestFlatPairs(t *testing.T) {
	const wall, hole = 0.003, 0.01
	b := must(body.GeodesicMN("tetrahedron", 1, 1, 0.15))
	holes := onFaces(b, hole)
	m, err := shell.Make(b, wall, holes)
	if err != nil {
		t.Fatal(err)
	}
	side := 0.3 / math.Sqrt(3)
	want := math.Pow(side, 3) - math.Pow(side-2*wall, 3) - float64(len(b.Faces))*prism(hole, wall)
	if got := m.Volume(); len(b.Faces) != 12 || math.Abs(got/want-1) > 1e-9 {
		t.Errorf("%d faces, volume %.9g, want %.9g", len(b.Faces), got, want)
	}
}

// must is for bodies that are known to be possible.
func must(b *body.Body, err error) *body.Body {
	if err != nil {
		panic(err)
	}
	return b
}

func area(b *body.Body, face int) float64 {
	c := b.Faces[face].Corners
	sum := 0.0
	for i := 2; i < len(c); i++ {
		m := poly.Mesh{Vertices: b.Vertices, Triangles: [][3]int{{c[0], c[i-1], c[i]}}}
		sum += meshArea(m)
	}
	return sum
}
