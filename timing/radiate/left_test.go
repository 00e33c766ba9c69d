package radiate_test

import (
	"math"
	"testing"

	"pappus/timing/radiate"
)

func TestLeft(t *testing.T) {
	for _, c := range []struct {
		name                          string
		done, forecast, taken, wanted float64
	}{
		{"not begun", 0, 100, 3, 100},
		{"by the forecast", 0.09, 100, 18, 91},
		{"by what it took", 0.11, 100, 22, 178},
		{"done", 1, 100, 200, 0},
	} {
		if got := radiate.Left(c.done, c.forecast, c.taken); math.Abs(got-c.wanted) > 1e-9 {
			t.Errorf("%s: %g s, want %g", c.name, got, c.wanted)
		}
	}
}
