package words

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"pappus/layout/advice"
	"pappus/layout/prose"
	"pappus/layout/wiring"
	"pappus/timing"
	"pappus/timing/exposure"
)

// rows say what a finding of each code is, as one sentence without its full stop, and
// what cures it, in the imperative.
var rows = map[string]func(fact any) (what, cure string){
	"amplifier_power":    row(amplifierPower),
	"channels_fewer":     row(channelsFewer),
	"crossover_loss":     row(crossoverLoss),
	"delay_short":        row(delayShort),
	"driver_power":       row(driverPower),
	"excursion":          row(excursion),
	"bodies_shared_late": row(bodiesSharedLate),
	"far_from_ball":      row(farFromBall),
	"hearing":            row(hearing),
	"load_too_low":       row(loadTooLow),
	"polarity_opposed":   row(polarityOpposed),
	"powers_unequal":     row(powersUnequal),
	"seats_middle_worse": row(middleWorse),
	"strings_hold_down":  row(stringsHoldDown),
	"strings_too_long":   row(stringsTooLong),
	"strings_waste":      row(stringsWaste),
}

// row takes the facts of a finding as the type that they are.
func row[F any](say func(F) (what, cure string)) func(any) (what, cure string) {
	return func(fact any) (what, cure string) { return say(fact.(F)) }
}

// Finding puts a finding in words. Those of layout have them already.
func Finding(f timing.Finding) advice.Finding {
	if said, ok := f.Fact.(advice.Finding); ok {
		return said
	}
	what, cure := rows[f.Code](f.Fact)
	return advice.Finding{Code: f.Code, Rank: f.Rank, What: what, Cure: cure}
}

// Findings puts findings in words, worst first, and those of one rank in the order in
// which they were found.
func Findings(all []timing.Finding) []advice.Finding {
	out := make([]advice.Finding, len(all))
	for i, f := range all {
		out[i] = Finding(f)
	}
	return advice.Sorted(out)
}

func hearing(f timing.HearingRisk) (what, cure string) {
	with := ""
	if f.WithWoofer {
		with = "with the woofer "
	}
	cure = "begin quietly, and turn it down for children"
	if f.ByNoise {
		return prose.Sprintf("%spink noise of %.4g V comes to %.0f dB(A) at the spot and a tone to %.0f dB; NIOSH (98-126) allows %s of the noise a day to grown-ups at work, and much less is right for children",
			with, f.Volt, f.Noise, f.Tone, lasting(f.Hours)), cure
	}
	return prose.Sprintf("%sa tone of %.4g V comes to %.0f dB at the spot; long above %.0f dB(A) hurts hearing, children's first", with, f.Volt, f.Tone, exposure.Limit), cure
}

// lasting writes a time in hours.
func lasting(hours float64) string {
	switch {
	case hours == 0:
		return "no time at all"
	case hours < 1.0/60:
		return counted(3600*hours, "second")
	case hours < 1:
		return counted(60*hours, "minute")
	}
	return counted(hours, "hour")
}

// counted writes so much of a unit with two figures.
func counted(n float64, unit string) string {
	text := prose.Number(n, 2)
	if text != "1" {
		unit += "s"
	}
	return text + " " + unit
}

func amplifierPower(f timing.ChannelDraw) (what, cure string) {
	return prose.Sprintf("channel %d draws up to %.3g W at %.3g V, and the amplifier is sold as %.4g W into %.3g ohm; it may clip or switch off earlier",
			f.Channel, f.Watt, f.Volt, f.SoldWatt, f.SoldOhm),
		prose.Sprintf("see what its maker gives for %.3g ohm, and plan with that", f.DCOhm)
}

func driverPower(f timing.DriverHeat) (what, cure string) {
	return prose.Sprintf("at %.4g V a tone gives a driver of channel %d %.3g W, and it stands for %.3g W long; its coil can burn",
		f.Volt, f.Channel, f.Watt, f.Stands), "lower the voltage"
}

func delayShort(f timing.DelayShort) (what, cure string) {
	what = fmt.Sprintf("channel %d is set to %.1f us by hand and is heard %.1f us before the latest channel", f.Channel, 1e6*f.Delay, 1e6*f.Early)
	if f.Count > 1 {
		what += fmt.Sprintf("; %d channels are set too short, this one the most", f.Count)
	}
	return what, fmt.Sprintf("to be in step it needs %.1f us", 1e6*f.Needed)
}

func powersUnequal(f timing.PowersUnequal) (what, cure string) {
	gains := make([]string, len(f.Even))
	for i, g := range f.Even {
		gains[i] = fmt.Sprintf("%.1f for channel %d", g.Gain+0, g.Channel) // no zero is negative
	}
	return prose.Sprintf("each driver of channel %d gets %.3g times the power of one of channel %d, and is %.1f dB louder",
			f.Loudest, math.Pow(10, f.Apart/10), f.Quietest, f.Apart),
		"for drivers all as loud set gain_db to " + strings.Join(gains, ", ")
}

func polarityOpposed(f timing.PolarityOpposed) (what, cure string) {
	names := commas(f.Inverted)
	which := "channel " + names + " is"
	if len(f.Inverted) > 1 {
		which = "channels " + names + " are"
	}
	return which + " inverted and the others are not, so that in step they cancel", "leave it so only where the drivers are wired the other way round"
}

func stringsHoldDown(h timing.Held) (what, cure string) {
	names := numbers(h.Channels)
	who, has := "channel "+names[0]+" holds", "it has"
	if len(names) > 1 {
		who, has = "channels "+prose.Each(names)+" hold", "they have"
	}
	what = fmt.Sprintf("%s the others down by up to %.1f dB, since %s strings of %s, which share the voltage, and every driver is to get as much",
		who, h.By, has, prose.Count(h.Series, "driver", "drivers"))
	if h.Cure == 0 {
		return what, "take another number of channels, or another split"
	}
	return what, fmt.Sprintf("leave longest_string under [wiring] out; strings are then of up to %d, which gives the spot %.1f dB more at the same voltage, and the smear becomes %.1f us, from %.1f",
		h.Cure, h.Louder, 1e6*h.Smear, 1e6*h.Now)
}

func farFromBall(f timing.FarFromBall) (what, cure string) {
	return fmt.Sprintf("the plan takes the body for a ball of %.0f mm radius, but a face lies %.0f mm off that ball: more than on any body that the model has been checked with, so levels and delays are a guess",
		1000*f.Radius, 1000*f.Off), "set model = \"body\" under [timing], which takes the body as it is, or take a rounder one"
}

func excursion(f timing.ConeTravel) (what, cure string) {
	if math.IsInf(f.Least, 1) {
		return prose.Sprintf("%.3g V over a driver move its cone beyond %.3g mm whatever the high-pass", f.Volt, 1000*f.Xmax), "lower the voltage"
	}
	return prose.Sprintf("the high-pass at %.4g Hz lets a tone of %.3g V over a driver move its cone beyond %.3g mm", f.Corner, f.Volt, 1000*f.Xmax),
		prose.Sprintf("set it to %.4g Hz or above, or lower the voltage", math.Ceil(f.Least))
}

func channelsFewer(f timing.FewerChannels) (what, cure string) {
	return prose.Sprintf("%s in place of %d, since with fewer than %s of %.3g ohm a channel loads the amplifier below its %g ohm",
			prose.Count(f.Channels, "channel", "channels"), f.Asked, prose.Count(f.LeastDrivers, "driver", "drivers"), f.DriverOhm, f.MinimumOhm),
		fmt.Sprintf("set channels = %d, or take drivers of more ohms", f.Channels)
}

func stringsTooLong(f timing.LongStrings) (what, cure string) {
	return fmt.Sprintf("strings of up to %s, though longest_string = %d, which no split into %s in this way keeps to",
			prose.Count(f.Longest, "driver", "drivers"), f.Asked, prose.Count(f.Channels, "channel", "channels")),
		fmt.Sprintf("set longest_string = %d, or another number of channels", f.Longest)
}

func bodiesSharedLate(f timing.SharedLate) (what, cure string) {
	return fmt.Sprintf("bodies %d and %d share their channels, and the spot hears body %d %.1f ms after body %d, which no delay mends", f.First, f.Last, f.Last, 1000*f.Late, f.First),
		"give each channels of its own: channels = \"own\" under [[body_at]]"
}

func loadTooLow(f timing.LoadTooLow) (what, cure string) {
	return prose.Sprintf("one channel for each driver is for comparison only: %.3g ohm is below the amplifier's %g ohm, and it can overheat",
		f.DriverOhm, f.MinimumOhm), "do not connect it so; set channels under [wiring]"
}

func stringsWaste(f timing.StringsWaste) (what, cure string) {
	others := ""
	if f.Channels > 1 {
		others = ", and all others are turned down to that"
	}
	var cures []string
	if f.Empty != nil {
		cures = append(cures, leaveEmpty(*f.Empty, f.Channels))
	}
	if f.Unequal != nil {
		cures = append(cures, stringUnequally(*f.Unequal))
	}
	return prose.Sprintf("the %d drivers of channel %d can only be %s, %.3g ohm, in which each gets 1/%d of the %.3g V, %s at most%s",
		f.Drivers, f.Channel, f.Strings, f.DCOhm, f.Strings[0].Series, f.Volt, watts(f.Watt), others), strings.Join(cures, "; or ")
}

// leaveEmpty says which places to leave empty, and what that brings.
func leaveEmpty(e timing.LeftEmpty, channels int) string {
	how := fmt.Sprintf("go in strings of up to %d", e.Series)
	switch {
	case e.Series == 1:
		how = "need no strings"
	case channels == 1:
		how = fmt.Sprintf("go in strings of %d", e.Series)
	}
	n := len(e.Places)
	return fmt.Sprintf("leave %s %s empty (in skip under [mounts]), %s at the spot: %s %s and give %.1f dB more there",
		prose.Noun(n, "place", "places"), commas(e.Places), prose.Noun(n, "the quietest", "the quietest ones"), prose.Count(e.Drivers, "driver", "drivers"), how, e.Gain)
}

// stringUnequally says how unequal strings bring more.
func stringUnequally(u timing.StrungUnequally) string {
	return prose.Sprintf("string them unequally by hand, %s, %.3g ohm: %.1f dB more, with drivers %.1f dB apart",
		bare(u.Strings), u.DCOhm, u.Gain, u.Apart)
}

// bare names strings without saying that they are unequal.
func bare(a wiring.Arrangement) string { return strings.TrimSuffix(a.String(), " (unequal)") }

// watts writes a power.
func watts(w float64) string {
	if w < 0.1 {
		return prose.Sprintf("%.2g mW", 1000*w)
	}
	return prose.Sprintf("%.2g W", w)
}

func crossoverLoss(f timing.CrossoverLoss) (what, cure string) {
	what = prose.Sprintf("%.1f dB are lost near %.3g Hz, where array and woofer are as loud, though both arrive together, since filters, resonances and reflections turn the phase",
		f.Loss, f.Meets)
	cure = "set the crossover higher"
	if f.Finer == nil {
		return what, cure
	}
	who, polarity := "the woofer", "the same polarity"
	if f.Finer.Delay < 0 {
		who = "the array"
	}
	if f.Other {
		polarity = "the other polarity"
	}
	return what, cure + fmt.Sprintf(" or try %.2f ms more delay on %s with %s, which leaves %.1f dB lost", 1000*math.Abs(f.Finer.Delay), who, polarity, max(0, f.Finer.Loss))
}

// numbers writes whole numbers.
func numbers(n []int) []string {
	out := make([]string, len(n))
	for i, v := range n {
		out[i] = strconv.Itoa(v)
	}
	return out
}

func middleWorse(f timing.MiddleWorse) (what, cure string) {
	return prose.Sprintf("delays for %s alone would lose %.1f dB at the worst seat, no delays %.1f dB; the plan for all seats loses %.1f dB", f.Seat, f.Middle, f.Without, f.Their),
		"keep the plan's delays for all seats"
}
