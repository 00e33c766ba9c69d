package words

import (
	"fmt"
	"math"
	"slices"

	"pappus/timing"
	"pappus/timing/band"
)

// Levelled says what was levelled, and how far.
func Levelled(l timing.Levelling) string {
	last, without := len(l.Frequency)-1, ""
	if len(l.Nulls) > 0 {
		without = ", but for what is left alone"
	}
	text := fmt.Sprintf("Level at the spot and 0.1 m round it, %s to %s, sixth-octave smoothed%s: ", band.Hertz(l.Frequency[0]), band.Hertz(l.Frequency[last]), without)
	if len(l.Sections) == 0 {
		return text + fmt.Sprintf("uneven by %.1f dB, and no section is worth setting.", l.UnevenBefore)
	}
	return text + fmt.Sprintf("uneven by %.1f dB before, %.1f dB after.", l.UnevenBefore, l.UnevenAfter)
}

// ModelError says that the model's own error is left alone; nothing where it hardly has
// one.
func ModelError(l timing.Levelling) string {
	last := len(l.Error) - 1
	if last < 0 || slices.Max(l.Error) < hardlyOff {
		return ""
	}
	at := last
	for l.Frequency[at] > 1000 && at > 0 {
		at--
	}
	return fmt.Sprintf("What is within the model's own error of the mean is left alone, since the body is not a ball: %.1f dB at %s, %.1f dB at %s. Only what is beyond it is evened out; a measurement knows more.",
		l.Error[at], band.Hertz(l.Frequency[at]), l.Error[last], band.Hertz(l.Frequency[last]))
}

// LevelAtSeats says what a correction does where there are several seats; nothing where there
// are not.
func LevelAtSeats(p *timing.Plan, f *timing.SeatFilters) string {
	if p.Seating == nil {
		return ""
	}
	return "This evens out the level at the spot alone. Sections and filters are the same for all channels: they change the level at every seat by as much, and what a seat loses by drivers out of step they leave as it is. Where the spot is uneven and the seats are not, set none. " + SeatFilters(f)
}

// SeatFilters says what a short filter for each channel brings the seats; nothing where none
// was looked for.
func SeatFilters(f *timing.SeatFilters) string {
	if f == nil {
		return ""
	}
	what := fmt.Sprintf("a filter of %d taps for each channel, after its delay, brings what is between seats from %.1f to %.1f dB and the mean loss from %.1f to %.1f dB",
		len(f.Taps[0]), f.Planned.Between, f.Between, f.Planned.Mean, f.Mean)
	if !f.Pays {
		return "For the seats " + what + ", which is not worth setting."
	}
	return "For the seats " + what + fmt.Sprintf(": seats_channel_1.wav and so on, all %.2f ms late alike. Drivers that differ by 1 dB and 10 us from one to the next leave about 1 dB between seats with any filter.", 1000*f.Lead)
}

// LevelCautions say what to mind when a correction is set.
func LevelCautions(l timing.Levelling, c timing.Correction) []string {
	out := []string{"use the sections or one of the filters, never both; set the high-pass first, which the filters do not hold."}
	if boost := l.Boost(); boost > 0 {
		out = append(out, fmt.Sprintf("a boost heats the drivers and moves their cones further: %.1f dB take %.1f times the power there. Leave as much room below full scale, and begin quietly.",
			boost, math.Pow(10, boost/10)))
	}
	return append(out, fmt.Sprintf("with linear phase all is heard %.1f ms late: mind that with pictures or a microphone, and give every channel the same filter, a woofer that delay.", 1000*c.Linear.Latency))
}
