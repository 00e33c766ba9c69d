package reverb

import (
	"errors"
	"math"

	"pappus/layout/prose"

	"gonum.org/v1/gonum/spatial/r3"
)

// ErrRoom is wrapped by the errors of Room.Check.
var ErrRoom = errors.New("impossible room")

// Room is an empty box.
type Room struct {
	Size r3.Vec // m, each above 0

	// Absorption holds the coefficients, 0 to 1, of the walls at low and high x,
	// low and high y, low and high z, in one band.
	Absorption [6]float64
}

// Time is the reverberation time in s of one band.
type Time struct{ Sabine, Eyring float64 }

// Check returns an error that wraps ErrRoom and names the value at fault, or nil.
func (r Room) Check() error {
	for i, side := range [3]float64{r.Size.X, r.Size.Y, r.Size.Z} {
		if !(side > 0) || math.IsInf(side, 0) {
			return prose.Errorf("%w: %c size of %g m, must be above 0", ErrRoom, 'x'+rune(i), side)
		}
	}
	for wall, a := range r.Absorption {
		if !(a >= 0 && a <= 1) {
			return prose.Errorf("%w: absorption %g of wall %d, must be from 0 to 1", ErrRoom, a, wall)
		}
	}
	return nil
}

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
// nothing is lost; Eyring's is 0 where walls take everything. The room must pass
// Check.
func (r Room) Time(speed, loss float64) Time {
	air := 8 * loss * r.Volume() // 4 m V with m = 2 loss
	scale := 24 * math.Ln10 / speed * r.Volume()
	mean := min(r.Sabins()/r.Surface(), 1) // rounding may take it above
	return Time{
		Sabine: scale / (r.Sabins() + air),
		Eyring: scale / (-r.Surface()*math.Log1p(-mean) + air),
	}
}

// Times fills dst with the times of several bands: absorption has the six walls'
// coefficients for each, and loss the loss in air. It panics where the lengths
// differ and allocates nothing.
func Times(dst []Time, size r3.Vec, absorption [][6]float64, speed float64, loss []float64) {
	if len(dst) != len(absorption) || len(dst) != len(loss) {
		panic("reverb: lengths differ")
	}
	for b := range dst {
		dst[b] = Room{size, absorption[b]}.Time(speed, loss[b])
	}
}
