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
	all := slices.Concat([]string{Kit(a, m)}, KitVents(a, m.Vents, volt), []string{Fittings(a, m.Fittings)}, more, []string{Small})
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

// Making says how many parts of how many are made.
func Making(n, of int) string { return fmt.Sprintf("making the parts: %d of %d", n, of) }

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
