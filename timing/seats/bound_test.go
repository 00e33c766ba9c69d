package seats_test

import (
	"math"
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
