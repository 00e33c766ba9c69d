package body

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// Volume returns the volume in m3 of what the surface encloses.
func (b *Body) Volume() float64 {
	if b.IsBall() {
		low := b.Lowest()
		tall := b.Radius - low
		return math.Pi * tall * tall * (2*b.Radius + low) / 3
	}
	sum := 0.0
	for f, face := range b.Faces {
		sum += r3.Dot(b.Vertices[face.Corners[0]], b.areaVector(f)) / 3
	}
	return sum
}

// Area returns the surface in m2, a cut's base included.
func (b *Body) Area() float64 {
	if b.IsBall() {
		low := b.Lowest()
		tall := b.Radius - low
		return math.Pi * tall * (2*b.Radius + b.Radius + low)
	}
	sum := 0.0
	for f := range b.Faces {
		sum += r3.Norm(b.areaVector(f))
	}
	return sum
}
