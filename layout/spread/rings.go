package spread

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/optimize"
	"gonum.org/v1/gonum/spatial/r3"
)

// rings are points that repeat evenly about z: some on the axis, then the images of each of
// the others.
type rings struct {
	zone   Zone
	poles  []r3.Vec
	turns  [][2]float64 // sine and cosine of the turn to each point of a ring
	points []r3.Vec     // the poles, then each ring
}

// newRings returns room for n points in all in a rounded zone.
func newRings(n int, poles []r3.Vec, z Zone) rings {
	r := rings{zone: z, poles: poles, points: make([]r3.Vec, n)}
	copy(r.points, poles)
	for k := range z.Fold {
		sin, cos := math.Sincos(2 * math.Pi * float64(k) / float64(z.Fold))
		r.turns = append(r.turns, [2]float64{sin, cos})
	}
	return r
}

// place puts each ring through its point.
func (r *rings) place(points []r3.Vec) {
	for i, p := range points {
		at := r.first(i)
		for k, turn := range r.turns {
			r.points[at+k] = r3.Vec{X: turn[1]*p.X - turn[0]*p.Y, Y: turn[0]*p.X + turn[1]*p.Y, Z: p.Z}
		}
	}
}

// first returns the index of a ring's first point.
func (r *rings) first(ring int) int { return len(r.poles) + ring*r.zone.Fold }

// contains tells whether each of some points is in the zone.
func (r *rings) contains(points []r3.Vec) bool {
	return !slices.ContainsFunc(points, func(p r3.Vec) bool { return !r.zone.Contains(p) })
}

// descend lowers the cost of points on the unit sphere, which comes with its slope in space at
// each, here over a number. The points are free in space, and each is drawn back to the
// sphere along its own direction. Where the slope is down to rounding the search gives up
// with an error; what it has reached by then is as good as can be.
func descend(x []float64, settings *optimize.Settings, times float64, cost func(points []r3.Vec) (float64, []r3.Vec)) []float64 {
	var last []float64
	var points, slope []r3.Vec
	var total float64
	// The search asks for cost and gradient at the same place.
	compute := func(x []float64) {
		if slices.Equal(last, x) {
			return
		}
		last = append(last[:0], x...)
		points = drawn(points[:0], x)
		total, slope = cost(points)
	}
	problem := optimize.Problem{
		Func: func(x []float64) float64 {
			compute(x)
			return total
		},
		Grad: func(grad, x []float64) {
			compute(x)
			for i, p := range points {
				// A step across the direction moves the point on the sphere less the
				// farther out it is.
				s := r3.Sub(slope[i], r3.Scale(r3.Dot(slope[i], p), p))
				s = r3.Scale(times/r3.Norm(r3.Vec{X: x[3*i], Y: x[3*i+1], Z: x[3*i+2]}), s)
				grad[3*i], grad[3*i+1], grad[3*i+2] = s.X, s.Y, s.Z
			}
		},
	}
	if result, _ := optimize.Minimize(problem, x, settings, &optimize.LBFGS{}); result != nil {
		return result.X
	}
	return x
}

// free returns x, y, z of points.
func free(points []r3.Vec) []float64 {
	x := make([]float64, 0, 3*len(points))
	for _, p := range points {
		x = append(x, p.X, p.Y, p.Z)
	}
	return x
}

// drawn appends points drawn back to the sphere.
func drawn(points []r3.Vec, x []float64) []r3.Vec {
	for ; len(x) > 0; x = x[3:] {
		points = append(points, r3.Unit(r3.Vec{X: x[0], Y: x[1], Z: x[2]}))
	}
	return points
}
