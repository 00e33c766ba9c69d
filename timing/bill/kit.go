package bill

import (
	"math"

	"pappus/layout/kit"
	"pappus/timing"
)

// astray is the part of small fittings that are bought to spare (common practice).
const astray = 0.1

// OfKit returns the bill of a plan whose shell is a kit, all of its parts as they are, in place of
// the plain shell of [Of]; each body is stuffed with so many kg.
func OfKit(p *timing.Plan, made kit.Made, stuffing float64) Bill {
	var b Bill
	a, n := p.Array, len(p.Array.Bodies())
	for i, part := range made.Parts {
		b.add(printed(a, item(Printed, i, n*part.Count), part.Mesh.Volume()))
	}
	b.drivers(p)
	b.wires(p)
	b.stuff(p, stuffing)
	for i, f := range made.Fittings {
		it := item(Fitting, i, n*f.Count)
		if f.Length > 0 {
			it.Length = float64(n) * f.Length
		}
		if f.Mass > 0 {
			it.Mass = float64(n) * f.Mass
		} else if f.Length == 0 && !f.IsGland() {
			it.Spares = int(math.Ceil(astray*float64(it.Count) - 1e-9)) // free: as for drivers
		}
		b.add(it)
	}
	b.own(p)
	return b
}
