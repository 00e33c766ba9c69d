package words

import (
	"fmt"
	"math"
	"strings"

	"pappus/layout/prose"
	"pappus/timing/verdict"
)

// Measured says what a fact about recordings is, without a capital or a full stop.
func Measured(f verdict.Fact) string {
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
	case verdict.LevelUnjudged:
		return "the level of the whole array is not judged before it is clear whether the delays were set"
	}
	return channelFault(id, f)
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
func channels(numbers []int) string {
	names := make([]string, len(numbers))
	for i, n := range numbers {
		names[i] = fmt.Sprint(n)
	}
	return prose.Noun(len(names), "channel ", "channels ") + prose.Each(names)
}

// channelsAre names channels of which something is said.
func channelsAre(numbers []int) string {
	return channels(numbers) + prose.Noun(len(numbers), " is", " are")
}

// commas lists numbers.
func commas(numbers []int) string {
	return strings.ReplaceAll(strings.Trim(fmt.Sprint(numbers), "[]"), " ", ", ")
}

// Stuffing is what to say beside any figure about stuffing.
const Stuffing = "Stuffing is a starting point: measure the impedance, then add or take away. " +
	"Keep it off coils, magnets and amplifiers, which get warm, and off cones and vents; " +
	"choose one that does not feed a flame."
