package timing

import (
	"math"
	"slices"

	"pappus/layout/wiring"
	"pappus/timing/measure"

	"gonum.org/v1/gonum/stat"
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

// front returns what shorter strings cost and bring for the spot's number of channels:
// every split that no other beats in both, from the shortest strings to the least
// smear, and the plan's own. There is nothing to choose where the design lays the
// channels out by hand, where each driver has its own, and where neighbours share one.
func front(at atSpot, s *sorter) []Strung {
	a := at.Array
	if len(a.Channels) > 0 || a.Wiring.Channels == 0 || s == nil {
		return nil
	}
	count := len(at.Channels)
	rule, own := s.choose(count), s.sort(count, a.Wiring.LongestString)
	splits := s.undominated(count)
	for _, groups := range [][][]int{rule, own} {
		if !slices.ContainsFunc(splits, func(g [][]int) bool { return s.alike(g, groups) }) {
			splits = append(splits, groups)
		}
	}
	slices.SortStableFunc(splits, func(x, y [][]int) int { return s.sizes.longest(x) - s.sizes.longest(y) })
	least := s.losses(s.groups(count, 0))
	var all []Strung
	for _, groups := range splits {
		f := at.strung(s, groups, least)
		f.Rule, f.Chosen = s.alike(groups, rule), s.alike(groups, own)
		all = append(all, f)
	}
	out := slices.DeleteFunc(slices.Clone(all), func(f Strung) bool { return !f.Rule && !f.Chosen && f.beaten(all) })
	lowest := out[len(out)-1].Louder
	for i := range out {
		out[i].Louder -= lowest
	}
	return out
}

// beaten tells whether another split is as loud, but for what is hardly measured, and
// leaves less smear once its delays are rounded to what can be set.
func (f Strung) beaten(by []Strung) bool {
	const hardly = 0.05 // dB
	return slices.ContainsFunc(by, func(o Strung) bool { return o.Louder > f.Louder-hardly && o.Smear < f.Smear })
}

// strung measures a split into groups against the losses of the least smear; louder by its
// level at the spot, up to what all splits have in common.
func (at atSpot) strung(s *sorter, groups [][]int, least octaveLosses) Strung {
	const middle = 4 // octaves, 500 Hz to 4 kHz
	longest, loss := at.sizes.longest(groups), s.losses(groups)
	f := Strung{Longest: longest, LeastOhm: math.Inf(1), DriverVolt: s.loudness.driverVolt(longest), ByDriver: s.loudness.isOverdriven(longest),
		Louder: s.loudness.level(longest) - stat.Mean(loss[:middle], nil), InStep: bearable(least, loss)}
	late, delay := at.inStep(groups, s.times)
	_, sum := at.pressure.sum(at.pressure.direct, groups, nil, delay)
	f.Smear, f.CombOnset = measure.Smear(late, at.pressure.energies()), measure.CombOnset(at.pressure.frequency, sum, at.pressure.parts())
	for _, g := range groups {
		series := at.sizes.series[len(g)]
		f.LeastOhm = min(f.LeastOhm, wiring.Load(series, len(g)/max(series, 1), at.Array.Driver.LeastOhm()))
		f.Most = max(f.Most, len(g))
	}
	return f
}

// alike tells whether two splits have strings as long and leave the same smear.
func (s *sorter) alike(a, b [][]int) bool {
	return s.sizes.longest(a) == s.sizes.longest(b) && math.Abs(s.smear(a)-s.smear(b)) <= 1e-6*s.smear(b)
}

// undominated returns the splits into count channels of which none has shorter strings
// and no more smear, from the shortest strings to the least smear.
func (s *sorter) undominated(count int) [][][]int {
	free := s.groups(count, 0)
	most := s.sizes.shortest(count)
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

// Held is how channels with long strings hold the others down. Voltage divides along
// a string, and every driver is to get as much, so the channels with shorter strings
// are turned down to what the longest leave each of theirs.
type Held struct {
	Channels []int   // the numbers of the channels with the longest strings
	Series   int     // drivers in each of these
	By       float64 // dB, by how much the channel with the shortest strings is turned down
	// With strings of Cure drivers at most, which is what the rule takes where the design
	// leaves longest_string out, the spot would get Louder dB more from the same amplifier,
	// and Smear in s would be left. Cure is 0 where the rule takes no shorter ones.
	Cure          int
	Louder, Smear float64
	Now           float64 // s, the smear that is left now
}

// heldLeast is from how many dB on it is worth a word.
const heldLeast = 3.0

// Held tells which channels hold the others down, and whether any do so by 3 dB or
// more because the design asks for it: by its longest_string, or by sharing channels
// among neighbours. The rule weighs it where it chooses itself. Channels that the
// design lays out by hand have the gains that it gives them; those hold nothing down.
func (p *Plan) Held() (Held, bool) {
	w := p.Array.Wiring
	if len(p.Array.Channels) > 0 || len(p.Channels) == 0 || w.LongestString == 0 && w.Split != byNeighbours {
		return Held{}, false
	}
	h, shortest := Held{Series: longestString(p.Channels), Now: p.Aligned.Smear}, math.MaxInt
	for _, c := range p.Channels {
		shortest = min(shortest, max(c.Series, 1))
		if c.Series == h.Series {
			h.Channels = append(h.Channels, c.ID)
		}
	}
	if h.By = stringRatio(h.Series, shortest); h.By < heldLeast {
		return Held{}, false
	}
	p.cure(&h)
	return h, true
}

// stringRatio returns by how many dB more voltage a driver gets in a string of b than
// in one of a.
func stringRatio(a, b int) float64 { return 20 * math.Log10(float64(a)/float64(b)) }

// cure takes over what the rule would choose.
func (p *Plan) cure(h *Held) {
	for _, own := range p.Front {
		for _, f := range p.Front {
			if own.Chosen && f.Rule && f.Longest < own.Longest {
				h.Cure, h.Louder, h.Smear = f.Longest, f.Louder-own.Louder, f.Smear
			}
		}
	}
}
