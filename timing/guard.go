package timing

import (
	"fmt"
	"math"

	"pappus/timing/band"
	"pappus/timing/excursion"
	"pappus/timing/exposure"
)

// The excursion is told at excursionCount frequencies in Hz.
const (
	excursionCount = 121
	excursionLow   = 10.0
	excursionHigh  = 1000.0
)

// pinkLow and pinkHigh bound the pink noise in Hz whose level is told.
const pinkLow, pinkHigh = 20.0, 20000.0

// quietEnough is the level in dBA from which on an allowed time means anything: 24
// hours and more are allowed below.
const quietEnough = 80.0

// guard fills in what the cones do behind the high-pass, the highest levels at
// the spot and how long ears may be in them.
func (plan *Plan) guard() {
	plan.moves()
	plan.highest()
	plan.ears()
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
	cone.Fill(g.Unprotected, g.Frequency, g.Volt)
	high := g.HighPass()
	for i, hz := range g.Frequency {
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
	cone, known := plan.cone()
	if !known {
		cone = excursion.Driver{DCOhm: plan.Array.Driver.DCOhm, Resonance: math.NaN()} // moves by NaN, which limits nothing
	}
	bounds := excursion.Bounds{Excursion: orEndless(g.Reach), Power: orEndless(plan.Array.Driver.PowerHandling), Volt: g.Volt}
	limit := make([]excursion.Limit, len(r.Frequency))
	cone.Limits(limit, r.Frequency, g.HighPass(), bounds)
	for _, centre := range band.Octaves() {
		low, high := band.Edges(centre, 1)
		from, to := indexRange(r.Frequency, low, high)
		h := Highest{Band: centre, By: limit[from].By}
		least, energy := limit[from].Volt, 0.0
		for f := from; f < to; f++ {
			if limit[f].Volt < least {
				least, h.By = limit[f].Volt, limit[f].By
			}
			share := limit[f].Volt / g.Volt
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

// ears fills in how loud pink noise of the wiring's voltage is at the spot, and
// how long it may last.
func (plan *Plan) ears() {
	if !plan.IsAbsolute() {
		return
	}
	g, r := &plan.Protection, plan.Response
	// Evenly spaced on a logarithmic axis, each frequency stands for an equal part
	// of the noise; what lies below the first hardly weighs.
	n := len(r.Frequency)
	step := math.Log(r.Frequency[n-1]/r.Frequency[0]) / float64(n-1)
	part := 10 * math.Log10(step/math.Log(pinkHigh/pinkLow))
	level := make([]float64, n)
	for f := range level {
		level[f] = r.Aligned[f] + part
	}
	g.Level = exposure.Level(r.Frequency, level)
	g.Hours = math.Inf(1)
	if g.Level >= quietEnough {
		g.Hours = exposure.Allowed(g.Level)
	}
	if g.Level >= exposure.Limit {
		plan.Warnings = append(plan.Warnings, fmt.Sprintf(
			"pink noise of %.4g V comes to %.0f dBA at the spot: no more than %s a day (NIOSH 98-126, for grown-ups at work); much less for children",
			plan.Array.Wiring.Voltage, g.Level, lasting(g.Hours)))
	}
}

// lasting writes a time in hours.
func lasting(hours float64) string {
	switch {
	case hours == 0:
		return "no time at all"
	case hours < 1.0/60:
		return fmt.Sprintf("%.2g seconds", 3600*hours)
	case hours < 1:
		return fmt.Sprintf("%.2g minutes", 60*hours)
	}
	return fmt.Sprintf("%.2g hours", hours)
}
