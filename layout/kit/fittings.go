package kit

import (
	"math"
)

// Bought says what a fitting is.
type Bought string

// What a kit takes beside its prints. Lengths of screws are under the head.
const (
	FloorScrew  Bought = "screw M3 x 12"              // of floors to posts, and of feet
	LapScrew    Bought = "self-tapping screw 2.2 x 5" // of laps between segments
	StripScrew  Bought = "self-tapping screw 2.2 x 6" // of laps between parts of a floor
	FlangeBolt  Bought = "screw M3 x 12 with nut"     // of flanges
	DriverScrew Bought = "driver screw"               // of the design's size
	Dowel       Bought = "filament 1.75 mm, dowels"
	Glue        Bought = "glue, or a seal"
	Foam        Bought = "foam strip, 8 by 2 mm"
	Filling     Bought = "polyester fibre, loose"
)

// Fitting is something to buy for one body's kit.
type Fitting struct {
	Bought
	Count  int
	Length float64 // m, of all; 0: it has none
	Mass   float64 // kg, of all; 0: not known
}

// dowelLong is the length of a dowel: through a lap of two usual walls, or a flange.
const dowelLong = 8e-3

// glueDensity is that of epoxy, in kg/m3 (common practice).
const glueDensity = 1100

// fittings counts what a kit takes that is not printed.
func (k *maker) fittings() (out []Fitting) {
	count, seamed := k.joined()
	count[FloorScrew] = len(k.posts) + len(k.feet)
	count[StripScrew] = k.strips
	if d := k.array.Driver; d.ScrewRadius > 0 && k.wall.thick-skin > k.recess() && d.FlangeRadius-d.CutoutRadius > 2*d.ScrewRadius {
		count[DriverScrew] = screws * len(k.seats)
	}
	add := func(f Fitting) {
		if f.Count > 0 {
			out = append(out, f)
		}
	}
	for _, b := range []Bought{FloorScrew, LapScrew, FlangeBolt, StripScrew, DriverScrew} {
		add(Fitting{Bought: b, Count: count[b]})
	}
	add(Fitting{Bought: k.outlet.gland(), Count: 1})
	add(Fitting{Bought: Dowel, Count: count[Dowel], Length: dowelLong * float64(count[Dowel])})
	if k.wall.floor != nil {
		add(Fitting{Bought: Foam, Count: 1, Length: 2 * math.Pi * (k.rimRadius() - ledgeWide/2)})
	}
	if seamed > 0 {
		add(Fitting{Bought: Glue, Count: 1, Length: seamed, Mass: seamed * grooveWide * grooveDeep * glueDensity})
	}
	if k.Vents.Count > 0 {
		likely, _, _ := k.Vents.Grams()
		add(Fitting{Bought: Filling, Count: k.Vents.Count, Mass: likely * float64(k.Vents.Count)})
	}
	return out
}

// joined counts what holds segments together, and measures their seams in m.
func (k *maker) joined() (count map[Bought]int, seamed float64) {
	count = make(map[Bought]int)
	for _, s := range k.seams {
		for i := range k.fastened[s.number] {
			switch {
			case i%2 == 1:
				count[Dowel]++
			case k.Joint == Flange:
				count[FlangeBolt]++
			default:
				count[LapScrew]++
			}
		}
		long, _ := k.lapOf(s)
		seamed += long
	}
	return count, seamed
}
