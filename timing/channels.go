package timing

import (
	"fmt"
	"math"

	"pappus/layout"
	"pappus/layout/wiring"
	"pappus/timing/split"
)

// weightFloor keeps a driver that is not heard at the spot from being free to
// join any channel: no weight counts below this share of the greatest.
const weightFloor = 1e-6

// drive sorts the drivers into channels and gives each its delay.
func (p *Planner) drive(plan *Plan) {
	time := plan.times(plan.Array.Timing.DelaysBy)
	for m, t := range time {
		if math.IsNaN(t) {
			time[m] = plan.Arrivals[m].Time // not heard: any delay will do
		}
	}
	weight := weights(plan)
	plan.Channels = p.channels(plan, time, weight)
	setDelays(plan.Channels, time, weight)
	for c := range plan.Channels {
		for _, m := range plan.Channels[c].Mounts {
			plan.Arrivals[m].Channel = c
			plan.Arrivals[m].Delay = plan.Channels[c].Delay
		}
	}
}

// The ways of taking delays that a design may name.
const (
	byStraight = "straight"
	byPath     = "path"
	byField    = "field"
	byPeak     = "peak" // not offered: the field is as good and has no ripple
)

// times returns the arrivals in s as one way of taking them has it.
func (plan *Plan) times(by string) []float64 {
	time := make([]float64, len(plan.Arrivals))
	for m, r := range plan.Arrivals {
		switch by {
		case byStraight:
			time[m] = r.Straight / plan.SpeedOfSound
		case byField:
			time[m] = r.Field
		case byPeak:
			time[m] = r.Peak
		default:
			time[m] = r.Time
		}
	}
	return time
}

// weights returns each driver's squared pressure at the spot, with a floor.
func weights(plan *Plan) []float64 {
	w := make([]float64, len(plan.Arrivals))
	top := 0.0
	for m, r := range plan.Arrivals {
		w[m] = math.Pow(10, r.Level/10)
		top = max(top, w[m])
	}
	for m := range w {
		w[m] = max(w[m], weightFloor*top)
	}
	return w
}

// channels returns the design's own channels, or the best split into as many
// as it asks for, trimmed so that all drivers are as loud, or one for each
// driver.
func (p *Planner) channels(plan *Plan, time, weight []float64) []Channel {
	a := plan.Array
	if len(a.Channels) > 0 {
		out := make([]Channel, len(a.Channels))
		for i, c := range a.Channels {
			out[i] = Channel{Channel: c, Delay: c.Delay}
		}
		return out
	}
	if a.Wiring.Channels == 0 {
		out := make([]Channel, len(a.Mounts))
		for m := range out {
			out[m] = p.channel(plan, m+1, []int{m})
		}
		return out
	}
	groups, _ := split.Groups(time, weight, a.Wiring.Channels)
	out := make([]Channel, len(groups))
	for i, g := range groups {
		out[i] = p.channel(plan, i+1, g)
	}
	trim(out)
	return out
}

// channel wires equal drivers to one channel whose delay is still to be found.
func (p *Planner) channel(plan *Plan, id int, mounts []int) Channel {
	d, w := plan.Array.Driver, plan.Array.Wiring
	c := Channel{Channel: layout.Channel{ID: id, Mounts: mounts}, Delay: math.NaN()}
	var ok bool
	c.Series, c.Parallel, c.NominalOhm, ok = wiring.Best(len(mounts), d.NominalOhm, d.DCOhm, w.MinimumLoad)
	c.DCOhm = wiring.Load(c.Series, c.Parallel, d.DCOhm)
	if !ok {
		plan.Warnings = append(plan.Warnings, fmt.Sprintf(
			"channel %d: %d drivers in equal strings load the amplifier with %.1f ohm at most, below its %g ohm",
			id, len(mounts), c.DCOhm, w.MinimumLoad))
	}
	return c
}

// setDelays gives every channel whose delay is not set by hand the latest
// group's arrival less its own, a group's arrival being the weighted mean of
// its drivers'. Delays are never negative.
func setDelays(channels []Channel, time, weight []float64) {
	mean := make([]float64, len(channels))
	latest := math.Inf(-1)
	for i, c := range channels {
		mean[i] = centre(c.Mounts, time, weight)
		if math.IsNaN(c.Delay) {
			latest = max(latest, mean[i])
		}
	}
	for i := range channels {
		if math.IsNaN(channels[i].Delay) {
			channels[i].Delay = latest - mean[i]
		}
	}
}

// centre returns the weighted mean of the arrivals of some drivers.
func centre(mounts []int, time, weight []float64) float64 {
	if len(mounts) == 1 {
		return time[mounts[0]] // free of rounding
	}
	var sum, total float64
	for _, m := range mounts {
		sum += weight[m] * time[m]
		total += weight[m]
	}
	return sum / total
}
