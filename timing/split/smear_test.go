package split_test

import (
	"math"
	"slices"
	"testing"

	"pappus/timing/measure"
	"pappus/timing/split"

	"pgregory.net/rapid"
)

func draw(t *rapid.T) (arrival, weight []float64) {
	n := rapid.IntRange(1, 12).Draw(t, "n")
	arrival, weight = make([]float64, n), make([]float64, n)
	for i := range n {
		arrival[i] = 5e-3 + rapid.Float64Range(0, 1e-3).Draw(t, "arrival")
		weight[i] = rapid.Float64Range(0.01, 2).Draw(t, "weight")
	}
	return arrival, weight
}

// left returns the smear that the best split leaves.
func left(arrival, weight []float64, count int) float64 {
	groups := split.NewSplits(arrival, weight, func(int) bool { return true }).Groups(count)
	return split.Smear(groups, arrival, weight)
}

// TestSplitIsBest tries every assignment of a few drivers to three channels.
func TestSplitIsBest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		arrival, weight := draw(t)
		arrival, weight = arrival[:min(7, len(arrival))], weight[:min(7, len(weight))]
		if len(arrival) < 3 {
			return
		}
		least := math.Inf(1)
		for way := range int(math.Pow(3, float64(len(arrival)))) {
			groups := make([][]int, 3)
			for i, left := 0, way; i < len(arrival); i, left = i+1, left/3 {
				groups[left%3] = append(groups[left%3], i)
			}
			groups = slices.DeleteFunc(groups, func(g []int) bool { return len(g) == 0 })
			least = min(least, split.Smear(groups, arrival, weight))
		}
		if got := left(arrival, weight, 3); math.Abs(got-least) > 1e-11 {
			t.Fatalf("%g s, the best of all assignments leaves %g s", got, least)
		}
	})
}

// TestDelayTakesSmearAway: the smear left is the smear of the arrivals once each
// group's mean has been taken out by hand.
func TestDelayTakesSmearAway(t *testing.T) {
	arrival := []float64{1e-3, 1.2e-3, 3e-3, 3.6e-3}
	weight := []float64{1, 1, 1, 2}
	got := split.Smear([][]int{{0, 1}, {2, 3}}, arrival, weight)
	want := measure.Smear([]float64{-0.1e-3, 0.1e-3, -0.4e-3, 0.2e-3}, weight)
	if math.Abs(got-want) > 1e-15 {
		t.Errorf("%g s, want %g s", got, want)
	}
}

// Arrivals spread evenly over T, split into K equal parts, leave T/(K sqrt 12):
// the standard deviation of an even distribution.
func TestEvenSpread(t *testing.T) {
	arrival, weight := make([]float64, 5000), make([]float64, 5000)
	for i := range arrival {
		arrival[i], weight[i] = 1e-3*(float64(i)+0.5)/5000, 1
	}
	for k := range 6 {
		smear := left(arrival, weight, k+1)
		want := 1e-3 / (float64(k+1) * math.Sqrt(12))
		if math.Abs(smear/want-1) > 1e-5 {
			t.Errorf("%d channels leave %g s, want %g s", k+1, smear, want)
		}
	}
}

func TestSmearOfSilence(t *testing.T) {
	if got := split.Smear([][]int{{0}}, []float64{1}, []float64{0}); got != 0 {
		t.Error(got)
	}
}
