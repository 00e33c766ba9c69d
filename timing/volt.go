package timing

import (
	"cmp"
	"slices"

	"pappus/layout"
	"pappus/timing/excursion"
)

// DriverVolt returns the RMS voltage over a driver in the longest string of a
// channel with a gain of 0 dB, in V: what all levels of the plan are computed
// for.
func (p *Plan) DriverVolt() float64 {
	return p.Array.Wiring.Voltage / float64(longestString(p.Channels))
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
	worst := slices.MaxFunc(p.Channels, func(a, b Channel) int { return cmp.Compare(a.Bank.DriverWatt, b.Bank.DriverWatt) }).Bank
	if !(worst.DriverVolt > 0) {
		return l, false
	}
	l = Limit{Volt: worst.DriverVolt, Watt: worst.DriverWatt, Stands: max(p.Array.Driver.PowerHandling, 0)}
	if l.ByDrivers = l.Stands > 0 && l.Watt > l.Stands; l.ByDrivers {
		l.Bearable = p.Array.Wiring.Voltage * p.bears() / l.Volt
	}
	l.Travel = slices.ContainsFunc(p.Protection.Highest, func(h Highest) bool { return h.By == excursion.ByExcursion })
	return l, true
}

// Gained returns by how many dB the delays raise the level at the spot: mean from 500 Hz
// to 4 kHz.
func (p *Plan) Gained() float64 {
	from, to := indexRange(p.Response.Frequency, layout.WeightLowHz, layout.WeightHighHz)
	return mean(p.Response.Aligned[from:to]) - mean(p.Response.Unaligned[from:to])
}
