// Package excursion is how far a driver's cone moves, what high-pass keeps it
// from moving too far, and what voltage the driver bears.
//
// A driver in a closed box, with time factor exp(+i omega t) and V the voltage
// over it:
//
//	x = V Bl / (Re Mms wc^2) / (1 - u^2 + i u/Qtc),  u = f/fc
//
// (R. H. Small, "Closed-box loudspeaker systems, part 1: analysis", J. Audio Eng.
// Soc. 20 (1972) 798). The inductance of the coil is left out, which is on the
// safe side; so is that a spring stiffens as it is stretched. Resonance and Q in the
// box are layout's; drivers that share a box and move alike have an equal part of its
// net volume each. With different delays or levels they do not move quite alike, and
// one can move further than computed here: two that move against each other do not feel
// the box at all, so for these take the resonance and Q of free air.
//
// Heat: no more than V^2/Re can turn into heat in the coil, since the impedance
// is hardly ever below Re (common practice); that V is the sound's RMS over some
// seconds, so the power rating is one for long-term noise. A small coil burns
// within seconds of too much.
package excursion

import (
	"math"
	"math/cmplx"

	"pappus/layout/solve"
	"pappus/timing/crossover"
)

// Driver is a driver in its closed box.
type Driver struct {
	BL        float64 // force factor in T m
	Mass      float64 // Mms in kg, air load included
	DCOhm     float64 // Re
	Resonance float64 // fc in Hz, in the box
	Q         float64 // Qtc, in the box
}

// IsKnown tells whether all values are above 0 and finite.
func (d Driver) IsKnown() bool {
	for _, v := range []float64{d.BL, d.Mass, d.DCOhm, d.Resonance, d.Q} {
		if !(v > 0) || math.IsInf(v, 0) {
			return false
		}
	}
	return true
}

// Excursion returns the peak excursion in m, one way, for a sine of 1 V RMS over
// the driver at a frequency in Hz, 0 or above.
func (d Driver) Excursion(hz float64) float64 {
	wc := 2 * math.Pi * d.Resonance
	u := hz / d.Resonance
	return math.Sqrt2 * d.BL / (d.DCOhm * d.Mass * wc * wc) / math.Hypot(1-u*u, u/d.Q)
}

// Peak returns the greatest peak excursion in m at any frequency for sines of volt RMS at
// the high-pass's input. Without a high-pass, give the zero Filter.
func (d Driver) Peak(volt float64, highPass crossover.Filter) float64 {
	const step = math.Ln2 / 24 // free: how closely it looks before it closes in
	low, high, most := d.Resonance, d.Resonance, 0.0
	if c := highPass.Corner(); c > 0 {
		low, high = min(low, c), max(high, c)
	} else {
		most = volt * d.Excursion(0)
	}
	size := func(log float64) float64 {
		hz := math.Exp(log)
		return volt * d.Excursion(hz) * cmplx.Abs(highPass.Response(hz))
	}
	// free: beyond, the travel only falls
	from, to := math.Log(low)-10*math.Ln2, math.Log(high)+4*math.Ln2
	last, now := size(from), size(from+step)
	for x := from + step; x < to; x += step {
		next := size(x + step)
		if now >= last && now >= next {
			top := solve.Least(func(x float64) float64 { return -size(x) }, x-step, x+step, step/1000) // free: how far it closes in
			most = max(most, size(top))
		}
		last, now = now, next
	}
	return most
}

// The band in Hz in which LeastCorner looks for a corner.
const lowestCorner, highestCorner = 1, 20000

// LeastCorner returns the least corner in Hz, from 1 Hz, of a high-pass like this one that
// keeps the peak excursion of sines of volt RMS, at any frequency, at or under most metres.
// It is found to a millionth, on the safe side; 0 where no high-pass is needed. ok is false
// where even a corner of 20 kHz is not enough. All values must be above 0 and finite.
func (d Driver) LeastCorner(highPass crossover.Filter, volt, most float64) (hz float64, ok bool) {
	const tolerance = 1e-6 // free: how far it closes in; nobody sets a corner so closely
	left := func(log float64) float64 { return most - d.Peak(volt, highPass.Moved(math.Exp(log))) }
	low, high := math.Log(lowestCorner), math.Log(highestCorner)
	switch {
	case d.Peak(volt, crossover.Filter{}) <= most:
		return 0, true
	case left(high) < 0:
		return 0, false
	case left(low) >= 0:
		return lowestCorner, true
	}
	log, _ := solve.Root(left, low, high, tolerance)
	return math.Exp(log + tolerance/2), true
}

// Cause is what limits the voltage.
type Cause int8

// The causes of a limit.
const (
	ByAmplifier Cause = iota
	ByHeat
	ByExcursion
)

// String names the cause.
func (c Cause) String() string { return [...]string{"amplifier", "heat", "excursion"}[c] }

// Bounds are what a driver and its amplifier bear; +Inf where there is no bound.
type Bounds struct {
	Excursion float64 // Xmax in m, one way
	Power     float64 // W, long term
	Volt      float64 // RMS, the most that reaches one driver
}

// Limit returns the highest voltage RMS of a sine at a frequency in Hz, above 0, counted per
// driver at the high-pass's input, that keeps within the bounds, and what sets it; where
// several do, the first of amplifier, heat, excursion. The amplifier's own limit holds
// before the high-pass as well as after. Without a high-pass give the zero Filter. Of a
// driver that is not known, excursion sets no limit.
func (d Driver) Limit(hz float64, highPass crossover.Filter, b Bounds) (volt float64, by Cause) {
	pass := cmplx.Abs(highPass.Response(hz))
	volt, by = b.Volt, ByAmplifier
	if v := math.Sqrt(b.Power*d.DCOhm) / pass; v < volt {
		volt, by = v, ByHeat
	}
	if v := b.Excursion / (d.Excursion(hz) * pass); v < volt && d.IsKnown() {
		volt, by = v, ByExcursion
	}
	return volt, by
}
