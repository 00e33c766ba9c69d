package channelcount_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"pappus/timing/channelcount"
	"pappus/timing/measure"

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

// TestCurve: one channel leaves the smear as it is, one for each driver leaves
// none, and more never leave more.
func TestCurve(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		arrival, weight := draw(t)
		smear := channelcount.Curve(arrival, weight, len(arrival)+3)
		if len(smear) != len(arrival) {
			t.Fatalf("%d values for %d drivers", len(smear), len(arrival))
		}
		if want := measure.Smear(arrival, weight); math.Abs(smear[0]-want) > 1e-15 {
			t.Fatalf("one channel leaves %g s, all have %g s", smear[0], want)
		}
		if last := smear[len(smear)-1]; last != 0 {
			t.Fatalf("%g s is left with a channel each", last)
		}
		for k := 1; k < len(smear); k++ {
			if smear[k] > smear[k-1]+1e-12 {
				t.Fatalf("%d channels leave %g s, %d leave %g s", k+1, smear[k], k, smear[k-1])
			}
		}
	})
}

// TestCurveIsBest tries every assignment of a few drivers to three channels.
func TestCurveIsBest(t *testing.T) {
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
			least = min(least, channelcount.Smear(groups, arrival, weight))
		}
		if got := channelcount.Curve(arrival, weight, 3)[2]; math.Abs(got-least) > 1e-11 {
			t.Fatalf("%g s, the best of all assignments leaves %g s", got, least)
		}
	})
}

// TestDelayTakesSmearAway: the smear left is the smear of the arrivals once each
// group's mean has been taken out by hand.
func TestDelayTakesSmearAway(t *testing.T) {
	arrival := []float64{1e-3, 1.2e-3, 3e-3, 3.6e-3}
	weight := []float64{1, 1, 1, 2}
	got := channelcount.Smear([][]int{{0, 1}, {2, 3}}, arrival, weight)
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
	for k, smear := range channelcount.Curve(arrival, weight, 6) {
		want := 1e-3 / (float64(k+1) * math.Sqrt(12))
		if math.Abs(smear/want-1) > 1e-5 {
			t.Errorf("%d channels leave %g s, want %g s", k+1, smear, want)
		}
	}
}

func TestKnee(t *testing.T) {
	square := make([]float64, 30) // 1/K^2: gains of 0.75, 0.139, 0.049
	for k := range square {
		square[k] = 1 / float64((k+1)*(k+1))
	}
	tests := []struct {
		name  string
		smear []float64
		want  int
	}{
		{"none", nil, 0},
		{"one", []float64{5e-5}, 1},
		{"nothing to gain", []float64{0, 0, 0}, 1},
		{"two clumps", []float64{1e-4, 1e-6, 0.9e-6, 0}, 2},
		{"falling by the square", square, 3},
		{"a tenth exactly still pays", []float64{20, 10, 9, 8.5}, 3},
		{"a late gain counts", []float64{20, 10, 9.9, 5, 4.9}, 4},
		{"all pay", []float64{9, 6, 3, 0}, 4},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			if got := channelcount.Knee(test.smear); got != test.want {
				t.Errorf("%d, want %d", got, test.want)
			}
		})
	}
}

// TestKneeIsWhatItSays holds the sentence's claim for any curve.
func TestKneeIsWhatItSays(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		arrival, weight := draw(t)
		smear := channelcount.Curve(arrival, weight, channelcount.Most)
		knee := channelcount.Knee(smear)
		for k := knee; k >= 2 && k < len(smear); k++ {
			if smear[k-1]-smear[k] >= channelcount.Share*(smear[0]-smear[1]) {
				t.Fatalf("knee at %d, but channel %d pays: %g", knee, k+1, smear)
			}
		}
	})
}

func TestEmpty(t *testing.T) {
	if got := channelcount.Curve(nil, nil, 5); got != nil {
		t.Error(got)
	}
	if got := channelcount.Smear([][]int{{0}}, []float64{1}, []float64{0}); got != 0 {
		t.Error(got)
	}
	if got := len(channelcount.Curve(make([]float64, 70), make([]float64, 70), 99)); got != channelcount.Most {
		t.Errorf("%d values", got)
	}
}

func ExampleSentence() {
	arrival := []float64{5.1e-3, 5.12e-3, 5.4e-3, 5.43e-3, 5.6e-3, 5.61e-3} // s
	fmt.Println(channelcount.Sentence(channelcount.Curve(arrival, []float64{1, 1, 1, 1, 1, 1}, 6)))
	fmt.Println(channelcount.Sentence([]float64{1e-4, 5e-5, 0}))
	// Output:
	// More than 3 channels hardly pay: 3 lower the smear from 204 us to 10.8 us, and each further one gains less than 13 us, a tenth of what the second channel does.
	// Every channel up to 3 pays: they lower the smear from 100 us to 0 us.
}

func BenchmarkCurve(b *testing.B) {
	for _, size := range []struct{ drivers, channels int }{{60, 60}, {2000, 16}} {
		b.Run(fmt.Sprintf("%d drivers %d channels", size.drivers, size.channels), func(b *testing.B) {
			r := rand.New(rand.NewPCG(3, 4))
			arrival, weight := make([]float64, size.drivers), make([]float64, size.drivers)
			for i := range arrival {
				arrival[i], weight[i] = r.Float64(), r.Float64()
			}
			b.ReportAllocs()
			for b.Loop() {
				channelcount.Curve(arrival, weight, size.channels)
			}
		})
	}
}
