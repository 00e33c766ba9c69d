package words

import (
	"fmt"
	"math"
	"slices"

	"pappus/layout"
	"pappus/layout/prose"
	"pappus/timing/bill"
)

// overPeople is how many times its load whatever holds a thing over people is rated for (common
// practice of stage rigging; rules of a place may ask for more, or for people who may do it).
const overPeople = 10

// upright is within what lean in degrees nobody sees that a body hangs askew (common practice).
const upright = 1.0

// Takes says in one paragraph what building takes.
func Takes(b bill.Bill) string {
	return takes(b, "of printing the plain shell, without what `pappus kit` adds", "parts.csv")
}

// TakesKit says it of a kit.
func TakesKit(b bill.Bill) string { return takes(b, "of printing", "kit-parts.csv") }

func takes(b bill.Bill, printing, table string) string {
	text := fmt.Sprintf("It takes %s of soldering %s and putting drivers in", lasting(b.Work/3600), prose.Count(b.Joints, "joint", "joints"))
	if b.Print > 0 {
		text += ", " + lasting(b.Print/3600) + " " + printing
	}
	text += prose.Sprintf(", and weighs %.2g kg", b.Mass)
	if b.Price > 0 {
		text += fmt.Sprintf("; it costs %.0f", b.Price)
	}
	return text + "; " + table + " has it all." + left(b)
}

// left says what is not in the sums.
func left(b bill.Bill) string {
	var text string
	if len(b.NoMass) > 0 {
		text += " What is not known weighs nothing there: " + each(b.NoMass) + "."
	}
	if b.Price > 0 && len(b.NoPrice) > 0 {
		text += " What is not known costs nothing there: " + each(b.NoPrice) + "."
	}
	return text
}

// each lists kinds of parts, each once.
func each(kinds []bill.Kind) string {
	var names []string
	for _, k := range kinds {
		name := string(k)
		switch k {
		case bill.Own:
			name = "the design's own parts"
		case bill.Fitting:
			name = "what is to be bought for the kit"
		}
		if !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	return prose.Each(names)
}

// Hanging says where a body's mass is, how it hangs, and what must hold it; nothing where it stands.
func Hanging(a *layout.Array, b bill.Balance, known bool) []string {
	if a.On != layout.OnCeiling && a.On != layout.OnWall {
		return nil
	}
	who := "Have somebody qualified see what it is fixed to and how, and keep to local rules; do not hang it while anybody is below."
	if !known {
		return []string{fmt.Sprintf("What it weighs is not known for want of driver.mass_g: weigh it with drivers and wires. Hook, line and what they are fixed to are rated for %d times that, and a second line, too, that holds it alone (common practice over people). %s", overPeople, who)}
	}
	rated := prose.Sprintf("%.2g kg", overPeople*b.Mass)
	text := prose.Sprintf("Shell and drivers of a body weigh %.2g kg; wires, stuffing and screws come on top: weigh it. ", b.Mass) +
		fmt.Sprintf("Hook, line and what they are fixed to are rated for %s at least, %d times that, and so is a second line, fixed elsewhere and so short that it takes the weight at once (common practice over people). %s", rated, overPeople, who)
	return []string{text, leaning(a, b)}
}

// leaning says how a body hangs by one hook.
func leaning(a *layout.Array, b bill.Balance) string {
	at := fmt.Sprintf("Its middle of mass is at %s, %s, %s mm (forward, left, up, of the body as it is designed). ", prose.Fixed(1e3*b.Centre.X, 0), prose.Fixed(1e3*b.Centre.Y, 0), prose.Fixed(1e3*b.Centre.Z, 0))
	if a.On == layout.OnWall {
		return at + "The fixing on the wall bears that as a lever, too."
	}
	switch lean := b.Lean * 180 / math.Pi; {
	case math.IsNaN(lean):
		return at + "That is above the hook: by one hook it would turn over; use three lines."
	case lean < upright:
		return at + prose.Sprintf("By one hook on its axis it leans by %.1f degrees, which nobody sees.", lean)
	default:
		return at + prose.Sprintf("By one hook on its axis it leans by %.1f degrees: use three lines, or fix %.0f g inside, across from there.", lean, 1e3*b.Counter)
	}
}
