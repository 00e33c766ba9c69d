package layout

import (
	"fmt"
	"math"

	"pappus/layout/body"
	"pappus/layout/design"

	"gonum.org/v1/gonum/spatial/r3"
)

// Absorption holds absorption coefficients, 0 to 1, at the seven octave bands
// from 125 Hz to 8 kHz.
type Absorption [7]float64

// At returns the coefficient at a frequency in Hz, above 0: that of the octave
// band it falls into (IEC 61260-1, base ten), the first or last beyond the ends.
func (a Absorption) At(frequency float64) float64 {
	band := int(math.Round(math.Log10(frequency/1000)/0.3)) + 3
	return a[min(max(band, 0), len(a)-1)]
}

// Surface is a large level surface below the body, a table or a floor.
type Surface struct {
	Present    bool
	Height     float64 // m, from the body's centre
	Absorption Absorption
}

// Above tells whether a point in m is above the surface or on it; it always is
// where there is none.
func (s Surface) Above(p r3.Vec) bool { return !s.Present || p.Z >= s.Height }

// surface gives what the design has below the body.
func surface(d *design.Design, shell *body.Body) Surface {
	if !d.Surface.Present {
		return Surface{}
	}
	return Surface{
		Present:    true,
		Height:     shell.Lowest() - d.Body.StandHeightMM*mm,
		Absorption: Absorption(d.Surface.Absorption),
	}
}

// standing tells whether something hard below the body makes it whole by its mirror
// image: a surface or a room's floor that is nearer to its lowest point than the radius
// of the body's ball. Farther away sound goes under it as in open air; where on the way
// the one becomes the other is a judgement, not a measurement.
func (a *Array) standing() bool {
	return a.gap() < a.Body.BallRadius
}

// gap returns the height in m of the body's lowest point over the surface or the room's
// floor; +Inf where there is neither.
func (a *Array) gap() float64 {
	switch low := a.Body.Lowest(); {
	case a.Room.Present:
		return low + a.Room.Body.Z
	case a.Surface.Present:
		return low - a.Surface.Height
	}
	return math.Inf(1)
}

// checkPlaces tells of a spot or a mount that is below the surface or outside
// the room.
func checkPlaces(d *design.Design, a *Array) error {
	if s := a.Surface; !s.Above(a.Spot) {
		return fault(d, "spot.z_m", fmt.Sprint(d.Spot.ZM), fmt.Sprintf(
			"the listening spot is below the surface; must be at least %.4g", s.Height), ErrBelowSurface)
	}
	if !a.Room.Contains(a.Spot) {
		return fault(d, "spot", "", "the listening spot is outside the room; must be inside", ErrOutsideRoom)
	}
	for _, m := range a.Mounts {
		if !a.Surface.Above(m.Point) {
			return fault(d, "mounts", "", fmt.Sprintf("driver %d is %.3g mm below the surface; must be above it",
				m.ID, (a.Surface.Height-m.Point.Z)/mm), ErrBelowSurface)
		}
		if !a.Room.Contains(m.Point) {
			return fault(d, "mounts", "", fmt.Sprintf("driver %d is outside the room; must be inside", m.ID), ErrOutsideRoom)
		}
	}
	return nil
}
