package body

import (
	"cmp"
	"math"
	"slices"

	"pappus/layout/poly"

	"gonum.org/v1/gonum/spatial/r3"
)

// ballCorners is how many corners the outline of a ball has. At 180 they stay
// within 0.02 percent of the radius of the circle.
const ballCorners = 180

// Section returns the outline of the body in the plane through an origin (m)
// along two perpendicular unit vectors: points in m along both from that
// origin, counter-clockwise with right to the right and up upward, the first
// repeated at the end. It is nil where the plane misses the body or touches it
// in no more than an edge. The outline of a ball is a polygon of 180 corners.
func (b *Body) Section(origin, right, up r3.Vec) [][2]float64 {
	if b.IsBall() {
		return b.roundSection(origin, right, up)
	}
	points := b.meet(origin, r3.Cross(right, up))
	flat := make([][2]float64, len(points))
	for i, p := range points {
		d := r3.Sub(p, origin)
		flat[i] = [2]float64{r3.Dot(d, right), r3.Dot(d, up)}
	}
	return loop(flat, poly.Alike*b.Radius)
}

// meet returns the points where a plane meets edges and vertices.
func (b *Body) meet(origin, normal r3.Vec) []r3.Vec {
	height := make([]float64, len(b.Vertices))
	var points []r3.Vec
	for i, v := range b.Vertices {
		height[i] = r3.Dot(normal, r3.Sub(v, origin))
		if math.Abs(height[i]) <= poly.Alike*b.Radius {
			height[i] = 0
			points = append(points, v)
		}
	}
	for _, face := range b.Faces {
		p := face.Corners[len(face.Corners)-1]
		for _, q := range face.Corners {
			// Each edge runs up the numbers in one of its faces.
			if p < q && height[p]*height[q] < 0 {
				along := r3.Sub(b.Vertices[q], b.Vertices[p])
				points = append(points, r3.Add(b.Vertices[p], r3.Scale(height[p]/(height[p]-height[q]), along)))
			}
			p = q
		}
	}
	return points
}

// loop puts points of a convex outline in order round their middle, joins those
// within slack of each other, and closes the outline.
func loop(points [][2]float64, slack float64) [][2]float64 {
	var x, y float64
	for _, p := range points {
		x += p[0] / float64(len(points))
		y += p[1] / float64(len(points))
	}
	slices.SortFunc(points, func(p, q [2]float64) int {
		return cmp.Compare(math.Atan2(p[1]-y, p[0]-x), math.Atan2(q[1]-y, q[0]-x))
	})
	near := func(p, q [2]float64) bool { return math.Hypot(p[0]-q[0], p[1]-q[1]) <= slack }
	points = slices.CompactFunc(points, near)
	if n := len(points); n > 1 && near(points[0], points[n-1]) {
		points = points[:n-1]
	}
	if len(points) < 3 {
		return nil
	}
	return append(points, points[0])
}

// roundSection returns the outline of a ball: a circle, or the arc of it that
// is above the cut, closed by a chord.
func (b *Body) roundSection(origin, right, up r3.Vec) [][2]float64 {
	x, y := -r3.Dot(origin, right), -r3.Dot(origin, up)
	off := r3.Dot(origin, r3.Cross(right, up))
	reach := math.Sqrt(b.Radius*b.Radius - off*off)
	if !(reach > poly.Alike*b.Radius) {
		return nil
	}
	steep := math.Hypot(right.Z, up.Z) // how fast height grows across the plane
	middle, half := math.Atan2(up.Z, right.Z), math.Pi
	if b.IsCut {
		half = b.halfArc(origin.Z+x*right.Z+y*up.Z, reach*steep)
	}
	if half == 0 {
		return nil
	}
	points := make([][2]float64, ballCorners, ballCorners+1)
	steps := ballCorners - 1.0
	if half == math.Pi {
		steps++ // the last point of a whole circle is not the first
	}
	for i := range points {
		sin, cos := math.Sincos(middle - half + 2*half*float64(i)/steps)
		points[i] = [2]float64{x + reach*cos, y + reach*sin}
	}
	return append(points, points[0])
}

// halfArc returns half the angle of the part of a circle above the cut, for a
// circle whose middle is at a height and that rises above it by rise.
func (b *Body) halfArc(height, rise float64) float64 {
	deep := b.Cut - height
	switch slack := rounding * b.Radius; {
	case deep <= -rise+slack:
		return math.Pi
	case deep >= rise-slack:
		return 0
	}
	return math.Acos(deep / rise)
}
