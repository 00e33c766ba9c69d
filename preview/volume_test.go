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

// TestVolume: a turn arrives, and no sample leaps on the way.
func TestVolume(t *testing.T) {
	v := preview.NewVolume(steady, 480)
	samples := make([][2]float64, 2400)
	v.Stream(samples)
	if samples[0][0] != 1 || samples[2399][1] != 1 {
		t.Errorf("untouched it passes %g", samples[0][0])
	}
	v.Turn(-20)
	v.Stream(samples)
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
	if n := testing.AllocsPerRun(10, func() { v.Stream(samples) }); n != 0 {
		t.Errorf("%g allocations", n)
	}
}
