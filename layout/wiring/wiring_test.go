package wiring_test

import (
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"strconv"
	"testing"

	"pappus/layout/wiring"

	"pgregory.net/rapid"
)

// The table holds Ohm's law worked out for banks that people build, to the
// printed digit; see its first line.
func TestLoadAgainstTable(t *testing.T) {
	rows := table(t, "../../testdata/reference/wiring.csv")
	if len(rows) < 5 {
		t.Fatalf("%d rows", len(rows))
	}
	for _, row := range rows {
		drivers, series, parallel := int(row[0]), int(row[1]), int(row[2])
		if series*parallel != drivers {
			t.Errorf("%d by %d is not %d", series, parallel, drivers)
		}
		for _, c := range []struct{ each, total float64 }{{row[3], row[4]}, {row[5], row[6]}} {
			if got := wiring.Load(series, parallel, c.each); math.Abs(got-c.total) > 5e-5 {
				t.Errorf("%d strings of %d, %g ohm each: %g ohm, want %g", parallel, series, c.each, got, c.total)
			}
		}
		// Each bank is the best one for an amplifier that allows just its load.
		s, p, load, ok := wiring.Best(drivers, row[3], row[5], wiring.Load(series, parallel, row[5]))
		if s != series || p != parallel || !ok || math.Abs(load-row[4]) > 5e-5 {
			t.Errorf("best of %d: %d by %d, %g ohm, %v; want %d by %d, %g ohm", drivers, s, p, load, ok, series, parallel, row[4])
		}
	}
}

func TestBest(t *testing.T) {
	cases := []struct {
		name                 string
		n                    int
		nominal, dc, minimum float64
		series, parallel     int
		load                 float64
		ok                   bool
	}{
		{"one driver that will do", 1, 8, 7, 4, 1, 1, 8, true},
		{"one driver under the minimum", 1, 4, 3.4, 4, 1, 1, 4, false},
		{"four of eight ohm on four", 4, 8, 7, 4, 2, 2, 8, true},
		{"nominal would do but resistance would not", 2, 8, 7, 4, 2, 1, 16, true},
		{"minimum met exactly", 2, 8, 8, 4, 1, 2, 4, true},
		{"a prime number of drivers", 13, 8, 7, 4, 13, 1, 104, true},
		{"rounding does not count", 9, 0.1, 0.1, 0.1, 3, 3, 0.1, true},
		{"none reaches it", 6, 4, 3, 100, 6, 1, 24, false},
		{"no drivers", 0, 8, 7, 4, 0, 0, 0, false},
		{"less than none", -3, 8, 7, 4, 0, 0, 0, false},
		{"minimum is no number", 2, 8, 7, math.NaN(), 2, 1, 16, false},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			s, p, load, ok := wiring.Best(c.n, c.nominal, c.dc, c.minimum)
			if s != c.series || p != c.parallel || ok != c.ok || math.Abs(load-c.load) > 1e-12 {
				t.Errorf("%d by %d, %g ohm, %v; want %d by %d, %g ohm, %v", s, p, load, ok, c.series, c.parallel, c.load, c.ok)
			}
		})
	}
}

// No other way of stringing all the drivers comes closer to the minimum from above.
func TestBestIsLowest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 200).Draw(t, "drivers")
		dc := rapid.Float64Range(1, 20).Draw(t, "ohm")
		least := rapid.Float64Range(0.5, 100).Draw(t, "minimum")
		s, p, _, ok := wiring.Best(n, dc, dc, least)
		if s*p != n {
			t.Fatalf("%d by %d is not %d", s, p, n)
		}
		got := wiring.Load(s, p, dc)
		for series := 1; series <= n; series++ {
			if n%series != 0 {
				continue
			}
			other := wiring.Load(series, n/series, dc)
			if other >= least && (!ok || other < got*(1-1e-9)) {
				t.Fatalf("%d by %d gives %g ohm, but %d by %d gives %g", s, p, got, series, n/series, other)
			}
		}
		if ok && got < least*(1-1e-9) {
			t.Fatalf("%g ohm is under %g", got, least)
		}
	})
}

func ExampleBest() {
	series, parallel, load, ok := wiring.Best(24, 8, 7.1, 4)
	fmt.Printf("%d strings of %d, %.1f ohm, %v\n", parallel, series, load, ok)
	// Output: 6 strings of 4, 5.3 ohm, true
}

func table(t *testing.T, path string) [][]float64 {
	t.Helper()
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	text, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var rows [][]float64
	for _, line := range text[1:] {
		row := make([]float64, len(line))
		for i, s := range line {
			if row[i], err = strconv.ParseFloat(s, 64); err != nil {
				t.Fatal(err)
			}
		}
		rows = append(rows, row)
	}
	return rows
}
