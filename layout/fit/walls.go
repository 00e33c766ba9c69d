package fit

import (
	"math"

	"pappus/layout/body"

	"gonum.org/v1/gonum/spatial/r3"
)

// plane is the points p with p.normal = offset.
type plane struct {
	normal r3.Vec // unit length, outward
	offset float64
}

// side is the line that carries an edge of a face, and what of a length behind
// the face the neighbour's wall takes away there.
type side struct {
	inward r3.Vec
	offset float64
	lean   float64 // tangent of half the turn from face to face
	beyond int     // the neighbour
}

// walls is a body made ready to be asked about.
type walls struct {
	body   *body.Body
	planes []plane
	sides  [][]side // by face
	// baseOnly leaves out all but the base of a cut.
	baseOnly bool
}

func newWalls(b *body.Body) *walls {
	w := &walls{body: b, planes: make([]plane, len(b.Faces)), sides: make([][]side, len(b.Faces))}
	for f, face := range b.Faces {
		n := b.Normal(f)
		w.planes[f] = plane{n, r3.Dot(n, b.Vertices[face.Corners[0]])}
	}
	if b.IsBall() {
		if b.IsCut {
			w.planes = append(w.planes, plane{r3.Vec{Z: -1}, -b.Cut})
		}
		return w
	}
	for _, e := range b.Edges() {
		p, q := b.Vertices[e.A], b.Vertices[e.B]
		lean := lean(w.planes[e.Faces[0]].normal, w.planes[e.Faces[1]].normal)
		for i, f := range e.Faces {
			inward := r3.Unit(r3.Cross(w.planes[f].normal, r3.Sub(q, p)))
			if i == 1 {
				inward = r3.Scale(-1, inward)
			}
			w.sides[f] = append(w.sides[f], side{inward, r3.Dot(inward, p), lean, e.Faces[1-i]})
		}
	}
	return w
}

// lean returns the tangent of half the angle between two unit normals, by whichever
// of its two forms does not lose the digits.
func lean(m, n r3.Vec) float64 {
	sin, cos := r3.Norm(r3.Cross(m, n)), r3.Dot(m, n)
	if cos < 0 {
		return (1 - cos) / sin
	}
	return sin / (1 + cos)
}

// edge returns how far in m a circle round a mount can reach in its face: on
// the outside, and at the wall's depth, where the neighbours' walls come nearer.
// Where the mount is on no face, nothing says: +Inf; but on a cut ball the
// edge is the cut, and the flange lies square to its direction from the centre.
func (w *walls) edge(m Mount, wall float64) (outside, inside float64) {
	outside, inside = math.Inf(1), math.Inf(1)
	switch b := w.body; {
	case m.Face >= 0:
		for _, s := range w.sides[m.Face] {
			far := r3.Dot(s.inward, m.Point) - s.offset
			outside, inside = min(outside, far), min(inside, far-wall*s.lean)
		}
	case b.IsBall() && b.IsCut:
		outside = rim(b, m.Point)
		inside = outside - wall*lean(m.Normal, r3.Vec{Z: -1})
	}
	return outside, inside
}

// rim returns how far from its centre a disc that touches a ball can reach
// before it meets the cut.
func rim(b *body.Body, point r3.Vec) float64 {
	slope := math.Hypot(point.X, point.Y) / r3.Norm(point) // of the disc, downward
	if slope < rounding {
		return math.Inf(1)
	}
	return (point.Z - b.Cut) / slope
}

// own is how near to a plane, over the body's radius, a mount sits on it.
const own = 1e-4

// isOwn tells whether a mount is on a wall.
func (w *walls) isOwn(m Mount, at int) bool {
	p := w.planes[at]
	return at == m.Face || math.Abs(r3.Dot(p.normal, m.Point)-p.offset) <= own*w.body.Radius
}

// clearance returns the distance in m from what a driver has behind its wall to
// the inner sides of the other walls. Of a ball, all of which is one wall, only
// what lies deeper than the front of each part counts.
func (w *walls) clearance(m Mount, parts []solid, wall float64) float64 {
	least := math.Inf(1)
	for i := range w.planes {
		if math.IsInf(w.planes[i].offset, 1) || w.isOwn(m, i) {
			continue
		}
		for j := range parts {
			least = min(least, w.planes[i].offset-wall-parts[j].extent(w.planes[i].normal))
		}
	}
	if w.body.IsBall() && !w.baseOnly {
		for j := range parts {
			least = min(least, w.body.Radius-wall-parts[j].back.farthest(parts[j].axis))
		}
	}
	return least
}

// farthest returns how far a disc's farthest point is from the origin.
func (d disc) farthest(axis r3.Vec) float64 {
	along := r3.Dot(d.centre, axis)
	across := r3.Norm(r3.Sub(d.centre, r3.Scale(along, axis)))
	return math.Hypot(along, across+d.radius)
}
