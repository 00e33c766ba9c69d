package damping

import (
	"math"
)

// line is trials that differ in one thing: how much of it, 1/Q and its standard
// error; and, of those that are flat, how much alone.
type line struct{ dose, inverse, sigma, flat []float64 }

// along returns the trials that differ from one in a thing alone, or in nothing.
func along(trials []Trial, base int, k knob) line {
	var l line
	scatter := scatterOf(trials)
	for _, t := range trials {
		if d := difference(trials[base].Trial, t.Trial); d != Nothing && d != k.thing {
			continue
		}
		if t.Flat {
			l.flat = append(l.flat, k.of(t.Trial))
			continue
		}
		inverse := 1 / t.Q.Value
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

// straight is a line of 1/Q over dose, with the covariance of what it is made of and
// the standard error of one trial.
type straight struct {
	middle, height, slope float64 // through height at middle
	heightVar, slopeVar   float64
	trial                 float64
}

// fitLine puts a line through trials, near a target of 1/Q, and tells whether it
// clearly rises.
func fitLine(l line, target float64) (straight, bool) {
	var s straight
	var sum float64
	weight := make([]float64, len(l.dose))
	for i := range weight {
		off := bent * (l.inverse[i] - target)
		weight[i] = 1 / (l.sigma[i]*l.sigma[i] + off*off)
		sum += weight[i]
		s.middle += weight[i] * l.dose[i]
		s.height += weight[i] * l.inverse[i]
		s.trial = max(s.trial, l.sigma[i]/l.inverse[i])
	}
	s.middle, s.height, s.heightVar = s.middle/sum, s.height/sum, 1/sum
	s.trial *= target
	var square, product float64
	for i, w := range weight {
		d := l.dose[i] - s.middle
		square += w * d * d
		product += w * d * (l.inverse[i] - s.height)
	}
	if square == 0 {
		return s, false
	}
	s.slope, s.slopeVar = product/square, 1/square
	return s, s.slope > 0 && s.slope*s.slope > s.slopeVar
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
	return max(s.height+s.slope*(dose-s.middle), s.height/100)
}

// error returns the standard error of the 1/Q that a trial of a dose will have.
func (s straight) error(dose float64) float64 {
	d := dose - s.middle
	return math.Sqrt(s.heightVar + d*d*s.slopeVar + s.trial*s.trial)
}
