package verdict

import (
	"maps"
	"math"
	"math/cmplx"
	"slices"

	"pappus/timing"
	"pappus/timing/recording"
)

// What tells that the recordings are not of what they are said to be.
const (
	inTime     = 20e-6 // s: 7 mm of air, as near as a body and a microphone are placed
	ofDelays   = 0.1   // of the span of the delays, if that is more: a delay forgotten is the whole of it
	mostInTime = 0.75  // of the channels, which are in time by the other case: of four channels one may be faulty
	fewInTime  = 0.5   // of the channels at most, which are in time by this one: as many have the shortest delays, which differ by little either way

	same         = 0.001 // energy of the difference of two recordings over theirs, at most: 30 dB: two takes of one channel at that over the noise
	copied       = 1e-9  // that of the same file twice, at most: rounding to 16 bit leaves less
	planApart    = 0.05  // that of the plan for both, at least: less than that the plan itself hardly tells apart
	wireApart    = 1.0   // dB between the wires of two recordings: as near as a knob is set again
	costLate     = 30e-6 // inTime and the error of a body
	costLevel    = 1.0   // dB: two standard deviations of a driver (rehearsal.Draw)
	costResidual = 0.05  // as a quiet room leaves
	costMost     = 25.0  // of one of the three: so that one that is far off does not decide alone
	costSaved    = 8.0   // at least: more than two channels that are as odd as may be, at 3 each, cost
	costLeft     = 0.25  // and so much of it is left at most: a quarter of it: half of each in level or in time
)

// otherCase tells whether the channels are late by what their delays are, or by that less:
// then the delays were set, or were not, unlike what was said.
func (v *Channels) otherCase(p *timing.Plan, c timing.Case) bool {
	sign := 1.0
	if c == timing.AsBuilt {
		sign = -1
	}
	low, high := math.Inf(1), math.Inf(-1)
	var said, other []float64
	for i, channel := range v.Channels {
		if math.IsNaN(channel.Late) {
			continue
		}
		delay := p.Channels[i].Delay
		low, high = min(low, delay), max(high, delay)
		said, other = append(said, channel.Late), append(other, channel.Late+sign*delay)
	}
	within := max(inTime, ofDelays*(high-low))
	return len(said) > 1 && float64(near(other, within)) >= mostInTime*float64(len(other)) &&
		float64(near(said, within)) <= fewInTime*float64(len(said))
}

// near returns how many numbers are near their middle.
func near(x []float64, within float64) int {
	middle, n := median(x), 0
	for _, v := range x {
		if math.Abs(v-middle) <= within {
			n++
		}
	}
	return n
}

// alike returns the channels whose recordings are the same although the plan tells them
// apart, or to the last bit: the others were not muted, or one file stands for several.
func (f *fit) alike() []int {
	found := map[int]bool{}
	for a, one := range f.channels {
		for _, other := range f.channels[:a] {
			apart := difference(f.whole(one.measured), f.whole(other.measured))
			if apart < copied || apart < same && difference(one.plan, other.plan) > planApart {
				found[one.index], found[other.index] = true, true
			}
		}
	}
	return slices.Sorted(maps.Keys(found))
}

// asWhole returns the channels, of several, whose recordings are that of all channels.
func (f *fit) asWhole(whole *recording.Measured) []int {
	if whole == nil || !slices.Equal(whole.Frequency, f.axis) {
		return nil
	}
	var out []int
	for _, one := range f.channels {
		if difference(f.whole(one.measured), f.whole(whole)) < same {
			out = append(out, one.index)
		}
	}
	if len(out) > 1 {
		return out
	}
	return nil
}

// difference returns the energy of the difference of two, over that of both; what is not
// known of one does not count.
func difference(a, b []complex128) float64 {
	var apart, both float64
	for i := range a {
		if !cmplx.IsNaN(a[i]) && !cmplx.IsNaN(b[i]) {
			apart += energy(a[i] - b[i])
			both += energy(a[i]) + energy(b[i])
		}
	}
	if both == 0 {
		return 1
	}
	return apart / both
}

// exchanged returns two channels, none of which does what it should, that fit the plan well
// once their recordings are exchanged.
func (f *fit) exchanged() (a, b int, ok bool) {
	gain, late, _ := f.middle()
	cost := func(o *channel) float64 {
		off := 0.0
		if f.timed {
			off = o.late - late
		}
		return costOf(o.residual, o.level()-gain, off)
	}
	odd := slices.DeleteFunc(slices.Clone(f.channels), func(o *channel) bool { return cost(o) <= 1 })
	best := 0.0
	for i, one := range odd {
		for _, other := range odd[:i] {
			now := cost(one) + cost(other)
			then := cost(f.inPlace(one, other, late)) + cost(f.inPlace(other, one, late))
			if saved := now - then; isExchange(now, then) && saved > best {
				best, a, b, ok = saved, other.index, one.index, true
			}
		}
	}
	return a, b, ok
}

// costOf returns how odd a channel is, by the share of its energy that does not fit, its level
// in dB and its time in s over the others: about 1 for each of them that is as odd as may be.
func costOf(residual, level, late float64) float64 {
	square := func(x float64) float64 { return min(costMost, x*x) }
	return min(costMost, residual/costResidual) + square(level/costLevel) + square(late/costLate)
}

// isExchange tells whether two channels cost so much less with their recordings exchanged.
func isExchange(now, then float64) bool { return now-then > costSaved && then < costLeft*now }

// inPlace fits the recording of one channel to the plan of another.
func (f *fit) inPlace(recorded, planned *channel, late float64) *channel {
	o := planned.copy()
	o.measured, o.heard = recorded.measured, slices.Clone(f.whole(recorded.measured))
	o.leave(-1)
	if o.late = late; !f.timed {
		o.late = recorded.measured.At - f.planned[planned.index]
	}
	o.late, _ = f.highest(o, o.late, reach)
	for range looks {
		o.look(o.measured, f.frequency)
		f.estimate(o)
	}
	return o
}

// isTurned tells whether a wire's level in dB over the others is off, and a channel's is for it.
func isTurned(wire, level float64) bool {
	return math.Abs(wire) > wireApart && math.Abs(level) > wireApart
}

// wires tells of recordings whose wire is not as those of the others: upside down, or of
// another level, in dB over the others' middle.
func wires(measured []*recording.Measured) (inverted []bool, level []float64) {
	inverted, level = make([]bool, len(measured)), make([]float64, len(measured))
	var levels []float64
	up := 0
	for _, m := range measured {
		if m == nil || !m.Absolute {
			continue
		}
		levels = append(levels, m.Wire)
		if up++; m.WireInverted {
			up -= 2
		}
	}
	middle := median(levels)
	for c, m := range measured {
		if m == nil || !m.Absolute {
			continue
		}
		inverted[c] = up != 0 && m.WireInverted == (up > 0)
		level[c] = m.Wire - middle
	}
	return inverted, level
}
