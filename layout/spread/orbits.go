package spread

import (
	"math"

	"gonum.org/v1/gonum/optimize"
	"gonum.org/v1/gonum/spatial/r3"
)

// orbits is the Coulomb energy of rings as a function of one point of each.
//
// The zone is held by an augmented Lagrangian: a point that is inside a cap
// pays with the square of how far, and a price for each point and cap is raised
// from round to round by what was still paid, until no point is inside by more
// than rounding (M. J. D. Powell, in R. Fletcher, Optimization, 1969; J. Nocedal
// and S. J. Wright, Numerical Optimization, 2nd ed., 17.3 and 17.4).
type orbits struct {
	rings
	cos    []float64 // of the half-angle of each cap
	prices []float64 // by ring and cap
	weight float64
	slope  []r3.Vec // of what was computed last, by ring
}

func newOrbits(n int, poles []r3.Vec, z Zone) *orbits {
	count := (n - len(poles)) / z.Fold
	o := &orbits{rings: newRings(n, poles, z), prices: make([]float64, count*len(z.Clear)), slope: make([]r3.Vec, count)}
	for _, c := range z.Clear {
		o.cos = append(o.cos, math.Cos(c.HalfAngle))
	}
	// As stiff as the points hold each other: their distance goes as one over
	// the root of how many they are, and the stiffness as its third power.
	o.weight = 10 * float64(n) * math.Sqrt(float64(n)) * float64(z.Fold)
	return o
}

// settle lowers the energy of the rings through some points by at most so many
// steps in each of so many rounds, or until the slope at each point is under level.
// It returns points drawn into the zone and the energy of all, which is infinite if
// one could not be drawn there.
func (o *orbits) settle(points []r3.Vec, steps, rounds int, level float64) ([]r3.Vec, float64) {
	clear(o.prices)
	x := free(points)
	settings := &optimize.Settings{MajorIterations: steps, GradientThreshold: level, Converger: optimize.NeverTerminate{}}
	for range rounds {
		x = descend(x, settings, 1, o.cost)
		if o.raise(drawn(nil, x)) <= onBorder/10 {
			break
		}
	}
	out := drawn(nil, x)
	for i, p := range out {
		out[i] = o.zone.draw(p)
	}
	return out, o.at(out)
}

// at returns the energy of all points with each ring through a point,
// infinite where one is outside of the zone.
func (o *orbits) at(points []r3.Vec) float64 {
	o.place(points)
	if !o.contains(points) {
		return math.Inf(1)
	}
	return o.energy()
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
		own := o.first(ring)
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

// cost returns the energy and what points inside caps pay, and its slope.
func (o *orbits) cost(points []r3.Vec) (total float64, slope []r3.Vec) {
	o.place(points)
	total = o.energy()
	for i, p := range points {
		for c, border := range o.cos {
			price, axis := o.prices[i*len(o.cos)+c], o.zone.Clear[c].Axis
			if paid := price + o.weight*(r3.Dot(p, axis)-border); paid > 0 {
				total += paid * paid / (2 * o.weight)
				o.slope[i] = r3.Add(o.slope[i], r3.Scale(paid, axis))
			}
			total -= price * price / (2 * o.weight)
		}
	}
	return total, o.slope
}

// raise sets the prices to what is paid at some points and returns how far the deepest
// of them is inside a cap, as a cosine less the cap's.
func (o *orbits) raise(points []r3.Vec) float64 {
	deepest := 0.0
	for i, p := range points {
		for c, border := range o.cos {
			in := r3.Dot(p, o.zone.Clear[c].Axis) - border
			deepest = max(deepest, in)
			price := &o.prices[i*len(o.cos)+c]
			*price = max(0, *price+o.weight*in)
		}
	}
	return deepest
}
