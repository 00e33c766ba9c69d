package loom

import (
	"math"

	"pappus/layout"

	"gonum.org/v1/gonum/spatial/r3"
)

// Place is where a driver is seen from inside the body, on a disc of radius 1 with its middle under
// the body's top, or over its bottom: to the right and up, where up is the front mark. The distance
// from the middle is the angle from there (azimuthal equidistant projection; J. P. Snyder, Map
// Projections, USGS 1395 (1987), chapter 25). Seen from below into the upper half the
// loudspeaker's left is at the right; seen from above into the lower one it is at the left.
type Place struct {
	Right, Up float64
	Lower     bool
}

// oneDisc is the greatest angle in rad from the top to a driver for all to be drawn on one
// disc: at 115 degrees the projection is 2.2 times as wide along the rim as towards the middle
// (angle over its sine), beyond that flanges at the rim look like none.
const oneDisc = 115 * math.Pi / 180

const rounding = 1e-9 // free: rad, more than that of a driver on the equator

// Places returns where all drivers are seen, and whether on two discs.
func Places(a *layout.Array) (out []Place, halves bool) {
	furthest := 0.0
	for _, m := range a.Mounts {
		furthest = max(furthest, fromTop(m.Point))
	}
	halves = furthest > oneDisc
	rim := furthest
	if halves {
		rim = math.Pi / 2
	}
	for _, m := range a.Mounts {
		var p Place
		angle := fromTop(m.Point)
		right, up := -m.Point.Y, m.Point.X // from above
		if p.Lower = halves && angle > math.Pi/2+rounding; p.Lower {
			angle = math.Pi - angle
		} else {
			right = -right
		}
		if flat := math.Hypot(right, up); flat > 0 && rim > 0 {
			scale := angle / rim / flat
			p.Right, p.Up = scale*right, scale*up
		}
		out = append(out, p)
	}
	return out, halves
}

// fromTop is the angle of a place from the body's upright axis, in rad.
func fromTop(at r3.Vec) float64 { return math.Atan2(math.Hypot(at.X, at.Y), at.Z) }
