package body

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// CutAt returns the part of the body above the plane at a height in m, closed
// by a flat base. A plane at or below the lowest point leaves the body whole. A
// plane that leaves nothing gives ErrNothingLeft. Radius and BallRadius stay
// those of the uncut body.
func (b *Body) CutAt(height float64) (*Body, error) {
	snap := 1e-9 * b.Radius // corners this near to the plane count as on it
	if height >= b.highest()-snap {
		return nil, fmt.Errorf("body: %w at %g mm", ErrNothingLeft, 1000*height)
	}
	cut := *b
	if height <= b.Lowest()+snap {
		return &cut, nil
	}
	cut.Cut, cut.IsCut = height, true
	if b.IsBall() {
		return &cut, nil
	}
	c := cutter{from: b, height: height, snap: snap, kept: make(map[int]int), crossed: make(map[[2]int]int)}
	for _, face := range b.Faces {
		c.clip(face)
	}
	c.close()
	cut.Vertices, cut.Faces = c.vertices, c.faces
	return &cut, nil
}

func (b *Body) highest() float64 {
	if b.IsBall() {
		return b.Radius
	}
	high := math.Inf(-1)
	for _, v := range b.Vertices {
		high = max(high, v.Z)
	}
	return high
}

// cutter gathers what is above a plane.
type cutter struct {
	from         *Body
	height, snap float64
	kept         map[int]int    // old vertex to new
	crossed      map[[2]int]int // old edge to the new vertex on it
	vertices     []r3.Vec
	faces        []Face
}

// side is 1 above the plane, 0 on it and -1 below.
func (c *cutter) side(v int) int {
	switch d := c.from.Vertices[v].Z - c.height; {
	case d > c.snap:
		return 1
	case d < -c.snap:
		return -1
	}
	return 0
}

// keep returns the new number of an old vertex, put exactly on the plane if it
// counts as on it.
func (c *cutter) keep(v int) int {
	if n, ok := c.kept[v]; ok {
		return n
	}
	at := c.from.Vertices[v]
	if c.side(v) == 0 {
		at.Z = c.height
	}
	c.kept[v] = len(c.vertices)
	c.vertices = append(c.vertices, at)
	return c.kept[v]
}

// cross returns the new vertex where the edge between two old ones meets the
// plane.
func (c *cutter) cross(p, q int) int {
	p, q = min(p, q), max(p, q)
	if n, ok := c.crossed[[2]int{p, q}]; ok {
		return n
	}
	a, b := c.from.Vertices[p], c.from.Vertices[q]
	at := r3.Add(a, r3.Scale((c.height-a.Z)/(b.Z-a.Z), r3.Sub(b, a)))
	at.Z = c.height
	c.crossed[[2]int{p, q}] = len(c.vertices)
	c.vertices = append(c.vertices, at)
	return len(c.vertices) - 1
}

// clip keeps the part of a face above the plane.
func (c *cutter) clip(face Face) {
	above := false
	for _, v := range face.Corners {
		above = above || c.side(v) > 0
	}
	if !above {
		return
	}
	var corners []int
	for i, p := range face.Corners {
		q := face.Corners[(i+1)%len(face.Corners)]
		if c.side(p) >= 0 {
			corners = append(corners, c.keep(p))
		}
		if c.side(p)*c.side(q) < 0 {
			corners = append(corners, c.cross(p, q))
		}
	}
	c.faces = append(c.faces, Face{Corners: corners, Base: face.Base})
}

// close adds the base: the loop of edges that only one face has, the other way
// round.
func (c *cutter) close() {
	next := make(map[int]int)
	for _, face := range c.faces {
		for i, p := range face.Corners {
			q := face.Corners[(i+1)%len(face.Corners)]
			if c.vertices[p].Z == c.height && c.vertices[q].Z == c.height {
				next[q] = p
			}
		}
	}
	start := -1
	for v := range c.vertices {
		if _, ok := next[v]; ok {
			start = v
			break
		}
	}
	loop := []int{start}
	for v := next[start]; v != start; v = next[v] {
		loop = append(loop, v)
	}
	c.faces = append(c.faces, Face{Corners: loop, Base: true})
}
