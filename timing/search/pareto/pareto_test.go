package pareto

import (
	"math"
	"math/bits"
	"math/rand/v2"
	"slices"
	"testing"

	"pappus/testdata/thorough"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

func init() { thorough.Random() }

// cloud draws points of 1 to 5 aims, of few values so that many are equal somewhere.
func cloud(values []float64, least, most int) *rapid.Generator[[][]float64] {
	return rapid.Custom(func(t *rapid.T) [][]float64 {
		aims := rapid.IntRange(1, 5).Draw(t, "aims")
		one := rapid.SliceOfN(rapid.SampledFrom(values), aims, aims)
		return rapid.SliceOfN(one, least, most).Draw(t, "points")
	})
}

// continuous returns n points without doubles on or over the front sum = 1.
func continuous(n, aims int, thick float64, seed uint64) [][]float64 {
	r := rand.New(rand.NewPCG(seed, 1))
	points := make([][]float64, n)
	for i := range points {
		p, s := make([]float64, aims), 0.0
		for a := range p {
			p[a] = r.ExpFloat64()
			s += p[a]
		}
		for a := range p {
			p[a] = p[a]/s + thick*r.Float64()
		}
		points[i] = p
	}
	return points
}

// dominates is the definition, with NaN as +Inf.
func dominates(p, q []float64) bool {
	less := false
	for a := range p {
		if known(p[a]) > known(q[a]) {
			return false
		}
		less = less || known(p[a]) < known(q[a])
	}
	return less
}

// peeled is the definition of layers: take the front away, again and again.
func peeled(points [][]float64) []int {
	layer := make([]int, len(points))
	left := make(map[int]bool)
	for i := range points {
		left[i] = true
	}
	for now := 0; len(left) > 0; now++ {
		var front []int
		for i := range left {
			on := true
			for j := range left {
				on = on && !dominates(points[j], points[i])
			}
			if on {
				front = append(front, i)
			}
		}
		for _, i := range front {
			layer[i] = now
			delete(left, i)
		}
	}
	return layer
}

func TestLayersAreThoseOfTheDefinition(t *testing.T) {
	values := []float64{0, 1, 2, 3, -1.5, 7, math.Inf(1), math.Inf(-1), math.NaN()}
	rapid.Check(t, func(t *rapid.T) {
		points := cloud(values, 0, 90).Draw(t, "cloud")
		if diff := cmp.Diff(peeled(points), Layers(points)); diff != "" {
			t.Fatal(diff)
		}
	})
}

func TestLayersOfManyAreThoseOfTheDefinition(t *testing.T) {
	for aims := 2; aims <= 5; aims++ {
		for seed, thick := range []float64{0, 0.1, 10} {
			points := continuous(600, aims, thick, uint64(seed))
			if diff := cmp.Diff(peeled(points), Layers(points)); diff != "" {
				t.Errorf("%d aims, thick %g: %s", aims, thick, diff)
			}
		}
	}
}

// On a full lattice what dominates a point is the box below it: its layer is its sum.
func TestLayersOfALattice(t *testing.T) {
	for aims, side := range map[int]int{1: 50, 2: 40, 3: 14, 4: 8, 5: 6} {
		var points [][]float64
		var want []int
		for i := range int(math.Pow(float64(side), float64(aims))) {
			p, s := make([]float64, aims), 0
			for a, rest := 0, i; a < aims; a, rest = a+1, rest/side {
				p[a] = float64(rest % side)
				s += rest % side
			}
			points, want = append(points, p), append(want, s)
		}
		if diff := cmp.Diff(want, Layers(points)); diff != "" {
			t.Errorf("%d aims: %s", aims, diff)
		}
	}
}

// inclusionExclusion is the volume of a union of boxes by its definition.
func inclusionExclusion(points [][]float64, reference []float64) float64 {
	sum := 0.0
	for set := 1; set < 1<<len(points); set++ {
		v := 1.0
		for a := range reference {
			corner := math.Inf(-1)
			for i, p := range points {
				if set>>i&1 == 1 {
					corner = max(corner, p[a])
				}
			}
			v *= max(0, reference[a]-corner)
		}
		if bits.OnesCount(uint(set))%2 == 0 {
			v = -v
		}
		sum += v
	}
	return sum
}

// Whole numbers up to 9 keep all sums exact.
func TestHypervolumeIsThatOfTheDefinition(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		points := cloud([]float64{0, 1, 2, 3, 4, 6, 9}, 1, 9).Draw(t, "cloud")
		reference := slices.Repeat([]float64{7}, len(points[0]))
		if want, got := inclusionExclusion(points, reference), Hypervolume(points, reference); want != got {
			t.Fatalf("want %g, got %g", want, got)
		}
	})
}

// All places of a lattice with the sum m cover each unit cell but those whose sum is under m:
// (m+1)^aims - C(m-1+aims, aims).
func TestHypervolumeOfASimplex(t *testing.T) {
	for _, c := range []struct {
		aims, m int
		below   float64
	}{{2, 30, 465}, {3, 15, 680}, {4, 8, 330}, {5, 5, 126}} {
		var points [][]float64
		var fill func(p []float64, left int)
		fill = func(p []float64, left int) {
			if len(p) == c.aims-1 {
				points = append(points, append(slices.Clone(p), float64(left)))
				return
			}
			for v := 0; v <= left; v++ {
				fill(append(p, float64(v)), left-v)
			}
		}
		fill(nil, c.m)
		want := math.Pow(float64(c.m+1), float64(c.aims)) - c.below
		if got := Hypervolume(points, slices.Repeat([]float64{float64(c.m + 1)}, c.aims)); got != want {
			t.Errorf("%d aims: want %g, got %g", c.aims, want, got)
		}
	}
}

func TestHypervolumeOfWhatIsOutside(t *testing.T) {
	reference := []float64{1, 1, 1}
	for name, p := range map[string][]float64{
		"at the reference": {0, 1, 0}, "beyond": {0, 0, 2}, "unknown": {0, math.NaN(), 0}, "without end": {math.Inf(1), 0, 0},
	} {
		if got := Hypervolume([][]float64{p, {0.5, 0.5, 0.5}}, reference); got != 0.125 {
			t.Errorf("%s: want 0.125, got %g", name, got)
		}
	}
	if got := Hypervolume(nil, reference); got != 0 {
		t.Errorf("nothing covers %g", got)
	}
}

func TestHypervolumeInAnyOrderAndNeverLessWithMore(t *testing.T) {
	for aims := 2; aims <= 5; aims++ {
		points := continuous(60, aims, 0.2, 5)
		reference := slices.Repeat([]float64{1.3}, aims)
		want := Hypervolume(points, reference)
		if less := Hypervolume(points[:59], reference); less > want {
			t.Errorf("%d aims: a point more makes %g of %g", aims, want, less)
		}
		r := rand.New(rand.NewPCG(1, 2))
		r.Shuffle(len(points), func(i, j int) { points[i], points[j] = points[j], points[i] })
		if got := Hypervolume(points, reference); got != want {
			t.Errorf("%d aims: %g, and %g in another order", aims, want, got)
		}
	}
}

// scaled is what Pick sees: the front without doubles over its ranges.
func scaled(points [][]float64) map[int][]float64 {
	front, unit := unitFront(points)
	m := make(map[int][]float64)
	for k, i := range front {
		m[i] = unit[k]
	}
	return m
}

func TestPick(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		points := cloud([]float64{0, 1, 2, 3, 5, 8, 13, math.NaN()}, 1, 40).Draw(t, "cloud")
		n := rapid.IntRange(0, 12).Draw(t, "n")
		front := scaled(points)
		got := Pick(points, n)
		if want := min(n, len(front)); len(got) != want {
			t.Fatalf("%d picked, want %d", len(got), want)
		}
		seen := make(map[int]bool)
		for _, i := range got {
			if front[i] == nil || seen[i] {
				t.Fatalf("%d is not of the front, or there already: %v", i, got)
			}
			seen[i] = true
		}
		if more := Pick(points, n+1); !slices.Equal(got, more[:len(got)]) {
			t.Fatalf("%v, and with one more %v", got, more)
		}
		for a := range points[0] {
			least := math.Inf(1)
			for _, p := range front {
				least = min(least, p[a])
			}
			if n > a && !slices.ContainsFunc(got, func(i int) bool { return front[i][a] == least }) {
				t.Fatalf("none of %v is the least in aim %d", got, a)
			}
		}
	})
}

// Each point after the least of all aims adds the most, and all together at least 1 - 1/e of
// what the best choice of as many adds.
func TestPickAddsTheMost(t *testing.T) {
	for aims := 2; aims <= 4; aims++ {
		for seed := range uint64(6) {
			points := continuous(14, aims, 0, seed)
			front := scaled(points)
			reference := slices.Repeat([]float64{1 + beyond}, aims)
			covered := func(set []int) float64 {
				var p [][]float64
				for _, i := range set {
					p = append(p, front[i])
				}
				return Hypervolume(p, reference)
			}
			got := Pick(points, aims+3)
			for n := aims; n < len(got); n++ {
				for i := range points {
					if have, other := covered(got[:n+1]), covered(append(slices.Clone(got[:n]), i)); other > have+1e-12 {
						t.Errorf("%d aims: %d adds %g, %d would %g", aims, got[n], have, i, other)
					}
				}
			}
			start, best := covered(got[:aims]), 0.0
			for set := range 1 << len(points) {
				if bits.OnesCount(uint(set)) != 3 {
					continue
				}
				with := slices.Clone(got[:aims])
				for i := range points {
					if set>>i&1 == 1 {
						with = append(with, i)
					}
				}
				best = max(best, covered(with))
			}
			if have := covered(got); have-start < (1-1/math.E)*(best-start) {
				t.Errorf("%d aims, seed %d: %g over %g, the best are %g", aims, seed, have, start, best)
			}
		}
	}
}

// With the least of three aims at (0,1,1), (1,0,1) and (1,1,0) and the reference b beyond, p
// adds (1+b-x)(1+b-y)(1+b-z) - b^2 (3+3b-x-y-z) + 2 b^3. The two last points add the same
// where b is 1/9: each is taken before the other on its side of that.
func TestPickLooksANinthBeyondTheFront(t *testing.T) {
	adds := func(p []float64, b float64) float64 {
		return (1+b-p[0])*(1+b-p[1])*(1+b-p[2]) - b*b*(3+3*b-p[0]-p[1]-p[2]) + 2*b*b*b
	}
	even := func(b float64) []float64 { // as much as the uneven one
		low, high := 0.0, 1.0
		for range 60 {
			if m := (low + high) / 2; adds([]float64{m, m, m}, b) > adds([]float64{0.9, 0.1, 0.1}, b) {
				low = m
			} else {
				high = m
			}
		}
		return []float64{low, low, low}
	}
	for _, c := range []struct {
		b    float64
		want int
	}{{1 / 9.0 * 0.9, 3}, {1 / 9.0 * 1.1, 4}} {
		points := [][]float64{{0, 1, 1}, {1, 0, 1}, {1, 1, 0}, {0.9, 0.1, 0.1}, even(c.b)}
		if got := Pick(points, 4)[3]; got != c.want {
			t.Errorf("set for %g beyond: took %d, want %d", c.b, got, c.want)
		}
	}
}

func TestPickOfNothing(t *testing.T) {
	if got := Pick(nil, 3); got != nil {
		t.Errorf("got %v", got)
	}
	if got := Pick([][]float64{{2, 2}, {1, 1}, {1, 1}}, 3); !slices.Equal(got, []int{1}) {
		t.Errorf("doubles and what is dominated: got %v", got)
	}
}
