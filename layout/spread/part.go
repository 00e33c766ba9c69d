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
	rings
	chord  float64
	order  []int    // of the points, by height
	sorted []r3.Vec // the points in that order
	pull   []r3.Vec // slope of the cost at each point
	pulls  []r3.Vec // the same, in that order
	slope  []r3.Vec // at each ring's first point
}

// wider is by how much more than asked the search parts points, so that what is
// left of the cost when it ends is within what was asked.
const wider = 1.003

// partingSteps is the most steps of one parting: those that end well take under
// a hundred.
const partingSteps = 400

func newParting(n int, poles []r3.Vec, z Zone) *parting {
	p := &parting{
		rings:  newRings(n, poles, z),
		chord:  2 * math.Sin(min(wider*z.Apart, math.Pi)/2),
		order:  make([]int, n),
		sorted: make([]r3.Vec, n),
		pull:   make([]r3.Vec, n),
		pulls:  make([]r3.Vec, n),
	}
	for i := range p.order {
		p.order[i] = i
	}
	return p
}

// run parts the rings through some points and tells whether all that the zone
// asks holds then.
func (p *parting) run(start []r3.Vec) ([]r3.Vec, bool) {
	settings := &optimize.Settings{
		MajorIterations:   partingSteps,
		GradientThreshold: 1e-7,
		// Where they jam the cost falls ever more slowly.
		Converger: &optimize.FunctionConverge{Absolute: 1e-9, Relative: 1e-2, Iterations: 25},
	}
	out := drawn(nil, descend(free(start), settings, float64(p.zone.Fold), p.cost))
	for i, at := range out {
		out[i] = p.zone.draw(at)
	}
	p.place(out)
	return out, p.contains(out) && LeastAngle(p.points) >= p.zone.Apart
}

// cost returns what pairs and points inside caps pay, and its slope over how many points a
// ring has.
func (p *parting) cost(points []r3.Vec) (total float64, slope []r3.Vec) {
	p.place(points)
	total = p.pairs()
	for i, at := range p.points[len(p.poles):] {
		for _, c := range p.zone.Clear {
			sin, cos := math.Sincos(c.HalfAngle)
			// In chords of the parting, as the pairs pay.
			scale := max(sin, 1e-3) * p.chord
			if in := (r3.Dot(at, c.Axis) - cos) / scale; in > 0 {
				total += in * in
				pull := &p.pull[len(p.poles)+i]
				*pull = r3.Add(*pull, r3.Scale(2*in/scale, c.Axis))
			}
		}
	}
	p.slope = p.slope[:0]
	for i := range points {
		p.slope = append(p.slope, p.pull[p.first(i)])
	}
	return total, p.slope
}

// pairs returns what pairs pay and fills pull with the slope of it.
func (p *parting) pairs() float64 {
	slices.SortStableFunc(p.order, func(i, j int) int { return cmp.Compare(p.points[i].Z, p.points[j].Z) })
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
// if there are, then from a spiral and from chance; last in the steady zone, in which zones
// that are all but the same find the same.
func parted(n int, poles []r3.Vec, z Zone, from []r3.Vec) ([]r3.Vec, bool) {
	points, found := partedIn(n, poles, z, from)
	if !found {
		points, found = partedIn(n, poles, z.steady(), nil)
	}
	return points, found
}

// partedIn is parted in a zone as it is.
func partedIn(n int, poles []r3.Vec, z Zone, from []r3.Vec) ([]r3.Vec, bool) {
	count := (n - len(poles)) / z.Fold
	if n > z.ceiling() {
		return nil, false
	}
	if count == 0 {
		return nil, LeastAngle(poles) >= z.Apart
	}
	p := newParting(n, poles, z)
	if from != nil {
		if points, found := p.run(from); found {
			return points, true
		}
	}
	start, err := spiralWithin(count, z)
	random := rand.New(rand.NewPCG(1, uint64(n)))
	for range 1 + min(500/n, 8) {
		if err != nil || start == nil {
			break
		}
		if points, found := p.run(start); found {
			return points, true
		}
		start = scatterWithin(count, z, random)
	}
	return nil, false
}

// steps is how many steps a steady zone's sizes have from half a distance that is asked, or less,
// to the whole: a step is 0.4 to 0.8 % of it, over the 0.3 % under the widest distance in which it
// is chance whether a search finds points. Of 6000 zones with sizes up to 1 % less than those of
// 150 that hold steadily all held, with twice as many steps all but 8; the widest distance that
// is found steadily is 0.3 % less than that which is found at all.
const steps = 128

// steady returns the zone, with all sizes taken up to the next step, that stands for all zones
// whose sizes are in the same steps. Where points are all but jammed it hangs on the last bit
// of a size whether a search finds them; points found in the steady zone are good in each.
func (z Zone) steady() Zone {
	_, exponent := math.Frexp(z.Apart) // Apart is from half of 2^exponent to less than all of it
	step := math.Ldexp(0.5, exponent) / steps
	up := func(angle float64) float64 { return min(math.Ceil(angle/step)*step, math.Pi) }
	out := Zone{Fold: z.Fold, Apart: up(z.Apart)}
	for _, c := range z.Clear {
		out.Clear = append(out.Clear, Cap{c.Axis, up(c.HalfAngle)})
	}
	return out
}

// Holds tells whether n points as far apart as a zone asks were found in it.
// Where it does, Settled.Apart finds them too. That it does not proves nothing; it
// searches from a spiral and, for few points, from chance.
func Holds(n int, z Zone) bool { return holds(n, z, parted) }

// HoldsSteadily tells whether they were found so that they are in a zone whose sizes are less
// by rounding too: Holds can be true of one zone and not of the other.
func HoldsSteadily(n int, z Zone) bool {
	return holds(n, z, func(n int, poles []r3.Vec, z Zone, from []r3.Vec) ([]r3.Vec, bool) {
		return partedIn(n, poles, z.steady(), from)
	})
}

// holds tells whether a search finds n points in a zone.
func holds(n int, z Zone, search func(int, []r3.Vec, Zone, []r3.Vec) ([]r3.Vec, bool)) bool {
	if n < 1 || n > Most || z.check(n) != nil {
		return false
	}
	z = z.round()
	poles, err := onAxis(n, z)
	if err != nil {
		return false
	}
	_, found := search(n, poles, z, nil)
	return found
}

// ceiling returns a count that no zone holds more of at the distance it asks: as
// many discs as the densest packing of a plane puts on its area, and some more
// for small numbers and for what reaches out at the border.
func (z Zone) ceiling() int {
	if !(z.Apart > 0) {
		return Most
	}
	const samples = 4096
	half, in := min(z.Apart, math.Pi)/2, 0
	for _, p := range Spiral(samples) {
		blocked := func(c Cap) bool { return c.HalfAngle > half && r3.Dot(p, c.Axis) > math.Cos(c.HalfAngle-half) }
		if !slices.ContainsFunc(z.Clear, blocked) {
			in++
		}
	}
	densest := math.Pi / math.Sqrt(12)
	disc := (1 - math.Cos(half)) / 2 // of the whole sphere
	return int(min(Most, 1.05*densest*float64(in)/samples/disc+3))
}

// Capacity returns how many points as far apart as a zone asks were found in it,
// of at most so many and with as many on the axis as that count leaves over the
// symmetry; 0 where not one was. It halves the range of counts, as if fewer
// points always fitted where more do. It is no proven maximum: another
// arrangement may take some percent more.
func Capacity(most int, z Zone) int {
	if Holds(most, z) {
		return most
	}
	fold := max(z.Fold, 1)
	over := most % fold
	low, high := 0, most/fold // rings that fit, that do not
	if high > 0 && over+high*fold > z.round().ceiling() {
		high = max(1, min(high, (z.round().ceiling()-over)/fold+1))
	}
	for high-low > 1 {
		if middle := (low + high) / 2; Holds(over+middle*fold, z) {
			low = middle
		} else {
			high = middle
		}
	}
	if low == 0 && (over == 0 || !Holds(over, z)) {
		return 0
	}
	return over + low*fold
}
