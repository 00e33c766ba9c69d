package words

import (
	"fmt"
	"slices"
	"strings"

	"pappus/layout"
	"pappus/layout/kit"
	"pappus/layout/prose"
)

// Kit says what the parts take together, printed solid at the printer's flow.
func Kit(a *layout.Array, m kit.Made) string {
	n, plates := 0, 0
	for _, p := range m.Parts {
		n += p.Count
	}
	for _, s := range m.Spots {
		plates = max(plates, s.Plate+1)
	}
	volume := m.Volume()
	return prose.Sprintf("%s on %s: %.0f g of material, %s of printing, all solid: infill, supports and brim are not in it. Segments are marked inside with their number, their neighbours', and which way is up; supports go where kit.csv has overhang. Print the seat first and try a driver in it, and two parts that meet: where they bind or rattle, change kit.gap_mm (%.2g mm).",
		prose.Count(n, "part", "parts"), prose.Count(plates, "plate", "plates"), 1e3*volume*a.Print.Density, lasting(volume/a.Print.Flow/3600), 1000*a.Kit.Gap)
}

// KitSentences say all of a kit that no table has: what its parts take, its vents, what is to be bought,
// more, and what to mind. volt is the RMS voltage over each driver.
func KitSentences(a *layout.Array, m kit.Made, volt float64, more ...string) []string {
	all := slices.Concat([]string{OffBed(a, m), Unheld(a, m), Kit(a, m)}, KitVents(a, m.Vents, volt), []string{Fittings(a, m.Fittings)}, more, []string{Small})
	return slices.DeleteFunc(all, func(text string) bool { return text == "" })
}

// Fittings says what is to be bought for each body.
func Fittings(a *layout.Array, all []kit.Fitting) string {
	var list []string
	for _, f := range all {
		switch {
		case f.Length > 0 && f.Mass > 0:
			list = append(list, prose.Sprintf("%s: %.1f m of joints, %.0f g", string(f.Bought), f.Length, 1e3*f.Mass))
		case f.Length > 0:
			list = append(list, prose.Sprintf("%s: %.2g m", string(f.Bought), f.Length))
		case f.Mass > 0:
			list = append(list, prose.Sprintf("%s: %.2g g", string(f.Bought), 1e3*f.Mass))
		default:
			list = append(list, prose.Sprintf("%s: %d", string(f.Bought), f.Count))
		}
	}
	if len(list) == 0 {
		return ""
	}
	text := "To buy"
	if len(a.Bodies()) > 1 {
		text += ", for each body"
	}
	return text + ": " + strings.Join(list, "; ") + ". kit-parts.csv has them with a tenth to spare."
}

// OffBed says which parts do not lie on the printer's bed; nothing where all do.
func OffBed(a *layout.Array, m kit.Made) string {
	var over []string
	for i, p := range m.Prints {
		if !p.Fits {
			over = append(over, prose.Sprintf("%s, %.0f by %.0f by %.0f mm", m.Parts[i].Name, 1e3*p.Size.X, 1e3*p.Size.Y, 1e3*p.Size.Z))
		}
	}
	if len(over) == 0 {
		return ""
	}
	bed := a.Print.Bed
	return prose.Sprintf("Larger than the bed of %.0f by %.0f by %.0f mm, and on no plate: %s. It is the tongues and ribs of their joints that reach over it, and no smaller cut keeps off the cut-outs. Have these printed on a larger bed, or give print.bed_mm a larger one.",
		1e3*bed.X, 1e3*bed.Y, 1e3*bed.Z, strings.Join(over, "; "))
}

// mostUnheld is how many pairs of segments are named: more say no more.
const mostUnheld = 6

// Unheld says which segments have no screw and no dowel where they meet, and what is to be done there;
// nothing where all have.
func Unheld(a *layout.Array, m kit.Made) string {
	var all []kit.Meeting
	for _, j := range m.Meetings {
		if j.Bare() {
			all = append(all, j)
		}
	}
	if len(all) == 0 {
		return ""
	}
	var named []string
	for _, j := range all[:min(len(all), mostUnheld)] {
		text := fmt.Sprintf("%d and %d", j.A, j.B)
		if a.Kit.Joint == kit.Lap {
			text += prose.Sprintf(" (a tongue under %.0f of %.0f mm)", 1e3*j.Lapped, 1e3*j.Long)
		}
		named = append(named, text)
	}
	if n := len(all) - mostUnheld; n > 0 {
		named = append(named, prose.Count(n, "pair", "pairs")+" more")
	}
	return "Drivers leave no room for a screw or a dowel where these segments meet: " + prose.Each(named) +
		". Glue alone holds them there: glue edge to edge as well, and hold them with tape from outside while it sets. A larger bed has fewer joints; a larger body, or fewer drivers, has room between them."
}

// Making says how many parts of how many are made, and how many seconds are left, in 60 letters at most.
func Making(n, of int, left float64) string {
	text := fmt.Sprintf("making the parts: %d of %d", n, of)
	if n < of {
		text += ", " + about(left) + " left"
	}
	return text
}

// MakingLeft says how far the making of parts is, and what is left, in 60 letters at most.
func MakingLeft(done, left float64) string {
	return fmt.Sprintf("making the parts: %.0f %%, %s left", 100*done, about(left))
}

// PartsNotMade says that there are no parts to be had yet.
const PartsNotMade = "the parts of this design are not made yet: have them made first"

// NotMade says why there are no parts.
func NotMade(why string) string { return "The parts cannot be made: " + why + "." }

// Small is the caution for what is printed.
const Small = "Small parts are not for children. A printer's nozzle and bed burn; leave no printer alone with a job for hours that nobody looks after. " +
	"Keep loose fibre off coils, resistors and amplifiers, which get warm; choose one that does not feed a flame."
