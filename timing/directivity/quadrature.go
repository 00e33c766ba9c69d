package directivity

import (
	"math"

	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/spatial/r3"
)

// Rule is a quadrature over all directions, ring by ring round the z axis.
type Rule struct {
	Direction []r3.Vec  // of length one
	Weight    []float64 // solid angle, sr; together 4 pi
	ring      int       // directions in each ring
}

// Degree returns the degree N of spherical harmonics that the far field of a
// source needs, for the wavenumber times the radius of a sphere round the origin
// that holds all of the source:
//
//	N = ka + 3 (ka)^(1/3) + 8, rounded up
//
// The factor is that of the package comment for two digits of pressure, and the
// constant is found by trial; together they are ample, for what is left out adds
// to the power by its square. The tests hold that a rule of double the degree
// changes power by less than 1e-6 for one driver on a ball, from 1 to 90 degrees of
// half angle, at ka up to 60, in the far field and at two radii. Mirror images
// belong to the source: a surface below makes the sphere larger.
func Degree(ka float64) int {
	ka = math.Abs(ka)
	return int(math.Ceil(ka + 3*math.Cbrt(ka) + 8))
}

// Quadrature returns the rule for a source with the given ka, see Degree. ka must
// be finite; memory and work go as its square.
func Quadrature(ka float64) *Rule { return Exact(Degree(ka)) }

// faulty is a number of points for which the Gauss-Legendre table of gonum v0.17.0
// is wrong: the two outermost weights are 0, not 0.0106. One point more is
// exact too.
const faulty = 26

// Exact returns the rule that is exact for the squared size of pressures of
// spherical harmonics to a degree, 0 or above.
func Exact(degree int) *Rule {
	rings, ring := degree+1, 2*degree+1
	if rings == faulty {
		rings++
	}
	z, weight := make([]float64, rings), make([]float64, rings)
	quad.Legendre{}.FixedLocations(z, weight, -1, 1)
	r := &Rule{
		Direction: make([]r3.Vec, 0, rings*ring),
		Weight:    make([]float64, 0, rings*ring),
		ring:      ring,
	}
	step := 2 * math.Pi / float64(ring)
	for i := range z {
		flat := math.Sqrt((1 - z[i]) * (1 + z[i]))
		for j := range ring {
			sin, cos := math.Sincos(step * float64(j))
			r.Direction = append(r.Direction, r3.Vec{X: flat * cos, Y: flat * sin, Z: z[i]})
			r.Weight = append(r.Weight, weight[i]*step)
		}
	}
	return r
}
