package words_test

import (
	"errors"
	"testing"

	"pappus/layout"
	"pappus/render/words"
	"pappus/timing"
	"pappus/timing/impedancefit"
	"pappus/timing/intake"

	"github.com/google/go-cmp/cmp"
)

func TestReasons(t *testing.T) {
	for _, test := range []struct {
		reason intake.Reason
		want   string
	}{
		{intake.Reason{Code: intake.Unreadable, Err: errors.New("a.csv: too few points")}, "a.csv: too few points"},
		{intake.Reason{Code: intake.Copy, Other: "d3"}, "the very table of d3: measure this one"},
		{intake.Reason{Code: intake.Odd, Value: intake.Resonance, Is: 115.26, Want: 150}, "resonance 115.3 Hz, the middle of all is 150 Hz"},
		{intake.Reason{Code: intake.Odd, Value: intake.Q, Is: 0.6, Want: 0.84}, "Qts 0.6, the middle of all is 0.84"},
		{intake.Reason{Code: intake.Odd, Value: intake.Level, Is: -3.04, Want: 0.02}, "level -3.0 dB, the middle of all is +0.0 dB"},
		{intake.Reason{Code: intake.Odd, Value: intake.Response, Is: 2.25}, "its response is uneven by 2.2 dB against the others: listen for a rub or a buzz, or record it again"},
		{intake.Reason{Code: intake.OffDesign, Value: intake.Ohm, Is: 3.6, Want: 7.1}, "Re 3.6 ohm, the design has 7.1 ohm"},
		{intake.Reason{Code: intake.Rough, Is: 0.043, Want: 0.004}, "its impedance is that of a driver only within 4.3 percent, where the middle of all has 0.4: does the coil rub?"},
		{intake.Reason{Code: intake.Turned}, "plays the other way round: swap its two wires"},
		{intake.Reason{Code: intake.Second, Other: "d2.zma"}, "d2.zma was not looked at: there is another file of that name"},
	} {
		if diff := cmp.Diff(test.want, words.Reason(test.reason)); diff != "" {
			t.Error(diff)
		}
	}
	if diff := cmp.Diff("plays the other way round: swap its two wires; the very table of d3: measure this one", words.Reasons([]intake.Reason{{Code: intake.Turned}, {Code: intake.Copy, Other: "d3"}})); diff != "" {
		t.Error(diff)
	}
}

func TestLot(t *testing.T) {
	l := &intake.Lot{Drivers: []intake.Driver{{Name: "a", Fit: &impedancefit.Fit{}}, {Name: "b", Heard: &intake.Heard{}}, {Name: "c", Reasons: []intake.Reason{{Code: intake.Copy}}}},
		Ignored:   []string{"1", "2", "3", "4", "5", "6"},
		OffDesign: []intake.Reason{{Code: intake.OffDesign, Value: intake.Resonance, Is: 180, Want: 150}}}
	l.Middles[intake.Resonance].Count = 1
	if diff := cmp.Diff("3 drivers: 2 good, 1 rejected. The impedance of 1 could be read, and the sweep as heard of 1.", words.Lot(l)); diff != "" {
		t.Error(diff)
	}
	if diff := cmp.Diff([]string{
		"the whole lot is off the design: resonance 180 Hz, the design has 150 Hz. Write the lot's own values into the design and plan again.",
		"fewer than five drivers cannot be held against each other: only the design judges them.",
		"6 files of the folder are neither a table nor a recording: 1, 2, 3, 4, 5 and so on.",
	}, words.LotNotes(l)); diff != "" {
		t.Error(diff)
	}
}

func TestDeal(t *testing.T) {
	p := &timing.Plan{Spot: timing.Spot{Array: &layout.Array{Name: "a lantern", Mounts: []layout.Mount{{ID: 7}, {ID: 9}}}, Arrivals: make([]timing.Arrival, 2), Channels: []timing.Channel{{Channel: layout.Channel{ID: 3}}}}}
	p.Array.Wiring.MinimumLoad, p.Array.Driver.PowerHandling, p.Array.Driver.Small.Reach = 4, 2, 0.0015
	l := &intake.Lot{Drivers: []intake.Driver{{Name: "a"}, {Name: "b"}, {Name: "c"}}}
	d := &intake.Deal{Plan: p, Lacking: 2}
	if diff := cmp.Diff([]string{"The design needs 2 drivers; 2 more good ones are lacking, so none are given places yet."}, words.Deal(l, d)); diff != "" || words.DealCautions(d) != nil || words.DealCautions(nil) != nil {
		t.Error(diff)
	}
	d = &intake.Deal{Plan: p, Places: make([]intake.Place, 2), Spares: []int{2}, AsCome: intake.Dealt{Scatter: 0.06, UnlikeHeard: timing.UnlikeHeard{Rise: 2.1}},
		Sorted: intake.Dealt{Scatter: 0.03, UnlikeHeard: timing.UnlikeHeard{Rise: 1, LeastOhm: 3.5, Watt: 2.5, WattMount: 1, Travel: 0.0016}}}
	if diff := cmp.Diff([]string{
		"What each driver gives scatters by 0.51 dB as they come and by 0.26 dB sorted (RMS, half by what its place weighs at the spot).",
		"The cone that moves furthest against its twin moves 2.1 dB further as they come, 1.0 dB sorted.",
		"The sum at the spot loses next to nothing by their differences: what sorting is for here is loads and travel.",
		"1 spare to keep: c.",
	}, words.Deal(l, d)); diff != "" {
		t.Error(diff)
	}
	if diff := cmp.Diff([]string{
		"channel 3 loads the amplifier with 3.5 ohm at least, below its minimum of 4 ohm.",
		"the driver on mount 9 gets up to 2.5 W, and stands 2 W long: turn down by 1.0 dB.",
		"the cone on mount 7 moves up to 1.6 mm, beyond its 1.5 mm: turn down by 0.6 dB, or set the high-pass higher.",
	}, words.DealCautions(d)); diff != "" {
		t.Error(diff)
	}
}
