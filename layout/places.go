package layout

import (
	"math"

	"pappus/layout/body"

	"gonum.org/v1/gonum/spatial/r3"
)

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

// plane is a face's: the points p with p.normal = distance. The sides are the
// inward normals of the planes through the centre and each edge.
type plane struct {
	normal   r3.Vec
	distance float64 // m from the body's centre
	sides    []r3.Vec
}

type planes []plane

func facePlanes(b *body.Body) planes {
	ps := make(planes, len(b.Faces))
	for i, f := range b.Faces {
		n := b.Normal(i)
		ps[i] = plane{n, r3.Dot(n, b.Vertices[f.Corners[0]]), make([]r3.Vec, len(f.Corners))}
		for j, c := range f.Corners {
			next := f.Corners[(j+1)%len(f.Corners)]
			ps[i].sides[j] = r3.Unit(r3.Cross(b.Vertices[c], b.Vertices[next]))
		}
	}
	return ps
}

// towards gives the face that a ray from the centre leaves a whole body by. It
// goes by the edges, which settles rays through an edge the same way each time.
func (ps planes) towards(direction r3.Vec) int {
	best, most := -1, math.Inf(-1)
	for i, p := range ps {
		if r3.Dot(p.normal, direction) <= 0 {
			continue
		}
		inside := math.Inf(1)
		for _, s := range p.sides {
			inside = min(inside, r3.Dot(s, direction))
		}
		if inside > most {
			best, most = i, inside
		}
	}
	return best
}
