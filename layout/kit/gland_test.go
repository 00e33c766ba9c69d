package kit

import (
	"math"
	"testing"
)

// TestOutlet: cables are as thick as makers' lists of light PVC cables say, and a gland holds them.
func TestOutlet(t *testing.T) {
	for _, c := range []struct {
		cores                  int
		section, cable, thread float64 // mm
	}{
		{2, 0.75, 6.2, 12}, {3, 0.75, 6.6, 16}, {4, 1, 7.9, 16}, {7, 1, 9.7, 20}, {16, 0.75, 13.7, 25}, {25, 1, 17.5, 32},
	} {
		o := outletOf(c.cores, c.section*1e-6)
		if math.Abs(1e3*o.Cable-c.cable) > 0.4 || math.Abs(1e3*o.Thread-c.thread) > 1e-9 {
			t.Errorf("%d of %g mm2: %.1f mm, M%g", c.cores, c.section, 1e3*o.Cable, 1e3*o.Thread)
		}
	}
}
