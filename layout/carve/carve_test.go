package carve_test

import (
	"errors"
	"math"
	"testing"

	"pappus/layout/body"
	"pappus/layout/carve"
	"pappus/layout/poly"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// block returns a box between two corners.
func block(low, high r3.Vec) poly.Mesh {
	s := poly.Box(0.5)
	for i, v := range s.Vertices {
		s.Vertices[i] = r3.Vec{X: low.X + (v.X+0.5)*(high.X-low.X), Y: low.Y + (v.Y+0.5)*(high.Y-low.Y), Z: low.Z + (v.Z+0.5)*(high.Z-low.Z)}
	}
	return meshOf(s)
}

// meshOf returns the triangles of a convex solid.
func meshOf(s poly.Solid) poly.Mesh {
	m := poly.Mesh{Vertices: s.Vertices}
	for _, f := range s.Faces {
		for i := 2; i < len(f.Corners); i++ {
			m.Triangles = append(m.Triangles, [3]int{f.Corners[0], f.Corners[i-1], f.Corners[i]})
		}
	}
	return m
}

// turned returns a mesh turned about an axis and then moved.
func turned(m poly.Mesh, angle float64, axis, by r3.Vec) poly.Mesh {
	r := r3.NewRotation(angle, axis)
	out := poly.Mesh{Triangles: m.Triangles}
	for _, v := range m.Vertices {
		out.Vertices = append(out.Vertices, r3.Add(r.Rotate(v), by))
	}
	return out
}

func volume(t testing.TB, m poly.Mesh, err error) float64 {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
	return m.Volume()
}

// TestBoxes: closed forms, flat faces in one plane among them.
func TestBoxes(t *testing.T) {
	at := func(x, y, z float64) r3.Vec { return r3.Scale(1e-3, r3.Vec{X: x, Y: y, Z: z}) }
	a := block(at(0, 0, 0), at(10, 10, 10))
	for _, c := range []struct {
		name               string
		b                  poly.Mesh
		union, minus, meet float64 // mm3; below 0: an error
	}{
		{"across a corner", block(at(5, 5, 5), at(15, 15, 15)), 1875, 875, 125},
		{"through", block(at(2, 3, -5), at(4, 6, 15)), 1060, 940, 60},
		{"inside", block(at(2, 2, 2), at(4, 4, 4)), 1000, 992, 8},
		{"flush in four faces", block(at(5, 0, 0), at(15, 10, 10)), 1500, 500, 500},
		{"face to face", block(at(10, 0, 0), at(20, 10, 10)), 2000, 1000, -1},
		{"face to part of a face", block(at(10, 2, 2), at(20, 8, 8)), 1360, 1000, -1},
		{"flush from inside", block(at(5, 2, 2), at(10, 8, 8)), 1000, 820, 180},
		{"a slot in an edge", block(at(8, 2, 8), at(10, 8, 10)), 1000, 976, 24},
		{"the same", a, 1000, -1, 1000},
		{"apart", block(at(20, 0, 0), at(30, 10, 10)), 2000, 1000, -1},
	} {
		t.Run(c.name, func(t *testing.T) {
			for _, op := range []struct {
				name string
				do   func(...poly.Mesh) (poly.Mesh, error)
				want float64
			}{
				{"union", union, c.union},
				{"difference", func(m ...poly.Mesh) (poly.Mesh, error) { return difference(m[0], m[1:]...) }, c.minus},
				{"intersection", intersection, c.meet},
			} {
				got, err := op.do(a, c.b)
				if op.want < 0 {
					if !errors.Is(err, carve.ErrEmpty) {
						t.Errorf("%s: %v", op.name, err)
					}
					continue
				}
				if v := 1e9 * volume(t, got, err); math.Abs(v-op.want) > 1e-9*op.want {
					t.Errorf("%s: %.12g mm3, want %g", op.name, v, op.want)
				}
			}
		})
	}
}

// solids are what random cases are made of.
func solids(t testing.TB) (out []poly.Mesh) {
	for _, name := range []string{"cube", "tetrahedron", "icosahedron", "dodecahedron", "truncated icosahedron"} {
		b, err := named(name, 0.05)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, meshOf(b.Solid))
	}
	return out
}

func named(name string, radius float64) (*body.Body, error) {
	if name == "truncated icosahedron" {
		return body.Archimedean(name, radius)
	}
	return body.Platonic(name, radius)
}

// TestVolumesAddUp: of two solids anywhere, what both are and what either is have the volume
// that they have together; differences are the rest; and every outcome is closed. Corners are off by
// half a lattice step, 1.1e-13 m, each way: over an area of 0.02 m2 that is 4e-15 m3, 6e-11 of the
// smallest of these solids; the bound leaves room for where corners are drawn together.
func TestVolumesAddUp(t *testing.T) {
	all := solids(t)
	rapid.Check(t, func(t *rapid.T) {
		place := func(name string) poly.Mesh {
			m := all[rapid.IntRange(0, len(all)-1).Draw(t, name)]
			f := rapid.IntRange(-64, 64) // not so near to upright that slivers are thinner than below
			axis := r3.Vec{X: float64(f.Draw(t, "ax")) / 64, Y: float64(f.Draw(t, "ay")) / 64, Z: 1.1}
			// Whole turns and steps too: faces and edges then lie in each other.
			steps := rapid.SampledFrom([]float64{0, math.Pi / 2, rapid.Float64Range(0.01, 1).Draw(t, "turn")}).Draw(t, "by")
			// Micrometres: some shifts leave edges of less than 30 nm, which are drawn together.
			step := rapid.IntRange(-30_000, 30_000)
			by := r3.Scale(1e-6, r3.Vec{X: float64(rapid.SampledFrom([]int{0, 10_000, step.Draw(t, "x")}).Draw(t, "bx")),
				Y: float64(rapid.SampledFrom([]int{0, step.Draw(t, "y")}).Draw(t, "bz")), Z: float64(rapid.SampledFrom([]int{0, step.Draw(t, "z")}).Draw(t, "bz"))})
			if steps != 0 && steps != math.Pi/2 {
				return turned(m, steps, axis, by)
			}
			return turned(m, steps, r3.Vec{Z: 1}, by)
		}
		a, b := place("a"), place("b")
		get := func(m poly.Mesh, err error) float64 {
			if errors.Is(err, carve.ErrEmpty) {
				t.Skip(err)
			}
			if err != nil {
				t.Fatal(err)
			}
			return m.Volume()
		}
		whole := a.Volume() + b.Volume()
		union, meet := get(union(a, b)), get(intersection(a, b))
		if math.Abs(union+meet-whole) > 1e-9*whole {
			t.Errorf("either %g, both %g, together %g m3", union, meet, whole)
		}
		if minus := get(difference(a, b)); math.Abs(minus+meet-a.Volume()) > 1e-9*whole {
			t.Errorf("first without second %g, both %g, first %g m3", minus, meet, a.Volume())
		}
	})
}

// TestCommonEdge: two boxes with an edge in common, one turned about it into the other: what is
// kept of either changes at that edge, where no two of their triangles cross.
func TestCommonEdge(t *testing.T) {
	a := block(r3.Vec{}, r3.Vec{X: 0.01, Y: 0.01, Z: 0.01})
	b := turned(a, math.Asin(0.8), r3.Vec{Z: 1}, r3.Vec{})
	all, err := union(a, b)
	both, err2 := intersection(a, b)
	rest, err3 := difference(a, b)
	either, meet, left := volume(t, all, err), volume(t, both, err2), volume(t, rest, err3)
	if whole := a.Volume(); math.Abs(either+meet-2*whole) > 1e-9*whole || math.Abs(left+meet-whole) > 1e-9*whole {
		t.Errorf("either %g, both %g, the rest of one %g, one %g m3", either, meet, left, whole)
	}
}
