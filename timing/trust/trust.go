// Package trust says how far the level of one driver can be off because a ball stands
// for the body.
//
// A ball is smooth; a body of flat faces is not. An independent boundary-element solution
// (testdata/reference/faceted_given.csv: round pistons on a rigid dodecahedron, 12 faces,
// and on half of one with its floor, in free air) gives the error at each frequency. The
// same method gives up to 3 dB for 6 faces and 2 dB for 20 from 1 to 2 kHz, and 0.3 dB at 2
// kHz for 80, all of 150 mm; of those there is no table here. All of it is near the front
// of the driver; behind the body, where there are nulls, decibels mean little.
//
// Between those bodies the error goes by how far the middles of the faces lie off the
// ball, over its radius, and in frequency by ka, the ball's girth over the wavelength.
// From ka 3.6 on, where the dodecahedron is farthest off, that largest error is held: the
// table shows less there, but at other angles than it has rows for it may be more.
package trust

import "math"

// knot is a point of a curve.
type knot struct{ at, value float64 }

// The dodecahedron's faces lie this far off the ball of its volume, over its radius, and
// the half dodecahedron's ball this far from the origin, over its radius.
const (
	dodecahedron = 0.0895
	halfShift    = 0.209
)

// most is the largest error in dB over the deviation of the faces: 80 faces, 20 and 12; that of 6,
// at 0.194, is no larger.
var most = []knot{{0, 0}, {0.0227, 0.36}, {0.0607, 2}, {dodecahedron, 3.7}}

// rise is the dodecahedron's error in dB over ka, the largest of all rows at 250, 500,
// 1000 and 1500 Hz.
var rise = []knot{{0.599, 0.06}, {1.198, 0.22}, {2.397, 0.98}, {3.595, 3.7}}

// halved is the half dodecahedron's, the largest of the rows in front of its pistons, at
// 250 to 2000 Hz.
var halved = []knot{{0.537, 0.44}, {1.075, 1.55}, {2.149, 2.8}, {3.224, 3.85}, {4.298, 3.95}}

// Known is the largest deviation of the faces over the ball's radius for which there is
// a solution: a cube's. Beyond it the error may be larger than Faces says.
const Known = 0.2

// Faces returns by how much in dB the level of one driver can be off because the middles
// of the body's faces lie so far off the ball, over its radius; 0 for a ball. ka is the
// wavenumber times the ball's radius.
func Faces(deviation, ka float64) float64 {
	return along(most, math.Abs(deviation)) / along(most, dodecahedron) * overKa(rise, ka)
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
