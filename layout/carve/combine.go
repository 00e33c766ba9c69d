package carve

import (
	"errors"
	"fmt"
	"math"

	"pappus/layout/poly"
	"pappus/layout/prose"

	"gonum.org/v1/gonum/spatial/r3"
)

// What can be wrong with what is asked.
var (
	ErrOpen  = errors.New("a mesh is not closed")
	ErrFar   = errors.New("a corner is farther than 64 m from the origin, or no number")
	ErrEmpty = errors.New("nothing is left")
	ErrPinch = errors.New("the outcome touches itself along an edge")
)

// Combine returns what a rule keeps; of a place it is given, for each mesh, whether the place
// is in it. Outside of all of them nothing may be kept. A mesh may have parts that lie in each
// other's way, none of which crosses itself: a place is in it where its winding number is above
// 0. The error wraps ErrOpen, ErrFar, ErrEmpty or, where four triangles of the outcome meet in
// an edge, ErrPinch.
func Combine(keep func(in []bool) bool, meshes ...poly.Mesh) (poly.Mesh, error) {
	out, err := combine(keep, false, meshes)
	if errors.Is(err, ErrPinch) { // so that what was left out cannot be why
		return combine(keep, true, meshes)
	}
	return out, err
}

// combine cuts only where the rule may hang on it, or all.
func combine(keep func(in []bool) bool, all bool, meshes []poly.Mesh) (poly.Mesh, error) {
	n := len(meshes)
	c := &cutter{space: newSpace(), flat: make(map[int]bool), keep: keep, all: all, in: make([]bool, n), wound: make([]int, n)}
	for i, m := range meshes {
		if err := c.take(i, m); err != nil {
			return poly.Mesh{}, err
		}
	}
	c.meetAll()
	s := c.sheets()
	out := s.choose(keep, n)
	if out = short(out).Tidy(); len(out.Triangles) == 0 {
		return poly.Mesh{}, ErrEmpty
	}
	if err := out.Check(); err != nil {
		return poly.Mesh{}, fmt.Errorf("%w: %w", ErrPinch, err)
	}
	return out, nil
}

// take adds a mesh.
func (c *cutter) take(mesh int, m poly.Mesh) error {
	place := make([]int, len(m.Vertices))
	for i, v := range m.Vertices {
		var at [3]int64
		for k, x := range [3]float64{v.X, v.Y, v.Z} {
			if !(math.Abs(x) <= reach) {
				return prose.Errorf("%w: %.4g m in mesh %d", ErrFar, x, mesh+1)
			}
			at[k] = int64(math.RoundToEven(x / unit))
		}
		place[i] = c.lattice(at)
	}
	ways := make(map[[2]int]int)
	piece, count := m.PieceOf()
	for n, t := range m.Triangles {
		corners := [3]int{place[t[0]], place[t[1]], place[t[2]]}
		for k, p := range corners {
			q := corners[(k+1)%3]
			if p < q {
				ways[[2]int{p, q}]++
			} else {
				ways[[2]int{q, p}]--
			}
		}
		if tri, ok := c.newTriangle(corners, mesh); ok {
			tri.part = c.parts + piece[n]
			c.triangles = append(c.triangles, tri)
		} else {
			c.flat[c.parts+piece[n]] = true
		}
	}
	c.parts += count
	for e, n := range ways {
		if n != 0 && e[0] != e[1] {
			return fmt.Errorf("%w: mesh %d", ErrOpen, mesh+1)
		}
	}
	return nil
}

// metre returns a place in m.
func (s *space) metre(p int) r3.Vec {
	at := s.points[p].at
	return r3.Vec{X: math.RoundToEven(at[0]) * unit, Y: math.RoundToEven(at[1]) * unit, Z: math.RoundToEven(at[2]) * unit}
}
