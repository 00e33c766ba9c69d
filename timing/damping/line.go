package damping

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/stat"
)

// line is trials that differ in one thing: how much of it, 1/Q and its standard
// error, and which of all trials they are; and, of those that are flat, how much alone.
type line struct {
	dose, inverse, sigma, flat []float64
	trial                      []int
}

// along returns the trials that differ from one in a thing alone, or in nothing.
func along(trials []Trial, base int, k knob) line {
	var l line
	scatter := scatterOf(trials)
	for i, t := range trials {
		if d := difference(trials[base].Trial, t.Trial); d != Nothing && d != k.thing {
			continue
		}
		if t.Flat {
			l.flat = append(l.flat, k.of(t.Trial))
			continue
		}
		inverse := 1 / t.Q.Value
		l.trial = append(l.trial, i)
		l.dose = append(l.dose, k.of(t.Trial))
		l.inverse = append(l.inverse, inverse)
		l.sigma = append(l.sigma, inverse*math.Hypot(t.Q.Error/t.Q.Value, scatter))
	}
	return l
}

// bracket returns the greatest dose of too little and the least of too much, and
// whether there are both and they do not contradict each other.
func (l line) bracket(target float64) (low, high float64, ok bool) {
	low, high = math.Inf(-1), math.Inf(1)
	for i, d := range l.dose {
		if l.inverse[i] < target {
			low = max(low, d)
		} else {
			high = min(high, d)
		}
	}
	for _, d := range l.flat {
		high = min(high, d)
	}
	return low, high, low < high && !math.IsInf(low, 0) && !math.IsInf(high, 0)
}

// tried tells whether a dose has been tried.
func (l line) tried(dose float64) bool {
	return slices.Contains(l.dose, dose) || slices.Contains(l.flat, dose)
}

// furthest returns the most that has been tried, or the least.
func (l line) furthest(more bool) float64 {
	all := slices.Concat(l.dose, l.flat)
	if more {
		return slices.Max(all)
	}
	return slices.Min(all)
}

// backfires returns the place in the line of a trial with more of it than the one at a
// place, whose 1/Q is clearly lower even so, the clearest of them; with less of it and a
// higher 1/Q where more is false. It is -1 where there is none.
func (l line) backfires(at int, more bool) int {
	sign := 1.0
	if !more {
		sign = -1
	}
	worst, most := -1, float64(clearSigmas)
	for i := range l.dose {
		if sign*(l.dose[i]-l.dose[at]) <= 0 {
			continue
		}
		if by := sign * (l.inverse[at] - l.inverse[i]) / math.Hypot(l.sigma[at], l.sigma[i]); by > most {
			worst, most = i, by
		}
	}
	return worst
}

// crest returns the dose at which a parabola through the trials has its greatest 1/Q,
// and that, each trial weighed by its standard error. It is not ok with fewer than three
// doses, or where the parabola has no crest among them.
func (l line) crest() (dose, inverse float64, ok bool) {
	doses := slices.Compact(slices.Sorted(slices.Values(l.dose)))
	if len(doses) < 3 { // free: through two there are many parabolas, which the solver refuses, too
		return 0, 0, false
	}
	low, high := doses[0], doses[len(doses)-1]
	a, b := mat.NewDense(len(l.dose), 3, nil), mat.NewVecDense(len(l.dose), nil)
	for i, d := range l.dose {
		t, w := (d-low)/(high-low), 1/l.sigma[i]
		a.SetRow(i, []float64{w, w * t, w * t * t})
		b.SetVec(i, w*l.inverse[i])
	}
	var x mat.VecDense
	if x.SolveVec(a, b) != nil || !(x.AtVec(2) < 0) {
		return 0, 0, false
	}
	t := -x.AtVec(1) / (2 * x.AtVec(2))
	return low + t*(high-low), x.AtVec(0) + t*x.AtVec(1)/2, t > 0 && t < 1
}

// straight is a line of 1/Q over dose, with the covariance of what it is made of and
// the standard error of one trial.
type straight struct {
	middle, height, slope float64 // through height at middle
	heightVar, slopeVar   float64
	trial                 float64
}

// fitLine puts a line through trials, near a target of 1/Q, and tells whether it
// rises: clearly so for what trials scatter, or for how much the line may bend too.
func fitLine(l line, target float64) (straight, bool) {
	s, scatter := l.straight(target, bent), l.straight(target, 0).slopeVar
	return s, s.slope > 0 && s.slope*s.slope > min(s.slopeVar, clearSigmas*clearSigmas*scatter)
}

// straight puts a line through trials that are off it by their scatter and by a share, bend, of
// how far they are from a target of 1/Q. Of one dose alone the slope is NaN.
func (l line) straight(target, bend float64) straight {
	var s straight
	weight := make([]float64, len(l.dose))
	for i := range weight {
		off := bend * (l.inverse[i] - target)
		weight[i] = 1 / (l.sigma[i]*l.sigma[i] + off*off)
		s.trial = max(s.trial, target*l.sigma[i]/l.inverse[i])
	}
	sum := floats.Sum(weight)
	s.middle, s.height, s.heightVar = stat.Mean(l.dose, weight), stat.Mean(l.inverse, weight), 1/sum
	if slices.Min(l.dose) == slices.Max(l.dose) { // whose mean may be beside it by rounding
		s.slope, s.slopeVar = math.NaN(), math.Inf(1)
		return s
	}
	_, s.slope = stat.LinearRegression(l.dose, l.inverse, weight, false)
	s.slopeVar = 1 / (sum * stat.PopVariance(l.dose, weight))
	return s
}

// at returns the dose for a 1/Q.
func (s straight) at(inverse float64) float64 { return s.middle + (inverse-s.height)/s.slope }

// beyond returns the dose for a 1/Q and a little more, or a little less: as much as
// the next trial may be off, so that it is likely to end up past the target.
func (s straight) beyond(inverse float64, more bool) float64 {
	by := min(s.error(s.at(inverse)), past*inverse)
	if !more {
		by = -by
	}
	return s.at(inverse + by)
}

// value returns the 1/Q of a dose.
func (s straight) value(dose float64) float64 {
	return max(s.height+s.slope*(dose-s.middle), s.height/100) // free: keeps it above 0
}

// error returns the standard error of the 1/Q that a trial of a dose will have.
func (s straight) error(dose float64) float64 {
	d := dose - s.middle
	return math.Sqrt(s.heightVar + d*d*s.slopeVar + s.trial*s.trial)
}
