package spread

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/optimize"
	"gonum.org/v1/gonum/spatial/r3"
)

// orbits is the energy of rings of points about z as a function of one point of
// each, free in space and drawn back to the sphere along its own direction.
//
// The zone is held by an augmented Lagrangian: a point that is inside a cap
// pays with the square of how far, and a price for each point and cap is raised
// from round to round by what was still paid, until no point is inside by more
// than rounding (M. J. D. Powell, in R. Fletcher, Optimization, 1969; J. Nocedal
// and S. J. Wright, Numerical Optimization, 2nd ed., 17.3 and 17.4).
type orbits struct {
	zone   Zone
	cos    []float64    // of the half-angle of each cap
	turns  [][2]float64 // sine and cosine of the turn to each point of a ring
	poles  []r3.Vec
	points []r3.Vec // the poles, then each ring
	prices []float64
	weight float64
	// What was computed last, and where: x y z of each ring's point.
	x     []float64
	total float64
	slope []r3.Vec // by ring, along the sphere
}

func newOrbits(rings int, poles []r3.Vec, z Zone) *orbits {
	o := &orbits{
		zone:   z,
		poles:  poles,
		points: make([]r3.Vec, len(poles)+rings*z.Fold),
		prices: make([]float64, rings*len(z.Clear)),
		slope:  make([]r3.Vec, rings),
	}
	copy(o.points, poles)
	for k := range z.Fold {
		sin, cos := math.Sincos(2 * math.Pi * float64(k) / float64(z.Fold))
		o.turns = append(o.turns, [2]float64{sin, cos})
	}
	for _, c := range z.Clear {
		o.cos = append(o.cos, math.Cos(c.HalfAngle))
	}
	// As stiff as the points hold each other: their distance goes as one over
	// the root of how many they are, and the stiffness as its third power.
	n := float64(len(o.points))
	o.weight = 10 * n * math.Sqrt(n) * float64(z.Fold)
	return o
}

// settle lowers the energy of the rings through some points by at most so many
// steps in each of so many rounds. It returns points drawn into the zone and
// the energy of all, which is infinite if one could not be drawn there.
func (o *orbits) settle(points []r3.Vec, steps, rounds int, level float64) ([]r3.Vec, float64) {
	clear(o.prices)
	x := make([]float64, 0, 3*len(points))
	for _, p := range points {
		x = append(x, p.X, p.Y, p.Z)
	}
	problem := optimize.Problem{Func: o.cost, Grad: o.gradient}
	settings := &optimize.Settings{
		MajorIterations:   steps,
		GradientThreshold: level,
		Converger:         optimize.NeverTerminate{},
	}
	for range rounds {
		o.x = nil // prices have changed
		// As for charges: what is reached where the search gives up is used.
		if result, _ := optimize.Minimize(problem, x, settings, &optimize.LBFGS{}); result != nil {
			x = result.X
		}
		if o.raise(x) <= onBorder/10 {
			break
		}
	}
	out := make([]r3.Vec, len(points))
	for i := range out {
		out[i] = o.zone.draw(unit(x, i))
	}
	return out, o.at(out)
}

// at returns the energy of all points with each ring through a point,
// infinite where one is outside of the zone.
func (o *orbits) at(points []r3.Vec) float64 {
	o.place(points)
	for _, p := range points {
		if !o.zone.Contains(p) {
			return math.Inf(1)
		}
	}
	return o.energy()
}

// unit returns the i-th point drawn to the sphere.
func unit(x []float64, i int) r3.Vec {
	return r3.Unit(r3.Vec{X: x[3*i], Y: x[3*i+1], Z: x[3*i+2]})
}

// place puts each ring through its point.
func (o *orbits) place(points []r3.Vec) {
	for i, p := range points {
		o.fill(i, p)
	}
}

// fill puts the i-th ring through a point.
func (o *orbits) fill(i int, p r3.Vec) {
	at := len(o.poles) + i*o.zone.Fold
	for k, turn := range o.turns {
		o.points[at+k] = r3.Vec{X: turn[1]*p.X - turn[0]*p.Y, Y: turn[0]*p.X + turn[1]*p.Y, Z: p.Z}
	}
}

// energy returns the energy of all points as they stand and fills slope: by
// symmetry each point of a ring has the same surroundings.
func (o *orbits) energy() float64 {
	if o.zone.Fold == 1 && len(o.poles) == 0 {
		return coulomb(o.points, o.slope)
	}
	total := 0.0
	for i, p := range o.poles {
		for _, q := range o.poles[i+1:] {
			total += 1 / r3.Norm(r3.Sub(p, q))
		}
	}
	fold := float64(o.zone.Fold)
	for ring := range o.slope {
		own := len(o.poles) + ring*o.zone.Fold
		p, sum := o.points[own], 0.0
		var pull r3.Vec
		for i, q := range o.points {
			if i == own {
				continue
			}
			d := r3.Sub(p, q)
			inverse := 1 / math.Sqrt(r3.Norm2(d))
			pull = r3.Sub(pull, r3.Scale(inverse*inverse*inverse, d))
			if i < len(o.poles) {
				inverse *= 2 // the poles do not count it from their side
			}
			sum += inverse
		}
		total += fold * sum / 2
		o.slope[ring] = r3.Scale(fold, pull)
	}
	return total
}

// cost returns the energy and what points inside caps pay.
func (o *orbits) cost(x []float64) float64 {
	o.compute(x)
	return o.total
}

func (o *orbits) gradient(grad, x []float64) {
	o.compute(x)
	for i, s := range o.slope {
		s = r3.Scale(1/r3.Norm(r3.Vec{X: x[3*i], Y: x[3*i+1], Z: x[3*i+2]}), s)
		grad[3*i], grad[3*i+1], grad[3*i+2] = s.X, s.Y, s.Z
	}
}

// compute fills total and slope for x, unless they stand already.
func (o *orbits) compute(x []float64) {
	if slices.Equal(o.x, x) {
		return
	}
	o.x = append(o.x[:0], x...)
	for i := range o.slope {
		o.fill(i, unit(x, i))
	}
	o.total = o.energy()
	for i, pull := range o.slope {
		p := unit(x, i)
		for c, border := range o.cos {
			price := o.prices[i*len(o.cos)+c]
			if paid := price + o.weight*o.inside(p, c, border); paid > 0 {
				o.total += paid * paid / (2 * o.weight)
				pull = r3.Add(pull, r3.Scale(paid, o.zone.Clear[c].Axis))
			}
			o.total -= price * price / (2 * o.weight)
		}
		o.slope[i] = r3.Sub(pull, r3.Scale(r3.Dot(pull, p), p))
	}
}

// inside returns how far a point is inside a cap, as a cosine less the cap's.
func (o *orbits) inside(p r3.Vec, c int, border float64) float64 {
	return r3.Dot(p, o.zone.Clear[c].Axis) - border
}

// raise sets the prices to what is paid at x and returns how far the deepest
// point is inside a cap.
func (o *orbits) raise(x []float64) float64 {
	deepest := 0.0
	for i := range o.slope {
		p := unit(x, i)
		for c, border := range o.cos {
			in := o.inside(p, c, border)
			deepest = max(deepest, in)
			price := &o.prices[i*len(o.cos)+c]
			*price = max(0, *price+o.weight*in)
		}
	}
	return deepest
}
