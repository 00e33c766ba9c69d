package tolerance

import (
	"context"
	"errors"
	"math"
	"math/rand/v2"
	"runtime"
	"slices"
	"strings"
	"testing"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/timing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"gonum.org/v1/gonum/spatial/r3"
)

// plan plans the built-in design with so many drivers in one place in open air.
func plan(t testing.TB, drivers int) *timing.Plan {
	t.Helper()
	a, err := layout.Build(design.Default())
	if err != nil {
		t.Fatal(err)
	}
	a.Timing.Model, a.Timing.DelaysBy = "point", "straight"
	a.Surface, a.Room = layout.Surface{}, layout.Room{}
	a.Wiring.Channels, a.Wiring.MinimumLoad = 1, 0.01
	a.Mounts = slices.Repeat(a.Mounts[:1], drivers)
	for m := range a.Mounts {
		a.Mounts[m].Point.X += 1e-9 * float64(m)
	}
	p, err := timing.Make(t.Context(), a)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// TestLevelOfMany: independent errors of n drivers leave sigma/sqrt(n) of the mean: even
// errors of +-a are a/sqrt(3) each, and one driver has them whole. Percentiles are within their
// own bounds of that.
func TestLevelOfMany(t *testing.T) {
	const a = 1.0 // dB
	tests := []struct {
		drivers int
		beyond  float64 // dB, the 95th percentile
		far     float64 // by how much its bounds may be missed, for the mean of factors is no mean of dB
	}{
		{1, 0.9 * a, 0},
		{36, 1.645 * a / math.Sqrt(3*36), 0.02},
	}
	for _, test := range tests {
		s, err := Run(t.Context(), plan(t, test.drivers), Setting{Spread: Spread{Level: a}, Runs: 200, Seed: 1})
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range s.Causes {
			if c.Cause != Level && c.Cause != All {
				t.Errorf("cause %d is not off", c.Cause)
			}
			high, low := c.Level.High, c.Level.Low
			if high.From-test.far > test.beyond || high.To+test.far < test.beyond || low.From-test.far > -test.beyond || low.To+test.far < -test.beyond {
				t.Errorf("%d drivers: %+v, want +-%.3f dB", test.drivers, c.Level, test.beyond)
			}
		}
	}
}

// TestTimeOfMany: phases that are even within +-x leave sin(x)/x of the sum of very many, and
// of n as much energy of what is lost as 1/n; place is time by the speed of sound.
func TestTimeOfMany(t *testing.T) {
	const drivers = 100
	p := plan(t, drivers)
	s, err := Run(t.Context(), p, Setting{Spread: Spread{Time: 30e-6, Place: 30e-6 * p.SpeedOfSound}, Runs: LeastRuns, Seed: 2})
	if err != nil {
		t.Fatal(err)
	}
	sum, count := 0.0, 0.0
	for _, hz := range s.Frequency {
		if hz >= 500 && hz <= 8000 {
			x := 2 * math.Pi * hz * 30e-6
			left := math.Pow(math.Sin(x)/x, 2)
			sum, count = sum+left+(1-left)/drivers, count+1
		}
	}
	want := -10 * math.Log10(sum/count)
	for _, c := range s.Causes[:2] {
		if got := c.Loss.Middle.Value; math.Abs(got-want) > 0.05 {
			t.Errorf("cause %d: %.3f dB lost, want %.3f", c.Cause, got, want)
		}
		// Even times of +-30 us are 30/sqrt(3) us of smear.
		if got := c.Smear.Middle.Value; math.Abs(got-30e-6/math.Sqrt(3)) > 1e-6 {
			t.Errorf("cause %d: smear of %g s", c.Cause, got)
		}
	}
}

// TestSameOnAnyCores: to the bit.
func TestSameOnAnyCores(t *testing.T) {
	a, err := layout.Build(design.Default())
	if err != nil {
		t.Fatal(err)
	}
	p, err := timing.Make(t.Context(), a)
	if err != nil {
		t.Fatal(err)
	}
	run := func(cores int) *Study {
		defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(cores))
		s, err := Run(t.Context(), p, Setting{Usual, LeastRuns, 7})
		if err != nil {
			t.Fatal(err)
		}
		s.Plan = nil
		return s
	}
	one := run(1)
	if diff := cmp.Diff(one, run(4), cmpopts.EquateNaNs()); diff != "" {
		t.Error(diff)
	}
	for f := range one.Frequency {
		if !(one.Low[f] <= one.Middle[f] && one.Middle[f] <= one.High[f]) {
			t.Fatalf("%g Hz: %g, %g, %g dB", one.Frequency[f], one.Low[f], one.Middle[f], one.High[f])
		}
	}
}

// TestBoundsHold: over many samples of a known distribution the bounds hold the percentile in
// nine of ten, and not always.
func TestBoundsHold(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 3))
	const samples = 4000
	for _, runs := range []int{LeastRuns, UsualRuns} {
		for _, p := range []float64{low, middle, high} {
			held := 0
			for range samples {
				values := make([]float64, runs)
				for i := range values {
					values[i] = random.Float64()
				}
				slices.Sort(values)
				if q := quantile(values, p); q.From <= p && p <= q.To {
					held++
				}
			}
			if share := float64(held) / samples; share < 0.89 || share > 0.97 {
				t.Errorf("%d runs: the %g percentile is held in %.3f", runs, 100*p, share)
			}
		}
	}
}

// TestLeastRuns: with one run fewer the greatest is not surely beyond the 95th percentile.
func TestLeastRuns(t *testing.T) {
	if math.Pow(high, LeastRuns) > 1-sure || math.Pow(high, LeastRuns-1) < 1-sure {
		t.Errorf("%d runs", LeastRuns)
	}
	if from, to := ranks(LeastRuns, high); to != LeastRuns-1 || from != 52 {
		t.Errorf("values %d to %d bound it", from, to)
	}
}

// TestRangeOf: the 5th, 50th and 95th percentile of what is even from 0 to 1.
func TestRangeOf(t *testing.T) {
	values := make([]float64, 1001)
	for i := range values {
		values[i] = float64((i*8)%1001) / 1000
	}
	r := RangeOf(values)
	for i, want := range []float64{0.05, 0.5, 0.95} {
		if q := []Quantile{r.Low, r.Middle, r.High}[i]; math.Abs(q.Value-want) > 1e-12 || !(q.From < want && want < q.To) {
			t.Errorf("%+v, want %g", q, want)
		}
	}
}

func TestSettings(t *testing.T) {
	usual := Setting{Usual, UsualRuns, 1}
	tests := []struct {
		name   string
		change func(*Setting)
		says   string
	}{
		{"too few", func(s *Setting) { s.Runs = LeastRuns - 1 }, "58 runs; must be from 59"},
		{"too many", func(s *Setting) { s.Runs = MostRuns + 1 }, "10000"},
		{"percent", func(s *Setting) { s.Share = 0.6 }, "60 percent; must be from 0 to 50"},
		{"level", func(s *Setting) { s.Spread.Level = math.NaN() }, "dB"},
		{"place", func(s *Setting) { s.Spread.Place = -0.001 }, "-1 mm; must be from 0 to 100"},
		{"much level", func(s *Setting) { s.Spread.Level = 13 }, "from 0 to 12"},
		{"time", func(s *Setting) { s.Spread.Time = 1 }, "us; must be from 0 to 1000"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			s := usual
			test.change(&s)
			if _, err := Run(t.Context(), nil, s); !errors.Is(err, errSetting) || !strings.Contains(err.Error(), test.says) {
				t.Errorf("%v, want one that says %q", err, test.says)
			}
		})
	}
}

// TestUsual: what is taken where nothing is asked for is what data sheets and tape measures are good for.
func TestUsual(t *testing.T) {
	if want := (Spread{Share: 0.1, Level: 1, Place: 0.001, Time: 20e-6}); Usual != want || UsualRuns != 200 || smoothing != 3 {
		t.Errorf("%+v, %d lots, smoothed to 1/%d octave", Usual, UsualRuns, smoothing)
	}
}

// TestSilent: where no sound comes, the key that is to blame is named.
func TestSilent(t *testing.T) {
	p := plan(t, 1)
	a := *p.Array
	a.File, a.Lines, a.Timing.Model, a.Spot = "d.toml", nil, "baffle", r3.Scale(-20, a.Mounts[0].Point)
	p, err := timing.Make(t.Context(), &a)
	if err != nil {
		t.Fatal(err)
	}
	const want = "d.toml: timing.model = \"baffle\": no sound comes to the spot, so nothing is there to be off; must be another model, or the spot before the drivers"
	if _, err := Run(t.Context(), p, Setting{Usual, LeastRuns, 1}); !errors.Is(err, errSilent) || err.Error() != want {
		t.Errorf("%v, want %s", err, want)
	}
}

func TestStops(t *testing.T) {
	p := plan(t, 2)
	ctx, stop := context.WithCancel(t.Context())
	stop()
	if _, err := Run(ctx, p, Setting{Usual, LeastRuns, 1}); !errors.Is(err, context.Canceled) {
		t.Errorf("%v", err)
	}
}
