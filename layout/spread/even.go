package spread

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"

	"gonum.org/v1/gonum/optimize"
	"gonum.org/v1/gonum/spatial/r3"
)

// Most is the greatest number of points that Even takes.
const Most = 2000

// ErrCount tells of a number of points below 1 or above Most.
var ErrCount = errors.New("spread: points must be from 1 to 2000")

// Even returns n points on the unit sphere with a low Coulomb energy, and that
// energy. From several starts, made with the seed, it keeps the best; the same
// n and seed always give the same points. Above a few hundred points it
// relaxes the spiral only a little, to stay quick. The first point is at the
// top and the second in the half plane of x.
func Even(n int, seed uint64) ([]r3.Vec, float64, error) {
	if n < 1 || n > Most {
		return nil, 0, fmt.Errorf("%w, not %d", ErrCount, n)
	}
	random := rand.New(rand.NewPCG(seed, uint64(n)))
	starts, steps := effort(n)
	var best []r3.Vec
	least := math.Inf(1)
	for s := range starts {
		start := Spiral(n)
		if s > 0 {
			scatter(start, random)
		}
		points, energy := relax(start, steps)
		if energy < least-1e-12*math.Abs(least) || best == nil {
			best, least = points, energy
		}
	}
	return upright(best), least, nil
}

// effort says from how many starts, and with how many steps each: pairs times
// steps stay near a fixed amount of work.
func effort(n int) (starts, steps int) {
	switch {
	case n <= 100:
		return 12, 600
	case n <= 300:
		return 2, 300
	case n <= 800:
		return 1, 60
	}
	return 1, 8
}

// scatter puts points anywhere on the sphere, all places alike.
func scatter(points []r3.Vec, random *rand.Rand) {
	for i := range points {
		points[i] = r3.Unit(r3.Vec{X: random.NormFloat64(), Y: random.NormFloat64(), Z: random.NormFloat64()})
	}
}

// relax lowers the energy by gonum's LBFGS. The points are free in space and
// are drawn back to the sphere inside the energy, which does not change with
// their distances from the centre.
func relax(points []r3.Vec, steps int) ([]r3.Vec, float64) {
	n := len(points)
	if n < 2 {
		return points, 0
	}
	x := make([]float64, 3*n)
	for i, p := range points {
		x[3*i], x[3*i+1], x[3*i+2] = p.X, p.Y, p.Z
	}
	unit, force := make([]r3.Vec, n), make([]r3.Vec, n)
	problem := optimize.Problem{
		Func: func(x []float64) float64 { return energy(unit, nil, x) },
		Grad: func(grad, x []float64) {
			energy(unit, force, x)
			for i, f := range force {
				f = r3.Sub(f, r3.Scale(r3.Dot(f, unit[i]), unit[i]))
				f = r3.Scale(1/math.Hypot(math.Hypot(x[3*i], x[3*i+1]), x[3*i+2]), f)
				grad[3*i], grad[3*i+1], grad[3*i+2] = f.X, f.Y, f.Z
			}
		},
	}
	settings := &optimize.Settings{
		MajorIterations:   steps,
		GradientThreshold: 1e-6,
		Converger:         &optimize.FunctionConverge{Relative: 1e-11, Iterations: 20},
	}
	// An optimiser that stops early has still lowered the energy.
	if result, _ := optimize.Minimize(problem, x, settings, &optimize.LBFGS{}); result != nil {
		x = result.X
	}
	total := energy(unit, nil, x)
	return append([]r3.Vec(nil), unit...), total
}

// energy fills unit with the points on the sphere and returns the sum of
// 1/distance over pairs; where force is given, it is filled with the gradient.
func energy(unit, force []r3.Vec, x []float64) float64 {
	for i := range unit {
		unit[i] = r3.Unit(r3.Vec{X: x[3*i], Y: x[3*i+1], Z: x[3*i+2]})
	}
	clear(force)
	sum := 0.0
	for i, p := range unit {
		for j := i + 1; j < len(unit); j++ {
			d := r3.Sub(p, unit[j])
			inverse := 1 / math.Sqrt(d.X*d.X+d.Y*d.Y+d.Z*d.Z)
			sum += inverse
			if force != nil {
				pull := r3.Scale(-inverse*inverse*inverse, d)
				force[i] = r3.Add(force[i], pull)
				force[j] = r3.Sub(force[j], pull)
			}
		}
	}
	return sum
}

// upright turns points so that the first is at the top and the second in the
// half plane of x.
func upright(points []r3.Vec) []r3.Vec {
	z := points[0]
	across := r3.Vec{X: 1}
	if math.Abs(z.X) > 0.9 {
		across = r3.Vec{Y: 1}
	}
	if len(points) > 1 && r3.Norm(r3.Cross(points[1], z)) > 1e-6 {
		across = points[1]
	}
	x := r3.Unit(r3.Sub(across, r3.Scale(r3.Dot(across, z), z)))
	y := r3.Cross(z, x)
	out := make([]r3.Vec, len(points))
	for i, p := range points {
		out[i] = r3.Vec{X: r3.Dot(p, x), Y: r3.Dot(p, y), Z: r3.Dot(p, z)}
	}
	return out
}
