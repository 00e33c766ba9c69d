package split_test

import (
	"fmt"
	"math"
	"testing"

	"pappus/timing/split"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

func TestGroups(t *testing.T) {
	tests := []struct {
		name    string
		arrival []float64
		count   int
		want    [][]int
	}{
		{"none", nil, 3, nil},
		{"one", []float64{5}, 3, [][]int{{0}}},
		{"two clumps", []float64{1, 9, 1.1, 9.1}, 2, [][]int{{0, 2}, {1, 3}}},
		{"equal arrivals stay in order", []float64{2, 1, 2, 1}, 2, [][]int{{1, 3}, {0, 2}}},
		{"as many groups as arrivals", []float64{3, 1, 2}, 3, [][]int{{1}, {2}, {0}}},
		{"no group counts as one", []float64{3, 1}, 0, [][]int{{1, 0}}},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			weight := make([]float64, len(test.arrival))
			for i := range weight {
				weight[i] = 1
			}
			got, _ := split.Groups(test.arrival, weight, test.count)
			if diff := cmp.Diff(test.want, got); diff != "" {
				t.Error(diff)
			}
		})
	}
}

// TestGroupsAreBest tries every assignment of a few arrivals to groups, sorted
// or not.
func TestGroupsAreBest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 7).Draw(t, "n")
		count := rapid.IntRange(1, 3).Draw(t, "count")
		arrival, weight := make([]float64, n), make([]float64, n)
		for i := range n {
			arrival[i] = rapid.Float64Range(0, 1e-3).Draw(t, "arrival")
			weight[i] = rapid.Float64Range(0.01, 2).Draw(t, "weight")
		}
		groups, cost := split.Groups(arrival, weight, count)
		if own := residual(arrival, weight, groups); math.Abs(own-cost) > 1e-18 {
			t.Fatalf("cost %g, its groups have %g", cost, own)
		}
		least := math.Inf(1)
		ways := int(math.Pow(float64(count), float64(n)))
		for way := range ways {
			tried := make([][]int, count)
			for i, left := 0, way; i < n; i, left = i+1, left/count {
				tried[left%count] = append(tried[left%count], i)
			}
			least = min(least, residual(arrival, weight, tried))
		}
		if cost > least+1e-18 {
			t.Fatalf("cost %g, the best of all assignments has %g", cost, least)
		}
	})
}

// residual computes the cost of groups from its definition.
func residual(arrival, weight []float64, groups [][]int) float64 {
	sum := 0.0
	for _, g := range groups {
		var w, mean float64
		for _, i := range g {
			w += weight[i]
			mean += weight[i] * arrival[i]
		}
		mean /= w
		for _, i := range g {
			sum += weight[i] * (arrival[i] - mean) * (arrival[i] - mean)
		}
	}
	return sum
}

func ExampleGroups() {
	arrival := []float64{5.10e-3, 5.52e-3, 5.12e-3, 5.50e-3} // s
	groups, _ := split.Groups(arrival, []float64{1, 1, 1, 1}, 2)
	fmt.Println(groups)
	// Output: [[0 2] [3 1]]
}

func BenchmarkGroups(b *testing.B) {
	for _, n := range []int{60, 2000} {
		b.Run(fmt.Sprintf("%d drivers 8 groups", n), func(b *testing.B) {
			arrival, weight := make([]float64, n), make([]float64, n)
			for i := range arrival {
				arrival[i] = math.Abs(math.Sin(float64(i)))
				weight[i] = 1
			}
			b.ReportAllocs()
			for b.Loop() {
				split.Groups(arrival, weight, 8)
			}
		})
	}
}
