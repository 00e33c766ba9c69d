package fit

import (
	"gonum.org/v1/gonum/spatial/r3"
)

// capsule is all within a radius of a line from a to b: a driver with everything behind
// its flange is in one. Two capsules are quickly told apart.
type capsule struct {
	a, b   r3.Vec
	radius float64
}

// capsuleOf returns the capsule that a driver at a mount is in.
func capsuleOf(m Mount, d Driver) capsule {
	deep := max(d.Depth, d.TerminalFront+d.TerminalLength)
	return capsule{m.Point, r3.Sub(m.Point, r3.Scale(deep, m.Normal)), max(d.CutoutRadius, d.magnet(), d.TerminalReach)}
}

// apart returns the distance between two capsules, below 0 where they meet (of the
// lines: C. Ericson, Real-Time Collision Detection, 2005, 5.1.9, from memory).
func (p capsule) apart(q capsule) float64 {
	u, v, w := r3.Sub(p.b, p.a), r3.Sub(q.b, q.a), r3.Sub(p.a, q.a)
	uu, vv, uv, uw, vw := r3.Norm2(u), r3.Norm2(v), r3.Dot(u, v), r3.Dot(u, w), r3.Dot(v, w)
	s, t := 0.0, 0.0
	if square := uu*vv - uv*uv; square > 1e-12*uu*vv { // else they are parallel, and any place will do
		s = min(1, max(0, (uv*vw-uw*vv)/square))
	}
	// The nearest to that on the other line, and back again.
	if vv > 0 {
		t = min(1, max(0, (uv*s+vw)/vv))
	}
	if uu > 0 {
		s = min(1, max(0, (uv*t-uw)/uu))
	}
	between := r3.Sub(r3.Add(w, r3.Scale(s, u)), r3.Scale(t, v))
	return r3.Norm(between) - p.radius - q.radius
}
