package document

import (
	"math"

	"pappus/layout/impedance"
	"pappus/layout/wiring"
	"pappus/render/words"
	"pappus/timing"
	"pappus/timing/impedancefit"

	"gonum.org/v1/gonum/spatial/r3"
)

// Bench is what is soldered, string by string, with what a meter then shows: DC resistance
// at 20 C of coils and wire, which may be off by impedancefit.Tolerance.
type Bench struct {
	Tolerance Number         `json:"tolerance_percent"`
	Halves    bool           `json:"halves"` // drivers are on two discs, those of the upper half and of the lower
	Channels  []BenchChannel `json:"channels"`
	Joints    []BenchJoint   `json:"joints"`
	Say       []string       `json:"say"` // how to measure, and what to mind, in sentences
}

// BenchChannel is the strings of one channel, in the order in which they are joined.
type BenchChannel struct {
	Channel int           `json:"channel"`
	Strings []BenchString `json:"strings"`
	Whole   Reading       `json:"whole"` // at the amplifier's end of its wire
}

// BenchString is one string: its plus is the first driver's, its minus the last one's.
type BenchString struct {
	Drivers []int   `json:"drivers"` // in the order of their joints
	Wire    Number  `json:"wire_m"`
	Alone   Reading `json:"alone"`  // before it is joined to the others
	Joined  Reading `json:"joined"` // in parallel with the channel's strings before it
}

// Reading is what a meter shows, and between which values it is good.
type Reading struct {
	Ohm  Number `json:"ohm"`
	Low  Number `json:"low_ohm"`
	High Number `json:"high_ohm"`
}

// BenchJoint is where a driver is seen from inside the body, on a disc of radius 1 with its
// middle under the body's top, or over its bottom: to the right and up, where up is the
// front mark. The distance from the middle is the angle from there (azimuthal equidistant
// projection; J. P. Snyder, Map Projections, USGS 1395 (1987), chapter 25). Seen from below
// into the upper half the loudspeaker's left is at the right; seen from above into the
// lower one it is at the left.
type BenchJoint struct {
	ID    int    `json:"id"`
	Body  int    `json:"body"` // from 0
	Right Number `json:"right"`
	Up    Number `json:"up"`
	Lower bool   `json:"lower"`
}

// OfBench returns what is soldered for a plan.
func OfBench(p *timing.Plan) Bench {
	out := Bench{Tolerance: To(1, 100*impedancefit.Tolerance), Say: words.Bench(impedancefit.Tolerance)}
	section := p.Array.Wiring.WireSection
	for _, c := range p.Channels {
		out.Channels = append(out.Channels, BenchChannel{Channel: c.ID})
	}
	banks := make([]impedance.Bank, len(p.Channels))
	for _, r := range timing.Harness(p) {
		c, bank := &out.Channels[r.Channel], &banks[r.Channel]
		s := impedance.String{Drivers: make([]impedance.State, len(r.Order)), WireOhm: wiring.WireOhm(r.Length/2, section)}
		bank.Strings = append(bank.Strings, s)
		alone := impedance.Bank{Strings: []impedance.String{s}}
		c.Strings = append(c.Strings, BenchString{p.Array.IDs(r.Order), m(r.Length), dcOf(p, alone), dcOf(p, *bank)})
		bank.FeedOhm = p.Banks[r.Channel].WireOhm
		c.Whole = dcOf(p, *bank)
		bank.FeedOhm = 0
	}
	out.Joints, out.Halves = joints(p)
	return out
}

// dcOf is the reading of a bank whose drivers are all alive.
func dcOf(p *timing.Plan, b impedance.Bank) Reading {
	return reading(real(b.Of(complex(p.Array.Driver.DCOhm, 0))))
}

func reading(ohm float64) Reading {
	return Reading{To(2, ohm), To(2, ohm*(1-impedancefit.Tolerance)), To(2, ohm*(1+impedancefit.Tolerance))}
}

// oneDisc is the greatest angle in rad from the top to a driver for all to be drawn on one
// disc: at 115 degrees the projection is 2.2 times as wide along the rim as towards the middle
// (angle over its sine), beyond that flanges at the rim look like none.
const oneDisc = 115 * math.Pi / 180

// joints returns where all drivers are seen, and whether on two discs.
func joints(p *timing.Plan) (out []BenchJoint, halves bool) {
	furthest := 0.0
	for _, m := range p.Array.Mounts {
		furthest = max(furthest, fromTop(m.Point))
	}
	halves = furthest > oneDisc
	rim := furthest
	if halves {
		rim = math.Pi / 2
	}
	for _, m := range p.Array.Mounts {
		j, angle := BenchJoint{ID: m.ID, Body: m.Body}, fromTop(m.Point)
		right, up := -m.Point.Y, m.Point.X // from above
		if j.Lower = halves && angle > math.Pi/2+1e-9; j.Lower {
			angle = math.Pi - angle
		} else {
			right = -right
		}
		if flat := math.Hypot(right, up); flat > 0 && rim > 0 {
			scale := angle / rim / flat
			j.Right, j.Up = To(4, scale*right), To(4, scale*up)
		}
		out = append(out, j)
	}
	return out, halves
}

// fromTop is the angle of a place from the body's upright axis, in rad.
func fromTop(at r3.Vec) float64 { return math.Atan2(math.Hypot(at.X, at.Y), at.Z) }
