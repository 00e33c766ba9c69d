package shell_test

import (
	"fmt"
	"math"
	"strings"
	"sync"
	"testing"

	"pappus/layout/body"
	"pappus/layout/poly"
	"pappus/layout/shell"
	"pappus/testdata/testkit"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// onFaces puts a hole on the centre of each face but the base.
func onFaces(b *body.Body, radius float64) []shell.Hole {
	var holes []shell.Hole
	for f, face := range b.Faces {
		if !face.Base() {
			holes = append(holes, shell.Hole{ID: f + 1, Point: b.Centroid(f), Normal: b.Normal(f), Face: f, Radius: radius})
		}
	}
	return holes
}

func need(t testing.TB, b *body.Body, err error) *body.Body {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
	return b
}

func platonic(t testing.TB, name string, radius float64) *body.Body {
	b, err := body.Platonic(name, radius)
	return need(t, b, err)
}

func geodesic(t testing.TB, base string, n int, radius float64) *body.Body {
	b, err := body.Geodesic(base, n, radius)
	return need(t, b, err)
}

func cut(t testing.TB, b *body.Body, height float64) *body.Body {
	c, err := b.CutAt(height)
	return need(t, c, err)
}

// prism returns the volume of one cut-out: a prism of n sides round a circle.
func prism(radius, wall float64) float64 {
	n := float64(shell.Sides(radius))
	return n * radius * radius * math.Tan(math.Pi/n) * wall
}

// TestPlatonicVolume: where every face touches one sphere, moving the faces
// inward shrinks the body in the ratio of the inradii (Euclid XI), so that the
// wall's volume is V (1 - (1 - wall/inradius)^3), less the prisms cut out.
func TestPlatonicVolume(t *testing.T) {
	const wall, hole = 0.003, 0.012
	for _, name := range []string{"tetrahedron", "cube", "octahedron", "dodecahedron", "icosahedron"} {
		b := platonic(t, name, 0.15)
		inradius := r3.Norm(b.Centroid(0))
		holes := onFaces(b, hole)
		m, err := shell.Make(b, wall, holes)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		want := b.Volume()*(1-math.Pow(1-wall/inradius, 3)) - float64(len(holes))*prism(hole, wall)
		if got := m.Volume(); math.Abs(got/want-1) > 1e-9 {
			t.Errorf("%s: volume %.9g, want %.9g", name, got, want)
		}
		// Euler: V - E + F = 2 (1 - genus); n holes through a closed wall make
		// one surface of genus n-1.
		if got, want := len(m.Vertices)-len(m.Triangles)/2, 2*(2-len(holes)); got != want {
			t.Errorf("%s: Euler characteristic %d, want %d", name, got, want)
		}
	}
}

// TestHalfCube: a cube cut in half is an open box; the ring below is all that
// joins outside and inside.
func TestHalfCube(t *testing.T) {
	const side, wall = 0.2, 0.004
	b := cut(t, platonic(t, "cube", side*math.Sqrt(3)/2), 0)
	m, err := shell.Make(b, wall, nil)
	if err != nil {
		t.Fatal(err)
	}
	in := side - 2*wall
	if got, want := m.Volume(), side*side*side/2-in*in*(side/2-wall); math.Abs(got/want-1) > 1e-9 {
		t.Errorf("volume %.9g, want %.9g", got, want)
	}
	if got, want := meshArea(m), side*side+4*side*side/2+in*in+4*in*(side/2-wall)+side*side-in*in; math.Abs(got/want-1) > 1e-9 {
		t.Errorf("area %.9g, want %.9g", got, want)
	}
}

// TestBall holds a ball's shell against 4/3 pi (R^3 - (R-w)^3), and a half
// ball's against half of that. Facets stand out by about a thousandth.
func TestBall(t *testing.T) {
	const radius, wall = 0.15, 0.003
	ball := body.Ball(radius)
	full := 4 * math.Pi / 3 * (math.Pow(radius, 3) - math.Pow(radius-wall, 3))
	for _, test := range []struct {
		name string
		b    *body.Body
		want float64
	}{{"whole", ball, full}, {"half", cut(t, ball, 0), full / 2}} {
		m, err := shell.Make(test.b, wall, nil)
		if err != nil {
			t.Fatalf("%s: %v", test.name, err)
		}
		if got := m.Volume(); math.Abs(got/test.want-1) > 2e-3 {
			t.Errorf("%s: volume %.6g, want %.6g", test.name, got, test.want)
		}
		far, near := 0.0, math.Inf(1)
		for _, v := range m.Vertices {
			far, near = max(far, r3.Norm(v)), min(near, r3.Norm(v))
		}
		if far > radius*1.0012 || near < radius-wall-1e-9 {
			t.Errorf("%s: from %.6g to %.6g m from the centre", test.name, near, far)
		}
		t.Logf("%s: stands out by %.3g of the radius, volume off by %.3g, %d triangles",
			test.name, far/radius-1, m.Volume()/test.want-1, len(m.Triangles))
	}
}

func ballHoles(b *body.Body, mounts *body.Body, radius, seat float64) []shell.Hole {
	var holes []shell.Hole
	for _, v := range mounts.Vertices {
		p := r3.Scale(b.Radius, r3.Unit(v))
		if !b.IsCut || p.Z > b.Cut+0.03 {
			holes = append(holes, shell.Hole{ID: len(holes) + 1, Point: p, Face: -1, Radius: radius, Seat: seat})
		}
	}
	return holes
}

type sample struct {
	name  string
	mesh  poly.Mesh
	parts int // connected pieces
}

var once struct {
	sync.Once
	samples []sample
}

// samples are shells and segments of all kinds, made once.
func samples(t testing.TB) []sample {
	t.Helper()
	once.Do(func() { once.samples = makeSamples(t) })
	if once.samples == nil {
		t.Fatal("no samples")
	}
	return once.samples
}

func makeSamples(t testing.TB) []sample {
	var out []sample
	add := func(name string, b *body.Body, holes []shell.Hole) poly.Mesh {
		m, err := shell.Make(b, 0.003, holes)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		out = append(out, sample{name, m, 1})
		return m
	}
	for _, name := range []string{"tetrahedron", "cube", "octahedron", "dodecahedron", "icosahedron"} {
		b := platonic(t, name, 0.15)
		add(name, b, onFaces(b, 0.0165))
	}
	dome := cut(t, geodesic(t, "icosahedron", 2, 0.15), 0)
	lantern := add("dome", dome, onFaces(dome, 0.0165))
	for _, base := range []string{"octahedron", "icosahedron"} {
		whole := geodesic(t, base, 5, 0.15)
		add(base+" 5", whole, onFaces(whole, 0.004))
	}
	odd := cut(t, geodesic(t, "icosahedron", 4, 0.15), -0.0531)
	add("cut anywhere", odd, onFaces(odd, 0.004)[:60])
	twenty := geodesic(t, "icosahedron", 2, 1)
	ball := body.Ball(0.15)
	add("ball", ball, ballHoles(ball, twenty, 0.0165, 0.02))
	half := cut(t, ball, -0.02)
	round := add("half ball", half, ballHoles(half, twenty, 0.0165, 0.02))
	segments := func(name string, m poly.Mesh, cells [][]poly.Plane) {
		sum := 0.0
		for i, planes := range cells {
			part, err := m.Part(planes...)
			if err != nil {
				t.Fatalf("%s segment %d: %v", name, i+1, err)
			}
			sum += part.Volume()
			out = append(out, sample{fmt.Sprintf("%s segment %d", name, i+1), part, 0})
		}
		if whole := m.Volume(); math.Abs(sum/whole-1) > 1e-9 {
			t.Errorf("%s: segments have %.9g m3, the whole %.9g", name, sum, whole)
		}
	}
	segments("dome in 2", lantern, wedges(2, 0.1))
	segments("dome in 5", lantern, wedges(5, 0))
	segments("dome in 3 by 2", lantern, wedges(3, 0.3, 0.08))
	segments("half ball in 4", round, wedges(4, 0))
	return out
}

func TestClosed(t *testing.T) {
	for _, s := range samples(t) {
		if err := s.mesh.Check(); err != nil {
			t.Errorf("%s: %v", s.name, err)
		}
	}
}

// TestAdmesh has a mesh checker of its own mind, admesh, read what is written.
func TestAdmesh(t *testing.T) {
	for _, s := range samples(t) {
		t.Run(s.name, func(t *testing.T) { testkit.Printable(t, s.mesh, s.parts) })
	}
}

// TestNoCrossing shoots rays through shells: surfaces must be entered and left
// by turns.
func TestNoCrossing(t *testing.T) {
	for _, s := range samples(t) {
		rapid.Check(t, func(t *rapid.T) {
			around := rapid.Float64Range(-0.05, 0.05)
			from := r3.Vec{X: around.Draw(t, "x"), Y: around.Draw(t, "y"), Z: around.Draw(t, "z")}
			way := r3.Vec{X: 1, Y: rapid.Float64Range(-1, 1).Draw(t, "up"), Z: rapid.Float64Range(-1, 1).Draw(t, "across")}
			if state := crossings(s.mesh, from, way); state != "" {
				t.Errorf("%s: %s", s.name, state)
			}
		})
	}
}

// crossings tells what is wrong along a line through a mesh, nothing where it
// goes in and out by turns.
func crossings(m poly.Mesh, from, way r3.Vec) string {
	type hit struct {
		at float64
		in bool
	}
	var hits []hit
	for _, t := range m.Triangles {
		a, b, c := m.Vertices[t[0]], m.Vertices[t[1]], m.Vertices[t[2]]
		n := r3.Cross(r3.Sub(b, a), r3.Sub(c, a))
		facing := r3.Dot(n, way)
		if facing == 0 {
			continue
		}
		at := r3.Dot(n, r3.Sub(a, from)) / facing
		p := r3.Add(from, r3.Scale(at, way))
		least := math.Inf(1)
		for _, e := range [][2]r3.Vec{{a, b}, {b, c}, {c, a}} {
			least = min(least, r3.Dot(n, r3.Cross(r3.Sub(e[1], e[0]), r3.Sub(p, e[0])))/r3.Norm2(n))
		}
		if math.Abs(least) < 1e-7 || math.Abs(facing)/r3.Norm(n) < 1e-4 {
			return "" // through an edge or along a triangle: tells nothing
		}
		if least > 0 {
			hits = append(hits, hit{at, facing < 0})
		}
	}
	for i := range hits {
		for j := range i {
			if hits[i].at < hits[j].at {
				hits[i], hits[j] = hits[j], hits[i]
			}
		}
	}
	for i, h := range hits {
		if h.in != (i%2 == 0) {
			return fmt.Sprintf("hits %v", hits)
		}
	}
	if len(hits)%2 != 0 {
		return fmt.Sprintf("%d hits", len(hits))
	}
	return ""
}

func TestErrors(t *testing.T) {
	cube := platonic(t, "cube", 0.1)
	top := shell.Hole{ID: 7, Point: cube.Centroid(0), Face: 0, Radius: 0.0165}
	with := func(change func(*shell.Hole)) []shell.Hole {
		h := top
		change(&h)
		return []shell.Hole{h}
	}
	ball := body.Ball(0.1)
	for _, test := range []struct {
		name  string
		b     *body.Body
		wall  float64
		holes []shell.Hole
		want  error
		says  string
	}{
		{"no wall", cube, 0, nil, errWall, ""},
		{"not a wall", cube, math.NaN(), nil, errWall, ""},
		{"all wall", cube, 0.06, nil, errWall, "60 mm"},
		{"on a vertex", cube, 0.003, with(func(h *shell.Hole) { h.Face = -1 }), shell.ErrCutout, "mount 7"},
		{"no such face", cube, 0.003, with(func(h *shell.Hole) { h.Face = 6 }), shell.ErrCutout, "mount 7"},
		{"too wide", cube, 0.003, with(func(h *shell.Hole) { h.Radius = 0.06 }), shell.ErrCutout, "edge of its face"},
		{"too wide inside", cube, 0.003, with(func(h *shell.Hole) { h.Radius = 0.056 }), shell.ErrCutout, "inside of the wall"},
		{"over the edge", cube, 0.003, with(func(h *shell.Hole) { h.Point.X += 0.05 }), shell.ErrCutout, "mount 7"},
		{"no radius", cube, 0.003, with(func(h *shell.Hole) { h.Radius = 0 }), shell.ErrCutout, "mount 7"},
		{"two in one", cube, 0.003, append(with(func(h *shell.Hole) { h.Point.X += 0.02; h.ID = 8 }), top), shell.ErrCutout, "mounts 8 and 7"},
		{"narrow seat", ball, 0.003, []shell.Hole{{ID: 2, Point: r3.Vec{X: 0.1}, Radius: 0.0165, Seat: 0.016}}, shell.ErrCutout, "mount 2"},
		{"tight seat", ball, 0.003, []shell.Hole{{ID: 2, Point: r3.Vec{X: 0.1}, Radius: 0.0165, Seat: 0.0165}}, shell.ErrCutout, "mount 2"},
	} {
		_, err := shell.Make(test.b, test.wall, test.holes)
		if !testkit.Says(err, test.want) || !strings.Contains(err.Error(), test.says) {
			t.Errorf("%s: got %v, want %v that says %q", test.name, err, test.want, test.says)
		}
	}
	m, err := shell.Make(cube, 0.003, nil)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := m.Part(poly.Plane{Normal: r3.Vec{Z: 1}, Offset: -1}); !testkit.Says(err, errNothingLeft) {
		t.Errorf("a cut below everything: %v", err)
	}
	m.Triangles = m.Triangles[1:]
	if err := m.Check(); !testkit.Says(err, errOpen) {
		t.Errorf("a mesh with a gap: %v", err)
	}
}

func ExampleMake() {
	b, err := body.Platonic("dodecahedron", 0.15)
	if err != nil {
		fmt.Println(err)
		return
	}
	var holes []shell.Hole
	for f := range b.Faces {
		holes = append(holes, shell.Hole{ID: f + 1, Point: b.Centroid(f), Face: f, Radius: 0.033})
	}
	m, err := shell.Make(b, 0.003, holes)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.0f cm3 of plastic, closed: %t\n", 1e6*m.Volume(), m.Check() == nil)
	// Output: 569 cm3 of plastic, closed: true
}

func BenchmarkMake(b *testing.B) {
	dome := cut(b, geodesic(b, "icosahedron", 2, 0.15), 0)
	ball := body.Ball(0.15)
	twenty := geodesic(b, "icosahedron", 2, 1)
	for _, test := range []struct {
		name  string
		b     *body.Body
		holes []shell.Hole
	}{{"dome", dome, onFaces(dome, 0.0165)}, {"ball", ball, ballHoles(ball, twenty, 0.0165, 0.02)}} {
		b.Run(test.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := shell.Make(test.b, 0.003, test.holes); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
