package table

import (
	"io"
	"math"

	"pappus/timing"
	"pappus/timing/verdict"
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

// MeasuredPhase writes one row for each frequency: the phase within the gate and its group delay,
// as measured, with one standard error of that phase, and as planned, the first arrival taken out
// of both; empty where nothing is heard or too many arrivals are.
func MeasuredPhase(w io.Writer, x verdict.Turns) error {
	t := newSheet("frequency_hz:2", "measured_phase_deg:2", "phase_error_deg:3", "measured_group_delay_ms:4", "planned_phase_deg:2", "planned_group_delay_ms:4")
	const degrees = 180 / math.Pi
	for i, hz := range x.Frequency {
		t.add(hz, x.Measured.Angle[i]*degrees, x.Error[i]*degrees, 1000*x.Measured.Group[i], x.Planned.Angle[i]*degrees, 1000*x.Planned.Group[i])
	}
	return t.write(w)
}
