package solve_test

import (
	"math"
	"testing"

	"pappus/layout/solve"
)

func TestRoot(t *testing.T) {
	tests := []struct {
		name         string
		f            func(float64) float64
		low, high    float64
		want, within float64
		none         bool
	}{
		{"square root of two", func(x float64) float64 { return x*x - 2 }, 0, 2, math.Sqrt2, 1e-12, false},
		{"falling", math.Cos, 0, 3, math.Pi / 2, 1e-12, false},
		{"at an end", func(x float64) float64 { return x }, 0, 1, 0, 1e-12, false},
		{"far away", func(x float64) float64 { return x - 1e6 }, 0, 1e9, 1e6, 1e-6, false},
		{"no change of sign", func(x float64) float64 { return x*x + 1 }, -1, 1, 0, 0, true},
		{"no number", func(float64) float64 { return math.NaN() }, -1, 1, 0, 0, true},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			got, ok := solve.Root(test.f, test.low, test.high, test.within)
			if ok == test.none || ok && math.Abs(got-test.want) > test.within {
				t.Errorf("got %v, %v; want %v", got, ok, test.want)
			}
		})
	}
}

func TestLeast(t *testing.T) {
	tests := []struct {
		name            string
		f               func(float64) float64
		low, high, want float64
	}{
		{"parabola", func(x float64) float64 { return (x - 0.3) * (x - 0.3) }, -1, 2, 0.3},
		{"at the low end", func(x float64) float64 { return x }, 1, 2, 1},
		{"at the high end", func(x float64) float64 { return -x }, 1, 2, 2},
		{"a kink", func(x float64) float64 { return math.Abs(x - math.E) }, 0, 10, math.E},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			if got := solve.Least(test.f, test.low, test.high, 1e-7); math.Abs(got-test.want) > 1e-7 {
				t.Errorf("got %v, want %v", got, test.want)
			}
		})
	}
}

// TestEdge: the side that holds is told, to a tolerance, to a share, or exactly.
func TestEdge(t *testing.T) {
	for _, c := range []struct {
		name                      string
		yes, no, tolerance, share float64
		within                    float64
	}{
		{"up", 0, 4, 1e-3, 0, 1e-3},
		{"by share", 1e-3, 4, 0, 1e-6, 3e-6},
		{"exactly", 0, 4, 0, 0, 1e-15},
		{"down", 4, 0, 1e-3, 0, 1e-3},
	} {
		t.Run(c.name, func(t *testing.T) {
			const at = math.Sqrt2
			below := func(x float64) bool { return x < at }
			holds := below
			if c.yes > c.no {
				holds = func(x float64) bool { return !below(x) }
			}
			if got := solve.Edge(holds, c.yes, c.no, c.tolerance, c.share); !holds(got) || math.Abs(got-at) > c.within {
				t.Errorf("%.17g, want %.17g within %g", got, at, c.within)
			}
		})
	}
}
