package body

import (
	"errors"
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// Errors that callers may test for with errors.Is.
var (
	ErrUnknownShape = errors.New("no such shape")
	ErrSubdivision  = errors.New("subdivision must be from 1 to 16")
	ErrNothingLeft  = errors.New("nothing of the body is left above the cut")
)

// Body is a convex closed surface whose centre is the origin, wound outward.
// A ball has neither vertices nor faces.
type Body struct {
	Name     string
	Vertices []r3.Vec // m
	Faces    []Face
	// Radius is the circumradius of the uncut body, in m.
	Radius float64
	// BallRadius is the radius, in m, of the ball whose volume is that of the
	// uncut body. The acoustics take it for the body.
	BallRadius float64
	// Cut is the height of the cut plane in m; valid where IsCut is true.
	Cut   float64
	IsCut bool
}

// Face is one flat face: its corners in order, counter-clockwise seen from
// outside, as indices into the body's vertices.
type Face struct {
	Corners []int
	// Base is true for the flat face that a cut leaves.
	Base bool
}

// Edge is where two faces meet: vertices A < B, and the faces.
type Edge struct {
	A, B  int
	Faces [2]int
}

// IsBall tells whether the body is a ball, whole or cut.
func (b *Body) IsBall() bool { return len(b.Faces) == 0 }

// Ball returns a ball of a radius in m.
func Ball(radius float64) *Body {
	return &Body{Name: "ball", Radius: radius, BallRadius: radius}
}

// Edges returns the edges in order of their vertices.
func (b *Body) Edges() []Edge {
	index := make(map[[2]int]int)
	var edges []Edge
	for f, face := range b.Faces {
		for i, p := range face.Corners {
			q := face.Corners[(i+1)%len(face.Corners)]
			key := [2]int{min(p, q), max(p, q)}
			if at, ok := index[key]; ok {
				edges[at].Faces[1] = f
				continue
			}
			index[key] = len(edges)
			edges = append(edges, Edge{key[0], key[1], [2]int{f, -1}})
		}
	}
	return edges
}

// corners returns the corners of a face, in m.
func (b *Body) corners(face int) []r3.Vec {
	c := b.Faces[face].Corners
	out := make([]r3.Vec, len(c))
	for i, v := range c {
		out[i] = b.Vertices[v]
	}
	return out
}

// areaVector returns a face's area in m2 along its outward normal.
func (b *Body) areaVector(face int) r3.Vec {
	c := b.Faces[face].Corners
	var sum r3.Vec
	for i := 1; i+1 < len(c); i++ {
		u := r3.Sub(b.Vertices[c[i]], b.Vertices[c[0]])
		v := r3.Sub(b.Vertices[c[i+1]], b.Vertices[c[0]])
		sum = r3.Add(sum, r3.Scale(0.5, r3.Cross(u, v)))
	}
	return sum
}

// Normal returns a face's outward unit normal.
func (b *Body) Normal(face int) r3.Vec { return r3.Unit(b.areaVector(face)) }

// Centroid returns the centre of area of a face, in m.
func (b *Body) Centroid(face int) r3.Vec {
	c := b.corners(face)
	var sum r3.Vec
	total := 0.0
	for i := 1; i+1 < len(c); i++ {
		w := r3.Norm(r3.Cross(r3.Sub(c[i], c[0]), r3.Sub(c[i+1], c[0])))
		sum = r3.Add(sum, r3.Scale(w/3, r3.Add(c[0], r3.Add(c[i], c[i+1]))))
		total += w
	}
	return r3.Scale(1/total, sum)
}

// Margin returns the distance in m from a point in a face's plane to the
// nearest edge of that face; negative outside of the face.
func (b *Body) Margin(face int, at r3.Vec) float64 {
	normal, c := b.Normal(face), b.corners(face)
	least := math.Inf(1)
	for i, p := range c {
		q := c[(i+1)%len(c)]
		inward := r3.Unit(r3.Cross(normal, r3.Sub(q, p)))
		least = min(least, r3.Dot(inward, r3.Sub(at, p)))
	}
	return least
}

// InscribedRadius returns the radius in m of the largest circle round a face's
// centroid that stays inside the face.
func (b *Body) InscribedRadius(face int) float64 { return b.Margin(face, b.Centroid(face)) }

// Area returns the surface in m2, a cut's base included.
func (b *Body) Area() float64 {
	if b.IsBall() {
		if !b.IsCut {
			return 4 * math.Pi * b.Radius * b.Radius
		}
		h := b.Radius - b.Cut
		return 2*math.Pi*b.Radius*h + math.Pi*(b.Radius*b.Radius-b.Cut*b.Cut)
	}
	sum := 0.0
	for f := range b.Faces {
		sum += r3.Norm(b.areaVector(f))
	}
	return sum
}

// Volume returns the volume in m3.
func (b *Body) Volume() float64 {
	if b.IsBall() {
		if !b.IsCut {
			return 4 * math.Pi / 3 * math.Pow(b.Radius, 3)
		}
		h := b.Radius - b.Cut
		return math.Pi * h * h * (3*b.Radius - h) / 3
	}
	sum := 0.0
	for f, face := range b.Faces {
		sum += r3.Dot(b.Vertices[face.Corners[0]], b.areaVector(f)) / 3
	}
	return sum
}

// Dihedral returns the angle inside the body between an edge's faces, in rad.
func (b *Body) Dihedral(e Edge) float64 {
	p, q := b.Normal(e.Faces[0]), b.Normal(e.Faces[1])
	return math.Pi - math.Atan2(r3.Norm(r3.Cross(p, q)), r3.Dot(p, q))
}

// Contains tells whether a point in m is inside the body or on it.
func (b *Body) Contains(p r3.Vec) bool {
	if b.IsCut && p.Z < b.Cut {
		return false
	}
	if r3.Norm(p) > b.Radius {
		return false
	}
	for _, face := range b.Faces {
		c := face.Corners
		u := r3.Sub(b.Vertices[c[1]], b.Vertices[c[0]])
		v := r3.Sub(b.Vertices[c[2]], b.Vertices[c[0]])
		if r3.Dot(r3.Cross(u, v), r3.Sub(p, b.Vertices[c[0]])) > 1e-12*b.Radius*b.Radius*b.Radius {
			return false
		}
	}
	return true
}

// Lowest returns the height of the body's lowest point, in m.
func (b *Body) Lowest() float64 {
	if b.IsBall() {
		if b.IsCut {
			return b.Cut
		}
		return -b.Radius
	}
	low := math.Inf(1)
	for _, v := range b.Vertices {
		low = min(low, v.Z)
	}
	return low
}
