package poly_test

import (
	"bytes"
	"encoding/binary"
	"math"
	"strings"
	"testing"

	"pappus/layout/body"
	"pappus/layout/poly"
	"pappus/layout/shell"
	"pappus/testdata/testkit"

	"gonum.org/v1/gonum/spatial/r3"
)

// octant is the cell of the directions with given signs; open sides face the next octant
// round z.
func octant(x, y, z float64, open ...bool) poly.Cell {
	c := poly.Cell{Open: make([]bool, 3), Sides: []poly.Plane{
		{Normal: r3.Vec{X: -x}}, {Normal: r3.Vec{Y: -y}}, {Normal: r3.Vec{Z: -z}},
	}}
	copy(c.Open, open)
	return c
}

// TestCells: an octant of a cube's wall is an eighth of it, two side by side a quarter, and
// the seam between them is not there.
func TestCells(t *testing.T) {
	b, err := body.Platonic("cube", 0.1*math.Sqrt(3))
	if err != nil {
		t.Fatal(err)
	}
	whole, err := shell.Make(b, 0.01, nil)
	if err != nil {
		t.Fatal(err)
	}
	wall := math.Pow(0.2, 3) - math.Pow(0.18, 3)
	// An octant has three outer squares of 0.1, three inner of 0.09, and three seams, each
	// a square of 0.1 less one of 0.09.
	seam := 0.1*0.1 - 0.09*0.09
	skin := 3 * (0.1*0.1 + 0.09*0.09)
	for _, c := range []struct {
		name         string
		cells        []poly.Cell
		volume, area float64
	}{
		{"one", []poly.Cell{octant(1, 1, 1)}, wall / 8, skin + 3*seam},
		{"two", []poly.Cell{octant(1, 1, 1, true), octant(-1, 1, 1, true)}, wall / 4, 2*skin + 4*seam},
		{"four round the axis", []poly.Cell{octant(1, 1, 1, true, true), octant(-1, 1, 1, true, true),
			octant(1, -1, 1, true, true), octant(-1, -1, 1, true, true)}, wall / 2, 4*skin + 4*seam},
	} {
		t.Run(c.name, func(t *testing.T) {
			m, err := whole.Cells(c.cells)
			if err != nil {
				t.Fatal(err)
			}
			if err := m.Check(); err != nil {
				t.Error(err)
			}
			if math.Abs(m.Volume()/c.volume-1) > 1e-9 || math.Abs(meshArea(m)/c.area-1) > 1e-9 {
				t.Errorf("%.12g m3 and %.12g m2, want %.12g and %.12g", m.Volume(), meshArea(m), c.volume, c.area)
			}
		})
	}
	if _, err := whole.Cells(nil); !testkit.Says(err, errNothingLeft) {
		t.Errorf("no cell: %v", err)
	}
	if _, err := whole.Cells([]poly.Cell{octant(1, 1, 1, true)}); err == nil {
		t.Error("an open side with nothing beyond is closed")
	}
}

// meshArea returns a mesh's surface.
func meshArea(m poly.Mesh) float64 {
	sum := 0.0
	for _, t := range m.Triangles {
		sum += r3.Norm(r3.Triangle{m.Vertices[t[0]], m.Vertices[t[1]], m.Vertices[t[2]]}.Normal()) / 2
	}
	return sum
}

// TestSTL reads a file back by the layout of the format.
func TestSTL(t *testing.T) {
	m, err := shell.Make(platonic(t, "cube"), 0.003, nil)
	if err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	if err := poly.WriteSTL(&out, m, "a box, größer"); err != nil {
		t.Fatal(err)
	}
	data := out.Bytes()
	if n := int(binary.LittleEndian.Uint32(data[80:])); n != len(m.Triangles) || len(data) != 84+50*n {
		t.Fatalf("%d triangles in %d bytes, want %d", n, len(data), len(m.Triangles))
	}
	if got, want := strings.TrimRight(string(data[:80]), " "), "mesh a box, gr??er"; got != want {
		t.Errorf("header %q, want %q", got, want)
	}
	first := m.Vertices[m.Triangles[0][0]]
	if got := math.Float32frombits(binary.LittleEndian.Uint32(data[84+12:])); got != float32(1e3*first.X) {
		t.Errorf("first corner at x = %g mm, want %g", got, 1e3*first.X)
	}
}
