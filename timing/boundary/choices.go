package boundary

import "math"

// choices are the numbers that decide how fine the equations are. Beside each stands what a sweep
// of density, choice and frequency says (TestChoices; dodecahedron, cube, icosahedron, half
// dodecahedron, geodesic of 80 faces, ball, prisms, a slab; errors at 2 m in dB, as a part of the
// RMS over directions, at 5 nodes to a wavelength). 5 nodes keep 0.03 dB; 4 are 0.07 dB off on the half
// dodecahedron and 3.5 are 0.13 to 0.15 off at 3.5 kHz, 6 bring nothing but on the geodesic (0.034 to 0.013).
type choices struct {
	// Second is the factor of the equation on the inner surface. What it adds to the error at edges is
	// in proportion: the cube is 0.055 off at 1i, 0.026 at 0.3i; a prism of 16 sides near a plane 0.14 at 0.5i,
	// 0.06 at 0.3i. Less than 0.15i and a ball at its inside's own frequencies is 0.02 worse.
	Second complex128
	// Innermost is how far in the inner surface is at most, as a part of the way from inside: from
	// 0.3 to 0.5 the cube's error falls by half below 2 kHz, beyond nothing changes.
	Innermost float64
	// Deep is how far in it is at most, times k, in rad: a quarter of a wavelength. At 0.4 the
	// cube is 0.09 off; from 1.2 to 2.2 all is the same, and at pi the second equation adds nothing.
	Deep float64
	// Graded is the part of a side next to a sharp edge that is an element of its own: 0.15 to 0.25 are
	// alike, 0.05 is 0.046 off on the cube.
	Graded float64
	// Bluntest is the least angle between two faces' normals, in rad, whose edge is sharp: the
	// power of the distance is pi/(pi+angle) there (Pierce, Acoustics, 1989, 9-8), 0.88 at 25 degrees. Elements
	// at the edges of a geodesic of 80 faces, 18 and 21 degrees, change 0.004 for four times the nodes; without those of
	// an icosahedron, 42 degrees, it is 0.02 off, a dodecahedron, 63, 0.04.
	Bluntest float64
	// Least is how many nodes a side has at least, by its length over the body's size, that is, for
	// low frequencies: with 2 a ball is 0.05 off at 700 Hz.
	Least float64
	// Short is the part of the body's size below which a side has one node whatever its edges: at 0.2 a
	// slab of a tenth of its width is 0.8 off.
	Short float64
	// Most is how many nodes an element has along a side at most: with 4 a ball is twice as far
	// off as with 6 on as many nodes, 7 and 8 bring little.
	Most int
	// Fewer is by how many nodes a side of an element is coarser, if it has as many and one.
	Fewer int
	// Curved is how many times as many nodes a curved patch has, for want of graded elements: at
	// 1.25 a cut ball is 0.034 off at 2 kHz, at 1.5 0.013.
	Curved float64
	// Round is how many radii of the smallest piston nodes are apart on a curved patch at most:
	// there the pressure beside a piston has a part that goes with the logarithm of the way to
	// it. Without it a piston of 5 mm on a ball of 150 mm is 0.16 off at 4 kHz, of 13 mm 0.02.
	Round float64
	// TooNear is, times the farness of its nodes, how many reaches away from its middle an
	// element's own nodes integrate the layer well enough: 0.6 to 1.4 are within 0.002.
	TooNear float64
	// Apart is how many reaches away a piece of a nearer element must be: 1.6 and more are within
	// 0.0001, 1.2 within 0.002, 0.8 lets places on the surface touch nodes.
	Apart float64
	// Fine is how many nodes along each side a piece is integrated with: 5 is within 0.001, 4 0.03 off on
	// a ball, 3 0.02 and more.
	Fine int
	// Beside is how many radii round a piston its pressure is steep: from 1 on the far field is within
	// 0.003; none at all is 0.09 off on the dodecahedron.
	Beside float64
	// Rimward is how large a piece of an element may be beside its way to a piston's rim, so that
	// no rim crosses one: to 0.8 within 0.0005, at 1 a prism of 13 sides is 1.5 off.
	Rimward float64
}

// chosen are the choices that are used.
var chosen = choices{
	Second: 0.3i, Innermost: 0.5, Deep: math.Pi / 2, Graded: 0.15, Bluntest: 25 * math.Pi / 180,
	Least: 4, Short: 0.03, Most: 6, Curved: 1.5, Round: 1.5, TooNear: 1, Apart: 2, Fine: 6, Beside: 4, Rimward: 0.5,
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
