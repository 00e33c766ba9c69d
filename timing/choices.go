package timing

import (
	"math"

	"pappus/timing/band"
)

// choices fills in what each way of taking delays, one for each driver, would
// leave of the direct sound at the spot: how far the energy of each octave falls
// short of all drivers in step.
func (p *Planner) choices(plan *Plan) {
	octaves := band.Octaves()
	gain := newFeed(plan).gain
	sum := make([]float64, len(p.medium.Frequency))
	for _, by := range []string{byStraight, byPath, byField, byPeak} {
		time := plan.times(by)
		for m, t := range time {
			if math.IsNaN(t) {
				time[m] = plan.Arrivals[m].Time
			}
			time[m] = -time[m] // delays up to a common constant, which no level shows
		}
		p.spot.sumInto(sum, p.spot.direct, gain, time, p.medium.Frequency)
		c := Choice{By: by, Band: octaves, Short: make([]float64, len(octaves))}
		for b, centre := range octaves {
			c.Short[b] = meanLevel(p.medium.Frequency, p.spot.step, centre) - meanLevel(p.medium.Frequency, sum, centre)
		}
		plan.Choices = append(plan.Choices, c)
	}
}

// meanLevel returns the level in dB of the energy mean of magnitudes over the
// octave round a centre.
func meanLevel(frequency, magnitude []float64, centre float64) float64 {
	low, high := band.Edges(centre, 1)
	from, to := indexRange(frequency, low, high)
	sum := 0.0
	for _, v := range magnitude[from:to] {
		sum += v * v
	}
	return 10 * math.Log10(sum/float64(to-from))
}
