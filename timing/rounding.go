package timing

import (
	"math"

	"pappus/timing/band"
)

// Rounding is what the processor's step makes of the delays: by how much they are off,
// and what that costs the direct sound at the spot.
type Rounding struct {
	Worst  float64   // s, the greatest difference of any channel between what is set and Exact
	Common float64   // s, what all delays have on top so that rounding costs least
	Band   []float64 // Hz, exact octave centres
	// Loss is by how many dB each octave of the array's sum gets weaker; below 0 where
	// rounding happens to help. NaN for an octave that does not lie below half the
	// processor's rate.
	Loss []float64
}

// settle turns the channels' delays, as they were worked out, into those that the
// processor can be set to: it adds what all wait for, the woofer and what makes rounding
// cheap, and rounds to the processor's step. From here on a channel has this one delay.
// A delay set by hand stays as it is, but for what waits for the woofer.
func (p *Planner) settle(plan *Plan) {
	groups, exact, byHand := make([][]int, len(plan.Channels)), make([]float64, len(plan.Channels)), false
	for i, c := range plan.Channels {
		groups[i] = c.Mounts
		byHand = byHand || plan.isByHand(i)
	}
	if plan.Wait = plan.waitForWoofer(); byHand {
		plan.Wait = plan.Settable(plan.Wait)
	}
	for i, c := range plan.Channels {
		exact[i] = c.Delay + plan.Wait
	}
	plan.rounder = p.rounder()
	field := plan.rounder.fields(groups, newFeed(plan).gain)
	if !byHand {
		plan.Rounding.Common = plan.rounder.common(field, exact)
	}
	set := make([]float64, len(exact))
	for i := range plan.Channels {
		c := &plan.Channels[i]
		c.Exact = exact[i] + plan.Rounding.Common
		if c.Delay = c.Exact; !plan.isByHand(i) {
			c.Delay = plan.Settable(c.Exact)
		}
		exact[i], set[i] = c.Exact, c.Delay
		plan.Rounding.Worst = max(plan.Rounding.Worst, math.Abs(c.Delay-c.Exact))
		for _, m := range c.Mounts {
			plan.Arrivals[m].Delay = c.Delay
		}
	}
	plan.Rounding.Band, plan.Rounding.Loss = band.Octaves(), plan.rounder.losses(field, exact, set)
}

// isByHand tells whether the design sets a channel's delay.
func (p *Plan) isByHand(channel int) bool {
	return len(p.Array.Channels) > 0 && !math.IsNaN(p.Channels[channel].Channel.Delay)
}

// Settable returns the delay in s nearest to one that the processor can be set to.
func (p *Plan) Settable(delay float64) float64 {
	step := p.Array.Processor.Step
	if !(step > 0) {
		return delay
	}
	return math.Round(delay/step) * step
}
