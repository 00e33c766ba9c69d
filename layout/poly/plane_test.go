package poly_test

import (
	"math"
	"testing"

	"pappus/layout/poly"

	"gonum.org/v1/gonum/spatial/r3"
)

// TestBearing: in front is 0, also from a little to its right by rounding; of whatever length.
func TestBearing(t *testing.T) {
	for _, c := range []struct {
		name               string
		v                  r3.Vec
		azimuth, elevation float64 // degrees
	}{
		{"front", r3.Vec{X: 3}, 0, 0},
		{"front, by rounding", r3.Vec{X: 1, Y: -1e-16}, 0, 0},
		{"left, up", r3.Vec{Y: 2, Z: 2}, 90, 45},
		{"right", r3.Vec{Y: -0.1}, 270, 0},
		{"a little right", r3.Vec{X: 1, Y: -0.01}, 360 - math.Atan(0.01)*180/math.Pi, 0},
		{"behind, down", r3.Vec{X: -1, Z: -math.Sqrt(3)}, 180, -60},
		{"straight up", r3.Vec{X: -1e-12, Y: 1e-12, Z: 1}, 0, 90},
		{"straight down", r3.Vec{Z: -5}, 0, -90},
	} {
		azimuth, elevation := poly.Bearing(c.v)
		if got := azimuth * 180 / math.Pi; !(math.Abs(got-c.azimuth) < 1e-9) || got < 0 {
			t.Errorf("%s: azimuth %g, want %g", c.name, got, c.azimuth)
		}
		if got := elevation * 180 / math.Pi; !(math.Abs(got-c.elevation) < 1e-9) {
			t.Errorf("%s: elevation %g, want %g", c.name, got, c.elevation)
		}
	}
}
