package words

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"pappus/layout"
	"pappus/layout/kit"
	"pappus/layout/prose"
	"pappus/layout/wiring"
	"pappus/timing"
	"pappus/timing/limiter"
	"pappus/timing/loom"
)

// reachOut is how far in m a driver must stand out of its hole to be soldered there, over its own
// depth (common practice: a finger's width and an iron's tip).
const reachOut = 0.03

// WiringSteps is the order of work that keeps hands out of a closed body, with what a meter reads.
func WiringSteps(p *timing.Plan, strings []loom.String) []string {
	a := p.Array
	steps := []string{
		"Read each driver with a meter: " + Ohms(loom.ReadString(p, loom.String{Order: make([]int, 1)}).Whole) + " ohm. Touch it for a moment with a 1.5 V cell: where the cone moves outward, the cell's plus is on the driver's plus; mark it. Put aside what reads otherwise or scrapes.",
		"Cut the wires from the list, and put a label on both leads of each string and on the rear of each driver.",
		"Join the wires of a string first, on the bench, with the drivers in their order: minus to the next one's plus, a sleeve over each joint. An iron burns, and its smoke is not for lungs: fix it, and air the room. Small parts are not for children.",
		through(a),
		"Read each string at its two leads before it is joined to others, and write it down: a fault is found now in minutes.",
		"Join the leads of each channel's strings at its terminals, plus to plus. Read each channel there, and touch it with the cell: all its cones move outward at once. " + cellMoves(p, strings),
		closing(a),
		"Read every channel once more from outside. Nothing of it may touch a metal case or another channel.",
		switchOn(p),
	}
	return steps
}

// through says how drivers come into the body, and whether the slack is enough for it.
func through(a *layout.Array) string {
	need := a.Driver.Depth + reachOut
	opening := "the opening"
	if !a.Body.IsCut {
		opening = "where the cable comes out"
	}
	text := "Lead each string through the cut-outs, and put its drivers in from outside, from the one furthest from " + opening + " on: their joints are made before, so that no hand has to reach in."
	if a.Kit.Mounting == kit.Rear && a.Body.IsCut {
		// The way in is the floor, which is on last.
		return "Lay each string into the body, and put its drivers in from inside, from the one furthest from the opening on, before the floor is on: their joints are made before, so that no iron has to reach in."
	}
	if a.Build.Slack >= need-1e-9 {
		return text + fmt.Sprintf(" %.0f mm of slack at each joint let a driver stand out of its hole.", 1000*a.Build.Slack)
	}
	return text + fmt.Sprintf(" For a driver to stand out of its hole on its wires, its depth and a finger, take slack_mm = %.0f in the design and cut the wires anew: %.0f mm are short.", math.Ceil(1000*need/5)*5, 1000*a.Build.Slack)
}

// cellMoves says how far the cell moves the cones of the longest string.
func cellMoves(p *timing.Plan, strings []loom.String) string {
	least, longest := math.Inf(1), 0
	for _, s := range strings {
		if r := loom.ReadString(p, s); r.Move < least {
			least, longest = r.Move, len(s.Order)
		}
	}
	switch {
	case math.IsInf(least, 1):
		return "The longer a string, the less they move: lay a finger lightly on them."
	case least < loom.Seen:
		return fmt.Sprintf("In a string of %d they move by %.2f mm only: lay a finger lightly on them.", longest, 1000*least)
	}
	return fmt.Sprintf("They move by %.1f mm at least.", 1000*least)
}

// closing says what comes before the body is closed.
func closing(a *layout.Array) string {
	text := "Tie wires to the wall or to one another, off cones and magnets. Put the stuffing in, off terminals, magnets, cones and vents, "
	if a.Body.IsCut {
		text += "and close the body airtight over its seal."
	} else {
		text += "and close the body airtight by its last driver, over a gasket."
	}
	if a.On == layout.OnCeiling || a.On == layout.OnWall {
		text += " Weigh it before it goes up. The cable bears no weight: it hangs slack beside the lines."
	}
	return text
}

// switchOn says how to switch on.
func switchOn(p *timing.Plan) string {
	text := "Set the processor before the amplifier is joined: delays, gains, and the high-pass. " + HighPass(p)
	if channels := limiter.Channels(p); len(channels) > 0 && !math.IsInf(channels[0].Peak, 1) {
		text += " Limiters: " + limitersOf(channels) + "."
	}
	if p.Array.Woofer.Present {
		if w, err := timing.WithWoofer(&p.Spot); err == nil {
			text += " " + WooferSet(w)
		}
	}
	return text + " Then join one channel after another, the amplifier at its lowest, and listen to each alone: quiet noise, no scraping. Work at the mains is for those who are licensed for it."
}

// limitersOf writes the limiters that hold for most channels, and how far they range.
func limitersOf(channels []limiter.Channel) string {
	low, high := channels[0], channels[0]
	for _, c := range channels {
		if c.Peak < low.Peak {
			low = c
		}
		if c.Peak > high.Peak {
			high = c
		}
	}
	text := prose.Sprintf("%.3g V RMS and %.3g V peak at the amplifier's terminals", low.RMS, low.Peak)
	if high.Peak > 1.01*low.Peak {
		return text + prose.Sprintf(" on the channel with the least, up to %.3g and %.3g on others: see pappus limits", high.RMS, high.Peak)
	}
	return text
}

// codes are the colours of digits, IEC 60062.
var codes = [...]string{"black", "brown", "red", "orange", "yellow", "green", "blue", "violet", "grey", "white"}

// ColourCode writes a number above 0 in the colours of its digits (IEC 60062).
func ColourCode(n int) string {
	var out []string
	for _, digit := range strconv.Itoa(n) {
		out = append(out, codes[digit-'0'])
	}
	return strings.Join(out, ", ")
}

// TerminalRow says how terminals are.
const TerminalRow = "In one row, numbered from the left as they are seen from outside; from the inside the first is at the right. " +
	"The number is that of the cable's core, too, where cores are numbered: odd ones are plus, even ones minus. Sleeves have the colours of the channel's number (IEC 60062: 0 black, 1 brown, 2 red, 3 orange, 4 yellow, 5 green, 6 blue, 7 violet, 8 grey, 9 white)."

// CellShows says what a cell at a channel's terminals shows.
const CellShows = "Cones out: with the plus of a 1.5 V cell on the channel's plus for a moment, and its minus on the minus, all its cones move outward. One that moves inward has its two wires swapped; a whole string that does has its leads swapped; a string that stays still is open, or not joined."

// CutList says which wire is cut, and what the cable to the amplifier takes.
func CutList(p *timing.Plan) string {
	a := p.Array
	text := prose.Sprintf("Copper of %.3g mm2 inside (gauge %d or thicker), each piece with %.0f mm of slack at both ends, in straight lines, to the next 10 mm; terminals are taken to be on the upright axis, at the body's lowest. Red from plus terminals, black to minus terminals, yellow between drivers.",
		1e6*a.Build.InnerSection, wiring.Gauge(a.Build.InnerSection), 1000*a.Build.Slack)
	if a.Wiring.WireLength == 0 {
		return text + " Say wiring.wire_m for what the cable to the amplifier takes."
	}
	ohm, loss := 0.0, 0.0
	for _, b := range p.Banks {
		ohm, loss = max(ohm, b.WireOhm), max(loss, b.WireLoss)
	}
	return text + prose.Sprintf(" The cable to the amplifier is %.3g m of two cores of %.3g mm2 (gauge %d or thicker) for each channel: %.2f ohm out and back, which take %.2f dB at most off a channel.",
		a.Wiring.WireLength, 1e6*a.Wiring.WireSection, wiring.Gauge(a.Wiring.WireSection), ohm, loss)
}

// Readings says what readings are of.
func Readings(a *layout.Array) string {
	return prose.Sprintf("Direct current, all cold: drivers of %.3g ohm within %.0f percent, and the wire. Touch the probes together first and take off what they show. Where a reading tells nothing, that is said.",
		a.Driver.DCOhm, 100*loom.Tolerance)
}

// StringFaults says what readings of a string of n drivers mean that are not in its range.
func StringFaults(n int, r loom.StringReading) string {
	text := "no reading: a joint is open or a coil broken; more: a poor joint"
	switch {
	case n == 1:
		return text + "; next to nothing: shorted"
	case r.Short.Told:
		return text + fmt.Sprintf("; %s: one driver is shorted or left out", Ohms(r.Short.Reads))
	}
	return text + "; one driver shorted is not to be told from none: read each alone"
}

// ChannelFaults says what readings of a channel of n strings mean that are not in its range.
func ChannelFaults(n int, r loom.ChannelReading) string {
	if n == 1 {
		return "as its string does, or a terminal is loose"
	}
	if r.Open.Told {
		return fmt.Sprintf("%s or more: a string is not joined; less than the least: two leads touch", Ohms(r.Open.Reads))
	}
	return "a string that is not joined is not to be told here: trust the strings' own readings"
}

// Ohms writes a range of readings.
func Ohms(r loom.Range) string { return prose.Fixed(r.Least, 1) + " to " + prose.Fixed(r.Most, 1) }

// StringsOf says how many strings there are, and of how many drivers.
func StringsOf(of []loom.String) string {
	least, most := len(of[0].Order), len(of[0].Order)
	for _, s := range of {
		least, most = min(least, len(s.Order)), max(most, len(s.Order))
	}
	if least == most {
		return prose.Count(len(of), "string", "strings") + " of " + prose.Count(most, "driver", "drivers")
	}
	return prose.Count(len(of), "string", "strings") + fmt.Sprintf(" of %d to %d drivers", least, most)
}

// WireTakes says what a string's wire has and takes.
func WireTakes(dcOhm float64, s loom.String) string {
	loss := 20 * math.Log10(1+s.WireOhm/(dcOhm*float64(len(s.Order))))
	return fmt.Sprintf("%.1f m: %.2f ohm, %.2f dB", s.Length(), s.WireOhm, loss)
}
