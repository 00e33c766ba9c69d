package limiter

import (
	"math"

	"pappus/timing"
	"pappus/timing/excursion"
)

// Channel is what one channel's limiters are set to. Voltages are at the amplifier's terminals;
// +Inf is one that nothing known limits.
type Channel struct {
	ID     int
	Heat   float64 // V RMS, from which on a driver gets more power than it stands long
	Travel float64 // V peak, up to which no cone goes past its reach
	Tones  float64 // V peak, up to which no tone behind the high-pass moves a cone past its reach
	Clip   float64 // V peak, all that the amplifier gives
	RMS    float64 // V, to set: Heat, no more than the amplifier's own
	Peak   float64 // V, to set: Travel, no more than Clip
	// RMSFull and PeakFull are the same in dB below the processor's full scale, a sine of full
	// scale being 0 dB RMS as it is 0 dB peak; NaN where the design does not tell both the
	// processor's and the amplifier's gain. Above 0: never reached, no limiter is needed.
	RMSFull, PeakFull float64

	ohm  float64 // the least load
	gain float64 // of the channel, as a factor of voltage, above 0
}

// Channels returns the limiters of a plan's channels, in their order.
func Channels(p *timing.Plan) []Channel {
	// What one driver bears: all are alike.
	heat, travel, tones := p.RatedVolt(), p.Cone().Bounded(p.Protection.Xmax), tones(p)
	amplifier, at := math.Inf(1), fullScale(p) // RMS
	if w := p.Array.Wiring; w.HasAmplifier {
		amplifier = w.Voltage
	}
	out := make([]Channel, len(p.Channels))
	for i, b := range p.Banks {
		c := Channel{ID: p.Channels[i].ID, Heat: math.Inf(1), Travel: math.Inf(1), Tones: math.Inf(1), Clip: math.Sqrt2 * amplifier,
			ohm: leastOhm(b, p.Channels[i].DCOhm), gain: math.Pow(10, p.Channels[i].Gain/20)}
		if b.DriverVolt > 0 {
			share := b.DriverVolt / b.Volt
			c.Heat, c.Travel, c.Tones = heat/share, travel/share, tones/share
		}
		c.RMS, c.Peak = min(c.Heat, amplifier), min(c.Travel, c.Clip)
		c.RMSFull, c.PeakFull = decibel(c.RMS/at), decibel(c.Peak/(math.Sqrt2*at))
		out[i] = c
	}
	return out
}

// tones returns the peak voltage over a driver up to which no tone behind the high-pass moves its
// cone past its reach; +Inf where that is not known.
func tones(p *timing.Plan) float64 {
	cone, reach := p.Cone(), p.Protection.Xmax
	if !cone.IsKnown() || !(reach > 0) {
		return math.Inf(1)
	}
	return math.Sqrt2 * reach / cone.Peak(1, p.Protection.HighPass())
}

// leastOhm returns the least load that is known of a channel.
func leastOhm(b timing.Bank, dc float64) float64 {
	if b.LowestOhm > 0 {
		return b.LowestOhm
	}
	return dc
}

// fullScale returns the RMS voltage that the amplifier would give, if it could, to a sine of the
// processor's full scale; NaN where the design does not tell.
func fullScale(p *timing.Plan) float64 {
	volt, gain := p.Array.Processor.FullScale, p.Array.Wiring.Gain
	if !(volt > 0) {
		return math.NaN()
	}
	return volt * math.Pow(10, gain/20)
}

// decibel is a ratio of voltages in dB.
func decibel(ratio float64) float64 { return 20 * math.Log10(ratio) }

// bound returns the most RMS voltage at the terminals that music of a crest factor in dB may
// have on a channel, and what sets it; +Inf, by the amplifier, where nothing does.
func (c Channel) bound(crest float64) (volt float64, by excursion.Cause) {
	over := math.Pow(10, crest/20)
	volt, by = c.Clip/over, excursion.ByAmplifier
	if c.Heat < volt {
		volt, by = c.Heat, excursion.ByHeat
	}
	if v := c.Travel / over; v < volt {
		volt, by = v, excursion.ByExcursion
	}
	return volt, by
}
