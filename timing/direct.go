package timing

import (
	"math"
	"math/cmplx"

	"pappus/timing/measure"

	"gonum.org/v1/gonum/spatial/r3"
)

// Direct measures a plan at its spot by the direct sound of the body alone, without
// the surface below it or the room round it, as built and with the delays. Walls comb
// from low frequencies on whatever the delays; what the delays do is what the direct
// sound shows. The plan is one that this planner, or Make, made for the same array;
// it is left as it is.
func (p *Planner) Direct(plan *Plan) (unaligned, aligned Measures, err error) {
	field, err := directField(plan.Array, p.medium, []r3.Vec{plan.Array.Spot})
	if err != nil {
		return unaligned, aligned, err
	}
	s, fed := &p.spot, newFeed(plan)
	s.hear(field, plan.Array)
	s.sumInto(s.built, fed.gain, nil, p.medium.Frequency)
	s.sumInto(s.aligned, fed.gain, fed.delay, p.medium.Frequency)
	clear(s.step)
	heard := *plan
	heard.Arrivals = append([]Arrival(nil), plan.Arrivals...)
	low, high := indexRange(p.medium.Frequency, weightLow, weightHigh)
	for m, g := range fed.gain {
		for f, v := range s.row(m) {
			s.step[f] += math.Abs(g) * cmplx.Abs(v)
		}
		heard.Arrivals[m].Level = 10*math.Log10(s.energy(m, low, high)) + 20*math.Log10(math.Abs(g))
	}
	unaligned, aligned = heard.measures(make([]float64, len(fed.delay))), heard.measures(fed.delay)
	unaligned.CombOnset = measure.CombOnset(p.medium.Frequency, s.built, s.step)
	aligned.CombOnset = measure.CombOnset(p.medium.Frequency, s.aligned, s.step)
	return unaligned, aligned, nil
}
