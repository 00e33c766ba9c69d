package timing

import (
	"fmt"

	"pappus/layout/advice"
	"pappus/layout/prose"
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
func (plan *Plan) groups(time, weight []float64) ([][]int, error) {
	a := plan.Array
	most := plan.mostChannels()
	if most == 0 {
		return nil, fmt.Errorf("%w", wiring.Arrangement{{Series: len(a.Mounts), Parallel: 1}}.Check(a.Driver.LeastOhm(), a.Wiring.MinimumLoad))
	}
	count := min(a.Wiring.Channels, most)
	if count < min(a.Wiring.Channels, len(a.Mounts)) {
		plan.warn(advice.Finding{Code: "channels_fewer", Rank: advice.Cost,
			What: prose.Sprintf("%s in place of %d, since with fewer than %s of %.3g ohm a channel loads the amplifier below its %g ohm",
				prose.Count(count, "channel", "channels"), a.Wiring.Channels, prose.Count(plan.leastDrivers(), "driver", "drivers"), a.Driver.LeastOhm(), a.Wiring.MinimumLoad),
			Cure: fmt.Sprintf("set channels = %d, or take drivers of more ohms", count)})
	}
	groups := plan.sort(a.Wiring.Split, time, weight, count)
	if most := a.Wiring.LongestString; most > 0 {
		if longest := plan.longestOf(groups); longest > most {
			plan.warn(advice.Finding{Code: "strings_too_long", Rank: advice.Misfit,
				What: fmt.Sprintf("strings of up to %s, though longest_string = %d, which no split into %s in this way keeps to",
					prose.Count(longest, "driver", "drivers"), most, prose.Count(count, "channel", "channels")),
				Cure: fmt.Sprintf("set longest_string = %d, or another number of channels", longest)})
		}
	}
	return groups, nil
}

// sort sorts the drivers into count channels that can be wired; there must be
// enough drivers for that.
func (plan *Plan) sort(by string, time, weight []float64, count int) [][]int {
	if by == byNeighbours {
		return split.Neighbours(plan.places(), count)
	}
	value, weigh := plan.line(by, time, weight)
	return plan.ofSizes(value, weigh, count)
}

// ofSizes splits drivers by some values into count channels that can be wired, with
// strings no longer than the design's longest where there is such a split.
func (plan *Plan) ofSizes(value, weight []float64, count int) [][]int {
	if most := plan.Array.Wiring.LongestString; most > 0 {
		if groups, _, ok := split.OfSizes(value, weight, count, plan.within(most)); ok {
			return groups
		}
	}
	groups, _, _ := split.OfSizes(value, weight, count, plan.canWire)
	return groups
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

// leastDrivers returns the least number of drivers that a channel can be wired
// with: one more than all where no number will do.
func (plan *Plan) leastDrivers() int {
	least := 1
	for least <= len(plan.Array.Mounts) && !plan.canWire(least) {
		least++
	}
	return least
}

// mostChannels returns the most channels that can all be wired.
func (plan *Plan) mostChannels() int { return len(plan.Array.Mounts) / plan.leastDrivers() }
