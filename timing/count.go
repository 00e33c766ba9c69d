package timing

import (
	"context"
	"math"

	"pappus/timing/channelcount"
	"pappus/timing/measure"
	"pappus/timing/split"
)

// MostCounts is the most channels that the counts go up to, far more than any
// amplifier here has; each takes a sum over all drivers.
const MostCounts = 128

// Count is what a number of channels would leave at the spot, with the drivers
// split as the design asks, by arrival for a layout by hand, all as loud, and with
// delays that can be set.
type Count struct {
	Channels  int
	Split     string  // arrival, neighbours, height; of the plan's own also hand, seats, or each where every driver has its own
	Smear     float64 // s, weighted by energy, as the split and its delays are
	Plain     float64 // s, every driver counting alike, for the split and its delays too
	CombOnset float64 // Hz, of the split by energy; +Inf: none up to the highest computed
	Longest   int     // drivers in the longest string of the split by energy
}

// How a plan's own channels are split where it is in none of the ways that a
// design may name.
const (
	ofHand  = "hand"
	ofSeats = "seats"
	ofEach  = "each"
)

// atSpot is a spot with what it was made from, for what else is told of it.
type atSpot struct {
	*Spot
	pressure  *pressures
	rounder   rounder
	sizes     stringSizes
	ratedVolt float64
}

// alike are the times of the drivers, all being as loud.
func (at atSpot) alike() times {
	t := times{at.times().time, at.pressure.energies()}
	raise(t.weight)
	return t
}

// sorter returns what sorts the drivers as the counts do, for their times and weights; nil
// for neighbours.
func (at atSpot) sorter(t times) *sorter {
	if by := at.CountedBy(); by != byNeighbours {
		return newSorter(at.Array, at.pressure, at.sizes, at.ratedVolt, by, t)
	}
	return nil
}

// counts returns what 1, 2, 3 … channels would leave: up to one for each driver,
// MostCounts, and no more than can be wired. s sorts the drivers with weights as they are,
// and is nil for neighbours. It works until ctx ends, whose error it gives then.
func counts(ctx context.Context, at atSpot, s *sorter, t times) ([]Count, error) {
	energy, alike := at.pressure.energies(), times{t.time, ones(len(t.time))}
	plain, parts := at.sorter(alike), at.pressure.parts()
	var out []Count
	for k := 1; k <= min(at.sizes.mostChannels(), MostCounts) && ctx.Err() == nil; k++ {
		groups, plainGroups := at.split(s, plain, k)
		if groups == nil {
			continue // not so many can be wired, though more can
		}
		late, delay := at.inStep(groups, t)
		plainLate, _ := at.inStep(plainGroups, alike)
		_, sum := at.pressure.sum(at.pressure.direct, groups, nil, delay)
		out = append(out, Count{
			Channels:  k,
			Split:     at.CountedBy(),
			Smear:     measure.Smear(late, energy),
			Plain:     measure.Smear(plainLate, alike.weight),
			CombOnset: measure.CombOnset(at.pressure.frequency, sum, parts),
			Longest:   at.sizes.longest(groups),
		})
	}
	return out, ctx.Err()
}

// CountedBy returns how the counts split the drivers: arrival, neighbours or
// height.
func (s *Spot) CountedBy() string {
	if by := s.Array.Wiring.Split; by != "" && len(s.Array.Channels) == 0 {
		return by
	}
	return byArrival
}

// split sorts the drivers into count channels with two sorters, the second of which
// takes all drivers for alike and has strings no longer than the first comes to, or than
// the design allows.
func (at atSpot) split(s, plain *sorter, count int) (groups, plainGroups [][]int) {
	if s == nil {
		groups = split.Neighbours(mountPlaces(at.Array), count)
		return groups, groups
	}
	most := at.Array.Wiring.LongestString
	if groups = s.sort(count, most); groups == nil {
		return nil, nil
	}
	return groups, plain.groups(count, max(most, s.sizes.longest(groups)))
}

// inStep returns when each driver is heard with the delays that bring groups of drivers,
// all as loud, into step as far as the processor can be set to them, and these delays.
func (at atSpot) inStep(groups [][]int, t times) (late, delay []float64) {
	late, delay = make([]float64, len(t.time)), make([]float64, len(groups))
	latest := math.Inf(-1)
	for g, mounts := range groups {
		delay[g] = t.mean(mounts)
		latest = max(latest, delay[g])
	}
	for g := range delay {
		delay[g] = latest - delay[g] + at.Wait
	}
	common := at.rounder.common(at.rounder.fields(groups, nil), delay)
	for g, mounts := range groups {
		delay[g] = at.Settable(delay[g] + common)
		for _, m := range mounts {
			late[m] = at.Arrivals[m].Heard() + delay[g]
		}
	}
	return late, delay
}

// Own returns what the plan's own channels leave, with their gains and polarities,
// and the index of the count that this is; -1 where there is none, as for a layout
// by hand or where not every driver can have a channel of its own.
func (plan *Plan) Own() (own Count, index int) {
	late := make([]float64, len(plan.Arrivals))
	for m, r := range plan.Arrivals {
		late[m] = r.Heard() + r.Delay
	}
	own = Count{Channels: len(plan.Channels), Split: ofEach, Smear: plan.Aligned.Smear,
		Plain: measure.Smear(late, ones(len(late))), CombOnset: plan.Aligned.CombOnset, Longest: longestString(plan.Channels)}
	switch {
	case len(plan.Array.Channels) > 0:
		own.Split = ofHand
		return own, -1
	case plan.Seating != nil:
		own.Split = ofSeats
		return own, -1
	}
	for i, c := range plan.Counts {
		if c.Channels == own.Channels {
			return c, i
		}
	}
	return own, -1
}

// Curves returns the smear and the comb onset of each count.
func (plan *Plan) Curves() (smear, onset []float64) {
	for _, c := range plan.Counts {
		smear, onset = append(smear, c.Smear), append(onset, c.CombOnset)
	}
	return smear, onset
}

// Knees returns the numbers of channels from which on more hardly pay, for the
// smear and for the comb onset; 0 where there are no counts.
func (plan *Plan) Knees() (smear, onset int) {
	s, o := plan.Curves()
	return channelcount.Knee(s), channelcount.OnsetKnee(o)
}
