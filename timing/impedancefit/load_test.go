package impedancefit_test

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"pappus/layout/impedance"
	"pappus/testdata/trialtable"
	"pappus/timing/impedancefit"
)

// load measures a bank of which drivers differ by some percent, each by its own
// network, summed by Kirchhoff's laws apart from the package.
func load(lengths []int, dead map[[2]int]impedance.State, feed float64, random *rand.Rand) []impedance.Point {
	drivers := map[[2]int]network{}
	for s, n := range lengths {
		for d := range n {
			one := small
			one.re *= 1 + 0.02*random.NormFloat64()
			one.fs *= 1 + 0.05*random.NormFloat64()
			one.qms *= 1 + 0.1*random.NormFloat64()
			drivers[[2]int{s, d}] = one
		}
	}
	return measure(func(hz float64) complex128 {
		var siemens complex128
		for s, n := range lengths {
			var ohm complex128
			open := false
			for d := range n {
				switch dead[[2]int{s, d}] {
				case impedance.Open:
					open = true
				case impedance.Alive:
					ohm += drivers[[2]int{s, d}].at(hz)
				}
			}
			if !open {
				siemens += 1 / (ohm + 1e-9)
			}
		}
		return complex(feed, 0) + 1/(siemens+1e-9)
	}, 20, 20000, 24, 0.01, random)
}

func TestCompare(t *testing.T) {
	curve, err := impedance.New(impedance.Driver{Resonance: small.fs, QMS: small.qms, QES: small.qes, DCOhm: small.re, Inductance: small.le})
	if err != nil {
		t.Fatal(err)
	}
	cases := []struct {
		name    string
		lengths []int
		dead    map[[2]int]impedance.State
		want    string
	}{
		{"whole", []int{3, 3, 3}, nil, "all strings play"},
		{"one open", []int{3, 3, 3}, map[[2]int]impedance.State{{1, 2}: impedance.Open}, "a string of 3 is open"},
		{"two open", []int{2, 2, 2, 2}, map[[2]int]impedance.State{{0, 0}: impedance.Open, {3, 1}: impedance.Open}, "2 strings of 2 are open"},
		{"the only one open", []int{4}, map[[2]int]impedance.State{{0, 1}: impedance.Open}, "no string conducts"},
		{"one driver shorted", []int{4}, map[[2]int]impedance.State{{0, 1}: impedance.Shorted}, "a driver in a string of 4 is shorted"},
		{"one of many shorted", []int{2, 2}, map[[2]int]impedance.State{{0, 1}: impedance.Shorted}, "a driver in a string of 2 is shorted"},
		{"two shorted", []int{4}, map[[2]int]impedance.State{{0, 1}: impedance.Shorted, {0, 2}: impedance.Shorted}, "2 drivers in a string of 4 are shorted"},
		{"a string shorted", []int{3, 3}, map[[2]int]impedance.State{{1, 0}: impedance.Shorted, {1, 1}: impedance.Shorted, {1, 2}: impedance.Shorted}, "a string of 3 is shorted throughout"},
		{"the shorter one open", []int{3, 1}, map[[2]int]impedance.State{{1, 0}: impedance.Open}, "a string of 1 is open"},
		{"the longer one open", []int{5, 2}, map[[2]int]impedance.State{{0, 0}: impedance.Open}, "a string of 5 is open"},
	}
	for i, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			random := rand.New(rand.NewPCG(uint64(i), 10))
			bank, err := impedance.NewBank(c.lengths, 0.1, 0)
			if err != nil {
				t.Fatal(err)
			}
			some := trialtable.Some(50, 4, 10)
			for k := range 50 {
				points := load(c.lengths, c.dead, 0.1, random)
				if !slices.Contains(some, k) {
					continue
				}
				got, err := impedancefit.Compare(points, bank, curve)
				if err != nil {
					t.Fatal(err)
				}
				if got.Cause.String() != c.want || !got.Sure {
					t.Fatalf("%v, sure %v, ratio %.3f, others %v; want %s", got.Cause, got.Sure, got.Ratio, got.Others, c.want)
				}
			}
		})
	}
}

// TestCompareUnsure: what the plan's own tolerance hides is not named as sure, and
// what nothing explains is not either.
func TestCompareUnsure(t *testing.T) {
	curve, err := impedance.New(impedance.Driver{Resonance: small.fs, QMS: small.qms, QES: small.qes, DCOhm: small.re})
	if err != nil {
		t.Fatal(err)
	}
	bank, err := impedance.NewBank([]int{1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1}, 0, 0)
	if err != nil {
		t.Fatal(err)
	}
	scaled := func(by float64) []impedance.Point {
		return measure(func(hz float64) complex128 { return complex(by/13, 0) * small.at(hz) }, 20, 20000, 24, 0, nil)
	}
	if got, err := impedancefit.Compare(scaled(1.04), bank, curve); err != nil || got.Sure || len(got.Others) == 0 {
		t.Errorf("%+v, %v", got, err)
	}
	if got, err := impedancefit.Compare(scaled(6), bank, curve); err != nil || got.Sure {
		t.Errorf("%+v, %v", got, err)
	}
	if _, err := impedancefit.Compare(measure(small.at, 120, 170, 48, 0, nil), bank, curve); err != nil && !errors.Is(err, impedancefit.ErrFew) {
		t.Error(err)
	}
	if _, err := impedancefit.Compare(nil, bank, curve); !errors.Is(err, impedancefit.ErrFew) {
		t.Error(err)
	}
}

// TestCompareMistakes: what is connected wrongly and measures as a fault does is named
// beside it, and a resistor in place of the drivers is told by its lack of a resonance.
func TestCompareMistakes(t *testing.T) {
	curve, err := impedance.New(impedance.Driver{Resonance: small.fs, QMS: small.qms, QES: small.qes, DCOhm: small.re, Inductance: small.le})
	if err != nil {
		t.Fatal(err)
	}
	bank, err := impedance.NewBank([]int{2, 2, 2}, 0, 0)
	if err != nil {
		t.Fatal(err)
	}
	cases := []struct {
		name  string
		share complex128 // of one driver's impedance; 0: a resistor of ohm
		ohm   complex128
		alike string
		flat  bool
	}{
		{"as planned", 2.0 / 3, 0, "[]", false},
		{"a driver alone", 1, 0, "[a single driver alone]", false},
		{"a fourth string", 0.5, 0, "[the channel with one string too many]", false},
		{"a resistor", 0, 4.73, "[]", true},
		{"nothing", 0, 1e6, "[]", false},
		{"a short", 0, 0.02, "[]", false},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			points := measure(func(hz float64) complex128 { return c.share*small.at(hz) + c.ohm }, 20, 20000, 24, 0.003, rand.New(rand.NewPCG(1, 13)))
			got, err := impedancefit.Compare(points, bank, curve)
			if err != nil || fmt.Sprint(got.Alike) != c.alike || got.Flat != c.flat {
				t.Errorf("alike %v, flat %v, %v, %v", got.Alike, got.Flat, got.Cause, err)
			}
		})
	}
}

func ExampleCompare() {
	curve, err := impedance.New(impedance.Driver{Resonance: 150, QMS: 3.2, QES: 1.14, DCOhm: 7.1})
	if err != nil {
		fmt.Println(err)
		return
	}
	bank, err := impedance.NewBank([]int{2, 2, 2}, 0, 0)
	if err != nil {
		fmt.Println(err)
		return
	}
	// Two of the three strings of two drivers are left: one driver's impedance.
	got, err := impedancefit.Compare(measure(curve.At, 20, 20000, 24, 0, nil), bank, curve)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%v: %.2f times the planned load (sure: %v)\n", got.Cause, math.Round(100*got.Ratio)/100, got.Sure)
	// Output:
	// a string of 2 is open: 1.50 times the planned load (sure: true)
}
