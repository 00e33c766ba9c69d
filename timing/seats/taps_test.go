package seats_test

import (
	"math"
	"testing"

	"pappus/timing/seats"
)

// TestTapsMakeEven: 64 taps for each channel make the lantern's five seats more even than its
// delays, for about a decibel of level, as an independent prototype found (0.87 to 0.50 dB),
// no filter is louder than 1, and Filter has the same figures.
func TestTapsMakeEven(t *testing.T) {
	f := fieldOf(t, lantern(t), five(0.6))
	plan, err := f.Quick(seats.Even, seats.Limits{Channels: 8, Step: sample})
	if err != nil {
		t.Fatal(err)
	}
	got, err := f.Taps(t.Context(), plan.Groups, nil, plan.Delay, 64, 48000)
	if err != nil {
		t.Fatal(err)
	}
	t.Logf("%.2f %.2f %.2f, with filters %.2f %.2f %.2f", plan.Worst, plan.Mean, plan.Between, got.Worst, got.Mean, got.Between)
	if got.Between > 0.6 || got.Between > 0.75*plan.Between {
		t.Errorf("between seats %.2f dB, with filters %.2f dB", plan.Between, got.Between)
	}
	if cost := got.Mean - plan.Mean; cost > 2 {
		t.Errorf("they cost %.2f dB", cost)
	}
	for c, taps := range got.Taps {
		if len(taps) != 64 {
			t.Fatalf("%d taps", len(taps))
		}
		for hz := 0.0; hz <= 24000; hz += 100 {
			var re, im float64
			for k, v := range taps {
				sin, cos := math.Sincos(2 * math.Pi * hz * float64(k) / 48000)
				re, im = re+v*cos, im-v*sin
			}
			if size := math.Hypot(re, im); size > 1.1 {
				t.Errorf("channel %d at %g Hz: a gain of %g", c+1, hz, size)
			}
		}
	}
	plain := make([][]float64, 8)
	for c := range plain {
		plain[c] = []float64{1}
	}
	if again := f.Filter(plan.Groups, nil, plan.Delay, plain, 48000); math.Abs(again.Mean-plan.Mean) > 1e-9 {
		t.Errorf("without filters %g dB, %g dB", again.Mean, plan.Mean)
	}
}
