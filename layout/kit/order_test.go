package kit

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"pappus/layout/spread"

	"gonum.org/v1/gonum/spatial/r3"
)

// TestWayOff: off the three sides of a corner along its diagonal; between two plates along them and off a
// third; along the edge of three that stand about it; and out of nothing that is closed.
func TestWayOff(t *testing.T) {
	x, y, z := r3.Vec{X: 1}, r3.Vec{Y: 1}, r3.Vec{Z: 1}
	minus := func(v r3.Vec) r3.Vec { return r3.Scale(-1, v) }
	third := func(i int) r3.Vec { return direction(2 * math.Pi * float64(i) / 3) }
	flat := r3.Unit(r3.Vec{X: 1, Y: 1})
	for _, c := range []struct {
		name    string
		normals []r3.Vec
		way     r3.Vec
		least   float64
	}{
		{"one", []r3.Vec{x}, x, 1},
		{"a corner", []r3.Vec{x, y, z}, r3.Unit(r3.Vec{X: 1, Y: 1, Z: 1}), 1 / math.Sqrt(3)},
		{"an edge, and what does not matter", []r3.Vec{x, y, flat}, flat, math.Sqrt2 / 2},
		{"two plates and a third", []r3.Vec{z, minus(z), x}, x, 0},
		{"two plates and two more, square", []r3.Vec{z, minus(z), x, y}, flat, 0},
		{"a square pipe with a bottom", []r3.Vec{x, minus(x), y, minus(y), z}, z, 0},
		{"a pipe of three with a bottom", []r3.Vec{third(0), third(1), third(2), minus(z)}, minus(z), 0},
		{"a box", []r3.Vec{x, minus(x), y, minus(y), z, minus(z)}, r3.Vec{}, -1},
		{"a pipe with both ends", []r3.Vec{third(0), third(1), third(2), minus(z), z}, r3.Vec{}, -1},
		{"a tetrahedron", []r3.Vec{r3.Unit(r3.Vec{X: 1, Y: 1, Z: 1}), r3.Unit(r3.Vec{X: 1, Y: -1, Z: -1}), r3.Unit(r3.Vec{X: -1, Y: 1, Z: -1}), r3.Unit(r3.Vec{X: -1, Y: -1, Z: 1})}, r3.Vec{}, -1},
	} {
		way, least := wayOff(c.normals)
		if c.least < 0 {
			if least > -0.1 {
				t.Errorf("%s: along %v by %g", c.name, way, least)
			}
			continue
		}
		if r3.Norm(r3.Sub(way, c.way)) > 1e-6 || math.Abs(least-c.least) > 1e-9 {
			t.Errorf("%s: along %v by %g, want %v by %g", c.name, way, least, c.way, c.least)
		}
	}
}

// TestWayOffDrawn: no direction of many all round goes better off drawn planes than the one that is found.
func TestWayOffDrawn(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 5))
	all, found := spread.Spiral(20000), 0
	for range 300 {
		towards := r3.Unit(r3.Vec{X: random.NormFloat64(), Y: random.NormFloat64(), Z: random.NormFloat64()})
		normals := make([]r3.Vec, 1+random.IntN(12))
		for i := range normals {
			normals[i] = r3.Unit(r3.Add(r3.Scale(random.Float64(), towards), r3.Vec{X: random.NormFloat64(), Y: random.NormFloat64(), Z: random.NormFloat64()}))
		}
		best := math.Inf(-1)
		for _, d := range all {
			best = max(best, r3.Dot(against(normals, d), d))
		}
		// Directions of a spiral of 20,000 are within 0.03 of any.
		switch way, least := wayOff(normals); {
		case best > 0 && (least < best-1e-12 || least > best+0.03):
			t.Errorf("%v: by %g, a spiral finds %g", normals, least, best)
		case least > 0:
			found++
			if got := r3.Dot(against(normals, way), way); math.Abs(got-least) > 1e-12 {
				t.Errorf("%v: by %g, it is %g", normals, least, got)
			}
		}
	}
	if found < 50 {
		t.Errorf("%d of 300 came off", found)
	}
}

// TestOrder: a stone that others lean over goes in before them; what holds each other goes together in no
// order, and is named.
func TestOrder(t *testing.T) {
	x, z := r3.Vec{X: 1}, r3.Vec{Z: 1}
	between := []r3.Vec{z, r3.Scale(-1, z), x, r3.Scale(-1, x), {Y: 1}, {Y: -1}}
	from := func(o int, normals ...r3.Vec) obstacle { return obstacle{[]int{o}, normals, true} }
	// 2 is shut in by 0 and 1 together: it comes before one of them, and the higher comes off first.
	shut := [][]obstacle{{from(2, z)}, {from(2, z)}, {from(0, between[:3]...), from(1, between[3:]...)}}
	if got, ok := order(shut); !ok || !slices.Equal(got, []int{0, 2, 1}) {
		t.Errorf("%v %t", got, ok)
	}
	locked := [][]obstacle{{from(1, z)}, {from(2, between...)}, {from(1, between...)}}
	got, ok := order(locked)
	if ok || !slices.Equal(got, []int{1, 2}) {
		t.Errorf("%v %t", got, ok)
	}
	if err := stuck(got); !errors.Is(err, ErrOrder) || !strings.Contains(err.Error(), "of 2 and 3 none comes off") {
		t.Errorf("%v", err)
	}
}

// TestRings: a ball in three whole rings, each from above or below. The lowest is not the first: the
// tongue of a bowl would be wider than the ring that is to go over it.
func TestRings(t *testing.T) {
	text := strings.Replace(fmt.Sprintf(plainDesign, "shape = \"ball\"\nradius_mm = 60", "on = \"even\"\ncount = 2", 1.0, ""), "bed_mm = [1, 1, 1]", "bed_mm = [150, 150, 60]", 1)
	m := cutUp(t, built(t, text))
	if len(m.plan.Segments) != 3 {
		t.Fatalf("%d segments", len(m.plan.Segments))
	}
	m = madeOf(t, m)
	if low := m.plan.Segments[0].Level; low != 1 {
		t.Errorf("the first is level %d", low)
	}
	checkOrder(t, m)
}

// TestPassesBy: two segments of a body cut in steps that meet beside a third come off each other: their tongues
// lie side by side under it, and the later one's passes by the other's.
func TestPassesBy(t *testing.T) {
	m := buildOnly(t, "shape = \"dodecahedron\"\nradius_mm = 150", "on = \"faces\"", 100, "")
	parts := make([]Part, 2)
	for i, n := range []int{7, 15} {
		var err error
		if parts[i], err = m.segment(n, m.plain[n], len(m.plain)); err != nil {
			t.Fatal(err)
		}
	}
	before, p := parts[0], parts[1]
	if !near(p.Mesh, before.Mesh) {
		t.Fatal("they are not near each other")
	}
	random := rand.New(rand.NewPCG(4, 4))
	checkRays(t, random, p, before, p.Off)
	checkRays(t, random, before, p, r3.Scale(-1, p.Off))
}

// TestStraightOut: straight out by the middle of what it is a share of is within what a segment of the
// built-in design may lean by.
func TestStraightOut(t *testing.T) {
	m := builtIn(t)
	for i, w := range m.ways[1:] {
		if angle := math.Acos(r3.Dot(w.off, r3.Unit(m.heart(i+1)))); angle > w.lean {
			t.Errorf("segment-%d comes off %.2f rad from its middle, and may lean by %.2f", i+2, angle, w.lean)
		}
	}
}
