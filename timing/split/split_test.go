package split_test

import (
	"fmt"
	"testing"

	"pappus/timing/split"

	"github.com/google/go-cmp/cmp"
)

func TestGroups(t *testing.T) {
	tests := []struct {
		name    string
		arrival []float64
		count   int
		want    [][]int
	}{
		{"none", nil, 3, nil},
		{"one", []float64{5}, 1, [][]int{{0}}},
		{"two clumps", []float64{1, 9, 1.1, 9.1}, 2, [][]int{{0, 2}, {1, 3}}},
		{"equal arrivals stay in order", []float64{2, 1, 2, 1}, 2, [][]int{{1, 3}, {0, 2}}},
		{"as many groups as arrivals", []float64{3, 1, 2}, 3, [][]int{{1}, {2}, {0}}},
		{"no group", []float64{3, 1}, 0, nil},
		{"more groups than arrivals", []float64{3, 1}, 3, nil},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			weight := make([]float64, len(test.arrival))
			for i := range weight {
				weight[i] = 1
			}
			got := split.NewSplits(test.arrival, weight, atLeast(1)).Groups(test.count)
			if diff := cmp.Diff(test.want, got); diff != "" {
				t.Error(diff)
			}
		})
	}
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

func ExampleSplits() {
	arrival := []float64{5.10e-3, 5.52e-3, 5.12e-3, 5.50e-3} // s
	all := func(int) bool { return true }
	fmt.Println(split.NewSplits(arrival, []float64{1, 1, 1, 1}, all).Groups(2))
	// Output: [[0 2] [3 1]]
}
