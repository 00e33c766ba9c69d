package figure

import (
	"bytes"
	"strings"
	"testing"

	"pappus/layout"
	"pappus/timing"
	"pappus/timing/tolerance"
)

func TestTolerancePicture(t *testing.T) {
	s := &tolerance.Study{Plan: &timing.Plan{Spot: timing.Spot{Array: &layout.Array{Name: "a lantern"}}}}
	if err := Tolerance(new(bytes.Buffer), SVG, s); err == nil || !strings.Contains(err.Error(), "nothing to draw") {
		t.Errorf("%v", err)
	}
	s.Frequency, s.Alike = []float64{100, 1000, 10000}, []float64{80, 90, 80}
	s.Low, s.Middle, s.High = []float64{79, 89, 60}, []float64{80, 90, 78}, []float64{81, 91, 88}
	var b bytes.Buffer
	if err := Tolerance(&b, SVG, s); err != nil || !strings.Contains(b.String(), "nine lots in ten") {
		t.Errorf("%v: %d bytes", err, b.Len())
	}
	if low, high := overRange([]float64{-20, -0.1}, []float64{0.1, 3}); low != -22 || high != 3.3000000000000003 {
		t.Errorf("from %g to %g dB", low, high)
	}
}
