package seats_test

import (
	"fmt"
	"testing"

	"pappus/testdata/thorough"
	"pappus/timing/seats"
)

// TestGoals holds plans to what an independent prototype reached, or better, in eight
// channels with delays of whole samples: half a decibel and more below the best of fixed
// ways to sort drivers. Between is told of aim even alone; 99: not told.
func TestGoals(t *testing.T) {
	lantern, ball := lantern(t), evenBall(t, 60, 0.16)
	two := func(drivers int) bool { return drivers <= 2 || drivers == 4 || drivers == 6 } // strings of two at most, 8 ohm on 4
	for _, test := range []struct {
		name           string
		field          *seats.Field
		aim            seats.Aim
		channels       int
		allowed        func(int) bool
		worst, between float64
		long           bool
	}{
		{"lantern, five seats, 4 channels", fieldOf(t, lantern, five(0.6)), seats.Worst, 4, nil, 6.8, 99, false},
		{"lantern, five seats", fieldOf(t, lantern, five(0.6)), seats.Worst, 8, nil, 6.25, 99, true},
		{"lantern, five seats, even", fieldOf(t, lantern, five(0.6)), seats.Even, 8, nil, 7.2, 1, true},
		{"with strings of two", fieldOf(t, lantern, five(0.6)), seats.Worst, 8, two, 6.45, 99, true},
		{"lantern, all round", fieldOf(t, lantern, allRound(0.6)), seats.Worst, 8, nil, 8.95, 99, true},
		{"ball, five seats", fieldOf(t, ball, five(0)), seats.Worst, 8, nil, 6.85, 99, true},
		{"ball, all round", fieldOf(t, ball, allRound(0)), seats.Worst, 8, nil, 9.5, 99, true},
		{"ball, five seats, even", fieldOf(t, ball, five(0)), seats.Even, 8, nil, 8, 0.9, true},
		{"ball, all round, even", fieldOf(t, ball, allRound(0)), seats.Even, 8, nil, 9.95, 1, true},
	} {
		t.Run(test.name, func(t *testing.T) {
			if test.long && !thorough.Set {
				t.Skip("takes a second")
			}
			a, err := test.field.Plan(t.Context(), test.aim, seats.Limits{Channels: test.channels, Step: sample, Allowed: test.allowed})
			if err != nil {
				t.Fatal(err)
			}
			if a.Worst > test.worst || a.Between > test.between {
				t.Errorf("worst %.2f dB, between %.2f dB; want no more than %.2f, %.2f", a.Worst, a.Between, test.worst, test.between)
			}
		})
	}
}

// TestHeads: planned with room for the head, seats stay even 15 cm off, at places that were
// not planned on, far better than a plan for points.
func TestHeads(t *testing.T) {
	if !thorough.Set {
		t.Skip("takes two seconds")
	}
	a, l := lantern(t), seats.Limits{Channels: 8, Step: sample}
	points, off := fieldOf(t, a, five(0.6)), fieldOf(t, a, around(five(0.6), diagonals(0.15)))
	heads := fieldOf(t, a, around(five(0.6), seats.Around(0.15)))
	for p := range heads.Place {
		heads.Seat = append(heads.Seat, p/len(seats.Around(0.15)))
	}
	forHeads, err := heads.Plan(t.Context(), seats.Even, l)
	if err != nil {
		t.Fatal(err)
	}
	forPoints, err := points.Plan(t.Context(), seats.Even, l)
	if err != nil {
		t.Fatal(err)
	}
	got, other := off.Judge(forHeads.Groups, nil, forHeads.Delay), off.Judge(forPoints.Groups, nil, forPoints.Delay)
	if got.Worst > 7.7 || got.Between > 1.3 || seats.Even.Of(got) > seats.Even.Of(other) {
		t.Errorf("15 cm off %.2f dB, between %.2f; planned for points %.2f, %.2f", got.Worst, got.Between, other.Worst, other.Between)
	}
}

// TestSearchAllocates: a try allocates nothing; only rooms, starts and answers do.
func TestSearchAllocates(t *testing.T) {
	f := fieldOf(t, lantern(t), five(0.6))
	few := testing.AllocsPerRun(1, func() { seats.Tries(f, 1000) })
	many := testing.AllocsPerRun(1, func() { seats.Tries(f, 20000) })
	if many > few+10 {
		t.Errorf("1,000 tries allocate %g times, 20,000 %g times", few, many)
	}
}

// BenchmarkQuick is the first answer, as while a seat is dragged.
func BenchmarkQuick(b *testing.B) {
	f := fieldOf(b, lantern(b), around(five(0.6), seats.Around(0.15)))
	for p := range f.Place {
		f.Seat = append(f.Seat, p/len(seats.Around(0.15)))
	}
	for _, aim := range aims {
		b.Run(string(aim), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := f.Quick(aim, seats.Limits{Channels: 8, Step: sample}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// BenchmarkPlan is meant for one core (-cpu 1).
func BenchmarkPlan(b *testing.B) {
	heads := fieldOf(b, lantern(b), around(five(0.6), seats.Around(0.15)))
	for p := range heads.Place {
		heads.Seat = append(heads.Seat, p/len(seats.Around(0.15)))
	}
	for _, c := range []struct {
		name     string
		f        *seats.Field
		channels int
	}{
		{"five seats", fieldOf(b, lantern(b), five(0.6)), 8},
		{"five heads", heads, 8},
		{"twelve seats", fieldOf(b, evenBall(b, 60, 0.16), allRound(0)), 16},
	} {
		b.Run(fmt.Sprintf("%s, %d channels", c.name, c.channels), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := c.f.Plan(b.Context(), seats.Even, seats.Limits{Channels: c.channels, Step: sample}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkTogether(b *testing.B) {
	f := fieldOf(b, lantern(b), around(five(0.6), seats.Around(0.15)))
	a, err := f.Quick(seats.Worst, seats.Limits{Channels: 8, Step: sample})
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		f.Together(a.Groups, nil)
	}
}
