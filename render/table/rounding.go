package table

import (
	"fmt"
	"math"
	"strings"

	"pappus/layout/prose"
	"pappus/render/words"
	"pappus/timing"
	"pappus/timing/band"
)

// costs writes what a residual costs a channel.
func costs(db float64) string {
	switch {
	case math.IsNaN(db):
		return "-"
	case math.IsInf(db, 1):
		return "out of step"
	}
	return fixed(db, 2) + " dB"
}

// rounding says what the processor's step costs.
func rounding(b *strings.Builder, p *timing.Plan, rows []timing.ProcessorRow, s style) {
	cost := p.Rounding
	prose.Fprintf(b, "Delays are set in steps of %.3g us; the worst is %.1f us off its exact value.", 1e6*p.Array.Processor.Step, 1e6*cost.Worst)
	if text := words.Common(p); text != "" {
		fmt.Fprintf(b, "\n%s", wrap(text))
	}
	fmt.Fprint(b, "\n"+s.faint("costs all together, dB"))
	for _, centre := range cost.Band {
		fmt.Fprint(b, s.faint(fmt.Sprintf("%7s", band.Name(centre))))
	}
	fmt.Fprintf(b, "\n%22s", "")
	for _, loss := range cost.Loss {
		fmt.Fprintf(b, "%7s", dash(loss, 2))
	}
	fmt.Fprintln(b, "\n"+s.faint("  at the spot, per octave; below 0 where rounding happens to help"))
	if text := words.OutOfStep(rows); text != "" {
		fmt.Fprintf(b, "%s %s\n", s.alert("Look out:"), text)
	}
}
