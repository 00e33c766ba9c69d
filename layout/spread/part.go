package spread

import (
	"cmp"
	"math"
	"math/rand/v2"
	"slices"

	"gonum.org/v1/gonum/optimize"
	"gonum.org/v1/gonum/spatial/r3"
)

// parting pushes points apart that are nearer than a zone asks, and leaves the
// others where they are: each pair that is too near pays with the square of how
// much its squared distance lacks, as a point inside a cap pays with the square
// of how far. Where every point has room it ends at a cost of nothing; where they
// jam it stays above that (soft discs: C. S. O'Hern, L. E. Silbert, A. J. Liu, S.
// R. Nagel, Phys. Rev. E 68 (2003) 011306).
type parting struct {
	zone   Zone // with Fold of at least 1 and axes of length 1
	chord  float64
	turns  [][2]float64 // sine and cosine of the turn to each point of a ring
	poles  int
	points []r3.Vec // the poles, then each ring
	order  []int    // of the points, by height
	sorted []r3.Vec // the points in that order
	pull   []r3.Vec // slope of the cost at each point
	pulls  []r3.Vec // the same, in that order
	// What was computed last, and where: x y z of each ring's point.
	x     []float64
	total float64
}

// wider is by how much more than asked the search parts points, so that what is
// left of the cost when it ends is within what was asked.
const wider = 1.003

// partingSteps is the most steps of one parting: those that end well take under
// a hundred.
const partingSteps = 400

func newParting(rings int, poles []r3.Vec, z Zone) *parting {
	n := len(poles) + rings*z.Fold
	p := &parting{
		zone:   z,
		chord:  2 * math.Sin(min(wider*z.Apart, math.Pi)/2),
		poles:  len(poles),
		points: make([]r3.Vec, n),
		order:  make([]int, n),
		sorted: make([]r3.Vec, n),
		pull:   make([]r3.Vec, n),
		pulls:  make([]r3.Vec, n),
	}
	copy(p.points, poles)
	for i := range p.order {
		p.order[i] = i
	}
	for k := range z.Fold {
		sin, cos := math.Sincos(2 * math.Pi * float64(k) / float64(z.Fold))
		p.turns = append(p.turns, [2]float64{sin, cos})
	}
	return p
}

// run parts the rings through some points and tells whether all that the zone
// asks holds then.
func (p *parting) run(start []r3.Vec) ([]r3.Vec, bool) {
	x := make([]float64, 0, 3*len(start))
	for _, s := range start {
		x = append(x, s.X, s.Y, s.Z)
	}
	problem := optimize.Problem{Func: p.cost, Grad: p.gradient}
	settings := &optimize.Settings{
		MajorIterations:   partingSteps,
		GradientThreshold: 1e-7,
		// Where they jam the cost falls ever more slowly.
		Converger: &optimize.FunctionConverge{Absolute: 1e-9, Relative: 1e-2, Iterations: 25},
	}
	if result, _ := optimize.Minimize(problem, x, settings, &optimize.LBFGS{}); result != nil {
		x = result.X
	}
	out := make([]r3.Vec, len(start))
	for i := range out {
		out[i] = p.zone.draw(unit(x, i))
		if !p.zone.Contains(out[i]) {
			return nil, false
		}
		p.fill(i, out[i])
	}
	return out, LeastAngle(p.points) >= p.zone.Apart
}

// fill puts the i-th ring through a point.
func (p *parting) fill(i int, own r3.Vec) {
	at := p.poles + i*p.zone.Fold
	for k, turn := range p.turns {
		p.points[at+k] = r3.Vec{X: turn[1]*own.X - turn[0]*own.Y, Y: turn[0]*own.X + turn[1]*own.Y, Z: own.Z}
	}
}

func (p *parting) cost(x []float64) float64 {
	p.compute(x)
	return p.total
}

func (p *parting) gradient(grad, x []float64) {
	p.compute(x)
	fold := float64(p.zone.Fold)
	for i := range len(x) / 3 {
		own := p.poles + i*p.zone.Fold
		at, s := p.points[own], p.pull[own]
		s = r3.Sub(s, r3.Scale(r3.Dot(s, at), at))
		s = r3.Scale(fold/r3.Norm(r3.Vec{X: x[3*i], Y: x[3*i+1], Z: x[3*i+2]}), s)
		grad[3*i], grad[3*i+1], grad[3*i+2] = s.X, s.Y, s.Z
	}
}

// compute fills total and pull for x, unless they stand already.
func (p *parting) compute(x []float64) {
	if slices.Equal(p.x, x) {
		return
	}
	p.x = append(p.x[:0], x...)
	for i := range len(x) / 3 {
		p.fill(i, unit(x, i))
	}
	p.total = p.pairs()
	for i, at := range p.points[p.poles:] {
		for _, c := range p.zone.Clear {
			sin, cos := math.Sincos(c.HalfAngle)
			// In chords of the parting, as the pairs pay.
			scale := max(sin, 1e-3) * p.chord
			if in := (r3.Dot(at, c.Axis) - cos) / scale; in > 0 {
				p.total += in * in
				p.pull[p.poles+i] = r3.Add(p.pull[p.poles+i], r3.Scale(2*in/scale, c.Axis))
			}
		}
	}
}

// pairs returns what pairs pay and fills pull with the slope of it.
func (p *parting) pairs() float64 {
	byHeight(p.points, p.order)
	for at, i := range p.order {
		p.sorted[at] = p.points[i]
	}
	clear(p.pulls)
	limit, total := p.chord*p.chord, 0.0
	for i, at := range p.sorted {
		for j := i + 1; j < len(p.sorted); j++ {
			d := r3.Sub(at, p.sorted[j])
			if -d.Z > p.chord {
				break
			}
			lack := 1 - r3.Norm2(d)/limit
			if lack <= 0 {
				continue
			}
			total += lack * lack
			d = r3.Scale(4*lack/limit, d)
			p.pulls[i], p.pulls[j] = r3.Sub(p.pulls[i], d), r3.Add(p.pulls[j], d)
		}
	}
	for at, i := range p.order {
		p.pull[i] = p.pulls[at]
	}
	return total
}

// byHeight sorts an order of points by their height, fast where it nearly is.
func byHeight(points []r3.Vec, order []int) {
	for at := 1; at < len(order); at++ {
		i, to := order[at], at
		for to > 0 && points[order[to-1]].Z > points[i].Z {
			order[to] = order[to-1]
			to--
		}
		order[to] = i
	}
}

// LeastAngle returns the angle in rad, seen from the centre, between the two of
// some points on the unit sphere that are nearest to each other; +Inf for fewer
// than two.
func LeastAngle(points []r3.Vec) float64 {
	if len(points) < 2 {
		return math.Inf(1)
	}
	order := make([]int, len(points))
	for i := range order {
		order[i] = i
	}
	// Some pair is as near as the densest packing has it (L. Fejes Toth, 1943).
	n := float64(max(len(points), 3))
	w := n / (n - 2) * math.Pi / 6
	reach := math.Sqrt(4-1/(math.Sin(w)*math.Sin(w))) * (1 + 1e-9)
	if len(points) == 2 {
		reach = 2
	}
	slices.SortFunc(order, func(i, j int) int { return cmp.Compare(points[i].Z, points[j].Z) })
	least := 4.0
	for at, i := range order {
		for _, j := range order[at+1:] {
			d := r3.Sub(points[i], points[j])
			if -d.Z > reach {
				break
			}
			least = min(least, r3.Norm2(d))
		}
	}
	return 2 * math.Asin(min(1, math.Sqrt(least)/2))
}

// parted looks for rings as far apart as the rounded zone asks: from some points,
// if there are, then from a spiral and from chance.
func parted(n int, poles []r3.Vec, z Zone, from []r3.Vec) ([]r3.Vec, bool) {
	rings := (n - len(poles)) / z.Fold
	if n > z.ceiling() {
		return nil, false
	}
	p := newParting(rings, poles, z)
	if rings == 0 {
		return nil, LeastAngle(poles) >= z.Apart
	}
	if from != nil {
		if points, found := p.run(from); found {
			return points, true
		}
	}
	start, err := spiralWithin(rings, z)
	if err != nil {
		return nil, false
	}
	if points, found := p.run(start); found {
		return points, true
	}
	random := rand.New(rand.NewPCG(1, uint64(n)))
	for range min(500/n, 8) {
		if start = scatterWithin(rings, z, random); start == nil {
			break
		}
		if points, found := p.run(start); found {
			return points, true
		}
	}
	return nil, false
}
