package words

import (
	"math"
	"testing"

	"pappus/timing"
	"pappus/timing/damping"
	"pappus/timing/impedancefit"
	"pappus/timing/seats"
	"pappus/timing/verdict"

	"github.com/google/go-cmp/cmp"
	"gonum.org/v1/gonum/spatial/r3"
)

// TestPictures: what heads each picture.
func TestPictures(t *testing.T) {
	p := planned()
	p.Array.Spot = r3.Vec{X: 2}
	const spot = "listening spot 2.00 m in front along the floor, ears level with its middle"
	named, other := planned(), planned()
	named.Array.Name = "Lantern"
	named.Array.Spot, other.Array.Spot = p.Array.Spot, r3.Vec{X: 1}
	named.Protection.Volt = 2.83
	goal := damping.Goal{Q: 0.7}
	three := seated("round", seats.Figures{}, seats.Figures{}, seats.Figures{}, seats.Figures{})
	three.Array.Name = "Lantern"
	for _, test := range []struct {
		name string
		got  Picture
		want Picture
	}{
		{"response", OfResponse(p), Picture{"Array: level at the listening spot", spot + "; third-octave smoothed, unsmoothed behind"}},
		{"comparison", OfComparison([]*timing.Plan{p, named}), Picture{"Designs compared: level at the listening spot, with the delays", spot + "; third-octave smoothed"}},
		{"several spots", OfComparison([]*timing.Plan{p, other}), Picture{"Designs compared: level at the listening spot, with the delays", "each design at its own listening spot; third-octave smoothed"}},
		{"phase", OfPhase(named), Picture{"Lantern: phase and group delay at the listening spot", spot + "; direct sound, after its first arrival"}},
		{"arrivals", OfArrivals(named), Picture{"Lantern: delay and arrival of each driver", spot + "; arrivals counted from the first driver heard"}},
		{"ways", OfWays(named), Picture{"Lantern: when each driver is heard, by three ways of taking it", spot + "; 0: along the straight line, through the body"}},
		{"counts", OfCounts(named), Picture{"Lantern: what more channels bring", spot + "; split by arrival"}},
		{"front", OfFront(named), Picture{"Lantern: what shorter strings cost and bring", spot + "; 2 channels; level from the same amplifier"}},
		{"excursion", OfExcursion(named), Picture{"Lantern: how far a cone moves", "peak, one way, at 2.83 V over the driver"}},
		{"levelling", OfLevelling(named, timing.Levelling{UnevenBefore: 2.34, UnevenAfter: 1}), Picture{"Lantern: levelling the listening spot", "uneven by 2.3 dB before, 1.0 dB after with the same sections on every channel; sixth-octave smoothed"}},
		{"measured", OfMeasured(named, verdict.Level{Low: 500, High: 4000, Uneven: 1.5}), Picture{"Lantern: measured and planned", "matched from 500 Hz to 4.0 kHz; there the thirds of octaves differ by 1.5 dB; no noise is known; sixth-octave smoothed"}},
		{"measured phase", OfMeasuredPhase(named, verdict.Turns{Planned: timing.Turn{First: 5.912e-3}, Late: -12e-6, Wired: true}), Picture{"Lantern: phase and group delay, measured and planned",
			"within the gate, sixth-octave smoothed; taken out: the plan's first arrival, 5.91 ms on the way, and that what was measured comes 12 us early"}},
		{"measured phase, no wire", OfMeasuredPhase(named, verdict.Turns{Planned: timing.Turn{First: 5.912e-3}}), Picture{"Lantern: phase and group delay, measured and planned",
			"within the gate, sixth-octave smoothed; taken out: the plan's first arrival, 5.91 ms on the way; when it was sent is not known, and fitted"}},
		{"measured phase of nothing", OfMeasuredPhase(named, verdict.Turns{Planned: timing.Turn{First: math.NaN()}}), Picture{"Lantern: phase and group delay, measured and planned",
			"nothing is planned to be heard here"}},
		{"measured behind a gate", OfMeasured(named, verdict.Level{Low: 500, High: 4000, Uneven: 1.5, Gated: true, Bands: []verdict.Band{{Centre: 1000, Measured: 80}},
			Frequency: []float64{950, 1000, 1050}, Noise: []float64{49.5, 49.5, 49.5}}), Picture{"Lantern: measured and planned",
			"echoes left out by the gate; matched from 500 Hz to 4.0 kHz; there the thirds of octaves differ by 1.5 dB; at least 30 dB above the noise where it tells anything; sixth-octave smoothed"}},
		{"harmonics", OfHarmonics(named), Picture{"Lantern: harmonics", "level over that of the tone, dB; sixth-octave smoothed; what noise would give is left out"}},
		{"from above", OfPolar(named, false), Picture{"Lantern: level round the array, from above", "horizontal circle through the " + spot}},
		{"from the side", OfPolar(named, true), Picture{"Lantern: level over the array, from the side", "upright circle through the " + spot}},
		{"note of a polar", Picture{PolarNote(named, false), PolarNote(three, false)}, Picture{"octave bands; 0 dB: each one's own level towards the spot; wedge: where the spot is", "octave bands; 0 dB: each one's own level towards the spot; blue wedges: the seats"}},
		{"slice", OfSlice(named, "smear", "from above", "good"), Picture{"Lantern: smear, from above", "with the delays for the " + spot + "; light is good"}},
		{"polar as built", OfPolarAsBuilt(named, false), Picture{"Lantern: level round the array, from above", "without the delays; horizontal circle through the " + spot}},
		{"slice with seats", OfSlice(three, "level", "from above", "loud"), Picture{"Lantern: level, from above", "with the delays for 3 seats, by their numbers; light is loud"}},
		{"seats", OfSeats(three), Picture{"Lantern: what each seat loses", "one set of delays for 3 seats, to be even all round; lost against all drivers in step, 500 Hz to 8 kHz, without the room"}},
		{"tuning", OfTuning("Lantern", goal, nil), Picture{"Lantern: damping the shared box", "target Q 0.7 dashed; numbers are those of trials, bars one standard error"}},
		{"tuned", OfTuning("Lantern", goal, &damping.Next{Reached: true, Base: 2}), Picture{"Lantern: damping the shared box", "target Q 0.7 dashed; trial 3 is there; numbers are those of trials, bars one standard error"}},
		{"load", OfLoad(3, "three.csv", impedancefit.Load{Sure: true}), Picture{"Channel 3: three.csv", "So all strings play"}},
	} {
		t.Run(test.name, func(t *testing.T) {
			if d := cmp.Diff(test.want, test.got); d != "" {
				t.Error(d)
			}
		})
	}
	if Unit(true) != "dB SPL" || Unit(false) != "dB over one driver at 1 m" {
		t.Errorf("%s, %s", Unit(true), Unit(false))
	}
}

func TestStrung(t *testing.T) {
	for want, s := range map[string]timing.Strung{
		"up to 5 in a string, 5.32 ohm":                 {Longest: 5, LeastOhm: 5.32, InStep: true},
		"up to 2 in a string, 4.73 ohm, as planned":     {Longest: 2, LeastOhm: 4.733, InStep: true, Chosen: true},
		"1 in a string, 7.1 ohm, an octave out of step": {Longest: 1, LeastOhm: 7.1},
	} {
		if got := Strung(s); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
