package poly

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// Plane returns the plane of a face.
func (s Solid) Plane(face int) Plane {
	n := s.Normal(face)
	return Plane{n, r3.Dot(n, s.Vertices[s.Faces[face].Corners[0]])}
}

// Normal returns a face's outward unit normal.
func (s Solid) Normal(face int) r3.Vec { return r3.Unit(s.AreaVector(face)) }

// AreaVector returns a face's area in m2 along its outward normal.
func (s Solid) AreaVector(face int) r3.Vec {
	c := s.Faces[face].Corners
	first := s.Vertices[c[0]]
	last := r3.Sub(s.Vertices[c[1]], first)
	var twice r3.Vec
	for _, v := range c[2:] {
		next := r3.Sub(s.Vertices[v], first)
		twice = r3.Add(twice, r3.Cross(last, next))
		last = next
	}
	return r3.Scale(0.5, twice)
}

// Centroid returns the centre of area of a face, in m.
func (s Solid) Centroid(face int) r3.Vec {
	c := s.Faces[face].Corners
	var sum r3.Vec
	total := 0.0
	for i := 2; i < len(c); i++ {
		t := r3.Triangle{s.Vertices[c[0]], s.Vertices[c[i-1]], s.Vertices[c[i]]}
		twice := r3.Norm(t.Normal())
		sum = r3.Add(sum, r3.Scale(twice, t.Centroid()))
		total += twice
	}
	return r3.Scale(1/total, sum)
}

// Margin returns the distance in m from a point in a face's plane to the nearest line that
// carries an edge of that face; negative outside of the face. The largest circle round the
// point that stays inside the face has this radius.
func (s Solid) Margin(face int, at r3.Vec) float64 {
	normal, c := s.Normal(face), s.Faces[face].Corners
	least := math.Inf(1)
	for i := range c {
		p, q := s.Vertices[c[i]], s.Vertices[c[(i+1)%len(c)]]
		inward := r3.Unit(r3.Cross(normal, r3.Sub(q, p)))
		least = min(least, r3.Dot(inward, r3.Sub(at, p)))
	}
	return least
}

// InscribedRadius returns the radius in m of the largest circle round a face's centroid that
// stays inside the face.
func (s Solid) InscribedRadius(face int) float64 { return s.Margin(face, s.Centroid(face)) }

// Volume returns the volume in m3.
func (s Solid) Volume() float64 {
	sum := 0.0
	for f, face := range s.Faces {
		sum += r3.Dot(r3.Sub(s.Vertices[face.Corners[0]], s.Vertices[0]), s.AreaVector(f)) / 3
	}
	return sum
}

// VolumeCentroid returns the middle in m of what the surface encloses, each part as heavy as
// it is large.
func (s Solid) VolumeCentroid() r3.Vec {
	var moment r3.Vec
	whole := 0.0
	for _, face := range s.Faces { // tetrahedra from the origin to a fan of each face
		p := s.Vertices[face.Corners[0]]
		for i := 2; i < len(face.Corners); i++ {
			q, r := s.Vertices[face.Corners[i-1]], s.Vertices[face.Corners[i]]
			volume := r3.Dot(p, r3.Cross(q, r)) / 6
			whole += volume
			moment = r3.Add(moment, r3.Scale(volume/4, r3.Add(p, r3.Add(q, r))))
		}
	}
	return r3.Scale(1/whole, moment)
}

// Area returns the area in m2 of the faces that pass; nil passes all.
func (s Solid) Area(pass func(Face) bool) float64 {
	sum := 0.0
	for f, face := range s.Faces {
		if pass == nil || pass(face) {
			sum += r3.Norm(s.AreaVector(f))
		}
	}
	return sum
}

// Times returns the solid with every length times a factor.
func (s Solid) Times(factor float64) Solid {
	out := Solid{make([]r3.Vec, len(s.Vertices)), s.Faces}
	for i, v := range s.Vertices {
		out.Vertices[i] = r3.Scale(factor, v)
	}
	return out
}

// Span returns the least and the greatest height of points.
func Span(points []r3.Vec) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, p := range points {
		low, high = min(low, p.Z), max(high, p.Z)
	}
	return low, high
}

// Farthest returns the greatest distance of a point from the origin, in m.
func Farthest(points []r3.Vec) float64 {
	most := 0.0
	for _, p := range points {
		most = max(most, r3.Norm(p))
	}
	return most
}

// Edge is where two faces meet. Its vertices are A < B; the first of its faces runs from A to
// B, the second from B to A.
type Edge struct {
	A, B  int
	Faces [2]int
}

// Edges returns the edges in the order of their middles, as [Order] has it.
func (s Solid) Edges() []Edge {
	edges := s.pair()
	middles := make([]r3.Vec, len(edges))
	for i, e := range edges {
		middles[i] = r3.Scale(0.5, r3.Add(s.Vertices[e.A], s.Vertices[e.B]))
	}
	out := make([]Edge, len(edges))
	for i, at := range Order(middles) {
		out[i] = edges[at]
	}
	return out
}

// pair finds the edges by their two faces.
func (s Solid) pair() []Edge {
	index := make(map[[2]int]int)
	var edges []Edge
	for f, face := range s.Faces {
		for i, p := range face.Corners {
			q, side := face.Corners[(i+1)%len(face.Corners)], 0
			if p > q {
				p, q, side = q, p, 1
			}
			at, ok := index[[2]int{p, q}]
			if !ok {
				at = len(edges)
				index[[2]int{p, q}] = at
				edges = append(edges, Edge{A: p, B: q})
			}
			edges[at].Faces[side] = f
		}
	}
	return edges
}

// Dihedral returns the angle inside the solid between an edge's faces, in rad, above 0 and up
// to pi.
func (s Solid) Dihedral(e Edge) float64 {
	p, q := s.Normal(e.Faces[0]), s.Normal(e.Faces[1])
	return math.Pi - math.Atan2(r3.Norm(r3.Cross(p, q)), r3.Dot(p, q))
}

// Rings returns the faces round each vertex, counter-clockwise seen from outside.
func (s Solid) Rings() [][]int {
	type side struct{ face, before int } // before: the corner before the edge's first
	sides := make(map[[2]int]side)
	leaving := make([][2]int, len(s.Vertices)) // an edge out of each vertex
	for f, face := range s.Faces {
		n := len(face.Corners)
		for i, p := range face.Corners {
			e := [2]int{p, face.Corners[(i+1)%n]}
			sides[e] = side{f, face.Corners[(i+n-1)%n]}
			leaving[p] = e
		}
	}
	out := make([][]int, len(s.Vertices))
	for v, first := range leaving {
		for e := first; ; {
			s := sides[e]
			out[v] = append(out[v], s.face)
			if e = [2]int{v, s.before}; e == first {
				break
			}
		}
	}
	return out
}
