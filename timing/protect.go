package timing

import (
	"math"
	"math/cmplx"
	"slices"

	"pappus/layout"
	"pappus/layout/advice"
	"pappus/timing/band"
	"pappus/timing/crossover"
	"pappus/timing/excursion"
	"pappus/timing/exposure"
)

// Protection is the high-pass that keeps the cones within Xmax.
//
// The high-pass is on every channel alike. It is in all responses and levels; it
// changes neither arrivals nor summing loss. A tone at the wiring's voltage is
// taken for the most that plays.
type Protection struct {
	Family string // as in the design; empty: none
	Order  int
	// Corner in Hz is the design's, or else Least; 0: no high-pass.
	Corner float64
	// Least is the least corner in Hz that keeps every cone within Xmax; 0:
	// none is needed; NaN: not known, for want of the driver's values, or not to be
	// had.
	Least        float64
	Volt         float64 // RMS, over the driver that gets most
	Resonance, Q float64 // in the body; NaN: not known
	Xmax         float64 // m; 0: not known
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

// leastCorner keeps the least corner for a voltage: the spot may move without a
// change of it.
type leastCorner struct {
	volt, hz float64
	ok       bool
}

// protect returns the high-pass of an array with channels, and what is wrong with it.
func (p *Planner) protect(a *layout.Array, channels []Channel) (g Protection, found findings) {
	cone := coneOf(a.Driver)
	g = Protection{Family: a.Protection.Family, Order: a.Protection.Order, Corner: a.Protection.Corner,
		Least: math.NaN(), Resonance: cone.Resonance, Q: cone.Q, Xmax: a.Driver.Small.Reach}
	for _, c := range channels { // wire left out
		g.Volt = max(g.Volt, a.Wiring.Voltage*math.Abs(c.factor())/c.series())
	}
	if g.Family == "" {
		g.Corner = 0
		return g, nil
	}
	if !cone.IsKnown() || !(g.Xmax > 0) || !(g.Volt > 0) {
		return g, nil
	}
	if p.least.volt != g.Volt {
		hz, ok := cone.LeastCorner(crossover.New(crossover.HighPass, families[g.Family], g.Order, 1), g.Volt, g.Xmax)
		p.least = leastCorner{g.Volt, hz, ok}
	}
	if !p.least.ok {
		found.warn("excursion", advice.Danger, ConeTravel{g.Volt, g.Xmax, g.Corner, math.Inf(1)})
		return g, found
	}
	g.Least = p.least.hz
	switch {
	case g.Corner == 0:
		g.Corner = g.Least
	case g.Corner < g.Least:
		found.warn("excursion", advice.Danger, ConeTravel{g.Volt, g.Xmax, g.Corner, g.Least})
	}
	return g, found
}

// coneOf returns a driver in the body that it shares with others: resonance and Q as the
// design has them or layout finds them for the net volume, NaN where not known.
func coneOf(d layout.Driver) excursion.Driver {
	cone := excursion.Driver{BL: d.Small.BL, Mass: d.Small.Mass, DCOhm: d.DCOhm, Resonance: math.NaN(), Q: math.NaN()}
	if d.Resonance > 0 {
		cone.Resonance, cone.Q = d.Resonance, d.ResonanceQ
	}
	return cone
}

// Maximum is what an array does at the wiring's voltage and how loud it can be at its spot.
type Maximum struct {
	Frequency   []float64  // Hz, of the excursions
	Excursion   []float64  // m, peak, one way, at Protection.Volt behind the high-pass; nil: not known
	Unprotected []float64  // m, without the high-pass
	Levels      []MaxLevel // for each octave band
	// Noise is the level of pink noise of the wiring's voltage at the spot, in dBA, the woofer
	// with it; NaN where levels are relative.
	Noise float64
	Hours float64 // a day that it may last; +Inf below 80 dB; NaN where Noise is
}

// MaxLevel is the most that an octave band can honestly have at the spot.
type MaxLevel struct {
	Band  float64         // Hz, exact centre
	Level float64         // dB, of a tone, energy mean over the band
	By    excursion.Cause // what limits it where in the band it is limited most
}

// The excursion is told at excursionCount frequencies in Hz.
const (
	excursionCount = 121
	excursionLow   = 10.0
	excursionHigh  = 1000.0
)

// maximumOf returns the maximum of a spot, and what of it can hurt. Errors are those of
// WithWoofer.
func maximumOf(s *Spot) (x Maximum, found findings, err error) {
	x.Noise, x.Hours = math.NaN(), math.NaN()
	x.move(s)
	x.levels(s)
	found, err = x.caution(s)
	return x, found, err
}

// move fills in the excursion over frequency.
func (x *Maximum) move(s *Spot) {
	cone, high := coneOf(s.Array.Driver), s.Protection.HighPass()
	if !cone.IsKnown() {
		return
	}
	x.Frequency = make([]float64, excursionCount)
	band.Log(x.Frequency, excursionLow, excursionHigh)
	for _, hz := range x.Frequency {
		free := s.Protection.Volt * cone.Excursion(hz)
		x.Unprotected, x.Excursion = append(x.Unprotected, free), append(x.Excursion, free*cmplx.Abs(high.Response(hz)))
	}
}

// levels fills in the most that each octave band can have at the spot. The
// driver that gets most sets the limit for all; what is not known sets none.
func (x *Maximum) levels(s *Spot) {
	g, r := s.Protection, s.Response
	if !(g.Volt > 0) {
		return
	}
	cone, high := coneOf(s.Array.Driver), g.HighPass()
	bounds := excursion.Bounds{Excursion: orEndless(g.Xmax), Power: orEndless(s.Array.Driver.PowerHandling), Volt: g.Volt}
	for _, centre := range band.Octaves() {
		lowest, highest := band.Edges(centre, 1)
		from, to := band.Range(r.Frequency, lowest, highest)
		h := MaxLevel{Band: centre}
		least, energy := math.Inf(1), 0.0
		for f := from; f < to; f++ {
			volt, by := cone.Limit(r.Frequency[f], high, bounds)
			if volt < least {
				least, h.By = volt, by
			}
			share := volt / g.Volt
			energy += share * share * math.Pow(10, r.Aligned[f]/10)
		}
		h.Level = 10 * math.Log10(energy/float64(to-from))
		x.Levels = append(x.Levels, h)
	}
}

// loudest returns the mean level in dB of the octaves from 500 Hz to 4 kHz; NaN where there
// are none.
func (x *Maximum) loudest() float64 {
	if len(x.Levels) == 0 {
		return math.NaN()
	}
	var centre, level []float64
	for _, h := range x.Levels {
		centre, level = append(centre, h.Band), append(level, h.Level)
	}
	return MeanFrom500To4k(centre, level)
}

// orEndless returns a limit, endless where it is not known.
func orEndless(limit float64) float64 {
	if limit > 0 {
		return limit
	}
	return math.Inf(1)
}

// pinkLow and pinkHigh bound the pink noise in Hz whose level is told.
const pinkLow, pinkHigh = 20.0, 20000.0

// quietEnough is the level in dBA from which on an allowed time means anything: 24
// hours and more are allowed below.
const quietEnough = 80.0

// caution fills in how loud pink noise of the wiring's voltage is at the spot and how
// long it may last, and tells where that, or a tone, can hurt hearing. The array is
// taken with its woofer, where there is one: ears hear both. What is wrong with the
// crossover is added to what is found.
func (x *Maximum) caution(s *Spot) (found findings, err error) {
	frequency, level := s.Response.Frequency, s.Response.Aligned
	if s.Array.Woofer.Present {
		w, err := WithWoofer(s)
		switch {
		case err != nil && s.IsAbsolute():
			return nil, err
		case err != nil: // nothing to warn of is known; who wants to hear it is told
			return nil, nil
		}
		found, frequency, level = w.Warnings, w.Frequency, w.Sum
	}
	if !s.IsAbsolute() {
		return found, nil
	}
	tone := slices.Max(level)
	x.Noise, x.Hours = pink(frequency, level), math.Inf(1)
	if x.Noise >= quietEnough {
		x.Hours = exposure.Allowed(x.Noise)
	}
	if risk := (HearingRisk{x.Noise >= exposure.Limit, s.Array.Woofer.Present, s.Array.Wiring.Voltage, x.Noise, tone, x.Hours}); risk.ByNoise || tone >= exposure.Limit {
		found.warn("hearing", advice.Caution, risk)
	}
	return found, nil
}

// pink returns the level in dBA of pink noise whose RMS voltage is that of the tones
// that have levels in dB at frequencies in Hz, evenly spaced on a logarithmic axis: each
// stands for an equal part of the noise. What lies beyond them hardly weighs.
func pink(frequency, level []float64) float64 {
	n := len(frequency)
	step := math.Log(frequency[n-1]/frequency[0]) / float64(n-1)
	part := 10 * math.Log10(step/math.Log(pinkHigh/pinkLow))
	return exposure.Level(frequency, level) + part
}
