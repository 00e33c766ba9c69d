package body

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"pappus/layout/poly"
	"pappus/layout/prose"
	"pappus/layout/solve"

	"gonum.org/v1/gonum/spatial/r3"
)

// Platonic returns a regular solid of a circumradius in m, by its name:
// tetrahedron, cube, octahedron, dodecahedron or icosahedron. The package
// comment says how each stands. The error for another name wraps ErrUnknownShape.
func Platonic(name string, radius float64) (*Body, error) {
	return onSphere(name, radius, corners(name))
}

// Archimedean returns a half-regular solid of a circumradius in m by its name
// (Cundy and Rollett, Mathematical Models, 3.7), a key of uniforms. The package
// comment says how each stands. The error for another name wraps ErrUnknownShape.
//
// The corners come by Wythoff's construction (Coxeter, Regular Polytopes, 5.7):
// one corner among the mirrors of a regular solid, and all its images.
func Archimedean(name string, radius float64) (*Body, error) {
	var points []r3.Vec
	if u, ok := uniforms[name]; ok {
		points, _ = poly.Welded(u.corners(), poly.Alike)
	}
	return onSphere(name, radius, points)
}

// onSphere returns the body whose corners are points on the unit sphere; there is none without.
func onSphere(name string, radius float64, points []r3.Vec) (*Body, error) {
	if err := checkRadius(radius); err != nil {
		return nil, err
	}
	if points == nil {
		return nil, unknown(name)
	}
	return settle(&Body{Name: name, Radius: radius, Solid: poly.Solid{Vertices: points, Faces: poly.Hull(points)}}), nil
}

// corners returns the vertices of a regular solid on the unit sphere, nil for
// an unknown name.
func corners(name string) []r3.Vec {
	top, bottom := r3.Vec{Z: 1}, r3.Vec{Z: -1}
	switch name {
	case "tetrahedron":
		return slices.Concat([]r3.Vec{top}, ring(3, -1.0/3, 0))
	case "octahedron":
		return slices.Concat([]r3.Vec{top}, ring(4, 0, 0), []r3.Vec{bottom})
	case "cube":
		z := 1 / math.Sqrt(3)
		return slices.Concat(ring(4, z, math.Pi/4), ring(4, -z, math.Pi/4))
	case "icosahedron":
		z := 1 / math.Sqrt(5)
		return slices.Concat([]r3.Vec{top}, ring(5, z, 0), ring(5, -z, math.Pi/5), []r3.Vec{bottom})
	case "dodecahedron":
		// The heights of an icosahedron's face centres, pushed out to the sphere.
		high, low := math.Sqrt((5+2*math.Sqrt(5))/15), math.Sqrt((5-2*math.Sqrt(5))/15)
		return slices.Concat(ring(5, high, math.Pi/5), ring(5, low, math.Pi/5), ring(5, -low, 0), ring(5, -high, 0))
	}
	return nil
}

// ring returns count points evenly round the axis on the unit sphere, at a
// height, the first at an azimuth in rad.
func ring(count int, height, azimuth float64) []r3.Vec {
	return circle(count, math.Sqrt(1-height*height), height, azimuth)
}

// circle is ring for a radius.
func circle(count int, radius, height, azimuth float64) []r3.Vec {
	out := make([]r3.Vec, count)
	for i := range out {
		sin, cos := math.Sincos(azimuth + 2*math.Pi*float64(i)/float64(count))
		out[i] = r3.Vec{X: radius * cos, Y: radius * sin, Z: height}
	}
	return out
}

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

// corners returns the corner of every flag of the base, those that meet in one
// point as often as they do, on the unit sphere.
func (u uniform) corners() []r3.Vec {
	base := poly.Solid{Vertices: corners(u.base)}
	base.Faces = poly.Hull(base.Vertices)
	edges := base.Edges()
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
// where that direction has length 1.
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
	// Beyond half of the greatest move that has a direction at all there are others of length 1.
	most := 0.5 / max(half[0], half[1], half[2])
	move, _ := solve.Root(func(move float64) float64 { return r3.Norm2(at(move)) - 1 }, 0, most, 0)
	return r3.Unit(at(move))
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

// MostSides is the greatest number of sides that Prism and Antiprism make.
const MostSides = 256

// Prism returns a right prism: two regular ends of so many sides, level, their
// corners radius m from the axis, height m apart, and upright rectangles
// between them. A height of 0 makes the rectangles square, so that all edges
// are equal. One side faces x. Body.Radius is the distance of a corner from the
// centre, halfway up the axis.
func Prism(sides int, radius, height float64) (*Body, error) {
	half := math.Pi / float64(sides)
	if height == 0 {
		height = 2 * radius * math.Sin(half)
	}
	return drum("prism", sides, radius, height, half, func(i, next int) []poly.Face {
		return []poly.Face{{Corners: []int{i, sides + i, sides + next, next}}}
	})
}

// Antiprism returns a right antiprism: as [Prism] has them, two regular ends,
// one turned by half a side, and upright triangles between them. A height of 0
// makes the triangles equilateral, so that all edges are equal. One corner of
// the upper end is at azimuth 0.
func Antiprism(sides int, radius, height float64) (*Body, error) {
	half := math.Pi / float64(sides)
	if height == 0 {
		height = 2 * radius * math.Sqrt(math.Pow(math.Sin(half), 2)-math.Pow(math.Sin(half/2), 2))
	}
	return drum("antiprism", sides, radius, height, 0, func(i, next int) []poly.Face {
		return []poly.Face{{Corners: []int{i, sides + i, next}}, {Corners: []int{sides + i, sides + next, next}}}
	})
}

// drum returns a body from two ends and the faces between a corner and the next of both: the
// upper end, whose azimuth in rad is given, has the first corners, the lower one, from half a
// side, the others.
func drum(name string, sides int, radius, height, azimuth float64, between func(i, next int) []poly.Face) (*Body, error) {
	if sides < 3 || sides > MostSides {
		return nil, fmt.Errorf("sides must be from 3 to 256, not %d", sides)
	}
	if err := checkRadius(radius); err != nil {
		return nil, err
	}
	if !(height >= radius/100 && height <= radius*100) {
		return nil, prose.Errorf("height must be 0, for equal edges, or from a hundredth to a hundred times the radius: height %g m, radius %g m", height, radius)
	}
	var s poly.Solid
	s.Vertices = slices.Concat(circle(sides, radius, height/2, azimuth), circle(sides, radius, -height/2, math.Pi/float64(sides)))
	top, bottom := make([]int, sides), make([]int, sides)
	for i := range sides {
		s.Faces = append(s.Faces, between(i, (i+1)%sides)...)
		top[i], bottom[sides-1-i] = i, sides+i
	}
	s.Faces = append(s.Faces, poly.Face{Corners: top}, poly.Face{Corners: bottom})
	return fitted(fmt.Sprintf("%s %d", name, sides), s, math.Hypot(radius, height/2)), nil
}

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
// of a ball is a ball. A cut ball has none, nor has a body whose centre is not
// inside by at least a thousandth of its radius.
func Dual(b *Body) (*Body, error) {
	name, doubled := strings.CutPrefix(b.Name, "dual of ")
	if !doubled {
		name = "dual of " + b.Name
	}
	if b.IsBall() {
		if b.IsCut {
			return nil, fmt.Errorf("the centre is not well inside, so there is no dual: %s is cut", b.Name)
		}
		ball := Ball(b.Radius)
		ball.Name = name
		return ball, nil
	}
	poles := make([]r3.Vec, len(b.Faces))
	for f := range b.Faces {
		plane := b.Plane(f)
		if height := plane.Offset / b.Radius; height >= shallow {
			poles[f] = r3.Scale(1/height, plane.Normal)
		} else {
			return nil, prose.Errorf("the centre is not well inside, so there is no dual: face %d of %s is %.3g m from it", f, b.Name, plane.Offset)
		}
	}
	var s poly.Solid
	var place []int
	s.Vertices, place = poly.Welded(poles, poly.Alike*poly.Farthest(poles))
	for _, ring := range b.Rings() {
		for i, face := range ring {
			ring[i] = place[face]
		}
		ring = slices.Compact(ring)
		if len(ring) > 1 && ring[0] == ring[len(ring)-1] {
			ring = ring[1:]
		}
		if len(ring) > 2 { // else the corner was in the middle of a flat face or edge
			s.Faces = append(s.Faces, poly.Face{Corners: ring})
		}
	}
	return fitted(name, s, b.Radius), nil
}
