package timing

import (
	"math"

	"pappus/layout/advice"
	"pappus/timing/exposure"
)

// pinkLow and pinkHigh bound the pink noise in Hz whose level is told.
const pinkLow, pinkHigh = 20.0, 20000.0

// quietEnough is the level in dBA from which on an allowed time means anything: 24
// hours and more are allowed below.
const quietEnough = 80.0

// caution fills in how loud pink noise of the wiring's voltage is at the spot and how
// long it may last, and warns where that, or a tone, can hurt hearing. The array is
// taken with its woofer, where there is one: ears hear both. What is wrong with the
// crossover is added to the plan's findings.
func (plan *Plan) caution() error {
	frequency, level := plan.Response.Frequency, plan.Response.Aligned
	if plan.Array.Woofer.Present {
		w, err := WithWoofer(plan)
		switch {
		case err != nil && plan.IsAbsolute():
			return err
		case err != nil: // nothing to warn of is known; who wants to hear it is told
			return nil
		}
		plan.Warnings = append(plan.Warnings, w.Warnings...)
		frequency, level = w.Frequency, w.Sum
	}
	if !plan.IsAbsolute() {
		return nil
	}
	g, tone := &plan.Protection, peak(level)
	g.Level, g.Hours = pink(frequency, level), math.Inf(1)
	if g.Level >= quietEnough {
		g.Hours = exposure.Allowed(g.Level)
	}
	if risk := (HearingRisk{g.Level >= exposure.Limit, plan.Array.Woofer.Present, plan.Array.Wiring.Voltage, g.Level, tone, g.Hours}); risk.ByNoise || tone >= exposure.Limit {
		plan.warn("hearing", advice.Caution, risk)
	}
	return nil
}

// pink returns the level in dBA of pink noise whose RMS voltage is that of the tones
// that have levels in dB at frequencies in Hz, evenly spaced on a logarithmic axis: each
// stands for an equal part of the noise. What lies beyond them hardly weighs.
func pink(frequency, level []float64) float64 {
	n := len(frequency)
	step := math.Log(frequency[n-1]/frequency[0]) / float64(n-1)
	part := 10 * math.Log10(step/math.Log(pinkHigh/pinkLow))
	return exposure.Level(frequency, level) + part
}

// peak returns the highest of some levels.
func peak(level []float64) float64 {
	top := math.Inf(-1)
	for _, v := range level {
		top = max(top, v)
	}
	return top
}
