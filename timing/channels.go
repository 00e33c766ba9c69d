package timing

import (
	"math"

	"pappus/layout"
	"pappus/layout/advice"
	"pappus/layout/wiring"
)

// weightFloor keeps a driver that is not heard at the spot from being free to
// join any channel: no weight counts below this share of the greatest.
const weightFloor = 1e-6

// drive sorts the drivers into channels, gives each the delay that it is to be set to
// and all the high-pass that keeps the cones within their reach.
func (p *Planner) drive(plan *Plan) error {
	time := plan.heard()
	weight := weights(plan)
	var err error
	if plan.Channels, err = p.channels(plan, time, weight); err != nil {
		return err
	}
	setDelays(plan.Channels, time, weight)
	plan.checkHand(time, weight)
	for c := range plan.Channels {
		for _, m := range plan.Channels[c].Mounts {
			plan.Arrivals[m].Channel = c
		}
	}
	plan.feedLevels()
	p.settle(plan)
	p.protect(plan)
	return nil
}

// heard returns the arrivals in s that the design takes its delays by.
func (plan *Plan) heard() []float64 {
	time := plan.times(plan.Array.Timing.DelaysBy)
	for m, t := range time {
		if math.IsNaN(t) {
			time[m] = plan.Arrivals[m].Time // not heard: any delay will do
		}
	}
	return time
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
	for m, r := range plan.Arrivals {
		w[m] = math.Pow(10, r.Level/10)
	}
	return raised(w)
}

// raised brings weights up to the floor, in place.
func raised(w []float64) []float64 {
	top := 0.0
	for _, v := range w {
		top = max(top, v)
	}
	for m := range w {
		w[m] = max(w[m], weightFloor*top)
	}
	return w
}

// channels returns the design's own channels, or the best split into as many
// as it asks for, trimmed so that all drivers are as loud, or one for each
// driver.
func (p *Planner) channels(plan *Plan, time, weight []float64) ([]Channel, error) {
	a := plan.Array
	if len(a.Channels) > 0 {
		out := make([]Channel, len(a.Channels))
		for i, c := range a.Channels {
			out[i] = Channel{Channel: c, Delay: c.Delay}
		}
		return out, nil
	}
	groups, err := [][]int(nil), error(nil)
	if a.Wiring.Channels == 0 {
		groups = each(len(a.Mounts))
		if !plan.canWire(1) {
			plan.warn("load_too_low", advice.Danger, LoadTooLow{a.Driver.LeastOhm(), a.Wiring.MinimumLoad})
		}
	} else if groups, err = p.groups(plan, time, weight); err != nil {
		return nil, err
	}
	out := make([]Channel, len(groups))
	for i, g := range groups {
		out[i] = wired(a, i+1, g)
	}
	trim(out)
	return out, nil
}

// each returns n groups of one.
func each(n int) [][]int {
	out := make([][]int, n)
	for m := range out {
		out[m] = []int{m}
	}
	return out
}

// wired wires equal drivers to one channel whose delay is still to be found: in
// equal strings, with the load nearest above the amplifier's minimum. Unequal
// strings are never needed: one string of all has the highest load there is.
func wired(a *layout.Array, id int, mounts []int) Channel {
	d := a.Driver
	c := Channel{Channel: layout.Channel{ID: id, Mounts: mounts}, Delay: math.NaN()}
	c.Series, c.Parallel, c.NominalOhm, _ = wiring.Best(len(mounts), d.NominalOhm, d.LeastOhm(), a.Wiring.MinimumLoad)
	c.DCOhm = wiring.Load(c.Series, c.Parallel, d.DCOhm)
	return c
}

// setDelays gives every channel whose delay is not set by hand what brings it
// into step with the latest of all, a channel's arrival being the weighted mean
// of its drivers' and any delay set by hand. Delays are never negative, so a
// channel whose delay is set too short stays ahead of the others.
func setDelays(channels []Channel, time, weight []float64) {
	mean := make([]float64, len(channels))
	latest := math.Inf(-1)
	for i, c := range channels {
		mean[i] = centre(c.Mounts, time, weight)
		latest = max(latest, mean[i]+byHand(c))
	}
	for i := range channels {
		if math.IsNaN(channels[i].Delay) {
			channels[i].Delay = latest - mean[i]
		}
	}
}

// byHand returns the delay in s that a channel is set to by hand, 0 where it is
// not.
func byHand(c Channel) float64 {
	if d := c.Channel.Delay; !math.IsNaN(d) {
		return d
	}
	return 0
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
