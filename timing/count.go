package timing

import (
	"math"
	"math/cmplx"

	"pappus/layout"
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
	Split     string  // arrival, neighbours, height; of the plan's own also hand, or each where every driver has its own
	Smear     float64 // s, weighted by energy, as the split and its delays are
	Plain     float64 // s, every driver counting alike, for the split and its delays too
	CombOnset float64 // Hz, of the split by energy; +Inf: none up to the highest computed
	Longest   int     // drivers in the longest string of the split by energy
}

// How a plan's own channels are split where it is in none of the ways that a
// design may name.
const (
	ofHand = "hand"
	ofEach = "each"
)

// count fills in what 1, 2, 3 … channels would leave: up to one for each driver,
// MostCounts, and no more than can be wired. It returns what it sorted them with; nil
// for neighbours.
func (p *Planner) count(plan *Plan) *sorter {
	time := plan.heard()
	alone, ones := p.alone(), ones(len(time))
	weight := raised(append([]float64(nil), alone...))
	most := min(plan.mostChannels(), MostCounts)
	s, plainSorts := p.sorterFor(plan, time, weight), p.sorterFor(plan, time, ones)
	parts, sum := p.parts(), make([]float64, len(p.medium.Frequency))
	for k := 1; k <= most; k++ {
		groups, plain := plan.sorts(s, plainSorts, k)
		if groups == nil {
			continue // not so many can be wired, though more can
		}
		late, delay := plan.inStep(groups, time, weight)
		plainLate, _ := plan.inStep(plain, time, ones)
		p.spot.sumGroups(sum, groups, delay, p.medium.Frequency)
		plan.Counts = append(plan.Counts, Count{
			Channels:  k,
			Split:     plan.CountedBy(),
			Smear:     measure.Smear(late, alone),
			Plain:     measure.Smear(plainLate, ones),
			CombOnset: measure.CombOnset(p.medium.Frequency, sum, parts),
			Longest:   p.sizes.longest(groups),
		})
	}
	return s
}

// CountedBy returns how the counts split the drivers: arrival, neighbours or
// height.
func (plan *Plan) CountedBy() string {
	if by := plan.Array.Wiring.Split; by != "" && len(plan.Array.Channels) == 0 {
		return by
	}
	return byArrival
}

// sorterFor returns what sorts a plan's drivers as the counts do; nil for neighbours.
func (p *Planner) sorterFor(plan *Plan, time, weight []float64) *sorter {
	if by := plan.CountedBy(); by != byNeighbours {
		return p.sorter(plan, by, time, weight)
	}
	return nil
}

// sorts sorts the drivers into count channels with two sorters, the second of which
// takes all drivers for alike and has strings no longer than the first comes to, or than
// the design allows.
func (plan *Plan) sorts(s, plain *sorter, count int) (groups, plainGroups [][]int) {
	if s == nil {
		groups = split.Neighbours(plan.places(), count)
		return groups, groups
	}
	most := plan.Array.Wiring.LongestString
	if groups = s.sort(count, most); groups == nil {
		return nil, nil
	}
	return groups, plain.groups(count, max(most, s.sizes.longest(groups)))
}

// inStep returns when each driver is heard with the delays that bring groups of drivers,
// all as loud, into step as far as the processor can be set to them, and these delays.
func (plan *Plan) inStep(groups [][]int, time, weight []float64) (late, delay []float64) {
	late, delay = make([]float64, len(time)), make([]float64, len(groups))
	latest := math.Inf(-1)
	for g, mounts := range groups {
		delay[g] = centre(mounts, time, weight)
		latest = max(latest, delay[g])
	}
	for g := range delay {
		delay[g] = latest - delay[g] + plan.Wait
	}
	common := plan.rounder.common(plan.rounder.fields(groups, ones(len(time))), delay)
	for g, mounts := range groups {
		delay[g] = plan.Settable(delay[g] + common)
		for _, m := range mounts {
			late[m] = plan.Arrivals[m].Heard() + delay[g]
		}
	}
	return late, delay
}

// ones returns n weights of 1.
func ones(n int) []float64 {
	out := make([]float64, n)
	for i := range out {
		out[i] = 1
	}
	return out
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
	if len(plan.Array.Channels) > 0 {
		own.Split = ofHand
		return own, -1
	}
	for i, c := range plan.Counts {
		if c.Channels == own.Channels {
			return c, i
		}
	}
	return own, -1
}

// alone returns each driver's squared pressure at the spot, all being as loud; to
// the bit what weights makes of the levels, so that ties are settled alike.
func (p *Planner) alone() []float64 {
	low, high := indexRange(p.medium.Frequency, layout.WeightLowHz, layout.WeightHighHz)
	w := make([]float64, len(p.array.Mounts))
	for m := range w {
		w[m] = math.Pow(10, 10*math.Log10(p.spot.energy(m, low, high))/10)
	}
	return w
}

// parts returns the sum of the drivers' magnitudes at the spot, all being as loud.
func (p *Planner) parts() []float64 {
	parts := make([]float64, len(p.medium.Frequency))
	for m := range p.array.Mounts {
		for f, v := range p.spot.row(m) {
			parts[f] += cmplx.Abs(v)
		}
	}
	return parts
}

// sumGroups fills dst with the magnitude of the sum over groups of drivers, each
// with its own delay in s.
func (s *spotSums) sumGroups(dst []float64, groups [][]int, delay, frequency []float64) {
	clear(s.sum)
	one := make([]complex128, s.frequencies)
	for g, mounts := range groups {
		clear(one)
		for _, m := range mounts {
			for f, v := range s.row(m) {
				one[f] += v
			}
		}
		for f, v := range one {
			s.sum[f] += v * turn(frequency[f], delay[g])
		}
	}
	for f, v := range s.sum {
		dst[f] = cmplx.Abs(v)
	}
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
