package timing

import (
	"math"
	"slices"

	"pappus/layout/wiring"
	"pappus/timing/measure"
)

// Strung is a split of the drivers into the plan's number of channels, the best with
// strings of no more than Longest drivers.
type Strung struct {
	Longest   int     // drivers in the longest string
	Smear     float64 // s, at the spot
	CombOnset float64 // Hz; +Inf: none up to the highest computed
	// Louder is how many dB more than the last of the front, the one with the least smear,
	// it gives at the spot from the same amplifier: the mean of the octaves from 500 Hz to
	// 4 kHz, what the smear loses taken off.
	Louder     float64
	DriverVolt float64 // V, RMS, the most that each driver gets of the amplifier's whole voltage, or stands
	ByDriver   bool    // a driver stands no more; else the amplifier gives no more
	LeastOhm   float64 // the lowest load of any channel
	Most       int     // drivers in the largest channel
	InStep     bool    // no octave loses more than the rule allows
	Rule       bool    // the rule's choice
	Chosen     bool    // the plan's own
}

// sameSmear is by what share a split must lower the smear to be worth a line: less is
// neither heard nor built.
const sameSmear = 0.005

// tooLong is how many times the shortest strings others are looked at; then they cost 12
// dB. Of longer ones only the least smear is told.
const tooLong = 4

// front fills in what shorter strings cost and bring for the plan's number of channels:
// every split that no other beats in both, from the shortest strings to the least
// smear, and the plan's own. There is nothing to choose where the design lays the
// channels out by hand, where each driver has its own, and where neighbours share one.
func (p *Planner) front(plan *Plan, s *sorter) {
	a := plan.Array
	if len(a.Channels) > 0 || a.Wiring.Channels == 0 || s == nil {
		return
	}
	count := len(plan.Channels)
	rule, own := s.choose(count), s.sort(count, a.Wiring.LongestString)
	splits := s.undominated(count)
	for _, groups := range [][][]int{rule, own} {
		if !slices.ContainsFunc(splits, func(g [][]int) bool { return s.alike(g, groups) }) {
			splits = append(splits, groups)
		}
	}
	slices.SortStableFunc(splits, func(x, y [][]int) int { return s.sizes.longest(x) - s.sizes.longest(y) })
	free := s.groups(count, 0)
	least, parts := s.loss.of(free, s.delays(free)), p.parts()
	for _, groups := range splits {
		loss := s.loss.of(groups, s.delays(groups))
		f := p.strung(plan, s, groups, parts)
		f.DriverVolt, f.ByDriver = s.driverVolt(f.Longest), s.isOverdriven(f.Longest)
		f.Louder, f.InStep = s.heardLevel(groups, loss), bearable(least, loss)
		f.Rule, f.Chosen = s.alike(groups, rule), s.alike(groups, own)
		plan.Front = append(plan.Front, f)
	}
	every := slices.Clone(plan.Front)
	plan.Front = slices.DeleteFunc(plan.Front, func(f Strung) bool { return !f.Rule && !f.Chosen && f.beaten(every) })
	lowest := plan.Front[len(plan.Front)-1].Louder
	for i := range plan.Front {
		plan.Front[i].Louder -= lowest
	}
}

// beaten tells whether another split is as loud, but for what is hardly measured, and
// leaves less smear once its delays are rounded to what can be set.
func (f Strung) beaten(by []Strung) bool {
	const hardly = 0.05 // dB
	return slices.ContainsFunc(by, func(o Strung) bool { return o.Louder > f.Louder-hardly && o.Smear < f.Smear })
}

// strung measures a split into groups.
func (p *Planner) strung(plan *Plan, s *sorter, groups [][]int, parts []float64) Strung {
	f := Strung{Longest: p.sizes.longest(groups), LeastOhm: math.Inf(1)}
	late, delay := plan.inStep(groups, s.time, s.weight)
	sum := make([]float64, len(parts))
	p.spot.sumGroups(sum, groups, delay, p.medium.Frequency)
	f.Smear, f.CombOnset = measure.Smear(late, p.alone()), measure.CombOnset(p.medium.Frequency, sum, parts)
	for _, g := range groups {
		series := p.sizes.series[len(g)]
		f.LeastOhm = min(f.LeastOhm, wiring.Load(series, len(g)/max(series, 1), p.array.Driver.LeastOhm()))
		f.Most = max(f.Most, len(g))
	}
	return f
}

// heardLevel returns the level in dB at the spot, up to what all splits have in common,
// as the mean of the octaves from 500 Hz to 4 kHz.
func (s *sorter) heardLevel(groups [][]int, loss octaveLosses) float64 {
	const octaves = 4
	return s.level(s.sizes.longest(groups)) - mean(loss[:octaves])
}

// alike tells whether two splits have strings as long and leave the same smear.
func (s *sorter) alike(a, b [][]int) bool {
	return s.sizes.longest(a) == s.sizes.longest(b) && math.Abs(s.smear(a)-s.smear(b)) <= 1e-6*s.smear(b)
}

// undominated returns the splits into count channels of which none has shorter strings
// and no more smear, from the shortest strings to the least smear.
func (s *sorter) undominated(count int) [][][]int {
	free := s.groups(count, 0)
	most := s.shortest(count)
	groups := s.groups(count, most)
	for ; groups == nil; most++ {
		groups = s.groups(count, most+1)
	}
	out := [][][]int{groups}
	low, high, last := s.sizes.longest(groups), s.sizes.longest(free), free
	if far := tooLong * low; far < high {
		high, last = far, s.groups(count, far)
	}
	out = s.between(out, count, low, high, s.smear(groups), s.smear(last))
	if last := out[len(out)-1]; s.smear(free) < s.smear(last)*(1-sameSmear) {
		out = append(out, free)
	}
	return out
}

// between appends the splits whose longest strings are longer than low and shorter than
// high, where these leave so much smear. Since longer strings never leave more along a
// line of arrivals, nothing is looked for between two that leave the same.
func (s *sorter) between(dst [][][]int, count, low, high int, atLow, atHigh float64) [][][]int {
	if high-low < 2 || atHigh >= atLow*(1-sameSmear) {
		return dst
	}
	mid := (low + high) / 2
	groups := s.groups(count, mid)
	smear := s.smear(groups)
	dst = s.between(dst, count, low, mid, atLow, smear)
	if last := dst[len(dst)-1]; smear < s.smear(last)*(1-sameSmear) {
		dst = append(dst, groups)
	}
	return s.between(dst, count, mid, high, smear, atHigh)
}

// Limit names what keeps each driver from more: amplifier, or driver where it stands no
// more.
func (f Strung) Limit() string {
	if f.ByDriver {
		return "driver"
	}
	return "amplifier"
}
