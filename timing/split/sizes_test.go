package split_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"pappus/timing/split"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

func atLeast(least int) func(int) bool { return func(size int) bool { return size >= least } }

func TestSplits(t *testing.T) {
	even := func(size int) bool { return size%2 == 0 }
	tests := []struct {
		name    string
		arrival []float64
		count   int
		allowed func(int) bool
		want    [][]int
	}{
		{"a lone one must join", []float64{9, 1, 1.1, 1.2}, 2, atLeast(2), [][]int{{1, 2}, {3, 0}}},
		{"any size", []float64{9, 1, 1.1, 1.2}, 2, atLeast(1), [][]int{{1, 2, 3}, {0}}},
		{"too many groups", []float64{1, 2, 3}, 2, atLeast(2), nil},
		{"no even split of an odd number", []float64{1, 2, 3}, 1, even, nil},
		{"even sizes", []float64{1, 2, 3, 4, 5, 6}, 2, even, [][]int{{0, 1}, {2, 3, 4, 5}}},
		{"none", nil, 2, even, nil},
		{"a cut through equal arrivals", []float64{2, 1, 2, 2}, 2, even, [][]int{{1, 0}, {2, 3}}},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			weight := make([]float64, len(test.arrival))
			for i := range weight {
				weight[i] = 1
			}
			got := split.NewSplits(test.arrival, weight, test.allowed).Groups(test.count)
			if diff := cmp.Diff(test.want, got); diff != "" {
				t.Error(diff)
			}
		})
	}
}

// TestSplitsAreTheBest tries every assignment of equally heavy arrivals to groups,
// and for unequal weights every cut of the list sorted by arrival, then index.
func TestSplitsAreTheBest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 8).Draw(t, "n")
		count := rapid.IntRange(1, min(3, n)).Draw(t, "count")
		size := rapid.SliceOfN(rapid.Bool(), n+1, n+1).Draw(t, "size")
		if from := rapid.IntRange(0, n).Draw(t, "from"); from > 0 { // all sizes from here on
			for s := range size {
				size[s] = s >= from
			}
		}
		equal := rapid.Bool().Draw(t, "equal")
		arrival, weight := make([]float64, n), make([]float64, n)
		for i := range n {
			arrival[i], weight[i] = rapid.Float64Range(0, 1e-3).Draw(t, "arrival"), 1
			if !equal {
				weight[i] = rapid.Float64Range(0.01, 2).Draw(t, "weight")
			}
		}
		groups := split.NewSplits(arrival, weight, func(s int) bool { return size[s] }).Groups(count)
		least := math.Inf(1)
		for way := range int(math.Pow(float64(count), float64(n))) {
			tried := make([][]int, count)
			for i, left := 0, way; i < n; i, left = i+1, left/count {
				tried[left%count] = append(tried[left%count], i)
			}
			if slices.ContainsFunc(tried, func(g []int) bool { return len(g) == 0 || !size[len(g)] }) ||
				!equal && !inOrder(tried, arrival) {
				continue
			}
			least = min(least, residual(arrival, weight, tried))
		}
		if groups == nil != math.IsInf(least, 1) {
			t.Fatalf("%v, but the best of all has %g", groups, least)
		}
		if groups == nil {
			return
		}
		if cost := residual(arrival, weight, groups); math.Abs(cost-least) > 1e-17 {
			t.Fatalf("its groups have %g, the best of all %g", cost, least)
		}
		for _, g := range groups {
			if !size[len(g)] {
				t.Fatalf("a group of %d", len(g))
			}
		}
	})
}

// inOrder tells whether no group reaches into another, equal arrivals standing in
// the order of their indices.
func inOrder(groups [][]int, arrival []float64) bool {
	for a, g := range groups {
		for _, h := range groups[a+1:] {
			var before, after bool
			for _, i := range g {
				for _, j := range h {
					first := arrival[i] < arrival[j] || arrival[i] == arrival[j] && i < j
					before, after = before || first, after || !first
				}
			}
			if before && after {
				return false
			}
		}
	}
	return true
}

// TestLongSplitsKeepTheirRank: a long row is too long to try all cuts of, but more groups
// never cost more where all sizes will do, fewer sizes never less, and no group is the
// better for moving its first member over.
func TestLongSplitsKeepTheirRank(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(20, 300).Draw(t, "n")
		random := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "seed"), 1))
		arrival, weight := make([]float64, n), make([]float64, n)
		for i := range n {
			arrival[i], weight[i] = 5e-3+1e-3*random.Float64(), math.Pow(10, -6*random.Float64())
		}
		some := func(size int) bool { return size <= 40 && (size%2 == 0 || size%3 == 0) || size == 1 }
		free, tight := split.NewSplits(arrival, weight, atLeast(1)), split.NewSplits(arrival, weight, some)
		last := math.Inf(1)
		for count := 1; count <= 12; count++ {
			groups := free.Groups(count)
			cost := residual(arrival, weight, groups)
			if cost > last*(1+1e-9) {
				t.Fatalf("%d groups cost %g, fewer %g", count, cost, last)
			}
			last = cost
			if groups := tight.Groups(count); groups != nil && residual(arrival, weight, groups) < cost*(1-1e-9) {
				t.Fatalf("%d groups of some sizes cost less than of any", count)
			}
			for g := 1; g < count; g++ {
				if len(groups[g]) < 2 {
					continue
				}
				moved := slices.Clone(groups)
				moved[g-1], moved[g] = append(slices.Clone(groups[g-1]), groups[g][0]), groups[g][1:]
				if c := residual(arrival, weight, moved); c < cost*(1-1e-9) {
					t.Fatalf("%d groups: %g, with one moved %g", count, cost, c)
				}
			}
		}
	})
}

func BenchmarkSplits(b *testing.B) {
	for _, c := range []struct {
		name    string
		allowed func(int) bool
	}{
		{"any size", atLeast(1)},
		{"short strings", func(size int) bool { return size <= 340 && (size < 8 || size%5 == 0 || size%7 == 0) }},
	} {
		for _, n := range []int{60, 2000} {
			b.Run(fmt.Sprintf("%d drivers, 8 groups, %s", n, c.name), func(b *testing.B) {
				arrival, weight := make([]float64, n), make([]float64, n)
				for i := range arrival {
					arrival[i], weight[i] = math.Abs(math.Sin(float64(i))), 1
				}
				b.ReportAllocs()
				for b.Loop() {
					split.NewSplits(arrival, weight, c.allowed).Groups(8)
				}
			})
		}
	}
}
