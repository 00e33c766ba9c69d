package sheets

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"pappus/layout"
	"pappus/layout/prose"
	"pappus/layout/shell"
	"pappus/timing"
	"pappus/timing/bill"
)

// billColumns are what a bill of parts says of each.
var billColumns = []column{{"part", "part", 31, false}, {"count", "count", 10, true}, {"spares", "spares", 13, true},
	{"length_m", "length, m", 16, true}, {"volume_cm3", "cm³", 12, true}, {"mass_g", "mass, g", 15, true}, {"price", "price", 13, true},
	{"print_hours", "print, h", 14, true}, {"work_minutes", "work, min", 16, true}, {"note", "note", 50, false}}

// partTable is the bill of parts, with its sums at the end. What is not known stays empty.
func partTable(p *timing.Plan, o Options) table {
	a := p.Array
	t := table{title: "Bill of parts", columns: billColumns}
	b := bill.Of(p, o.Print, o.Stuffing)
	for _, it := range b.Items {
		t.rows = append(t.rows, partRow(it, partName(p, it), partNote(p, o, it)))
		if it.Kind == bill.Driver {
			t.rows = append(t.rows, uncounted(a, a.Body.IsCut)...)
		}
	}
	t.rows = append(t.rows, sumRow(b))
	return t
}

// sumRow is the last row of a bill.
func sumRow(b bill.Bill) []string {
	return partRow(bill.Item{Count: -1, Length: math.NaN(), Volume: math.NaN(), Mass: b.Mass, Price: b.Price, Print: b.Print, Work: b.Work}, "all together",
		fmt.Sprintf("of what is known; %s to solder", prose.Count(b.Joints, "joint", "joints")))
}

// partRow writes a row of the bill; nothing for a count below 0 and for what is not known or none.
func partRow(it bill.Item, name, note string) []string {
	figure := func(v float64, places int) string {
		if math.IsNaN(v) || v == 0 {
			return ""
		}
		return prose.Fixed(v, places)
	}
	count, spares := "", ""
	if it.Count >= 0 {
		count = strconv.Itoa(it.Count)
	}
	if it.Spares > 0 {
		spares = strconv.Itoa(it.Spares)
	}
	return []string{name, count, spares, figure(it.Length, 2), figure(1e6*it.Volume, 1), figure(1e3*it.Mass, 1), figure(it.Price, 2),
		figure(it.Print/3600, 1), figure(it.Work/60, 0), note}
}

func partName(p *timing.Plan, it bill.Item) string {
	switch it.Kind {
	case bill.Segment:
		return fmt.Sprintf("segment %d", it.Index+1)
	case bill.Wire:
		return fmt.Sprintf("wire of channel %d", p.Channels[it.Index].ID)
	case bill.Cable:
		return "cable to the amplifier"
	case bill.Own:
		if name := p.Array.Parts[it.Index].Name; name != "" {
			return name
		}
		return "part"
	}
	return string(it.Kind)
}

func partNote(p *timing.Plan, o Options, it bill.Item) string {
	a := p.Array
	d := a.Driver
	switch it.Kind {
	case bill.Shell:
		return shellNote(a, o.Print)
	case bill.Segment:
		s := o.Print.Segments[it.Index]
		on := "no driver"
		if len(s.Mounts) > 0 {
			on = "drivers " + numbers(a.IDs(s.Mounts))
		}
		return fmt.Sprintf("of the shell; print of %.0f by %.0f by %.0f mm; %s", 1e3*s.Size.X, 1e3*s.Size.Y, 1e3*s.Size.Z, on)
	case bill.Driver:
		note := fmt.Sprintf("cut-out %s mm, flange %s mm, %s ohm", prose.Trimmed(2e3*d.CutoutRadius, 2), prose.Trimmed(2e3*d.FlangeRadius, 2), prose.Trimmed(d.NominalOhm, 2))
		if !(d.Mass > 0) {
			note += "; its mass is in its data sheet"
		}
		return note
	case bill.Wire:
		return fmt.Sprintf("single, %s mm2, slack of %s mm a joint in it", prose.Trimmed(1e6*a.Build.InnerSection, 2), prose.Trimmed(1e3*a.Build.Slack, 1))
	case bill.Cable:
		w := a.Wiring
		return fmt.Sprintf("one of two cores of %s mm2 for each channel, %s m long; the mass is that of the copper alone", prose.Trimmed(1e6*w.WireSection, 3), prose.Trimmed(w.WireLength, 2))
	case bill.Stuffing:
		return "to begin with; keep it off terminals and magnets"
	}
	return ""
}

func shellNote(a *layout.Array, p shell.Plan) string {
	what := fmt.Sprintf("%s, radius %s mm, wall %s mm", a.Body.Name, prose.Trimmed(1e3*a.Body.Radius, 2), prose.Trimmed(1e3*a.Wall, 2))
	if len(p.Segments) > 0 {
		what += fmt.Sprintf("; printed solid at %s kg/m3: infill, supports and brim are not in it, nor what `pappus kit` adds: joints, floor, vents", prose.Trimmed(a.Print.Density, 1))
	}
	return what
}

// uncounted are parts of which a design does not tell how many there are, or how heavy; of a
// shell that is open below, what closes it, too.
func uncounted(a *layout.Array, open bool) [][]string {
	row := func(name string, count int, note string) []string {
		return partRow(bill.Item{Count: count, Length: math.NaN(), Volume: math.NaN(), Mass: math.NaN(), Price: math.NaN(), Print: math.NaN(), Work: math.NaN()}, name, note)
	}
	var rows [][]string
	if open { // the shell of a cut body has no floor, but the box is taken for closed
		rows = append(rows, row("base plate", len(a.Bodies()), "the kit's floor, or a plate of the opening's outline, screwed on over a gasket: the plain shell is open below"))
	}
	for _, r := range [][]string{
		row("screw", -1, "as many for each driver as its flange has holes, and of their size"),
		row("gasket", len(a.Mounts), "one for each driver, where it has none of its own"),
	} {
		named := func(p layout.Part) bool { return strings.HasPrefix(strings.ToLower(p.Name), r[0]) }
		if !slices.ContainsFunc(a.Parts, named) { // the design counts its own
			rows = append(rows, r)
		}
	}
	return rows
}
