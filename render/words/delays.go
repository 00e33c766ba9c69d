package words

import (
	"fmt"
	"math"
	"strings"

	"pappus/layout/prose"
	"pappus/timing"
)

// Onset writes a comb onset; there may be none.
func Onset(hz float64) string {
	if math.IsInf(hz, 1) {
		return "none"
	}
	return fmt.Sprintf("%.0f Hz", hz)
}

// Found says what the delays do.
func Found(p *timing.Plan) string {
	if p.Silent() {
		return Worth(p)
	}
	if len(p.Channels) == 1 && len(p.Array.Mounts) > 1 {
		return oneChannel(p)
	}
	text := fmt.Sprintf("As built the drivers begin to cancel at %s;\nwith the delays ", Onset(p.Unaligned.CombOnset))
	switch {
	case math.IsInf(p.Unaligned.CombOnset, 1):
		text = "Even as built the drivers do not cancel at the spot up to 20 kHz."
	case math.IsInf(p.Aligned.CombOnset, 1):
		text += "they do not up to 20 kHz."
	default:
		text += fmt.Sprintf("they do so from %s.", Onset(p.Aligned.CombOnset))
	}
	return text + "\n" + Worth(p)
}

// Worth says how much louder the delays make the middle of the range.
func Worth(p *timing.Plan) string {
	if p.Silent() {
		return "No sound of the drivers comes to the spot: all face away from it."
	}
	return fmt.Sprintf("From 500 Hz to 4 kHz the delays are worth %.1f dB at the spot.", p.Gained())
}

// oneChannel says that a delay which all drivers share brings none of them into step.
func oneChannel(p *timing.Plan) string {
	text := "One channel has one delay, which changes nothing at the spot: only more channels\nbring the drivers into step. "
	if math.IsInf(p.Unaligned.CombOnset, 1) {
		return text + "They do not cancel there up to 20 kHz."
	}
	return text + fmt.Sprintf("They begin to cancel there at %s.", Onset(p.Unaligned.CombOnset))
}

// InStep says how much room in m2 round the spot keeps the smear under a limit in s.
func InStep(area, limit float64) string {
	if area < 0.005 {
		return fmt.Sprintf("no place at the spot keeps the smear under %.0f us", 1e6*limit)
	}
	return fmt.Sprintf("%.2f m2 round the spot keep the smear under %.0f us", area, 1e6*limit)
}

// Spatial says how uneven an array is over all directions.
func Spatial(s timing.Spatial) string {
	const what = "sphere: standard deviation of the level over all directions far away, by area; "
	built, aligned := s.AsBuilt.Mean, s.Aligned.Mean
	if sum := built + aligned; math.IsInf(sum, 0) || math.IsNaN(sum) {
		return what + "there is none where some directions are silent"
	}
	return what + fmt.Sprintf("on the mean of each hertz from 100 Hz to 4 kHz %.1f dB as built, %.1f dB with the delays", built, aligned)
}

// hardlyCommon is the delay in s below which what all have in common is not worth a
// word: less than 2 degrees at 8 kHz.
const hardlyCommon = 0.5e-6

// Common says why all delays are longer than they need be; nothing where they hardly are.
func Common(p *timing.Plan) string {
	if p.Rounding.Common < hardlyCommon {
		return ""
	}
	return fmt.Sprintf("%.1f us are in every delay only to make that rounding cheap: what all wait for alike changes nothing at the spot.",
		1e6*p.Rounding.Common)
}

// OutOfStep names the channels that the processor's step puts out of step at 8 kHz, and
// what cures it; nothing where there are none.
func OutOfStep(rows []timing.ProcessorRow) string {
	var names []string
	worst := rows[0]
	for _, r := range rows {
		if math.IsInf(r.Cost8k, 1) && r.Name == "" {
			names = append(names, Row(r))
		}
		if r.Name == "" && r.OutOfStep < worst.OutOfStep {
			worst = r
		}
	}
	if len(names) == 0 {
		return ""
	}
	return fmt.Sprintf("the steps put %s %s out of step at 8 kHz, channel %s from %.1f kHz on, where they take away from the sum: set step_us finer or rate_hz higher under [processor], if it can",
		prose.Noun(len(names), "channel", "channels"), prose.Each(names), Row(worst), worst.OutOfStep/1000)
}

// Row names what a row of the processor is for.
func Row(r timing.ProcessorRow) string {
	if r.Name != "" {
		return r.Name
	}
	return fmt.Sprint(r.Channel)
}

// Sentences says what was found, for the page: without what stands elsewhere on it, as comb
// onsets and echoes at its head, the high-pass beside the delays, loud noise among the
// findings and the rule of the strings below their table.
func Sentences(p *timing.Plan) []string {
	all := append(Seats(&p.Spot), Worth(p))
	for _, e := range Told(p.Echoes) {
		all = append(all, Against(e, p.SpeedOfSound))
	}
	if p.Seating == nil {
		all = append(all, Counts(p))
	} else {
		all = append(all, SeatCounts(&p.Spot), SeatStrings(&p.Spot))
	}
	if !(p.Protection.Corner > 0) {
		all = append(all, HighPass(p))
	}
	if warnsOfNoise(p) {
		all = append(all, Limit(p))
	} else {
		all = append(all, Noise(p))
	}
	var out []string
	for _, text := range append(all, Notes(p)...) {
		for line := range strings.SplitSeq(text, ".\n") {
			if line = strings.Join(strings.Fields(line), " "); line != "" {
				out = append(out, strings.TrimSuffix(line, ".")+".")
			}
		}
	}
	return out
}

// warnsOfNoise tells whether a finding says how loud pink noise is.
func warnsOfNoise(p *timing.Plan) bool {
	for _, f := range p.Warnings {
		if risk, is := f.Fact.(timing.HearingRisk); is && risk.ByNoise {
			return true
		}
	}
	return false
}

// ways are the ways of taking delays.
var ways = map[string]string{
	"straight": "straight line",
	"path":     "path round the body",
	"field":    "field",
	"peak":     "peak of the impulse",
}

// Way names a way of taking delays.
func Way(by string) string { return ways[by] }
