package printing

import (
	"cmp"
	"math"
	"slices"

	"pappus/layout/body"

	"gonum.org/v1/gonum/spatial/r3"
)

// polygon is one flat face, counter-clockwise seen from outside.
type polygon struct {
	points []r3.Vec
	skin   bool // part of the body's surface, not left by a cut
}

// solid is a closed convex polyhedron; none where it is empty.
type solid []polygon

func solidOf(b *body.Body) solid {
	s := make(solid, len(b.Faces))
	for f, face := range b.Faces {
		s[f] = polygon{make([]r3.Vec, len(face.Corners)), true}
		for i, v := range face.Corners {
			s[f].points[i] = b.Vertices[v]
		}
	}
	return s
}

// half is the half space of the points p with p.normal <= offset.
type half struct {
	normal r3.Vec // unit length
	offset float64
}

func (h half) beyond(p r3.Vec) float64 { return r3.Dot(h.normal, p) - h.offset }

// clip returns the part of a solid in a half space, closed by a face in its
// plane. Points within slack of the plane count as on it. Faces that the plane
// does not meet are shared, not copied.
func (s solid) clip(h half, slack float64) solid {
	most, least := math.Inf(-1), math.Inf(1)
	for _, f := range s {
		for _, p := range f.points {
			d := h.beyond(p)
			most, least = max(most, d), min(least, d)
		}
	}
	switch {
	case most <= slack:
		return s
	case least >= -slack:
		return nil
	}
	out := make(solid, 0, len(s)+1)
	var border []r3.Vec
	for _, f := range s {
		var kept polygon
		if kept, border = f.clip(h, slack, border); len(kept.points) > 2 {
			out = append(out, kept)
		}
	}
	return append(out, polygon{ring(border, h.normal, slack), false})
}

// clip returns what is left of a face, and adds to the border where it meets
// the plane.
func (f polygon) clip(h half, slack float64, border []r3.Vec) (polygon, []r3.Vec) {
	most, least := math.Inf(-1), math.Inf(1)
	for _, p := range f.points {
		d := h.beyond(p)
		most, least = max(most, d), min(least, d)
		if math.Abs(d) <= slack {
			border = append(border, p)
		}
	}
	if most <= slack && least < -slack {
		return f, border
	}
	if least >= -slack {
		return polygon{}, border
	}
	out := polygon{make([]r3.Vec, 0, len(f.points)+1), f.skin}
	for i, p := range f.points {
		q := f.points[(i+1)%len(f.points)]
		dp, dq := h.beyond(p), h.beyond(q)
		if dp <= slack {
			out.points = append(out.points, p)
		}
		if dp > slack && dq < -slack || dp < -slack && dq > slack {
			if dp > dq { // the same point from either of the edge's faces
				p, q, dp, dq = q, p, dq, dp
			}
			at := r3.Add(p, r3.Scale(dp/(dp-dq), r3.Sub(q, p)))
			out.points = append(out.points, at)
			border = append(border, at)
		}
	}
	return out, border
}

// ring puts the points of a convex outline in order, counter-clockwise seen
// against the normal, and joins those within slack of each other.
func ring(points []r3.Vec, normal r3.Vec, slack float64) []r3.Vec {
	var middle r3.Vec
	for _, p := range points {
		middle = r3.Add(middle, r3.Scale(1/float64(len(points)), p))
	}
	right := r3.Cross(normal, r3.Vec{X: 1})
	if math.Abs(normal.X) > 0.9 {
		right = r3.Cross(normal, r3.Vec{Y: 1})
	}
	up := r3.Cross(normal, right)
	turn := func(p r3.Vec) float64 {
		d := r3.Sub(p, middle)
		return math.Atan2(r3.Dot(d, up), r3.Dot(d, right))
	}
	slices.SortFunc(points, func(p, q r3.Vec) int { return cmp.Compare(turn(p), turn(q)) })
	near := func(p, q r3.Vec) bool { return r3.Norm(r3.Sub(p, q)) <= 10*slack }
	points = slices.CompactFunc(points, near)
	if n := len(points); n > 1 && near(points[0], points[n-1]) {
		points = points[:n-1]
	}
	return points
}

// vector returns a face's area along its outward normal.
func (f polygon) vector() r3.Vec {
	var twice r3.Vec
	for i := 2; i < len(f.points); i++ {
		twice = r3.Add(twice, r3.Cross(r3.Sub(f.points[i-1], f.points[0]), r3.Sub(f.points[i], f.points[0])))
	}
	return r3.Scale(0.5, twice)
}

func (s solid) volume() float64 {
	sum := 0.0
	for _, f := range s {
		if len(f.points) > 2 {
			sum += r3.Dot(r3.Sub(f.points[0], s[0].points[0]), f.vector()) / 3
		}
	}
	return sum
}

// skin returns the area of the body's surface on a solid.
func (s solid) skin() float64 {
	sum := 0.0
	for _, f := range s {
		if f.skin {
			sum += r3.Norm(f.vector())
		}
	}
	return sum
}
