package timing

import (
	"fmt"
	"math"
)

// loud is the level in dB at which hearing needs care: the recommended limit for
// eight hours a day is 85 dB A-weighted (NIOSH publication 98-126).
const loud = 85

// caution warns where the spot gets so loud at the amplifier's full voltage that
// hearing can be hurt.
func (plan *Plan) caution() {
	if !plan.IsAbsolute() {
		return
	}
	top := math.Inf(-1)
	for _, v := range plan.Response.Aligned {
		top = max(top, v)
	}
	if top >= loud {
		plan.Warnings = append(plan.Warnings, fmt.Sprintf(
			"a tone at %.4g V comes to %.0f dB SPL at the spot; long above %d dB(A) hurts hearing, children's first",
			plan.Array.Wiring.Voltage, top, loud))
	}
}

// Notes says in plain words what the model takes the array for.
func (plan *Plan) Notes() []string {
	a := plan.Array
	var notes []string
	if a.Timing.Model == "sphere" {
		notes = append(notes, fmt.Sprintf("The body is taken for a rigid ball of %.0f mm radius, of the whole body's volume.", 1000*a.Body.BallRadius))
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
