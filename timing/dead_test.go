package timing_test

import (
	"fmt"
	"math"
	"math/cmplx"
	"slices"
	"testing"

	"pappus/layout"
	"pappus/layout/impedance"
	"pappus/timing"

	"github.com/google/go-cmp/cmp"
	"gonum.org/v1/gonum/spatial/r3"
)

// TestDead against Ohm's law worked by hand: two strings of two, 8 ohm each.
func TestDead(t *testing.T) {
	p := plan(t, bankOf(t))
	got, err := timing.Dead(p)
	if err != nil {
		t.Fatal(err)
	}
	if len(got) != 3 {
		t.Fatalf("%d deaths", len(got))
	}
	open, shorted, whole := got[0], got[1], got[2]
	if open.State != impedance.Open || math.Abs(open.DCOhm-16) > 1e-9 || math.Abs(open.LowestOhm-16) > 1e-9 ||
		open.Power != 1 || len(open.Quiet) != 2 || len(open.Hotter) != 0 {
		t.Errorf("open: %+v", open)
	}
	// 8 ohm beside 16: 16/3; the partner has all of the voltage, four times the power.
	if shorted.State != impedance.Shorted || math.Abs(shorted.DCOhm-16.0/3) > 1e-9 || math.Abs(shorted.LowestOhm-16.0/3) > 1e-9 ||
		math.Abs(shorted.Power-4) > 1e-9 || len(shorted.Quiet) != 1 || len(shorted.Hotter) != 1 || !shorted.Under(8) {
		t.Errorf("shorted: %+v", shorted)
	}
	if !whole.Whole || whole.State != impedance.Shorted || whole.DCOhm != 0 || whole.LowestOhm != 0 ||
		whole.Power != 1 || len(whole.Quiet) != 4 || len(whole.Hotter) != 0 || !whole.Under(8) || whole.Fault() != "string shorted" {
		t.Errorf("string shorted: %+v", whole)
	}
}

// TestDeadLoss: of two drivers at almost one place, each a string, one gone takes
// 6.02 dB off everywhere, and one shorted without wire silences both. With wire of
// as many ohm as the load, an open one raises the other's voltage: from 1/2 to 2/3.
func TestDeadLoss(t *testing.T) {
	a := bankOf(t)
	a.Mounts = []layout.Mount{a.Mounts[0], a.Mounts[0]}
	a.Mounts[1].Point = r3.Add(a.Mounts[1].Point, r3.Vec{X: 1e-6})
	a.Wiring.MinimumLoad = 4
	tests := []struct {
		name          string
		wire          float64 // m of 1 mm2
		open, shorted float64
	}{
		{"no wire", 0, 20 * math.Log10(2), 200},
		{"as many ohm as the load", 4.0 / 2 * 58, 20 * math.Log10(2*(1.0/2)/(2.0/3)), 200},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			b := *a
			b.Wiring.WireLength, b.Wiring.WireSection = test.wire, 1e-6
			got, err := timing.Dead(plan(t, &b))
			if err != nil {
				t.Fatal(err)
			}
			if math.Abs(got[0].Loss-test.open) > 1e-3 || math.Abs(got[1].Loss-test.shorted) > 1e-3 {
				t.Errorf("open %g dB, shorted %g; want %g and %g", got[0].Loss, got[1].Loss, test.open, test.shorted)
			}
			if len(got[1].Quiet) != 2 {
				t.Errorf("shorted: %v fall silent", got[1].Quiet)
			}
		})
	}
}

// TestEveryDeath against the faults that package impedance solves for itself, one
// network at a time: every driver open, every driver shorted, every string shorted.
func TestEveryDeath(t *testing.T) {
	for _, wire := range []float64{0, 29} { // m of 0.5 mm2: nothing, 2 ohm
		t.Run(fmt.Sprintf("%g m of wire", wire), func(t *testing.T) {
			a := bankOf(t)
			a.Mounts = demo(t).Mounts[:12]
			a.Wiring.MinimumLoad, a.Wiring.WireLength, a.Wiring.WireSection = 5, wire, 0.5e-6
			p := plan(t, a)
			c := p.Channels[0]
			bank, err := impedance.NewBank([]int{3, 3, 3, 3}, p.Banks[0].WireOhm, 0)
			if err != nil || c.Series != 3 || c.Parallel != 4 {
				t.Fatal(c.Series, c.Parallel, err)
			}
			deaths, err := timing.EveryDeath(p)
			if err != nil {
				t.Fatal(err)
			}
			if len(deaths) != 12+12+4 {
				t.Fatalf("%d deaths", len(deaths))
			}
			order := slices.Concat(p.Banks[0].Strings...)
			for _, got := range deaths {
				var broken impedance.Bank
				broken.FeedOhm = bank.FeedOhm
				for i, str := range bank.Strings {
					drivers := slices.Clone(str.Drivers)
					for d := range drivers {
						if i == got.String && (got.Whole || p.Banks[0].Strings[i][d] == got.Mount) {
							drivers[d] = got.State
						}
					}
					broken.Strings = append(broken.Strings, impedance.String{Drivers: drivers})
				}
				quiet, most, ohm := flows(bank, broken, order)
				if diff := cmp.Diff(quiet, got.Quiet); diff != "" {
					t.Errorf("%s of string %d: quiet: %s", got.Fault(), got.String, diff)
				}
				if math.Abs(got.Power-max(1, most)) > 1e-9 || math.Abs(got.LowestOhm-ohm) > 1e-9 && got.LowestOhm != ohm {
					t.Errorf("%s: %g times the power and %g ohm, want %g and %g", got.Fault(), got.Power, got.LowestOhm, most, ohm)
				}
			}
			worst, err := timing.Dead(p)
			if err != nil {
				t.Fatal(err)
			}
			for _, w := range worst {
				for _, d := range deaths {
					if d.Fault() == w.Fault() && d.Loss > w.Loss+1e-6 {
						t.Errorf("%s of driver %d loses %g dB, the worst %g", d.Fault(), d.Mount, d.Loss, w.Loss)
					}
				}
			}
		})
	}
}

// flows solves a bank of 8 ohm drivers before and after a fault: which drivers are quiet, how
// much the power of any other grows, and the load in ohm.
func flows(whole, broken impedance.Bank, order []int) (quiet []int, most, ohm float64) {
	z := slices.Repeat([]complex128{8}, whole.Count())
	before, after := make([]float64, len(z)), make([]float64, len(z))
	var flow impedance.Flow
	whole.Flow(&flow, z, 1)
	whole.Watts(before, &flow)
	broken.Flow(&flow, z, 1)
	broken.Watts(after, &flow)
	for i, w := range after {
		if !(w > 0) {
			quiet = append(quiet, order[i])
		} else {
			most = max(most, w/before[i])
		}
	}
	return quiet, most, cmplx.Abs(flow.Load)
}

// TestStringsAreTheBetterOnes: spread or of neighbours, whichever loses less with
// its worst string dead; there are arrays for either.
func TestStringsAreTheBetterOnes(t *testing.T) {
	lantern := demo(t)
	lantern.Wiring.Channels, lantern.Wiring.LongestString = 3, len(lantern.Mounts)
	odd := even(t, 23, false)
	odd.Wiring.LongestString = len(odd.Mounts)
	odd.Wiring.Channels, odd.Spot = 3, r3.Vec{X: 2, Y: 0.3, Z: 0.5}
	near, apart, most := 0, 0, 0.0
	for name, a := range map[string]*layout.Array{"demo": lantern, "23 drivers": odd} {
		p := plan(t, a)
		deaths, err := timing.Dead(p)
		if err != nil {
			t.Fatal(err)
		}
		for _, d := range deaths {
			if d.State != impedance.Open {
				if !math.IsNaN(d.LossSpread) || !math.IsNaN(d.LossNeighbours) {
					t.Errorf("%s: %+v", name, d)
				}
				continue
			}
			kept, other := d.LossSpread, d.LossNeighbours
			if p.Banks[d.Channel].Near {
				kept, other = other, kept
				near++
			} else if len(p.Banks[d.Channel].Strings) > 1 {
				apart++
			}
			if math.Abs(d.Loss-kept) > 1e-9 || kept > other+0.05 {
				t.Errorf("%s, channel %d: loses %g dB; spread %g, neighbours %g", name, d.Channel, d.Loss, d.LossSpread, d.LossNeighbours)
			}
			most = max(most, d.Gain())
		}
	}
	if near == 0 || apart == 0 || most < 0.5 {
		t.Errorf("%d strung near, %d apart, better by %g dB at most", near, apart, most)
	}
}
