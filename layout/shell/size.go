package shell

import (
	"cmp"
	"math"
	"slices"

	"pappus/layout/poly"
	"pappus/layout/prose"

	"gonum.org/v1/gonum/spatial/r3"
)

// Size is a box in m.
type Size struct{ X, Y, Z float64 }

// String writes the sides in mm.
func (s Size) String() string {
	return prose.Sprintf("%.4g by %.4g by %.4g mm", 1e3*s.X, 1e3*s.Y, 1e3*s.Z)
}

const degree = math.Pi / 180

// measure fills in a segment's turn and size for a bed, and tells whether it
// fits. One that does not has the size that it has as it stands.
func (s *Segment) measure(points []r3.Vec, bed Size) bool {
	points, tall := hull(points)
	s.Turn, s.Size = 0, boxed(points, tall, 0)
	if tall > bed.Z*(1+spare) {
		return false
	}
	fits, least := false, math.Inf(1)
	try := func(turn float64) {
		box := boxed(points, tall, turn)
		if box.within(bed) && box.X*box.Y < least*(1-spare) {
			fits, least = true, box.X*box.Y
			s.Turn, s.Size = turn, box
		}
	}
	try(0)
	for i := range 180 {
		try(float64(i)*degree - s.From)
	}
	return fits
}

// spare is what a box may be too large for a bed, over its size: rounding.
const spare = 1e-9

// within tells whether a box fits another.
func (s Size) within(bed Size) bool {
	return s.X <= bed.X*(1+spare) && s.Y <= bed.Y*(1+spare) && s.Z <= bed.Z*(1+spare)
}

// boxed returns the box, of a height, about points turned about z.
func boxed(points []r3.Vec, tall, turn float64) Size {
	sin, cos := math.Sincos(turn)
	left, right, back, front := math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)
	for _, p := range points {
		x, y := cos*p.X-sin*p.Y, sin*p.X+cos*p.Y
		left, right, back, front = min(left, x), max(right, x), min(back, y), max(front, y)
	}
	return Size{right - left, front - back, tall}
}

// hull returns those of points that are corners of their outline seen from above
// (A. M. Andrew, Information Processing Letters 9 (1979) 216), and how tall all
// are. It puts the points in another order.
func hull(points []r3.Vec) (corners []r3.Vec, tall float64) {
	low, high := poly.Span(points)
	slices.SortFunc(points, func(p, q r3.Vec) int { return cmp.Or(cmp.Compare(p.X, q.X), cmp.Compare(p.Y, q.Y)) })
	for range 2 { // the near side, then, backward, the far one
		from := len(corners)
		for _, p := range points {
			for n := len(corners); n-from > 1 && turning(corners[n-2], corners[n-1], p) <= 0; n-- {
				corners = corners[:n-1]
			}
			corners = append(corners, p)
		}
		slices.Reverse(points)
	}
	return corners, high - low
}

// turning is above 0 where the way from p by q to r turns left, seen from above.
func turning(p, q, r r3.Vec) float64 { return (q.X-p.X)*(r.Y-q.Y) - (q.Y-p.Y)*(r.X-q.X) }

// outline returns points whose box is that of the shell in a segment, however it is turned:
// corners that are not in the hollow.
func (p *stock) outline(outer, inner poly.Solid) []r3.Vec {
	return slices.DeleteFunc(slices.Concat(outer.Vertices, inner.Vertices), p.inHollow)
}

// inHollow tells whether a point is inside all walls and not on them.
func (p *stock) inHollow(v r3.Vec) bool {
	if p.body.IsBall() {
		return r3.Norm(v) <= (p.body.Radius-p.wall)*(1-1e-9)
	}
	for _, w := range p.walls {
		if w.Above(v) >= -10*p.slack {
			return false
		}
	}
	return true
}

// round is outline for a ball, from polygons that lie about its circles.
func (p *stock) round(s Segment) []r3.Vec {
	heights := []float64{s.Low, s.High}
	if s.Low < 0 && s.High > 0 {
		heights = append(heights, 0)
	}
	var points []r3.Vec
	steps := math.Ceil((s.To - s.From) / degree)
	about := 1 / math.Cos((s.To-s.From)/steps/2)
	add := func(turn, radius, z float64) {
		sin, cos := math.Sincos(turn)
		points = append(points, r3.Vec{X: radius * cos, Y: radius * sin, Z: z})
	}
	for _, z := range heights {
		reach := func(radius float64) float64 { return math.Sqrt(max(0, radius*radius-z*z)) }
		for i := range int(steps) + 1 {
			add(s.From+(s.To-s.From)*float64(i)/steps, about*reach(p.body.Radius), z)
		}
		for _, turn := range []float64{s.From, s.To} {
			add(turn, reach(p.body.Radius-p.wall), z)
		}
	}
	return points
}
