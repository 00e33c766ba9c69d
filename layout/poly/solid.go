package poly

import (
	"errors"
	"fmt"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"
)

// Solid is a convex polyhedron; it has no faces where it is empty. It is not changed once it
// is made: what is cut from it is another one, which may share its slices.
type Solid struct {
	Vertices []r3.Vec
	Faces    []Face
}

// Face is one flat face of a solid.
type Face struct {
	Corners []int // counter-clockwise seen from outside, as indices of vertices
	Cut     int   // the number of the cut that left it; 0: none did
}

// Base tells whether a cut left the face.
func (f Face) Base() bool { return f.Cut != 0 }

var errTangled = errors.New("its planes meet too closely to tell which comes first")

// Box returns a cube round the origin with so much on each side of it.
func Box(half float64) Solid {
	var s Solid
	for i := range 8 {
		at := r3.Vec{X: -half, Y: -half, Z: -half}
		if i&1 != 0 {
			at.X = half
		}
		if i&2 != 0 {
			at.Y = half
		}
		if i&4 != 0 {
			at.Z = half
		}
		s.Vertices = append(s.Vertices, at)
	}
	for _, c := range [6][]int{{0, 2, 3, 1}, {4, 5, 7, 6}, {0, 1, 5, 4}, {2, 6, 7, 3}, {0, 4, 6, 2}, {1, 3, 7, 5}} {
		s.Faces = append(s.Faces, Face{Corners: c})
	}
	return s
}

// Meet returns what half-spaces have in common, each face with the number of its plane, from
// 1. They must bound what is left of each other within 4 radii of the origin. Points within
// slack of a plane count as on it.
func Meet(planes []Plane, radius, slack float64) (Solid, error) {
	s, err := Box(4*radius).Within(1, slack, planes...)
	if err == nil && slices.ContainsFunc(s.Faces, func(f Face) bool { return f.Cut == 0 }) {
		return Solid{}, errTangled
	}
	return s, err
}

// Within returns what is left in half-spaces, one cut after the other and each closed by a
// face; those bear a number and the ones after it. Vertices within slack of a plane count as on
// it, and stay where they are. What is left keeps its order; new vertices come after the old
// ones, and new faces too.
func (s Solid) Within(number int, slack float64, planes ...Plane) (Solid, error) {
	left := Solid{slices.Clip(s.Vertices), slices.Clone(s.Faces)}
	for i, p := range planes {
		var err error
		if left, err = left.cut(p, number+i, slack); err != nil || len(left.Faces) == 0 {
			return Solid{}, err
		}
		// A corner where three faces meet is the rule: twice as many as faces.
		if len(left.Vertices) > 64+4*len(left.Faces) {
			left = left.compact()
		}
	}
	return left.compact(), nil
}

// cut makes one cut in place; vertices that no face has any more stay.
func (s Solid) cut(p Plane, number int, slack float64) (Solid, error) {
	c := cutter{plane: p, vertices: s.Vertices, side: make([]int8, len(s.Vertices))}
	most, least := int8(-1), int8(1)
	for i, v := range s.Vertices {
		switch above := p.Above(v); {
		case above < -slack:
			c.side[i] = 1
		case above > slack:
			c.side[i] = -1
		}
	}
	for _, f := range s.Faces {
		for _, v := range f.Corners {
			most, least = max(most, c.side[v]), min(least, c.side[v])
		}
	}
	switch {
	case least >= 0:
		return s, nil
	case most <= 0:
		return Solid{}, nil
	}
	c.crossed, c.border = make(map[[2]int]int), make(map[[2]int]bool)
	out := s.Faces[:0]
	for _, f := range s.Faces {
		if kept := c.clip(f.Corners); kept != nil {
			out = append(out, Face{kept, f.Cut})
		}
	}
	lid, err := c.lid()
	if err != nil {
		return Solid{}, err
	}
	return Solid{c.vertices, append(out, Face{lid, number})}, nil
}

// cutter gathers what is left of a solid in a half-space.
type cutter struct {
	plane    Plane
	vertices []r3.Vec
	side     []int8          // of each old vertex: 1 inside, 0 on the plane, -1 outside
	crossed  map[[2]int]int  // edge to the vertex where it meets the plane
	border   map[[2]int]bool // edges on the plane that one face has
}

// clip returns what is left of a face, nil for nothing, and notes its edges on the plane.
func (c *cutter) clip(face []int) []int {
	inside := 0
	for _, v := range face {
		if c.side[v] > 0 {
			inside++
		}
	}
	switch inside {
	case 0:
		return nil
	case len(face):
		return face
	}
	kept := make([]int, 0, len(face)+1)
	for i, v := range face {
		w := face[(i+1)%len(face)]
		if c.side[v] >= 0 {
			kept = append(kept, v)
		}
		if c.side[v]*c.side[w] < 0 {
			kept = append(kept, c.cross(min(v, w), max(v, w)))
		}
	}
	on := func(v int) bool { return v >= len(c.side) || c.side[v] == 0 }
	for i, v := range kept {
		w := kept[(i+1)%len(kept)]
		if !on(v) || !on(w) {
			continue
		}
		if c.border[[2]int{w, v}] { // a sliver has the edge the other way round
			delete(c.border, [2]int{w, v})
		} else {
			c.border[[2]int{v, w}] = true
		}
	}
	return kept
}

// cross returns the vertex where an edge meets the plane.
func (c *cutter) cross(a, b int) int {
	v, ok := c.crossed[[2]int{a, b}]
	if !ok {
		v = len(c.vertices)
		c.crossed[[2]int{a, b}] = v
		c.vertices = append(c.vertices, c.plane.between(c.vertices[a], c.vertices[b]))
	}
	return v
}

// lid returns the new face, from its first vertex on: the border turned round.
func (c *cutter) lid() ([]int, error) {
	first, next := len(c.vertices), make(map[int]int, len(c.border))
	for e := range c.border {
		next[e[1]] = e[0]
		first = min(first, e[1])
	}
	loop := []int{first}
	v, ok := next[first]
	for ; ok && v != first && len(loop) < len(next); v, ok = next[v] {
		loop = append(loop, v)
	}
	if v != first || len(loop) < 3 || len(loop) != len(c.border) {
		return nil, fmt.Errorf("%w: %d edges, %d in a loop", errTangled, len(c.border), len(loop))
	}
	return loop, nil
}

// compact leaves out the vertices that no face has.
func (s Solid) compact() Solid {
	place, corners := make([]int, len(s.Vertices)), 0
	for _, f := range s.Faces {
		corners += len(f.Corners)
		for _, v := range f.Corners {
			place[v] = 1
		}
	}
	out := Solid{nil, make([]Face, len(s.Faces))}
	for v, used := range place {
		if used > 0 {
			place[v] = len(out.Vertices)
			out.Vertices = append(out.Vertices, s.Vertices[v])
		}
	}
	room := make([]int, 0, corners)
	for i, f := range s.Faces {
		from := len(room)
		for _, v := range f.Corners {
			room = append(room, place[v])
		}
		out.Faces[i] = Face{room[from:len(room):len(room)], f.Cut}
	}
	return out
}
