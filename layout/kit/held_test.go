package kit

import (
	"errors"
	"math"
	"testing"

	"pappus/layout/poly"

	"gonum.org/v1/gonum/spatial/r3"
)

// TestFallsApart: a segment that loses a piece of its wall cannot be made; a bit of a tongue, below the
// wall, and a crumb are not missed.
func TestFallsApart(t *testing.T) {
	m := buildOnly(t, prismBody, sideMounts, 150, "")
	cube := func(side, deep float64) poly.Mesh {
		at := m.wall.on(r3.Vec{}, r3.Vec{X: 1, Y: 1, Z: 0.1}, r3.Vec{Z: 1}, deep)
		return poly.Box(side / 2).Mesh().Moved(func(v r3.Vec) r3.Vec { return r3.Add(v, at.place(0, 0, side/2)) })
	}
	for _, c := range []struct {
		side, deep float64
		falls      bool
	}{{3e-3, 0, true}, {3e-3, m.wall.thick + m.Gap, false}, {0.3e-3, 0, false}} {
		if err := m.whole(&blank{name: "segment-1", loose: []poly.Mesh{cube(c.side, c.deep)}}); errors.Is(err, ErrPart) != c.falls {
			t.Errorf("a cube of %g m from %g m below the outside: %v", c.side, c.deep, err)
		}
	}
}

// TestMeetings: what meets along a seam is lapped and screwed there, on the inside of the wall; where
// drivers leave no room behind it, it is neither, and that is told.
func TestMeetings(t *testing.T) {
	m := buildOnly(t, prismBody, sideMounts, 150, "")
	for _, j := range m.meetings() {
		if j.A >= j.B || j.Fasteners == 0 || j.Bare() || j.Lapped > j.Long || j.Lapped < 0.5*j.Long {
			t.Errorf("%+v", j)
		}
	}
	for _, s := range m.seams {
		for _, p := range s.points {
			if deep := inside(m.wall.planes, p); math.Abs(deep-m.wall.thick) > 1e-9 {
				t.Errorf("seam %d has a point %g m deep", s.number, deep)
			}
		}
	}
	m.array.Driver.CutoutRadius, m.array.Driver.Depth = 0.5, 0.5 // no place behind the wall is clear of it
	m.fastenAll()
	for _, j := range m.meetings() {
		if j.Fasteners != 0 || j.Lapped != 0 || !j.Bare() {
			t.Errorf("no room: %+v", j)
		}
	}
}

// TestFastenersApart: no two fasteners of any seams share their material.
func TestFastenersApart(t *testing.T) {
	m := buildOnly(t, "shape = \"dodecahedron\"\nradius_mm = 150", "on = \"faces\"", 100, "")
	var all []fastener
	for _, one := range m.fastened {
		all = append(all, one...)
	}
	for i, p := range all {
		for _, q := range all[:i] {
			if d := r3.Norm(r3.Sub(p.at, q.at)); d < 2*boss {
				t.Errorf("two fasteners are %g m apart", d)
			}
		}
	}
	if len(all) < 30 {
		t.Errorf("%d fasteners", len(all))
	}
}
