package preview_test

import (
	"math"
	"testing"

	"pappus/preview"

	"github.com/gopxl/beep/v2"
)

// steady streams ones for ever.
var steady = beep.StreamerFunc(func(samples [][2]float64) (int, bool) {
	for i := range samples {
		samples[i] = [2]float64{1, 1}
	}
	return len(samples), true
})

// TestKnob: a turn arrives, and no sample leaps on the way.
func TestKnob(t *testing.T) {
	k := preview.NewKnob(steady, 480)
	samples := make([][2]float64, 2400)
	k.Stream(samples)
	if samples[0][0] != 1 || samples[2399][1] != 1 {
		t.Errorf("untouched it passes %g", samples[0][0])
	}
	k.Turn(-20)
	k.Stream(samples)
	last := 1.0
	for i, s := range samples {
		if s[0] > last || last-s[0] > 0.01 {
			t.Fatalf("sample %d leaps from %g to %g", i, last, s[0])
		}
		last = s[0]
	}
	if math.Abs(last-0.1) > 0.001 {
		t.Errorf("ends at %g, want 0.1", last)
	}
	if n := testing.AllocsPerRun(10, func() { k.Stream(samples) }); n != 0 {
		t.Errorf("%g allocations", n)
	}
}
