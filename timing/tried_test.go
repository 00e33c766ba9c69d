package timing_test

import (
	"context"
	"fmt"
	"math"
	"runtime"
	"slices"
	"testing"

	"pappus/layout"
	"pappus/timing"
	"pappus/timing/band"
	"pappus/timing/cores"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"gonum.org/v1/gonum/spatial/r3"
)

// TestTried: a delay that is tried gives what a design with that delay gives, to the last digits,
// and a channel that is off what one without it does; with nothing turned, all is as planned.
func TestTried(t *testing.T) {
	planner, err := timing.NewPlanner(demo(t))
	if err != nil {
		t.Fatal(err)
	}
	at, other := r3.Vec{X: 1.8, Y: 0.4, Z: 0.6}, r3.Vec{X: 1, Y: -1, Z: 0.7}
	p, err := planner.Spot(at)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := planner.Spot(other); err != nil { // what was heard there is not to be taken for the spot's
		t.Fatal(err)
	}
	near := cmpopts.EquateApprox(1e-9, 1e-12)
	same := try(t, planner, p)
	if diff := cmp.Diff(p.Response, same.Response, near, cmpopts.EquateNaNs()) + cmp.Diff(p.Aligned, same.Aligned, near); diff != "" {
		t.Errorf("nothing turned (-planned +tried):\n%s", diff)
	}
	late := try(t, planner, p, timing.Turned{ID: 2, Late: 0.5e-3}, timing.Turned{ID: 999, Off: true})
	i := slices.IndexFunc(p.Channels, func(c timing.Channel) bool { return c.ID == 2 })
	if got := late.Channels[i].Delay - p.Channels[i].Delay; math.Abs(got-0.5e-3) > 1e-12 || p.Channels[i].Delay == late.Channels[i].Delay {
		t.Errorf("it is later by %g s", got)
	}
	if late.Aligned.Smear < 2*p.Aligned.Smear || late.Aligned.CombOnset > p.Aligned.CombOnset/2 || late.Unaligned != p.Unaligned {
		t.Errorf("half a millisecond makes %+v of %+v", late.Aligned, p.Aligned)
	}
	both := try(t, planner, p, timing.Turned{ID: 2, Reversed: true, Late: 0})
	if both.Channels[i].Invert == p.Channels[i].Invert || both.Response.Aligned[40] >= p.Response.Aligned[40] {
		t.Error("a reversed channel takes nothing away")
	}
	if diff := cmp.Diff(p.Response.InStep, both.Response.InStep, near); diff != "" {
		t.Errorf("reversed, the drivers in step give another level:\n%s", diff)
	}
	off := try(t, planner, p, timing.Turned{ID: 2, Off: true})
	if off.Response.InStep[40] >= p.Response.InStep[40] || !math.IsInf(off.Arrivals[off.Channels[i].Mounts[0]].Level, -1) {
		t.Error("a channel that is off is heard")
	}
	if math.IsNaN(off.Aligned.Smear) {
		t.Error("with a channel off there is no smear")
	}
}

// TestTriedForSeats: seats lose with a delay that is tried what they lose in a design with it.
func TestTriedForSeats(t *testing.T) {
	a := arcOf(t, -30, 0, 30)
	planner, err := timing.NewPlanner(a)
	if err != nil {
		t.Fatal(err)
	}
	p, err := planner.Spot(a.Seats[1].At)
	if err != nil {
		t.Fatal(err)
	}
	anew, err := timing.NewPlanner(a)
	if err != nil {
		t.Fatal(err)
	}
	anew.Know(p) // as for one that goes on with a plan
	near := cmpopts.EquateApprox(1e-9, 1e-9)
	if diff := cmp.Diff(p.Seating, try(t, anew, p, timing.Turned{ID: 1}).Seating, near); diff != "" {
		t.Errorf("with nothing else (-planned +tried):\n%s", diff)
	}
	late := try(t, anew, p, timing.Turned{ID: 1, Late: 0.4e-3})
	if late.Seating.Planned.Worst < p.Seating.Planned.Worst+0.5 || p.Seating.Planned.Worst == late.Seating.Planned.Worst {
		t.Errorf("0.4 ms late the worst seat loses %.2f dB, as planned %.2f", late.Seating.Planned.Worst, p.Seating.Planned.Worst)
	}
	if diff := cmp.Diff(p.Seating.Without, late.Seating.Without); diff != "" {
		t.Errorf("what seats lose without delays is another: %s", diff)
	}
}

// try is Tried.
func try(t *testing.T, planner *timing.Planner, p *timing.Spot, turned ...timing.Turned) *timing.Spot {
	t.Helper()
	out, err := planner.Tried(p, turned)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// TestOwnLive: each cell has what Planner.Spot plans there, the frequencies being fewer, on any
// number of cores to the bit, and is not worked out twice.
func TestOwnLive(t *testing.T) {
	a := demo(t)
	p := plan(t, a)
	s := timing.HorizontalSlice(p.WithCells(6))
	planner, err := timing.NewPlanner(a)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name string
		timing.Quantity
		want func(*timing.Spot) float64
		near float64 // relative
	}{
		{"smear", timing.LiveSmear, func(s *timing.Spot) float64 { return s.Aligned.Smear }, 0.05},
		{"comb onset", timing.LiveCombOnset, func(s *timing.Spot) float64 { return s.Aligned.CombOnset }, 0.12},
		{"loss", timing.LiveLoss, func(s *timing.Spot) float64 { return s.Aligned.Loss }, 0.05},
		{"level", timing.LiveLevel, func(s *timing.Spot) float64 { return octave(s.Response.Frequency, s.Response.Aligned) }, 0.02},
		{"direct level", timing.LiveDirectLevel, nil, 0},
		{"summing loss", timing.LiveSummingLoss, nil, 0},
	} {
		got := ownLive(t, &p.Spot, s, c.Quantity)
		was := runtime.GOMAXPROCS(1)
		one := ownLive(t, &p.Spot, s, c.Quantity)
		runtime.GOMAXPROCS(was)
		shared := live(t, &p.Spot, &p.Spot, s, c.Quantity, 12)
		for cell, v := range got {
			if math.Float64bits(v) != math.Float64bits(one[cell]) {
				t.Fatalf("%s: cell %d is %g, on one core %g", c.name, cell, v, one[cell])
			}
			if math.IsNaN(v) != math.IsNaN(shared[cell]) {
				t.Fatalf("%s: cell %d is %g, with the chair's delays %g", c.name, cell, v, shared[cell])
			}
			if c.want == nil || math.IsNaN(v) {
				continue
			}
			there, err := planner.Spot(s.Point(cell%s.Columns, cell/s.Columns))
			if err != nil {
				t.Fatal(err)
			}
			if want := c.want(there); !(v == want || math.Abs(v-want) <= c.near*math.Abs(want)) {
				t.Errorf("%s: cell %d is %g, planned there %g", c.name, cell, v, want)
			}
		}
	}
}

// octave is the level in dB of the octave of 1 kHz.
func octave(frequency, db []float64) float64 {
	low, high := band.Edges(1000, 1)
	from, to := band.Range(frequency, low, high)
	sum := 0.0
	for _, v := range db[from:to] {
		sum += math.Pow(10, v/10)
	}
	return 10 * math.Log10(sum/float64(to-from))
}

// ownLive fills a map in which each place has its own delays.
func ownLive(t testing.TB, p *timing.Spot, s timing.Slice, q timing.Quantity) []float64 {
	t.Helper()
	l, err := timing.NewOwnLive(context.Background(), p, s, q, 1000, 12)
	if err != nil {
		t.Fatal(err)
	}
	dst := make([]float64, s.Columns*s.Rows)
	for range 2 { // the second time it is kept
		if err := l.Begin(dst, p).Strip(context.Background(), whole(s)); err != nil {
			t.Fatal(err)
		}
	}
	return dst
}

// BenchmarkOwnLive fills a map of 12 by 12 cells, each with its own delays.
func BenchmarkOwnLive(b *testing.B) {
	for name, a := range map[string]*layout.Array{"demo": demo(b), "300 drivers": even(b, 300, false), "1000 drivers": even(b, 1000, false)} {
		p, err := timing.NewPlanner(a)
		if err != nil {
			b.Fatal(err)
		}
		spot, err := p.Spot(a.Spot)
		if err != nil {
			b.Fatal(err)
		}
		s := timing.HorizontalSlice(spot.WithCells(12))
		for _, n := range []int{5, 12} {
			b.Run(fmt.Sprintf("%s %d cores %d", name, cores.Count(), n), func(b *testing.B) {
				for b.Loop() {
					l, err := timing.NewOwnLive(context.Background(), spot, s, timing.LiveCombOnset, 1000, n)
					if err != nil {
						b.Fatal(err)
					}
					if err := l.Begin(make([]float64, 144), spot).Strip(context.Background(), whole(s)); err != nil {
						b.Fatal(err)
					}
				}
			})
		}
	}
}
