package equaliser

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/optimize"
)

// tooMuch is how much more a dB of boost where there should be none, or over the
// limit, weighs than one of error.
const tooMuch = 10

// nearNull is how much more a dB of boost weighs beside a null, where a boost's skirt
// would have the more of it.
const nearNull = 10

// idle is how much a dB of cut weighs where the distance does not count: so little
// that a cut round a null may go through it, enough that none is made there for
// nothing.
const idle = 0.2

// nudge is the step in a free number over which a slope is taken: far over rounding, and what a
// slope is off by goes with its square, so that no section hangs on it.
const nudge = 1e-5

// goal is what a fit makes small.
type goal struct {
	frequency, level, target []float64
	care                     []Care
	rate                     float64
	limits                   Limits

	half  []float64 // sin^2 of half the angle per sample, at each frequency
	sum   []float64 // dB of all sections
	ratio []float64 // the same as a factor of power
	pull  []float64 // by how much the cost grows with each of sum
	tried []Section
	moved float64 // dB by which the target is moved
}

func newGoal(frequency, level, target []float64, care []Care, rate float64, l Limits) *goal {
	n := len(frequency)
	g := &goal{frequency: frequency, level: level, target: target, care: care, rate: rate, limits: l,
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

// error returns the distance from the target at a frequency, in dB; where only cuts
// help, a target above the level is the level itself.
func (g *goal) error(i int) float64 {
	over := g.level[i] - g.target[i] - g.moved
	if g.care[i] == CutOnly {
		over = max(0, over)
	}
	return over + g.sum[i]
}

// lift returns the mean of error where all counts, 0 unless the shape alone is judged.
func (g *goal) lift() float64 {
	sum, n := 0.0, 0.0
	for i, care := range g.care {
		if care == Count {
			sum += g.error(i)
			n++
		}
	}
	if !g.limits.AnyLevel || n == 0 {
		return 0
	}
	return sum / n
}

// rms returns the RMS of error, less lift where all counts, over the frequencies that
// count.
func (g *goal) rms() float64 {
	lift := g.lift()
	square, n := 0.0, 0.0
	for i, care := range g.care {
		e := g.error(i)
		switch care {
		case Leave:
			continue
		case Count:
			e -= lift
		}
		square += e * e
		n++
	}
	return math.Sqrt(square / n)
}

// cost is the mean squared error, with what should not be: boost where there
// should be none, idle cuts. It fills sum, and pull with how much the cost grows with each.
func (g *goal) cost(sections []Section) float64 {
	g.correction(sections)
	cost, each := 0.0, 1/float64(len(g.sum))
	for i, sum := range g.sum {
		e, weight, over, much := g.error(i), 1.0, max(0, sum-g.limits.Boost), float64(tooMuch)
		switch g.care[i] {
		case CutOnly:
			over, much = max(0, sum), nearNull*tooMuch
		case Leave:
			e, weight, over = min(0, sum), idle, max(0, sum)
		}
		cost += each * (weight*e*e + much*over*over)
		g.pull[i] = 2 * each * (weight*e + much*over)
	}
	return cost
}

// rmsOf returns the RMS of error that sections leave. It fills sum.
func (g *goal) rmsOf(sections []Section) float64 {
	g.correction(sections)
	return g.rms()
}

// allow tells whether sections keep to what is asked of them together: boosts and cuts
// apart, and no boost where there should be none.
func (g *goal) allow(sections []Section) bool {
	return g.limits.allow(sections) && !slices.ContainsFunc(sections, func(s Section) bool {
		return s.Gain >= slight && g.care[g.nearest(s.Frequency)] != Count
	})
}

// nearest returns the index of the frequency nearest to one in Hz.
func (g *goal) nearest(hz float64) int {
	i, _ := slices.BinarySearch(g.frequency, hz)
	if i == len(g.frequency) || i > 0 && hz/g.frequency[i-1] < g.frequency[i]/hz {
		return i - 1
	}
	return i
}

// refine moves the sections from from on to where the cost is least.
func (g *goal) refine(sections []Section, from int) []Section {
	moving := sections[from:]
	if len(moving) == 0 {
		return sections
	}
	at := func(x []float64) []Section {
		g.tried = append(g.tried[:0], sections...)
		for k, s := range moving {
			g.tried[from+k] = g.limits.section(s.Shape, x[k*perSection:])
		}
		return g.tried
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
