package radiate

import (
	"math"

	"pappus/layout"
	"pappus/timing/shoebox"

	"gonum.org/v1/gonum/spatial/r3"
)

// Way is one way for sound to reach a place: directly, or by walls that
// mirror it. The sound of a mirrored body at a place is that of the body itself
// at the place mirrored back, so a way moves places, not mounts (package shoebox).
type Way struct {
	shoebox.Mirror
	Factor []float64 // what the walls leave of the pressure, for each frequency; nil: all
}

// Ways returns all ways by which an array is heard at a medium's frequencies: the body
// itself first, then the surface below it or the walls of its room.
func Ways(a *layout.Array, m *Medium) []Way {
	ways := []Way{{Mirror: shoebox.Mirror{Flip: r3.Vec{X: 1, Y: 1, Z: 1}}}}
	switch {
	case a.Room.Present:
		var walls [6][]float64
		for wall := range walls {
			walls[wall] = m.reflection(a.Room.Absorption[wall])
		}
		for _, image := range shoebox.Images(a.Room.Size, a.Room.Body, a.Room.Order)[1:] {
			ways = append(ways, Way{image.Mirror, image.Factors(walls)})
		}
	case a.Surface.Present:
		below := shoebox.Mirror{Flip: r3.Vec{X: 1, Y: 1, Z: -1}, Shift: r3.Vec{Z: 2 * a.Surface.Height}}
		ways = append(ways, Way{below, m.reflection(a.Surface.Absorption)})
	}
	return ways
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
