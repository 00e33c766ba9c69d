package kit

import (
	"math"
	"strings"

	"pappus/layout/prose"
)

// glands are cable glands of metric threads (EN 62444) in m: the thread and the thickest cable
// that they hold (common practice; makers' lists differ by a millimetre or two).
var glands = []struct{ thread, cable float64 }{
	{12e-3, 6.5e-3}, {16e-3, 9e-3}, {20e-3, 12e-3}, {25e-3, 16e-3}, {32e-3, 21e-3}, {40e-3, 28e-3}, {50e-3, 35e-3}, {63e-3, 44e-3},
}

// Outlet is where the cable of all channels leaves a body.
type Outlet struct {
	Cores  int
	Cable  float64 // m across, about
	Thread float64 // m, of its gland
}

// outletOf returns the outlet of a cable of cores of a copper cross-section in m2. Each core has
// 0.65 mm of insulation all round, the cores fill 0.65 of their circle, and a sheath of 0.8 mm,
// of 1.2 mm round more than seven, is about them (IEC 60227, light PVC cables; from memory).
func outletOf(cores int, section float64) Outlet {
	core := 2*math.Sqrt(section/math.Pi) + 1.3e-3
	sheath := 0.8e-3
	if cores > 7 {
		sheath = 1.2e-3
	}
	o := Outlet{Cores: cores, Cable: core*max(2, math.Sqrt(float64(cores)/0.65)) + 2*sheath}
	for _, g := range glands {
		if o.Thread = g.thread; g.cable > o.Cable+0.2e-3 { // cables differ, too
			break
		}
	}
	return o
}

// glandName begins the name of a gland.
const glandName = "cable gland M"

func (o Outlet) gland() Bought { return Bought(prose.Sprintf(glandName+"%g", 1e3*o.Thread)) }

// IsGland tells whether it is a cable gland.
func (b Bought) IsGland() bool { return strings.HasPrefix(string(b), glandName) }

// Hole is how wide the gland's hole is, with room for its thread.
func (o Outlet) Hole() float64 { return o.Thread + 0.3e-3 }

// nut is the radius that a gland takes, with its nut's corners.
func (o Outlet) nut() float64 { return 0.78 * o.Thread }
