package timing

import (
	"math"

	"pappus/timing/band"
	"pappus/timing/excursion"
)

// The excursion is told at excursionCount frequencies in Hz.
const (
	excursionCount = 121
	excursionLow   = 10.0
	excursionHigh  = 1000.0
)

// guard fills in what the cones do behind the high-pass, the highest levels at
// the spot and how long ears may be in them. Errors are those of WithWoofer.
func (plan *Plan) guard() error {
	plan.moves()
	plan.highest()
	return plan.caution()
}

// moves fills in the excursion over frequency.
func (plan *Plan) moves() {
	cone, known := plan.cone()
	if !known {
		return
	}
	g := &plan.Protection
	g.Frequency = make([]float64, excursionCount)
	band.Log(g.Frequency, excursionLow, excursionHigh)
	g.Unprotected, g.Excursion = make([]float64, excursionCount), make([]float64, excursionCount)
	high := g.HighPass()
	for i, hz := range g.Frequency {
		g.Unprotected[i] = g.Volt * cone.Excursion(hz)
		g.Excursion[i] = g.Unprotected[i] * math.Sqrt(energyOf(high.Response(hz)))
	}
}

// highest fills in the most that each octave band can have at the spot. The
// driver that gets most sets the limit for all; what is not known sets none.
func (plan *Plan) highest() {
	g, r := &plan.Protection, plan.Response
	if !(g.Volt > 0) {
		return
	}
	cone, _ := plan.cone()
	bounds := excursion.Bounds{Excursion: orEndless(g.Reach), Power: orEndless(plan.Array.Driver.PowerHandling), Volt: g.Volt}
	high := g.HighPass()
	for _, centre := range band.Octaves() {
		lowest, highest := band.Edges(centre, 1)
		from, to := indexRange(r.Frequency, lowest, highest)
		h := Highest{Band: centre}
		least, energy := math.Inf(1), 0.0
		for f := from; f < to; f++ {
			volt, by := cone.Limit(r.Frequency[f], high, bounds)
			if volt < least {
				least, h.By = volt, by
			}
			share := volt / g.Volt
			energy += share * share * math.Pow(10, r.Aligned[f]/10)
		}
		h.Level = 10 * math.Log10(energy/float64(to-from))
		g.Highest = append(g.Highest, h)
	}
}

// orEndless returns a limit, endless where it is not known.
func orEndless(limit float64) float64 {
	if limit > 0 {
		return limit
	}
	return math.Inf(1)
}
