package boundary

import "math"

// choices are the numbers that decide how fine the equations are.
type choices struct {
	// Second is the factor of the equation on the inner surface.
	Second complex128
	// Innermost is how far in the inner surface is at most, as a part of the way from inside.
	Innermost float64
	// Deep is how far in it is at most, times k, in rad.
	Deep float64
	// Graded is the part of a side next to a sharp edge that is an element of its own.
	Graded float64
	// Bluntest is the least angle between two faces' normals, in rad, whose edge is sharp.
	Bluntest float64
	// Least is how many nodes a side has at least, by its length over the body's size.
	Least float64
	// Curved is how many times as many nodes a curved patch has.
	Curved float64
	// Round is how many radii of the smallest piston nodes are apart on a curved patch at most:
	// there the pressure beside a piston has a part that goes with the logarithm of the way to it.
	Round float64
	// Short is the part of the body's size below which a side has one node whatever its edges.
	Short float64
	// Most is how many nodes an element has along a side at most.
	Most int
	// Fewer is by how many nodes a side of an element is coarser, if it has as many and one.
	Fewer int
	// TooNear is, times the farness of its nodes, how many reaches away from its middle an
	// element's own nodes integrate the layer well enough.
	TooNear float64
	// Apart is how many reaches away a piece of a nearer element must be.
	Apart float64
	// Fine is how many nodes along each side a piece is integrated with.
	Fine int
	// Beside is how many radii round a piston its pressure is steep.
	Beside float64
	// Rimward is how large a piece of an element may be beside its way to a piston's rim.
	Rimward float64
}

// chosen are the choices that are used.
var chosen = choices{
	Second: 0.3i, Innermost: 0.5, Deep: math.Pi / 2, Graded: 0.15, Bluntest: 25 * math.Pi / 180, Least: 4, Short: 0.03, Most: 6,
	Curved: 1.5, Round: 1.5, TooNear: 1, Apart: 2, Fine: 6, Beside: 4, Rimward: 0.5,
}

// farness is how many reaches away from its middle an element's own nodes integrate the layer
// well enough, by the fewer of its nodes along a side.
var farness = [9]float64{0, 7, 4.5, 3.2, 2.7, 2.4, 2.2, 2.1, 2}

// second returns the factor of the second equation at k times the body's size. It is not needed
// where the inside cannot ring with no pressure on its wall, which is below k size = pi: of all
// bodies that a ball of this size holds, the ball rings lowest (the eigenvalues fall as a domain
// grows; Courant and Hilbert, Methods of Mathematical Physics I, VI.2). What it adds to the error
// at edges is then spared, above all to the small part of the pressure that carries the power.
func (c choices) second(kSize float64) complex128 {
	return c.Second * complex(min(1, kSize*kSize/4), 0)
}
