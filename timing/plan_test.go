package timing_test

import (
	"context"
	"errors"
	"fmt"
	"math"
	"runtime"
	"testing"

	"pappus/layout"
	"pappus/layout/body"
	"pappus/layout/design"
	"pappus/timing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// TestPointsHaveNoBody: two drivers 0.3 m behind each other, which the model of points
// hears on straight lines, smear by half the way between them, and neither is hidden.
func TestPointsHaveNoBody(t *testing.T) {
	a := plain(t)
	a.Spot = r3.Vec{X: 200} // so far that both are equally loud
	a.Mounts = []layout.Mount{
		{ID: 1, Point: r3.Vec{X: 0.15}, Normal: r3.Vec{X: 1}, Face: -1},
		{ID: 2, Point: r3.Vec{X: -0.15}, Normal: r3.Vec{X: -1}, Face: -1},
	}
	a.Driver.DCOhm = 7
	a.Channels = []layout.Channel{{ID: 1, Mounts: []int{0, 1}, Series: 2, Parallel: 1, NominalOhm: 8, DCOhm: 14, Delay: math.NaN()}}
	p := plan(t, a)
	if want := 0.15 / p.SpeedOfSound; math.Abs(p.Unaligned.Smear-want) > 0.001*want {
		t.Errorf("smear %.1f us, want %.1f", 1e6*p.Unaligned.Smear, 1e6*want)
	}
	for _, r := range p.Arrivals {
		if !r.Seen || r.Path != r.Straight {
			t.Errorf("%+v goes round a body", r)
		}
	}
}

// TestInStepIsTheMost: in the point model with a straight-line delay for each
// driver, the aligned sum is the sum of the magnitudes, and so never under the
// sum as built (triangle inequality).
func TestInStepIsTheMost(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := move(t, drawn(t))
		for i, f := range p.Response.Frequency {
			if p.Response.Aligned[i] < p.Response.Unaligned[i]-1e-9 {
				t.Fatalf("at %g Hz: aligned %g dB, as built %g", f, p.Response.Aligned[i], p.Response.Unaligned[i])
			}
			if math.Abs(p.Response.Aligned[i]-p.Response.InStep[i]) > 1e-9 {
				t.Fatalf("at %g Hz: aligned %g dB, in step %g", f, p.Response.Aligned[i], p.Response.InStep[i])
			}
		}
		if !math.IsInf(p.Aligned.CombOnset, 1) {
			t.Fatalf("in step, yet a comb onset at %g Hz", p.Aligned.CombOnset)
		}
	})
}

// TestDelaysAreNeverNegative, the latest driver has none, and none exceeds the
// spread of the arrivals.
func TestDelaysAreNeverNegative(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := drawn(t)
		a.Timing.DelaysBy = rapid.SampledFrom([]string{"path", "straight"}).Draw(t, "by")
		a.Wiring.Channels = rapid.IntRange(0, 5).Draw(t, "channels")
		p := move(t, a)
		least := math.Inf(1)
		for _, r := range p.Arrivals {
			least = min(least, r.Delay)
		}
		for _, r := range p.Arrivals {
			if r.Delay < 0 || r.Delay > p.Unaligned.Spread+1e-12 {
				t.Fatalf("delay %g s, arrivals are spread over %g", r.Delay, p.Unaligned.Spread)
			}
			if r.Path < r.Straight {
				t.Fatalf("path %g m is below the straight line, %g", r.Path, r.Straight)
			}
		}
		if least != 0 {
			t.Fatalf("the least delay is %g s", least)
		}
	})
}

// TestRotationAndMirror: turning body and spot together, or mirroring both,
// changes nothing that is heard.
func TestRotationAndMirror(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := drawn(t)
		a.Timing.Model = rapid.SampledFrom([]string{"point", "baffle"}).Draw(t, "model")
		turn := r3.NewRotation(rapid.Float64Range(-4, 4).Draw(t, "turn"), r3.Vec{X: 0.3, Y: -1, Z: 0.5})
		mirrored := rapid.Bool().Draw(t, "mirrored")
		moved := func(v r3.Vec) r3.Vec {
			if mirrored {
				v.Y = -v.Y
			}
			return turn.Rotate(v)
		}
		b := *a
		b.Spot = moved(a.Spot)
		b.Mounts = nil
		for _, m := range a.Mounts {
			m.Point, m.Normal = moved(m.Point), moved(m.Normal)
			b.Mounts = append(b.Mounts, m)
		}
		p, q := move(t, a), move(t, &b)
		for m := range p.Arrivals {
			if math.Abs(p.Arrivals[m].Delay-q.Arrivals[m].Delay) > 1e-14 {
				t.Fatalf("driver %d: delay %g s, then %g", m, p.Arrivals[m].Delay, q.Arrivals[m].Delay)
			}
		}
		near := cmpopts.EquateApprox(0, 1e-6) // deep in a notch rounding is magnified
		floor := func(v []float64) []float64 {
			out := make([]float64, len(v))
			for i := range v {
				out[i] = max(v[i], -60)
			}
			return out
		}
		if diff := cmp.Diff(floor(p.Response.Unaligned), floor(q.Response.Unaligned), near); diff != "" {
			t.Fatal(diff)
		}
	})
}

// TestFirstNotch: two drivers whose arrivals are T apart and equally loud have
// their first notch at 1/(2T) (closed form; combs_and_sums.csv).
func TestFirstNotch(t *testing.T) {
	a := plain(t)
	a.Body = body.Ball(0.15)
	a.Wiring.Channels = 0
	a.Spot = r3.Vec{X: 40}
	a.Mounts = []layout.Mount{
		{ID: 1, Point: r3.Vec{X: 0.15}, Normal: r3.Vec{X: 1}, Face: -1},
		{ID: 2, Point: r3.Vec{X: -0.15}, Normal: r3.Vec{X: -1}, Face: -1},
	}
	p := plan(t, a)
	apart := 0.3 / p.SpeedOfSound
	want := 1 / (2 * apart)
	frequency := make([]float64, 4001)
	for i := range frequency {
		frequency[i] = want * (0.8 + 0.4*float64(i)/4000)
	}
	least, at := math.Inf(1), 0.0
	for i, v := range p.Transfer(nil, timing.AsBuilt, frequency) {
		if m := math.Hypot(real(v), imag(v)); m < least {
			least, at = m, frequency[i]
		}
	}
	if math.Abs(at/want-1) > 1e-3 {
		t.Errorf("first notch at %g Hz, want %g", at, want)
	}
}

// TestTransferAgreesWithResponse: two ways to the same numbers.
func TestTransferAgreesWithResponse(t *testing.T) {
	p := plan(t, demo(t))
	for _, c := range []struct {
		name string
		c    timing.Case
		want []float64
	}{{"as built", timing.AsBuilt, p.Response.Unaligned}, {"aligned", timing.Aligned, p.Response.Aligned}} {
		t.Run(c.name, func(t *testing.T) {
			for i, v := range p.Transfer(nil, c.c, p.Response.Frequency) {
				if got := 20 * math.Log10(math.Hypot(real(v), imag(v))); math.Abs(got-c.want[i]) > 1e-6 {
					t.Fatalf("at %g Hz: %g dB, response says %g", p.Response.Frequency[i], got, c.want[i])
				}
			}
		})
	}
}

// TestCoverAgreesWithPolar: the level on the listening circle where it passes
// through a slice's cell is that of the cell.
func TestCoverAgreesWithPolar(t *testing.T) {
	a := demo(t)
	p := plan(t, a)
	i := len(p.Horizontal.Angle) / 2 // straight ahead
	if p.Horizontal.Angle[i] != 0 {
		t.Fatalf("angle %g", p.Horizontal.Angle[i])
	}
	reach := math.Hypot(a.Spot.X, a.Spot.Y)
	c, err := timing.Cover(&p.Spot, timing.Slice{Origin: r3.Vec{X: reach, Z: a.Spot.Z}, Right: r3.Vec{X: 1}, Up: r3.Vec{Y: 1}, Step: 0.1, Columns: 1, Rows: 1})
	if err != nil {
		t.Fatal(err)
	}
	for b := range c.Band {
		if math.Abs(c.Level[b][0]-p.Horizontal.Aligned[b][i]) > 1e-4 {
			t.Errorf("%g Hz: cell %g dB, circle %g", c.Band[b], c.Level[b][0], p.Horizontal.Aligned[b][i])
		}
	}
}

// TestCoverIsTheSameOnAnyNumberOfCores compares bit by bit, the direct sound and images of it.
func TestCoverIsTheSameOnAnyNumberOfCores(t *testing.T) {
	for _, test := range []struct {
		name string
		with func(*layout.Array)
	}{
		{"on its table", func(a *layout.Array) { a.Coverage.Cells = 24 }},
		{"in a room of order 2", func(a *layout.Array) {
			a.Coverage.Cells = 12
			a.Room = layout.Room{Present: true, Size: r3.Vec{X: 6, Y: 5, Z: 3}, Body: r3.Vec{X: 2.5, Y: 2.5, Z: 1}, Order: 2}
		}},
	} {
		t.Run(test.name, func(t *testing.T) {
			a := demo(t)
			test.with(a)
			p := plan(t, a)
			var all []*timing.Coverage
			for _, cores := range []int{1, 2, 5} {
				before := runtime.GOMAXPROCS(cores)
				c, err := timing.Cover(&p.Spot, timing.HorizontalSlice(&p.Spot))
				runtime.GOMAXPROCS(before)
				if err != nil {
					t.Fatal(err)
				}
				all = append(all, c)
			}
			for _, c := range all[1:] {
				if diff := cmp.Diff(all[0], c, cmpopts.EquateNaNs()); diff != "" {
					t.Error(diff)
				}
			}
		})
	}
}

func TestInsideTheBodyThereIsNothing(t *testing.T) {
	a := demo(t)
	a.Coverage = layout.Coverage{HalfWidth: 0.3, Cells: 16}
	a.Spot.Z = 0.05 // a slice through the body
	p := plan(t, a)
	c, err := timing.Cover(&p.Spot, timing.HorizontalSlice(&p.Spot))
	if err != nil {
		t.Fatal(err)
	}
	inside := 0
	for i := range c.Smear {
		if math.IsNaN(c.Smear[i]) != math.IsNaN(c.Level[0][i]) {
			t.Fatalf("cell %d: smear %g, level %g", i, c.Smear[i], c.Level[0][i])
		}
		if math.IsNaN(c.Smear[i]) {
			inside++
		}
	}
	// The body is about 0.14 m in radius there; a cell has 0.0375 m.
	want := math.Pi * 0.14 * 0.14 / (0.0375 * 0.0375)
	if math.Abs(float64(inside)-want) > 0.15*want {
		t.Errorf("%d cells inside, want about %.0f", inside, want)
	}
}

func TestAreaWithin(t *testing.T) {
	c := &timing.Coverage{
		Slice: timing.Slice{Right: r3.Vec{X: 1}, Up: r3.Vec{Y: 1}, Step: 0.5, Columns: 4, Rows: 2},
		Band:  []float64{1000},
		Level: [][]float64{{0, 2, 9, 0, math.NaN(), 3, 3.1, 0}},
		Smear: []float64{0, 2, 9, 0, math.NaN(), 3, 3.1, 0},
	}
	tests := []struct {
		name string
		spot r3.Vec
		want float64
	}{
		{"joined up", r3.Vec{}, 3 * 0.25},
		{"not across a gap", r3.Vec{X: 1.5}, 2 * 0.25},
		{"inside the body", r3.Vec{Y: 0.5}, 0},
		{"outside of the slice", r3.Vec{X: 9}, 0},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			if got := c.AreaWithin(test.spot, 3); got[0] != test.want {
				t.Errorf("level: got %g m2, want %g", got[0], test.want)
			}
			if got := c.AreaInStep(test.spot, 3); got != test.want {
				t.Errorf("smear: got %g m2, want %g", got, test.want)
			}
		})
	}
}

// TestStringsShareTheVoltage: a driver in a string of three gets a third of the
// channel's voltage, and channels that timing lays out are trimmed so that all
// drivers get the same (Ohm's law).
func TestStringsShareTheVoltage(t *testing.T) {
	a := demo(t)
	p := plan(t, a)
	each := make(map[string]bool)
	for _, c := range p.Channels {
		if c.Gain > 0 {
			t.Errorf("channel %d is turned up, by %g dB", c.ID, c.Gain)
		}
		each[fmt.Sprintf("%.9f", math.Pow(10, c.Gain/20)/float64(c.Series))] = true
	}
	if len(each) != 1 {
		t.Errorf("drivers get different voltages: %v", each)
	}
	// By hand, without trim: two channels whose strings have one and two drivers.
	a = plain(t)
	a.Spot = r3.Vec{X: 100}
	a.Mounts = a.Mounts[:3]
	a.Channels = []layout.Channel{
		{ID: 1, Mounts: []int{0}, Series: 1, Parallel: 1, Delay: math.NaN()},
		{ID: 2, Mounts: []int{1, 2}, Series: 2, Parallel: 1, Delay: math.NaN()},
	}
	p = plan(t, a)
	// The lone driver is twice as strong as each of the two: 2 + 1 + 1 at 100 m.
	want := 20 * math.Log10(4.0/100)
	if got := p.Response.InStep[0]; math.Abs(got-want) > 0.01 {
		t.Errorf("got %g dB, want %g", got, want)
	}
}

func TestErrors(t *testing.T) {
	a := demo(t)
	a.Spot = r3.Vec{Z: 0.05}
	if _, err := timing.Make(t.Context(), a); !errors.Is(err, layout.ErrInside) {
		t.Errorf("inside: got %v", err)
	}
	a = demo(t)
	a.Timing.Model = "guess"
	if _, err := timing.Make(t.Context(), a); err == nil {
		t.Error("an unknown model gives no error")
	}
}

func ExampleMake() {
	array, err := layout.Build(design.Default())
	if err != nil {
		fmt.Println(err)
		return
	}
	p, err := timing.Make(context.Background(), array)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, c := range p.Channels {
		fmt.Printf("channel %d: %d drivers, %.1f us\n", c.ID, len(c.Mounts), 1e6*c.Delay)
	}
	// Output:
	// channel 1: 6 drivers, 750.0 us
	// channel 2: 4 drivers, 666.7 us
	// channel 3: 1 drivers, 625.0 us
	// channel 4: 6 drivers, 562.5 us
	// channel 5: 6 drivers, 437.5 us
	// channel 6: 6 drivers, 312.5 us
	// channel 7: 6 drivers, 166.7 us
	// channel 8: 4 drivers, 0.0 us
}

// TestMakeEndsWithItsContext: who has stopped waits for nothing more, and gets no plan.
func TestMakeEndsWithItsContext(t *testing.T) {
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	if p, err := timing.Make(ctx, even(t, 60, true)); p != nil || !errors.Is(err, context.Canceled) {
		t.Errorf("got %v, %v", p, err)
	}
}
