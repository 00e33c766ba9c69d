package limiter

import "math"

// Need is what an amplifier must give so that the drivers, and not it, limit music of a crest
// factor.
type Need struct {
	Channels int
	Ohm      float64 // the least load of any channel
	Peak     float64 // V, the most of any channel
	Watt     float64 // the most of any channel: of a sine of that channel's peak into its least load
}

// NeedFor returns what an amplifier must give for music of a crest factor in dB; known is false
// where neither heat nor travel of the drivers is known.
func NeedFor(channels []Channel, crest float64) (n Need, known bool) {
	n = Need{Channels: len(channels), Ohm: math.Inf(1)}
	for _, c := range channels {
		peak := min(c.Travel, c.Heat*math.Pow(10, crest/20))
		if math.IsInf(peak, 1) {
			return Need{}, false
		}
		n.Ohm, n.Peak = min(n.Ohm, c.ohm), max(n.Peak, peak)
		n.Watt = max(n.Watt, peak*peak/2/c.ohm)
	}
	return n, len(channels) > 0
}

// Gain returns the voltage gain in dB of the amplifier with which a sine of the processor's full
// scale, in V RMS, just reaches the highest peak that any channel's limiter allows: more only
// makes hiss louder. It is NaN where either is not known.
func Gain(channels []Channel, fullScale float64) float64 {
	most := 0.0
	for _, c := range channels {
		most = max(most, c.Peak)
	}
	if !(fullScale > 0) || math.IsInf(most, 1) || most == 0 {
		return math.NaN()
	}
	return decibel(most / (math.Sqrt2 * fullScale))
}
