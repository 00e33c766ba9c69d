package body

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// Edge is where two faces meet. Its vertices are A < B; the first of its faces
// runs from A to B, the second from B to A.
type Edge struct {
	A, B  int
	Faces [2]int
}

// Edges returns the edges in the order of their middles, as [Order] has it.
func (b *Body) Edges() []Edge {
	edges := b.pair()
	middles := make([]r3.Vec, len(edges))
	for i, e := range edges {
		middles[i] = r3.Scale(0.5, r3.Add(b.Vertices[e.A], b.Vertices[e.B]))
	}
	out := make([]Edge, len(edges))
	for i, at := range Order(middles) {
		out[i] = edges[at]
	}
	return out
}

// pair finds the edges by their two faces.
func (b *Body) pair() []Edge {
	index := make(map[[2]int]int)
	var edges []Edge
	for f, face := range b.Faces {
		for i, p := range face.Corners {
			q := face.Corners[(i+1)%len(face.Corners)]
			key, side := [2]int{p, q}, 0
			if p > q {
				key, side = [2]int{q, p}, 1
			}
			at, ok := index[key]
			if !ok {
				at = len(edges)
				index[key] = at
				edges = append(edges, Edge{A: key[0], B: key[1]})
			}
			edges[at].Faces[side] = f
		}
	}
	return edges
}

// Dihedral returns the angle inside the body between an edge's faces, in rad,
// above 0 and up to pi.
func (b *Body) Dihedral(e Edge) float64 {
	p, q := b.Normal(e.Faces[0]), b.Normal(e.Faces[1])
	return math.Pi - math.Atan2(r3.Norm(r3.Cross(p, q)), r3.Dot(p, q))
}
