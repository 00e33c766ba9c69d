package loom

import (
	"math"

	"pappus/layout/wiring"
	"pappus/timing"

	"gonum.org/v1/gonum/spatial/r3"
)

// Step is to what lengths in m pieces are cut.
const Step = 0.01

// Terminal stands for a channel's terminal in place of a mount.
const Terminal = -1 // free: no index of a mount

// Piece is one piece of wire, from the minus of one end to the plus of the other, or to or from the
// channel's terminals.
type Piece struct {
	From, To int     // indices into Array.Mounts, or Terminal
	Straight float64 // m
	Cut      float64 // m, with slack, in steps of Step
}

// String is one string of a channel, on one body.
type String struct {
	Channel, Number int // indices into Plan.Channels and its bank's strings
	Order           []int
	Pieces          []Piece // one more than there are drivers, from plus to minus
	WireOhm         float64 // of all pieces, at 20 C
}

// Length returns the m of wire that are cut for a string.
func (s String) Length() float64 {
	sum := 0.0
	for _, p := range s.Pieces {
		sum += p.Cut
	}
	return sum
}

// Strings returns the strings of a plan in the order of its channels.
func Strings(p *timing.Plan) []String {
	var out []String
	for _, r := range timing.Harness(p) {
		out = append(out, stringOf(p, r))
	}
	return out
}

// Body is the body that a string is on, from 0.
func (s String) Body(p *timing.Plan) int { return p.Array.Mounts[s.Order[0]].Body }

// ByChannel sorts strings by the index of their channel and their body.
func ByChannel(p *timing.Plan, strings []String) [][][]String {
	out := make([][][]String, len(p.Channels))
	for c := range out {
		out[c] = make([][]String, len(p.Array.Bodies()))
	}
	for _, s := range strings {
		on := &out[s.Channel][s.Body(p)]
		*on = append(*on, s)
	}
	return out
}

func stringOf(p *timing.Plan, r timing.Run) String {
	a := p.Array
	at := func(m int) r3.Vec {
		if m == Terminal {
			return r3.Vec{Z: a.Body.Lowest()}
		}
		return a.Mounts[m].Point
	}
	s := String{Channel: r.Channel, Number: r.String, Order: r.Order}
	from := Terminal
	for _, to := range append(append([]int(nil), r.Order...), Terminal) {
		straight := r3.Norm(r3.Sub(at(to), at(from)))
		cut := math.Ceil((straight+2*a.Build.Slack)/Step-1e-9) * Step // free: no step more for rounding, which is far less
		s.Pieces = append(s.Pieces, Piece{from, to, straight, cut})
		s.WireOhm += wiring.WireOhm(cut, a.Build.InnerSection) / 2 // one way
		from = to
	}
	return s
}

// Batch is how many pieces of one length there are to cut.
type Batch struct {
	Cut   float64 // m
	Count int
}

// Batches returns how many pieces there are of each length, the shortest first.
func Batches(strings []String) []Batch {
	count := map[int]int{}
	for _, s := range strings {
		for _, p := range s.Pieces {
			count[int(math.Round(p.Cut/Step))]++
		}
	}
	out := make([]Batch, 0, len(count))
	for steps := 0; len(out) < len(count); steps++ {
		if n := count[steps]; n > 0 {
			out = append(out, Batch{float64(steps) * Step, n})
		}
	}
	return out
}
