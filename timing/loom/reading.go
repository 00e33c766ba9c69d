package loom

import (
	"math"

	"pappus/timing"
)

// Tolerance is by what share a driver's resistance may be off the design's (common practice: data
// sheets give 10 percent).
const Tolerance = 0.1

// Cell is the voltage of a battery cell (IEC 60086: 1.5 V).
const Cell = 1.5

// Seen is what excursion in m of a cone an eye sees at once (common practice: a tenth of a
// millimetre).
const Seen = 0.1e-3

// Range is what a meter may read in ohm, its own leads taken off.
type Range struct{ Least, Ohm, Most float64 }

// rangeOf returns the range of readings of a nominal resistance in ohm of drivers, with so many of wire.
func rangeOf(drivers, wire float64) Range {
	return Range{(1-Tolerance)*drivers + wire, drivers + wire, (1+Tolerance)*drivers + wire}
}

// Apart tells whether two ranges have nothing in common: a reading then tells one from the other.
func (r Range) Apart(other Range) bool { return r.Most < other.Least || other.Most < r.Least }

// Fault is what a wrong reading of a string means.
type Fault struct {
	Reads Range // +Inf: an open line
	Told  bool  // it cannot be a sound one
}

// StringReading is what a meter reads at a string's two ends before it is joined to others.
type StringReading struct {
	Whole Range
	Short Fault // one driver is shorted or left out, or its two wires are joined; none where there is one driver
	Move  float64
}

// ReadString returns what a meter reads of a string of so many drivers.
func ReadString(p *timing.Plan, s String) StringReading {
	n := float64(len(s.Order))
	ohm := p.Array.Driver.DCOhm
	out := StringReading{Whole: rangeOf(n*ohm, s.WireOhm), Move: math.NaN()}
	out.Short.Reads = rangeOf((n-1)*ohm, s.WireOhm)
	out.Short.Told = out.Short.Reads.Apart(out.Whole)
	if cone := p.Cone(); cone.IsKnown() {
		out.Move = Cell / n * cone.Excursion(0) / math.Sqrt2
	}
	return out
}

// ChannelReading is what a meter reads at a channel's terminals with all strings joined and the
// amplifier off.
type ChannelReading struct {
	Whole Range
	Open  Fault // the string that is missed least is not joined, or broken; none where there is one string
}

// ReadChannel returns what a meter reads of a channel with these strings, those of one body.
func ReadChannel(p *timing.Plan, strings []String) ChannelReading {
	never := Range{math.Inf(1), math.Inf(1), math.Inf(1)}
	out := ChannelReading{Whole: Joined(p, strings), Open: Fault{Reads: never, Told: true}}
	if len(strings) < 2 {
		return out
	}
	for i := range strings {
		if left := joined(p, strings, i); left.Most < out.Open.Reads.Most {
			out.Open.Reads = left
		}
	}
	out.Open.Told = out.Open.Reads.Apart(out.Whole)
	return out
}

// Joined returns what a meter reads of strings in parallel.
func Joined(p *timing.Plan, strings []String) Range { return joined(p, strings, -1) }

// joined is Joined without one of the strings, none for -1. All drivers of a make are off alike at
// worst, so that both ends are those of all strings' ends.
func joined(p *timing.Plan, strings []String, without int) Range {
	var siemens [3]float64
	for i, s := range strings {
		if i == without {
			continue
		}
		drivers := float64(len(s.Order)) * p.Array.Driver.DCOhm
		for k, off := range []float64{-Tolerance, 0, Tolerance} {
			siemens[k] += 1 / ((1+off)*drivers + s.WireOhm)
		}
	}
	return Range{1 / siemens[0], 1 / siemens[1], 1 / siemens[2]}
}

// Behind returns the range with so many ohm of wire more.
func (r Range) Behind(ohm float64) Range { return Range{r.Least + ohm, r.Ohm + ohm, r.Most + ohm} }
