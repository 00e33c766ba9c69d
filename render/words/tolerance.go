package words

import (
	"fmt"
	"math"
	"strings"

	"pappus/layout/prose"
	"pappus/timing/tolerance"
)

// CauseOf names what is off.
func CauseOf(c tolerance.Cause) string {
	return [...]string{"resonance", "Q", "resistance", "sensitivity", "place", "time", "all together"}[c]
}

// Tolerance says what was drawn.
func Tolerance(s *tolerance.Study) string {
	var off []string
	for _, part := range []struct {
		format     string
		value, per float64
	}{
		{"fs, Qms, Qes and Re by up to %.3g percent", s.Share, 100},
		{"sensitivity by %.3g dB", s.Level, 1},
		{"place by %.3g mm of way", s.Place, 1000},
		{"time by %.3g us", s.Time, 1e6},
	} {
		if part.value > 0 {
			off = append(off, prose.Sprintf(part.format, part.per*part.value))
		}
	}
	if len(off) == 0 {
		off = []string{"nothing"}
	}
	drivers := prose.Count(len(s.Plan.Arrivals), "driver", "drivers")
	return fmt.Sprintf("%d lots of %s, each driver off by itself, evenly within the limits: %s. Seed %d.", s.Runs, drivers, strings.Join(off, ", "), s.Seed)
}

// ToleranceFound says what it comes to with all causes together.
func ToleranceFound(s *tolerance.Study) []string {
	all := s.Causes[len(s.Causes)-1]
	out := []string{prose.Sprintf("At the spot: nine lots in ten have a level from 500 Hz to 4 kHz within %+.1f and %+.1f dB of twins, lose %.1f to %.1f dB of what all in step would give (twins %.1f), and are smeared by %.0f to %.0f us (twins %.0f).",
		all.Level.Low.Value, all.Level.High.Value, all.Loss.Low.Value, all.Loss.High.Value, s.Twins.Loss, 1e6*all.Smear.Low.Value, 1e6*all.Smear.High.Value, 1e6*s.Twins.Smear)}
	if c, most := costliest(s); most > leastCost {
		out = append(out, fmt.Sprintf("What costs most of the sum is %s: %.1f dB more than twins lose in the middle lot, by itself.", CauseOf(c), most))
	}
	loads := prose.Sprintf("Loads: the least of any channel is %.3g ohm or more in 19 lots of 20 (twins %.3g), the most that a driver gets %.2g W or less (twins %.2g)",
		all.LeastOhm.Low.Value, s.Twins.LeastOhm, all.Watt.High.Value, s.Twins.Watt)
	if !math.IsNaN(s.Twins.Travel) {
		loads += prose.Sprintf(", the furthest that a cone moves %.2g mm or less (twins %.2g)", 1000*all.Travel.High.Value, 1000*s.Twins.Travel)
	}
	return append(out, loads+".")
}

// leastCost in dB is what is worth a sentence: what the table shows.
const leastCost = 0.05

// costliest returns which cause by itself costs most of the sum, and how many dB.
func costliest(s *tolerance.Study) (tolerance.Cause, float64) {
	cause, most := tolerance.All, 0.0
	for _, c := range s.Causes {
		if more := c.Loss.Middle.Value - s.Twins.Loss; c.Cause != tolerance.All && more > most {
			cause, most = c.Cause, more
		}
	}
	return cause, most
}

// ToleranceCautions say what such drivers can hurt, with what is to be done.
func ToleranceCautions(s *tolerance.Study) (out []string) {
	all, p := s.Causes[len(s.Causes)-1], s.Plan
	tell := func(lots int, what string) {
		if lots > 0 {
			out = append(out, fmt.Sprintf("in %d of %d lots %s", lots, s.Runs, what))
		}
	}
	tell(all.Under, prose.Sprintf("a channel loads the amplifier below its minimum of %.3g ohm: buy some more and sort them (pappus drivers), or string more in series.", p.Array.Wiring.MinimumLoad))
	tell(all.Hot, prose.Sprintf("a driver gets more than the %.2g W that it stands for long.%s", p.Array.Driver.PowerHandling, turnDown(10*math.Log10(all.Watt.High.Value/p.Array.Driver.PowerHandling))))
	if reach := p.Array.Driver.Small.Reach; reach > 0 {
		tell(all.Far, prose.Sprintf("a cone moves beyond its %.2g mm.%s, or set the high-pass higher.", 1000*reach, strings.TrimSuffix(turnDown(20*math.Log10(all.Travel.High.Value/reach)), ".")))
	}
	return out
}

// turnDown says by how much the voltage must be less for 19 lots in 20 to bear it.
func turnDown(db float64) string {
	if !(db > leastCost) {
		return " Turn down a little."
	}
	return fmt.Sprintf(" Turn down by %.1f dB for 19 lots in 20.", up(db))
}

// ToleranceBounds says how far percentiles of so many lots are known.
func ToleranceBounds(s *tolerance.Study) string {
	c := s.Causes[len(s.Causes)-1].Loss.High
	return prose.Sprintf("Percentiles of %d lots are themselves uncertain: the 95th of the loss lies from %.2f to %.2f dB with 90 percent certainty; tolerance.csv has all bounds. More --runs narrow them.", s.Runs, c.From, c.To)
}

// StillUnknown says what of a driver the design does not tell.
const StillUnknown = "The design has no fs_hz, qms and qes: how resonance and Q scatter was left out of what is heard."

// OfTolerance heads the picture of what tolerance does to the level.
func OfTolerance(s *tolerance.Study) Picture {
	return Picture{Name(s.Plan) + ": level at the listening spot with drivers that are not alike",
		fmt.Sprintf("%d lots; third-octave smoothed; shaded: nine lots in ten", s.Runs)}
}
