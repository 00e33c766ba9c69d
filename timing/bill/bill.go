package bill

import (
	"math"

	"pappus/layout"
	"pappus/layout/shell"
	"pappus/timing"
	"pappus/timing/loom"
)

// Kind is what a row is.
type Kind string

// The kinds of rows.
const (
	Shell    Kind = "shell"
	Segment  Kind = "segment" // Index: of the print's segments; in the shell already
	Driver   Kind = "driver"
	Wire     Kind = "wire"  // Index: of the plan's channels; what its strings take inside
	Cable    Kind = "cable" // to the amplifier
	Stuffing Kind = "stuffing"
	Own      Kind = "own"     // Index: of the design's parts
	Printed  Kind = "print"   // Index: of a kit's parts
	Fitting  Kind = "fitting" // Index: of what a kit has bought
)

// Item is a row of the bill. Lengths, volumes, masses and times are of all Count, the price of
// the spares, too; NaN is what is not known or what the thing does not have.
type Item struct {
	Kind          Kind
	Index         int
	Count, Spares int
	Length        float64 // m, of single wire; of the cable, of two cores
	Volume        float64 // m3 of plastic
	Mass          float64 // kg
	Price         float64
	Print, Work   float64 // s of printing, and of hands
}

// Bill is all that building takes.
type Bill struct {
	Items       []Item
	Mass        float64 // kg, of all that is known
	Price       float64 // of all that is known
	Print, Work float64 // s
	Joints      int     // to solder
	// Unknown are kinds whose price or mass is not known, each once, in the order of Items.
	NoPrice, NoMass []Kind
}

// Of returns the bill of a plan whose shell is printed in segments, none where that is not known,
// and stuffed with so many kg, a body.
func Of(p *timing.Plan, print shell.Plan, stuffing float64) Bill {
	var b Bill
	b.shell(p, print)
	b.drivers(p)
	b.wires(p)
	b.stuff(p, stuffing)
	b.own(p)
	return b
}

// stuff adds what goes into bodies, of so many kg each.
func (b *Bill) stuff(p *timing.Plan, stuffing float64) {
	if stuffing > 0 {
		n := len(p.Array.Bodies())
		it := item(Stuffing, 0, n)
		it.Mass = stuffing * float64(n)
		b.add(it)
	}
}

// item is a row of which nothing is known.
func item(kind Kind, index, count int) Item {
	no := math.NaN()
	return Item{Kind: kind, Index: index, Count: count, Length: no, Volume: no, Mass: no, Price: no, Print: no, Work: no}
}

// add adds a row, and what it takes to the sums; segments are in the shell already.
func (b *Bill) add(it Item) {
	b.Items = append(b.Items, it)
	if it.Kind == Segment {
		return
	}
	for _, s := range []struct {
		sum   *float64
		value float64
	}{{&b.Mass, it.Mass}, {&b.Price, it.Price}, {&b.Print, it.Print}, {&b.Work, it.Work}} {
		if !math.IsNaN(s.value) {
			*s.sum += s.value
		}
	}
	if math.IsNaN(it.Price) && it.Kind != Stuffing {
		b.NoPrice = append(b.NoPrice, it.Kind)
	}
	if math.IsNaN(it.Mass) && it.Kind != Own { // tools and varnish weigh nothing here
		b.NoMass = append(b.NoMass, it.Kind)
	}
}

// shell adds the printed shell and, where there are several, its segments.
func (b *Bill) shell(p *timing.Plan, print shell.Plan) {
	a, n := p.Array, len(p.Array.Bodies())
	whole := item(Shell, 0, n)
	if len(print.Segments) == 0 {
		b.add(whole)
		return
	}
	volume := 0.0
	for _, s := range print.Segments {
		volume += s.Volume
	}
	b.add(printed(a, whole, volume))
	if len(print.Segments) < 2 {
		return
	}
	for i, s := range print.Segments {
		b.add(printed(a, item(Segment, i, n), s.Volume))
	}
}

// printed is a row of things of a volume in m3 each, printed solid.
func printed(a *layout.Array, it Item, volume float64) Item {
	it.Volume = volume * float64(it.Count)
	it.Mass, it.Print = it.Volume*a.Print.Density, it.Volume/a.Print.Flow
	if a.Print.Price != nil {
		it.Price = it.Mass * *a.Print.Price
	}
	return it
}

// drivers adds them with those to spare.
func (b *Bill) drivers(p *timing.Plan) {
	a := p.Array
	d, n := a.Driver, len(a.Mounts)
	it := item(Driver, 0, n)
	it.Spares = int(math.Ceil(a.Build.Spares*float64(n) - 1e-9)) // free: no one more for rounding, which is far less
	if d.Mass > 0 {
		it.Mass = float64(n) * d.Mass
	}
	if d.Price != nil {
		it.Price = float64(n+it.Spares) * *d.Price
	}
	it.Work = float64(n) * a.Build.DriverTime
	b.add(it)
}

// copper is the density of copper in kg/m3 at 20 degrees (CRC Handbook of Chemistry and
// Physics, from memory).
const copper = 8960

// wires adds the wire inside, by channel, and the cable to the amplifier.
func (b *Bill) wires(p *timing.Plan) {
	a := p.Array
	inside := make([]Item, len(p.Channels))
	for i := range inside {
		inside[i] = item(Wire, i, 0)
		inside[i].Length, inside[i].Work = 0, 0
	}
	for _, s := range loom.Strings(p) {
		joints := 2 * len(s.Pieces)
		it := &inside[s.Channel]
		it.Count++
		it.Length += s.Length()
		it.Work += float64(joints) * a.Build.JointTime
		b.Joints += joints
	}
	for _, it := range inside {
		it.Mass = it.Length * a.Build.InnerSection * copper
		if a.Build.WirePrice != nil {
			it.Price = it.Length * *a.Build.WirePrice
		}
		b.add(it)
	}
	if w := a.Wiring; w.WireLength > 0 && len(p.Channels) > 0 {
		n := 0 // one to each body that a channel drives
		for _, c := range p.Channels {
			n += a.BodiesOf(c.Mounts)
		}
		it := item(Cable, 0, n)
		it.Length = float64(n) * w.WireLength
		it.Mass = 2 * it.Length * w.WireSection * copper
		b.add(it)
	}
}

// own adds the parts that the design names.
func (b *Bill) own(p *timing.Plan) {
	for i, part := range p.Array.Parts {
		it := item(Own, i, part.Count)
		n := float64(part.Count)
		if part.Mass > 0 {
			it.Mass = n * part.Mass
		}
		if part.Price != nil {
			it.Price = n * *part.Price
		}
		if part.Time > 0 {
			it.Work = n * part.Time
		}
		b.add(it)
	}
}
