package timing

import (
	"math"
	"math/cmplx"

	"pappus/layout/advice"
	"pappus/timing/crossover"
	"pappus/timing/excursion"
)

// Protection is the high-pass that keeps the cones within their reach, what the
// cones do behind it, and what the spot gets at most. Make fills all of it in;
// Move no more than what the response needs, up to Q.
//
// The high-pass is on every channel alike. It is in all responses and levels; it
// changes neither arrivals nor summing loss. A tone at the wiring's voltage is
// taken for the most that plays.
type Protection struct {
	Family string // as in the design; empty: none
	Order  int
	// Corner in Hz is the design's, or else Least; 0: no high-pass.
	Corner float64
	// Least is the least corner in Hz that keeps every cone within its reach; 0:
	// none is needed; NaN: not known, for want of the driver's values, or not to be
	// had.
	Least        float64
	Volt         float64 // RMS, over the driver that gets most
	Resonance, Q float64 // in the body; NaN: not known
	Reach        float64 // m; 0: not known
	Frequency    []float64
	Excursion    []float64 // m, peak, one way, at Volt behind the high-pass; nil: not known
	Unprotected  []float64 // m, without the high-pass
	Highest      []Highest // for each octave band
	// Level is that of pink noise of the wiring's voltage at the spot, in dBA, the woofer
	// with it; NaN where levels are relative.
	Level float64
	Hours float64 // a day that it may last; +Inf below 80 dB; NaN where Level is
}

// Highest is the most that an octave band can honestly have at the spot.
type Highest struct {
	Band  float64         // Hz, exact centre
	Level float64         // dB, of a tone, energy mean over the band
	By    excursion.Cause // what limits it where in the band it is limited most
}

// HighPass returns the filter, all-pass where there is none.
func (p Protection) HighPass() crossover.Filter {
	if !(p.Corner > 0) {
		return crossover.Filter{}
	}
	return crossover.New(crossover.HighPass, families[p.Family], p.Order, p.Corner)
}

// families are the filters by their names in a design.
var families = map[string]crossover.Family{
	"butterworth":    crossover.Butterworth,
	"linkwitz-riley": crossover.LinkwitzRiley,
	"bessel":         crossover.Bessel,
}

// lower takes the high-pass off levels at the spot.
func (p Protection) lower(r Response) {
	high := p.HighPass()
	if high.Corner() == 0 {
		return
	}
	for f, hz := range r.Frequency {
		by := 20 * math.Log10(cmplx.Abs(high.Response(hz)))
		r.InStep[f] += by
		r.Aligned[f] += by
		r.Unaligned[f] += by
	}
}

// leastCorner keeps the least corner for a voltage: the spot may move without a
// change of it.
type leastCorner struct {
	volt, hz float64
	ok       bool
}

// protect finds the high-pass.
func (p *Planner) protect(plan *Plan) {
	a := plan.Array
	g := Protection{Family: a.Protection.Family, Order: a.Protection.Order, Corner: a.Protection.Corner,
		Least: math.NaN(), Volt: plan.mostVolt(), Reach: a.Driver.Small.Reach, Level: math.NaN(), Hours: math.NaN()}
	g.Resonance, g.Q = plan.inBody()
	plan.Protection = g
	if g.Family == "" {
		plan.Protection.Corner = 0
		return
	}
	cone, known := plan.cone()
	if !known || !(g.Reach > 0) || !(g.Volt > 0) {
		return
	}
	if p.least.volt != g.Volt {
		hz, ok := cone.LeastCorner(crossover.New(crossover.HighPass, families[g.Family], g.Order, 1), g.Volt, g.Reach)
		p.least = leastCorner{g.Volt, hz, ok}
	}
	plan.corner(p.least)
}

// corner takes the least corner over, or says what is wrong with the design's.
func (plan *Plan) corner(least leastCorner) {
	g := &plan.Protection
	if !least.ok {
		plan.warn("excursion", advice.Danger, ConeTravel{g.Volt, g.Reach, g.Corner, math.Inf(1)})
		return
	}
	g.Least = least.hz
	switch {
	case g.Corner == 0:
		g.Corner = least.hz
	case g.Corner < least.hz:
		plan.warn("excursion", advice.Danger, ConeTravel{g.Volt, g.Reach, g.Corner, least.hz})
	}
}

// mostVolt returns the most voltage over any driver, wire left out.
func (plan *Plan) mostVolt() float64 {
	volt := 0.0
	for _, c := range plan.Channels {
		volt = max(volt, plan.Array.Wiring.Voltage*math.Abs(c.factor())/float64(max(c.Series, 1)))
	}
	return volt
}

// inBody returns the resonance and Q of the drivers in the body that they share, as
// the design has them or layout finds them for the net volume; NaN where not known.
func (plan *Plan) inBody() (resonance, q float64) {
	if d := plan.Array.Driver; d.Resonance > 0 {
		return d.Resonance, d.ResonanceQ
	}
	return math.NaN(), math.NaN()
}

// cone returns the driver in the body, and whether all its values are known.
func (plan *Plan) cone() (excursion.Driver, bool) {
	d := plan.Array.Driver
	resonance, q := plan.inBody()
	cone := excursion.Driver{BL: d.Small.BL, Mass: d.Small.Mass, DCOhm: d.DCOhm, Resonance: resonance, Q: q}
	return cone, cone.IsKnown()
}
