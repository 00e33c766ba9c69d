package split_test

import (
	"math"
	"slices"
	"testing"

	"pappus/timing/split"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

func TestTies(t *testing.T) {
	whole := func(int) bool { return true }
	tests := []struct {
		name    string
		arrival []float64
		count   int
		allowed func(int) bool
		want    [][]int
	}{
		{"six equal ones in three", []float64{7, 7, 7, 7, 7, 7}, 3, whole, [][]int{{0, 1}, {2, 3}, {4, 5}}},
		{"in four: the later are larger", []float64{7, 7, 7, 7, 7, 7}, 4, whole, [][]int{{0}, {1}, {2, 3}, {4, 5}}},
		{"even sizes only", []float64{7, 7, 7, 7, 7, 7}, 2, func(n int) bool { return n%2 == 0 }, [][]int{{0, 1}, {2, 3, 4, 5}}},
		{"twice equal ones", []float64{9, 7, 9, 7, 9, 7, 9, 7}, 4, whole, [][]int{{1, 3}, {5, 7}, {0, 2}, {4, 6}}},
		{"a mirrored row", []float64{-1, 0, 1}, 2, whole, [][]int{{0}, {1, 2}}},
		// A third is no sum of powers of two, so each sum here rounds.
		{"a mirrored row that rounds", []float64{-1. / 3, 0, 1. / 3, -1, 1}, 2, whole, [][]int{{3, 0}, {1, 2, 4}}},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			weight := make([]float64, len(test.arrival))
			for i := range weight {
				weight[i] = 0.1
			}
			got := split.NewSplits(test.arrival, weight, test.allowed).Groups(test.count)
			if diff := cmp.Diff(test.want, got); diff != "" {
				t.Error(diff)
			}
		})
	}
}

// TestTiesAreSettled holds the promise for arrivals with many ties against every
// cut of the sorted list: least cost, then the least sum of squared sizes, then the
// largest last group, the largest before it, and so on.
func TestTiesAreSettled(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 10).Draw(t, "n")
		count := rapid.IntRange(1, n).Draw(t, "count")
		size := rapid.SliceOfN(rapid.Bool(), n+1, n+1).Draw(t, "size")
		from := rapid.IntRange(0, 4).Draw(t, "from") // all sizes from here on; 0: as drawn
		arrival, weight := make([]float64, n), make([]float64, n)
		heaviest := rapid.IntRange(1, 2).Draw(t, "heaviest")
		for i := range n {
			arrival[i] = float64(rapid.IntRange(0, 4).Draw(t, "arrival")) / 3e3
			weight[i] = float64(rapid.IntRange(1, heaviest).Draw(t, "weight")) / 7
		}
		allowed := func(s int) bool { return from > 0 && s >= from || from == 0 && size[s] }
		order := make([]int, n)
		for i := range order {
			order[i] = i
		}
		slices.SortStableFunc(order, func(a, b int) int { return int(math.Round(3e3 * (arrival[a] - arrival[b]))) })
		var best [][]int
		least := math.Inf(1)
		cuts(n, count, allowed, func(sizes []int) {
			groups, from := make([][]int, count), 0
			for k, s := range sizes {
				groups[k] = order[from : from+s]
				from += s
			}
			c := residual(arrival, weight, groups)
			const same = 1e-18 // costs are near 1e-6, and far more than that apart
			if c < least-same || c < least+same && evener(groups, best) {
				least, best = min(c, least), groups
			}
		})
		got := split.NewSplits(arrival, weight, allowed).Groups(count)
		if diff := cmp.Diff(best, got); diff != "" {
			t.Fatal(diff)
		}
	})
}

// TestSplitsAreThose of one count alone, for each number of groups, in whatever order they are asked for.
func TestSplitsAreThose(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(0, 12).Draw(t, "n")
		least := rapid.IntRange(1, 3).Draw(t, "least")
		arrival, weight := make([]float64, n), make([]float64, n)
		for i := range n {
			arrival[i], weight[i] = rapid.Float64Range(0, 1e-3).Draw(t, "arrival"), rapid.Float64Range(0.01, 2).Draw(t, "weight")
		}
		gap := rapid.IntRange(1, 12).Draw(t, "size that will not do")
		allowed := func(size int) bool { return size >= least && size != gap }
		all := split.NewSplits(arrival, weight, allowed)
		if all.Groups(0) != nil || all.Groups(n+1) != nil {
			t.Fatal("groups without drivers")
		}
		for _, count := range rapid.Permutation(rising(n)).Draw(t, "order") {
			want := split.NewSplits(arrival, weight, allowed).Groups(count)
			if diff := cmp.Diff(want, all.Groups(count)); diff != "" {
				t.Fatalf("%d groups: %s", count, diff)
			}
		}
	})
}

// rising returns 1 to n.
func rising(n int) []int {
	out := make([]int, n)
	for i := range out {
		out[i] = i + 1
	}
	return out
}

// cuts calls do with all ways to cut n into count allowed sizes.
func cuts(n, count int, allowed func(int) bool, do func([]int)) {
	sizes := make([]int, 0, count)
	var cut func(left int)
	cut = func(left int) {
		if len(sizes) == count-1 {
			if left > 0 && allowed(left) {
				do(append(sizes, left))
			}
			return
		}
		for s := 1; s < left; s++ {
			if allowed(s) {
				sizes = append(sizes, s)
				cut(left - s)
				sizes = sizes[:len(sizes)-1]
			}
		}
	}
	cut(n)
}

// evener tells whether a, of as many groups as b, is to be preferred.
func evener(a, b [][]int) bool {
	squares := func(groups [][]int) (sum int) {
		for _, g := range groups {
			sum += len(g) * len(g)
		}
		return sum
	}
	if d := squares(a) - squares(b); d != 0 {
		return d < 0
	}
	for k := len(a) - 1; k >= 0; k-- {
		if d := len(a[k]) - len(b[k]); d != 0 {
			return d > 0
		}
	}
	return false
}
