package channelcount_test

import (
	"math"
	"slices"
	"testing"

	"pappus/timing/channelcount"

	"pgregory.net/rapid"
)

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
		{"not the second but the third", []float64{20, 20, 10, 8, 7.5}, 4},
		{"worse on the way", []float64{20, 10, 12, 9.5, 8.9, 8.9}, 2},
		{"better again than the best of fewer", []float64{20, 10, 12, 8, 8}, 4},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			if got := channelcount.Knee(test.smear); got != test.want {
				t.Errorf("%d, want %d", got, test.want)
			}
		})
	}
}

// TestKneesAreWhatTheySay holds the sentences' claims for any curve, falling or
// not: beyond the knee none pays, the knee itself does.
func TestKneesAreWhatTheySay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		smear := rapid.SliceOfN(rapid.Float64Range(0, 1e-3), 1, 30).Draw(t, "smear")
		knee := channelcount.Knee(smear)
		lowers := func(k int) float64 { // the channel k, from 1
			if k == 1 {
				return 0
			}
			return max(0, slices.Min(smear[:k-1])-smear[k-1])
		}
		best := 0.0
		for k := range smear {
			best = max(best, lowers(k+1))
		}
		if best < 1e-9 {
			if knee != 1 {
				t.Fatalf("knee at %d, but no channel pays", knee)
			}
			return
		}
		for k := knee; k <= len(smear); k++ {
			if pays := lowers(k) >= channelcount.Share*best; pays != (k == knee) {
				t.Fatalf("knee at %d, but that channel %d pays is %t: %g", knee, k, pays, smear)
			}
		}
	})
}

func TestOnsetKnee(t *testing.T) {
	none := math.Inf(1)
	tests := []struct {
		name  string
		onset []float64
		want  int
	}{
		{"empty", nil, 0},
		{"one", []float64{300}, 1},
		{"no gain", []float64{300, 320, 329}, 1},
		{"a tenth pays", []float64{1000, 2000, 2200, 2300}, 3},
		{"slow steps do not add up", []float64{1000, 2000, 2190, 2400, 2630}, 2},
		{"lower on the way", []float64{1000, 2000, 1500, 2100, 2320}, 5},
		{"until there is none", []float64{1000, 2000, none, none}, 3},
		{"none and some again", []float64{1000, none, 2000, none}, 2},
		{"none at all", []float64{none, none}, 1},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			if got := channelcount.OnsetKnee(test.onset); got != test.want {
				t.Errorf("%d, want %d", got, test.want)
			}
		})
	}
}

// TestBestAndEvery: which channel gains most, the first of several, and whether all pay.
func TestBestAndEvery(t *testing.T) {
	none := math.Inf(1)
	tests := []struct {
		name         string
		smear, onset []float64
		best         int
		gain         float64
		pays, raises bool
	}{
		{"nothing", nil, nil, 0, 0, true, true},
		{"one", []float64{1e-4}, []float64{400}, 1, 0, true, true},
		{"the second", []float64{2e-4, 1e-4, 9.5e-5}, []float64{400, 800, 1600}, 2, 1e-4, false, true},
		{"the third", []float64{2e-4, 2e-4, 1e-4}, []float64{400, 800, 800}, 3, 1e-4, false, false},
		{"a tenth of the best and more", []float64{2e-4, 1e-4, 8.9e-5}, []float64{400, 441, 486}, 2, 1e-4, true, true},
		{"a tenth and less", []float64{2e-4, 1e-4, 9.1e-5}, []float64{400, 439, none}, 2, 1e-4, false, false},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			best, gain := channelcount.Best(test.smear)
			if best != test.best || math.Abs(gain-test.gain) > 1e-12 {
				t.Errorf("channel %d gains %g s", best, gain)
			}
			if pays, raises := channelcount.EveryPays(test.smear), channelcount.EveryRaises(test.onset); pays != test.pays || raises != test.raises {
				t.Errorf("every one pays %v, raises %v", pays, raises)
			}
		})
	}
}
