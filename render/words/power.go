package words

import (
	"fmt"
	"math"

	"pappus/layout/prose"
	"pappus/timing"
	"pappus/timing/exposure"
)

// Volt names the voltage that levels are told for: the amplifier's full output where the
// design describes one, else a voltage to quote levels for.
func Volt(p *timing.Plan) string {
	w := p.Array.Wiring
	switch {
	case w.Watt > 0:
		return prose.Sprintf("%.3g V (RMS), the full output of an amplifier of %.4g W into %.3g ohm,", w.Voltage, w.Watt, w.IntoOhm)
	case w.HasAmplifier:
		return prose.Sprintf("%.3g V (RMS), the amplifier's full output,", w.Voltage)
	}
	return prose.Sprintf("%.3g V (RMS)", w.Voltage)
}

// Limit says what keeps the array from playing louder; nothing where that is not known.
func Limit(p *timing.Plan) string {
	l, known := p.Limit()
	if !known {
		return ""
	}
	text := prose.Sprintf("Each driver then gets up to %.3g V and %.2g W", l.Volt, l.Watt)
	if l.ByDrivers {
		return text + prose.Sprintf(", and stands %.2g W long: the drivers are the limit, at %.3g V from the amplifier.", l.Stands, l.Bearable)
	}
	if l.Stands > 0 {
		text += prose.Sprintf(" of the %.2g W that it stands long", l.Stands)
	}
	if l.Travel {
		return text + ": the amplifier's voltage is the limit, and for the lowest tones the cones' travel."
	}
	return text + ": the amplifier's voltage is the limit."
}

// HighPass says which high-pass to set, if any.
func HighPass(p *timing.Plan) string {
	x := p.Protection
	switch {
	case x.Corner > 0:
		return fmt.Sprintf("High-pass to set: %s.", x.HighPass())
	case math.IsNaN(x.Least):
		return "High-pass: not known for want of fs_hz, qms, qes, bl_tm, mms_g and xmax_mm; set one to be safe."
	}
	return prose.Sprintf("High-pass: none is needed to keep the cones within %.2g mm at %.3g V.", 1000*x.Xmax, x.Volt)
}

// Noise says how loud pink noise is at the spot. How long ears may be in noise that is
// loud, the plan's findings say.
func Noise(p *timing.Plan) string {
	x := p.Maximum
	if math.IsNaN(x.Noise) {
		return "How loud it gets is not known for want of sensitivity_db: begin quietly."
	}
	with := ""
	if p.Array.Woofer.Present {
		with = ", the woofer with it"
	}
	text := fmt.Sprintf("Pink noise at %s comes to %.0f dB(A) at the spot%s.", Volt(p), x.Noise, with)
	if !math.IsInf(x.Hours, 1) && x.Noise < exposure.Limit {
		// Longer than a day at work, for which the limit is made: hours would mean nothing.
		text += fmt.Sprintf(" That is below the %.0f dB(A) that NIOSH allows grown-ups for eight hours at work; children need it quieter.", exposure.Limit)
	}
	if limit := Limit(p); limit != "" {
		text += " " + limit
	}
	return text
}

// Wire says what the wire to the body takes and how thick it should be; nothing where the
// design has no wire.
func Wire(p *timing.Plan) string {
	w, present := p.Wire()
	if !present {
		return ""
	}
	text := prose.Sprintf("%.3g m of %.3g mm2 to the body is %.2f ohm out and back and takes up to %.2f dB off", w.Length, 1e6*w.Section, w.Ohm, w.Loss)
	if w.Least == 0 {
		return text + prose.Sprintf("; no wire of up to 16 mm2 keeps that under %g dB: come nearer.", timing.WireBearable)
	}
	return text + prose.Sprintf("; %.3g mm2 (IEC 60228) or gauge %d (ASTM B258) keeps it under %g dB.", 1e6*w.Least, w.Gauge, timing.WireBearable)
}

// Front says by which rule strings are chosen, and what the design's own cost; empty where
// there is nothing to choose.
func Front(p *timing.Plan) string {
	if len(p.Front) == 0 {
		return ""
	}
	text := prose.Sprintf("The best splits into %d channels with strings of so many drivers at most. The rule takes the loudest that costs no octave in step from 500 Hz to 8 kHz more than %g dB against the least smear, and of some as loud within %g dB the one with the least smear",
		len(p.Channels), timing.WorthOctave, timing.AsLoud)
	for _, f := range p.Front {
		if f.Chosen && f.Rule {
			return text + "."
		}
	}
	return text + "; longest_string in the design overrides it."
}

// Signs says how the five coefficients of a section are meant.
const Signs = "y[n] = b0 x[n] + b1 x[n-1] + b2 x[n-2] - a1 y[n-1] - a2 y[n-2], a0 = 1; where a processor adds a1 and a2, turn their signs"

// SignsInShort is Signs in a few words.
const SignsInShort = "a0 = 1; a1 and a2 subtracted"
