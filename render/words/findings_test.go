package words

import (
	"math"
	"os"
	"path/filepath"
	"regexp"
	"testing"

	"pappus/layout/advice"
	"pappus/layout/wiring"
	"pappus/timing"

	"github.com/google/go-cmp/cmp"
)

// TestFindings: what each finding says and what cures it, to the letter, one with another
// number where the words differ.
func TestFindings(t *testing.T) {
	waste := timing.StringsWaste{Channel: 1, Drivers: 52, Channels: 1, Strings: wiring.Arrangement{{Series: 13, Parallel: 4}}, DCOhm: 23.075, Volt: 2.83, Watt: 0.0067}
	empty, several, none := waste, waste, waste
	empty.Empty = &timing.LeftEmpty{Places: []int{3, 7, 9}, Drivers: 49, Series: 7, Gain: 4.7}
	empty.Unequal = &timing.StrungUnequally{Strings: wiring.Arrangement{{Series: 7, Parallel: 4}, {Series: 6, Parallel: 4}}, DCOhm: 5.735, Gain: 6.02, Apart: 1.34}
	several.Channels, several.Watt, several.Empty = 4, 0.25, &timing.LeftEmpty{Places: []int{3}, Drivers: 48, Series: 6, Gain: 4}
	none.Empty = &timing.LeftEmpty{Places: []int{3}, Drivers: 4, Series: 1, Gain: 4}
	hold := timing.Held{Channels: []int{2}, Series: 5, By: 7.96, Now: 40e-6}
	held := timing.Held{Channels: []int{2, 4, 5}, Series: 5, By: 7.96, Now: 40e-6, Cure: 2, Louder: 6, Smear: 45e-6}
	finer := timing.CrossoverLoss{Loss: 2.19, Meets: 300, Finer: &timing.Finer{Delay: 0.94e-3, Loss: -1e-9}, Other: true}
	array := timing.CrossoverLoss{Loss: 2.19, Meets: 300, Finer: &timing.Finer{Delay: -0.94e-3, Loss: 0.5}}
	noise := timing.HearingRisk{ByNoise: true, Volt: 2.83, Noise: 95, Tone: 101, Hours: 0.794}
	noTime, seconds, hours := noise, noise, noise
	noTime.Hours, seconds.Hours, hours.Hours, hours.WithWoofer = 0, 30.0/3600, 8, true
	const allows = "pink noise of 2.83 V comes to 95 dB(A) at the spot and a tone to 101 dB; NIOSH (98-126) allows "
	const ears = "begin quietly, and turn it down for children"
	for _, c := range []struct {
		name, code, what, cure string
		fact                   any
	}{
		{"minutes", "hearing", allows + "48 minutes of the noise a day to grown-ups at work, and much less is right for children", ears, noise},
		{"no time", "hearing", allows + "no time at all of the noise a day to grown-ups at work, and much less is right for children", ears, noTime},
		{"seconds", "hearing", allows + "30 seconds of the noise a day to grown-ups at work, and much less is right for children", ears, seconds},
		{"with a woofer", "hearing", "with the woofer " + allows + "8 hours of the noise a day to grown-ups at work, and much less is right for children", ears, hours},
		{"a tone", "hearing", "a tone of 4 V comes to 90 dB at the spot; long above 85 dB(A) hurts hearing, children's first", ears, timing.HearingRisk{Volt: 4, Noise: 80, Tone: 90}},
		{"one seat's delays", "seats_middle_worse", "delays for cushion 3 alone would lose 11.0 dB at the worst seat, no delays 10.0 dB; the plan for all seats loses 7.1 dB", "keep the plan's delays for all seats",
			timing.MiddleWorse{Seat: "cushion 3", Middle: 11, Without: 10, Their: 7.1}},
		{"a weak amplifier", "amplifier_power", "channel 2 draws up to 42.2 W at 14.1 V, and the amplifier is sold as 25 W into 8 ohm; it may clip or switch off earlier",
			"see what its maker gives for 4.73 ohm, and plan with that", timing.ChannelDraw{Channel: 2, Watt: 42.2, Volt: 14.14, DCOhm: 4.733, SoldWatt: 25, SoldOhm: 8}},
		{"heat", "driver_power", "at 10 V a tone gives a driver of channel 1 3.12 W, and it stands for 3 W long; its coil can burn", "lower the voltage",
			timing.DriverHeat{Channel: 1, Volt: 10, Watt: 3.125, Stands: 3}},
		{"one too short", "delay_short", "channel 1 is set to 500.0 us by hand and is heard 1500.0 us before the latest channel", "to be in step it needs 2000.0 us",
			timing.DelayShort{Channel: 1, Delay: 0.5e-3, Early: 1.5e-3, Needed: 2e-3, Count: 1}},
		{"two too short", "delay_short", "channel 1 is set to 500.0 us by hand and is heard 1500.0 us before the latest channel; 2 channels are set too short, this one the most",
			"to be in step it needs 2000.0 us", timing.DelayShort{Channel: 1, Delay: 0.5e-3, Early: 1.5e-3, Needed: 2e-3, Count: 2}},
		{"unequal", "powers_unequal", "each driver of channel 2 gets 25 times the power of one of channel 1, and is 14.0 dB louder",
			"for drivers all as loud set gain_db to -14.0 for channel 2, 0.0 for channel 3",
			timing.PowersUnequal{Loudest: 2, Quietest: 1, Apart: 20 * math.Log10(5), Even: []timing.SetGain{{Channel: 2, Gain: -13.98}, {Channel: 3, Gain: math.Copysign(0, -1)}}}},
		{"one inverted", "polarity_opposed", "channel 2 is inverted and the others are not, so that in step they cancel", "leave it so only where the drivers are wired the other way round",
			timing.PolarityOpposed{Inverted: []int{2}}},
		{"two inverted", "polarity_opposed", "channels 2, 5 are inverted and the others are not, so that in step they cancel", "leave it so only where the drivers are wired the other way round",
			timing.PolarityOpposed{Inverted: []int{2, 5}}},
		{"one holds down", "strings_hold_down", "channel 2 holds the others down by up to 8.0 dB, since it has strings of 5 drivers, which share the voltage, and every driver is to get as much",
			"take another number of channels, or another split", hold},
		{"three hold down", "strings_hold_down", "channels 2, 4 and 5 hold the others down by up to 8.0 dB, since they have strings of 5 drivers, which share the voltage, and every driver is to get as much",
			"leave longest_string under [wiring] out; strings are then of up to 2, which gives the spot 6.0 dB more at the same voltage, and the smear becomes 45.0 us, from 40.0", held},
		{"a long prism", "far_from_ball", "the plan takes the body for a ball of 233 mm radius, but a face lies 217 mm off that ball: more than on any body that the model has been checked with, so levels and delays are a guess",
			"set model = \"body\" under [timing], which takes the body as it is, or take a rounder one", timing.FarFromBall{Radius: 0.2332, Off: 0.2168}},
		{"too low a corner", "excursion", "the high-pass at 20 Hz lets a tone of 5 V over a driver move its cone beyond 1.5 mm", "set it to 81 Hz or above, or lower the voltage",
			timing.ConeTravel{Volt: 5, Xmax: 0.0015, Corner: 20, Least: 80.2}},
		{"no corner will do", "excursion", "5 V over a driver move its cone beyond 1.5 mm whatever the high-pass", "lower the voltage",
			timing.ConeTravel{Volt: 5, Xmax: 0.0015, Corner: 20, Least: math.Inf(1)}},
		{"fewer", "channels_fewer", "1 channel in place of 4, since with fewer than 2 drivers of 3.4 ohm a channel loads the amplifier below its 4 ohm",
			"set channels = 1, or take drivers of more ohms", timing.FewerChannels{Channels: 1, Asked: 4, LeastDrivers: 2, DriverOhm: 3.4, MinimumOhm: 4}},
		{"long strings", "strings_too_long", "strings of up to 7 drivers, though longest_string = 3, which no split into 1 channel in this way keeps to",
			"set longest_string = 7, or another number of channels", timing.LongStrings{Longest: 7, Asked: 3, Channels: 1}},
		{"one each", "load_too_low", "one channel for each driver is for comparison only: 3.4 ohm is below the amplifier's 4 ohm, and it can overheat",
			"do not connect it so; set channels under [wiring]", timing.LoadTooLow{DriverOhm: 3.4, MinimumOhm: 4}},
		{"52 on one", "strings_waste", "the 52 drivers of channel 1 can only be 4 strings of 13, 23.1 ohm, in which each gets 1/13 of the 2.83 V, 6.7 mW at most",
			"leave places 3, 7, 9 empty (in skip under [mounts]), the quietest ones at the spot: 49 drivers go in strings of 7 and give 4.7 dB more there; or string them unequally by hand, 4 strings of 7 and 4 strings of 6, 5.74 ohm: 6.0 dB more, with drivers 1.3 dB apart", empty},
		{"52 on four", "strings_waste", "the 52 drivers of channel 1 can only be 4 strings of 13, 23.1 ohm, in which each gets 1/13 of the 2.83 V, 0.25 W at most, and all others are turned down to that",
			"leave place 3 empty (in skip under [mounts]), the quietest at the spot: 48 drivers go in strings of up to 6 and give 4.0 dB more there", several},
		{"no strings", "strings_waste", "the 52 drivers of channel 1 can only be 4 strings of 13, 23.1 ohm, in which each gets 1/13 of the 2.83 V, 6.7 mW at most",
			"leave place 3 empty (in skip under [mounts]), the quietest at the spot: 4 drivers need no strings and give 4.0 dB more there", none},
		{"nothing is finer", "crossover_loss", "2.2 dB are lost near 300 Hz, where array and woofer are as loud, though both arrive together, since filters, resonances and reflections turn the phase",
			"set the crossover higher", timing.CrossoverLoss{Loss: 2.19, Meets: 300}},
		{"a later woofer", "crossover_loss", "2.2 dB are lost near 300 Hz, where array and woofer are as loud, though both arrive together, since filters, resonances and reflections turn the phase",
			"set the crossover higher or try 0.94 ms more delay on the woofer with the other polarity, which leaves 0.0 dB lost", finer},
		{"a later array", "crossover_loss", "2.2 dB are lost near 300 Hz, where array and woofer are as loud, though both arrive together, since filters, resonances and reflections turn the phase",
			"set the crossover higher or try 0.94 ms more delay on the array with the same polarity, which leaves 0.5 dB lost", array},
	} {
		t.Run(c.code+": "+c.name, func(t *testing.T) {
			want := advice.Finding{Code: c.code, Rank: advice.Cost, What: c.what, Cure: c.cure}
			if d := cmp.Diff(want, Finding(timing.Finding{Code: c.code, Rank: advice.Cost, Fact: c.fact})); d != "" {
				t.Error(d)
			}
		})
	}
}

// TestFindingsOfLayout keep their own words, and the worst comes first.
func TestFindingsOfLayout(t *testing.T) {
	own := advice.Finding{Code: "places_cut", Rank: advice.Danger, What: "no place", Cure: "cut less"}
	got := Findings([]timing.Finding{{Code: "polarity_opposed", Rank: advice.Cost, Fact: timing.PolarityOpposed{Inverted: []int{1}}}, {Code: own.Code, Rank: own.Rank, Fact: own}})
	if d := cmp.Diff(own, got[0]); d != "" || len(got) != 2 {
		t.Errorf("%v\n%s", got, d)
	}
}

// TestEveryCodeHasWords reads the codes that timing finds out of its source.
func TestEveryCodeHasWords(t *testing.T) {
	files, err := filepath.Glob("../../timing/*.go")
	if err != nil || len(files) == 0 {
		t.Fatal(err)
	}
	found := regexp.MustCompile(`(?:warn\(|[Ff]indings?\{+)"([a-z_]+)"`)
	codes := map[string]bool{}
	for _, name := range files {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range found.FindAllSubmatch(text, -1) {
			codes[string(m[1])] = true
		}
	}
	said := map[string]bool{}
	for code := range rows {
		said[code] = true
	}
	if d := cmp.Diff(codes, said); d != "" {
		t.Errorf("what timing finds and what has words:\n%s", d)
	}
}
