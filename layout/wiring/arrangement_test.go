package wiring_test

import (
	"errors"
	"fmt"
	"math"
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
			if a.Drivers() != n {
				t.Fatalf("%v has %d drivers, want %d", a, a.Drivers(), n)
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

// The values are Ohm's law by hand: 3 + 3 + 2 drivers of 6 ohm are 18, 18 and 12
// ohm in parallel, 5.1429 ohm = 36/7; from 10 V through 0.1 and 0.3 ohm.
func TestDraw(t *testing.T) {
	a := wiring.Arrangement{{3, 2}, {2, 1}}
	got, err := a.Draw(6, wiring.Source{Volt: 10, MinimumOhm: 4, ResistanceOhm: 0.1, WireOhm: 0.3})
	if err != nil {
		t.Fatal(err)
	}
	current := 10 / (36.0/7 + 0.4)
	bank := current * 36 / 7
	for _, c := range []struct {
		name      string
		got, want float64
	}{
		{"load", got.LoadOhm, 36.0 / 7},
		{"ampere", got.Ampere, current},
		{"watt", got.Watt, current * (10 - 0.1*current)},
		{"wire", got.WireWatt, current * current * 0.3},
		{"damping", got.Damping, 36.0 / 7 / 0.4},
		{"long: volt", got.Share[0].Volt, bank / 3},
		{"long: ampere", got.Share[0].Ampere, bank / 18},
		{"long: watt", got.Share[0].Watt, bank * bank / 9 / 6},
		{"short: volt", got.Share[1].Volt, bank / 2},
		{"short: ampere", got.Share[1].Ampere, bank / 12},
		{"short: watt", got.Share[1].Watt, bank * bank / 4 / 6},
	} {
		if math.Abs(c.got-c.want) > 1e-12*c.want {
			t.Errorf("%s %.15g, want %.15g", c.name, c.got, c.want)
		}
	}
}

// TestDrawKeepsPowerAndCurrent: the drivers and the wire together use what the
// amplifier gives, and the strings carry its current.
func TestDrawKeepsPowerAndCurrent(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		all := wiring.Arrangements(rapid.IntRange(1, 40).Draw(t, "n"))
		a := all[rapid.IntRange(0, len(all)-1).Draw(t, "which")]
		ohm := rapid.Float64Range(1, 30).Draw(t, "ohm")
		d, err := a.Draw(ohm, wiring.Source{
			Volt:          rapid.Float64Range(0.1, 100).Draw(t, "volt"),
			ResistanceOhm: rapid.Float64Range(0, 1).Draw(t, "output"),
			WireOhm:       rapid.Float64Range(0, 3).Draw(t, "wire"),
		})
		if err != nil {
			t.Fatal(err)
		}
		current, power := 0.0, d.WireWatt
		for _, s := range d.Share {
			current += float64(s.Parallel) * s.Ampere
			power += float64(s.Parallel*s.Series) * s.Watt
		}
		if math.Abs(current-d.Ampere) > 1e-12*d.Ampere || math.Abs(power-d.Watt) > 1e-12*d.Watt {
			t.Fatalf("%v: %g A of %g, %g W of %g", a, current, d.Ampere, power, d.Watt)
		}
	})
}

func TestRefusals(t *testing.T) {
	bank := wiring.Arrangement{{2, 4}}
	fine := wiring.Source{Volt: 5, MinimumOhm: 3}
	tests := []struct {
		name string
		err  func() error
		want error
		says string
	}{
		{"met exactly", func() error { _, err := bank.Draw(6, fine); return err }, nil, ""},
		{"below the minimum", func() error { _, err := bank.Draw(5.9, fine); return err }, wiring.ErrLoad, "2.95 ohm"},
		{"no drivers", func() error { _, err := wiring.Arrangement(nil).Draw(6, fine); return err }, wiring.ErrValue, "no drivers"},
		{"no ohm", func() error { _, err := bank.Draw(0, fine); return err }, wiring.ErrValue, "ohm"},
		{"no number", func() error { _, err := bank.Draw(math.NaN(), fine); return err }, wiring.ErrValue, "nan"},
		{"no volt", func() error { _, err := bank.Draw(6, wiring.Source{}); return err }, wiring.ErrValue, "volt"},
		{"wire gives power", func() error { _, err := bank.Draw(6, wiring.Source{Volt: 1, WireOhm: -1}); return err }, wiring.ErrValue, "wire"},
		{"gauge too thin", func() error { _, err := wiring.Gauge(41); return err }, wiring.ErrValue, "41"},
		{"gauge too thick", func() error { _, err := wiring.Gauge(-4); return err }, wiring.ErrValue, "-4"},
		{"no section", func() error { _, err := wiring.Wire{Length: 1}.Ohm(); return err }, wiring.ErrValue, "section"},
		{"length below 0", func() error { _, err := wiring.Wire{-1, 1e-6, 20}.Ohm(); return err }, wiring.ErrValue, "length"},
		{"molten", func() error { _, err := wiring.Wire{1, 1e-6, 1100}.Ohm(); return err }, wiring.ErrValue, "1100"},
		{"no wire thick enough", func() error { _, _, err := wiring.LeastSection(500, 20, 4, 0.1); return err }, wiring.ErrValue, "mm2"},
		{"no loss allowed", func() error { _, _, err := wiring.LeastSection(5, 20, 4, 0); return err }, wiring.ErrValue, "dB"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			err := test.err()
			if !errors.Is(err, test.want) || (err != nil && !strings.Contains(err.Error(), test.says)) {
				t.Errorf("%v, want %v that says %q", err, test.want, test.says)
			}
		})
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

func BenchmarkDraw(b *testing.B) {
	a := wiring.Arrangement{{5, 3}, {3, 2}}
	b.ReportAllocs()
	for b.Loop() {
		a.Draw(7, wiring.Source{Volt: 9, MinimumOhm: 4, WireOhm: 0.2})
	}
}
