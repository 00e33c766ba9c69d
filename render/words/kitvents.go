package words

import (
	"math"

	"pappus/layout"
	"pappus/layout/box"
	"pappus/layout/kit"
	"pappus/layout/prose"
	"pappus/timing/damping"
)

// leastGap is how many times the vents' area there is to be under a stand, all round: at five
// times a seventh of all the air that moves is under there, of a floor filled with vents, at
// three a quarter (common practice: many times).
const leastGap = 5

// fastest is how fast air may go through stuffing, in m/s peak; over it the resistance is no
// longer the same for loud and soft (common practice; see box.Vent.Velocity).
const fastest = 1

// KitVents says what the vents of a kit come to, in paragraphs; volt is the RMS voltage over each
// driver.
func KitVents(a *layout.Array, v kit.Vents, volt float64) []string {
	switch {
	case v.Closed == 0 && v.Why == "":
		return nil
	case v.Closed == 0:
		return []string{"No vents: " + v.Why + "."}
	case v.Mounts > 0:
		return []string{inPlace(a, v)}
	case v.Count == 0 && v.Box.Q > 0:
		return []string{spared(a, v)}
	case v.Count == 0:
		return []string{prose.Sprintf("There is no room for a vent: closed, the Q is %.2f.", v.Closed)}
	}
	text := prose.Sprintf("Vents: %s of %s with a bore of %.1f mm, %.0f cm2 together; they go in from outside. ",
		prose.Count(v.Count, "cartridge", "cartridges"), v.Thread(), 1e3*v.Bore, 1e4*v.Area())
	out := []string{text + comesTo(a, v), Filled(v), refill(v)}
	if words := gap(a, v); words != "" {
		out = append(out, words)
	}
	if _, flow, err := v.Box.Flow(volt, v.Box.Resonance); err == nil {
		if speed := math.Sqrt2 * flow / v.Area(); speed > fastest {
			out = append(out, prose.Sprintf("At full level air goes through them at %.1f m/s peak; over %d m/s stuffing resists loud tones more than soft ones: measure softly and loudly.", speed, fastest))
		}
	}
	return out
}

// inPlace says what vents in place of drivers would do.
func inPlace(a *layout.Array, v kit.Vents) string {
	text := prose.Sprintf("There is no place for vents: the body has no floor and no bare flat face that air comes to. In place of %s (leave their mounts out by mounts.skip) cartridges of %s, the largest that fit where a driver does, would bring the Q to %.2f, from %.2f closed",
		prose.Count(v.Mounts, "driver", "drivers"), v.Thread(), v.Box.Q, v.Closed)
	if !v.Reached {
		text += prose.Sprintf(", not to %.2f: the air in them is too heavy for a resistance. Stuffing alone is the better way", a.Box.TargetQ)
	}
	return text + "."
}

// comesTo says which Q vents bring, and what brings the design's.
func comesTo(a *layout.Array, v kit.Vents) string {
	if v.Reached {
		return prose.Sprintf("They bring the Q to %.2f at %.0f Hz, from %.2f closed.", v.Box.Q, v.Box.Resonance, v.Closed)
	}
	under := ""
	if v.Under > 0 {
		under = prose.Sprintf(", %.0f percent of it %s,", 100*v.Under/v.Box.Mass, below(a))
	}
	text := prose.Sprintf("Of all sizes and numbers that there is room for none does much more: they bring the Q from %.2f closed to %.2f at best, not to %.2f. The air that moves in them%s weighs %.2f of their resistance, too much for whatever filling. ",
		v.Closed, v.Box.Q, a.Box.TargetQ, under, v.Box.Heavy())
	reach := math.Ceil(100*v.Box.Q) / 100
	return text + prose.Sprintf("In reach is box.target_q = %.2f; what is left, about %.1f dB at %.0f Hz, is for stuffing in the body and a section of the processor (`pappus level`).",
		reach, 20*math.Log10(v.Box.Q/a.Box.TargetQ), v.Box.Resonance)
}

// spared says why there are no vents where there would be room for some.
func spared(a *layout.Array, v kit.Vents) string {
	return prose.Sprintf("No vents: of all sizes and numbers that there is room for none brings the Q below %.2f, from %.2f closed. The air in them is too heavy: they would sound by themselves, and the hump in the level of cones and vents together stays. Many small holes in the thin wall under cloth carry less air: `pappus sheets` says how many. What is above box.target_q, about %.1f dB at the resonance, is for stuffing in the body and a section of the processor (`pappus level`).",
		v.Box.Q, v.Closed, 20*math.Log10(v.Closed/a.Box.TargetQ))
}

// below names the gap that the floor looks into.
func below(a *layout.Array) string {
	if a.On == layout.OnCeiling || a.On == layout.OnWall {
		return "in the gap before the floor"
	}
	return "under the stand"
}

// Filled says what goes into each cartridge.
func Filled(v kit.Vents) string {
	likely, least, most := v.Grams()
	text := prose.Sprintf("Each takes %.2g g of loose polyester fibre, spread evenly from grid to grid, for %.0f Pa s/m: %.2g g of the finest that cushions are filled with, %.2g g of the coarsest (after Garai and Pompoli 2005, Bies and Hansen 1980).",
		1e3*likely, v.Resistivity()*v.Fill(), 1e3*least, 1e3*most)
	if v.Density() > box.DensestFibre {
		text += prose.Sprintf(" At %.0f kg/m3 that is packed tighter than the %d kg/m3 of what was published: begin with the least, and let the measurement tell.", v.Density(), box.DensestFibre)
	}
	return text
}

// quarter is a change of the filling that a reading is to tell of.
const quarter = 0.25

// refill says what a reading means for the filling.
func refill(v kit.Vents) string {
	return "Then measure a channel (`pappus impedance`, `pappus tune`). " + readings(v) + prose.Sprintf("In the log the cartridges are vents (%d of %.1f mm), and stuffing_g is what lies in the body alone, of which more lowers Q; fill_g is the fibre in each cartridge (`pappus tune add --fill-g`). Change one of the two at a time. Measure first with them taped over, and log that without vents: by it `pappus tune` tells from the trials with fibre how many grams to try.",
		v.Count, 1e3*v.Bore)
}

// readings says what is read with the filling as it should be, and with more and less; nothing where
// the driver's values do not tell.
func readings(v kit.Vents) string {
	area := v.Area() / float64(v.Count)
	grams, _, _ := v.Grams()
	as := func(share float64) (float64, bool) {
		return damping.Reading(v.Box, box.FibreFlow(share*grams, area, v.Fill())/box.FibreFlow(grams, area, v.Fill()))
	}
	less, seen := as(1 - quarter)
	right, seen2 := as(1)
	more, seen3 := as(1 + quarter)
	if !seen || !seen2 || !seen3 {
		return ""
	}
	text := prose.Sprintf("Of the two resonances that vents make the reading is a mean: with as much fibre as it should be Q reads about %.2f, with a quarter more in each cartridge %.2f, with a quarter less %.2f. ", right, more, less)
	if (more-right)*(right-less) <= 0 {
		return text + "That does not tell too much from too little: go by the trial without vents. "
	}
	return text + "Put in or take out as it tells. "
}

// Outlet says which cable leaves the body, and where.
func Outlet(a *layout.Array, m kit.Made) string {
	text := CableThrough(m)
	if m.Ground.Gland == nil {
		text += " that is to be drilled where nothing else is"
	}
	if below := m.Outlet.Thread + bend*m.Outlet.Cable; m.Ground.Gland != nil && a.Stand > 0 && a.Stand < below {
		return text + prose.Sprintf("; below the floor they take about %.0f mm, and the stand has %.0f mm: lead a cable of two cores for each channel out flat through the hole, sealed with putty, or put terminals there on a plate, sealed", 10*math.Ceil(1e2*below), 1e3*a.Stand)
	}
	return text + "; or terminals on a plate over it, sealed"
}

// CableThrough says in short what a body's gland is for.
func CableThrough(m kit.Made) string {
	return prose.Sprintf("for one cable of %d cores, about %.0f mm thick, in a hole of %.1f mm", m.Outlet.Cores, 1e3*m.Outlet.Cable, 1e3*m.Outlet.Hole())
}

// bend is how many times its thickness the radius of a cable's bend is at least (common practice).
const bend = 4

// gap says whether air gets out from under the stand; nothing where it does.
func gap(a *layout.Array, v kit.Vents) string {
	switch {
	case !a.Body.IsCut || v.Gap >= leastGap:
		return ""
	case math.IsNaN(v.Gap):
		return "The floor lies on what the body stands on, and no air comes to vents in it: give the body feet (body.stand_height_mm), or put nothing below."
	}
	return prose.Sprintf("All round %s there is %.1f times the vents' area; common practice is many times as much: with body.stand_height_mm = %.0f it is %d times.",
		below(a), v.Gap, math.Ceil(1e3*a.Stand*leastGap/v.Gap), leastGap)
}
