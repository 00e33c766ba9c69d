package design

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// Absorption holds absorption coefficients, 0 (rigid) to 1, at the seven octave bands
// from 125 Hz to 8 kHz.
type Absorption [7]float64

// At returns the coefficient at a frequency in Hz, above 0: that of the octave
// band it falls into (IEC 61260-1, base ten), the first or last beyond the ends.
func (a Absorption) At(frequency float64) float64 {
	band := int(math.Round(math.Log10(frequency/1000)/0.3)) + 3
	return a[min(max(band, 0), len(a)-1)]
}

// Room is the box that the body is in, in place of a surface. Its corner is at the back,
// right, on the floor, where x, y and z are least: x runs forward, y left and z up, as the
// body's do.
type Room struct {
	Present bool   // the file has the table
	Size    r3.Vec // m
	Body    r3.Vec // m, the body's centre from the corner
	// Absorption is that of the walls at -x, +x, -y, +y, -z and +z: back, front,
	// right, left, floor and ceiling.
	Absorption [6]Absorption
	Order      int // the most walls that a sound is followed over
}

// slack is how far a place may be off by rounding, in m.
const slack = 1e-9

// Contains tells whether a point in m from the body's centre is inside the room
// or on a wall, rounding aside; it always is where there is none.
func (r Room) Contains(p r3.Vec) bool {
	if !r.Present {
		return true
	}
	low, high := r3.Scale(-1, r.Body), r3.Sub(r.Size, r.Body)
	within := func(v, low, high float64) bool { return v >= low-slack && v <= high+slack }
	return within(p.X, low.X, high.X) && within(p.Y, low.Y, high.Y) && within(p.Z, low.Z, high.Z)
}
