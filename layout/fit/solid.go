package fit

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// solid is a cone frustum: the convex hull of two discs square to one axis.
type solid struct {
	axis        r3.Vec // unit length
	front, back disc
}

type disc struct {
	centre r3.Vec
	radius float64
}

// support returns the point of the solid that is farthest along a direction.
func (s *solid) support(u r3.Vec) r3.Vec {
	out := r3.Sub(u, r3.Scale(r3.Dot(u, s.axis), s.axis))
	if n := r3.Norm(out); n > rounding {
		out = r3.Scale(1/n, out)
		// Of a direction near the axis little was left, and that askew.
		out = r3.Unit(r3.Sub(out, r3.Scale(r3.Dot(out, s.axis), s.axis)))
	} else {
		out = r3.Vec{}
	}
	p := r3.Add(s.front.centre, r3.Scale(s.front.radius, out))
	q := r3.Add(s.back.centre, r3.Scale(s.back.radius, out))
	if r3.Dot(p, u) >= r3.Dot(q, u) {
		return p
	}
	return q
}

// extent returns how far the solid reaches along a unit direction.
func (s *solid) extent(u r3.Vec) float64 {
	along := r3.Dot(u, s.axis)
	across := r3.Norm(r3.Sub(u, r3.Scale(along, s.axis)))
	return max(r3.Dot(u, s.front.centre)+across*s.front.radius, r3.Dot(u, s.back.centre)+across*s.back.radius)
}

// middle returns a point well inside.
func (s *solid) middle() r3.Vec { return r3.Scale(0.5, r3.Add(s.front.centre, s.back.centre)) }

// reach returns how far from the middle the solid reaches at most.
func (s *solid) reach() float64 {
	return math.Hypot(r3.Norm(r3.Sub(s.front.centre, s.back.centre))/2, max(s.front.radius, s.back.radius))
}

// between returns the solid of a driver's part at a mount, between two depths
// with their radii.
func between(m Mount, from, fromRadius, to, toRadius float64) solid {
	at := func(depth, radius float64) disc { return disc{r3.Sub(m.Point, r3.Scale(depth, m.Normal)), radius} }
	return solid{m.Normal, at(from, fromRadius), at(to, toRadius)}
}

// behind returns the basket and the magnet of a driver, as much of them as is
// deeper than a depth.
func behind(m Mount, d Outline, deeper float64) []solid {
	var parts []solid
	start, magnet := d.Depth-d.MagnetHeight, d.magnet()
	if start > deeper {
		radius := d.CutoutRadius + (magnet-d.CutoutRadius)*deeper/start
		parts = append(parts, between(m, deeper, radius, start, magnet))
	}
	if d.MagnetHeight > 0 && d.Depth > deeper {
		parts = append(parts, between(m, max(start, deeper), magnet, d.Depth, magnet))
	}
	return parts
}

// terminal returns the ring that a driver's terminal may stand in, filled.
func terminal(m Mount, d Outline) solid {
	return between(m, d.TerminalFront, d.TerminalReach, d.TerminalFront+d.TerminalLength, d.TerminalReach)
}
