package measure_test

import (
	"math"
	"math/cmplx"
	"testing"

	"pappus/timing/measure"
)

// TestOver: gain, polarity and time of one response over another come back.
func TestOver(t *testing.T) {
	for _, gain := range []float64{2, -0.5} {
		var frequency []float64
		var h, other []complex128
		for hz := 500.0; hz < 4000; hz *= 1.02 {
			frequency = append(frequency, hz)
			v := cmplx.Rect(1000/hz, hz/300)
			other, h = append(other, v), append(h, v*cmplx.Rect(gain, -2*math.Pi*hz*40e-6))
		}
		level, late := measure.Over(frequency, h, other)
		if math.Abs(level-20*math.Log10(math.Abs(gain))) > 1e-9 || math.Abs(late-40e-6) > 1e-12 {
			t.Errorf("gain %g: %g dB, %g s", gain, level, late)
		}
	}
}
