package words_test

import (
	"math"
	"testing"

	"pappus/layout"
	"pappus/render/words"
	"pappus/timing"
	"pappus/timing/tolerance"

	"github.com/google/go-cmp/cmp"
)

// even is a range with one value low, one in the middle, one high.
func even(low, middle, high float64) tolerance.Range {
	of := func(v float64) tolerance.Quantile { return tolerance.Quantile{Value: v, From: v - 0.01, To: v + 0.01} }
	return tolerance.Range{Low: of(low), Middle: of(middle), High: of(high)}
}

func lots(t *testing.T) *tolerance.Study {
	t.Helper()
	p := &timing.Plan{Spot: timing.Spot{Array: &layout.Array{Name: "a lantern"}, Arrivals: make([]timing.Arrival, 12)}}
	p.Array.Wiring.MinimumLoad, p.Array.Driver.PowerHandling, p.Array.Driver.Small.Reach = 4, 2, 0.0015
	one := tolerance.Outcome{Cause: tolerance.Time, Loss: even(1.2, 1.4, 1.6)}
	all := tolerance.Outcome{Cause: tolerance.All, Level: even(-0.3, 0, 0.2), Loss: even(1.2, 1.4, 1.6), Smear: even(25e-6, 27e-6, 31e-6),
		LeastOhm: even(3.9, 4, 4.1), Watt: even(1, 2, 2.2), Travel: even(0.001, 0.0012, 0.0016), Under: 3, Hot: 5, Far: 200}
	return &tolerance.Study{Setting: tolerance.Setting{Spread: tolerance.Usual, Runs: 200, Seed: 7}, Plan: p, Causes: []tolerance.Outcome{one, all},
		Twins: timing.UnlikeHeard{Measures: timing.Measures{Loss: 1.1, Smear: 24e-6}, LeastOhm: 4.2, Watt: 1.5, Travel: 0.0011}}
}

func TestTolerance(t *testing.T) {
	s := lots(t)
	if diff := cmp.Diff("200 lots of 12 drivers, each driver off by itself, evenly within the limits: fs, Qms, Qes and Re by up to 10 percent, sensitivity by 1 dB, place by 1 mm of way, time by 20 us. Seed 7.", words.Tolerance(s)); diff != "" {
		t.Error(diff)
	}
	if diff := cmp.Diff([]string{
		"At the spot: nine lots in ten have a level from 500 Hz to 4 kHz within -0.3 and +0.2 dB of twins, lose 1.2 to 1.6 dB of what all in step would give (twins 1.1), and are smeared by 25 to 31 us (twins 24).",
		"What costs most of the sum is time: 0.3 dB more than twins lose in the middle lot, by itself.",
		"Loads: the least of any channel is 3.9 ohm or more in 19 lots of 20 (twins 4.2), the most that a driver gets 2.2 W or less (twins 1.5), the furthest that a cone moves 1.6 mm or less (twins 1.1).",
	}, words.ToleranceFound(s)); diff != "" {
		t.Error(diff)
	}
	if diff := cmp.Diff([]string{
		"in 3 of 200 lots a channel loads the amplifier below its minimum of 4 ohm: buy some more and sort them (pappus drivers), or string more in series.",
		"in 5 of 200 lots a driver gets more than the 2 W that it stands for long. Turn down by 0.5 dB for 19 lots in 20.",
		"in 200 of 200 lots a cone moves beyond its 1.5 mm. Turn down by 0.6 dB for 19 lots in 20, or set the high-pass higher.",
	}, words.ToleranceCautions(s)); diff != "" {
		t.Error(diff)
	}
}

// TestToleranceOfNothing: no travel is known, nothing is off, one driver.
func TestToleranceOfNothing(t *testing.T) {
	s := lots(t)
	s.Spread, s.Causes, s.Plan.Arrivals = tolerance.Spread{}, s.Causes[1:], make([]timing.Arrival, 1)
	s.Causes[0].Under, s.Causes[0].Hot, s.Causes[0].Far = 0, 0, 0
	s.Twins.Travel = math.NaN()
	if diff := cmp.Diff("200 lots of 1 driver, each driver off by itself, evenly within the limits: nothing. Seed 7.", words.Tolerance(s)); diff != "" {
		t.Error(diff)
	}
	if diff := cmp.Diff("Loads: the least of any channel is 3.9 ohm or more in 19 lots of 20 (twins 4.2), the most that a driver gets 2.2 W or less (twins 1.5).", words.ToleranceFound(s)[1]); diff != "" {
		t.Error(diff)
	}
	if got := words.ToleranceCautions(s); len(got) != 0 {
		t.Error(got)
	}
}
