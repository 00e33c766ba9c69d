package table_test

import (
	"bytes"
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"

	"pappus/layout"
	"pappus/render/table"
	"pappus/timing"
	"pappus/timing/recording"
	"pappus/timing/seats"
	"pappus/timing/verdict"

	"github.com/google/go-cmp/cmp"
	"gonum.org/v1/gonum/spatial/r3"
)

// seated is the demo's plan for two seats, with made-up losses.
func seated(t *testing.T) *timing.Plan {
	t.Helper()
	p, a := *demo(t), *demo(t).Array
	p.Array = &a
	a.Seats = []layout.Seat{{Name: "cushion by the window", At: r3.Vec{X: 1.7, Y: 1, Z: 0.6}, Weight: 1}, {Name: "cushion by the door, in the corner", At: r3.Vec{X: 1.7, Y: -1, Z: 0.6}, Weight: 2}}
	of := func(worst, mean, between float64) seats.Figures {
		return seats.Figures{Worst: worst, Mean: mean, Between: between, Seat: []float64{worst, worst - 1}, Band: [][]float64{{worst + 1, worst + 2}, {worst + 3, worst + 4}}}
	}
	p.Seating = &timing.Seating{Aim: "even", Thirds: []float64{1000, 1258.925}, Planned: of(7, 7.5, 0.9), Middle: of(11.5, 10.5, 5.5), Without: of(10, 12, 2), Bound: of(4.5, 4.75, 0.5),
		Counts:  []timing.SeatCount{{Channels: 4, Longest: 7, Figures: of(7.2, 7.8, 1)}, {Channels: 8, Longest: 5, Figures: of(7, 7.5, 0.9)}},
		Strings: []timing.SeatStrings{{Longest: 2, Value: 9.5, Figures: of(7.8, 7.9, 0.9), Louder: 10.1, Chosen: true}, {Longest: 5, Value: 9, Figures: of(7, 7.5, 0.9)}}}
	return &p
}

func TestSeats(t *testing.T) {
	p := seated(t)
	for _, test := range []struct {
		name  string
		write func(b *bytes.Buffer) error
		want  string
	}{
		{"seats", func(b *bytes.Buffer) error { return table.Seats(b, p) }, `seat,name,x_m,y_m,z_m,weight,planned_db,middle_alone_db,without_db,bound_db,where
1,cushion by the window,1.7000,1.0000,0.6000,1.0000,7.000,11.500,10.000,4.500,"1.70 m in front along the floor, 1.00 m to the loudspeaker's left, ears 0.63 m above the table or floor"
2,"cushion by the door, in the corner",1.7000,-1.0000,0.6000,2.0000,6.000,10.500,9.000,3.500,"1.70 m in front along the floor, 1.00 m to the loudspeaker's right, ears 0.63 m above the table or floor"
`},
		{"thirds", func(b *bytes.Buffer) error { return table.SeatThirds(b, p) }, `seat,name,third_hz,third,planned_db,middle_alone_db,without_db,bound_db
1,cushion by the window,1000.0,1k,8.000,12.500,11.000,5.500
1,cushion by the window,1258.9,1.25k,9.000,13.500,12.000,6.500
2,"cushion by the door, in the corner",1000.0,1k,10.000,14.500,13.000,7.500
2,"cushion by the door, in the corner",1258.9,1.25k,11.000,15.500,14.000,8.500
`},
		{"counts", func(b *bytes.Buffer) error { return table.SeatCounts(b, p) }, "channels,longest_string,worst_db,mean_db,between_db\n4,7,7.200,7.800,1.000\n8,5,7.000,7.500,0.900\n"},
		{"strings", func(b *bytes.Buffer) error { return table.SeatStrings(b, p) }, "longest_string,aim_db,worst_db,mean_db,between_db,louder_db,chosen\n2,9.500,7.800,7.900,0.900,10.10,true\n5,9.000,7.000,7.500,0.900,0.00,false\n"},
	} {
		t.Run(test.name, func(t *testing.T) {
			var b bytes.Buffer
			if err := test.write(&b); err != nil {
				t.Fatal(err)
			}
			if d := cmp.Diff(test.want, b.String()); d != "" {
				t.Error(d)
			}
		})
	}
}

// TestSeatsOnScreen: the plan's screen tells the price for each seat, the channels' what
// numbers of them leave; neither a word where there is one spot.
func TestSeatsOnScreen(t *testing.T) {
	p := seated(t)
	screens := func(p *timing.Plan) (plan, channels string) {
		var b bytes.Buffer
		survey, err := timing.Look(p)
		if err != nil {
			t.Fatal(err)
		}
		if err := table.Screen(&b, p, survey, false); err != nil {
			t.Fatal(err)
		}
		plan = b.String()
		b.Reset()
		if err := table.ChannelScreen(&b, p, settings(t, p), false); err != nil {
			t.Fatal(err)
		}
		return plan, b.String()
	}
	plan, channels := screens(p)
	const want = `
lost at each seat, dB          weight  planned   middle     none    bound
cushion by the window            1.00      7.0     11.5     10.0      4.5
cushion by the door, in the…     2.00      6.0     10.5      9.0      3.5
the worst seat                             7.0     11.5     10.0      4.5
mean over thirds                           7.5     10.5     12.0      4.8
between seats                              0.9      5.5      2.0      0.5
`
	if !strings.Contains(plan, want) || !strings.Contains(strings.Join(strings.Fields(plan), " "), "for 2 people one seat's delays are worse than none") {
		t.Errorf("the plan's screen:\n%s", plan)
	}
	const counts = `channels  in a string  worst seat   mean  between seats, dB lost
       4            7         7.2    7.8            1.0
       8            5         7.0    7.5            0.9 <
  < as many as planned; each with its own best, and strings as the design allows
From 4 channels to 8 the worst seat's loss goes from 7.2 dB to 7.0 dB, each
number with its own best delays.

strings of  worst seat   mean  between seats  louder dB
   up to 2         7.8    7.9            0.9       10.1 <
   up to 5         7.0    7.5            0.9        0.0
  < as planned
Strings of at most 2 drivers cost the seats 0.5 dB of the aim against strings of
up to 5, and are 10.1 dB louder there from the same amplifier.
`
	if !strings.Contains(channels, counts) {
		t.Errorf("the channels' screen:\n%s", channels)
	}
	p.Seating.Bound = seats.Figures{} // not worked out
	if plan, _ := screens(p); !strings.Contains(plan, "the worst seat                             7.0     11.5     10.0        -\n") {
		t.Errorf("without a bound:\n%s", plan)
	}
	p.Array.Seats = slices.Repeat(p.Array.Seats, 13)
	for _, f := range []*seats.Figures{&p.Seating.Planned, &p.Seating.Middle, &p.Seating.Without} {
		f.Seat = slices.Repeat(f.Seat, 13)
	}
	if plan, _ := screens(p); strings.Count(plan, "\ncushion by the") != 24 || !strings.Contains(plan, "\nand 2 seats more in seats.csv\n") {
		t.Errorf("of many seats:\n%s", plan)
	}
	plan, channels = screens(demo(t))
	if strings.Contains(plan+channels, "seat") {
		t.Error("seats are told where there are none")
	}
}

// TestMeasuredSeats: each seat that was recorded, planned beside measured, in the table and on
// the screen.
func TestMeasuredSeats(t *testing.T) {
	p := seated(t)
	planned, measured := p.Seating.Planned, p.Seating.Planned
	measured.Seat, measured.Between = []float64{7.26, 5.5}, 1.1
	v := verdict.Seats{Thirds: p.Seating.Thirds, Planned: planned, Measured: measured, Heard: []verdict.Seat{
		{Index: 0, Name: p.Array.Seats[0].Name, Error: 0.4, Whole: &recording.Measured{}}, {Index: 1, Name: p.Array.Seats[1].Name, Error: 0.2, Whole: &recording.Measured{}}}}
	var b bytes.Buffer
	if err := table.MeasuredSeats(&b, v); err != nil {
		t.Fatal(err)
	}
	want := `seat,name,third_hz,third,planned_db,measured_db,seat_planned_db,seat_measured_db,seat_error_db
1,cushion by the window,1000.0,1k,8.000,8.000,7.000,7.260,0.400
1,cushion by the window,1258.9,1.25k,9.000,9.000,7.000,7.260,0.400
2,"cushion by the door, in the corner",1000.0,1k,10.000,10.000,6.000,5.500,0.200
2,"cushion by the door, in the corner",1258.9,1.25k,11.000,11.000,6.000,5.500,0.200
`
	if diff := cmp.Diff(want, b.String()); diff != "" {
		t.Error(diff)
	}
	b.Reset()
	if err := table.MeasuredScreen(&b, p, verdict.Found{Seats: &v}, false); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{
		"lost at each seat, dB          planned measured    +-\n",
		"cushion by the window              7.0      7.3   0.8\n",
		"cushion by the door, in the…       6.0      5.5   0.4\n",
		"between seats                      0.9      1.1\n",
	} {
		if !strings.Contains(b.String(), want) {
			t.Errorf("no %q in\n%s", want, b.String())
		}
	}
}

// TestCompareAtSeats: designs with seats and guests at them, and one that cannot be there.
func TestCompareAtSeats(t *testing.T) {
	p, other := seated(t), *demo(t)
	at := func(own bool, worst float64) *timing.AtSeats {
		return &timing.AtSeats{Seats: p.Array.Seats, Own: own, Figures: seats.Figures{Worst: worst, Mean: worst + 0.5, Between: 0.94}, Value: worst + 1}
	}
	var b bytes.Buffer
	if err := table.Compare(&b, []timing.Candidate{{Plan: &other, Seats: at(false, 11.6)}, {Plan: p, Seats: at(true, 7.1)}, {Plan: &other}}, false); err != nil {
		t.Fatal(err)
	}
	name := p.Array.Name
	for _, want := range []string{
		"lost at the seats, dB                   worst    mean  between     aim\n",
		fmt.Sprintf("%-37s %7s %7s %8s %7s\n", name+" *", "11.6", "12.1", "0.9", "12.6"),
		fmt.Sprintf("%-37s %7s %7s %8s %7s\n", name, "7.1", "7.6", "0.9", "8.1"),
		fmt.Sprintf("%-37s %7s %7s %8s %7s\n", name, "-", "-", "-", "-"),
		"planned for one spot, and judged at the seats of",
	} {
		if !strings.Contains(b.String(), want) {
			t.Errorf("no %q in\n%s", want, b.String())
		}
	}
}

// TestRound: what is told of a plan all round, as tables and on the screen.
func TestRound(t *testing.T) {
	p := seated(t)
	p.Seating.Round = &timing.Round{Octaves: []float64{1000, 1995.26}, Height: []float64{0.3, 0.6}, Radius: 2, Loud: 0.5,
		Planned: timing.Circles{Gain: [][]float64{{1, 2}, {3, 4}}, Deviation: [][]float64{{0.5, 0.6}, {0.7, 0.8}}},
		Without: timing.Circles{Gain: [][]float64{{0, 0}, {0, 0}}, Deviation: [][]float64{{0.1, 0.2}, {0.3, 0.4}}},
		Front:   []timing.RoundPoint{{Loud: 0, Gain: 0.5, Deviation: 1}, {Loud: 1, Gain: 2, Deviation: 3}}}
	var rows, front, screen bytes.Buffer
	if err := errors.Join(table.Round(&rows, p), table.RoundFront(&front, p)); err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(`height_m,radius_m,octave_hz,octave,gain_db,deviation_db,without_deviation_db
0.300,2.000,1000.0,1k,1.000,0.500,0.100
0.300,2.000,1995.3,2k,2.000,0.600,0.200
0.600,2.000,1000.0,1k,3.000,0.700,0.300
0.600,2.000,1995.3,2k,4.000,0.800,0.400
`, rows.String()); d != "" {
		t.Error(d)
	}
	if d := cmp.Diff("loud,gain_db,deviation_db\n0.000,0.500,1.000\n1.000,2.000,3.000\n", front.String()); d != "" {
		t.Error(d)
	}
	survey, err := timing.Look(p)
	if err != nil {
		t.Fatal(err)
	}
	if err := table.Screen(&screen, p, survey, false); err != nil {
		t.Fatal(err)
	}
	const want = `
all round, dB             per octave, circles by heights above the table or floor
                           1k     2k
louder, 0.33 m            1.0    2.0
louder, 0.63 m            3.0    4.0
uneven, 0.33 m            0.5    0.6
uneven, 0.63 m            0.7    0.8
without, 0.33 m           0.1    0.2
without, 0.63 m           0.3    0.4
`
	if !strings.Contains(screen.String(), want) || !strings.Contains(screen.String(), "2.5 dB\nlouder on the mean") {
		t.Errorf("the screen:\n%s", screen.String())
	}
}
