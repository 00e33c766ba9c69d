package timing_test

import (
	"errors"
	"fmt"
	"math"
	"runtime"
	"slices"
	"testing"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/layout/wiring"
	"pappus/testdata/reference"
	"pappus/timing"
	"pappus/timing/crossover"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// TestEveryDriverIsWired: whatever the split, every driver is in one channel and
// one string, strings are alike, no load is below the minimum and no delay is
// negative.
func TestEveryDriverIsWired(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := drawn(t)
		a.Driver.DCOhm = rapid.Float64Range(1, 9).Draw(t, "ohm")
		a.Wiring.Channels = rapid.IntRange(1, 6).Draw(t, "channels")
		a.Wiring.Split = rapid.SampledFrom([]string{"", "arrival", "neighbours", "height"}).Draw(t, "split")
		p, err := timing.Make(t.Context(), a)
		if float64(len(a.Mounts))*a.Driver.DCOhm < a.Wiring.MinimumLoad*(1-1e-9) {
			if !errors.Is(err, wiring.ErrLoad) {
				t.Fatalf("%d drivers of %g ohm: %v", len(a.Mounts), a.Driver.DCOhm, err)
			}
			return
		}
		if err != nil {
			t.Fatal(err)
		}
		inChannel, inString := make([]int, len(a.Mounts)), make([]int, len(a.Mounts))
		for i, c := range p.Channels {
			if c.DCOhm < a.Wiring.MinimumLoad*(1-1e-9) {
				t.Fatalf("channel %d has %g ohm", c.ID, c.DCOhm)
			}
			if c.Delay < 0 {
				t.Fatalf("channel %d is delayed by %g s", c.ID, c.Delay)
			}
			if len(p.Banks[i].Strings) != c.Parallel {
				t.Fatalf("%d strings, not %d", len(p.Banks[i].Strings), c.Parallel)
			}
			for _, m := range c.Mounts {
				inChannel[m]++
			}
			for _, s := range p.Banks[i].Strings {
				if len(s) != c.Series {
					t.Fatalf("a string of %d, not %d", len(s), c.Series)
				}
				for _, m := range s {
					inString[m]++
				}
			}
		}
		for m := range a.Mounts {
			if inChannel[m] != 1 || inString[m] != 1 {
				t.Fatalf("driver %d is in %d channels and %d strings", m, inChannel[m], inString[m])
			}
		}
	})
}

// TestSplits on the demo: neighbours and bands of height are what they say.
func TestSplits(t *testing.T) {
	a := demo(t)
	a.Wiring.Split = "height"
	p := plan(t, a)
	for i, c := range p.Channels[1:] {
		lowest, highest := math.Inf(1), math.Inf(-1)
		for _, m := range p.Channels[i].Mounts {
			lowest = min(lowest, a.Mounts[m].Point.Z)
		}
		for _, m := range c.Mounts {
			highest = max(highest, a.Mounts[m].Point.Z)
		}
		if highest > lowest+1e-9 {
			t.Errorf("band %d reaches up to %g m, the one above down to %g", i+2, highest, lowest)
		}
	}
	byHeight := p.Aligned.Smear
	a.Wiring.Split = "neighbours"
	p = plan(t, a)
	for _, c := range p.Channels {
		if n := len(c.Mounts); n < 4 || n > 5 { // 39 drivers in 8 channels
			t.Errorf("channel %d has %d drivers", c.ID, n)
		}
	}
	neighbours := p.Aligned.Smear
	a.Wiring.Split = "arrival"
	if best := plan(t, a).Aligned.Smear; best >= byHeight || best >= neighbours {
		t.Errorf("smear by arrival %g s, by height %g, of neighbours %g", best, byHeight, neighbours)
	}
}

// TestWiringAgainstTable: one channel of as many drivers as each line of the table
// has is wired as it says (Ohm's law; wiring.csv).
func TestWiringAgainstTable(t *testing.T) {
	rows, err := reference.Table("wiring.csv")
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range rows {
		a := even(t, int(row.Float("drivers")), false)
		a.Timing.Model = "point"
		a.Driver.NominalOhm, a.Driver.DCOhm = row.Float("nominal_ohm_each"), row.Float("dc_ohm_each")
		a.Wiring.Channels, a.Wiring.MinimumLoad = 1, row.Float("dc_ohm_total")
		c := plan(t, a).Channels[0]
		if c.Series != int(row.Float("series")) || c.Parallel != int(row.Float("parallel")) ||
			math.Abs(c.NominalOhm-row.Float("nominal_ohm_total")) > 5e-5 || math.Abs(c.DCOhm-row.Float("dc_ohm_total")) > 5e-5 {
			t.Errorf("%v: got %d x %d, %g ohm, %g at direct current", row, c.Series, c.Parallel, c.NominalOhm, c.DCOhm)
		}
	}
}

func TestFewerChannels(t *testing.T) {
	a := plain(t)
	a.Mounts = a.Mounts[:5]
	a.Driver.DCOhm = 3.4 // two in a string are above 4 ohm, one is not
	tests := []struct {
		name                  string
		mounts, channels, got int
		warning               string
		err                   error
	}{
		{"one driver is too few for a channel", 5, 4, 2, "channels_fewer", nil},
		{"as asked for", 5, 2, 2, "", nil},
		{"nothing will do", 1, 1, 0, "", wiring.ErrLoad},
		{"one channel each", 3, 0, 3, "load_too_low", nil},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			b := *a
			b.Mounts, b.Wiring.Channels = a.Mounts[:test.mounts], test.channels
			p, err := timing.Make(t.Context(), &b)
			if !errors.Is(err, test.err) {
				t.Fatalf("error %v, want %v", err, test.err)
			}
			if err != nil {
				return
			}
			if len(p.Channels) != test.got {
				t.Errorf("%d channels", len(p.Channels))
			}
			for _, code := range []string{"channels_fewer", "load_too_low"} {
				if f, found := finding(p, code); found != (code == test.warning) {
					t.Errorf("warnings: %+v", f)
				}
			}
		})
	}
}

// TestBank against Ohm's law worked by hand, and Kirchhoff's current law.
func TestBank(t *testing.T) {
	a := bankOf(t)
	tests := []struct {
		name string
		with func(*layout.Array)
		want timing.Bank
	}{
		{"no wire", func(*layout.Array) {}, timing.Bank{LowestOhm: 8, LowestHz: 20, Damping: math.Inf(1),
			Volt: 10, Ampere: 1.25, Watt: 12.5, DriverVolt: 5, DriverAmpere: 0.625, DriverWatt: 3.125}},
		// 29 m of 0.5 mm2: 2*29/(58*0.5) = 2 ohm; then 1 A, 8 V, 4 V each.
		{"2 ohm of wire", func(a *layout.Array) { a.Wiring.WireLength, a.Wiring.WireSection = 29, 0.5e-6 },
			timing.Bank{LowestOhm: 10, LowestHz: 20, WireOhm: 2, WireLoss: 20 * math.Log10(1.25), Damping: 4,
				Volt: 10, Ampere: 1, Watt: 10, DriverVolt: 4, DriverAmpere: 0.5, DriverWatt: 2}},
		{"impedance not known", func(a *layout.Array) { a.Driver.Impedance = nil }, timing.Bank{LowestOhm: math.NaN(), LowestHz: math.NaN(), Damping: math.Inf(1),
			Volt: 10, Ampere: 1.25, Watt: 12.5, DriverVolt: 5, DriverAmpere: 0.625, DriverWatt: 3.125}},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			b := *a
			test.with(&b)
			p := plan(t, &b)
			c, bank := p.Channels[0], p.Banks[0]
			if diff := cmp.Diff(test.want, bank, cmpopts.IgnoreFields(timing.Bank{}, "Strings", "Near"), cmpopts.EquateApprox(1e-9, 1e-12), cmpopts.EquateNaNs()); diff != "" {
				t.Error(diff)
			}
			if sum := float64(c.Parallel) * bank.DriverAmpere; math.Abs(sum-bank.Ampere) > 1e-12 {
				t.Errorf("the strings take %g A, the amplifier gives %g", sum, bank.Ampere)
			}
		})
	}
}

// TestBankWarns of heat.
func TestBankWarns(t *testing.T) {
	a := bankOf(t)
	a.Driver.PowerHandling = 3
	if f, _ := finding(plan(t, a), "driver_power"); cmp.Diff(any(timing.DriverHeat{Channel: 1, Volt: 10, Watt: 3.125, Stands: 3}), f.Fact, cmpopts.EquateApprox(1e-9, 0)) != "" {
		t.Errorf("%+v", f)
	}
}

// TestDipRules: where a measured impedance dips below the resistance, the dip
// settles how drivers are strung and how many channels there can be, and no
// channel that can be strung better is left under the minimum.
func TestDipRules(t *testing.T) {
	tests := []struct {
		name             string
		dip              float64 // ohm of one driver at 1 kHz, 8 elsewhere
		minimum          float64 // ohm
		channels, strung int     // asked for; drivers in each string
		got              int     // channels
		warns            bool
	}{
		{"no dip", 8, 8, 1, 2, 1, false},
		{"two strings of two would come to 6 ohm", 6, 8, 1, 4, 1, false},
		{"low enough to bear", 6, 6, 1, 2, 1, false},
		{"one driver would come to 6 ohm", 6, 8, 4, 2, 2, true},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			a := bankOf(t)
			a.Driver.Impedance = []layout.ImpedancePoint{{Frequency: 20, Ohm: 8}, {Frequency: 1000, Ohm: test.dip}, {Frequency: 20000, Ohm: 8}}
			a.Wiring.MinimumLoad, a.Wiring.Channels = test.minimum, test.channels
			p := plan(t, a)
			if len(p.Channels) != test.got || (len(p.Warnings) > 0) != test.warns {
				t.Fatalf("%d channels, want %d; warnings %+v", len(p.Channels), test.got, p.Warnings)
			}
			for i, c := range p.Channels {
				bank := p.Banks[i]
				want := test.dip * float64(test.strung) / float64(len(c.Mounts)/test.strung)
				if c.Series != test.strung || math.Abs(bank.LowestOhm-want) > 1e-3 || bank.LowestOhm < test.minimum-1e-9 {
					t.Errorf("strings of %d, lowest load %g ohm at %g Hz; want %d, %g", c.Series, bank.LowestOhm, bank.LowestHz, test.strung, want)
				}
			}
			for _, s := range timing.Stringings(p) {
				for _, o := range s.Options {
					if (o.Refused != nil) != (o.LowestOhm < test.minimum-1e-9) || o.Chosen && o.Refused != nil {
						t.Errorf("%v, lowest load %g ohm, chosen %t: %v", o.Arrangement, o.LowestOhm, o.Chosen, o.Refused)
					}
				}
			}
		})
	}
}

// TestSpreadStrings: eight places round the equator in two strings are best taken
// by turns, as the mirrored sums of 1/angle^4 show by hand.
func TestSpreadStrings(t *testing.T) {
	a := &layout.Array{}
	for i := range 8 {
		sin, cos := math.Sincos(math.Pi / 4 * float64(i))
		a.Mounts = append(a.Mounts, layout.Mount{Point: r3.Vec{X: cos, Y: sin}})
	}
	got := timing.SpreadStrings(a, []int{0, 1, 2, 3, 4, 5, 6, 7}, 2)
	slices.SortFunc(got, func(a, b []int) int { return a[0] - b[0] })
	if diff := cmp.Diff([][]int{{0, 2, 4, 6}, {1, 3, 5, 7}}, got); diff != "" {
		t.Error(diff)
	}
	again := timing.SpreadStrings(a, []int{7, 6, 5, 4, 3, 2, 1, 0}, 2)
	slices.SortFunc(again, func(a, b []int) int { return a[0] - b[0] })
	if diff := cmp.Diff(got, again); diff != "" {
		t.Errorf("the order of the drivers matters: %s", diff)
	}
}

// TestHarness against the shortest of all orders.
func TestHarness(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := drawn(t)
		a.Mounts = a.Mounts[:min(7, len(a.Mounts))]
		a.Wiring.Channels, a.Wiring.MinimumLoad = 1, 7*float64(len(a.Mounts)) // one string
		p, err := timing.Make(t.Context(), a)
		if err != nil {
			t.Fatal(err)
		}
		runs := timing.Harness(p)
		if len(runs) != 1 {
			t.Fatalf("%d runs", len(runs))
		}
		if diff := cmp.Diff(p.Banks[0].Strings[0], runs[0].Order); diff != "" {
			t.Fatal(diff)
		}
		least := math.Inf(1)
		order := slices.Clone(p.Channels[0].Mounts)
		permute(order, 0, func() { least = min(least, runLength(a, order)) })
		if got := runs[0].Length; math.Abs(got-runLength(a, runs[0].Order)) > 1e-12 || got < least-1e-9 || got > 1.2*least {
			t.Fatalf("%g m, its order has %g, the shortest %g", got, runLength(a, runs[0].Order), least)
		}
		if sum := timing.HarnessLength(append(runs, runs...)); math.Abs(sum-2*runs[0].Length) > 1e-12 {
			t.Fatalf("twice %g m is %g", runs[0].Length, sum)
		}
	})
}

func runLength(a *layout.Array, order []int) float64 {
	start := r3.Vec{Z: a.Body.Lowest()}
	at, length := start, 0.0
	for _, m := range order {
		length += r3.Norm(r3.Sub(a.Mounts[m].Point, at))
		at = a.Mounts[m].Point
	}
	return length + r3.Norm(r3.Sub(start, at))
}

func permute(s []int, from int, do func()) {
	if from == len(s) {
		do()
		return
	}
	for i := from; i < len(s); i++ {
		s[from], s[i] = s[i], s[from]
		permute(s, from+1, do)
		s[from], s[i] = s[i], s[from]
	}
}

// TestMakeIsTheSameEachTime, on any number of cores, to the bit.
func TestMakeIsTheSameEachTime(t *testing.T) {
	type all struct {
		Channels   []timing.Channel
		Counts     []timing.Count
		Protection timing.Protection
		Dead       []timing.Death
	}
	var first all
	for i, cores := range []int{1, 2, 5} {
		before := runtime.GOMAXPROCS(cores)
		p := plan(t, demo(t))
		dead, err := timing.Dead(p)
		runtime.GOMAXPROCS(before)
		if err != nil {
			t.Fatal(err)
		}
		got := all{p.Channels, p.Counts, p.Protection, dead}
		if i == 0 {
			first = got
		} else if diff := cmp.Diff(first, got, cmpopts.EquateNaNs()); diff != "" {
			t.Error(diff)
		}
	}
}

// TestDesignKnowsHighPasses: a design file takes just those families and orders of a
// high-pass that there are.
func TestDesignKnowsHighPasses(t *testing.T) {
	families := map[string]crossover.Family{"butterworth": crossover.Butterworth, "linkwitz-riley": crossover.LinkwitzRiley, "bessel": crossover.Bessel}
	for name, family := range families {
		for order := 1; order <= 9; order++ {
			text := fmt.Sprintf("%s\n[protection]\nfamily = %q\norder = %d\n", leastDesign, name, order)
			_, err := design.Parse("a.toml", []byte(text))
			if there := slices.Contains(family.Orders(), order); there != (err == nil) {
				t.Errorf("%s of order %d is there: %v; the design says %v", name, order, there, err)
			}
		}
	}
}

const leastDesign = `[body]
shape = "ball"
radius_mm = 100
[mounts]
count = 12
[driver]
diameter_mm = 30
[spot]
x_m = 2
y_m = 0
z_m = 1
`
