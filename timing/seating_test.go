package timing_test

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"testing"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/timing"
	"pappus/timing/seats"

	"github.com/google/go-cmp/cmp"
	"gonum.org/v1/gonum/spatial/r3"
)

// arcOf seats people 2 m from the demo's axis along the floor at angles in degrees, ears 0.6 m
// above the body's centre, and their heads held still.
func arcOf(t testing.TB, degrees ...float64) *layout.Array {
	t.Helper()
	d := design.Default()
	d.Seating = design.Seating{Aim: "even"}
	for _, deg := range degrees {
		sin, cos := math.Sincos(deg * math.Pi / 180)
		d.Seats = append(d.Seats, design.Seat{Name: "cushion", At: r3.Vec{X: 2 * cos, Y: 2 * sin, Z: 0.6}, Weight: 1})
	}
	a, err := layout.Build(d)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

func spotOf(t testing.TB, a *layout.Array) *timing.Spot {
	t.Helper()
	p, err := timing.NewPlanner(a)
	if err != nil {
		t.Fatal(err)
	}
	s, err := p.Spot(a.Spot)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// TestSeatsPrice: without delays and with delays for the middle seat alone the demo loses at
// five seats and at twelve all round what an independent prototype of the same physics found
// (figures to 0.01 dB, its delays in whole samples); delays for all seats lose less.
func TestSeatsPrice(t *testing.T) {
	round := make([]float64, 12)
	for i := range round {
		round[i] = 30 * float64(i)
	}
	for _, c := range []struct {
		name            string
		degrees         []float64
		without, middle [3]float64 // worst, mean, between
		even            float64    // at most
	}{
		{"five seats", []float64{-60, -30, 0, 30, 60}, [3]float64{9.97, 11.95, 2.05}, [3]float64{11.64, 10.45, 5.62}, 8.8},
		{"all round", round, [3]float64{10.41, 12.14, 2.11}, [3]float64{15.43, 13.83, 5.68}, 11.5},
	} {
		t.Run(c.name, func(t *testing.T) {
			a := arcOf(t, c.degrees...)
			a.Spot = a.Seats[slices.Index(c.degrees, 0)].At
			s := spotOf(t, a)
			figures := func(f seats.Figures) [3]float64 { return [3]float64{f.Worst, f.Mean, f.Between} }
			for i, want := range c.without {
				if got := figures(s.Seating.Without)[i]; math.Abs(got-want) > 0.07 {
					t.Errorf("without delays %v, want %v", figures(s.Seating.Without), c.without)
				}
			}
			if got := seats.Even.Of(s.Seating.Planned); got > c.even {
				t.Errorf("planned: %v, worth %g", figures(s.Seating.Planned), got)
			}
			for i, want := range c.middle { // with other groups: here strings count, too
				if got := figures(s.Seating.Middle)[i]; math.Abs(got-want) > 1 {
					t.Errorf("for the middle seat %v, found before %v", figures(s.Seating.Middle), c.middle)
				}
			}
		})
	}
}

// TestSeatsOfOne: one seat is a spot.
func TestSeatsOfOne(t *testing.T) {
	one := arcOf(t, 20)
	one.Spot = one.Seats[0].At
	alone := *one
	alone.Seats = nil
	got, want := spotOf(t, one), spotOf(t, &alone)
	if got.Seating != nil {
		t.Error("a seating of one")
	}
	if d := cmp.Diff(want.Response, got.Response); d != "" {
		t.Error(d)
	}
}

// TestSeatsHoldChannels: wherever the spot is, the channels serve the seats; another planner
// that knows them does not look again.
func TestSeatsHoldChannels(t *testing.T) {
	a := arcOf(t, -40, 40)
	p, err := timing.NewPlanner(a)
	if err != nil {
		t.Fatal(err)
	}
	first, err := p.Spot(a.Seats[0].At)
	if err != nil {
		t.Fatal(err)
	}
	other, err := timing.NewPlanner(a)
	if err != nil {
		t.Fatal(err)
	}
	other.Know(first)
	second, err := other.Spot(r3.Vec{X: 1.2, Y: 0.1, Z: 0.3})
	if err != nil {
		t.Fatal(err)
	}
	if first.Seating != second.Seating {
		t.Error("the seats were planned for anew")
	}
	for c := range first.Channels {
		x, y := first.Channels[c], second.Channels[c]
		if !slices.Equal(x.Mounts, y.Mounts) || math.Abs((x.Delay-first.Channels[0].Delay)-(y.Delay-second.Channels[0].Delay)) > 1e-12 {
			t.Errorf("channel %d: %v, %v", c+1, x, y)
		}
	}
}

// TestSeatsByHand: channels laid out by hand keep their drivers and the delays that are set;
// a free one is found.
func TestSeatsByHand(t *testing.T) {
	a := byHand(t, 20e-6, 100, 0, 300)
	a.Seats, a.Seating = arcOf(t, -40, 0, 40).Seats, layout.Seating{Aim: "worst"}
	a.Channels[1].Delay = math.NaN()
	s := spotOf(t, a)
	if math.Abs(s.Channels[0].Delay-100e-6) > 1e-12 || math.Abs(s.Channels[2].Delay-300e-6) > 1e-12 {
		t.Errorf("delays %g, %g", s.Channels[0].Delay, s.Channels[2].Delay)
	}
	least := s.Seating.Planned.Worst
	for _, us := range []float64{0, 100, 200, 300, 400} {
		b := *a
		b.Channels = slices.Clone(a.Channels)
		b.Channels[1].Delay = us * 1e-6
		if tried := spotOf(t, &b).Seating.Planned.Worst; tried < least-1e-9 {
			t.Errorf("%g us lose %g dB, the free delay %g us %g dB", us, tried, 1e6*s.Channels[1].Delay, least)
		}
	}
}

// TestSeatsQuickly: a dragged seat has its answer at once, nearly as good, and a place that no
// sound reaches is an error.
func TestSeatsQuickly(t *testing.T) {
	a := arcOf(t, -30, 30)
	p, err := timing.NewPlanner(a)
	if err != nil {
		t.Fatal(err)
	}
	quick, err := p.Seats(a.Spot, a.Seats)
	if err != nil {
		t.Fatal(err)
	}
	full, err := p.Spot(a.Spot)
	if err != nil {
		t.Fatal(err)
	}
	if q, f := seats.Even.Of(quick.Seating.Planned), seats.Even.Of(full.Seating.Planned); q > f+1.5 || len(quick.Seating.Counts) > 0 {
		t.Errorf("quickly %g dB, in full %g dB", q, f)
	}
	moved := slices.Clone(a.Seats)
	moved[1].At = r3.Vec{}
	if _, err := p.Seats(a.Spot, moved); !errors.Is(err, layout.ErrInside) {
		t.Error(err)
	}
}

// TestSeatsOnStrings: the strings of the plan are the shortest whose aim is within the
// rule's bound of that of any strings.
func TestSeatsOnStrings(t *testing.T) {
	s := spotOf(t, arcOf(t, -60, -30, 0, 30, 60))
	rows := s.Seating.Strings
	if len(rows) < 2 {
		t.Fatalf("%+v", rows)
	}
	free := rows[len(rows)-1]
	for i, r := range rows {
		if r.Chosen != (i == slices.IndexFunc(rows, func(o timing.SeatStrings) bool { return o.Value <= free.Value+timing.WorthOctave })) {
			t.Errorf("row %d: %+v", i, r)
		}
	}
	if rows[0].Louder < 6 {
		t.Errorf("the shortest strings are only %g dB louder", rows[0].Louder)
	}
}

// TestSeatsLossOnMap: at a seat's place in open air the map has the seat's loss.
func TestSeatsLossOnMap(t *testing.T) {
	a := arcOf(t, -30, 30)
	a.Surface = layout.Surface{} // whose echo a map of timing leaves out
	s := spotOf(t, a)
	c, err := timing.Cover(s, timing.Slice{Origin: s.Array.Seats[1].At, Right: r3.Vec{X: 1}, Up: r3.Vec{Y: 1}, Step: 0.01, Columns: 1, Rows: 1})
	if err != nil {
		t.Fatal(err)
	}
	if got, want := c.Loss[0], s.Seating.Planned.Seat[1]; math.Abs(got-want) > 0.15 { // other frequencies
		t.Errorf("%g dB, at the seat %g dB", got, want)
	}
}

// TestOwnForSeats: channels for seats are not those of the counts at one spot.
func TestOwnForSeats(t *testing.T) {
	p := &timing.Plan{Spot: timing.Spot{Array: &layout.Array{}, Channels: make([]timing.Channel, 2), Seating: &timing.Seating{}}}
	if own, at := p.Own(); own.Split != "seats" || own.Channels != 2 || at != -1 {
		t.Errorf("%+v at %d", own, at)
	}
}

// BenchmarkSeatDragged is what the page computes while one of several seats is dragged.
func BenchmarkSeatDragged(b *testing.B) {
	for _, seats := range []int{5, 40} {
		b.Run(fmt.Sprint(seats), func(b *testing.B) {
			var degrees []float64
			for i := range seats {
				degrees = append(degrees, 120*float64(i)/float64(seats-1)-60)
			}
			a := arcOf(b, degrees...)
			a.Seating.Head = 0.15
			p, err := timing.NewPlanner(a)
			if err != nil {
				b.Fatal(err)
			}
			moved := slices.Clone(a.Seats)
			b.ReportAllocs()
			for i := 0; b.Loop(); i++ {
				moved[1].At.X = 1.7 + 0.001*float64(i%100)
				if _, err := p.Seats(a.Spot, moved); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
