package timing

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"pappus/layout/prose"
	"pappus/timing/measure"
	"pappus/timing/split"
)

// Held is how channels with long strings hold the others down. Voltage divides along
// a string, and every driver is to get as much, so the channels with shorter strings
// are turned down to what the longest leave each of theirs.
type Held struct {
	Channels []int   // the numbers of the channels with the longest strings
	Series   int     // drivers in each of these
	By       float64 // dB, by how much the channel with the shortest strings is turned down
	// With strings of Cure drivers at most, by another split into as many channels, all
	// would play Louder dB louder at the same voltage, and Smear in s would be left at
	// the spot. Cure is 0 where no such split leaves little more smear than now.
	Cure          int
	Louder, Smear float64
	Now           float64 // s, the smear that is left now
}

const (
	heldLeast = 3.0 // dB, from which on it is worth a word
	// cureSmear is the most smear, over that of now, that shorter strings may leave.
	cureSmear = 1.1
	sameSmear = 1e-9 // s, hardly any
	// cureSteps bounds the steps of the search for a split.
	cureSteps = 1e8
)

// Held tells which channels hold the others down, and whether any do so by 3 dB or
// more. Channels that the design lays out by hand have the gains that it gives them;
// those hold nothing down.
func (p *Plan) Held() (Held, bool) {
	if len(p.Array.Channels) > 0 || len(p.Channels) == 0 {
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

// cure looks for the split into as many channels with the shortest strings that leaves
// little more smear than there is. Shorter strings never leave less.
func (p *Plan) cure(h *Held) {
	n := float64(len(p.Arrivals))
	if by := p.Array.Wiring.Split; by != "" && by != byArrival || float64(len(p.Channels))*n*n > cureSteps {
		return
	}
	time, weight := p.heard(), weights(p)
	for low, high := 1, h.Series-1; low <= high; {
		most := (low + high) / 2
		groups, _, ok := split.OfSizes(time, weight, len(p.Channels), p.within(most))
		if !ok {
			low = most + 1
			continue
		}
		smear := p.smearOf(groups, time, weight)
		if smear > cureSmear*h.Now+sameSmear {
			low = most + 1
			continue
		}
		h.Cure = p.longestOf(groups)
		h.Louder, h.Smear = stringRatio(h.Series, h.Cure), smear
		high = h.Cure - 1
	}
}

// smearOf returns the smear in s that groups of drivers would leave at the spot, each
// with a delay of its own.
func (p *Plan) smearOf(groups [][]int, time, weight []float64) float64 {
	late, _ := p.inStep(groups, time, weight)
	return measure.Smear(late, weight)
}

// inString returns how many drivers stand in each string where so many share a
// channel.
func (p *Plan) inString(drivers int) int {
	return max(1, wired(p.Array, 0, make([]int, drivers)).Series)
}

// longestOf returns the most drivers in a string where groups of drivers are channels.
func (p *Plan) longestOf(groups [][]int) int {
	longest := 1
	for _, g := range groups {
		longest = max(longest, p.inString(len(g)))
	}
	return longest
}

// within tells of a number of drivers whether it can be wired with no more than most
// of them in a string.
func (p *Plan) within(most int) func(drivers int) bool {
	return func(drivers int) bool { return p.canWire(drivers) && p.inString(drivers) <= most }
}

// String says in plain words which channels hold the others down, and what cures it.
func (h Held) String() string {
	names := make([]string, len(h.Channels))
	for i, id := range h.Channels {
		names[i] = strconv.Itoa(id)
	}
	who, has := "Channel "+names[0]+" holds", "it has"
	if last := len(names) - 1; last > 0 {
		who, has = "Channels "+strings.Join(names[:last], ", ")+" and "+names[last]+" hold", "they have"
	}
	text := fmt.Sprintf("%s the others down by up to %.1f dB: %s strings of %s, which share the voltage, and every driver is to get as much.",
		who, h.By, has, prose.Count(h.Series, "driver", "drivers"))
	if h.Cure == 0 {
		return text + " Another number of channels or drivers may cure it: 5 or 7, say, can only be one string."
	}
	return text + fmt.Sprintf(" With longest_string = %d under [wiring] all play %.1f dB louder at the same voltage; the smear becomes %.1f us, from %.1f.",
		h.Cure, h.Louder, 1e6*h.Smear, 1e6*h.Now)
}
