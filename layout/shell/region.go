package shell

import (
	"slices"

	"pappus/layout/body"
	"pappus/layout/poly"

	"gonum.org/v1/gonum/spatial/r3"
)

// Region is a convex share of a shell that belongs to one segment: all of it where seams are
// flat, one cell of it where they go in steps.
type Region struct {
	Segment int // index
	Sides   []poly.Plane
}

// Regions returns all shares.
func (p Plan) Regions() (out []Region) {
	for i, s := range p.Segments {
		if len(p.Cells) == 0 {
			out = append(out, Region{i, p.planes(s)})
		}
		for _, c := range s.Cells {
			r := Region{Segment: i}
			for _, side := range p.Cells[c].Sides {
				r.Sides = append(r.Sides, poly.Plane{Normal: side.Normal})
			}
			out = append(out, r)
		}
	}
	return out
}

// Planes returns those that bound the outside of a shell, a base left out: the faces, or the
// seats and the facets of a ball.
func Planes(b *body.Body, holes []Hole) (out []poly.Plane, err error) {
	if !b.IsBall() {
		for f, face := range b.Faces {
			if !face.Base() {
				out = append(out, b.Plane(f))
			}
		}
		return out, nil
	}
	for _, h := range holes {
		p, err := seat(b, h)
		if err != nil {
			return nil, err
		}
		out = append(out, p)
	}
	even, err := body.Geodesic("icosahedron", facets, 1)
	if err != nil {
		return nil, err
	}
	for _, n := range even.Vertices {
		out = append(out, poly.Plane{Normal: r3.Unit(n), Offset: b.Radius})
	}
	return slices.Clip(out), nil
}
