package layout

import (
	"math"

	"pappus/layout/body"
	"pappus/layout/spread"

	"gonum.org/v1/gonum/spatial/r3"
)

// seed begins the search for even places. Any would do; one that stays the same
// keeps a design the same.
const seed = 1

// onFaces puts a mount on the centre of each face.
func onFaces(b *body.Body) []Mount {
	m := make([]Mount, len(b.Faces))
	for i := range m {
		m[i] = Mount{Point: b.Centroid(i), Normal: b.Normal(i), Face: i}
	}
	return m
}

// onVertices puts a mount on each corner, looking straight away from the centre.
func onVertices(b *body.Body) []Mount {
	m := make([]Mount, len(b.Vertices))
	for i, v := range b.Vertices {
		m[i] = Mount{Point: v, Normal: r3.Unit(v), Face: -1}
	}
	return m
}

// onEdges puts a mount on the middle of each edge, looking halfway between the
// two faces that meet there.
func onEdges(b *body.Body) []Mount {
	edges := b.Edges()
	m := make([]Mount, len(edges))
	for i, e := range edges {
		m[i] = Mount{
			Point:  r3.Scale(0.5, r3.Add(b.Vertices[e.A], b.Vertices[e.B])),
			Normal: r3.Unit(r3.Add(b.Normal(e.Faces[0]), b.Normal(e.Faces[1]))),
			Face:   -1,
		}
	}
	return m
}

// evenly spreads n mounts over a ball as evenly as can be, and on a body with
// faces moves each along its direction from the centre to the face there.
func evenly(b *body.Body, n int) ([]Mount, error) {
	points, _, err := spread.Even(n, seed)
	if err != nil {
		return nil, err
	}
	planes := facePlanes(b)
	m := make([]Mount, n)
	for i, p := range points {
		m[i] = Mount{Point: r3.Scale(b.Radius, p), Normal: p, Face: -1}
		if face, distance := planes.along(p); face >= 0 {
			m[i] = Mount{Point: r3.Scale(distance, p), Normal: planes[face].normal, Face: face}
		}
	}
	return m, nil
}

// plane is a face's: the points p with p.normal = distance.
type plane struct {
	normal   r3.Vec
	distance float64 // m from the body's centre
}

type planes []plane

func facePlanes(b *body.Body) planes {
	ps := make(planes, len(b.Faces))
	for i := range ps {
		n := b.Normal(i)
		ps[i] = plane{n, r3.Dot(n, b.Vertices[b.Faces[i].Corners[0]])}
	}
	return ps
}

// along gives the face that a ray from the centre leaves the body by, and how
// far away; -1 where there are no faces.
func (ps planes) along(direction r3.Vec) (face int, distance float64) {
	face, distance = -1, math.Inf(1)
	for i, p := range ps {
		if c := r3.Dot(p.normal, direction); c > 0 && p.distance/c < distance {
			face, distance = i, p.distance/c
		}
	}
	return face, distance
}

// outside gives how far a point is outside the body, in m, and the face that
// says so; negative inside. Beyond a corner it is less than the distance.
func (ps planes) outside(p r3.Vec) (face int, distance float64) {
	face, distance = -1, math.Inf(-1)
	for i, q := range ps {
		if d := r3.Dot(q.normal, p) - q.distance; d > distance {
			face, distance = i, d
		}
	}
	return face, distance
}
