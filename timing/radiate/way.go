package radiate

import (
	"math"

	"pappus/layout"
	"pappus/timing/shoebox"

	"gonum.org/v1/gonum/spatial/r3"
)

// Way is one way for the sound of a body to reach a place: directly, or by walls that
// mirror it. The sound of a mirrored body at a place is that of the body itself at the place
// mirrored back, so a way moves places, not mounts (package shoebox), and then turns them into
// the body's own frame, in which its mounts are.
type Way struct {
	shoebox.Mirror           // in the room's frame
	Factor         []float64 // what the walls leave of the pressure, for each frequency; nil: all
	Body           int       // whose sound it is: index into Array.Bodies
	placing        layout.Placing
}

// Moved returns the place of the body, in m, at which it is heard as at a place in the room.
func (w Way) Moved(place r3.Vec) r3.Vec { return w.placing.Into(w.Mirror.Moved(place)) }

// Turned returns a direction in the room as the body has it.
func (w Way) Turned(v r3.Vec) r3.Vec { return w.placing.In(w.Mirror.Turned(v)) }

// InRoom returns, of all ways of an array, those by which what stands in the room itself, as
// a woofer does, is heard.
func InRoom(ways []Way) []Way {
	var out []Way
	for _, w := range ways {
		if w.Body == 0 {
			out = append(out, Way{Mirror: w.Mirror, Factor: w.Factor})
		}
	}
	return out
}

// Ways returns all ways by which an array is heard at a medium's frequencies, each for all
// bodies: the bodies themselves first, then mirrored in the surface or the walls of the room.
func Ways(a *layout.Array, m *Medium) []Way {
	ways := []Way{{Mirror: shoebox.Mirror{Flip: r3.Vec{X: 1, Y: 1, Z: 1}}}}
	switch {
	case a.Room.Present:
		var walls [6][]float64
		for wall := range walls {
			walls[wall] = m.reflection(a.Room.Absorption[wall])
		}
		for _, image := range shoebox.Images(a.Room.Size, a.Room.Body, a.Room.Order)[1:] {
			ways = append(ways, Way{Mirror: image.Mirror, Factor: image.Factors(walls)})
		}
	case a.Surface.Present:
		var one shoebox.Mirror
		one.Flip, one.Shift = a.Surface.Mirror()
		ways = append(ways, Way{Mirror: one, Factor: m.reflection(a.Surface.Absorption)})
	}
	bodies := a.Bodies()
	out := make([]Way, 0, len(ways)*len(bodies))
	for _, way := range ways {
		for way.Body, way.placing = range bodies {
			out = append(out, way)
		}
	}
	return out
}

// reflection returns what a wall leaves of the pressure at each frequency, at grazing and
// at normal incidence alike: sqrt(1 - absorption) (common practice in the image method).
func (m *Medium) reflection(absorption layout.Absorption) []float64 {
	factor := make([]float64, len(m.Frequency))
	for f, hz := range m.Frequency {
		factor[f] = math.Sqrt(1 - absorption.At(hz))
	}
	return factor
}
