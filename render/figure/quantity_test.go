package figure

import (
	"math"
	"testing"

	"pappus/timing"
)

// TestLightIsGood: the better value is the lighter one on every map.
func TestLightIsGood(t *testing.T) {
	two := []float64{1, 9}
	c := &timing.Coverage{Band: []float64{1000}, Level: [][]float64{two}, Smear: []float64{1e-6, 9e-6}, CombOnset: []float64{1000, 9000}, Loss: two}
	for _, test := range []struct {
		name        string
		of          Quantity
		good, worse float64
	}{
		{"level", Level(c, 0), 9, 1},
		{"smear", Smear(c), 1, 9},
		{"loss", Loss(c), 1, 9},
		{"comb onset", CombOnset(c), 9000, 1000},
	} {
		s := test.of.scale()
		if good, worse := s.light(test.good), s.light(test.worse); good <= worse {
			t.Errorf("%s: %g is as light as %g, %g as %g", test.name, test.good, good, test.worse, worse)
		}
	}
}

// TestLeastSpan: what nobody hears is one colour.
func TestLeastSpan(t *testing.T) {
	for _, test := range []struct {
		name      string
		of        Quantity
		low, high float64
	}{
		{"smear of nothing", Quantity{Values: []float64{0, 2e-7}, Low: 0, High: math.NaN()}, 0, 1},
		{"level all alike", Quantity{Values: []float64{80, 80.1}, Low: math.NaN(), High: math.NaN()}, 80, 81},
	} {
		if s := test.of.scale(); s.low != test.low || s.high != test.high {
			t.Errorf("%s: from %g to %g, want %g to %g", test.name, s.low, s.high, test.low, test.high)
		}
	}
}
