package words

import (
	"fmt"
	"math"

	"pappus/layout/prose"
	"pappus/timing"
	"pappus/timing/verdict"
)

// What is what in the picture of a measurement.
const (
	ErrorBand      = "95 of 100 lie within"
	NoiseAlone     = "noise alone"
	Doubtful       = "not to be trusted"
	BeyondError    = "a third of an octave, off by more than its error"
	WithinError    = "by less"
	DifferenceAxis = "over the plan, dB"
)

// OfMeasured heads the picture of what was measured.
func OfMeasured(p *timing.Plan, v verdict.Level) Picture {
	below := fmt.Sprintf("matched from %.0f Hz to %.1f kHz; there the thirds of octaves differ by %.1f dB; %s; sixth-octave smoothed", v.Low, v.High/1000, v.Uneven, aboveNoise(v))
	if v.Gated {
		below = "echoes left out by the gate; " + below
	}
	return Picture{Name(p) + ": measured and planned", below}
}

// aboveNoise says how far above its noise a level is.
func aboveNoise(v verdict.Level) string {
	by := v.AboveNoise()
	if math.IsInf(by, 1) {
		return "no noise is known"
	}
	return prose.Sprintf("at least %.0f dB above the noise where it tells anything", math.Floor(by))
}

// OfMeasuredPhase heads the picture of a measured phase.
func OfMeasuredPhase(p *timing.Plan, x verdict.Turns) Picture {
	below := fmt.Sprintf("within the gate, sixth-octave smoothed; taken out: the plan's first arrival, %.2f ms on the way", 1000*x.Planned.First)
	switch {
	case math.IsNaN(x.Planned.First):
		below = "nothing is planned to be heard here"
	case x.Wired:
		below += ", and that what was measured comes " + lateness(x.Late)
	default:
		below += "; when it was sent is not known, and fitted"
	}
	return Picture{Name(p) + ": phase and group delay, measured and planned", below}
}
