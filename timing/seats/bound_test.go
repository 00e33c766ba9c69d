package seats_test

import (
	"context"
	"math"
	"math/rand/v2"
	"testing"

	"pappus/timing/seats"

	"pgregory.net/rapid"
)

// TestBoundHolds: no delays of any groups lose less at a seat than the bound, and at one place
// and frequency there are delays that reach it.
func TestBoundHolds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		part := rapid.Float64Range(-1, 1)
		f := &seats.Field{Frequency: []float64{500, 900, 2000}, Ends: []int{2, 3}, Drivers: 5}
		for range rapid.IntRange(1, 4).Draw(t, "places") {
			var row []complex128
			for range f.Drivers * len(f.Frequency) {
				row = append(row, complex(part.Draw(t, "re"), part.Draw(t, "im")))
			}
			f.Place = append(f.Place, row)
		}
		groups, gain := [][]int{{0, 3}, {1}, {2, 4}}, []float64{1, -0.5, 0.8}
		var delay []float64
		for range groups {
			delay = append(delay, 1e-3*part.Draw(t, "delay"))
		}
		got, bound := f.Judge(groups, gain, delay), f.Bound(groups, gain)
		const rounding = 1e-9
		if got.Worst < bound.Worst-rounding || got.Mean < bound.Mean-rounding {
			t.Fatalf("%v beats %v", got, bound)
		}
		for s := range got.Seat {
			if got.Seat[s] < bound.Seat[s]-rounding {
				t.Fatalf("seat %d: %g dB beats %g dB", s, got.Seat[s], bound.Seat[s])
			}
		}
	})
}

// TestBoundIsReached: two channels at one place and one frequency can be brought into phase.
func TestBoundIsReached(t *testing.T) {
	f := &seats.Field{Frequency: []float64{1000}, Ends: []int{1}, Drivers: 3, Place: [][]complex128{{1, 1i, -2}}}
	groups := [][]int{{0, 1}, {2}}
	got, bound := f.Judge(groups, nil, []float64{0, 0.375e-3}), f.Bound(groups, nil)
	want := -20 * math.Log10((math.Sqrt2+2)/4)
	if math.Abs(got.Worst-want) > 1e-9 || math.Abs(bound.Worst-want) > 1e-9 {
		t.Errorf("%g dB, bound %g dB, want %g dB", got.Worst, bound.Worst, want)
	}
}

// TestTogetherHolds: no delays and no groups' phases lose less than the bound for all places
// at once, which is no less than that for each alone.
func TestTogetherHolds(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		random := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "seed"), 3))
		f := made(random, 6, rapid.IntRange(1, 5).Draw(t, "places"), rapid.Float64Range(0, 0.5).Draw(t, "reach"))
		groups, gain := [][]int{{0, 3}, {1}, {2, 4, 5}}, []float64{1, -0.5, 0.8}
		alone, together := f.Bound(groups, gain), f.Together(groups, gain)
		if together.Worst < alone.Worst || together.Mean < alone.Mean {
			t.Fatalf("%v is looser than %v", together, alone)
		}
		got, err := f.Plan(context.Background(), rapid.SampledFrom(aims).Draw(t, "aim"), seats.Limits{Groups: groups, Gain: gain, Step: 1e-5})
		if err != nil {
			t.Fatal(err)
		}
		const rounding = 1e-9
		if got.Worst < together.Worst-rounding || got.Mean < together.Mean-rounding {
			t.Fatalf("%v beats %v", got, together)
		}
		worst, mean := f.Free(groups, gain)
		for _, free := range []seats.Figures{worst, mean} {
			if free.Worst < together.Worst-rounding || free.Mean < together.Mean-rounding {
				t.Fatalf("free phases: %v beat %v", free, together)
			}
		}
	})
}

// TestTogetherIsClose: for the lantern's five seats the bound is hardly below what free phases
// are found to do.
func TestTogetherIsClose(t *testing.T) {
	f := fieldOf(t, lantern(t), five(0.6))
	a, err := f.Quick(seats.Worst, seats.Limits{Channels: 8, Step: sample})
	if err != nil {
		t.Fatal(err)
	}
	alone, together := f.Bound(a.Groups, nil), f.Together(a.Groups, nil)
	worst, mean := f.Free(a.Groups, nil)
	for _, c := range []struct {
		name                           string
		planned, free, together, alone float64
	}{{"worst", a.Worst, worst.Worst, together.Worst, alone.Worst}, {"mean", a.Mean, mean.Mean, together.Mean, alone.Mean}} {
		if c.free-c.together > 0.05 || c.together < c.alone+0.5 || c.planned < c.free {
			t.Errorf("%s: planned %.2f dB, free phases %.2f, bound %.2f, each seat alone %.2f", c.name, c.planned, c.free, c.together, c.alone)
		}
	}
}
