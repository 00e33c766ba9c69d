package boundary

import "math"

// choices are the numbers that decide how fine the equations are.
type choices struct {
	// second is the factor of the equation on the inner surface.
	second complex128
	// innermost is how far in the inner surface is at most, as a part of the way from inside.
	innermost float64
	// graded is the part of a side next to a sharp edge that is an element of its own.
	graded float64
	// bluntest is the least angle between two faces' normals, in rad, whose edge is sharp.
	bluntest float64
	// least is how many nodes a side has at least, by its length over the body's size.
	least float64
	// most is how many nodes an element has along a side at most.
	most int
	// tooNear is, times the farness of its nodes, how many reaches away from its middle an
	// element's own nodes integrate the layer well enough.
	tooNear float64
	// apart is how many reaches away a piece of a nearer element must be.
	apart float64
	// fine is how many nodes along each side a piece is integrated with.
	fine int
	// beside is how many radii round a piston its pressure is steep.
	beside float64
	// rimward is how large a piece of an element may be beside its way to a piston's rim.
	rimward float64
}

// chosen are the choices that are used.
var chosen = choices{
	second: 1i, innermost: 0.3, graded: 0.15, bluntest: 25 * math.Pi / 180, least: 4, most: 5,
	tooNear: 1, apart: 2, fine: 6, beside: 4, rimward: 0.7,
}

// farness is how many reaches away from its middle an element's own nodes integrate the layer
// well enough, by the fewer of its nodes along a side.
var farness = [8]float64{0, 7, 4.5, 3.2, 2.7, 2.4, 2.2, 2.1}
