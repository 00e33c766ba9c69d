package timing

import (
	"math"

	"pappus/layout/wiring"
	"pappus/timing/channelcount"
	"pappus/timing/split"
)

// stringSizes says how drivers are strung by how many share a channel: that alone
// settles it, since all strings of a channel are alike.
type stringSizes struct {
	series []int // [drivers] in each string; 0: so many cannot be wired
	widest []int // [most in a string] the most drivers that a channel can have then
}

// newStringSizes looks at 1 to drivers drivers.
func newStringSizes(drivers int, nominalOhm, leastOhm, minimumOhm float64) stringSizes {
	s := stringSizes{make([]int, drivers+1), make([]int, drivers+1)}
	for n := 1; n <= drivers; n++ {
		if series, _, _, ok := wiring.Best(n, nominalOhm, leastOhm, minimumOhm); ok {
			s.series[n] = series
			s.widest[series] = n
		}
	}
	for most := 1; most <= drivers; most++ {
		s.widest[most] = max(s.widest[most], s.widest[most-1])
	}
	return s
}

// within tells of a number of drivers whether it can be wired with no more than most
// of them in a string; 0: with any number.
func (s stringSizes) within(most int) func(drivers int) bool {
	return func(drivers int) bool {
		series := s.series[drivers]
		return series > 0 && (most == 0 || series <= most)
	}
}

// longest returns the most drivers in a string where groups of drivers are channels.
func (s stringSizes) longest(groups [][]int) int {
	longest := 1
	for _, g := range groups {
		longest = max(longest, s.series[len(g)])
	}
	return longest
}

// sorter sorts a plan's drivers into channels along a line, their arrival or their
// height. Sizes of channels and strings are chosen together with the delays.
type sorter struct {
	sizes        stringSizes
	value, weigh []float64 // along the line
	time, weight []float64 // the arrivals that delays are taken by, and what they weigh
	loss         lossMeter
	volt, bears  float64               // of the amplifier, and what a driver stands; V, RMS
	splits       map[int]*split.Splits // by the most drivers in a string; 0: any
}

// sorter returns a sorter for a plan's drivers at its spot, for arrivals in s and
// their weights. by is arrival or height.
func (p *Planner) sorter(plan *Plan, by string, time, weight []float64) *sorter {
	s := &sorter{sizes: p.sizes, time: time, weight: weight, loss: newLossMeter(&p.spot, p.medium.Frequency),
		volt: p.array.Wiring.Voltage, bears: p.bears, splits: map[int]*split.Splits{}}
	s.value, s.weigh = plan.line(by, time, weight)
	return s
}

// groups returns the best split into count channels with no more than most drivers in
// a string, 0: with any number; nil where there is none.
func (s *sorter) groups(count, most int) [][]int {
	found, ok := s.splits[most]
	if !ok {
		found = split.NewSplits(s.value, s.weigh, s.sizes.within(most))
		s.splits[most] = found
	}
	return found.Groups(count)
}

// shortest returns the least number of drivers in a string that count channels may do
// with, for their number alone.
func (s *sorter) shortest(count int) int {
	most := 1
	for most < len(s.value) && count*s.sizes.widest[most] < len(s.value) {
		most++
	}
	return most
}

// smear returns what groups leave of the arrivals that delays are taken by, in s.
func (s *sorter) smear(groups [][]int) float64 {
	return channelcount.Smear(groups, s.time, s.weight)
}

// delays returns the groups' delays in s, up to what all have in common.
func (s *sorter) delays(groups [][]int) []float64 {
	out := make([]float64, len(groups))
	for g, mounts := range groups {
		out[g] = s.time[0] - centre(mounts, s.time, s.weight)
	}
	return out
}

// driverVolt returns the most voltage (RMS) that each driver may get from the amplifier
// with most in the longest string: its part of the whole, or what it stands for long.
func (s *sorter) driverVolt(most int) float64 {
	volt := s.volt
	if !(volt > 0) {
		volt = 1 // no amplifier is described: strings alone count
	}
	return min(volt/float64(most), s.bears)
}

// level is 20 log10 of driverVolt.
func (s *sorter) level(most int) float64 { return 20 * math.Log10(s.driverVolt(most)) }

// worth is the level in dB as the rule counts it.
func (s *sorter) worth(most int) float64 {
	if s.isOverdriven(most) {
		return s.level(most) - unsafe
	}
	return s.level(most)
}

// isOverdriven tells whether the amplifier's whole voltage gives each driver more than it
// stands with most in the longest string.
func (s *sorter) isOverdriven(most int) bool { return s.volt/float64(most) > s.bears }

// The rule for the strings: of the splits into so many channels it takes the loudest
// whose delays still keep the drivers in step. Loudness is the voltage over each
// driver: all get what those in the longest strings get, no more than they stand for.
// Level can be bought with a larger amplifier and lost timing cannot, so timing bounds
// it: against the split with the least smear no octave from 500 Hz to 8 kHz may lose
// more than WorthOctave, the least that is heard of a level of noise (about 1 dB, E.
// Zwicker and H. Fastl, Psychoacoustics, from memory). Octaves that fall short by 3 dB
// even so, the comb onset's measure, are lost anyway and count no more. Of some that
// are as loud within AsLoud, which is hardly heard either, it takes the one with the
// least smear. Strings that can give a driver more than it stands count for unsafe less:
// somebody must then keep the volume down.
//
// A sweep over a dome of 39, balls of 60 and 96, a dodecahedron and a dome of 301, in 2
// to 32 channels with delays by path and by field, 44 cases: with 1 dB the choice gains
// up to 13 dB of level over the least smear, 7 dB in the middle of the cases, for at most
// 1.0 dB in an octave that was in step, 0.3 dB in most, and at most 1.15 times the smear
// but for the dodecahedron in 6 channels (1.6 times for 3 dB). With 0.5 dB seven cases
// take longer strings and give 3 to 4 dB of that up. With 2 dB one more takes strings of
// 2, for 3 dB and 1.4 times the smear; with no bound the ball of 96 in 16 channels does,
// too, for 3 dB and 1.5 times the smear.
const (
	WorthOctave = 1.0
	lostOctave  = 3.0
	AsLoud      = 1.0
	unsafe      = 1.0
)

// choose returns the split into count channels that the rule takes; nil where so many
// cannot be wired.
func (s *sorter) choose(count int) [][]int {
	free := s.groups(count, 0)
	if free == nil {
		return nil
	}
	least, longest := s.loss.of(free, s.delays(free)), s.sizes.longest(free)
	var best [][]int
	loudest, smear := math.Inf(-1), math.Inf(1)
	for most := s.shortest(count); most < longest && s.level(most) >= loudest-AsLoud; most++ {
		groups := s.groups(count, most)
		if groups == nil || s.sizes.longest(groups) < most || !bearable(least, s.loss.of(groups, s.delays(groups))) {
			continue
		}
		if worth := s.worth(most); worth >= loudest-AsLoud {
			if left := s.smear(groups); left < smear {
				best, smear = groups, left
			}
			loudest = max(loudest, worth)
		}
	}
	if s.worth(longest) >= loudest-AsLoud && s.smear(free) < smear {
		return free
	}
	return best
}

// bearable tells whether losses in dB are worth the level that they come with, against
// those of the least smear.
func bearable(least, loss octaveLosses) bool {
	for b, v := range loss {
		if least[b] < lostOctave && v > least[b]+WorthOctave {
			return false
		}
	}
	return true
}
