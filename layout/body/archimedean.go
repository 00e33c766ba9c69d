package body

import (
	"fmt"
	"math"

	"pappus/layout/prose"

	"gonum.org/v1/gonum/spatial/r3"
)

// uniform says how an Archimedean solid comes from a regular one.
type uniform struct {
	base string
	// off tells from which of the three mirrors of the base's symmetry the
	// corner stands off, all by the same distance: those opposite to a vertex,
	// an edge's middle and a face's middle. A snub solid has none true.
	off [3]bool
}

var uniforms = map[string]uniform{
	"truncated tetrahedron":       {"tetrahedron", [3]bool{true, true, false}},
	"cuboctahedron":               {"octahedron", [3]bool{false, true, false}},
	"truncated cube":              {"octahedron", [3]bool{false, true, true}},
	"truncated octahedron":        {"octahedron", [3]bool{true, true, false}},
	"rhombicuboctahedron":         {"octahedron", [3]bool{true, false, true}},
	"truncated cuboctahedron":     {"octahedron", [3]bool{true, true, true}},
	"snub cube":                   {"octahedron", [3]bool{}},
	"icosidodecahedron":           {"icosahedron", [3]bool{false, true, false}},
	"truncated dodecahedron":      {"icosahedron", [3]bool{false, true, true}},
	"truncated icosahedron":       {"icosahedron", [3]bool{true, true, false}},
	"rhombicosidodecahedron":      {"icosahedron", [3]bool{true, false, true}},
	"truncated icosidodecahedron": {"icosahedron", [3]bool{true, true, true}},
	"snub dodecahedron":           {"icosahedron", [3]bool{}},
}

// Archimedean returns a half-regular solid of a circumradius in m by its name
// (Cundy and Rollett, Mathematical Models, 3.7): truncated tetrahedron,
// cuboctahedron, truncated cube, truncated octahedron, rhombicuboctahedron,
// truncated cuboctahedron, snub cube, icosidodecahedron, truncated
// dodecahedron, truncated icosahedron, rhombicosidodecahedron, truncated
// icosidodecahedron, snub dodecahedron. The package comment says how each
// stands. Errors wrap ErrUnknownShape and ErrRadius.
//
// The corners come by Wythoff's construction (Coxeter, Regular Polytopes, 5.7):
// one corner among the mirrors of a regular solid, and all its images.
func Archimedean(name string, radius float64) (*Body, error) {
	if !usable(radius) {
		return nil, prose.Errorf("%w: %g m", ErrRadius, radius)
	}
	u, ok := uniforms[name]
	if !ok {
		return nil, fmt.Errorf("%w: %q", ErrUnknownShape, name)
	}
	points, _ := weld(u.corners(), tolerance)
	return settle(&Body{Name: name, Radius: radius, Vertices: points, Faces: hull(points)}), nil
}

// corners returns the corner of every flag of the base, those that meet in one
// point as often as they do, on the unit sphere.
func (u uniform) corners() []r3.Vec {
	base := &Body{Vertices: corners(u.base)}
	base.Faces = hull(base.Vertices)
	edges := base.pair()
	degree := float64(2*len(edges)) / float64(len(base.Vertices))
	var points []r3.Vec
	for _, e := range edges {
		a, b := base.Vertices[e.A], base.Vertices[e.B]
		middle := r3.Unit(r3.Add(a, b))
		left, right := base.Normal(e.Faces[0]), base.Normal(e.Faces[1])
		if u.off == [3]bool{} {
			// Turning maps these two onto every other flag of the same hand.
			points = append(points, snub(a, middle, left, degree, 3), snub(b, middle, right, degree, 3))
			continue
		}
		for _, v := range []r3.Vec{a, b} {
			points = append(points, u.corner(v, middle, left), u.corner(v, middle, right))
		}
	}
	return points
}

// corner returns the point that stands off its mirrors.
func (u uniform) corner(vertex, edge, face r3.Vec) r3.Vec {
	mirrors := [3]r3.Vec{
		r3.Unit(r3.Cross(edge, face)),
		r3.Unit(r3.Cross(face, vertex)),
		r3.Unit(r3.Cross(vertex, edge)),
	}
	hand := math.Copysign(1, r3.Dot(mirrors[0], vertex))
	var heights [3]float64
	for i, off := range u.off {
		if off {
			heights[i] = hand
		}
	}
	return r3.Unit(meeting(mirrors, heights))
}

// snub returns the point on the unit sphere that is as far from where turns
// about a vertex, an edge's middle and a face's middle take it, given how many
// turns about the vertex and the face make a whole one.
//
// A turn about an axis in n parts moves a point by 2 sin(pi/n) times its
// distance from the axis. For any one move there is one direction with the
// three heights along the axes that it asks for; the move is the right one
// where that direction has length 1, and is found by halving.
func snub(vertex, edge, face r3.Vec, vertexTurns, faceTurns float64) r3.Vec {
	axes := [3]r3.Vec{vertex, edge, face}
	var half [3]float64
	for i, turns := range [3]float64{vertexTurns, 2, faceTurns} {
		sin := math.Sin(math.Pi / turns)
		half[i] = 1 / (sin * sin)
	}
	at := func(move float64) r3.Vec {
		var heights [3]float64
		for i := range heights {
			heights[i] = math.Sqrt(max(0, 1-move*half[i]))
		}
		return meeting(axes, heights)
	}
	low, high := 0.0, 1/max(half[0], half[1], half[2])
	for {
		middle := low + (high-low)/2
		if middle <= low || middle >= high {
			return r3.Unit(at(middle))
		}
		if r3.Norm2(at(middle)) > 1 {
			low = middle
		} else {
			high = middle
		}
	}
}

// meeting returns the point where three planes meet, by their normals and
// heights over the origin.
func meeting(normals [3]r3.Vec, heights [3]float64) r3.Vec {
	var sum r3.Vec
	for i, h := range heights {
		sum = r3.Add(sum, r3.Scale(h, r3.Cross(normals[(i+1)%3], normals[(i+2)%3])))
	}
	return r3.Scale(1/r3.Dot(normals[0], r3.Cross(normals[1], normals[2])), sum)
}
