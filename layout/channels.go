package layout

import (
	"fmt"
	"math"

	"pappus/layout/design"
	"pappus/layout/wiring"
)

// channels gives the channels that the design lays out by hand, each wired as
// well as it can be. Every driver must be in one of them.
func channels(d *design.Design, a *Array) ([]Channel, error) {
	if len(d.Channels) == 0 {
		return nil, nil
	}
	index := make(map[int]int, len(a.Mounts))
	for i, m := range a.Mounts {
		index[m.ID] = i
	}
	taken := make([]bool, len(a.Mounts))
	out := make([]Channel, len(d.Channels))
	for i, c := range d.Channels {
		out[i] = channel(i+1, c, a)
		for j, id := range c.Drivers {
			m, ok := index[id]
			if !ok {
				return nil, fault(d, fmt.Sprintf("channel[%d].drivers", i+1), "", fmt.Sprintf(
					"there is no driver %d; must be a mount number from 1 to %d that is not skipped", id, a.Mounts[len(a.Mounts)-1].ID), ErrNoSuchMount)
			}
			out[i].Mounts[j], taken[m] = m, true
		}
	}
	for i, m := range a.Mounts {
		if !taken[i] {
			return nil, fault(d, "channel", "", fmt.Sprintf(
				"driver %d is in no channel; must be in one, or its place in mounts.skip", m.ID), design.ErrConflict)
		}
	}
	return out, nil
}

// channel turns one channel into SI, wired, without its mounts.
func channel(id int, c design.Channel, a *Array) Channel {
	n := len(c.Drivers)
	series, parallel, load, _ := wiring.Best(n, a.Driver.NominalOhm, a.Driver.LeastOhm(), a.Wiring.MinimumLoad)
	delay := math.NaN()
	if c.DelayUS != nil {
		delay = *c.DelayUS * us
	}
	return Channel{
		ID:         id,
		Mounts:     make([]int, n),
		Gain:       c.GainDB,
		Invert:     c.Invert,
		Delay:      delay,
		Series:     series,
		Parallel:   parallel,
		NominalOhm: load,
		DCOhm:      wiring.Load(series, parallel, a.Driver.DCOhm),
	}
}
