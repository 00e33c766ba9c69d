package timing

import (
	"fmt"
	"math"

	"pappus/layout/advice"
	"pappus/timing/exposure"

	"gonum.org/v1/gonum/spatial/r3"
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
	frequency, level, with := plan.Response.Frequency, plan.Response.Aligned, ""
	if plan.Array.Woofer.Present {
		w, err := WithWoofer(plan)
		switch {
		case err != nil && plan.IsAbsolute():
			return err
		case err != nil: // nothing to warn of is known; who wants to hear it is told
			return nil
		}
		plan.Warnings = append(plan.Warnings, w.Warnings...)
		frequency, level, with = w.Frequency, w.Sum, "with the woofer "
	}
	if !plan.IsAbsolute() {
		return nil
	}
	g, tone := &plan.Protection, peak(level)
	g.Level, g.Hours = pink(frequency, level), math.Inf(1)
	if g.Level >= quietEnough {
		g.Hours = exposure.Allowed(g.Level)
	}
	f := advice.Finding{Code: "hearing", Rank: advice.Caution, Cure: "begin quietly, and turn it down for children"}
	switch volt := plan.Array.Wiring.Voltage; {
	case g.Level >= exposure.Limit:
		f.What = fmt.Sprintf("%spink noise of %.4g V comes to %.0f dB(A) at the spot and a tone to %.0f dB; NIOSH (98-126) allows %s of the noise a day to grown-ups at work, and much less is right for children",
			with, volt, g.Level, tone, lasting(g.Hours))
	case tone >= exposure.Limit:
		f.What = fmt.Sprintf("%sa tone of %.4g V comes to %.0f dB at the spot; long above %.0f dB(A) hurts hearing, children's first", with, volt, tone, exposure.Limit)
	default:
		return nil
	}
	plan.warn(f)
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

// lasting writes a time in hours.
func lasting(hours float64) string {
	switch {
	case hours == 0:
		return "no time at all"
	case hours < 1.0/60:
		return fmt.Sprintf("%.2g seconds", 3600*hours)
	case hours < 1:
		return fmt.Sprintf("%.2g minutes", 60*hours)
	}
	return fmt.Sprintf("%.2g hours", hours)
}

// ballNote says which ball stands for the body.
func (plan *Plan) ballNote() string {
	b := plan.Array.Body
	if b.BallCentre == (r3.Vec{}) {
		return fmt.Sprintf("The body is taken for a rigid ball of %.0f mm radius, of the whole body's volume.", 1000*b.BallRadius)
	}
	return fmt.Sprintf("With nothing hard below it the cut body is taken for a rigid ball of %.0f mm radius, its centre %.0f mm over the uncut body's: half way between the whole body and what is left of it. For half a dodecahedron arrivals come out right within 40 us.",
		1000*b.BallRadius, 1000*b.BallCentre.Z)
}

// Notes says in plain words what the model takes the array for.
func (plan *Plan) Notes() []string {
	a := plan.Array
	var notes []string
	if a.Timing.Model == sphereModel {
		notes = append(notes, plan.ballNote())
		if trusted := plan.trusted(); trusted != "" {
			notes = append(notes, trusted)
		}
	}
	switch {
	case a.Room.Present:
		notes = append(notes, fmt.Sprintf("The room's walls mirror the sound up to %d times; polars leave the room out.", a.Room.Order))
	case a.Surface.Present && a.Surface.Height == 0 && a.Body.IsCut && a.Body.Cut == 0:
		notes = append(notes, "The surface below mirrors the sound, exact for half a ball that stands on it.")
	case a.Surface.Present:
		notes = append(notes, "The surface below mirrors the sound: near, not exact, for a lifted or cut body.")
	}
	return notes
}
