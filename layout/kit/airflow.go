package kit

import (
	"cmp"
	"math"
	"slices"

	"pappus/layout"
	"pappus/layout/box"

	"gonum.org/v1/gonum/spatial/r3"
)

// Vents is what a kit's vents come to; of the zero value there are none. Masses of air are in
// kg/m4, and add up.
type Vents struct {
	Cartridge
	Count int
	// Box is the body with them at their best filling; Box.Q is what it comes to, or would where
	// Count is 0: less than what is worthwhile.
	Box     box.Vented
	Reached bool    // the design's target
	Closed  float64 // Q of the closed body; 0: no vents are asked for
	Why     string  // why none are; empty where they are
	Under   float64 // of Box.Mass, of the air under the stand
	Gap     float64 // area all round under the stand over that of all bores; NaN: it has no floor
	// Mounts is how many mounts a body without a floor or a bare flat face would have to give up
	// to vents of this size; there are none of them then.
	Mounts int
}

// Area is that of all bores in m2.
func (v Vents) Area() float64 { return float64(v.Count) * math.Pi * v.Bore * v.Bore / 4 }

// Resistivity is the flow resistivity in Pa s/m2 that the stuffing is to have.
func (v Vents) Resistivity() float64 { return v.Box.Resistance * v.Area() / v.Fill() }

// Grams returns the mass in kg of loose polyester fibre in each cartridge: as likely as not, and
// of the finest and the coarsest fibre.
func (v Vents) Grams() (likely, least, most float64) {
	room := v.Fill() * math.Pi * v.Bore * v.Bore / 4
	of := func(diameter float64) float64 { return room * box.FibreDensity(v.Resistivity(), diameter) }
	return of(0), of(box.FinestFibre), of(box.CoarsestFibre)
}

// Density is that of the likely filling, in kg/m3.
func (v Vents) Density() float64 { return box.FibreDensity(v.Resistivity(), 0) }

// asVent is n cartridges as holes: as long as the stuffing and as the air in both grids. A
// grid's holes are longer by an end on either side that is shared with their neighbours', fok of what
// it is for a hole alone.
func (c Cartridge) asVent(n int) box.Vent {
	share := c.Open() / (math.Pi * c.Bore * c.Bore / 4)
	end := 0.85 * gridHole * fok(math.Sqrt(share))
	return box.Vent{Radius: c.Bore / 2, Number: n, Depth: c.Fill() + 2*(grid+end)/share}
}

// fok is how long the end of a hole among many is, over that of one alone; x is the root of the share
// that is open (V. A. Fok 1941, as U. Ingard, J. Acoust. Soc. Am. 25 (1953) 1037, and T. H. Melling, J. Sound Vib.
// 29 (1973) 1, quote it; from memory).
func fok(x float64) float64 {
	sum := 0.0
	for _, c := range []float64{-0.01641, 0.03015, -0.02287, 0.06793, 0, 0.33818, 0, -1.4092, 1} {
		sum = sum*x + c
	}
	return max(0, sum)
}

// under is the mass of the air that flows out below a floor, between two planes a gap apart, from
// openings at places to a rim, all alike round the axis: the integral of rho/(2 pi r gap) over the
// radius r, times the square of what part of the flow goes through there.
func under(places []r3.Vec, c Cartridge, rim, gap, density float64) (sum float64) {
	radii := make([]float64, 0, len(places)+1)
	for _, p := range places {
		radii = append(radii, max(r3.Norm(p), c.Bore/2))
	}
	slices.Sort(radii)
	radii = append(radii, rim)
	for i := 1; i < len(radii); i++ {
		part := float64(i) / float64(len(places))
		sum += part * part * math.Log(radii[i]/radii[i-1])
	}
	return sum * density / (2 * math.Pi * gap)
}

// try finds what cartridges at places come to.
func (k *maker) try(h layout.Hollow, c Cartridge, at []r3.Vec) Vents {
	v := Vents{Cartridge: c, Count: len(at), Gap: math.NaN(), Closed: h.Closed.Q}
	d := h.Vented
	mass := c.asVent(len(at)).Mass(d.Air)
	if k.wall.floor != nil && k.array.Stand > headTall {
		v.Under = under(at, c, k.rimRadius(), k.array.Stand-headTall, d.Air.Density)
		mass += v.Under
		v.Gap = h.Gap * h.Vent.Area() / v.Area()
	}
	var err error
	v.Box, err = box.DampHeavy(h.Driver, d.Number, d.Volume, k.array.Box.TargetQ, mass, d.Air)
	v.Reached = err == nil
	return v
}

// choose returns the vents of which the fewest reach the target, of those alike the smallest;
// where none do, the fewest of those whose Q is next to the least; and none where that is next to the
// closed body's. places has for each size where there is room for it; size is an index into both, and
// the first Count of its places are taken.
func (k *maker) choose(h layout.Hollow, sizes []Cartridge, places [][]r3.Vec) (best Vents, size int) {
	best.Closed = h.Closed.Q
	all := make([]Vents, len(sizes))
	least, reached, none := math.Inf(1), false, best
	for i, c := range sizes {
		for n := len(places[i]); n > 0; n-- {
			v := k.try(h, c, places[i][:n])
			if all[i].Count == 0 || v.Reached {
				all[i] = v
			}
			if !v.Reached { // fewer are heavier
				break
			}
		}
		if v := all[i]; v.Count > 0 {
			reached = reached || v.Reached
			if v.Box.Q < least {
				least, none = v.Box.Q, v
			}
		}
	}
	if !reached && least > best.Closed*(1-worthwhile) {
		none.Count = 0
		return none, 0
	}
	most := min(least*(1+worthwhile), best.Closed*(1-worthwhile))
	for i, v := range all {
		if v.Count > 0 && v.Reached == reached && (reached || v.Box.Q <= most) && (best.Count == 0 || v.Count < best.Count) {
			best, size = v, i
		}
	}
	return best, size
}

// worthwhile is a difference in Q, as a factor less 1, for which no more cartridges are made, or none: within
// which a trial counts as there, too (timing/damping), 0.4 dB at the resonance.
const worthwhile = 0.05 // free: with 0.04 the built-in design has vents for 0.36 dB, from there on none

// byRadius sorts places, the nearest to the axis last: of fewer vents those near the rim stay,
// from where the air is out soonest.
func byRadius(places []r3.Vec) {
	slices.SortStableFunc(places, func(a, b r3.Vec) int { return cmp.Compare(r3.Norm2(b), r3.Norm2(a)) })
}
