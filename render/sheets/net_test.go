package sheets

import (
	"math"
	"testing"

	"pappus/layout"
	"pappus/layout/body"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

func arrays(t *testing.T) map[string]*layout.Array {
	t.Helper()
	out := make(map[string]*layout.Array)
	add := func(name string, b *body.Body, err error) {
		if err != nil {
			t.Fatal(err)
		}
		out[name] = &layout.Array{Body: b}
	}
	for _, name := range []string{"tetrahedron", "cube", "octahedron", "dodecahedron", "icosahedron"} {
		b, err := body.Platonic(name, 0.1)
		add(name, b, err)
	}
	for _, base := range []string{"tetrahedron", "octahedron", "icosahedron"} {
		b, err := body.Geodesic(base, 4, 0.15)
		add(base+" 4", b, err)
	}
	b, err := body.Geodesic("icosahedron", 3, 0.15)
	if err != nil {
		t.Fatal(err)
	}
	b, err = b.CutAt(-0.031)
	add("dome", b, err)
	return out
}

// TestNet: every face is laid out once with its edges as long as on the body;
// no two of a piece overlap, nor does a tab any of them; every edge is a fold,
// or two ends of one number of which one at most has a tab.
func TestNet(t *testing.T) {
	const over = 2.0
	for name, a := range arrays(t) {
		edges := a.Body.Edges()
		u := newUnfolder(a, 1e3/over, netWide, netTall)
		pieces := u.unfold()
		seen := make(map[int]int)
		met := make(map[int]int)
		tabs, folds := 0, 0
		for _, p := range pieces {
			folds, tabs = folds+len(p.folds), tabs+len(p.tabs)
			for i, l := range p.faces {
				seen[l.face]++
				c := a.Body.Faces[l.face].Corners
				for k := range c {
					want := 1e3 / over * r3.Norm(r3.Sub(a.Body.Vertices[c[k]], a.Body.Vertices[c[(k+1)%len(c)]]))
					if got := r2.Norm(r2.Sub(l.corners[k], l.corners[(k+1)%len(c)])); math.Abs(got-want) > 1e-9 {
						t.Errorf("%s: face %d has an edge of %g mm, want %g", name, l.face, got, want)
					}
				}
				for _, other := range p.faces[:i] {
					if common(l.corners, other.corners) > 0.05 {
						t.Errorf("%s: faces %d and %d overlap by %g mm2", name, l.face, other.face, common(l.corners, other.corners))
					}
				}
				for _, tab := range p.tabs {
					if common(tab.corners, l.corners) > 0.05 {
						t.Errorf("%s: a tab overlaps face %d", name, l.face)
					}
				}
			}
			for _, e := range p.ends {
				met[e.edge]++
			}
		}
		for f := range a.Body.Faces {
			if seen[f] != 1 {
				t.Errorf("%s: face %d is laid out %d times", name, f, seen[f])
			}
		}
		for e, n := range met {
			if n != 2 {
				t.Errorf("%s: edge %d has %d ends", name, e, n)
			}
		}
		if folds+len(met) != len(edges) || folds != len(a.Body.Faces)-len(pieces) {
			t.Errorf("%s: %d folds and %d glued of %d edges in %d pieces", name, folds, len(met), len(edges), len(pieces))
		}
		if tabs > len(met) {
			t.Errorf("%s: %d tabs on %d edges", name, tabs, len(met))
		}
		t.Logf("%s: %d pieces, %d of %d glued edges have a tab", name, len(pieces), tabs, len(met))
	}
}

// common returns the area in which two convex outlines overlap, in mm2.
func common(a, b []r2.Vec) float64 {
	rest := a
	for i, p := range b {
		rest = clipLeft(rest, p, r2.Sub(b[(i+1)%len(b)], p))
	}
	twice := 0.0
	for i := 2; i < len(rest); i++ {
		twice += r2.Cross(r2.Sub(rest[i-1], rest[0]), r2.Sub(rest[i], rest[0]))
	}
	return twice / 2
}

func TestNetPages(t *testing.T) {
	for name, a := range arrays(t) {
		for _, pages := range [][][]placed{netPages(a, 2), netPages(a, 5)} {
			if pages == nil {
				t.Errorf("%s: no pages", name)
			}
			for _, on := range pages {
				for _, p := range on {
					box := p.extent().Add(p.shift)
					if box.Min.X < -1e-9 || box.Min.Y < -1e-9 || box.Max.X > netWide+1e-9 || box.Max.Y > netTall+1e-9 {
						t.Errorf("%s: a piece leaves the page: %v", name, box)
					}
				}
			}
		}
	}
}

func TestOverlap(t *testing.T) {
	square := func(x, y float64) []r2.Vec {
		return []r2.Vec{{X: x, Y: y}, {X: x + 10, Y: y}, {X: x + 10, Y: y + 10}, {X: x, Y: y + 10}}
	}
	for _, test := range []struct {
		name string
		x, y float64
		want bool
	}{{"the same", 0, 0, true}, {"half", 5, 5, true}, {"side by side", 10, 0, false}, {"corner to corner", 10, 10, false}, {"a little", 9.9, 0, true}, {"apart", 30, 0, false}} {
		if got := overlap(square(0, 0), square(test.x, test.y)); got != test.want {
			t.Errorf("%s: %t, want %t", test.name, got, test.want)
		}
	}
}

func TestWords(t *testing.T) {
	for n, want := range map[int]string{0: "A", 25: "Z", 26: "AA", 701: "ZZ", 702: "AAA"} {
		if got := letters(n); got != want {
			t.Errorf("letters(%d) = %s, want %s", n, got, want)
		}
	}
	if got, want := numbers([]int{9, 1, 2, 3, 5, 6}), "1–3, 5, 6, 9"; got != want {
		t.Errorf("numbers: %q, want %q", got, want)
	}
}
