// Package trust says how far the level of one driver can be off because a ball stands
// for the body.
//
// A ball is smooth; a body of flat faces is not. What that does was solved for by boundary elements
// (package boundary, which is held to an independent solution, testdata/reference/faceted_given.csv): a round
// piston in the middle of a face, heard 2 m away in 400 directions, against the same on the ball, for
// solids from 4 to 80 faces of 150 mm (bodies_test.go). The figure is the most that the level is off in
// front, within 90 degrees of the driver; that is near its axis. Behind the body, where there are
// nulls, decibels mean little. RMS over all directions it is 0.4 of that.
//
// Between those bodies the error goes by ka, the ball's girth over the wavelength, times the power 0.78
// of how far the middles of the faces lie off the ball, over its radius: what rises to 2 dB at ka 1.07
// for a tetrahedron does so at 1.6 for a cube, 1.9 for an octahedron and 2.95 for a dodecahedron, and all
// of them follow one curve within a factor of 1.3 at 500, 1000 and 2000 Hz. Where that is largest
// it is held: on it goes up and down.
package trust

import "math"

// knot is a point of a curve.
type knot struct{ at, value float64 }

// halfShift is how far the half dodecahedron's ball lies from the origin, over its radius.
const halfShift = 0.209

// faced is the error in dB over ka deviation^collapse, through the middle of what nine bodies have, seven of
// which are in bodies_test.go, but where it climbs, as cube and dodecahedron have it.
var faced = []knot{{0.2, 0.26}, {0.27, 0.58}, {0.36, 1.15}, {0.43, 1.65}, {0.5, 2}, {0.523, 2.2}, {0.546, 3.68}, {0.85, 3.9}}

// round is the most in dB over the deviation of bodies that are all but round, where the curve goes too high:
// 80 faces, whose error is 1.2 dB at 4 kHz and 1.5 at 5.6; 32 have 2.7 at 3 kHz, and go by the curve.
var round = []knot{{0, 0}, {0.0227, 1.4}, {0.0405, 5}}

// collapse is the power of the deviation by which the bodies' curves lie on each other.
const collapse = 0.78

// halved is the half dodecahedron's, the largest of the rows in front of its pistons, at
// 250 to 2000 Hz.
var halved = []knot{{0.537, 0.44}, {1.075, 1.55}, {2.149, 2.8}, {3.224, 3.85}, {4.298, 3.95}}

// Known is the largest deviation of the faces over the ball's radius for which there is
// a solution: a tetrahedron's. Beyond it the error may be larger than Faces says.
const Known = 0.33

// Faces returns by how much in dB the level of one driver can be off because the middles
// of the body's faces lie so far off the ball, over its radius; 0 for a ball. ka is the
// wavenumber times the ball's radius.
func Faces(deviation, ka float64) float64 {
	deviation = math.Abs(deviation)
	return min(along(round, deviation), overKa(faced, ka*math.Pow(deviation, collapse)))
}

// Cut returns by how much in dB the level of one driver of a cut body in free air can be
// off, whose ball has its centre so far from that of the uncut body, over its radius; 0
// for one that is not cut.
func Cut(shift, ka float64) float64 {
	return min(1, math.Abs(shift)/halfShift) * overKa(halved, ka)
}

// along goes straight from knot to knot, and on level beyond the last.
func along(curve []knot, at float64) float64 {
	for i, to := range curve[1:] {
		if from := curve[i]; at < to.at {
			return from.value + (to.value-from.value)*(at-from.at)/(to.at-from.at)
		}
	}
	return curve[len(curve)-1].value
}

// overKa goes straight from knot to knot on double logarithmic paper; below the first
// the error falls as ka squared, as the shape of a small body ceases to matter.
func overKa(curve []knot, ka float64) float64 {
	if first := curve[0]; ka <= first.at {
		return first.value * ka * ka / (first.at * first.at)
	}
	for i, to := range curve[1:] {
		if from := curve[i]; ka < to.at {
			return from.value * math.Pow(to.value/from.value, math.Log(ka/from.at)/math.Log(to.at/from.at))
		}
	}
	return curve[len(curve)-1].value
}
