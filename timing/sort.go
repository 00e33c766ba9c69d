package timing

import (
	"fmt"

	"pappus/layout/advice"
	"pappus/layout/wiring"
	"pappus/timing/split"

	"gonum.org/v1/gonum/spatial/r3"
)

// The ways of sorting drivers into channels that a design may name.
const (
	byArrival    = "arrival" // also where none is named
	byNeighbours = "neighbours"
	byHeight     = "height"
)

// groups sorts the drivers into the design's number of channels, in the design's
// way, so that each channel can be wired at or above the amplifier's minimum
// load. The more drivers there are in one string the higher is their load, so
// whether some can be wired is a question of their number alone. Where the
// design's number of channels cannot all be wired there are fewer, with a
// warning; where not even one string of all drivers will do the error wraps
// wiring.ErrLoad.
func (p *Planner) groups(plan *Plan, time, weight []float64) ([][]int, error) {
	a := plan.Array
	most := plan.mostChannels()
	if most == 0 {
		return nil, fmt.Errorf("%w", wiring.Arrangement{{Series: len(a.Mounts), Parallel: 1}}.Check(a.Driver.LeastOhm(), a.Wiring.MinimumLoad))
	}
	count := min(a.Wiring.Channels, most)
	if count < min(a.Wiring.Channels, len(a.Mounts)) {
		plan.warn("channels_fewer", advice.Cost, FewerChannels{count, a.Wiring.Channels, plan.LeastDrivers(), a.Driver.LeastOhm(), a.Wiring.MinimumLoad})
	}
	groups := p.sort(plan, time, weight, count)
	if most := a.Wiring.LongestString; most > 0 {
		if longest := p.sizes.longest(groups); longest > most {
			plan.warn("strings_too_long", advice.Misfit, LongStrings{longest, most, count})
		}
	}
	return groups, nil
}

// sort sorts the drivers into count channels that can be wired; there must be
// enough drivers for that.
func (p *Planner) sort(plan *Plan, time, weight []float64, count int) [][]int {
	by, most := plan.Array.Wiring.Split, plan.Array.Wiring.LongestString
	if by == byNeighbours {
		return split.Neighbours(plan.places(), count)
	}
	return p.sorter(plan, by, time, weight).sort(count, most)
}

// sort sorts the drivers into count channels: with no more than most in a string where
// the design says so and there is such a split, else as the rule takes them.
func (s *sorter) sort(count, most int) [][]int {
	if most == 0 {
		return s.choose(count)
	}
	if groups := s.groups(count, most); groups != nil {
		return groups
	}
	return s.groups(count, 0)
}

// places returns where the drivers are, in m.
func (plan *Plan) places() []r3.Vec {
	place := make([]r3.Vec, len(plan.Array.Mounts))
	for m, mount := range plan.Array.Mounts {
		place[m] = mount.Point
	}
	return place
}

// canWire tells whether a number of drivers can be wired at or above the
// amplifier's minimum load.
func (plan *Plan) canWire(drivers int) bool {
	d := plan.Array.Driver
	_, _, _, ok := wiring.Best(drivers, d.NominalOhm, d.LeastOhm(), plan.Array.Wiring.MinimumLoad)
	return ok
}

// LeastDrivers returns the least number of drivers that a channel can be wired
// with: one more than all where no number will do.
func (plan *Plan) LeastDrivers() int {
	least := 1
	for least <= len(plan.Array.Mounts) && !plan.canWire(least) {
		least++
	}
	return least
}

// mostChannels returns the most channels that can all be wired.
func (plan *Plan) mostChannels() int { return len(plan.Array.Mounts) / plan.LeastDrivers() }
