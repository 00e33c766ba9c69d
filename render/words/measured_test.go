package words_test

import (
	"errors"
	"testing"

	"pappus/render/words"
	"pappus/timing/recording"
	"pappus/timing/verdict"
)

// TestMeasured: what recordings tell, in words, with the numbers of channels, strings and
// drivers as people count them.
func TestMeasured(t *testing.T) {
	err := errors.New("the recording is clipped")
	three := []int{3}
	for _, test := range []struct {
		fact verdict.Fact
		want string
	}{
		{verdict.Fact{Code: verdict.WholeUnusable, Err: err}, "the recording of all channels is not judged: the recording is clipped"},
		{verdict.Fact{Code: verdict.Uncompared, Err: err}, "the channels are not compared: the recording is clipped"},
		{verdict.Fact{Code: verdict.NoRecording, Channels: three, File: "channel_3.wav"}, "there is no recording of channel 3 (channel_3.wav), so nothing is told of it"},
		{verdict.Fact{Code: verdict.Unusable, Channels: three, Err: err}, "nothing is told of channel 3: the recording is clipped"},
		{verdict.Fact{Code: verdict.TakeUnusable, Channels: three, Take: 2, Err: err}, "take 2 of channel 3 does not count: the recording is clipped"},
		{verdict.Fact{Code: verdict.TakeUnusable, Take: 2, Err: err}, "take 2 of all channels does not count: the recording is clipped"},
		{verdict.Fact{Code: verdict.WireInverted, Channels: three}, "the wire in the recording of channel 3 is upside down, not the channel: turn it, and record again"},
		{verdict.Fact{Code: verdict.WireLevel, Channels: three, Value: -20}, "the wire in the recording of channel 3 is 20.0 dB quieter than in the others, so nothing is told of its level: keep every gain as it is from one recording to the next"},
		{verdict.Fact{Code: verdict.DelaysSet}, "it looks as if the plan's delays were set while recording, unlike what was said, so none are proposed: if so, measure again and do not say so (--as-built)"},
		{verdict.Fact{Code: verdict.NoDelaysSet}, "it looks as if no delays were set while recording, so none are proposed: if so, measure again and say so (--as-built)"},
		{verdict.Fact{Code: verdict.Alike, Channels: []int{4, 5}}, "the recordings of channels 4 and 5 are alike, which they should not be, so nothing is told of them: were the others muted, and is each file the right one?"},
		{verdict.Fact{Code: verdict.Exchanged, Channels: []int{1, 2}}, "channels 1 and 2 look exchanged: exchange their wires at the amplifier, or the names of the two recordings, and measure again"},
		{verdict.Fact{Code: verdict.Silent, Channels: three}, "channel 3 is silent: look for a loose wire or an open string, with the amplifier off"},
		{verdict.Fact{Code: verdict.DeadString, Channels: three, String: 2, Strings: 4, Drivers: []int{7, 12}}, "channel 3: string 2 of 4 does not play (drivers 7, 12): look for an open joint, with the amplifier off"},
		{verdict.Fact{Code: verdict.Unlike, Channels: three, Value: 0.8}, "channel 3 does not fit the plan (80 percent of its energy does not), so nothing is told of it: check that it is this channel, its delay, and the microphone's place"},
		{verdict.Fact{Code: verdict.Vague, Channels: three, Value: 0.45}, "channel 3 hardly fits the plan (45 percent of its energy does not): check that it is this channel, and the microphone's place"},
		{verdict.Fact{Code: verdict.Quiet, Channels: three, Value: -2.5, Error: 0.4}, "channel 3 is 2.5 dB quieter than its siblings, give or take 0.4 dB"},
		{verdict.Fact{Code: verdict.Quiet, Channels: three, Value: -3.5, Error: 0.4, Strings: 3, Beside: true}, "channel 3 is 3.5 dB quieter than its siblings of like arrival, give or take 0.4 dB, as if one of its 3 strings did not play; measure its impedance, which tells"},
		{verdict.Fact{Code: verdict.Loud, Channels: three, Value: 2.3, Error: 0.4}, "channel 3 is 2.3 dB louder than its siblings, give or take 0.4 dB: check its gain, and that its strings are wired as planned"},
		{verdict.Fact{Code: verdict.SeemsReversed, Channels: three, Value: 3.4, Error: 0.6}, "channel 3 seems to be in reverse polarity: with that the seats are 0.6 dB off their plans in place of 3.4 dB; record the channels one by one, which tells"},
		{verdict.Fact{Code: verdict.SeemsSilent, Channels: three, Value: 3.4, Error: 0.6}, "channel 3 seems to be silent: with that the seats are 0.6 dB off their plans in place of 3.4 dB; record the channels one by one, which tells"},
		{verdict.Fact{Code: verdict.Reversed, Channels: three}, "channel 3 is in reverse polarity: swap its two wires"},
		{verdict.Fact{Code: verdict.Halves, Channels: three, Others: []int{1, 2, 4}}, "channel 3 is in reverse polarity to channels 1, 2 and 4: find out with a battery which of both are right, and swap the wires of the others"},
		{verdict.Fact{Code: verdict.Late, Channels: []int{3, 4}, Times: []float64{583e-6, -3e-3}}, "channel 3 comes 583 us late, channel 4 comes 3.0 ms early: set the delays that are proposed, or look for what stands elsewhere than planned"},
		{verdict.Fact{Code: verdict.NoWire}, "without a wire from the player beside the microphone the channels' times cannot be compared, so nothing is told of delays"},
		{verdict.Fact{Code: verdict.AllInverted}, "all channels are upside down against the wire, which the amplifier or the microphone may do as well: which way round they all are is not told"},
		{verdict.Fact{Code: verdict.SeatUnusable, Seat: "mat", Err: err}, `the recording at "mat" is not judged: the recording is clipped`},
		{verdict.Fact{Code: verdict.Silent, Channels: three, Seat: "mat"}, `at "mat": channel 3 is silent: look for a loose wire or an open string, with the amplifier off`},
		{verdict.Fact{Code: verdict.SeatAlone, Seat: "mat"}, `one recording, at "mat", does not tell what is lost at a seat: record at others, too, or the channels one by one at the spot`},
		{verdict.Fact{Code: verdict.SeatWireLevel, Seat: "mat", Value: 6}, `the wire in the recording at "mat" is 6.0 dB louder than at the others, so what is lost there is off by as much: keep every gain as it is from one recording to the next`},
		{verdict.Fact{Code: verdict.SeatsOtherCase}, "most recordings at seats fit far better with the delays the other way, set or not set, than was said: was --as-built given as it was? What is lost at the seats is held against what was said"},
		{verdict.Fact{Code: verdict.SeatsNoWire}, "without a wire from the player in every recording at a seat their levels cannot be compared, so each is matched to its own plan, and how much louder one seat is than another is not told"},
		{verdict.Fact{Code: verdict.LevelUnjudged}, "the level of the whole array is not judged before it is clear whether the delays were set"},
	} {
		t.Run(string(test.fact.Code), func(t *testing.T) {
			if got := words.Measured(test.fact); got != test.want {
				t.Errorf("%q, want %q", got, test.want)
			}
		})
	}
	for _, test := range []struct {
		caution recording.Caution
		want    string
	}{
		{recording.Caution{Code: recording.Noisy, Hz: 1000, DB: 7}, "the third of an octave at 1 kHz is only 7 dB above the noise"},
		{recording.Caution{Code: recording.BeyondTable, Hz: 200, HighHz: 8000}, "the microphone's correction runs from 200 to 8000 Hz; beyond, its ends are held"},
		{recording.Caution{Code: recording.BelowGate, Hz: 120}, "the gate leaves nothing honest below 120 Hz"},
		{recording.Caution{Code: recording.Overloaded, Hz: 150, HighHz: 900}, "from 150 to 900 Hz the third and fifth harmonics are less than 20 dB under the tone: this looks overloaded, in the recorder, the amplifier or the drivers, and the curve is not to be trusted; turn down and record again"},
		{recording.Caution{Code: recording.GainChanged, DB: 1.3}, "the marker after the sweep is +1.3 dB over the one before it, which is the same: the gain changed while recording; switch automatic gain off"},
	} {
		t.Run(string(test.caution.Code), func(t *testing.T) {
			if got := words.Recording(test.caution); got != test.want {
				t.Errorf("%q, want %q", got, test.want)
			}
		})
	}
}
