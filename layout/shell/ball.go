package shell

import (
	"fmt"
	"math"

	"pappus/layout/body"
	"pappus/layout/poly"
	"pappus/layout/prose"

	"gonum.org/v1/gonum/spatial/r3"
)

// facets is the division of the icosahedron whose corners a ball's facets touch
// it at; at 16 they are 2562.
const facets = 16

// takeBall makes the outside of a ball from facets and seats.
func (m *maker) takeBall(b *body.Body, holes []Hole) error {
	for i, h := range holes {
		p, err := seat(b, h)
		if err != nil {
			return err
		}
		m.planes = append(m.planes, p)
		m.holes[i] = []Hole{h}
	}
	even, err := body.Geodesic("icosahedron", facets, 1)
	if err != nil {
		return err
	}
	for _, n := range even.Vertices {
		m.planes = append(m.planes, poly.Plane{Normal: r3.Unit(n), Offset: b.Radius})
	}
	if b.IsCut {
		m.base = len(m.planes)
		m.planes = append(m.planes, poly.Plane{Normal: r3.Vec{Z: -1}, Offset: -b.Cut})
	}
	s, err := poly.Meet(m.planes, b.Radius, m.slack)
	if err != nil {
		return err
	}
	m.outer = m.add(s)
	return nil
}

// seat returns the plane of a flat for a hole in a ball.
func seat(b *body.Body, h Hole) (poly.Plane, error) {
	if h.Seat == 0 {
		return poly.Plane{}, fmt.Errorf("mount %d: %w: it does not look straight away from the ball's centre, so %w", h.ID, ErrCutout, ErrNoFlat)
	}
	if !(h.Seat >= h.Radius && h.Seat < b.Radius) {
		return poly.Plane{}, prose.Errorf("mount %d: %w: its seat of %.4g mm must be wider than its cut-out and less than the ball",
			h.ID, ErrCutout, 2e3*h.Seat)
	}
	return poly.Plane{Normal: r3.Unit(h.Point), Offset: math.Sqrt(b.Radius*b.Radius - h.Seat*h.Seat)}, nil
}
