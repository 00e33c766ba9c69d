package timing

import (
	"math"

	"pappus/layout/advice"
)

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

// hold warns of it.
func (p *Plan) hold() {
	if h, holds := p.Held(); holds {
		p.warn("strings_hold_down", advice.Cost, h)
	}
}
