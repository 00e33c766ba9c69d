package spread

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// Spiral returns n points on the unit sphere along a spiral from the top down:
// heights in steps of equal area, each turned by the golden angle from the
// last. It takes next to no time and is even to a few percent for any n; below
// 1 it has no points.
func Spiral(n int) []r3.Vec {
	points := make([]r3.Vec, max(n, 0))
	for i := range points {
		points[i] = spiralPoint(i, n)
	}
	return points
}

// spiralPoint returns the i-th of the n points of a spiral.
func spiralPoint(i, n int) r3.Vec {
	golden := math.Pi * (3 - math.Sqrt(5))
	z := 1 - (2*float64(i)+1)/float64(n)
	reach := math.Sqrt(1 - z*z)
	sin, cos := math.Sincos(golden * float64(i))
	return r3.Vec{X: reach * cos, Y: reach * sin, Z: z}
}
