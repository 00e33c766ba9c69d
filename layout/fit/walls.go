package fit

import (
	"math"

	"pappus/layout/body"
	"pappus/layout/poly"

	"gonum.org/v1/gonum/spatial/r3"
)

// side is the line that carries an edge of a face, as the plane through it square to the face
// that looks inward, and what of a length behind the face the neighbour's wall takes away there.
type side struct {
	poly.Plane
	lean float64 // tangent of half the turn from face to face
}

// walls is a body made ready to be asked about.
type walls struct {
	body   *body.Body
	planes []poly.Plane
	whole  []poly.Plane // the same, also where only the base counts
	sides  [][]side     // by face
	// baseOnly leaves out all but the base of a cut.
	baseOnly bool
}

// newWalls takes all walls, or the base of a cut alone.
func newWalls(b *body.Body, baseOnly bool) *walls {
	w := &walls{body: b, sides: make([][]side, len(b.Faces)), baseOnly: baseOnly}
	for f, face := range b.Faces {
		p := b.Plane(f)
		w.whole = append(w.whole, p)
		if baseOnly && !face.Base() {
			p.Offset = math.Inf(1)
		}
		w.planes = append(w.planes, p)
	}
	if b.IsBall() && b.IsCut {
		w.planes = append(w.planes, poly.Plane{Normal: r3.Vec{Z: -1}, Offset: -b.Cut})
	}
	for _, e := range b.Edges() {
		p, q := b.Vertices[e.A], b.Vertices[e.B]
		lean := lean(w.whole[e.Faces[0]].Normal, w.whole[e.Faces[1]].Normal)
		for i, f := range e.Faces {
			if baseOnly && !b.Faces[e.Faces[1-i]].Base() {
				continue
			}
			inward := r3.Unit(r3.Cross(w.whole[f].Normal, r3.Sub(q, p)))
			if i == 1 {
				inward = r3.Scale(-1, inward)
			}
			w.sides[f] = append(w.sides[f], side{poly.Plane{Normal: inward, Offset: r3.Dot(inward, p)}, lean})
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
			far := s.Above(m.Point)
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
	return at == m.Face || math.Abs(p.Above(m.Point)) <= own*w.body.Radius
}

// clearance returns the distance in m from what a driver has behind its wall to
// the inner sides of the other walls; where it is more than enough, no less than
// that. Of a ball, all of which is one wall, only what lies deeper than the front of
// each part counts, and of what came through a hole of a radius only what reaches
// beyond the middle: before that the ball about it only widens.
func (w *walls) clearance(m Mount, parts []solid, hole, wall, enough float64) float64 {
	least := enough
	for j := range parts {
		part := &parts[j]
		// The nearest plane first: the others then need a short look only.
		first := w.nearestPlane(m, part, wall, least)
		if first < 0 {
			continue
		}
		least = min(least, w.toWall(m, part, first, wall, least))
		middle, reach := part.middle(), part.reach()
		for i, p := range w.planes {
			if i != first && p.Offset-wall-r3.Dot(p.Normal, middle)-reach < least && !w.isOwn(m, i) {
				least = min(least, w.toWall(m, part, i, wall, least))
			}
		}
	}
	if w.body.IsBall() && !w.baseOnly {
		for j := range parts {
			if back := parts[j].back; back.radius > hole || r3.Dot(back.centre, parts[j].axis) < 0 {
				least = min(least, w.body.Radius-wall-back.farthest(parts[j].axis))
			}
		}
	}
	return least
}

// nearestPlane returns the plane whose inner side is nearest to a solid, of those that
// are nearer than a limit and not the mount's own; -1 where there is none.
func (w *walls) nearestPlane(m Mount, part *solid, wall, limit float64) int {
	middle, reach := part.middle(), part.reach()
	least, first := limit, -1
	for i, p := range w.planes {
		if p.Offset-wall-r3.Dot(p.Normal, middle)-reach >= least || w.isOwn(m, i) {
			continue
		}
		if far := p.Offset - wall - part.extent(p.Normal); far < least {
			least, first = far, i
		}
	}
	return first
}

// toWall returns how far a solid is from the inner side of a wall, exactly where that
// is less than a limit.
func (w *walls) toWall(m Mount, part *solid, at int, wall, limit float64) float64 {
	far := w.planes[at].Offset - wall - part.extent(w.planes[at].Normal)
	if far < limit && m.Face >= 0 {
		far = max(far, behindFace(part, w.whole[m.Face], w.planes[at], wall, limit))
	}
	return far
}

// behindFace returns how far a solid is from the inner side of a wall as far as it
// lies behind the inner side of the solid's own: from the line where the two meet
// on. Where faces lean little the plane of the next one comes near to the front of a
// driver, but only in front of that line, where there is no such wall.
//
// A plane square to u keeps the solid off this half-plane by its least along u less
// the solid's extent. u must lean from the wall's normal n towards t, the way on from
// the line: u = cos(angle) n + sin(angle) t. The widest gap is the distance; of any
// other u it is less. A gap of a limit ends the search.
func behindFace(part *solid, own, other poly.Plane, wall, limit float64) float64 {
	cos := r3.Dot(own.Normal, other.Normal)
	sin := math.Sqrt(max(0, 1-cos*cos))
	if sin < 1e-6 {
		return math.Inf(-1) // the opposite wall: they meet nowhere
	}
	t := r3.Scale(1/sin, r3.Sub(r3.Scale(cos, other.Normal), own.Normal))
	alongN := other.Offset - wall
	alongT := (cos*alongN - (own.Offset - wall)) / sin // of the line
	gap := func(angle float64) float64 {
		s, c := math.Sincos(angle)
		return c*alongN + s*alongT - part.extent(r3.Add(r3.Scale(c, other.Normal), r3.Scale(s, t)))
	}
	const samples = 16
	step := math.Pi / 2 / samples
	at, best := 0.0, gap(0)
	for i := 1; i <= samples && best < limit; i++ {
		if g := gap(float64(i) * step); g > best {
			at, best = float64(i)*step, g
		}
	}
	for ; step > finestLean && best < limit; step /= 2 {
		for _, angle := range [2]float64{max(0, at-step), min(math.Pi/2, at+step)} {
			if g := gap(angle); g > best {
				at, best = angle, g
			}
		}
	}
	return best
}

// finestLean is how near in rad the direction of the widest gap to a wall is found:
// over 100 mm that is a ten thousandth of a millimetre at most, by which the gap is
// then too narrow.
const finestLean = 1e-6

// farthest returns how far a disc's farthest point is from the origin.
func (d disc) farthest(axis r3.Vec) float64 {
	along := r3.Dot(d.centre, axis)
	across := r3.Norm(r3.Sub(d.centre, r3.Scale(along, axis)))
	return math.Hypot(along, across+d.radius)
}
