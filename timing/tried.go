package timing

import (
	"math"
	"slices"

	"pappus/timing/measure"
)

// Turned is what somebody tries with one channel, the design staying as it is.
type Turned struct {
	ID            int
	Off, Reversed bool
	Late          float64 // s, later than planned; below 0: earlier
}

// Tried returns what a spot of the planner's array is with channels turned: its channels, levels
// and figures, what maps and circles make of them, and what seats lose. What is all round, findings
// and what the processor's step costs stay as planned. A channel that is off has a gain of -Inf dB;
// numbers that no channel has are passed over.
func (p *Planner) Tried(s *Spot, turned []Turned) (*Spot, error) {
	out := *s
	out.Channels, out.Arrivals = slices.Clone(s.Channels), slices.Clone(s.Arrivals)
	for _, t := range turned {
		i := slices.IndexFunc(out.Channels, func(c Channel) bool { return c.ID == t.ID })
		if i < 0 {
			continue
		}
		c := &out.Channels[i]
		c.Delay, c.Exact = c.Delay+t.Late, c.Exact+t.Late
		c.Invert = c.Invert != t.Reversed
		if t.Off {
			c.Gain = math.Inf(-1)
		}
		for _, m := range c.Mounts {
			out.Arrivals[m].Delay = c.Delay
			if t.Off {
				out.Arrivals[m].Level = math.Inf(-1)
			}
		}
	}
	p.pressure.hearAt(p.scene, s.Array.Spot)
	gain, high := gains(s.Array, out.Channels), s.Protection.HighPass()
	out.Response, out.Aligned, out.Unaligned, out.Ripple = p.pressure.sumUp(out.Arrivals, out.Channels, gain, high)
	out.Phase = p.pressure.phase(out.Arrivals, out.Channels, gain, high)
	if s.Seating == nil || len(turned) == 0 {
		return &out, nil
	}
	if err := p.listen(); err != nil {
		return nil, err
	}
	seating := *s.Seating
	seating.Planned = p.hall.field(s.Array).Judge(mountsOf(out.Channels), gain, delaysOf(out.Channels))
	out.Seating = &seating
	return &out, nil
}

// own returns a quantity at the planner's spot that was planned last, with the delays for it: as
// Live has it, over the planner's frequencies or those from one to before another.
func (p *Planner) own(s *Spot, q Quantity, from, to int) float64 {
	switch q {
	case LiveSmear:
		return s.Aligned.Smear
	case LiveCombOnset:
		return s.Aligned.CombOnset
	case LiveLoss:
		return s.Aligned.Loss
	case LiveLevel:
		sum := 0.0
		for _, db := range s.Response.Aligned[from:to] {
			sum += math.Pow(10, db/10)
		}
		return measure.Decibels(sum / float64(to-from))
	}
	h, groups, gain := &p.pressure, mountsOf(s.Channels), gains(s.Array, s.Channels)
	_, heard := h.sum(h.direct, groups, gain, delaysOf(s.Channels))
	inStep, whole := 0.0, 0.0
	for f, v := range h.inStep(h.direct, groups, gain)[from:to] {
		inStep, whole = inStep+v*v, whole+heard[from+f]*heard[from+f]
	}
	if q == LiveSummingLoss {
		return measure.Decibels(inStep / whole)
	}
	through := 0.0 // LiveDirectLevel, behind the high-pass
	for f := from; f < to; f++ {
		through += heard[f] * heard[f] * energyOf(s.Protection.HighPass().Response(h.frequency[f]))
	}
	return measure.Decibels(through / float64(to-from))
}
