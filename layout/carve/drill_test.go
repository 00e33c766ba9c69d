package carve_test

import (
	"math"
	"testing"

	"pappus/layout/body"
	"pappus/layout/poly"
	"pappus/layout/shell"
	"pappus/testdata/testkit"

	"gonum.org/v1/gonum/spatial/r3"
)

// printed is the shell of a ball of 150 mm with 20 drivers, and 80 pilot holes to be cut into it.
func printed(t testing.TB) (whole poly.Mesh, holes []poly.Mesh) {
	t.Helper()
	var cut []shell.Hole
	ico, err := body.Platonic("dodecahedron", 1)
	if err != nil {
		t.Fatal(err)
	}
	pin := meshOf(prism(t, 16, 0.001, 0.012))
	for i, at := range ico.Vertices {
		cut = append(cut, shell.Hole{ID: i, Point: r3.Scale(0.15, at), Normal: at, Radius: 0.0165, Seat: 0.022})
		right, up := poly.Across(at)
		for k := range 4 {
			sin, cos := math.Sincos(math.Pi/4 + math.Pi/2*float64(k))
			to := r3.Add(r3.Scale(0.146, at), r3.Scale(0.0185, r3.Add(r3.Scale(cos, right), r3.Scale(sin, up))))
			m := poly.Mesh{Triangles: pin.Triangles}
			for _, v := range pin.Vertices {
				m.Vertices = append(m.Vertices, r3.Add(to, r3.Add(r3.Scale(v.X, right), r3.Add(r3.Scale(v.Y, up), r3.Scale(v.Z, at)))))
			}
			holes = append(holes, m)
		}
	}
	if whole, err = shell.Make(body.Ball(0.15), 0.003, cut); err != nil {
		t.Fatal(err)
	}
	return whole, holes
}

func prism(t testing.TB, sides int, radius, height float64) poly.Solid {
	t.Helper()
	b, err := body.Prism(sides, 1, 2)
	if err != nil {
		t.Fatal(err)
	}
	out := b.Solid.Times(1)
	flat, high := 0.0, 0.0
	for _, v := range out.Vertices {
		flat, high = max(flat, math.Hypot(v.X, v.Y)), max(high, v.Z)
	}
	for i, v := range out.Vertices {
		out.Vertices[i] = r3.Vec{X: v.X * radius / flat, Y: v.Y * radius / flat, Z: v.Z * height / 2 / high}
	}
	return out
}

// TestDrilledShell: each hole takes what it has in common with the wall, and no more.
func TestDrilledShell(t *testing.T) {
	whole, holes := printed(t)
	got, err := difference(whole, holes...)
	left := volume(t, got, err)
	all, err := intersection(whole, joined(holes))
	if part := volume(t, all, err); math.Abs(left+part-whole.Volume()) > 1e-9*whole.Volume() {
		t.Errorf("left %g, taken %g, whole %g m3", left, part, whole.Volume())
	}
	one, err := difference(whole, holes[0])
	if err != nil {
		t.Fatal(err)
	}
	// Flush in every face of the hole: the whole comes back.
	full, err := union(one, holes[0])
	proud, err2 := difference(holes[0], one)
	if a, b := volume(t, full, err), volume(t, proud, err2); math.Abs(a-one.Volume()-b) > 1e-9*a {
		t.Errorf("%g m3 with a hole, %g filled by %g", one.Volume(), a, b)
	}
	testkit.Printable(t, got, 1)
	testkit.Printable(t, full, 1)
	onPlanes(t, got, append(holes, whole)...)
}

// onPlanes checks that every triangle lies in the plane of one that there was.
func onPlanes(t *testing.T, got poly.Mesh, from ...poly.Mesh) {
	t.Helper()
	type plane [4]int64
	key := func(n r3.Vec, d float64, k int) plane {
		round := func(v, s float64) int64 { return int64(math.Floor(v*s + 0.5*float64(k&1))) }
		return plane{round(n.X, 1e4), round(n.Y, 1e4), round(n.Z, 1e4), round(d, 1e6)}
	}
	of := func(m poly.Mesh, i int) (r3.Vec, float64, bool) {
		c := m.Triangles[i]
		n := r3.Triangle{m.Vertices[c[0]], m.Vertices[c[1]], m.Vertices[c[2]]}.Normal()
		if r3.Norm(n) < 1e-10 { // thin: it leans by rounding
			return n, 0, false
		}
		n = r3.Unit(n)
		return n, r3.Dot(n, m.Vertices[c[0]]), true
	}
	known := make(map[plane]bool)
	for _, m := range from {
		for i := range m.Triangles {
			if n, d, ok := of(m, i); ok {
				for k := range 2 {
					known[key(n, d, k)], known[key(r3.Scale(-1, n), -d, k)] = true, true
				}
			}
		}
	}
	bad := 0
	for i := range got.Triangles {
		if n, d, ok := of(got, i); ok && !known[key(n, d, 0)] && !known[key(n, d, 1)] {
			bad++
		}
	}
	if bad > 0 {
		t.Errorf("%d of %d triangles lie in no plane of before", bad, len(got.Triangles))
	}
}

// joined puts meshes into one.
func joined(all []poly.Mesh) (out poly.Mesh) {
	for _, m := range all {
		first := len(out.Vertices)
		out.Vertices = append(out.Vertices, m.Vertices...)
		for _, tri := range m.Triangles {
			out.Triangles = append(out.Triangles, [3]int{tri[0] + first, tri[1] + first, tri[2] + first})
		}
	}
	return out
}

func BenchmarkDrill(b *testing.B) {
	whole, holes := printed(b)
	for b.Loop() {
		if _, err := difference(whole, holes...); err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric(float64(len(whole.Triangles)), "triangles")
}
