package sheets

import (
	"math"
	"slices"

	"pappus/layout"
	"pappus/render/tape"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// isometric is the elevation in rad from which the three axes look equally long.
var isometric = math.Atan(1 / math.Sqrt2)

// Picture draws the whole as it is held in the room, from above on the listening spot's side,
// or from below where it hangs. Mounts on the far side are faint and dashed there; a small
// second picture looks at them from the opposite side.
func Picture(a *layout.Array) *Sheet {
	held := ""
	if how := tape.Held(a, 0); how != "" {
		held = " Drawn " + how + "."
	}
	s := page("picture", "The whole, with mount numbers",
		"Isometric. Large: seen from the listening spot's side; what is behind is faint and dashed. Small: from the opposite side."+held, long, short)
	azimuth := math.Atan2(a.Spot.Y, a.Spot.X)
	near := from(a, azimuth).fit(a, r2.NewBox(margin, margin+heading, 182, s.Height-margin-8), math.Inf(1))
	near.draw(s, a)
	near.spotArrow(s, a)
	box := r2.NewBox(196, margin+heading+30, s.Width-margin, margin+heading+110)
	far := from(a, azimuth+math.Pi).fit(a, box, near.scale)
	far.draw(s, a)
	s.text(r2.Vec{X: box.Center().X, Y: box.Max.Y + 8}, 3, middle, ink, "from the opposite side")
	near.axes(s, held != "", r2.Vec{X: box.Center().X, Y: s.Height - margin - 24})
	return s
}

// from looks down at the body from an azimuth of the room in rad; up where it hangs.
func from(a *layout.Array, azimuth float64) view {
	sin, cos := math.Sincos(azimuth)
	level, high := math.Cos(isometric), math.Sin(isometric)
	if a.On == layout.OnCeiling {
		high = -high
	}
	v, held := look(r3.Vec{X: level * cos, Y: level * sin, Z: high}, r3.Vec{Z: 1}), a.Bodies()[0]
	v.towards, v.right, v.up = held.In(v.towards), held.In(v.right), held.In(v.up)
	return v
}

// draw draws the body and all its mounts.
func (v view) draw(s *Sheet, a *layout.Array) {
	v.body(s, a.Body, true)
	order := v.farFirst(a)
	for _, m := range order {
		if !v.faces(m) {
			v.hiddenMount(s, a, m)
		}
	}
	for _, m := range order {
		if v.faces(m) {
			v.mount(s, a, m)
		}
	}
}

// spotArrow points to the listening spot below the body.
func (v view) spotArrow(s *Sheet, a *layout.Array) {
	at := r2.Vec{X: v.centre.X, Y: s.Height - margin - 7}
	tip := r2.Vec{X: at.X, Y: at.Y + 5}
	s.line(pen{colour: orange, width: 0.5}, at, tip)
	s.polygon(pen{fill: orange}, tip, r2.Vec{X: tip.X - 1.2, Y: tip.Y - 2.4}, r2.Vec{X: tip.X + 1.2, Y: tip.Y - 2.4})
	s.text(r2.Vec{X: at.X + 3, Y: at.Y + 4.5}, 3, left, ink, "to the "+tape.Spot(a)+", "+tape.Of(a, a.Spot).Short())
}

// axes draws where the body's x, y and z point.
func (v view) axes(s *Sheet, isHeld bool, at r2.Vec) {
	names := [3]string{"x, forward", "y, left", "z, up"}
	if isHeld {
		names = [3]string{"x, front mark", "y, its left", "z, its top"}
	}
	for _, axis := range []struct {
		way  r3.Vec
		name string
	}{{r3.Vec{X: 1}, names[0]}, {r3.Vec{Y: 1}, names[1]}, {r3.Vec{Z: 1}, names[2]}} {
		f := v.flat(axis.way)
		tip := r2.Vec{X: at.X + 15*f.X, Y: at.Y - 15*f.Y}
		s.line(pen{colour: ink, width: 0.3}, at, tip)
		s.label(r2.Add(tip, r2.Scale(4, r2.Vec{X: 1.6 * f.X, Y: -f.Y})), 2.8, ink, axis.name)
	}
}

// Seen is a body and the drivers on its near side, as flat outlines in m to the right and up.
type Seen struct {
	Body           []r2.Vec
	Edges, Drivers [][]r2.Vec
	Box            r2.Box // what body and drivers take up
}

// Look looks at an array as Picture does: as it is held, from above on the listening spot's
// side, or from below where it hangs.
func Look(a *layout.Array) Seen {
	v := from(a, math.Atan2(a.Spot.Y, a.Spot.X))
	v.scale = 1
	flat := func(points []r3.Vec) []r2.Vec {
		out := v.all(points)
		for i := range out {
			out[i].Y = -out[i].Y // on a sheet it points down
		}
		return out
	}
	seen := Seen{Body: hull(flat(outlinePoints(a.Body, v.towards)))}
	for _, e := range a.Body.Edges() {
		if r3.Dot(a.Body.Normal(e.Faces[0]), v.towards) > 1e-9 || r3.Dot(a.Body.Normal(e.Faces[1]), v.towards) > 1e-9 {
			seen.Edges = append(seen.Edges, flat([]r3.Vec{a.Body.Vertices[e.A], a.Body.Vertices[e.B]}))
		}
	}
	for _, m := range v.farFirst(a) {
		if v.faces(m) {
			seen.Drivers = append(seen.Drivers, flat(disc(m, a.Driver.FlangeRadius)))
		}
	}
	seen.Box = bounds(slices.Concat(append(seen.Drivers, seen.Body)...))
	return seen
}
