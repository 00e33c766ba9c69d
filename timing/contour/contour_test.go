package contour_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"pappus/timing/contour"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// TestCircle: the line of a distance is one closed circle.
func TestCircle(t *testing.T) {
	const n, radius = 41, 13.3
	values := make([]float64, n*n)
	for i := range values {
		values[i] = math.Hypot(float64(i%n)-20.2, float64(i/n)-19.7)
	}
	lines := contour.Lines(values, n, n, radius)
	if len(lines) != 1 || lines[0][0] != lines[0][len(lines[0])-1] {
		t.Fatalf("%d lines, want one that is closed", len(lines))
	}
	long := 0.0
	for i, p := range lines[0] {
		if r := math.Hypot(p.Column-20.2, p.Row-19.7); math.Abs(r-radius) > 0.02 {
			t.Errorf("%v is %g off the middle", p, r)
		}
		if i > 0 {
			q := lines[0][i-1]
			long += math.Hypot(p.Column-q.Column, p.Row-q.Row)
		}
	}
	if math.Abs(long/(2*math.Pi*radius)-1) > 0.005 {
		t.Errorf("%g round, want %g", long, 2*math.Pi*radius)
	}
}

func TestLines(t *testing.T) {
	inf, nan := math.Inf(1), math.NaN()
	type line = []contour.Point
	for _, test := range []struct {
		name    string
		columns int
		values  []float64
		want    []line
	}{
		{"one value", 2, []float64{1, 1, 1, 1}, nil},
		{"up", 2, []float64{0, 0, 2, 2}, []line{{{0, 0.5}, {1, 0.5}}}},
		{"across", 2, []float64{0, 4, 0, 4}, []line{{{0.25, 0}, {0.25, 1}}}},
		{"beside no end", 2, []float64{0, inf, 0, inf}, []line{{{0.5, 0}, {0.5, 1}}}},
		{"no number", 2, []float64{0, nan, 2, 2}, nil},
		{"over two squares", 3, []float64{0, 0, 0, 2, 2, 2}, []line{{{0, 0.5}, {1, 0.5}, {2, 0.5}}}},
		{"saddle, low joined", 2, []float64{0, 1.5, 1.5, 0}, []line{{{2.0 / 3, 0}, {1, 1.0 / 3}}, {{0, 2.0 / 3}, {1.0 / 3, 1}}}},
		{"saddle, high joined", 2, []float64{0, 3, 3, 0}, []line{{{1.0 / 3, 0}, {0, 1.0 / 3}}, {{2.0 / 3, 1}, {1, 2.0 / 3}}}},
		{"a single row", 3, []float64{0, 2, 0}, nil},
	} {
		t.Run(test.name, func(t *testing.T) {
			got := contour.Lines(test.values, test.columns, len(test.values)/test.columns, 1)
			near := cmp.Comparer(func(a, b float64) bool { return math.Abs(a-b) < 1e-12 })
			for _, l := range got { // either way round
				if a, b := l[0], l[len(l)-1]; b.Row < a.Row || b.Row == a.Row && b.Column < a.Column {
					slices.Reverse(l)
				}
			}
			for _, l := range test.want {
				if a, b := l[0], l[len(l)-1]; b.Row < a.Row || b.Row == a.Row && b.Column < a.Column {
					slices.Reverse(l)
				}
			}
			if d := cmp.Diff(test.want, got, near); d != "" {
				t.Error(d)
			}
		})
	}
}

// TestWhole: every crossing of an edge is on one line, and lines end at the border alone.
func TestWhole(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		columns, rows := rapid.IntRange(2, 9).Draw(t, "columns"), rapid.IntRange(2, 9).Draw(t, "rows")
		values := rapid.SliceOfN(rapid.Float64Range(0, 2), columns*rows, columns*rows).Draw(t, "values")
		for i := range values {
			if math.Abs(values[i]-1) < 1e-6 {
				values[i] += 1e-3 // off the corners, where points of two edges are one
			}
		}
		seen := map[string]int{}
		for _, line := range contour.Lines(values, columns, rows, 1) {
			closed := line[0] == line[len(line)-1]
			for i, p := range line {
				if closed && i == 0 {
					continue
				}
				seen[fmt.Sprint(math.Floor(p.Column), math.Floor(p.Row), p.Column == math.Floor(p.Column))]++
				end := !closed && (i == 0 || i == len(line)-1)
				if at := p.Column == 0 || p.Row == 0 || p.Column == float64(columns-1) || p.Row == float64(rows-1); end && !at {
					t.Fatalf("a line ends at %v", p)
				}
			}
		}
		crossings := 0
		for i, v := range values {
			if i%columns < columns-1 && (v < 1) != (values[i+1] < 1) {
				crossings++
			}
			if i/columns < rows-1 && (v < 1) != (values[i+columns] < 1) {
				crossings++
			}
		}
		total := 0
		for _, n := range seen {
			total += n
		}
		if total != crossings {
			t.Fatalf("%d points, want %d", total, crossings)
		}
	})
}
