package damping

import (
	"pappus/layout"
	"pappus/layout/box"
)

// Sounding is what is heard of a box with open vents, whose Q as it is read is a mean of two resonances.
type Sounding struct {
	Q    float64 // about, of what sounds: box.Vented's
	Best float64 // of what these vents come to: the target, or the least that there is
	Read float64 // what is read there
}

// soundingOf returns that of a trial, by the box as the design has it, without its stuffing; nil where no
// vents are open, or the design does not tell.
func soundingOf(t Trial, h layout.Hollow, g Goal) *Sounding {
	if t.Vents == 0 || t.Flat || h.Vented == nil {
		return nil
	}
	holes, _ := tubesOf(t)
	mass := heavier * holes.Mass(h.Vented.Air)
	if t.FillG == 0 {
		holes.Depth = h.Vent.Depth
		mass = holes.Mass(h.Vented.Air)
	}
	best, _ := box.DampHeavy(h.Driver, h.Vented.Number, h.Vented.Volume, g.Q, mass, h.Vented.Air)
	read, ok := Reading(best, 1)
	if !ok {
		return nil
	}
	s := Sounding{Q: best.Q, Best: best.Q, Read: read}
	// From there on to the closed box both rise with the vents' resistance.
	for times := 1.0; times < 100; times *= 1.05 { // free: closer than a reading can be
		s.Q = best.With(times*best.Resistance, mass).Q
		if q, ok := Reading(best, times); ok && q >= t.Q.Value {
			break
		}
	}
	return &s
}
