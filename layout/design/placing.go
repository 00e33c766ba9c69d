package design

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// What a body may be fixed to.
const (
	OnSurface = "surface"
	OnCeiling = "ceiling"
	OnWall    = "wall"
)

// Placing is how the body is held in the room.
type Placing struct {
	// On is what it is fixed to: a surface that it stands on, its cut face down; a ceiling
	// that it hangs from upside down, its cut face up and its front mark still forward; or
	// a wall behind it, its cut face to the wall, its top forward and its front mark down.
	On string
	Angles
}

// Angles are how a body is turned on top of how it is held, in degrees, one after the other,
// each about an axis that the turns before have turned with the body (intrinsic z, y', x”,
// by the right hand): yaw about the one that was upright, above 0 to the left, against the
// clock seen from above; pitch about the one to the left, above 0 with what pointed forward
// tipped down; roll about the one forward, above 0 with what was at the left tipped up.
type Angles struct{ YawDeg, PitchDeg, RollDeg float64 }

// MaxBodies is the most bodies of a design, the first counted: more than are hung over a hall.
const MaxBodies = 16

// How a copy of the body is driven: by channels of its own, or by those of the first body.
const (
	OwnChannels    = "own"
	SharedChannels = "shared"
)

// Copy is one more body like the first, with the same drivers and wiring, held as it is, at
// another place.
type Copy struct {
	At       r3.Vec // m, of its centre, counted as the spot
	Angles          // on top of how it is held
	Channels string // own or shared
}

// Turn is how a body is turned in the room: where its own axes point there, as unit vectors
// square to each other. The zero value is a body that stands as it was designed.
type Turn struct {
	Front r3.Vec // of its front mark, the body's own x
	Left  r3.Vec // the body's own y
	Top   r3.Vec // the body's own z
}

// Out returns a direction of the body's as the room has it.
func (t Turn) Out(v r3.Vec) r3.Vec {
	if t == (Turn{}) {
		return v
	}
	return r3.Add(r3.Scale(v.X, t.Front), r3.Add(r3.Scale(v.Y, t.Left), r3.Scale(v.Z, t.Top)))
}

// In returns a direction of the room's as the body has it.
func (t Turn) In(v r3.Vec) r3.Vec {
	if t == (Turn{}) {
		return v
	}
	return r3.Vec{X: r3.Dot(t.Front, v), Y: r3.Dot(t.Left, v), Z: r3.Dot(t.Top, v)}
}

// held is how a body is turned by what it is fixed to alone.
func (p Placing) held() Turn {
	switch p.On {
	case OnCeiling:
		return Turn{r3.Vec{X: 1}, r3.Vec{Y: -1}, r3.Vec{Z: -1}}
	case OnWall:
		return Turn{r3.Vec{Z: -1}, r3.Vec{Y: 1}, r3.Vec{X: 1}}
	}
	return Turn{r3.Vec{X: 1}, r3.Vec{Y: 1}, r3.Vec{Z: 1}}
}

// Turn returns how a body is turned that is fixed so and turned by angles on top. Quarter and
// half turns are exact.
func (p Placing) Turn(a Angles) Turn {
	sy, cy := sincos(a.YawDeg)
	sp, cp := sincos(a.PitchDeg)
	sr, cr := sincos(a.RollDeg)
	on := Turn{
		Front: r3.Vec{X: cy * cp, Y: sy * cp, Z: -sp},
		Left:  r3.Vec{X: cy*sp*sr - sy*cr, Y: sy*sp*sr + cy*cr, Z: cp * sr},
		Top:   r3.Vec{X: cy*sp*cr + sy*sr, Y: sy*sp*cr - cy*sr, Z: cp * cr},
	}
	held := p.held()
	t := Turn{plus0(on.Out(held.Front)), plus0(on.Out(held.Left)), plus0(on.Out(held.Top))}
	if t == (Turn{r3.Vec{X: 1}, r3.Vec{Y: 1}, r3.Vec{Z: 1}}) {
		return Turn{}
	}
	return t
}

// plus0 takes the sign off zeros.
func plus0(v r3.Vec) r3.Vec { return r3.Add(v, r3.Vec{}) }

// sincos returns the sine and cosine of an angle in degrees, exact at quarter turns.
func sincos(degrees float64) (sin, cos float64) {
	quarters := math.Round(degrees / 90)
	sin, cos = math.Sincos((degrees - 90*quarters) * math.Pi / 180)
	switch math.Mod(quarters+8, 4) {
	case 1:
		return cos, -sin
	case 2:
		return -sin, -cos
	case 3:
		return -cos, sin
	}
	return sin, cos
}

// reach is how far a body reaches from its centre in m in a direction of the body's, at
// most: that of what a cut leaves of the ball round it.
func (b Body) reach(u r3.Vec) float64 {
	if !b.HasCut || b.Radius*u.Z >= b.Cut {
		return b.Radius
	}
	return b.Cut*u.Z + math.Hypot(u.X, u.Y)*math.Sqrt(b.Radius*b.Radius-b.Cut*b.Cut)
}

// Span returns how far the body of a design reaches from its centre in the room at most, in
// m, along an axis, 0 for x: backward and forward.
func (d *Design) Span(axis int) (back, ahead float64) {
	turn, u := d.Placing.Turn(d.Placing.Angles), [3]r3.Vec{{X: 1}, {Y: 1}, {Z: 1}}[axis]
	return d.Body.reach(turn.In(r3.Scale(-1, u))), d.Body.reach(turn.In(u))
}
