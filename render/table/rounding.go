package table

import (
	"fmt"
	"math"
	"strings"

	"pappus/layout/prose"
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
	if text := CommonWords(p); text != "" {
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
	if text := outOfStep(rows); text != "" {
		fmt.Fprintf(b, "%s %s\n", s.alert("Look out:"), text)
	}
}

// hardlyCommon is the delay in s below which what all have in common is not worth a
// word: less than 2 degrees at 8 kHz.
const hardlyCommon = 0.5e-6

// CommonWords says why all delays are longer than they need be; nothing where they
// hardly are.
func CommonWords(p *timing.Plan) string {
	if p.Rounding.Common < hardlyCommon {
		return ""
	}
	return fmt.Sprintf("%.1f us are in every delay only to make that rounding cheap: what all wait for alike changes nothing at the spot.",
		1e6*p.Rounding.Common)
}

// outOfStep names the channels that the processor's step puts out of step at 8 kHz,
// and what cures it.
func outOfStep(rows []timing.ProcessorRow) string {
	var names []string
	worst := rows[0]
	for _, r := range rows {
		if math.IsInf(r.Cost8k, 1) && r.Name == "" {
			names = append(names, rowName(r))
		}
		if r.Name == "" && r.OutOfStep < worst.OutOfStep {
			worst = r
		}
	}
	if len(names) == 0 {
		return ""
	}
	return fmt.Sprintf("the steps put %s %s out of step at 8 kHz, channel %s from %.1f kHz on, where they take away from the sum: set step_us finer or rate_hz higher under [processor], if it can",
		prose.Noun(len(names), "channel", "channels"), prose.Each(names), rowName(worst), worst.OutOfStep/1000)
}
