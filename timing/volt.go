package timing

import (
	"slices"

	"pappus/layout"
	"pappus/timing/band"
	"pappus/timing/excursion"

	"gonum.org/v1/gonum/stat"
)

// DriverVolt returns the RMS voltage over a driver in the longest string of a
// channel with a gain of 0 dB, in V: what all levels of the plan are computed
// for.
func (s *Spot) DriverVolt() float64 {
	return s.Array.Wiring.Voltage / float64(longestString(s.Channels))
}

// Limit is what keeps the array from playing louder: the amplifier's voltage, the power
// that a driver stands, or, for the lowest tones, how far its cone may move.
type Limit struct {
	Volt, Watt float64 // that the driver which gets most gets
	Stands     float64 // W, what it stands long; 0: not known
	// ByDrivers tells that drivers stand no more: they are at their limit with Bearable
	// from the amplifier, V.
	ByDrivers bool
	Bearable  float64
	Travel    bool // the lowest tones are limited by the cones' travel
}

// Limit returns what limits the array; false where the design describes no amplifier, and
// where the plan does not know what drivers get.
func (p *Plan) Limit() (l Limit, known bool) {
	if !p.Array.Wiring.HasAmplifier || len(p.Channels) == 0 {
		return l, false
	}
	worst := p.Banks[mostBank(p.Banks, Bank.driverWatt)]
	if !(worst.DriverVolt > 0) {
		return l, false
	}
	l = Limit{Volt: worst.DriverVolt, Watt: worst.DriverWatt, Stands: max(p.Array.Driver.PowerHandling, 0)}
	if l.ByDrivers = l.Stands > 0 && l.Watt > l.Stands; l.ByDrivers {
		l.Bearable = p.Array.Wiring.Voltage * ratedVolt(p.Array.Driver) / l.Volt
	}
	l.Travel = slices.ContainsFunc(p.Maximum.Levels, func(h MaxLevel) bool { return h.By == excursion.ByExcursion })
	return l, true
}

// Gained returns by how many dB the delays raise the level at the spot: mean from 500 Hz
// to 4 kHz.
func (p *Plan) Gained() float64 {
	from, to := band.Range(p.Response.Frequency, layout.WeightLowHz, layout.WeightHighHz)
	return stat.Mean(p.Response.Aligned[from:to], nil) - stat.Mean(p.Response.Unaligned[from:to], nil)
}
