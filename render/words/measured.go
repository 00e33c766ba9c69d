package words

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"pappus/layout/prose"
	"pappus/timing/band"
	"pappus/timing/recording"
	"pappus/timing/verdict"
)

// Measured says what a fact about recordings is, and at which seat it was found, without a
// capital or a full stop.
func Measured(f verdict.Fact) string {
	if f.Seat == "" || f.Code == verdict.SeatUnusable || f.Code == verdict.SeatWireLevel || f.Code == verdict.SeatAlone {
		return measured(f)
	}
	return "at " + strconv.Quote(f.Seat) + ": " + measured(f)
}

func measured(f verdict.Fact) string {
	id := 0
	if len(f.Channels) > 0 {
		id = f.Channels[0]
	}
	switch f.Code {
	case verdict.WholeUnusable:
		return fmt.Sprintf("the recording of all channels is not judged: %v", f.Err)
	case verdict.Uncompared:
		return fmt.Sprintf("the channels are not compared: %v", f.Err)
	case verdict.NoRecording:
		return fmt.Sprintf("there is no recording of channel %d (%s), so nothing is told of it", id, f.File)
	case verdict.Unusable:
		return fmt.Sprintf("nothing is told of channel %d: %v", id, f.Err)
	case verdict.TakeUnusable:
		if len(f.Channels) == 0 {
			return fmt.Sprintf("take %d of all channels does not count: %v", f.Take, f.Err)
		}
		return fmt.Sprintf("take %d of channel %d does not count: %v", f.Take, id, f.Err)
	case verdict.WireInverted:
		return fmt.Sprintf("the wire in the recording of channel %d is upside down, not the channel: turn it, and record again", id)
	case verdict.WireLevel:
		return fmt.Sprintf("the wire in the recording of channel %d is %s than in the others, so nothing is told of its level: keep every gain as it is from one recording to the next", id, louder(f.Value))
	case verdict.DelaysSet:
		return "it looks as if the plan's delays were set while recording, unlike what was said, so none are proposed: if so, measure again and do not say so (--as-built)"
	case verdict.NoDelaysSet:
		return "it looks as if no delays were set while recording, so none are proposed: if so, measure again and say so (--as-built)"
	case verdict.Alike:
		return fmt.Sprintf("the recordings of %s alike, which they should not be, so nothing is told of them: were the others muted, and is each file the right one?", channelsAre(f.Channels))
	case verdict.Exchanged:
		return fmt.Sprintf("channels %d and %d look exchanged: exchange their wires at the amplifier, or the names of the two recordings, and measure again", id, f.Channels[1])
	case verdict.NoWire:
		return "without a wire from the player beside the microphone the channels' times cannot be compared, so nothing is told of delays"
	case verdict.AllInverted:
		return "all channels are upside down against the wire, which the amplifier or the microphone may do as well: which way round they all are is not told"
	case verdict.SeatUnusable:
		return fmt.Sprintf("the recording at %q is not judged: %v", f.Seat, f.Err)
	case verdict.SeatWireLevel:
		return fmt.Sprintf("the wire in the recording at %q is %s than at the others, so what is lost there is off by as much: keep every gain as it is from one recording to the next", f.Seat, louder(f.Value))
	case verdict.SeatsOtherCase:
		return "most recordings at seats fit far better with the delays the other way, set or not set, than was said: was --as-built given as it was? What is lost at the seats is held against what was said"
	case verdict.SeatAlone:
		return fmt.Sprintf("one recording, at %q, does not tell what is lost at a seat: record at others, too, or the channels one by one at the spot", f.Seat)
	case verdict.SeatsNoWire:
		return "without a wire from the player in every recording at a seat their levels cannot be compared, so each is matched to its own plan, and how much louder one seat is than another is not told"
	case verdict.LevelUnjudged:
		return "the level of the whole array is not judged before it is clear whether the delays were set"
	}
	return channelFault(id, f)
}

// Recording says what to mind of a recording, without a capital or a full stop.
func Recording(c recording.Caution) string {
	switch c.Code {
	case recording.Noisy:
		return fmt.Sprintf("the third of an octave at %s is only %.0f dB above the noise", band.Hertz(c.Hz), c.DB)
	case recording.BeyondTable:
		return fmt.Sprintf("the microphone's correction runs from %.0f to %.0f Hz; beyond, its ends are held", c.Hz, c.HighHz)
	case recording.BelowGate:
		return fmt.Sprintf("the gate leaves nothing honest below %.0f Hz", c.Hz)
	case recording.Overloaded:
		return fmt.Sprintf("from %.0f to %.0f Hz the third and fifth harmonics are less than 20 dB under the tone: this looks overloaded, in the recorder, the amplifier or the drivers, and the curve is not to be trusted; turn down and record again", c.Hz, c.HighHz)
	case recording.GainChanged:
		return fmt.Sprintf("the marker after the sweep is %+.1f dB over the one before it, which is the same: the gain changed while recording; switch automatic gain off", c.DB)
	}
	return string(c.Code)
}

// channelFault says what is wrong with a channel, or with several.
func channelFault(id int, f verdict.Fact) string {
	switch f.Code {
	case verdict.Silent:
		return fmt.Sprintf("channel %d is silent: look for a loose wire or an open string, with the amplifier off", id)
	case verdict.DeadString:
		return fmt.Sprintf("channel %d: string %d of %d does not play (drivers %s): look for an open joint, with the amplifier off", id, f.String, f.Strings, commas(f.Drivers))
	case verdict.Unlike:
		return fmt.Sprintf("channel %d does not fit the plan (%.0f percent of its energy does not), so nothing is told of it: check that it is this channel, its delay, and the microphone's place", id, 100*f.Value)
	case verdict.Vague:
		return fmt.Sprintf("channel %d hardly fits the plan (%.0f percent of its energy does not): check that it is this channel, and the microphone's place", id, 100*f.Value)
	case verdict.Quiet:
		text := fmt.Sprintf("channel %d is %s", id, off(f))
		if f.Strings > 0 {
			text += fmt.Sprintf(", as if one of its %d strings did not play; measure its impedance, which tells", f.Strings)
		}
		return text
	case verdict.Loud:
		return fmt.Sprintf("channel %d is %s: check its gain, and that its strings are wired as planned", id, off(f))
	case verdict.SeemsReversed:
		return fmt.Sprintf("channel %d seems to be in reverse polarity: with that the seats are %.1f dB off their plans in place of %.1f dB; record the channels one by one, which tells", id, f.Error, f.Value)
	case verdict.SeemsSilent:
		return fmt.Sprintf("channel %d seems to be silent: with that the seats are %.1f dB off their plans in place of %.1f dB; record the channels one by one, which tells", id, f.Error, f.Value)
	case verdict.Reversed:
		return fmt.Sprintf("channel %d is in reverse polarity: swap its two wires", id)
	case verdict.Halves:
		return fmt.Sprintf("%s in reverse polarity to %s: find out with a battery which of both are right, and swap the wires of the others", channelsAre(f.Channels), channels(f.Others))
	case verdict.Late:
		late := make([]string, len(f.Channels))
		for i, c := range f.Channels {
			late[i] = fmt.Sprintf("channel %d comes %s", c, lateness(f.Times[i]))
		}
		return strings.Join(late, ", ") + ": set the delays that are proposed, or look for what stands elsewhere than planned"
	}
	return string(f.Code)
}

// off says how far in dB a channel is off those that show it.
func off(f verdict.Fact) string {
	than := "its siblings"
	if f.Beside {
		than = "its siblings of like arrival"
	}
	return fmt.Sprintf("%s than %s, give or take %.1f dB", louder(f.Value), than, f.Error)
}

// louder says how much louder in dB something is.
func louder(db float64) string {
	if db < 0 {
		return fmt.Sprintf("%.1f dB quieter", -db)
	}
	return fmt.Sprintf("%.1f dB louder", db)
}

// lateness says how late something is by some s.
func lateness(s float64) string {
	word := "late"
	if s < 0 {
		word = "early"
	}
	if s = math.Abs(s); s >= 1e-3 {
		return fmt.Sprintf("%.1f ms %s", 1e3*s, word)
	}
	return fmt.Sprintf("%.0f us %s", 1e6*s, word)
}

// channels names some: channels 2, 5 and 7.
func channels(ids []int) string {
	return prose.Noun(len(ids), "channel ", "channels ") + prose.Each(numbers(ids))
}

// channelsAre names channels of which something is said.
func channelsAre(ids []int) string {
	return channels(ids) + prose.Noun(len(ids), " is", " are")
}

// commas lists numbers.
func commas(ids []int) string { return strings.Join(numbers(ids), ", ") }

// LevelMeasured says how the level measures.
func LevelMeasured(v verdict.Level, m recording.Measured) string {
	b := &strings.Builder{}
	fmt.Fprintf(b, "From %.0f Hz to %.1f kHz the thirds of octaves differ from the plan by %.1f dB (RMS).", v.Low, v.High/1000, v.Uneven)
	if v.OtherCase {
		fmt.Fprintf(b, " With the delays the other way, set or not set, they would differ by %.1f dB only: was --as-built given as it was?", v.OtherUneven)
	}
	if x, beyond, found := v.Furthest(); found {
		fmt.Fprintf(b, " The furthest off is %s, by %+.1f dB, give or take %s dB; %s.",
			band.Hertz(x.Centre), math.Round(10*x.Difference)/10+0, Give(verdict.Expanded*x.Error, 1), beyondError(beyond, len(v.Bands))) // no zero is negative
	}
	if v.Gated {
		fmt.Fprintf(b, " The gate of %.1f ms tells nothing below %.0f Hz.", 1000*(m.Gated.To-m.At), m.Gated.Lowest)
	}
	b.WriteString(harmonics(m))
	if drift := m.Drift; math.Abs(drift) > 1 {
		fmt.Fprintf(b, " The recorder's clock runs %+.0f parts per million; that is taken out.", drift)
	}
	return b.String()
}

// ordinals name the harmonics.
var ordinals = map[int]string{2: "second", 3: "third", 4: "fourth", 5: "fifth"}

// harmonics says how high the harmonics reach that stand out of the noise.
func harmonics(m recording.Measured) string {
	var found []string
	for _, h := range m.Harmonics {
		if level, hz := m.Peak(h); !math.IsNaN(level) {
			found = append(found, fmt.Sprintf("the %s rises to %.0f dB under it (%s)", ordinals[h.Order], -level, band.Hertz(hz)))
		}
	}
	if len(found) == 0 {
		return ""
	}
	return " Of the harmonics that a tone gets, " + strings.Join(found, ", ") + "."
}

// beyondError says how many of some bands differ by more than their error.
func beyondError(beyond, all int) string {
	switch beyond {
	case 0:
		return "none differs by more than its error"
	case 1:
		return fmt.Sprintf("one of %d differs by more than its error", all)
	}
	return fmt.Sprintf("%d of %d differ by more than their errors", beyond, all)
}

// Give writes an expanded error, never as 0: to so many places at most, and to none from 10 on,
// where the first two digits are all that an error tells (JCGM 100:2008, 7.2.6).
func Give(v float64, places int) string {
	least := math.Pow(10, -float64(places))
	switch {
	case math.IsNaN(v):
		return "-"
	case v < least/2:
		return "<" + fmt.Sprintf("%.*f", places, least)
	case v >= 10:
		places = 0
	}
	return fmt.Sprintf("%.*f", places, v)
}

// SeatsMeasured says what recordings at seats came to.
func SeatsMeasured(v verdict.Seats) string {
	planned, measured := v.Planned, v.Measured
	if len(v.Heard) == 1 {
		return fmt.Sprintf("At %q %s are lost against all drivers in step; planned were %s.", v.Heard[0].Name, lost(measured.Worst), lost(planned.Worst))
	}
	text := fmt.Sprintf("Of the %d seats that were recorded %q loses most against all drivers in step, %s; planned were %s. From seat to seat the loss differs by %s, planned %s",
		len(v.Heard), v.Heard[worst(measured)].Name, lost(measured.Worst), lost(planned.Worst), lost(measured.Between), lost(planned.Between))
	if v.OwnMean {
		text += fmt.Sprintf("; over seats and thirds it is %s on the mean, planned %s.", lost(measured.Mean), lost(planned.Mean))
	} else {
		text += ". The mean is taken to be as planned: to measure it, too, record the channels one by one at the spot, with the same gains and the wire."
	}
	return text + " " + seatsBeyond(v)
}

// seatsBeyond says how many seats lose more or less than planned by more than their errors.
func seatsBeyond(v verdict.Seats) string {
	beyond, furthest := 0, 0
	off := func(i int) float64 { return v.Measured.Seat[i] - v.Planned.Seat[i] }
	for i, h := range v.Heard {
		if math.Abs(off(i)) > verdict.Expanded*h.Error {
			beyond++
		}
		if math.Abs(off(i)) > math.Abs(off(furthest)) {
			furthest = i
		}
	}
	far := v.Heard[furthest]
	more := "more"
	if off(furthest) < 0 {
		more = "less"
	}
	return fmt.Sprintf("The furthest off its plan is %q, where %s %s are lost, give or take %s dB; %s.",
		far.Name, lost(math.Abs(off(furthest))), more, Give(verdict.Expanded*far.Error, 1), beyondError(beyond, len(v.Heard)))
}

// MeasuredSentences says how the whole array measured, and what else to know.
func MeasuredSentences(f verdict.Found) []string {
	var out []string
	if f.Level != nil {
		out = append(out, LevelMeasured(*f.Level, *f.Whole))
	}
	if f.Seats != nil {
		out = append(out, SeatsMeasured(*f.Seats))
	}
	if text := Trial(f, verdict.Trial()); text != "" {
		out = append(out, text)
	}
	return append(out, Mind(f)...)
}

// Mind says what to know of recordings beside their faults.
func Mind(f verdict.Found) []string {
	var out []string
	for _, note := range f.Notes {
		out = append(out, "Mind: "+Measured(note)+".")
	}
	if f.Level != nil {
		for _, caution := range f.Whole.Cautions {
			out = append(out, "Mind: "+Recording(caution)+".")
		}
	}
	if f.Seats == nil {
		return out
	}
	for _, h := range f.Seats.Heard {
		for _, caution := range h.Whole.Cautions {
			out = append(out, fmt.Sprintf("Mind at %q: %s.", h.Name, Recording(caution)))
		}
	}
	return out
}
