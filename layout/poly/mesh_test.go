package poly_test

import (
	"bytes"
	"encoding/binary"
	"io"
	"testing"

	"pappus/layout/poly"
	"pappus/testdata/testkit"

	"gonum.org/v1/gonum/spatial/r3"
)

// pyramid is a closed mesh of four triangles.
func pyramid() poly.Mesh {
	return poly.Mesh{Vertices: []r3.Vec{{}, {X: 1}, {Y: 1}, {Z: 1}}, Triangles: [][3]int{{0, 2, 1}, {0, 1, 3}, {1, 2, 3}, {2, 0, 3}}}
}

// TestCheck: what is no closed surface wound outward is told.
func TestCheck(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(m *poly.Mesh)
		open   bool
	}{
		{"closed", func(*poly.Mesh) {}, false},
		{"a gap", func(m *poly.Mesh) { m.Triangles = m.Triangles[1:] }, true},
		{"a triangle turned", func(m *poly.Mesh) { m.Triangles[0] = [3]int{0, 1, 2} }, true},
		{"a corner twice", func(m *poly.Mesh) { m.Triangles = append(m.Triangles, [3]int{1, 1, 2}) }, true},
		{"inside out", func(m *poly.Mesh) {
			for i, t := range m.Triangles {
				m.Triangles[i] = [3]int{t[1], t[0], t[2]}
			}
		}, true},
		{"nothing", func(m *poly.Mesh) { *m = poly.Mesh{} }, true},
	} {
		t.Run(c.name, func(t *testing.T) {
			m := pyramid()
			c.change(&m)
			if err := m.Check(); testkit.Says(err, errOpenMesh) != c.open || err != nil != c.open {
				t.Errorf("got %v", err)
			}
		})
	}
	if b := (poly.Mesh{}).Bounds(); b != (r3.Box{}) {
		t.Errorf("nothing has the box %v", b)
	}
}

// TestSTLThin: triangles that the format cannot tell from edges are left out, and what a
// writer says comes back.
func TestSTLThin(t *testing.T) {
	m := pyramid()
	m.Vertices = append(m.Vertices, r3.Vec{X: 1 + 1e-12})
	m.Triangles = append(m.Triangles, [3]int{1, 4, 2})
	var out bytes.Buffer
	if err := poly.WriteSTL(&out, m, "solid"); err != nil {
		t.Fatal(err)
	}
	if n := binary.LittleEndian.Uint32(out.Bytes()[80:]); n != 4 {
		t.Errorf("%d triangles", n)
	}
	// A flap on an edge that is thinner than the rounding: two more corners, of which one is not at an
	// end of it, so that no triangle has two corners in one place.
	m = pyramid()
	m.Vertices = append(m.Vertices, r3.Vec{X: 0.5, Y: -0.5}, r3.Vec{X: 0.5, Y: -0.5 - 1e-12})
	m.Triangles = append(m.Triangles, [3]int{0, 1, 4}, [3]int{1, 0, 5})
	out.Reset()
	if err := poly.WriteSTL(&out, m, "flap"); err != nil {
		t.Fatal(err)
	}
	if n := binary.LittleEndian.Uint32(out.Bytes()[80:]); n != 4 {
		t.Errorf("%d triangles with a flap", n)
	}
	r, w := io.Pipe()
	r.Close()
	if err := poly.WriteSTL(w, m, "solid"); !testkit.Says(err, io.ErrClosedPipe) {
		t.Errorf("a closed pipe: %v", err)
	}
}

// TestFill: a face with a hole, two faces, and what is no face.
func TestFill(t *testing.T) {
	square := func(at, half float64) []r3.Vec {
		return []r3.Vec{{X: at + half, Y: half}, {X: at - half, Y: half}, {X: at - half, Y: -half}, {X: at + half, Y: -half}}
	}
	points := append(append(square(0, 2), square(0, 1)...), square(9, 1)...)
	up := r3.Vec{Z: 1}
	for _, c := range []struct {
		area  float64
		loops [][]int
	}{
		{16 - 4, [][]int{{7, 6, 5, 4}, {0, 1, 2, 3}}},
		{16 + 4, [][]int{{0, 1, 2, 3}, {8, 9, 10, 11}}},
	} {
		triangles, err := poly.Fill(points, up, c.loops...)
		if err != nil {
			t.Fatal(err)
		}
		area := 0.0
		for _, c := range triangles {
			area += r3.Dot(up, r3.Triangle{points[c[0]], points[c[1]], points[c[2]]}.Normal()) / 2
		}
		testkit.Near(t, "area", area, c.area, 1e-14)
	}
	for name, loops := range map[string][][]int{
		"a hole alone":         {{7, 6, 5, 4}},
		"a hole over the edge": {{8, 9, 10, 11}, {7, 6, 5, 4}},
		"two and a hole":       {{0, 1, 2, 3}, {7, 6, 5, 4}, {8, 9, 10, 11}},
		"a bow tie":            {{0, 1, 3, 2}, {8, 9, 10, 11}},
	} {
		if out, err := poly.Fill(points, up, loops...); err == nil {
			t.Errorf("%s gives %v", name, out)
		}
	}
}

// TestCentroid: a box away from the origin has its middle as its centre, a tetrahedron a quarter
// of the sum of its corners.
func TestCentroid(t *testing.T) {
	corners := []r3.Vec{{X: 1}, {Y: 2}, {Z: 3}, {X: 4, Y: 5, Z: 6}}
	m := poly.Mesh{Vertices: corners, Triangles: [][3]int{{0, 2, 1}, {0, 1, 3}, {1, 2, 3}, {2, 0, 3}}}
	if m.Volume() < 0 {
		for i, f := range m.Triangles {
			m.Triangles[i] = [3]int{f[0], f[2], f[1]}
		}
	}
	want := r3.Vec{X: 5.0 / 4, Y: 7.0 / 4, Z: 9.0 / 4}
	if got := m.Centroid(); r3.Norm(r3.Sub(got, want)) > 1e-12 {
		t.Errorf("%v, want %v", got, want)
	}
}
