package exposure_test

import (
	"math"
	"testing"

	"pappus/timing/exposure"
)

// TestWeekly: the allowances of ITU-T H.870 as levels and hours, and as the energy that the
// Recommendation states; 20 uPa is the reference.
func TestWeekly(t *testing.T) {
	for _, c := range []struct {
		name  string
		l     exposure.Listener
		level float64
		hours float64
	}{
		{"adult at the level", exposure.Adult, 80, 40},
		{"adult, 3 dB more", exposure.Adult, 83, 20},
		{"adult, 15 dB more", exposure.Adult, 95, 1.25},
		{"child at the level", exposure.Child, 75, 40},
		{"child, 30 dB more", exposure.Child, 105, 40.0 / 1024},
		{"no time at all", exposure.Child, 141, 0},
	} {
		if got := c.l.Weekly(c.level); math.Abs(got-c.hours) > 1e-9 {
			t.Errorf("%s: %v h, want %v", c.name, got, c.hours)
		}
	}
	for l, dose := range map[exposure.Listener]float64{exposure.Adult: 1.6, exposure.Child: 0.51} {
		pascal := 20e-6 * math.Pow(10, l.Level()/20)
		if got := pascal * pascal * 40; math.Abs(got/dose-1) > 0.01 {
			t.Errorf("%.3f Pa2h, the Recommendation has %.3g", got, dose)
		}
	}
	if !math.IsNaN(exposure.Child.Weekly(math.NaN())) {
		t.Error("a level that is no number has hours")
	}
}
