package sheets

import (
	"fmt"
	"math"
	"slices"
	"strconv"

	"pappus/layout"
	"pappus/layout/kit"
	"pappus/layout/prose"
	"pappus/render/words"
	"pappus/timing"
	"pappus/timing/bill"

	"gonum.org/v1/gonum/spatial/r2"
	"gonum.org/v1/gonum/spatial/r3"
)

// Book draws what is needed to put a kit together: the order of work, its vents, the floor, the
// plates, the parts, and the bill; more is said, in paragraphs, below the steps.
func (k Kit) Book(p *timing.Plan, b bill.Bill, more ...string) []*Sheet {
	a := p.Array
	s := page("kit-1", "Kit: "+cutShort(a.Name, 60), "The order of work; assembly.svg shows the parts taken apart.", short, long)
	y := s.steps(words.KitSteps(a, k.Made))
	for _, text := range more {
		y = s.paragraph(r2.Vec{X: margin, Y: y + 1.5}, 3.1, 116, ink, text)
	}
	out := []*Sheet{s}
	if v := k.vents(p); v != nil {
		out = append(out, v)
	}
	if len(k.Ground.Outline) > 0 {
		out = append(out, k.floor())
	}
	out = append(out, k.drawPlates(a.Print.Bed)...)
	t := tabler{name: "kit-parts", title: "Parts and bill: " + cutShort(a.Name, 50), below: "Of one body, but for the bill, which is of all."}
	for _, one := range []table{k.onto(a), k.partSizes(), k.bill(p, b)} {
		if len(one.rows) > 0 {
			t.table(one)
		}
	}
	return append(out, t.sheets...)
}

// vents draws what is said of the vents; nil where there is nothing to say.
func (k Kit) vents(p *timing.Plan) *Sheet {
	said := words.KitVents(p.Array, k.Vents, p.DriverVolt())
	if len(said) == 0 {
		return nil
	}
	if k.Vents.Count == 0 {
		return saying("kit-vents", "Vents", "Why there are none, and what to do in their place.", said)
	}
	return saying("kit-vents", "Vents and their filling", "What they come to, what goes in, and what a reading means.", said)
}

// floorScale returns how far a floor reaches from the axis, in m, and over what it is drawn.
func floorScale(g kit.Ground) (far, scale float64) {
	for _, p := range g.Outline {
		far = max(far, r3.Norm(p))
	}
	for _, scale = range scales {
		if 2e3*far/scale <= short-2*margin {
			break
		}
	}
	return far, scale
}

// floor draws what is where on the floor, seen from inside.
func (k Kit) floor() *Sheet {
	g := k.Ground
	far, scale := floorScale(g)
	s := page("kit-floor", "The floor, 1:"+prose.Trimmed(scale, 2), "Seen from inside, the front up. Distances are forward and to the left of the axis, in mm.", short, long)
	middle := r2.Vec{X: short / 2, Y: margin + heading + 1e3*far/scale}
	at := func(p r3.Vec) r2.Vec {
		return r2.Vec{X: middle.X - 1e3*p.Y/scale, Y: middle.Y - 1e3*p.X/scale}
	}
	var outline []r2.Vec
	for _, p := range g.Outline {
		outline = append(outline, at(p))
	}
	s.polygon(cutLine, outline...)
	for i := 0; i < g.Sectors && g.Sectors > 1; i++ {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(g.Sectors))
		s.line(foldLine, middle, at(r3.Scale(far, r3.Vec{X: cos, Y: sin})))
	}
	y := middle.Y + 1e3*far/scale + 8
	list := func(name string, colour pen, radius float64, places ...r3.Vec) {
		if len(places) == 0 {
			return
		}
		text := name + ": "
		for i, p := range places {
			s.circle(colour, at(p), 1e3*radius/scale)
			if i > 0 {
				text += "; "
			}
			text += prose.Fixed(1e3*p.X, 1) + ", " + prose.Fixed(1e3*p.Y, 1)
		}
		y = s.paragraph(r2.Vec{X: margin, Y: y}, 2.8, 125, ink, text) + 1.5
	}
	list("screws of M3, under their heads (hole 3.4 mm)", hole, kit.ScrewHole, g.Posts...)
	list("feet, by M3 from above", pen{colour: orange, width: 0.35}, kit.FootWide, g.Feet...)
	list(fmt.Sprintf("vents, %s, bore %s mm", k.Vents.Thread(), prose.Fixed(1e3*k.Vents.Bore, 1)), cutLine, k.Vents.Bore/2, g.Vents...)
	if g.Gland != nil {
		list(fmt.Sprintf("gland, hole %s mm", prose.Fixed(1e3*k.Outlet.Hole(), 1)), pen{colour: blue, width: 0.6}, k.Outlet.Hole()/2, *g.Gland)
	}
	return s
}

// Plates are drawn two in a row and three one below the other.
const plateColumns, plateRows = 2, 3

// drawPlates draws what stands on each plate, from above.
func (k Kit) drawPlates(bed r3.Vec) (out []*Sheet) {
	wide, tall := (short-2*margin)/plateColumns-6, (long-2*margin-heading)/plateRows-12
	scale := min(wide/(1e3*bed.X), tall/(1e3*bed.Y))
	for plate, items := range k.plates() {
		on := plate % (plateColumns * plateRows)
		if on == 0 {
			out = append(out, page(fmt.Sprintf("kit-plates-%d", len(out)+1), "Plates", prose.Sprintf("From above, the bed's front down; each is a file, kit-plate-1.3mf and so on. The bed is %.0f by %.0f mm.", 1e3*bed.X, 1e3*bed.Y), short, long))
		}
		s := out[len(out)-1]
		corner := r2.Vec{X: margin + float64(on%plateColumns)*(wide+6), Y: margin + heading + float64(on/plateColumns)*(tall+12) + 6}
		s.text(r2.Vec{X: corner.X, Y: corner.Y - 1.5}, 3, left, ink, fmt.Sprintf("plate %d", plate+1))
		at := func(x, y float64) r2.Vec {
			return r2.Vec{X: corner.X + 1e3*scale*x, Y: corner.Y + 1e3*scale*(bed.Y-y)}
		}
		s.polygon(thin, at(0, 0), at(bed.X, 0), at(bed.X, bed.Y), at(0, bed.Y))
		for _, it := range items {
			size := it.mesh.Bounds().Max
			s.polygon(pen{colour: blue, width: 0.25, fill: sky}, at(it.x, it.y), at(it.x+size.X, it.y), at(it.x+size.X, it.y+size.Y), at(it.x, it.y+size.Y))
			s.label(at(it.x+size.X/2, it.y+size.Y/2), 2.4, ink, it.name)
		}
	}
	return out
}

// onto is the table of segments in the order in which they go together: from where each goes on, which
// driver looks the same way within its lean, and onto which others.
func (k Kit) onto(a *layout.Array) table {
	t := table{title: "Segments in their order: from where each goes on", columns: []column{{"", "segment", 26, false}, {"", "azimuth, °", 24, true},
		{"", "elevation, °", 26, true}, {"", "may lean by, °", 28, true}, {"", "as driver looks", 30, true}, {"", "onto", 56, false}}}
	on := make(map[string][]string)
	for _, j := range k.Meetings {
		name := "segment-" + strconv.Itoa(j.B)
		on[name] = append(on[name], strconv.Itoa(j.A))
	}
	for _, p := range k.Parts {
		if _, _, ok := p.From(); ok {
			t.rows = append(t.rows, slices.Concat([]string{p.Name}, fromOf(p), []string{alike(a, p), prose.Each(on[p.Name])}))
		}
	}
	return t
}

// alike is the number of the mount that looks the most as a segment goes on; none where that is beyond
// what the segment may lean by.
func alike(a *layout.Array, p kit.Part) (id string) {
	most := math.Cos(p.Lean)
	for _, m := range a.Own() {
		if d := r3.Dot(m.Normal, p.Off); d > most {
			id, most = strconv.Itoa(m.ID), d
		}
	}
	return id
}

// partSizes is the table of parts as they are printed.
func (k Kit) partSizes() table {
	t := table{title: "Parts, as they lie on their plates", columns: []column{{"", "part", 34, false}, {"", "count", 16, true}, {"", "size, mm", 44, true},
		{"", "cm³ of one", 26, true}, {"", "overhang, cm²", 30, true}, {"", "not marked for want of room", 40, false}}}
	for i, p := range k.Parts {
		size := k.Prints[i].Size
		t.rows = append(t.rows, []string{p.Name, strconv.Itoa(p.Count), fmt.Sprintf("%.0f by %.0f by %.0f", 1e3*size.X, 1e3*size.Y, 1e3*size.Z),
			prose.Fixed(1e6*p.Mesh.Volume(), 1), prose.Fixed(1e4*k.Prints[i].Overhang, 1), prose.Each(p.Unmarked)})
	}
	return t
}
