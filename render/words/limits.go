package words

import (
	"fmt"
	"math"

	"pappus/layout/prose"
	"pappus/timing"
	limits "pappus/timing/excursion"
	"pappus/timing/limiter"
)

// Hours writes a time in hours; a dash where it is not known.
func Hours(hours float64) string {
	switch {
	case math.IsNaN(hours):
		return "-"
	case hours >= 24*7:
		return "always"
	}
	return lasting(hours)
}

// Crest says what music of a crest factor in dB is like (common practice).
func Crest(crest float64) string {
	switch {
	case crest < 8:
		return "test noise"
	case crest < 12:
		return "dense popular music"
	case crest < 17:
		return "most music"
	}
	return "acoustic music, speech"
}

// LimitedBy says what limits a channel, as short as a table needs it.
func LimitedBy(volt float64, by limits.Cause) string {
	if math.IsInf(volt, 1) {
		return "not known"
	}
	return by.String()
}

// Limiters says how the limiters' voltages are meant.
func Limiters(p *timing.Plan, channels []limiter.Channel) string {
	text := "Volts at the amplifier's terminals, behind all filters and gains. The RMS limiter keeps coils cool and answers within a second (common practice); the peak limiter keeps every cone within its reach whatever plays, and answers at once."
	if more := beyond(channels); more > 0 {
		text += fmt.Sprintf(" Where nothing ahead of the high-pass can be stronger than this peak, the cones would bear tones of %.1f dB more.", more)
	}
	if math.IsInf(p.Cone().Bounded(p.Protection.Xmax), 1) {
		text += " What moves a cone too far is not known for want of fs_hz, qms, qes, bl_tm, mms_g and xmax_mm."
	}
	if p.Array.Woofer.Present {
		text += " What the woofer stands, its maker says."
	}
	return text
}

// beyond returns by how many dB tones alone may be louder than whatever plays, as far as can be
// read; 0 where that is not known.
func beyond(channels []limiter.Channel) float64 {
	if len(channels) == 0 || math.IsInf(channels[0].Travel, 1) || math.IsInf(channels[0].Tones, 1) {
		return 0
	}
	if more := 20 * math.Log10(channels[0].Tones/channels[0].Travel); more >= 0.1 {
		return more
	}
	return 0
}

// FullScale says how the decibels of limiters are meant, and which gain fits; nothing where the
// design does not tell of full scale.
func FullScale(p *timing.Plan, channels []limiter.Channel) string {
	volt, gain := p.Array.Processor.FullScale, p.Array.Wiring.Gain
	if !(volt > 0) {
		return "With processor.full_scale_volt and wiring.amplifier_gain_db in the design limiters are told in dB below full scale, too."
	}
	text := prose.Sprintf("dB below a sine of full scale, %.3g V (RMS) and %.3g dB of gain behind it; what is above 0 is never reached.", volt, gain)
	fit := limiter.Gain(channels, volt)
	if math.IsNaN(fit) {
		return text
	}
	switch over := gain - fit; {
	case over > gainNear:
		text += fmt.Sprintf(" %.1f dB of gain are enough: %.1f dB less would lower the hiss by as much.", fit, over)
	case over < -gainNear:
		text += fmt.Sprintf(" The limiters cannot be reached: all that drivers and amplifier stand takes %.1f dB of gain, %.1f dB more.", fit, -over)
	default:
		text += " That gain fits."
	}
	return text
}

// gainNear is within how many dB a gain fits: knobs and data sheets are no truer (common
// practice).
const gainNear = 3.0

// AmplifierNeed says what an amplifier must give so that drivers, and not it, are the limit.
func AmplifierNeed(p *timing.Plan, channels []limiter.Channel, crest float64) string {
	n, known := limiter.NeedFor(channels, crest)
	if !known {
		return "Which amplifier fits is not known for want of what a driver stands."
	}
	text := prose.Sprintf("All that the drivers stand of music of a crest factor of %.3g dB takes an amplifier of %s that bears %.3g ohm and gives each %.3g V peak: %.2g W, as amplifiers are sold, into %.3g ohm.",
		crest, prose.Count(n.Channels, "channel", "channels"), n.Ohm, n.Peak, n.Watt, n.Ohm)
	w := p.Array.Wiring
	if !w.HasAmplifier {
		return text
	}
	if short := 20 * math.Log10(n.Peak/(math.Sqrt2*w.Voltage)); short > 0.1 {
		return text + fmt.Sprintf(" The design's gives %.1f dB less.", short)
	}
	return text + " The design's gives that: without limiters it can destroy drivers."
}

// Ears is the caution for people who listen.
const Ears = "A day's hours are those of NIOSH 98-126 for grown-ups at work, a week's those of ITU-T H.870 for listening for pleasure, of which children are allowed 5 dB less; local law comes first. All sound of a day or a week counts together. What stays below is no promise: turn it down for children, and when ears ring or sound seems dull."
