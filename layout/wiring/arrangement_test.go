package wiring_test

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"

	"pappus/layout/wiring"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

func TestArrangements(t *testing.T) {
	type a = wiring.Arrangement
	tests := []struct {
		n    int
		want []a
	}{
		{0, nil},
		{-4, nil},
		{1, []a{{{1, 1}}}},
		{2, []a{{{1, 2}}, {{2, 1}}}},
		{3, []a{{{1, 3}}, {{3, 1}}, {{2, 1}, {1, 1}}}},
		{4, []a{{{1, 4}}, {{2, 2}}, {{4, 1}}, {{2, 1}, {1, 2}}, {{3, 1}, {1, 1}}}},
	}
	for _, test := range tests {
		t.Run(fmt.Sprint(test.n), func(t *testing.T) {
			if diff := cmp.Diff(test.want, wiring.Arrangements(test.n)); diff != "" {
				t.Error(diff)
			}
		})
	}
}

// TestArrangementsAreAll lists every partition of n by recursion and keeps
// those with one or two different parts.
func TestArrangementsAreAll(t *testing.T) {
	for n := 1; n <= 30; n++ {
		want := map[string]bool{}
		var grow func(left, most int, parts []int)
		grow = func(left, most int, parts []int) {
			if left == 0 {
				if different := len(slices.Compact(slices.Clone(parts))); different <= 2 {
					want[fmt.Sprint(parts)] = true
				}
				return
			}
			for p := min(left, most); p >= 1; p-- {
				grow(left-p, p, append(parts, p))
			}
		}
		grow(n, n, nil)
		got := map[string]bool{}
		for _, a := range wiring.Arrangements(n) {
			got[fmt.Sprint(a.Lengths())] = true
		}
		if diff := cmp.Diff(want, got); diff != "" || len(got) != len(wiring.Arrangements(n)) {
			t.Fatalf("%d drivers: %s", n, diff)
		}
	}
}

func TestArrangementsAreInOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 100).Draw(t, "n")
		all := wiring.Arrangements(n)
		for i, a := range all {
			if drivers(a) != n {
				t.Fatalf("%v has %d drivers, want %d", a, drivers(a), n)
			}
			if n > wiring.MostUnequal && !a.IsEqual() {
				t.Fatalf("%v for %d drivers", a, n)
			}
			if strings.Contains(a.String(), "unequal") == a.IsEqual() {
				t.Fatalf("%v is equal: %v", a, a.IsEqual())
			}
			if i == 0 {
				continue
			}
			last := all[i-1]
			if a.IsEqual() && !last.IsEqual() {
				t.Fatalf("%v after %v", a, last)
			}
			if a.IsEqual() == last.IsEqual() && a.Load(1) < last.Load(1)*(1-1e-12) {
				t.Fatalf("%v, %g, after %v, %g", a, a.Load(1), last, last.Load(1))
			}
		}
	})
}

func TestLongListsAreOfEqualStrings(t *testing.T) {
	isUnequal := func(a wiring.Arrangement) bool { return !a.IsEqual() }
	if !slices.ContainsFunc(wiring.Arrangements(64), isUnequal) || slices.ContainsFunc(wiring.Arrangements(65), isUnequal) {
		t.Error("unequal strings are listed for up to 64 drivers")
	}
}

func drivers(a wiring.Arrangement) int {
	n := 0
	for _, length := range a.Lengths() {
		n += length
	}
	return n
}

func TestNames(t *testing.T) {
	tests := []struct {
		a    wiring.Arrangement
		want string
	}{
		{wiring.Arrangement{{4, 6}}, "6 strings of 4"},
		{wiring.Arrangement{{9, 1}}, "1 string of 9"},
		{wiring.Arrangement{{3, 2}, {2, 1}}, "2 strings of 3 and 1 string of 2 (unequal)"},
	}
	for _, test := range tests {
		if got := test.a.String(); got != test.want {
			t.Errorf("%q, want %q", got, test.want)
		}
	}
}

func TestCheck(t *testing.T) {
	bank := wiring.Arrangement{{2, 4}}
	if err := bank.Check(6, 3); err != nil {
		t.Error(err)
	}
	if err := bank.Check(5.9, 3); !errors.Is(err, wiring.ErrLoad) || !strings.Contains(err.Error(), "2.95 ohm") {
		t.Error(err)
	}
}

func ExampleArrangements() {
	for _, a := range wiring.Arrangements(5) {
		fmt.Printf("%.2f ohm: %v\n", a.Load(7), a)
	}
	// Output:
	// 1.40 ohm: 5 strings of 1
	// 35.00 ohm: 1 string of 5
	// 2.00 ohm: 1 string of 2 and 3 strings of 1 (unequal)
	// 3.00 ohm: 1 string of 3 and 2 strings of 1 (unequal)
	// 3.50 ohm: 2 strings of 2 and 1 string of 1 (unequal)
	// 5.60 ohm: 1 string of 4 and 1 string of 1 (unequal)
	// 8.40 ohm: 1 string of 3 and 1 string of 2 (unequal)
}

func BenchmarkArrangements(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		wiring.Arrangements(wiring.MostUnequal)
	}
}
