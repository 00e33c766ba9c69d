package timing

import (
	"math"
	"testing"
)

// TestFirstDip: a dip of 1 dB or more is told, where a parabola is lowest; the first of two,
// and none where the energy only falls.
func TestFirstDip(t *testing.T) {
	dip := func(at, dB float64) func(i int) float64 {
		return func(i int) float64 { return math.Pow(10, -dB/10) + 0.02*(float64(i)-at)*(float64(i)-at) }
	}
	for _, test := range []struct {
		name      string
		left      func(i int) float64
		at, least float64
	}{
		{"deep", dip(9, 12), 9, math.Pow(10, -1.2)},
		{"between two", dip(9.3, 3), 9.3, math.Pow(10, -0.3)},
		{"just told", dip(9, 1.1), 9, math.Pow(10, -0.11)},
		{"just not told", dip(9, 0.9), 0, 1},
		{"the first of two", func(i int) float64 { return min(dip(5, 3)(i), dip(12, 6)(i)) }, 5, math.Pow(10, -0.3)},
		{"none", func(i int) float64 { return 1 / float64(i+1) }, 0, 1},
	} {
		left := make([]float64, dipSteps)
		for i := range left {
			left[i] = test.left(i)
		}
		if at, least := firstDip(left); math.Abs(at-test.at) > 1e-9 || math.Abs(least-test.least) > 1e-9 {
			t.Errorf("%s: %.4f at %.4f, want %.4f at %.4f", test.name, least, at, test.least, test.at)
		}
	}
}

// TestAbsorber: at 344 Hz, a metre of wavelength at 344 m/s, a porous absorber weakens from
// a tenth of it on and takes nearly all from a quarter.
func TestAbsorber(t *testing.T) {
	weakens, takes := Echo{Dip: 344}.Absorber(344)
	if math.Abs(weakens-0.1) > 1e-12 || math.Abs(takes-0.25) > 1e-12 {
		t.Errorf("%g and %g m, want 0.1 and 0.25", weakens, takes)
	}
}
