package timing_test

import (
	"testing"

	"pappus/timing"
	"pappus/timing/seats"
)

// TestFilterSeats: filters for seats are offered where they make them more even by enough to
// be heard, and for nothing else.
func TestFilterSeats(t *testing.T) {
	for _, c := range []struct {
		name  string
		plan  *timing.Plan
		there bool
	}{
		{"a spot", plan(t, demo(t)), false},
		{"five seats", plan(t, arcOf(t, -60, -30, 0, 30, 60)), true},
	} {
		f, err := timing.FilterSeats(t.Context(), c.plan)
		if err != nil {
			t.Fatal(err)
		}
		if (f != nil) != c.there {
			t.Fatalf("%s: %v", c.name, f)
		}
		if f == nil {
			continue
		}
		with, without := seats.Even.Of(f.Figures), seats.Even.Of(f.Planned)
		t.Logf("between %.2f to %.2f dB, mean %.2f to %.2f dB, aim %.2f to %.2f", f.Planned.Between, f.Between, f.Planned.Mean, f.Mean, without, with)
		if f.Pays != (with <= without-0.3) || len(f.Taps) != len(c.plan.Channels) {
			t.Errorf("%s: pays %v", c.name, f.Pays)
		}
	}
}
