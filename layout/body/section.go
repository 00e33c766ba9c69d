package body

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// Section returns the outline of the body in the plane through an origin along
// two perpendicular unit vectors, in m from that origin along both, in order;
// nil where the plane misses the body. A ball's outline has 180 corners.
func (b *Body) Section(origin, right, up r3.Vec) [][2]float64 {
	normal := r3.Cross(right, up)
	var points []r3.Vec
	if b.IsBall() {
		points = b.ballSection(origin, normal, right, up)
	} else {
		for _, e := range b.Edges() {
			p, q := b.Vertices[e.A], b.Vertices[e.B]
			dp, dq := r3.Dot(normal, r3.Sub(p, origin)), r3.Dot(normal, r3.Sub(q, origin))
			if dp*dq <= 0 && dp != dq {
				points = append(points, r3.Add(p, r3.Scale(dp/(dp-dq), r3.Sub(q, p))))
			}
		}
	}
	return outline(points, origin, right, up)
}

// ballSection returns the circle where a plane meets the ball, cut flat.
func (b *Body) ballSection(origin, normal, right, up r3.Vec) []r3.Vec {
	height := r3.Dot(normal, origin)
	if math.Abs(height) >= b.Radius {
		return nil
	}
	middle := r3.Scale(height, normal)
	reach := math.Sqrt(b.Radius*b.Radius - height*height)
	var points []r3.Vec
	for i := range 180 {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / 180)
		p := r3.Add(middle, r3.Add(r3.Scale(reach*cos, right), r3.Scale(reach*sin, up)))
		if b.IsCut && p.Z < b.Cut {
			if up.Z == 0 {
				continue
			}
			p = r3.Add(p, r3.Scale((b.Cut-p.Z)/up.Z, up))
		}
		points = append(points, p)
	}
	return points
}

// outline sorts points round their middle, which serves since bodies are
// convex.
func outline(points []r3.Vec, origin, right, up r3.Vec) [][2]float64 {
	if len(points) < 3 {
		return nil
	}
	flat := make([][2]float64, len(points))
	index := make([]int, len(points))
	var middle [2]float64
	for i, p := range points {
		d := r3.Sub(p, origin)
		flat[i], index[i] = [2]float64{r3.Dot(d, right), r3.Dot(d, up)}, i
		middle[0] += flat[i][0] / float64(len(points))
		middle[1] += flat[i][1] / float64(len(points))
	}
	sortBy(index, func(i int) float64 {
		return math.Atan2(flat[i][1]-middle[1], flat[i][0]-middle[0])
	})
	out := make([][2]float64, len(index))
	for i, at := range index {
		out[i] = flat[at]
	}
	return out
}
