package equaliser

import (
	"math"

	"gonum.org/v1/gonum/optimize"
)

// tooMuch is how much more a dB of boost where there should be none, or over the
// limit, weighs than one of error.
const tooMuch = 10

// idle is how much a dB of cut weighs where the distance does not count: so little
// that a cut round a null may go through it, enough that none is made there for
// nothing.
const idle = 0.2

// nudge is the step in a free number over which a slope is taken.
const nudge = 1e-5

// goal is what a fit makes small.
type goal struct {
	frequency, level, target []float64
	leave                    []bool
	rate                     float64
	limits                   Limits

	half  []float64 // sin^2 of half the angle per sample, at each frequency
	sum   []float64 // dB of all sections
	ratio []float64 // the same as a factor of power
	pull  []float64 // by how much the cost grows with each of sum
	moved []Section
}

func newGoal(frequency, level, target []float64, leave []bool, rate float64, l Limits) *goal {
	n := len(frequency)
	g := &goal{frequency: frequency, level: level, target: target, leave: leave, rate: rate, limits: l,
		half: make([]float64, n), sum: make([]float64, n), ratio: make([]float64, n), pull: make([]float64, n)}
	for i, hz := range frequency {
		s := math.Sin(math.Pi * hz / rate)
		g.half[i] = s * s
	}
	return g
}

// power is the squared magnitude of a polynomial of second order in the delay,
// in powers of sin^2(w/2). The cookbook's author gives this form, which loses
// far less to rounding at low frequencies than z does.
type power struct{ rest, first, second float64 }

func newPower(c0, c1, c2 float64) power {
	sum := c0 + c1 + c2
	return power{sum * sum, -4 * (c0*c1 + 4*c0*c2 + c1*c2), 16 * c0 * c2}
}

func (p power) at(half float64) float64 { return p.rest + half*(p.first+half*p.second) }

// per returns the change from p to q for each of steps.
func (p power) per(q power, steps float64) power {
	return power{(q.rest - p.rest) / steps, (q.first - p.first) / steps, (q.second - p.second) / steps}
}

// powers returns a section's numerator and denominator.
func (g *goal) powers(s Section) (top, low power) {
	b := s.digital(g.rate)
	return newPower(b.B0, b.B1, b.B2), newPower(1, b.A1, b.A2)
}

// correction fills sum with the level in dB that sections add.
func (g *goal) correction(sections []Section) {
	for i := range g.ratio {
		g.ratio[i] = 1
	}
	for _, s := range sections {
		top, low := g.powers(s)
		for i, h := range g.half {
			g.ratio[i] *= top.at(h) / low.at(h)
		}
	}
	for i, r := range g.ratio {
		g.sum[i] = 10 * math.Log10(r)
	}
}

// error returns the distance from the target at a frequency, in dB.
func (g *goal) error(i int) float64 { return g.level[i] + g.sum[i] - g.target[i] }

// rms returns the RMS of error over the frequencies that count.
func (g *goal) rms() float64 {
	square, n := 0.0, 0
	for i := range g.sum {
		if !g.leave[i] {
			square += g.error(i) * g.error(i)
			n++
		}
	}
	return math.Sqrt(square / float64(n))
}

// cost is the mean squared error, with what should not be: boost where there
// should be none, idle cuts. It fills sum, and pull with how much the cost grows with each.
func (g *goal) cost(sections []Section) float64 {
	g.correction(sections)
	cost, each := 0.0, 1/float64(len(g.sum))
	for i, sum := range g.sum {
		e, weight, over := g.error(i), 1.0, max(0, sum-g.limits.Boost)
		if g.leave[i] {
			e, weight, over = min(0, sum), idle, max(0, sum)
		}
		cost += each * (weight*e*e + tooMuch*over*over)
		g.pull[i] = 2 * each * (weight*e + tooMuch*over)
	}
	return cost
}

// refine moves the sections from from on to where the cost is least.
func (g *goal) refine(sections []Section, from int) []Section {
	moving := sections[from:]
	at := func(x []float64) []Section {
		g.moved = append(g.moved[:0], sections...)
		for k, s := range moving {
			g.moved[from+k] = g.limits.section(s.Shape, x[k*perSection:])
		}
		return g.moved
	}
	start := make([]float64, perSection*len(moving))
	for k, s := range moving {
		g.limits.free(start[k*perSection:], s)
	}
	problem := optimize.Problem{
		Func: func(x []float64) float64 { return g.cost(at(x)) },
		Grad: func(slope, x []float64) {
			g.cost(at(x))
			for k, s := range moving {
				part := k * perSection
				g.slope(slope[part:part+perSection], s.Shape, x[part:part+perSection])
			}
		},
	}
	settings := &optimize.Settings{
		MajorIterations: 150,
		Converger:       &optimize.FunctionConverge{Absolute: 1e-9, Relative: 1e-5, Iterations: 6},
	}
	// A search that stops early, as on a slope too flat to see, still has its best.
	result, _ := optimize.Minimize(problem, start, settings, &optimize.BFGS{})
	if result == nil {
		return sections
	}
	if moved := at(result.X); g.cost(moved) < g.cost(sections) {
		return append([]Section(nil), moved...)
	}
	return sections
}

// slope fills dst with how much the cost grows with each free number of a
// section, from pull. The numerator's and denominator's few coefficients are
// moved a little each way; the chain rule does the rest, without a logarithm at
// each frequency.
func (g *goal) slope(dst []float64, shape Shape, free []float64) {
	top, low := g.powers(g.limits.section(shape, free))
	var upper, lower [perSection]power
	for j := range dst {
		var side [2][2]power
		for k, step := range []float64{-nudge, nudge} {
			moved := [perSection]float64(free)
			moved[j] += step
			side[k][0], side[k][1] = g.powers(g.limits.section(shape, moved[:]))
		}
		upper[j], lower[j] = side[0][0].per(side[1][0], 2*nudge), side[0][1].per(side[1][1], 2*nudge)
	}
	clear(dst)
	for i, h := range g.half {
		t, l := g.pull[i]/top.at(h), g.pull[i]/low.at(h)
		for j := range dst {
			dst[j] += upper[j].at(h)*t - lower[j].at(h)*l
		}
	}
	for j := range dst {
		dst[j] *= 10 / math.Ln10 // dB per share of power
	}
}
