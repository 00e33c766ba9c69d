package body

import (
	"fmt"
	"slices"
	"strings"

	"pappus/layout/prose"

	"gonum.org/v1/gonum/spatial/r3"
)

// shallow is the distance of a face's plane from the centre, over the radius,
// under which a body has no dual: its pole would be too far out.
const shallow = 1e-3

// Dual returns the polar reciprocal of a body about its centre: a corner for
// each face, on the face's normal and the farther out the nearer the face is,
// and a face for each corner, square to its direction (Coxeter, Regular
// Polytopes, 8.1; Cundy and Rollett, Mathematical Models, 3.8). So its faces
// are flat, and the dual of the dual has the shape of the body. The dual of a
// geodesic has faces of six sides, and of five, four or three round the corners
// of its base. Faces that lie in one plane give one corner.
//
// The dual's farthest corner is Radius from the centre, as the body's is. That
// of a ball is a ball. Errors wrap ErrNoDual: a cut ball has none, nor has a
// body whose centre is not inside by at least a thousandth of its radius.
func Dual(b *Body) (*Body, error) {
	name, doubled := strings.CutPrefix(b.Name, "dual of ")
	if !doubled {
		name = "dual of " + b.Name
	}
	if b.IsBall() && !b.IsCut {
		ball := Ball(b.Radius)
		ball.Name = name
		return ball, nil
	}
	poles, err := poles(b)
	if err != nil {
		return nil, err
	}
	points, place := weld(poles, tolerance*farthest(poles))
	var faces []Face
	for _, ring := range b.rings() {
		for i, face := range ring {
			ring[i] = place[face]
		}
		ring = slices.Compact(ring)
		if len(ring) > 1 && ring[0] == ring[len(ring)-1] {
			ring = ring[1:]
		}
		if len(ring) > 2 { // else the corner was in the middle of a flat face or edge
			faces = append(faces, Face{Corners: ring})
		}
	}
	return fitted(name, points, faces, b.Radius), nil
}

// poles returns the corners of the dual about the unit sphere of a body whose
// radius is 1.
func poles(b *Body) ([]r3.Vec, error) {
	if b.IsBall() {
		return nil, fmt.Errorf("%w: %s is cut", ErrNoDual, b.Name)
	}
	out := make([]r3.Vec, len(b.Faces))
	for f, face := range b.Faces {
		normal := b.Normal(f)
		height := r3.Dot(normal, b.Vertices[face.Corners[0]]) / b.Radius
		if !(height >= shallow) {
			return nil, prose.Errorf("%w: face %d of %s is %.3g m from it", ErrNoDual, f, b.Name, height*b.Radius)
		}
		out[f] = r3.Scale(1/height, normal)
	}
	return out, nil
}

// rings returns the faces round each vertex, counter-clockwise seen from
// outside.
func (b *Body) rings() [][]int {
	type side struct{ face, before int } // before: the corner before the edge's first
	sides := make(map[[2]int]side)
	leaving := make([][2]int, len(b.Vertices)) // an edge out of each vertex
	for f, face := range b.Faces {
		n := len(face.Corners)
		for i, p := range face.Corners {
			e := [2]int{p, face.Corners[(i+1)%n]}
			sides[e] = side{f, face.Corners[(i+n-1)%n]}
			leaving[p] = e
		}
	}
	out := make([][]int, len(b.Vertices))
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

// farthest returns the greatest distance of a point from the origin.
func farthest(points []r3.Vec) float64 {
	most := 0.0
	for _, p := range points {
		most = max(most, r3.Norm(p))
	}
	return most
}

// fitted returns a body whose farthest corner is at a radius in m, from corners
// in any scale.
func fitted(name string, points []r3.Vec, faces []Face, radius float64) *Body {
	scaled, down := make([]r3.Vec, len(points)), 1/farthest(points)
	for i, p := range points {
		scaled[i] = r3.Scale(down, p)
	}
	return settle(&Body{Name: name, Radius: radius, Vertices: scaled, Faces: faces})
}
