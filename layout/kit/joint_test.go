package kit

import (
	"math"
	"testing"

	"pappus/layout/poly"

	"gonum.org/v1/gonum/spatial/r3"
)

// aSeam returns a seam with a place that nothing else is near to.
func (m made) aSeam(t *testing.T) (seam, r3.Vec) {
	t.Helper()
	for _, s := range m.seams {
		if p, ok := m.plainPoint(s, 2); ok && len(m.fastened[s.number]) > 1 {
			return s, p
		}
	}
	t.Fatal("no seam has a plain place")
	return seam{}, r3.Vec{}
}

// first is how far it is from a place along a direction to a mesh; nothing there is an error.
func first(t *testing.T, what string, m poly.Mesh, from, along r3.Vec, want, off float64) {
	t.Helper()
	if got := crossings(m, from, along); len(got) == 0 || math.Abs(got[0]-want) > off {
		t.Errorf("%s: %v m, want %g", what, got, want)
	}
}

// round checks that a hole has a radius: its sides are outside of the circle, and by less than corners of
// twelve sides are.
func round(t *testing.T, what string, m poly.Mesh, p pole, deep, radius float64) {
	t.Helper()
	for i := range 7 {
		sin, cos := math.Sincos(float64(i))
		got := crossings(m, p.place(0, 0, deep), r3.Add(r3.Scale(cos, p.right), r3.Scale(sin, p.up)))
		if len(got) == 0 || got[0] < radius-1e-8 || got[0] > radius/math.Cos(math.Pi/12)+1e-8 {
			t.Errorf("%s: %v m from its axis, want %g", what, got, radius)
		}
	}
}

// TestLapMeasures measures a lap in its two segments, against what the package's comment says of it and
// what a screw of 2.2 mm and filament of 1.75 mm take (common practice: a hole of 2.5 mm for such a
// screw, of 1.8 mm where it cuts its thread, and 0.15 mm of room for filament).
func TestLapMeasures(t *testing.T) {
	m := buildOnly(t, prismBody, sideMounts, 150, "gap_mm = 0.3")
	s, p := m.aSeam(t)
	a, b := m.one(t, m.wall.regions[s.a].Segment), m.one(t, m.wall.regions[s.b].Segment)
	thick, n, gap := m.wall.thick, s.plane.Normal, 0.3e-3
	at := func(past, deep float64) pole {
		return m.wall.on(r3.Vec{}, r3.Add(p, r3.Scale(past, n)), r3.Vec{Z: 1}, deep)
	}
	// Along the wall, which is aslant to the seam, to a plane so far past it.
	until := func(what string, from pole, way, past float64) {
		along := r3.Unit(r3.Sub(n, r3.Scale(r3.Dot(n, from.out), from.out)))
		far := (past - s.plane.Above(from.at)) / r3.Dot(n, along)
		first(t, what, a, from.at, r3.Scale(way, along), way*far, 5e-6*float64(1+s.number))
	}
	until("a tongue past the seam", at(5e-3, thick+gap+thick*0.7), 1, 10e-3)
	until("and before it", at(-5e-3, thick+gap+thick*0.7), -1, -10e-3)
	until("the groove's near side", at(2.6e-3, thick+gap+0.4e-3), -1, 2e-3)
	until("the groove's far side", at(2.6e-3, thick+gap+0.4e-3), 1, 3.2e-3)
	under := at(2.6e-3, thick+gap+1.5e-3)
	first(t, "the groove's ground", a, under.at, r3.Scale(-1, under.out), 0.7e-3, 1e-8)
	screw, pin := m.fastened[s.number][0], m.fastened[s.number][1]
	round(t, "the screw's hole", a, screw.pole, gap+thick/2, 1.25e-3)
	round(t, "its pilot hole", b, screw.pole, -thick/3, 0.9e-3)
	round(t, "the dowel's hole", a, pin.pole, gap+thick/2, 0.95e-3)
	round(t, "the dowel's hole in the wall", b, pin.pole, -thick/3, 0.95e-3)
	for _, f := range []fastener{screw, pin} {
		got := crossings(b, f.at, r3.Scale(-1, f.out))
		if len(got) != 2 || math.Abs(got[0]-(thick-0.8e-3)) > 1e-8 || math.Abs(got[1]-thick) > 1e-8 {
			t.Errorf("a blind hole ends %v m from the wall's inside", got)
		}
	}
	pitched(t, m, 20e-3)
}

// TestFlangeMeasures does so for a flange of 12 mm inward from the wall, 4 mm thick, with holes of 3.2 mm
// for M3 (ISO 273, fine).
func TestFlangeMeasures(t *testing.T) {
	m := buildOnly(t, prismBody, sideMounts, 150, "gap_mm = 0.3\njoint = \"flange\"")
	s, p := m.aSeam(t)
	a := m.one(t, m.wall.regions[s.a].Segment)
	thick, n, gap := m.wall.thick, s.plane.Normal, 0.3e-3
	in := m.wall.on(r3.Vec{}, r3.Add(p, r3.Scale(-2e-3, n)), r3.Vec{Z: 1}, thick+6e-3)
	down := r3.Unit(r3.Sub(in.out, r3.Scale(r3.Dot(n, in.out), n))) // inward along the seam
	first(t, "a rib's end", a, in.at, down, 6e-3/r3.Dot(down, in.out), 1e-8)
	past := s.plane.Above(in.at)
	first(t, "its outer side", a, in.at, n, -past-gap/2, 1e-8)
	first(t, "its inner side", a, in.at, r3.Scale(-1, n), 4e-3+gap/2+past, 5e-6*float64(1+s.number))
	round(t, "a bolt's hole", a, m.fastened[s.number][0].pole, -2e-3, 1.6e-3)
	round(t, "a dowel's hole", a, m.fastened[s.number][1].pole, -2e-3, 0.95e-3)
	pitched(t, m, 20e-3)
}

// pitched checks that fasteners along each seam are no nearer than a pitch, and that two are nearer than twice that.
func pitched(t *testing.T, m made, least float64) {
	t.Helper()
	for _, all := range m.fastened {
		nearest := math.Inf(1)
		for i, f := range all {
			for _, g := range all[:i] {
				nearest = min(nearest, r3.Norm(r3.Sub(f.at, g.at)))
			}
		}
		if len(all) > 1 && (nearest < least || nearest > 1.2*least) {
			t.Errorf("fasteners are %g m apart", nearest)
		}
	}
}
