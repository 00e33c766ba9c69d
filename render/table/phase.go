package table

import (
	"io"
	"math"

	"pappus/timing"
)

// Phase writes one row for each frequency: the phase of the direct sound at the spot, its first
// arrival taken out, and its group delay, with the delays, without, and of one driver alone; empty
// where nothing is heard or too many arrivals are.
func Phase(w io.Writer, p *timing.Plan) error {
	t := newSheet("frequency_hz:2", "aligned_phase_deg:2", "aligned_group_delay_ms:4", "unaligned_phase_deg:2", "unaligned_group_delay_ms:4",
		"in_step_phase_deg:2", "in_step_group_delay_ms:4")
	for i, hz := range p.Phase.Frequency {
		row := []any{hz}
		for _, of := range []timing.Turn{p.Phase.Aligned, p.Phase.Unaligned, p.Phase.InStep} {
			row = append(row, of.Angle[i]*180/math.Pi, 1000*of.Group[i])
		}
		t.add(row...)
	}
	return t.write(w)
}
