package timing

import (
	"pappus/layout"

	"gonum.org/v1/gonum/spatial/r3"
)

// StringTransfers returns what each string of each channel gives at the listening spot when
// it plays alone: [channel][string][frequency], as Transfer has it, at frequencies in Hz that
// do not fall. It panics for
// IdealPoint, which has no channels.
func (p *Plan) StringTransfers(c Case, frequency []float64) [][][]complex128 {
	return p.transfers(c, frequency, func(channel int) [][]int { return p.Banks[channel].Strings })
}

// DriverTransfers is StringTransfers of each driver by itself: [channel][its mounts][frequency].
func (p *Plan) DriverTransfers(c Case, frequency []float64) [][][]complex128 {
	return p.transfers(c, frequency, func(channel int) (each [][]int) {
		for _, m := range p.Channels[channel].Mounts {
			each = append(each, []int{m})
		}
		return each
	})
}

// transfers returns what groups of mounts of each channel give.
func (p *Plan) transfers(c Case, frequency []float64, groups func(channel int) [][]int) [][][]complex128 {
	if c == IdealPoint {
		panic("timing: one point has no channels")
	}
	h, err := NewHearing(&p.Spot, Listening{Cases: []Case{c}}, []r3.Vec{p.Array.Spot}, frequency)
	if err != nil {
		panic(err) // the plan was made for this very spot with this very model
	}
	out := make([][][]complex128, len(p.Channels))
	for i := range p.Channels {
		for _, members := range groups(i) {
			sum := make([]complex128, len(frequency))
			h.some(sum, members, p.Array.Spot)
			out[i] = append(out[i], sum)
		}
	}
	return out
}

// some adds to dst what some mounts give in the only case.
func (h *Hearing) some(dst []complex128, mounts []int, place r3.Vec) {
	e := h.scratch.Get().(*ear)
	defer h.scratch.Put(e)
	for _, g := range h.groups {
		some := make([]layout.Mount, len(mounts))
		for i, m := range mounts {
			some[i] = g.mounts[m]
		}
		for _, way := range g.ways {
			e.each(&g, some, way, place, func(i int, heard []complex128) { g.feed([][]complex128{dst}, heard, mounts[i]) })
		}
	}
}

// ChannelTime returns when a channel is heard at the listening spot after it is fed, its
// own delay left out, in s: the mean of its drivers' arrivals by which the design takes
// delays, weighted by their energy.
func (s *Spot) ChannelTime(channel int) float64 {
	return s.times().mean(s.Channels[channel].Mounts)
}
