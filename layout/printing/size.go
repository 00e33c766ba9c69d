package printing

import (
	"cmp"
	"math"
	"pappus/layout/prose"
	"slices"

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
	low, high := math.Inf(1), math.Inf(-1)
	for _, p := range points {
		low, high = min(low, p.Z), max(high, p.Z)
	}
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

// outline returns points whose box is that of the shell in a segment, however
// it is turned: corners of the body that are not in the hollow, and corners of
// the hollow that are on its wall.
func (p *stock) outline(outer, inner solid) []r3.Vec {
	var points []r3.Vec
	for _, f := range outer {
		for _, v := range f.points {
			if !p.inHollow(v) {
				points = append(points, v)
			}
		}
	}
	for _, f := range inner {
		for _, v := range f.points {
			if !p.inHollow(v) {
				points = append(points, v)
			}
		}
	}
	return points
}

// inHollow tells whether a point is inside all walls and not on them.
func (p *stock) inHollow(v r3.Vec) bool {
	for _, h := range p.walls {
		if h.beyond(v) >= -10*p.slack {
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
	low, high := p.hollowSpan()
	for _, z := range heights {
		out := about * math.Sqrt(max(0, p.body.Radius*p.body.Radius-z*z))
		for i := range int(steps) + 1 {
			sin, cos := math.Sincos(s.From + (s.To-s.From)*float64(i)/steps)
			points = append(points, r3.Vec{X: out * cos, Y: out * sin, Z: z})
		}
		in := 0.0
		if z > low && z < high || z == low && p.shell.Base == 0 {
			in = math.Sqrt(max(0, high*high-z*z))
		}
		for _, turn := range []float64{s.From, s.To} {
			sin, cos := math.Sincos(turn)
			points = append(points, r3.Vec{X: in * cos, Y: in * sin, Z: z})
		}
	}
	return points
}
