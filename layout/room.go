package layout

import (
	"pappus/layout/design"

	"gonum.org/v1/gonum/spatial/r3"
)

// Room is the box that the body is in. Its corner is at the back, right, on the
// floor: where x, y and z are least.
type Room struct {
	Present bool
	Size    r3.Vec // m
	Body    r3.Vec // m, the body's centre from the corner
	// Absorption is that of the walls at -x, +x, -y, +y, -z and +z: back, front,
	// right, left, floor and ceiling.
	Absorption [6]Absorption
	Order      int // the most walls that a sound is followed over
}

// Contains tells whether a point in m from the body's centre is inside the room
// or on a wall, rounding aside; it always is where there is none.
func (r Room) Contains(p r3.Vec) bool {
	if !r.Present {
		return true
	}
	low, high := r3.Scale(-1, r.Body), r3.Sub(r.Size, r.Body)
	within := func(v, low, high float64) bool { return v >= low-rounding && v <= high+rounding }
	return within(p.X, low.X, high.X) && within(p.Y, low.Y, high.Y) && within(p.Z, low.Z, high.Z)
}

func room(d design.Room) Room {
	if !d.Present {
		return Room{}
	}
	r := Room{Present: true, Size: vec(d.SizeM), Body: vec(d.BodyAtM), Order: d.Order}
	for i, a := range d.Absorption {
		r.Absorption[i] = Absorption(a)
	}
	return r
}

func vec(v [3]float64) r3.Vec { return r3.Vec{X: v[0], Y: v[1], Z: v[2]} }
