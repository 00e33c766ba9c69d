// Package reverb gives the reverberation time of a box room by the two oldest
// formulas:
//
//	T = 24 ln 10 V / (c (A + 4 m V))
//
// with V the volume in m3, c the speed of sound, m the loss of energy in air
// per metre, twice that of pressure in nepers, and A the room's absorption in
// m2: by Sabine the sum of area times coefficient, by Eyring -S ln(1 - mean
// coefficient) over the whole surface S.
//
// W. C. Sabine, Collected Papers on Acoustics, 1922; C. F. Eyring, J. Acoust.
// Soc. Am. 1 (1930) 217; loss in air: V. O. Knudsen, J. Acoust. Soc. Am. 3 (1931)
// 126; Kuttruff, Room Acoustics, chapter 5.
//
// Both take the sound to be as strong and from all sides everywhere. A small room
// with one soft surface is far from it, and no room is below its Schroeder
// frequency: take the times for a caution, not a promise.
package reverb

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// Room is an empty box. Sizes above 0 and coefficients from 0 to 1 are for the caller to see to.
type Room struct {
	Size r3.Vec // m, each above 0

	// Absorption holds the coefficients, 0 to 1, of the walls at low and high x,
	// low and high y, low and high z, in one band.
	Absorption [6]float64
}

// Time is the reverberation time in s of one band.
type Time struct{ Sabine, Eyring float64 }

// Volume returns the volume in m3.
func (r Room) Volume() float64 { return r.Size.X * r.Size.Y * r.Size.Z }

// Surface returns the area of all walls in m2.
func (r Room) Surface() float64 {
	return 2 * (r.Size.X*r.Size.Y + r.Size.Y*r.Size.Z + r.Size.Z*r.Size.X)
}

// Sabins returns the sum of area times coefficient in m2.
func (r Room) Sabins() float64 {
	x, y, z := r.Size.Y*r.Size.Z, r.Size.Z*r.Size.X, r.Size.X*r.Size.Y
	a := r.Absorption
	return x*(a[0]+a[1]) + y*(a[2]+a[3]) + z*(a[4]+a[5])
}

// Time returns the times in which the energy falls by 60 dB, for a speed of
// sound in m/s and a loss of pressure in air in Np/m. They are +Inf where
// nothing is lost; Eyring's is 0 where walls take everything.
func (r Room) Time(speed, loss float64) Time {
	air := 8 * loss * r.Volume() // 4 m V with m = 2 loss
	scale := 24 * math.Ln10 / speed * r.Volume()
	mean := min(r.Sabins()/r.Surface(), 1) // rounding may take it above
	return Time{
		Sabine: scale / (r.Sabins() + air),
		Eyring: scale / (-r.Surface()*math.Log1p(-mean) + air),
	}
}
