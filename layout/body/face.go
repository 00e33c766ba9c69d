package body

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// Normal returns a face's outward unit normal.
func (b *Body) Normal(face int) r3.Vec { return r3.Unit(b.areaVector(face)) }

// areaVector returns a face's area in m2 along its outward normal.
func (b *Body) areaVector(face int) r3.Vec {
	c := b.Faces[face].Corners
	first := b.Vertices[c[0]]
	last := r3.Sub(b.Vertices[c[1]], first)
	var twice r3.Vec
	for _, v := range c[2:] {
		next := r3.Sub(b.Vertices[v], first)
		twice = r3.Add(twice, r3.Cross(last, next))
		last = next
	}
	return r3.Scale(0.5, twice)
}

// Centroid returns the centre of area of a face, in m.
func (b *Body) Centroid(face int) r3.Vec {
	c := b.Faces[face].Corners
	var sum r3.Vec
	total := 0.0
	for i := 2; i < len(c); i++ {
		t := r3.Triangle{b.Vertices[c[0]], b.Vertices[c[i-1]], b.Vertices[c[i]]}
		twice := r3.Norm(t.Normal())
		sum = r3.Add(sum, r3.Scale(twice, t.Centroid()))
		total += twice
	}
	return r3.Scale(1/total, sum)
}

// Margin returns the distance in m from a point in a face's plane to the
// nearest line that carries an edge of that face; negative outside of the face.
// The largest circle round the point that stays inside the face has this radius.
func (b *Body) Margin(face int, at r3.Vec) float64 {
	normal, c := b.Normal(face), b.Faces[face].Corners
	least := math.Inf(1)
	for i := range c {
		p, q := b.Vertices[c[i]], b.Vertices[c[(i+1)%len(c)]]
		inward := r3.Unit(r3.Cross(normal, r3.Sub(q, p)))
		least = min(least, r3.Dot(inward, r3.Sub(at, p)))
	}
	return least
}

// InscribedRadius returns the radius in m of the largest circle round a face's
// centroid that stays inside the face.
func (b *Body) InscribedRadius(face int) float64 { return b.Margin(face, b.Centroid(face)) }
