package layout

import (
	"math"

	"pappus/layout/design"

	"gonum.org/v1/gonum/spatial/r3"
)

// What a body may be fixed to.
const (
	OnSurface = design.OnSurface
	OnCeiling = design.OnCeiling
	OnWall    = design.OnWall
)

// Placing is where a body's centre is in the room, and how the body is turned there. The
// room's frame has its origin at the centre of the first body, x forward, y to the left and z
// up; the body's own has its front mark forward and its top up. The zero value is a body at
// the origin that stands as it was designed: both frames are one, to the bit.
type Placing struct {
	At          r3.Vec // m, in the room
	design.Turn        // of directions: In from the room's to the body's, Out back
}

// Into returns a place in the room as the body has it, both in m.
func (p Placing) Into(place r3.Vec) r3.Vec { return p.In(r3.Sub(place, p.At)) }

// Place returns a place of the body's as the room has it, both in m.
func (p Placing) Place(own r3.Vec) r3.Vec { return r3.Add(p.Out(own), p.At) }

// Placed tells whether it is any other than the zero value.
func (p Placing) Placed() bool { return p != (Placing{}) }

var standing = []Placing{{}}

// Bodies returns where each body is: one that stands as designed where nothing else is said.
func (a *Array) Bodies() []Placing {
	if len(a.Placings) == 0 {
		return standing
	}
	return a.Placings
}

// PlacingOf returns where the body of a mount is.
func (a *Array) PlacingOf(m Mount) Placing { return a.Bodies()[m.Body] }

// PlaceOf returns where a mount is in the room, in m.
func (a *Array) PlaceOf(m Mount) r3.Vec { return a.PlacingOf(m).Place(m.Point) }

// Towards returns the direction of the room from a body to what it is fixed to.
func Towards(on string) r3.Vec {
	switch on {
	case OnCeiling:
		return r3.Vec{Z: 1}
	case OnWall:
		return r3.Vec{X: -1}
	}
	return r3.Vec{Z: -1}
}

// Extent returns how far the first body reaches from the origin in a direction of the room's,
// of unit length, in m.
func (a *Array) Extent(towards r3.Vec) float64 {
	return a.Body.Extent(a.Bodies()[0].In(towards))
}

// Surface is a large flat surface that the body is fixed to: a table or a floor below it, a
// ceiling above it, or a wall behind it.
type Surface struct {
	Present bool
	On      string // surface, ceiling or wall; empty: surface
	// Height is that of a level one, in m from the origin; of a wall it is how far forward
	// from there, below 0.
	Height     float64
	Absorption Absorption
}

// Gap returns how far a point in m is off the surface, on the body's side of it; below 0 it
// is beyond.
func (s Surface) Gap(p r3.Vec) float64 {
	switch s.On {
	case OnCeiling:
		return s.Height - p.Z
	case OnWall:
		return p.X - s.Height
	}
	return p.Z - s.Height
}

// Clears tells whether a point in m is on the body's side of the surface or on it; it always
// is where there is none.
func (s Surface) Clears(p r3.Vec) bool { return !s.Present || s.Gap(p) >= 0 }

// Mirror returns what a mirror in the surface makes of a place: each coordinate times flip,
// and shift in m added.
func (s Surface) Mirror() (flip, shift r3.Vec) {
	if s.On == OnWall {
		return r3.Vec{X: -1, Y: 1, Z: 1}, r3.Vec{X: 2 * s.Height}
	}
	return r3.Vec{X: 1, Y: 1, Z: -1}, r3.Vec{Z: 2 * s.Height}
}

// beyond is what is told of a place beyond the surface: the error, which side of what it is
// on, on which side it must be, and the coordinate that decides it, which must be at least, or
// at most, the surface's.
func (s Surface) beyond() (err error, there, here, axis, bound string) {
	switch s.On {
	case OnCeiling:
		return ErrAboveCeiling, "above the ceiling", "below it", "z", "at most"
	case OnWall:
		return ErrBehindWall, "behind the wall", "before it", "x", "at least"
	}
	return ErrBelowSurface, "below the surface", "above it", "z", "at least"
}

// surface gives what the design has the body fixed to.
func (a *Array) surface(d *design.Design) Surface {
	if !d.Surface.Present {
		return Surface{}
	}
	to := Towards(d.Placing.On)
	away := a.Extent(to) + d.Body.Stand
	return Surface{Present: true, On: d.Placing.On, Height: away * (to.X + to.Z), Absorption: d.Surface.Absorption}
}

// FixedTo returns the surface of a room that the body is fixed to, or stands over.
func (a *Array) FixedTo() Surface {
	const back, floor, ceiling = 0, 4, 5 // of the walls
	s := Surface{Present: true, On: a.On, Height: -a.Room.Body.Z, Absorption: a.Room.Absorption[floor]}
	switch a.On {
	case OnCeiling:
		s.Height, s.Absorption = a.Room.Size.Z-a.Room.Body.Z, a.Room.Absorption[ceiling]
	case OnWall:
		s.Height, s.Absorption = -a.Room.Body.X, a.Room.Absorption[back]
	}
	return s
}

// halved tells whether something hard makes the cut body whole by its mirror image: the
// surface, or the wall of the room that the cut face looks at, where no point of the cut
// face is farther from it than the radius of the body's ball. Farther away sound goes round
// it as in open air; where on the way the one becomes the other is a judgement, not a
// measurement.
func (a *Array) halved() bool {
	away := math.Inf(1) // of the origin from the surface
	var to r3.Vec
	switch {
	case a.Room.Present:
		if to = squarest(a.Bodies()[0].Out(r3.Vec{Z: -1})); r3.Dot(to, r3.Vec{X: 1, Y: 1, Z: 1}) < 0 {
			away = -r3.Dot(to, a.Room.Body)
		} else {
			away = r3.Dot(to, r3.Sub(a.Room.Size, a.Room.Body))
		}
	case a.Surface.Present:
		to = Towards(a.Surface.On)
		away = a.Surface.Height * (to.X + to.Z)
	}
	return away-a.Body.BaseExtent(a.Bodies()[0].In(to)) < a.Body.BallRadius
}

// squarest returns the axis, or its opposite, that a direction is nearest to.
func squarest(v r3.Vec) r3.Vec {
	switch x, y, z := math.Abs(v.X), math.Abs(v.Y), math.Abs(v.Z); {
	case z >= x && z >= y:
		return r3.Vec{Z: math.Copysign(1, v.Z)}
	case x >= y:
		return r3.Vec{X: math.Copysign(1, v.X)}
	}
	return r3.Vec{Y: math.Copysign(1, v.Y)}
}
