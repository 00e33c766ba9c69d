package words

import (
	"fmt"

	"pappus/layout"
	"pappus/layout/prose"
	"pappus/layout/shell"
)

// mostMisfits is how many drivers that do not fit are named; the table has them all.
const mostMisfits = 8

// Fit says whether the drivers fit, and where all do which sizes just would. What makes
// the others fit the finding says, which stands on the screen before.
func Fit(a *layout.Array, f layout.Fits) string {
	var bad []int
	for i, r := range f.Reports {
		if !r.Fits(a.Limits) {
			bad = append(bad, a.Mounts[i].ID)
		}
	}
	of := prose.Count(len(f.Reports), "driver does", "drivers do")
	switch {
	case len(bad) > mostMisfits:
		return fmt.Sprintf("%d of %s not fit: %s and others; see fit.csv.", len(bad), of, commas(bad[:mostMisfits]))
	case len(bad) > 0:
		return fmt.Sprintf("%d of %s not fit: %s.", len(bad), of, commas(bad))
	}
	text := fmt.Sprintf("All %d drivers fit.", len(f.Reports))
	if len(f.Reports) == 1 {
		text = "The driver fits."
	}
	if f.Largest.FlangeRadius > 0 {
		text += fmt.Sprintf(" The largest of this driver's proportions has a flange of %.1f mm", 2000*f.Largest.FlangeRadius)
		if f.Smallest > 0 {
			text += fmt.Sprintf("; the smallest body that takes it as it is has a radius of %.0f mm", 1000*f.Smallest)
		}
		text += "."
	}
	return text
}

// Stuffing is what to say beside any figure about stuffing.
const Stuffing = "Stuffing is a starting point: measure the impedance, then add or take away. " +
	"Keep it off coils, magnets and amplifiers, which get warm, and off cones and vents; " +
	"choose one that does not feed a flame."

// Box says what the box does and what to do about it, in paragraphs.
func Box(h layout.Hollow) []string {
	first := fmt.Sprintf("%.2f l inside, %.3f l for each driver.", 1000*h.Room.Net, 1000*h.Room.Share)
	if c := h.Closed; c != nil {
		first += fmt.Sprintf(" Closed, they resonate at %.0f Hz with a Q of %.2f.", c.Resonance, c.Q)
	}
	lines := []string{first}
	if h.Why != "" {
		lines = append(lines, fmt.Sprintf("No vent: %s.", h.Why))
	}
	if h.Vented != nil {
		lines = append(lines, vent(h))
	}
	return append(lines, fmt.Sprintf("Begin with %.0f g of stuffing. %s", 1000*h.Stuffing, Stuffing))
}

// vent says which vent brings the box to its Q. The cloth's resistance is per area, so
// that more holes need a denser one.
func vent(h layout.Hollow) string {
	cloth := h.Vent.Specific(h.Vented.Resistance)
	text := fmt.Sprintf("A vent of %s of %.0f mm under cloth of %.0f Pa s/m would bring the Q to %.2f",
		prose.Count(h.Vent.Number, "hole", "holes"), 2000*h.Vent.Radius, cloth, h.Vented.Q)
	if n := h.LeastHoles(); n > 0 {
		text += fmt.Sprintf(", but the air in so few is too heavy for a resistance: take %d holes or more; with %d the cloth is to have %.0f Pa s/m",
			n, n, cloth*float64(n)/float64(h.Vent.Number))
	}
	return text + ". That is of holes in the wall; cartridges of `pappus kit` carry more air, and kit.pdf says what they come to."
}

// Shell says how the shell is printed, or why it is not, in paragraphs.
func Shell(a *layout.Array, p shell.Plan, noShell, noCut string) []string {
	switch {
	case noShell != "":
		return []string{"No shell to print: " + noShell + "."}
	case noCut != "":
		return append([]string{"The shell is written whole, larger than the bed, since " + noCut + "."}, openBelow(a)...)
	}
	return append(segments(p), openBelow(a)...)
}

// openBelow says that the shell of a cut body is to be closed; nothing for a whole body. The
// box's figures are of a closed one, and an open one cancels its own low tones.
func openBelow(a *layout.Array) []string {
	if !a.Body.IsCut {
		return nil
	}
	return []string{"The shell is open below: close it airtight with the floor that `pappus kit` makes, or a plate of the opening's outline, screwed on over a gasket. What is said of the box holds for the closed one."}
}

// segments says in which pieces the shell is printed.
func segments(p shell.Plan) []string {
	mass := 0.0
	for _, s := range p.Segments {
		mass += s.Mass
	}
	if len(p.Segments) == 1 {
		return []string{fmt.Sprintf("The shell fits the printer's bed whole; it weighs %.0f g.", 1000*mass)}
	}
	out := []string{fmt.Sprintf("The shell is printed in %d segments, %.0f g together; see segments.csv.", len(p.Segments), 1000*mass)}
	if len(p.Cells) > 0 {
		out = append(out, "No flat seam keeps off the cut-outs: the seams go in steps midway between drivers, so print with supports.")
	}
	return out
}
