package layout

import (
	"fmt"
	"math"

	"pappus/layout/advice"
	"pappus/layout/prose"
	"pappus/layout/wiring"
)

// wiringWarnings says what the amplifier will not like.
func wiringWarnings(a *Array) []advice.Finding {
	var out []advice.Finding
	if k := a.Wiring.Channels; k > len(a.Mounts) {
		out = append(out, advice.Finding{Code: "channels_unused", Rank: advice.Cost,
			What: fmt.Sprintf("%d of %d channels stay unused, for there are %s", k-len(a.Mounts), k, prose.Count(len(a.Mounts), "driver", "drivers")),
			Cure: fmt.Sprintf("set channels = %d", len(a.Mounts))})
	}
	n, worst, least := 0, 0, math.Inf(1)
	for _, c := range a.Channels {
		load := wiring.Load(c.Series, c.Parallel, a.Driver.LeastOhm())
		if load >= a.Wiring.MinimumLoad {
			continue
		}
		if n++; load < least {
			worst, least = c.ID, load
		}
	}
	if n > 0 {
		out = append(out, advice.Finding{Code: "load_too_low", Rank: advice.Danger,
			What: fmt.Sprintf("%s under the amplifier's minimum of %.1f ohm; channel %d is at %.1f ohm, and the amplifier can overheat",
				prose.Count(n, "channel is", "channels are"), a.Wiring.MinimumLoad, worst, least),
			Cure: "do not connect it so; put more drivers in series"})
	}
	return out
}

// wooferWarnings says where the crossover asks more of the small drivers than the
// design itself lets them give. What has to be worked out, timing warns of.
func wooferWarnings(a *Array) []advice.Finding {
	var out []advice.Finding
	for _, c := range []struct {
		hz   float64
		what string
	}{{a.Driver.Resonance, "the drivers' resonance in the body"}, {a.Protection.Corner, "the high-pass that protects the drivers"}} {
		if f, found := CrossoverWarning(a.Woofer, c.hz, c.what); found {
			out = append(out, f)
		}
	}
	return out
}

// CrossoverWarning says that a woofer's crossover is below something of the drivers,
// at a frequency in Hz, and what to do; nothing where it is not, or where the
// frequency is 0 or NaN.
func CrossoverWarning(w Woofer, hz float64, what string) (f advice.Finding, found bool) {
	if !w.Present || !(hz > w.Crossover) {
		return f, false
	}
	return advice.Finding{Code: "crossover_low", Rank: advice.Cost,
		What: prose.Sprintf("the crossover at %.4g Hz is below %s at %.4g Hz, where the array is weak and out of step with the woofer", w.Crossover, what, hz),
		Cure: prose.Sprintf("set it to %.3g Hz or above, an octave higher", 2*hz)}, true
}
