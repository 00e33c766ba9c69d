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

// VolumeCentroid returns the middle in m of what the surface encloses, each part as heavy as
// it is large.
func (b *Body) VolumeCentroid() r3.Vec {
	if b.IsBall() {
		// The first moment of the part above a plane, from the integral of z pi (R^2 - z^2).
		low, r := b.Lowest(), b.Radius
		return r3.Vec{Z: math.Pi / 4 * (r - low) * (r - low) * (r + low) * (r + low) / b.Volume()}
	}
	var moment r3.Vec
	whole := 0.0
	for _, face := range b.Faces { // tetrahedra from the origin to a fan of each face
		p := b.Vertices[face.Corners[0]]
		for i := 2; i < len(face.Corners); i++ {
			q, s := b.Vertices[face.Corners[i-1]], b.Vertices[face.Corners[i]]
			volume := r3.Dot(p, r3.Cross(q, s)) / 6
			whole += volume
			moment = r3.Add(moment, r3.Scale(volume/4, r3.Add(p, r3.Add(q, s))))
		}
	}
	return r3.Scale(1/whole, moment)
}

// Deviation returns how far the middles of the faces, a cut's base left out, lie off the
// ball that stands for the body at most, over its radius; 0 for a ball.
func (b *Body) Deviation() float64 {
	most := 0.0
	for f, face := range b.Faces {
		if !face.Base {
			most = max(most, math.Abs(r3.Norm(r3.Sub(b.Centroid(f), b.BallCentre))/b.BallRadius-1))
		}
	}
	return most
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
