package rehearsal

import (
	"math"
	"math/cmplx"

	"pappus/timing/measure"
)

// Truth is what a session's drivers and faults do, as the plan's own model has it at the planned
// place in the planned air: what there is to find. All else is what a measurement may be off by.
type Truth struct {
	Level, Late []float64 // of each channel over the plan, in dB and s, over the frequencies
	// Built and Planned are what each channel gives at the frequencies, and the plan's.
	Built, Planned [][]complex128
}

// Truth returns the truth at frequencies in Hz, evenly spaced on a logarithmic axis.
func (s *Session) Truth(frequency []float64) Truth {
	g := NewVaried(s.stage.plan, Variation{Drivers: s.stage.vary.Drivers})
	set := s.set
	set.Channel = All
	late := set.Late
	set.Late = nil // a phase is told of less than half a turn
	var t Truth
	for c, strings := range g.wired(g.alone(set.Case, frequency), len(frequency)) {
		built := make([]complex128, len(frequency))
		one := make([][][]complex128, len(g.plan.Channels))
		one[c] = strings
		set.sum(built, one, frequency)
		t.Built = append(t.Built, built)
	}
	for _, strings := range g.plan.StringTransfers(set.Case, frequency) {
		planned := make([]complex128, len(frequency))
		for _, one := range strings {
			for f, v := range one {
				planned[f] += v
			}
		}
		t.Planned = append(t.Planned, planned)
	}
	for c := range t.Built {
		level, own := measure.Over(frequency, t.Built[c], t.Planned[c])
		if late != nil {
			own += late[c]
			for f, hz := range frequency {
				t.Built[c][f] *= cmplx.Rect(1, -2*math.Pi*hz*late[c])
			}
		}
		t.Level, t.Late = append(t.Level, level), append(t.Late, own)
	}
	return t
}
