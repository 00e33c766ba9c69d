package seats_test

import (
	"math"
	"testing"

	"pappus/layout"
	"pappus/timing/seats"

	"github.com/google/go-cmp/cmp"
	"gonum.org/v1/gonum/spatial/r3"
)

const sample = 1. / 48000

// fieldOf is what places hear of an array, each a seat.
func fieldOf(t testing.TB, a *layout.Array, place []r3.Vec) *seats.Field {
	frequency, _, ends := seats.Frequencies()
	return &seats.Field{Frequency: frequency, Ends: ends, Drivers: len(a.Mounts), Place: hear(t, a, frequency, place)}
}

func all(n int) (out []int) {
	for i := range n {
		out = append(out, i)
	}
	return out
}

// TestWithoutDelays holds the definitions to figures for all drivers in parallel that were
// found apart from this program's code, with other frequencies.
func TestWithoutDelays(t *testing.T) {
	for _, test := range []struct {
		name                 string
		place                []r3.Vec
		worst, mean, between float64
	}{
		{"five seats", five(0.6), 9.97, 11.95, 2.05},
		{"all round", allRound(0.6), 10.41, 12.14, 2.11},
	} {
		t.Run(test.name, func(t *testing.T) {
			f := fieldOf(t, lantern(t), test.place)
			got := f.Judge([][]int{all(f.Drivers)}, nil, nil)
			for _, c := range []struct {
				name      string
				got, want float64
			}{{"worst", got.Worst, test.worst}, {"mean", got.Mean, test.mean}, {"between", got.Between, test.between}} {
				if math.Abs(c.got-c.want) > 0.07 {
					t.Errorf("%s: %.2f dB, want %.2f", c.name, c.got, c.want)
				}
			}
		})
	}
}

// TestQuickIsUseful: the first answer for the lantern is far better than no delays.
func TestQuickIsUseful(t *testing.T) {
	f := fieldOf(t, lantern(t), five(0.6))
	l := seats.Limits{Channels: 8, Step: sample}
	for aim, most := range map[seats.Aim]float64{seats.Worst: 6.6, seats.Even: 9.3, seats.Mean: 7.7} {
		a, err := f.Quick(aim, l)
		if err != nil {
			t.Fatal(err)
		}
		if got := aim.Of(a.Figures); got > most {
			t.Errorf("%s: %.2f dB, want no more than %.2f", aim, got, most)
		}
		if diff := cmp.Diff(f.Judge(a.Groups, nil, a.Delay), a.Figures); diff != "" {
			t.Error(diff)
		}
		drivers := 0
		for g, group := range a.Groups {
			drivers += len(group)
			if steps := a.Delay[g] / sample; math.Abs(steps-math.Round(steps)) > 1e-6 || steps < 0 {
				t.Errorf("%s: channel %d is delayed by %g samples", aim, g+1, steps)
			}
		}
		if drivers != f.Drivers || len(a.Groups) != 8 {
			t.Errorf("%d drivers in %d channels", drivers, len(a.Groups))
		}
	}
}

// TestChannelsByHand: of channels laid out by hand only the free delays are found, and with
// those set as the answer has them nothing gets better.
func TestChannelsByHand(t *testing.T) {
	f := fieldOf(t, lantern(t), five(0.6))
	first, err := f.Quick(seats.Even, seats.Limits{Channels: 5, Step: sample})
	if err != nil {
		t.Fatal(err)
	}
	l := seats.Limits{Step: sample, Groups: first.Groups, Gain: []float64{1, 0.5, -1, 1, 1}}
	free, err := f.Plan(t.Context(), seats.Even, l)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(first.Groups, free.Groups); diff != "" {
		t.Error(diff)
	}
	l.Delay = []float64{math.NaN(), 3.3e-4, math.NaN(), math.NaN(), math.NaN()}
	held, err := f.Plan(t.Context(), seats.Even, l)
	if err != nil {
		t.Fatal(err)
	}
	if held.Delay[1] != l.Delay[1] {
		t.Errorf("a delay of %g s set by hand became %g", l.Delay[1], held.Delay[1])
	}
	for _, d := range held.Delay {
		if d < 0 {
			t.Errorf("a delay of %g s", d)
		}
	}
}
