package tape

import (
	"fmt"
	"math"
	"slices"
	"strconv"

	"pappus/layout"

	"gonum.org/v1/gonum/spatial/r3"
)

// near is the least length in m that is worth a word: half of what two decimals show.
const near = 0.005

// aim is the angle in degrees to either side that counts as straight ahead: 0.07 m at
// 2 m, less than a head turns aside.
const aim = 2.0

// Place is where a person's ears are.
type Place struct {
	Ahead  float64 // m in front of the body's middle along the floor; negative: behind
	Left   float64 // m to the loudspeaker's own left along the floor; negative: to its right
	Height float64 // m above what Over names
	Over   string  // what heights count from: the floor, the table or floor, the ceiling, the body's middle
}

// Of returns where a point in m from the body's centre is. Heights count from the floor, or
// from the surface below the body or above it, where there is one.
func Of(a *layout.Array, p r3.Vec) Place {
	out := Place{Ahead: p.X, Left: p.Y, Height: p.Z, Over: "its middle"}
	switch {
	case a.Room.Present:
		out.Height, out.Over = p.Z+a.Room.Body.Z, "the floor"
	case a.Surface.Present && a.Surface.On == layout.OnCeiling:
		out.Height, out.Over = p.Z-a.Surface.Height, "the ceiling"
	case a.Surface.Present && a.Surface.On != layout.OnWall:
		out.Height, out.Over = p.Z-a.Surface.Height, "the table or floor"
	}
	return out
}

// Spot names the listening spot: where there are several seats and it is one of theirs, by
// that.
func Spot(a *layout.Array) string {
	if i := slices.IndexFunc(a.Seats, func(s layout.Seat) bool { return s.At == a.Spot }); i >= 0 && len(a.Seats) > 1 {
		return "seat " + strconv.Quote(a.Seats[i].Name)
	}
	return "listening spot"
}

// Along returns the distance in m along the floor.
func (p Place) Along() float64 { return math.Hypot(p.Ahead, p.Left) }

// Angle returns the angle in degrees from straight ahead, positive to the
// loudspeaker's left, -180 to 180.
func (p Place) Angle() float64 { return math.Atan2(p.Left, p.Ahead) * 180 / math.Pi }

// Full says where to hold a tape measure: forward, aside, and the ears' height.
func (p Place) Full() string {
	ahead, aside := p.ahead(), p.aside()
	switch {
	case ahead == "" && aside == "":
		return "straight over or under the loudspeaker, " + p.Ears()
	case aside == "":
		return fmt.Sprintf("%s along the floor, %s", ahead, p.Ears())
	case ahead == "":
		return fmt.Sprintf("%s along the floor, %s", aside, p.Ears())
	}
	return fmt.Sprintf("%s along the floor, %s, %s", ahead, aside, p.Ears())
}

// Short says how far it is along the floor, and towards which side.
func (p Place) Short() string {
	if p.Along() < near {
		return "straight over or under the loudspeaker"
	}
	return metres(p.Along()) + " away along the floor, " + p.Side()
}

// Side says in which direction from the loudspeaker a place is.
func (p Place) Side() string {
	off := math.Abs(p.Angle())
	hand := "left"
	if p.Left < 0 {
		hand = "right"
	}
	switch {
	case off <= aim:
		return "straight in front"
	case off >= 180-aim:
		return "straight behind"
	case off > 90:
		return fmt.Sprintf("%.0f° round to the loudspeaker's %s", off, hand)
	}
	return fmt.Sprintf("%.0f° to the loudspeaker's %s", off, hand)
}

// Ears says how high the ears are.
func (p Place) Ears() string {
	if math.Abs(p.Height) < near {
		return "ears level with " + p.Over
	}
	return "ears " + p.High()
}

// High says how high the place is.
func (p Place) High() string {
	if p.Height < 0 {
		return metres(-p.Height) + " below " + p.Over
	}
	return metres(p.Height) + " above " + p.Over
}

// metres writes a length as a tape shows it, to the nearest centimetre.
func metres(v float64) string { return fmt.Sprintf("%.2f m", math.Round(100*v)/100) }

func (p Place) ahead() string {
	switch {
	case math.Abs(p.Ahead) < near:
		return ""
	case p.Ahead < 0:
		return metres(-p.Ahead) + " behind"
	}
	return metres(p.Ahead) + " in front"
}

func (p Place) aside() string {
	switch {
	case math.Abs(p.Left) < near:
		return ""
	case p.Left < 0:
		return metres(-p.Left) + " to the loudspeaker's right"
	}
	return metres(p.Left) + " to the loudspeaker's left"
}

// ToLeft returns the place that is so many m to the left hand of a listener who faces
// the loudspeaker; negative: to the right hand. Who sits in front of a loudspeaker has
// its left at the right hand. Straight above it one faces the way it does.
func ToLeft(p r3.Vec, metres float64) r3.Vec {
	facing := r3.Vec{X: -p.X, Y: -p.Y}
	if r3.Norm(facing) < near {
		facing = r3.Vec{X: 1}
	}
	left := r3.Cross(r3.Vec{Z: 1}, r3.Unit(facing))
	return r3.Add(p, r3.Scale(metres, left))
}
