package spread

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/optimize"
	"gonum.org/v1/gonum/spatial/r3"
)

// charges is the energy of points on the unit sphere as a function of points
// that are free in space: each is drawn back to the sphere along its own
// direction. Its slices are made once and used again.
type charges struct {
	x     []float64 // where the rest was computed last, x y z of each point
	unit  []r3.Vec  // the points on the sphere
	slope []r3.Vec  // of the energy along the sphere
	total float64
}

func newCharges(n int) *charges {
	return &charges{x: make([]float64, 3*n), unit: make([]r3.Vec, n), slope: make([]r3.Vec, n)}
}

// relax lowers the energy of points by at most so many steps, or until the
// slope at each point is under level. It returns the points and their energy.
func (c *charges) relax(points []r3.Vec, steps int, level float64) ([]r3.Vec, float64) {
	start := make([]float64, 0, len(c.x))
	for _, p := range points {
		start = append(start, p.X, p.Y, p.Z)
	}
	problem := optimize.Problem{Func: c.energy, Grad: c.gradient}
	settings := &optimize.Settings{
		MajorIterations:   steps,
		GradientThreshold: level,
		Converger:         optimize.NeverTerminate{},
	}
	// Where the slope is down to rounding the search gives up with an error;
	// what it has reached by then is as good as can be.
	if result, _ := optimize.Minimize(problem, start, settings, &optimize.LBFGS{}); result != nil {
		start = result.X
	}
	c.compute(start)
	return slices.Clone(c.unit), c.total
}

func (c *charges) energy(x []float64) float64 {
	c.compute(x)
	return c.total
}

func (c *charges) gradient(grad, x []float64) {
	c.compute(x)
	for i, s := range c.slope {
		// A step across the direction moves the point on the sphere less the
		// farther out it is.
		s = r3.Scale(1/r3.Norm(r3.Vec{X: x[3*i], Y: x[3*i+1], Z: x[3*i+2]}), s)
		grad[3*i], grad[3*i+1], grad[3*i+2] = s.X, s.Y, s.Z
	}
}

// compute fills unit, slope and total for x, unless they stand already: the
// search asks for energy and gradient at the same place.
func (c *charges) compute(x []float64) {
	if slices.Equal(c.x, x) {
		return
	}
	copy(c.x, x)
	for i := range c.unit {
		c.unit[i] = r3.Unit(r3.Vec{X: x[3*i], Y: x[3*i+1], Z: x[3*i+2]})
	}
	c.total = coulomb(c.unit, c.slope)
	for i, p := range c.unit {
		pull := c.slope[i]
		c.slope[i] = r3.Sub(pull, r3.Scale(r3.Dot(pull, p), p))
	}
}

// coulomb returns the energy of points and fills slope with how it rises with each,
// in space; each pair is computed once.
func coulomb(points, slope []r3.Vec) float64 {
	clear(slope)
	total := 0.0
	for i, p := range points {
		var pull r3.Vec
		rest := points[i+1:]
		slope := slope[i:]
		for j, q := range rest {
			d := r3.Sub(p, q)
			inverse := 1 / math.Sqrt(r3.Norm2(d))
			total += inverse
			f := r3.Scale(inverse*inverse*inverse, d)
			pull = r3.Sub(pull, f)
			slope[j+1] = r3.Add(slope[j+1], f)
		}
		slope[0] = r3.Add(pull, slope[0])
	}
	return total
}
