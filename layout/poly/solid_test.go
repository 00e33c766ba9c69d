package poly_test

import (
	"math"
	"testing"

	"pappus/layout/body"
	"pappus/layout/poly"
	"pappus/layout/shell"
	"pappus/testdata/testkit"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// direction draws a unit vector.
func direction(t *rapid.T) r3.Vec {
	up, turn := rapid.Float64Range(-1, 1).Draw(t, "up"), rapid.Float64Range(-math.Pi, math.Pi).Draw(t, "turn")
	sin, cos := math.Sincos(turn)
	out := math.Sqrt(1 - up*up)
	return r3.Vec{X: out * cos, Y: out * sin, Z: up}
}

// TestCutsAddUp: what a plane leaves on either side of a solid, or of a wall's mesh, makes the
// whole, is closed, and the two share their new face.
func TestCutsAddUp(t *testing.T) {
	names := []string{"tetrahedron", "cube", "octahedron", "dodecahedron", "icosahedron"}
	walls := make(map[string]poly.Mesh)
	for _, name := range names {
		m, err := shell.Make(platonic(t, name), 0.01, nil)
		if err != nil {
			t.Fatal(err)
		}
		walls[name] = m
	}
	rapid.Check(t, func(t *rapid.T) {
		b := platonic(t, rapid.SampledFrom(names).Draw(t, "solid"))
		n := direction(t)
		if rapid.Bool().Draw(t, "through corners") { // where rounding decides
			n = r3.Unit(r3.Cross(b.Vertices[0], b.Vertices[rapid.IntRange(1, len(b.Vertices)-1).Draw(t, "corner")]))
			if math.IsNaN(n.X) {
				return
			}
		}
		p := poly.Plane{Normal: n, Offset: rapid.SampledFrom([]float64{0, 0, 0.01, -0.02}).Draw(t, "offset")}
		q := poly.Plane{Normal: r3.Scale(-1, n), Offset: -p.Offset}
		volume, area := 0.0, [2]float64{}
		for i, side := range []poly.Plane{p, q} {
			s, err := b.Within(7, 1e-9*radius, side)
			if err != nil {
				t.Fatal(err)
			}
			testkit.Closed(t, &body.Body{Name: b.Name, Solid: s, Radius: radius}, 1e-9)
			volume += s.Volume()
			area[i] = s.Area(func(f poly.Face) bool { return f.Base() && f.Cut == 7 })
		}
		testkit.Near(t, "volume", volume, b.Volume(), 1e-8)
		testkit.Near(t, "area of the cut", area[0], area[1], 1e-6)
		wall, parts := walls[names[0]], 0.0
		for _, name := range names {
			if name == b.Name {
				wall = walls[name]
			}
		}
		for _, side := range []poly.Plane{p, q} {
			m, err := wall.Part(side)
			if err != nil {
				t.Fatal(err)
			}
			parts += m.Volume()
		}
		testkit.Near(t, "volume of the wall", parts, wall.Volume(), 1e-5)
	})
}

// TestWithin: planes that leave all, nothing, and a cube in a cube.
func TestWithin(t *testing.T) {
	cube := poly.Box(1)
	all, err := cube.Within(1, 1e-9, poly.Plane{Normal: r3.Vec{Z: 1}, Offset: 1})
	if err != nil || len(all.Faces) != 6 || all.Faces[5].Base() {
		t.Errorf("a plane on a face leaves %d faces, %v", len(all.Faces), err)
	}
	none, err := cube.Within(1, 1e-9, poly.Plane{Normal: r3.Vec{Z: 1}, Offset: -1})
	if err != nil || len(none.Faces) != 0 || none.Volume() != 0 {
		t.Errorf("a plane on the opposite face leaves %d faces, %v", len(none.Faces), err)
	}
	level, sector := poly.Level(-0.5, 0.5), poly.Sector(0, math.Pi/2)
	quarter, err := cube.Within(1, 1e-9, append(level[:], sector[:]...)...)
	if err != nil {
		t.Fatal(err)
	}
	testkit.Near(t, "volume", quarter.Volume(), 1, 1e-12)
	if c := quarter.VolumeCentroid(); r3.Norm(r3.Sub(c, r3.Vec{X: 0.5, Y: 0.5})) > 1e-12 {
		t.Errorf("its middle is at %v", c)
	}
	if low, high := poly.Span(quarter.Vertices); low != -0.5 || high != 0.5 {
		t.Errorf("from %g to %g", low, high)
	}
	if s, err := poly.Meet(level[:], 0.1, 1e-9); err == nil {
		t.Errorf("two planes bound %d faces", len(s.Faces))
	}
	faces := make([]poly.Plane, 6)
	for f := range faces {
		faces[f] = cube.Plane(f)
	}
	if s, err := poly.Meet(faces, 1, 1e-9); err != nil || math.Abs(s.Volume()-8) > 1e-12 || len(s.Vertices) != 8 {
		t.Errorf("a cube from its planes has %g m3 and %d corners, %v", s.Volume(), len(s.Vertices), err)
	}
}

// TestCube: measures of a cube, by hand.
func TestCube(t *testing.T) {
	cube := poly.Box(2)
	edges := cube.Edges()
	if len(edges) != 12 || len(cube.Rings()) != 8 {
		t.Fatalf("%d edges, %d corners", len(edges), len(cube.Rings()))
	}
	for _, e := range edges {
		testkit.Near(t, "dihedral angle", cube.Dihedral(e), math.Pi/2, 1e-15)
	}
	for v, ring := range cube.Rings() {
		if len(ring) != 3 {
			t.Errorf("%d faces round corner %d", len(ring), v)
		}
	}
	testkit.Near(t, "surface", cube.Area(nil), 96, 1e-15)
	for f := range cube.Faces {
		testkit.Near(t, "inscribed radius", cube.InscribedRadius(f), 2, 1e-15)
		testkit.Near(t, "distance", cube.Plane(f).Offset, 2, 1e-15)
		if r3.Norm(r3.Sub(cube.Centroid(f), r3.Scale(2, cube.Normal(f)))) > 1e-15 {
			t.Errorf("the middle of face %d is %v", f, cube.Centroid(f))
		}
	}
	testkit.Near(t, "grown", cube.Times(1.5).Volume(), 216, 1e-15)
	testkit.Near(t, "farthest", poly.Farthest(cube.Vertices), math.Sqrt(12), 1e-15)
	hull := poly.Solid{Vertices: cube.Times(1 / math.Sqrt(12)).Vertices}
	hull.Faces = poly.Hull(hull.Vertices)
	testkit.Near(t, "hull", hull.Volume(), math.Pow(4/math.Sqrt(12), 3), 1e-14)
	plane := poly.Plane{Normal: r3.Vec{Z: 1}, Offset: 2}
	if foot := plane.Foot(r3.Vec{X: 1, Z: 5}); foot != (r3.Vec{X: 1, Z: 2}) {
		t.Errorf("foot at %v", foot)
	}
	for _, n := range []r3.Vec{{X: 1}, {Y: 1}, {Z: 1}} {
		least := poly.LeastAlong(n)
		right, up := poly.Across(n)
		if r3.Dot(least, n) != 0 || r3.Norm(r3.Sub(r3.Cross(right, up), n)) > 1e-15 {
			t.Errorf("%v leans to %v, and is across %v and %v", n, least, right, up)
		}
	}
}

// TestWeld: points become one with all that hang together, and the first stands for them.
func TestWeld(t *testing.T) {
	x := func(v ...float64) (out []r3.Vec) {
		for _, v := range v {
			out = append(out, r3.Vec{X: v})
		}
		return out
	}
	left, place := poly.Welded(x(0, 5, 0.9, 1.8, 5, 7, 2.7), 1)
	if len(left) != 3 || left[0].X != 0 || left[1].X != 5 || left[2].X != 7 {
		t.Errorf("left are %v", left)
	}
	for i, want := range []int{0, 1, 0, 0, 1, 2, 0} {
		if place[i] != want {
			t.Errorf("point %d is at %d, want %d", i, place[i], want)
		}
	}
}

// TestOrder: rings from the top down, each by azimuth from x, whatever the rounding.
func TestOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var want []r3.Vec
		for _, z := range []float64{0.7, 0, -0.4} {
			n := rapid.IntRange(1, 7).Draw(t, "in a ring")
			for i := range n {
				sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
				want = append(want, r3.Vec{X: 0.5 * cos, Y: 0.5 * sin, Z: z})
			}
		}
		order := rapid.Permutation(want).Draw(t, "order")
		for i := range order {
			noise := func() float64 { return rapid.Float64Range(-1e-9, 1e-9).Draw(t, "noise") }
			order[i] = r3.Add(order[i], r3.Vec{X: noise(), Y: noise(), Z: noise()})
		}
		for i, at := range poly.Order(order) {
			if r3.Norm(r3.Sub(order[at], want[i])) > 1e-8 {
				t.Fatalf("place %d has %v, want %v", i, order[at], want[i])
			}
		}
	})
}
