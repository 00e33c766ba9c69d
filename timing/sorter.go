package timing

import (
	"cmp"
	"math"
	"slices"

	"pappus/layout"
	"pappus/layout/wiring"
	"pappus/timing/band"
	"pappus/timing/split"
)

// The ways of sorting drivers into channels that a design may name.
const (
	byArrival    = "arrival" // also where none is named
	byNeighbours = "neighbours"
	byHeight     = "height"
)

// stringSizes says how drivers are strung by how many share a channel: that alone
// settles it, since all strings of a channel are alike.
type stringSizes struct {
	series []int // [drivers] in each string; 0: so many cannot be wired
	widest []int // [most in a string] the most drivers that a channel can have then
}

// newStringSizes looks at 1 to drivers drivers.
func newStringSizes(drivers int, d layout.Driver, minimumOhm float64) stringSizes {
	s := stringSizes{make([]int, drivers+1), make([]int, drivers+1)}
	for n := 1; n <= drivers; n++ {
		if series, _, _, ok := wiring.Best(n, d.NominalOhm, d.LeastOhm(), minimumOhm); ok {
			s.series[n] = series
			s.widest[series] = n
		}
	}
	for most := 1; most <= drivers; most++ {
		s.widest[most] = max(s.widest[most], s.widest[most-1])
	}
	return s
}

// LeastDrivers returns the least number of drivers that a channel can be wired
// with: one more than all where no number will do.
func (s *Spot) LeastDrivers() int {
	return newStringSizes(len(s.Array.Own()), s.Array.Driver, s.Array.LeastLoad()).least()
}

func (s stringSizes) least() int {
	least := 1
	for least < len(s.series) && s.series[least] == 0 {
		least++
	}
	return least
}

// mostChannels returns the most channels that can all be wired.
func (s stringSizes) mostChannels() int { return (len(s.series) - 1) / s.least() }

// within tells of a number of drivers whether it can be wired with no more than most
// of them in a string; 0: with any number.
func (s stringSizes) within(most int) func(drivers int) bool {
	return func(drivers int) bool {
		series := s.series[drivers]
		return series > 0 && (most == 0 || series <= most)
	}
}

// shortest returns the least number of drivers in a string that count channels may do
// with, for their number alone.
func (s stringSizes) shortest(count int) int {
	most, drivers := 1, len(s.series)-1
	for most < drivers && count*s.widest[most] < drivers {
		most++
	}
	return most
}

// longest returns the most drivers in a string where groups of drivers are channels.
func (s stringSizes) longest(groups [][]int) int {
	longest := 1
	for _, g := range groups {
		longest = max(longest, s.series[len(g)])
	}
	return longest
}

// sorter sorts an array's drivers into channels along a line, their arrival or their
// height. Sizes of channels and strings are chosen together with the delays.
type sorter struct {
	times
	sizes        stringSizes
	value, weigh []float64 // along the line
	heard        thinned   // the octaves of losses
	inStep       []complex128
	loudness     loudness
	splits       map[int]*split.Splits // by the most drivers in a string; 0: any
}

// newSorter returns a sorter for an array's drivers with pressures and times at its spot. by
// is arrival or height.
func newSorter(a *layout.Array, h *pressures, sizes stringSizes, ratedVolt float64, by string, t times) *sorter {
	octaves := band.Octaves()
	s := &sorter{times: t, sizes: sizes, heard: h.thin(octaves[len(octaves)-lossOctaves:]),
		loudness: newLoudness(a, ratedVolt), splits: map[int]*split.Splits{}}
	s.inStep = s.heard.inStep()
	if by != byHeight {
		s.value, s.weigh = levelled(t.time, sameTime), stepped(t.weight)
		return s
	}
	height := make([]float64, len(t.time))
	for m, mount := range a.Mounts {
		height[m] = -mount.Point.Z // from the top down
	}
	s.value, s.weigh = levelled(height, sameHeight), ones(len(height))
	return s
}

// Arrivals within sameTime in s, and heights within sameHeight in m, count as
// equal when drivers are sorted: a symmetric body's differ by rounding alone, and
// nothing that can be built is that exact.
const (
	sameTime   = 1e-9
	sameHeight = 1e-9
)

// levelled returns values where each that is within same of a lower one is that
// one. Unlike rounding to a step it never takes neighbours by rounding apart.
func levelled(value []float64, same float64) []float64 {
	order := all(len(value))
	slices.SortFunc(order, func(a, b int) int { return cmp.Compare(value[a], value[b]) })
	out := make([]float64, len(value))
	low := math.Inf(-1)
	for _, i := range order {
		if value[i] > low+same {
			low = value[i]
		}
		out[i] = low
	}
	return out
}

// stepped returns weights rounded to 30 binary digits, 1e-9, so that none settles a split
// by rounding.
func stepped(weight []float64) []float64 {
	const bits = 30
	out := make([]float64, len(weight))
	for i, w := range weight {
		part, exponent := math.Frexp(w)
		out[i] = math.Ldexp(math.Round(math.Ldexp(part, bits)), exponent-bits)
	}
	return out
}

// ones returns n weights of 1.
func ones(n int) []float64 { return slices.Repeat([]float64{1}, n) }

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

// smear returns what groups leave of the arrivals that delays are taken by, in s.
func (s *sorter) smear(groups [][]int) float64 {
	return split.Smear(groups, s.time, s.weight)
}

// lossOctaves is how many octaves the losses are of: 500 Hz to 8 kHz, where delays
// matter on a body of the size of a hand to that of a head and a half.
const lossOctaves = 5

// octaveLosses are by how many dB the energy of each octave at the spot falls short of
// all drivers in step.
type octaveLosses [lossOctaves]float64

// losses returns those with groups of drivers in step, all as loud.
func (s *sorter) losses(groups [][]int) (out octaveLosses) {
	delay := make([]float64, len(groups))
	for g, mounts := range groups {
		delay[g] = s.time[0] - s.mean(mounts)
	}
	sum := s.heard.sum(s.heard.fields(groups, nil), delay)
	for b := range out {
		out[b] = s.heard.loss(s.inStep, sum, b)
	}
	return out
}

// loudness is how loud an amplifier's volts make drivers in strings: volts RMS, and what a
// driver stands for long.
type loudness struct{ volt, rated float64 }

// newLoudness is that of an array whose drivers stand rated volts for long.
func newLoudness(a *layout.Array, rated float64) loudness { return loudness{a.Wiring.Voltage, rated} }

// driverVolt returns the most voltage (RMS) that each driver may get from the amplifier
// with most in the longest string: its part of the whole, or what it stands for long.
func (l loudness) driverVolt(most int) float64 {
	volt := l.volt
	if !(volt > 0) {
		volt = 1 // no amplifier is described: strings alone count
	}
	return min(volt/float64(most), l.rated)
}

// level is 20 log10 of driverVolt.
func (l loudness) level(most int) float64 { return 20 * math.Log10(l.driverVolt(most)) }

// worth is the level in dB as the rule counts it.
func (l loudness) worth(most int) float64 {
	if l.isOverdriven(most) {
		return l.level(most) - unsafe
	}
	return l.level(most)
}

// isOverdriven tells whether the amplifier's whole voltage gives each driver more than it
// stands with most in the longest string.
func (l loudness) isOverdriven(most int) bool { return l.volt/float64(most) > l.rated }

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
	least, longest := s.losses(free), s.sizes.longest(free)
	var best [][]int
	loudest, smear := math.Inf(-1), math.Inf(1)
	for most := s.sizes.shortest(count); most < longest && s.loudness.level(most) >= loudest-AsLoud; most++ {
		groups := s.groups(count, most)
		if groups == nil || s.sizes.longest(groups) < most || !bearable(least, s.losses(groups)) {
			continue
		}
		if worth := s.loudness.worth(most); worth >= loudest-AsLoud {
			if left := s.smear(groups); left < smear {
				best, smear = groups, left
			}
			loudest = max(loudest, worth)
		}
	}
	if s.loudness.worth(longest) >= loudest-AsLoud && s.smear(free) < smear {
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
