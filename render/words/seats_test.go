package words

import (
	"strings"
	"testing"

	"pappus/layout"
	"pappus/timing"
	"pappus/timing/seats"

	"github.com/google/go-cmp/cmp"
)

// seated is a plan for three seats.
func seated(aim string, ours, middle, without, bound seats.Figures) *timing.Plan {
	p := planned()
	p.Array.Seats = []layout.Seat{{Name: "door"}, {Name: "window"}, {Name: "mat"}}
	p.Seating = &timing.Seating{Aim: aim, MiddleSeat: 1, Planned: ours, Middle: middle, Without: without, Bound: bound}
	return p
}

func TestSeats(t *testing.T) {
	of := func(worst, mean, between float64) seats.Figures {
		return seats.Figures{Worst: worst, Mean: mean, Between: between, Seat: []float64{worst - 1, worst - 2, worst}}
	}
	even := of(7.1, 7.47, 0.87)
	for _, test := range []struct {
		name string
		plan *timing.Plan
		want []string
	}{
		{"one seat's delays are worse than none", seated("even", even, of(11.64, 10.45, 5.62), of(9.97, 11.95, 2.05), of(4.51, 4.67, 0.5)), []string{
			`One set of delays serves 3 seats, for little loss at each seat and as much at one as at another: the worst, "mat", loses 7.1 dB against all drivers in step; over seats and thirds it is 7.5 dB on the mean, and 0.9 dB between seats.`,
			`Delays for the middle seat alone, "window", would lose 11.6 dB at the worst seat, and no delays at all 10.0 dB: for 3 people one seat's delays are worse than none.`,
			`No processing of these channels, not even a filter for each, loses less than 4.5 dB at the worst seat. Drivers that differ by 1 dB and 10 us from one to the next, as cheap ones do, make no plan more even than about 1 dB.`,
		}},
		{"no better than none, and not even", seated("worst", of(6.08, 7.07, 2.78), of(10.1, 10.4, 5), of(9.97, 11.95, 2.05), of(4.51, 4.67, 0.5)), []string{
			`One set of delays serves 3 seats, for the least loss where most is lost: the worst, "mat", loses 6.1 dB against all drivers in step; over seats and thirds it is 7.1 dB on the mean, and 2.8 dB between seats.`,
			`Delays for the middle seat alone, "window", would lose 10.1 dB at the worst seat, and no delays at all 10.0 dB: for 3 people one seat's delays are no better than none.`,
			`No processing of these channels, not even a filter for each, loses less than 4.5 dB at the worst seat.`,
		}},
		{"no bound, and not even", seated("round", of(5, 4, 2), of(11, 5, 2), of(9.97, 11.95, 2.05), seats.Figures{}), []string{
			`One set of delays serves 3 seats, to be even all round: the worst, "mat", loses 5.0 dB against all drivers in step; over seats and thirds it is 4.0 dB on the mean, and 2.0 dB between seats.`,
			`Delays for the middle seat alone, "window", would lose 11.0 dB at the worst seat, and no delays at all 10.0 dB: for 3 people one seat's delays are worse than none.`,
		}},
		{"one driver", seated("even", of(0.1, 0, 0), of(0.14, 0, 0), of(0.14, 0, 0), of(0, 0, 0)), []string{"At none of the 3 seats is anything lost, even without delays."}},
		{"a channel for each", seated("even", of(5, 5, 2), of(9, 9, 6), of(10, 12, 2), of(0.1, 0, 0)), []string{
			`One set of delays serves 3 seats, for little loss at each seat and as much at one as at another: the worst, "mat", loses 5.0 dB against all drivers in step; over seats and thirds it is 5.0 dB on the mean, and 2.0 dB between seats.`,
			`Delays for the middle seat alone, "window", would lose 9.0 dB at the worst seat, and no delays at all 10.0 dB.`,
		}},
		{"near the bound, and the middle seat's would do", seated("mean", of(5, 4, 2), of(4, 5, 2), of(9.97, 11.95, 2.05), of(4.2, 3.9, 2)), []string{
			`One set of delays serves 3 seats, for the least loss on the whole: the worst, "mat", loses 5.0 dB against all drivers in step; over seats and thirds it is 4.0 dB on the mean, and 2.0 dB between seats.`,
			`Delays for the middle seat alone, "window", would lose 4.0 dB at the worst seat, and no delays at all 10.0 dB. The aim asks for more than the worst seat; aim = "worst" under [seats] would lose less there.`,
			`No processing of these channels, not even a filter for each, loses less than 4.2 dB at the worst seat, so only more channels, or other places for them, would bring much.`,
		}},
	} {
		t.Run(test.name, func(t *testing.T) {
			if d := cmp.Diff(test.want, Seats(&test.plan.Spot)); d != "" {
				t.Error(d)
			}
		})
	}
	if got := Seats(&planned().Spot); got != nil {
		t.Errorf("of one spot: %q", got)
	}
}

// Where the limits stand of what is told: a difference of 0.15 dB, and plans about as even
// as drivers are.
func TestSeatsLimits(t *testing.T) {
	of := func(worst, between float64) seats.Figures {
		return seats.Figures{Worst: worst, Between: between, Seat: []float64{0, 0, worst}}
	}
	for _, test := range []struct {
		name                           string
		middle, none, between, bound   float64
		worse, noBetter, drivers, near bool
	}{
		{"worse", 10.17, 10, 2, 2, true, false, false, false},
		{"about the same, above", 10.14, 10, 2, 2, false, true, false, false},
		{"about the same, below", 9.86, 10, 2, 2, false, true, false, false},
		{"better", 9.83, 10, 2, 2, false, false, false, false},
		{"as even as drivers", 9, 10, 1.45, 2, false, false, true, false},
		{"less even", 9, 10, 1.55, 2, false, false, false, false},
		{"near the bound", 9, 10, 2, 4.1, false, false, false, true},
		{"further", 9, 10, 2, 3.9, false, false, false, false},
	} {
		p := seated("even", of(5, test.between), of(test.middle, 1), of(test.none, 1), of(test.bound, 1))
		text := strings.Join(Seats(&p.Spot), " ")
		for words, want := range map[string]bool{"worse than none": test.worse, "no better than none": test.noBetter, "10 us from one": test.drivers, "only more channels": test.near} {
			if strings.Contains(text, words) != want {
				t.Errorf("%s: %q is told: %v", test.name, words, !want)
			}
		}
	}
}

// Seats that lose by the plan are named, up to three.
func TestLosers(t *testing.T) {
	for _, test := range []struct {
		name          string
		planned, none []float64
		want          string
	}{
		{"none", []float64{5, 5, 5.14}, []float64{9, 9, 5}, ""},
		{"one", []float64{5, 5, 5.16}, []float64{9, 9, 5}, `With the plan's delays "mat" loses more than without any, for what the others gain.`},
		{"two", []float64{6, 5, 6}, []float64{5, 9, 5}, `With the plan's delays "door" and "mat" lose more than without any, for what the others gain.`},
		{"four", []float64{6, 6, 6, 6, 1}, []float64{5, 5, 5, 5, 5}, `With the plan's delays "door", "window", "mat" and 1 other lose more than without any, for what the others gain.`},
	} {
		p := seated("worst", seats.Figures{Seat: test.planned}, seats.Figures{}, seats.Figures{Seat: test.none}, seats.Figures{})
		p.Array.Seats = append(p.Array.Seats, layout.Seat{Name: "chair"}, layout.Seat{Name: "stool"})
		if got := losers(&p.Spot); got != test.want {
			t.Errorf("%s: %s", test.name, got)
		}
	}
}

// A plan for seats says for how many before it says where it is heard.
func TestWhere(t *testing.T) {
	p := seated("even", seats.Figures{}, seats.Figures{}, seats.Figures{}, seats.Figures{})
	p.Array.Spot.X = 2
	const heard = "heard 2.00 m in front along the floor, ears level with its middle"
	if got := Where(p); got != "with delays for 3 seats, "+heard {
		t.Error(got)
	}
	p.Seating = nil
	if got := Where(p); got != heard {
		t.Error(got)
	}
}

func TestSeatCounts(t *testing.T) {
	p := seated("even", seats.Figures{}, seats.Figures{}, seats.Figures{}, seats.Figures{})
	if got := SeatCounts(&p.Spot); got != "" {
		t.Errorf("without counts: %q", got)
	}
	p.Seating.Counts = []timing.SeatCount{{Channels: 1, Figures: seats.Figures{Worst: 10}}, {Channels: 8, Figures: seats.Figures{Worst: 7.1}}}
	if got, want := SeatCounts(&p.Spot), "From 1 channel to 8 the worst seat's loss goes from 10.0 dB to 7.1 dB, each number with its own best delays."; got != want {
		t.Error(got)
	}
}

func TestSeatStrings(t *testing.T) {
	none := seats.Figures{}
	for _, test := range []struct {
		name    string
		strings []timing.SeatStrings
		want    string
	}{
		{"no choice", []timing.SeatStrings{{Longest: 2, Chosen: true}}, ""},
		{"shorter", []timing.SeatStrings{{Longest: 2, Value: 9.5, Louder: 10.1, Chosen: true}, {Longest: 7, Value: 9}},
			"Strings of at most 2 drivers cost the seats 0.5 dB of the aim against strings of up to 7, and are 10.1 dB louder there from the same amplifier."},
		{"shorter and no worse", []timing.SeatStrings{{Longest: 1, Value: 8.9, Louder: 6, Chosen: true}, {Longest: 7, Value: 9}},
			"Strings of at most 1 driver cost the seats 0.0 dB of the aim against strings of up to 7, and are 6.0 dB louder there from the same amplifier."},
		{"any length", []timing.SeatStrings{{Longest: 2, Value: 11, Louder: 10.1}, {Longest: 7, Value: 9, Chosen: true}},
			"Strings are of up to 7 drivers: shorter ones would cost the seats more than 1.0 dB of the aim."},
	} {
		p := seated("even", none, none, none, none)
		p.Seating.Strings = test.strings
		if got := SeatStrings(&p.Spot); got != test.want {
			t.Errorf("%s: %s", test.name, got)
		}
	}
}

// TestCompareSeats: whose seats they are, and who is a guest there.
func TestCompareSeats(t *testing.T) {
	p := seated("even", seats.Figures{}, seats.Figures{}, seats.Figures{}, seats.Figures{})
	p.Array.Name = "Corner"
	for _, test := range []struct{ got, want string }{
		{CompareSeats(p, false), `short of all drivers in step, from 500 Hz to 8 kHz, without the room, each design at its own seats; aim: what "even" makes of it, less is better`},
		{CompareSeats(p, true), `short of all drivers in step, from 500 Hz to 8 kHz, without the room, each design at its own seats; aim: what "even" makes of it, less is better; *: planned for one spot, and judged at the seats of Corner`},
		{OfComparedSeats(p, 0).Below, "at the 3 seats of Corner, lost against all drivers in step, 500 Hz to 8 kHz, without the room"},
		{OfComparedSeats(p, 1).Below, "at the 3 seats of Corner, lost against all drivers in step, 500 Hz to 8 kHz, without the room; without 1 design of other seats"},
	} {
		if test.got != test.want {
			t.Errorf("%q, want %q", test.got, test.want)
		}
	}
}

// TestLevelAtSeats: a correction is the spot's, which is told where there are seats.
func TestLevelAtSeats(t *testing.T) {
	if got := LevelAtSeats(planned(), nil); got != "" {
		t.Errorf("one spot: %q", got)
	}
	got := LevelAtSeats(seated("even", seats.Figures{}, seats.Figures{}, seats.Figures{}, seats.Figures{}), nil)
	says(t, got, []string{"at the spot alone", "at every seat by as much"}, nil)
}

// TestSeatFilters: filters for seats are told with what they bring, and offered where they pay.
func TestSeatFilters(t *testing.T) {
	f := &timing.SeatFilters{Planned: seats.Figures{Mean: 7.8, Between: 0.82},
		Filtered: seats.Filtered{Taps: [][]float64{{0, 1, 0, 0}}, Lead: 0.001, Figures: seats.Figures{Mean: 7.7, Between: 0.41}}}
	const what = "For the seats a filter of 4 taps for each channel, after its delay, brings what is between seats from 0.8 to 0.4 dB and the mean loss from 7.8 to 7.7 dB"
	if got := SeatFilters(f); got != what+", which is not worth setting." {
		t.Errorf("%q", got)
	}
	f.Pays = true
	if got := SeatFilters(f); got != what+": seats_channel_1.wav and so on, all 1.00 ms late alike. Drivers that differ by 1 dB and 10 us from one to the next leave about 1 dB between seats with any filter." {
		t.Errorf("%q", got)
	}
	if got := SeatFilters(nil); got != "" {
		t.Errorf("%q", got)
	}
}
