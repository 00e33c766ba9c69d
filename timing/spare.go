package timing

import (
	"cmp"
	"context"
	"math"
	"slices"

	"pappus/layout"
	"pappus/layout/advice"
	"pappus/layout/wiring"
	"pappus/timing/band"

	"gonum.org/v1/gonum/stat"
)

const (
	// worthSpare is how many dB more at the spot are worth leaving places empty: twice the
	// amplifier's power.
	worthSpare = 3.0
	// mostSpare is the most places to leave empty, of every ten; one at least.
	mostSpare = 0.1
	// sameLoud is how close in dB two levels may be and count as equal: mirrored places of
	// a symmetric body.
	sameLoud = 0.05
	// nearlyQuietest is how many dB above the quietest a place may be to be left empty in
	// its stead, so that the places left empty lie symmetrically.
	nearlyQuietest = 3.0
	// mostApart is how many dB the drivers of unequal strings may differ: less than those
	// of one delivery do at times (common practice).
	mostApart = 1.5
)

// wasted tells of a number of drivers that strings badly, so that a few places left
// empty, or unequal strings, give the spot 3 dB more or better. It works until ctx ends.
func (p *Planner) wasted(ctx context.Context, plan *Plan) (found findings, err error) {
	a := plan.Array
	if len(plan.Front) == 0 || a.Wiring.LongestString > 0 || ctx.Err() != nil {
		return nil, ctx.Err()
	}
	var waste StringsWaste
	gain := 0.0
	if fewer, series := p.fewer(&plan.Spot); fewer > 0 {
		empty := plan.quietest(fewer)
		if gain, err = p.without(&plan.Spot, empty); err != nil {
			return nil, err
		}
		if gain >= worthSpare {
			waste.Empty = &LeftEmpty{a.IDs(empty), len(plan.Arrivals) - fewer, series, gain}
		}
	}
	if unequal := p.unequally(&plan.Spot); unequal != nil && unequal.Gain > max(gain-worthSpare, 0) {
		waste.Unequal = unequal
	}
	if waste.Empty == nil && waste.Unequal == nil {
		return nil, nil
	}
	longest := longestString(plan.Channels)
	i := slices.IndexFunc(plan.Channels, func(c Channel) bool { return max(c.Series, 1) == longest })
	c := plan.Channels[i]
	waste.Channel, waste.Drivers, waste.Channels, waste.Strings = c.ID, len(c.Mounts), len(plan.Channels), wiring.Arrangement{{Series: longest, Parallel: c.Parallel}}
	waste.DCOhm, waste.Volt, waste.Watt = c.DCOhm, a.Wiring.Voltage, plan.Banks[i].DriverWatt
	found.warn("strings_waste", advice.Cost, waste)
	return found, nil
}

// fewer returns how many places to leave empty so that shorter strings give 3 dB more,
// and how many drivers these have; 0 where there are none. They are the fewest for which
// no further ones give another 3 dB.
func (p *Planner) fewer(s *Spot) (places, series int) {
	n, count, longest := len(s.Arrivals), len(s.Channels), longestString(s.Channels)
	loud := newLoudness(p.array, p.ratedVolt)
	most := max(1, int(mostSpare*float64(n)))
	shortest := make([]int, most+1) // by the places left empty; 0: none shorter
	for short := longest - 1; short >= 1 && count*p.sizes.widest[short] >= n-most; short-- {
		can := p.sizes.sums(count, short)
		for m := 1; m <= most; m++ {
			if can[n-m] {
				shortest[m] = short
			}
		}
	}
	had := 0.0
	for m := 1; m <= most; m++ {
		if shortest[m] == 0 {
			continue
		}
		gain := loud.level(shortest[m]) - loud.level(longest) + 20*math.Log10(float64(n-m)/float64(n))
		if gain >= had+worthSpare {
			places, series, had = m, shortest[m], gain
		}
	}
	return places, series
}

// sums tells of every number of drivers whether they go into count channels with no
// more than most in a string.
func (s stringSizes) sums(count, most int) []bool {
	n := len(s.series)
	now, next, will := make([]bool, n), make([]bool, n), s.within(most)
	now[0] = true
	for range count {
		clear(next)
		for sum, can := range now {
			for size := 1; can && sum+size < n && size <= s.widest[most]; size++ {
				next[sum+size] = next[sum+size] || will(size)
			}
		}
		now, next = next, now
	}
	return now
}

// quietest returns the mounts that the spot misses least, rising: those heard most
// quietly. Of mounts that are as quiet, as mirrored ones, all or none are taken where
// that can be had for little more.
func (s *Spot) quietest(count int) []int {
	order := all(len(s.Arrivals))
	slices.SortStableFunc(order, func(x, y int) int { return cmp.Compare(s.Arrivals[x].Level, s.Arrivals[y].Level) })
	var out, held []int
	limit := s.Arrivals[order[min(count, len(order))-1]].Level + nearlyQuietest
	for from, to := 0, 0; from < len(order) && len(out) < count; from = to {
		level := s.Arrivals[order[from]].Level
		for to = from; to < len(order) && !(s.Arrivals[order[to]].Level-level > sameLoud); to++ { // of silence and silence it is NaN
		}
		alike := order[from:to]
		slices.Sort(alike)
		if len(alike) <= count-len(out) && level <= limit {
			out = append(out, alike...)
		} else {
			held = append(held, alike...)
		}
	}
	out = append(out, held[:min(len(held), count-len(out))]...)
	slices.Sort(out)
	return out
}

// without returns by how many dB the spot gets more, in the mean from 500 Hz to 4 kHz and
// with all in step, where some mounts are left empty; none where the delays of the
// others then leave a tenth more smear.
func (p *Planner) without(s *Spot, empty []int) (gain float64, err error) {
	a := *p.array
	a.Spot, a.Mounts = s.Array.Spot, nil
	for m, mount := range p.array.Mounts {
		if !slices.Contains(empty, m) {
			a.Mounts = append(a.Mounts, mount)
		} else if mount.Body == 0 { // its place stays, and with it the field that is solved for
			a.Empty = append(a.Empty[:len(a.Empty):len(a.Empty)], mount)
		}
	}
	fewer, err := NewPlanner(&a)
	if err != nil {
		return 0, err
	}
	moved, err := fewer.Spot(a.Spot)
	if err != nil {
		return 0, err
	}
	if moved.Aligned.Smear > 1.1*s.Aligned.Smear+sameTime {
		return 0, nil
	}
	return moved.middle() - s.middle() + p.overdriven(s) - p.overdriven(moved), nil
}

// middle returns the mean level in dB from 500 Hz to 4 kHz with all in step. What one
// delay for many leaves of it is chance once they comb.
func (s *Spot) middle() float64 {
	from, to := band.Range(s.Response.Frequency, layout.WeightLowHz, layout.WeightHighHz)
	level := stat.Mean(s.Response.InStep[from:to], nil)
	if !s.IsAbsolute() {
		level += 20 * math.Log10(s.DriverVolt()) // else for a driver in the longest string
	}
	return level
}

// overdriven returns by how many dB a spot's drivers get more voltage than they stand.
func (p *Planner) overdriven(s *Spot) float64 {
	return max(0, 20*math.Log10(s.DriverVolt()/p.ratedVolt))
}

// unequally returns unequal strings of one channel that would give 3 dB more or better;
// nil where none do.
func (p *Planner) unequally(s *Spot) *StrungUnequally {
	if len(s.Channels) != 1 {
		return nil
	}
	w, d := s.Array.Wiring, s.Array.Driver
	c, n := s.Channels[0], len(s.Channels[0].Mounts)
	strength := func(a wiring.Arrangement) float64 {
		strings, shortest := 0.0, n
		for _, s := range a {
			strings, shortest = strings+float64(s.Parallel), min(shortest, s.Series)
		}
		return 20 * math.Log10(strings*min(1, p.ratedVolt*float64(shortest)/w.Voltage))
	}
	var best wiring.Arrangement
	now := strength(wiring.Arrangement{{Series: max(c.Series, 1), Parallel: max(c.Parallel, 1)}})
	for _, a := range wiring.Arrangements(n) {
		if a.IsEqual() || apart(a) > mostApart || a.Check(d.LeastOhm(), w.MinimumLoad) != nil {
			continue
		}
		if strength(a) >= now+worthSpare && (best == nil || strength(a) > strength(best)) {
			best = a
		}
	}
	if best == nil {
		return nil
	}
	return &StrungUnequally{best, best.Load(d.DCOhm), strength(best) - now, apart(best)}
}

// apart returns by how many dB the drivers of the shortest strings are louder than those
// of the longest.
func apart(a wiring.Arrangement) float64 { return stringRatio(a[0].Series, a[len(a)-1].Series) }
