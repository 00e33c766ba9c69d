package shell

import (
	"errors"
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// Plane bounds a half-space: the points p with Normal.p <= Offset, in m. The
// normal is a unit vector and points out of the half-space.
type Plane struct {
	Normal r3.Vec
	Offset float64
}

// above returns how far a point is out of the half-space, in m.
func (p Plane) above(v r3.Vec) float64 { return r3.Dot(p.Normal, v) - p.Offset }

// merge is the length over the radius within which a point counts as on a plane.
const merge = 1e-5

var errTangled = errors.New("its planes meet too closely to tell which comes first")

// solid is a convex polyhedron that is being cut by planes. Vertices that no
// face has any more stay in the list.
type solid struct {
	slack    float64 // m
	vertices []r3.Vec
	faces    [][]int // counter-clockwise from outside
	plane    []int   // of each face: the number of its plane, -1 for the box it began as
	side     []int8  // room for sides, kept between cuts
}

// meet returns what all half-spaces have in common; the body is within a radius
// of the origin.
func meet(planes []Plane, radius float64) (*solid, error) {
	s := box(4*radius, merge*radius)
	for i, p := range planes {
		if err := s.cut(p, i); err != nil {
			return nil, err
		}
	}
	for _, p := range s.plane {
		if p < 0 {
			return nil, errTangled
		}
	}
	return s, nil
}

// box returns a cube round the origin.
func box(half, slack float64) *solid {
	s := &solid{slack: slack, plane: []int{-1, -1, -1, -1, -1, -1}}
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
		s.vertices = append(s.vertices, at)
	}
	s.faces = [][]int{{0, 2, 3, 1}, {4, 5, 7, 6}, {0, 1, 5, 4}, {2, 6, 7, 3}, {0, 4, 6, 2}, {1, 3, 7, 5}}
	return s
}

// cut takes away what is out of a half-space; the new face bears a number.
func (s *solid) cut(p Plane, number int) error {
	side, outside := s.sides(p)
	if !outside {
		return nil
	}
	crossed := make(map[[2]int]int)
	border := make(map[[2]int]bool)
	faces, plane := s.faces[:0], s.plane[:0]
	for i, f := range s.faces {
		kept, whole := s.clip(f, side, p, crossed)
		if kept == nil {
			continue
		}
		if !whole {
			rim(kept, side, border)
		}
		faces, plane = append(faces, kept), append(plane, s.plane[i])
	}
	if len(faces) == 0 {
		return ErrNothingLeft
	}
	lid, err := loopOf(border)
	if err != nil {
		return err
	}
	s.faces, s.plane = append(faces, lid), append(plane, number)
	// A corner where three faces meet is the rule: twice as many as faces.
	if len(s.vertices) > 64+4*len(s.faces) {
		s.forget()
	}
	return nil
}

// forget leaves out the vertices that no face has any more.
func (s *solid) forget() {
	at := make([]int, len(s.vertices))
	var left []r3.Vec
	for _, f := range s.faces {
		for i, v := range f {
			if at[v] == 0 {
				left = append(left, s.vertices[v])
				at[v] = len(left)
			}
			f[i] = at[v] - 1
		}
	}
	s.vertices = left
}

// sides tells of each vertex whether it is inside (1), on the plane (0) or
// outside (-1), and whether any of a face is outside.
func (s *solid) sides(p Plane) (side []int8, outside bool) {
	if cap(s.side) < len(s.vertices) {
		s.side = make([]int8, 2*len(s.vertices))
	}
	side = s.side[:len(s.vertices)]
	for i, v := range s.vertices {
		switch out := p.above(v); {
		case out < -s.slack:
			side[i] = 1
		case out > s.slack:
			side[i] = -1
		default:
			side[i] = 0
		}
	}
	for _, f := range s.faces {
		for _, v := range f {
			if side[v] < 0 {
				return side, true
			}
		}
	}
	return side, false
}

// clip returns what is left of a face, nil for nothing, and whether all its
// vertices were inside.
func (s *solid) clip(f []int, side []int8, p Plane, crossed map[[2]int]int) (kept []int, whole bool) {
	inside := 0
	for _, v := range f {
		if side[v] > 0 {
			inside++
		}
	}
	if inside == 0 {
		return nil, false
	}
	if inside == len(f) {
		return f, true
	}
	for i, v := range f {
		w := f[(i+1)%len(f)]
		if side[v] >= 0 {
			kept = append(kept, v)
		}
		if side[v]*side[w] < 0 {
			kept = append(kept, s.cross(min(v, w), max(v, w), p, crossed))
		}
	}
	return kept, false
}

// cross returns the vertex where an edge meets a plane.
func (s *solid) cross(a, b int, p Plane, crossed map[[2]int]int) int {
	if v, ok := crossed[[2]int{a, b}]; ok {
		return v
	}
	v := len(s.vertices)
	crossed[[2]int{a, b}] = v
	s.vertices = append(s.vertices, between(s.vertices[a], s.vertices[b], p))
	return v
}

// between returns where the line through two points meets a plane.
func between(a, b r3.Vec, p Plane) r3.Vec {
	ha, hb := p.above(a), p.above(b)
	return r3.Add(a, r3.Scale(ha/(ha-hb), r3.Sub(b, a)))
}

// rim notes the edges of a face on the plane that no other face has the other
// way round. New vertices are past the end of side.
func rim(f []int, side []int8, border map[[2]int]bool) {
	on := func(v int) bool { return v >= len(side) || side[v] == 0 }
	for i, v := range f {
		w := f[(i+1)%len(f)]
		if !on(v) || !on(w) {
			continue
		}
		if border[[2]int{w, v}] {
			delete(border, [2]int{w, v})
		} else {
			border[[2]int{v, w}] = true
		}
	}
}

// loopOf joins the edges of a border, turned round, to one loop.
func loopOf(border map[[2]int]bool) ([]int, error) {
	next := make(map[int]int, len(border))
	first := math.MaxInt
	for e := range border {
		if _, twice := next[e[1]]; twice {
			return nil, errTangled
		}
		next[e[1]] = e[0]
		first = min(first, e[1])
	}
	loop := make([]int, 0, len(border))
	for v, ok := first, true; ok && len(loop) < len(border); v, ok = next[v] {
		if len(loop) > 0 && v == first {
			break
		}
		loop = append(loop, v)
	}
	if len(loop) < 3 || len(loop) != len(border) {
		return nil, fmt.Errorf("%w: %d edges, %d in a loop", errTangled, len(border), len(loop))
	}
	return loop, nil
}
