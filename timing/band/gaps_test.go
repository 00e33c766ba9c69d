package band_test

import (
	"math"
	"testing"

	"pappus/timing/band"
)

// TestSmoothGaps: what is known is smoothed as if it stood alone, and nothing is made up.
func TestSmoothGaps(t *testing.T) {
	no := math.NaN()
	frequency := []float64{100, 110, 120, 130, 140, 150, 160, 170, 180, 190}
	level := []float64{no, 1, 5, 2, math.Inf(-1), 3, 4, no, no, 7}
	got := band.SmoothGaps(nil, frequency, level, 3)
	alone := band.Smooth(nil, frequency[1:4], level[1:4], 3)
	for i, want := range []float64{no, alone[0], alone[1], alone[2], no, no, no, no, no, no} {
		if got[i] != want && !(math.IsNaN(got[i]) && math.IsNaN(want)) {
			t.Errorf("at %g Hz: %g, want %g", frequency[i], got[i], want)
		}
	}
	whole := []float64{1, 2, 3, 4, 5, 6, 7, 8, 9, 10}
	for i, v := range band.SmoothGaps(make([]float64, 10), frequency, whole, 6) {
		if want := band.Smooth(nil, frequency, whole, 6)[i]; v != want {
			t.Errorf("without gaps, at %g Hz: %g, want %g", frequency[i], v, want)
		}
	}
	if got := band.SmoothGaps(nil, nil, nil, 3); len(got) != 0 {
		t.Errorf("of nothing: %v", got)
	}
	defer func() {
		if recover() == nil {
			t.Error("lengths that differ are let pass")
		}
	}()
	band.SmoothGaps(nil, frequency, level[1:], 3)
}
