package split_test

import (
	"fmt"
	"testing"

	"pappus/timing/split"

	"github.com/google/go-cmp/cmp"
	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

func TestNeighbours(t *testing.T) {
	cube := []r3.Vec{{X: -1, Y: -1, Z: -1}, {X: 1, Y: -1, Z: -1}, {X: -1, Y: 1, Z: -1}, {X: 1, Y: 1, Z: -1},
		{X: -1, Y: -1, Z: 1}, {X: 1, Y: -1, Z: 1}, {X: -1, Y: 1, Z: 1}, {X: 1, Y: 1, Z: 1}}
	tests := []struct {
		name  string
		place []r3.Vec
		count int
		want  [][]int
	}{
		{"none", nil, 2, nil},
		{"a cube's front and back", cube, 2, [][]int{{1, 3, 5, 7}, {0, 2, 4, 6}}},
		{"and each cut again, left first", cube, 4, [][]int{{3, 7}, {1, 5}, {2, 6}, {0, 4}}},
		{"one group", cube[:3], 0, [][]int{{0, 1, 2}}},
		{"no more groups than places", cube[:2], 9, [][]int{{1}, {0}}},
		{"along the longest way", []r3.Vec{{Z: 5}, {X: 1}, {Z: -5}, {Z: 4}}, 2, [][]int{{0, 3}, {1, 2}}},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			if diff := cmp.Diff(test.want, split.Neighbours(test.place, test.count)); diff != "" {
				t.Error(diff)
			}
		})
	}
}

// TestNeighboursShareEvenly: every place is in one group, and no two groups
// differ by more than one.
func TestNeighboursShareEvenly(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		place := make([]r3.Vec, rapid.IntRange(1, 40).Draw(t, "n"))
		one := rapid.Float64Range(-1, 1)
		for i := range place {
			place[i] = r3.Vec{X: one.Draw(t, "x"), Y: one.Draw(t, "y"), Z: one.Draw(t, "z")}
		}
		count := rapid.IntRange(1, len(place)).Draw(t, "count")
		groups := split.Neighbours(place, count)
		seen := make([]int, len(place))
		for _, g := range groups {
			if len(g) < len(place)/count || len(g) > (len(place)+count-1)/count {
				t.Fatalf("%d of %d places in one of %d groups", len(g), len(place), count)
			}
			for _, i := range g {
				seen[i]++
			}
		}
		for i, n := range seen {
			if n != 1 {
				t.Fatalf("place %d is in %d groups", i, n)
			}
		}
	})
}

func ExampleNeighbours() {
	place := []r3.Vec{{X: 0.1}, {X: -0.1}, {X: 0.09, Y: 0.03}, {X: -0.09, Y: 0.03}} // m
	fmt.Println(split.Neighbours(place, 2))
	// Output: [[0 2] [1 3]]
}
