package sheets

import (
	"fmt"
	"strconv"

	"pappus/layout"
	"pappus/layout/prose"
	"pappus/layout/shell"
	"pappus/timing"
)

// copper is the density of copper in kg/m3 at 20 degrees (CRC Handbook of Chemistry and
// Physics, from memory).
const copper = 8960

// partTable is the bill of parts. What is not known stays empty.
func partTable(p *timing.Plan, o Options) table {
	a := p.Array
	d, n := a.Driver, strconv.Itoa(len(a.Mounts))
	bodies := len(a.Bodies())
	t := table{title: "Bill of parts", columns: []column{{"part", "part", 34, false}, {"count", "count", 16, true}, {"length_m", "length, m", 22, true},
		{"volume_cm3", "volume, cm³", 26, true}, {"mass_g", "mass, g", 20, true}, {"note", "note", 72, false}}}
	t.rows = shellRows(a, o.Print)
	if bodies > 1 {
		for i := range t.rows {
			t.rows[i][1] = strconv.Itoa(bodies)
			t.rows[i][5] = "for each body; " + t.rows[i][5]
		}
	}
	if a.Body.IsCut { // the shell of a cut body has no floor, but the box is taken for closed
		t.rows = append(t.rows, []string{"base plate", strconv.Itoa(bodies), "", "", "", "of the opening's outline, screwed on over a gasket: the shell is open below"})
	}
	t.rows = append(t.rows,
		[]string{"driver", n, "", "", "", fmt.Sprintf("cut-out %s mm, flange %s mm, %s ohm; its mass is in its data sheet",
			prose.Trimmed(2e3*d.CutoutRadius, 2), prose.Trimmed(2e3*d.FlangeRadius, 2), prose.Trimmed(d.NominalOhm, 2))},
		[]string{"screw", "", "", "", "", "as many for each driver as its flange has holes, and of their size"},
		[]string{"gasket", n, "", "", "", "one for each driver, where it has none of its own"})
	t.rows = append(t.rows, wireRows(p)...)
	if o.Stuffing > 0 {
		t.rows = append(t.rows, []string{"stuffing", "", "", "", prose.Fixed(1e3*o.Stuffing*float64(bodies), 1), "to begin with; keep it off terminals and magnets"})
	}
	return t
}

// shellRows are the shell and, where it is printed in several, its segments.
func shellRows(a *layout.Array, p shell.Plan) [][]string {
	what := fmt.Sprintf("%s, radius %s mm, wall %s mm", a.Body.Name, prose.Trimmed(1e3*a.Body.Radius, 2), prose.Trimmed(1e3*a.Wall, 2))
	if len(p.Segments) == 0 {
		return [][]string{{"shell", "1", "", "", "", what}}
	}
	volume, mass := 0.0, 0.0
	var out [][]string
	for i, s := range p.Segments {
		volume, mass = volume+s.Volume, mass+s.Mass
		on := "no driver"
		if len(s.Mounts) > 0 {
			on = "drivers " + numbers(a.IDs(s.Mounts))
		}
		out = append(out, []string{fmt.Sprintf("segment %d", i+1), "1", "", prose.Fixed(1e6*s.Volume, 1), prose.Fixed(1e3*s.Mass, 1),
			fmt.Sprintf("of the shell; print of %.0f by %.0f by %.0f mm; %s", 1e3*s.Size.X, 1e3*s.Size.Y, 1e3*s.Size.Z, on)})
	}
	if len(out) == 1 {
		out = nil
	}
	what += fmt.Sprintf("; printed solid at %s kg/m3: infill, supports and brim are not in it", prose.Trimmed(a.Print.Density, 1))
	return append([][]string{{"shell", "1", "", prose.Fixed(1e6*volume, 1), prose.Fixed(1e3*mass, 1), what}}, out...)
}

// wireRows are the wire inside, by channel, and the cable to the amplifier.
func wireRows(p *timing.Plan) [][]string {
	length, strings := make([]float64, len(p.Channels)), make([]int, len(p.Channels))
	for _, r := range timing.Harness(p) {
		length[r.Channel] += r.Length
		strings[r.Channel]++
	}
	var out [][]string
	for i, c := range p.Channels {
		out = append(out, []string{fmt.Sprintf("wire of channel %d", c.ID), strconv.Itoa(strings[i]), prose.Fixed(length[i], 2), "", "",
			"strings of single wire, in straight lines from joint to joint: leave slack at every joint"})
	}
	if w := p.Array.Wiring; w.WireLength > 0 && len(p.Channels) > 0 {
		n := 0.0 // one to each body that a channel drives
		for _, c := range p.Channels {
			n += float64(p.Array.BodiesOf(c.Mounts))
		}
		out = append(out, []string{"cable to the amplifier", strconv.Itoa(int(n)), prose.Fixed(n*w.WireLength, 2), "", prose.Fixed(1e3*2*n*w.WireLength*w.WireSection*copper, 0),
			fmt.Sprintf("one of two cores of %s mm2 for each channel, %s m long; the mass is that of the copper alone", prose.Trimmed(1e6*w.WireSection, 3), prose.Trimmed(w.WireLength, 2))})
	}
	return out
}
