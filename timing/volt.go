package timing

import (
	"pappus/layout/prose"
	"pappus/timing/excursion"
)

// DriverVolt returns the RMS voltage over a driver in the longest string of a
// channel with a gain of 0 dB, in V: what all levels of the plan are computed
// for.
func (p *Plan) DriverVolt() float64 {
	return p.Array.Wiring.Voltage / float64(longestString(p.Channels))
}

// VoltWords names the voltage that levels are told for: the amplifier's full output
// where the design describes one, else a voltage to quote levels for.
func (p *Plan) VoltWords() string {
	w := p.Array.Wiring
	switch {
	case w.Watt > 0:
		return prose.Sprintf("%.3g V (RMS), the full output of an amplifier of %.4g W into %.3g ohm,", w.Voltage, w.Watt, w.IntoOhm)
	case w.HasAmplifier:
		return prose.Sprintf("%.3g V (RMS), the amplifier's full output,", w.Voltage)
	}
	return prose.Sprintf("%.3g V (RMS)", w.Voltage)
}

// LimitSentence says what keeps the array from playing louder: the amplifier's voltage,
// the power that a driver stands, or how far its cone may move. It is empty where the
// design describes no amplifier, and where the plan does not know what drivers get.
func (p *Plan) LimitSentence() string {
	if !p.Array.Wiring.HasAmplifier || len(p.Channels) == 0 {
		return ""
	}
	worst := p.Channels[0].Bank
	for _, c := range p.Channels {
		if c.Bank.DriverWatt > worst.DriverWatt {
			worst = c.Bank
		}
	}
	text := prose.Sprintf("Each driver then gets up to %.3g V and %.2g W", worst.DriverVolt, worst.DriverWatt)
	stands := p.Array.Driver.PowerHandling
	switch {
	case !(worst.DriverVolt > 0):
		return ""
	case stands > 0 && worst.DriverWatt > stands:
		return text + prose.Sprintf(", and stands %.2g W long: the drivers are the limit, at %.3g V from the amplifier.", stands, p.Array.Wiring.Voltage*p.bears()/worst.DriverVolt)
	case stands > 0:
		text += prose.Sprintf(" of the %.2g W that it stands long", stands)
	}
	for _, h := range p.Protection.Highest {
		if h.By == excursion.ByExcursion {
			return text + ": the amplifier's voltage is the limit, and for the lowest tones the cones' travel."
		}
	}
	return text + ": the amplifier's voltage is the limit."
}
