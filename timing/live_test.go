package timing_test

import (
	"context"
	"errors"
	"fmt"
	"math"
	"runtime"
	"testing"

	"pappus/layout"
	"pappus/timing"
	"pappus/timing/band"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"gonum.org/v1/gonum/spatial/r3"
)

var quantities = []struct {
	name string
	timing.Quantity
}{
	{"level", timing.LiveLevel}, {"summing loss", timing.LiveSummingLoss}, {"smear", timing.LiveSmear}, {"comb onset", timing.LiveCombOnset}, {"loss", timing.LiveLoss},
}

// live fills a map of a plan at a spot, made for the plan itself or for another.
func live(t testing.TB, made, filled *timing.Spot, s timing.Slice, q timing.Quantity, perOctave int) []float64 {
	t.Helper()
	l, err := timing.NewLive(context.Background(), made, s, q, 1000, perOctave)
	if err != nil {
		t.Fatal(err)
	}
	dst := make([]float64, s.Columns*s.Rows)
	if err := l.Begin(dst, filled).Strip(context.Background(), whole(s)); err != nil {
		t.Fatal(err)
	}
	return dst
}

// whole is all of a slice.
func whole(s timing.Slice) timing.Strip { return timing.Strip{To: s.Columns + s.Rows} }

// TestStrips: strips of any size have each cell once, from the middle outwards, and what they
// are filled with is what the whole is, to the bit.
func TestStrips(t *testing.T) {
	for name, a := range map[string]*layout.Array{"dome over a table": demo(t), "in a room": inRoom(t)} {
		p := plan(t, a)
		for _, s := range []timing.Slice{timing.HorizontalSlice(p.WithCells(12)), timing.VerticalSlice(p.WithCells(11))} {
			for _, q := range quantities {
				want := live(t, &p.Spot, &p.Spot, s, q.Quantity, 5)
				for _, cells := range []int{1, 20, 50, 1000} {
					l, err := timing.NewLive(t.Context(), &p.Spot, s, q.Quantity, 1000, 5)
					if err != nil {
						t.Fatal(err)
					}
					got, sum := make([]float64, len(want)), 0
					f := l.Begin(got, &p.Spot)
					for _, strip := range s.Strips(cells) {
						if err := f.Strip(t.Context(), strip); err != nil {
							t.Fatal(err)
						}
						sum += strip.Cells(s)
					}
					if sum != len(want) {
						t.Errorf("%s, %s, %d cells to a strip: %d cells of %d", name, q.name, cells, sum, len(want))
					}
					for i := range want {
						if math.Float64bits(want[i]) != math.Float64bits(got[i]) {
							t.Fatalf("%s, %s, %d cells to a strip: cell %d is %g, of the whole %g", name, q.name, cells, i, got[i], want[i])
						}
					}
				}
			}
		}
	}
}

// A map that follows a spot shows what Cover shows for a plan made there.
func TestLiveIsCover(t *testing.T) {
	planner, err := timing.NewPlanner(demo(t))
	if err != nil {
		t.Fatal(err)
	}
	first, err := planner.Spot(r3.Vec{X: 1.8, Y: 0.4, Z: 0.6})
	if err != nil {
		t.Fatal(err)
	}
	moved, err := planner.Spot(r3.Vec{X: 0.9, Y: -1.1, Z: 0.6})
	if err != nil {
		t.Fatal(err)
	}
	for _, cells := range []int{9, 40} {
		s := timing.HorizontalSlice(first.WithCells(cells))
		want, err := timing.Cover(moved, s)
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range []struct {
			name string
			timing.Quantity
			want []float64
			near float64
		}{
			{"level", timing.LiveLevel, want.Level[3], 1e-12},
			{"smear", timing.LiveSmear, want.Smear, 1e-12},
			{"comb onset", timing.LiveCombOnset, want.CombOnset, 1e-12},
			{"loss", timing.LiveLoss, want.Loss, 1e-6}, // of fewer frequencies: the magnitudes' own bound
		} {
			if diff := cmp.Diff(c.want, live(t, first, moved, s, c.Quantity, 12), cmpopts.EquateNaNs(), cmpopts.EquateApprox(c.near, 0)); diff != "" {
				t.Errorf("%s, %d cells (-cover +live):\n%s", c.name, cells, diff)
			}
		}
	}
}

// The loss is what the level falls short of all drivers in step: none for one
// driver alone.
func TestLiveSummingLoss(t *testing.T) {
	a := even(t, 1, false)
	p := plan(t, a)
	for i, v := range live(t, &p.Spot, &p.Spot, timing.HorizontalSlice(&p.Spot), timing.LiveSummingLoss, 5) {
		if math.Abs(v) > 1e-3 {
			t.Fatalf("one driver loses %g dB in cell %d", v, i)
		}
	}
	p = plan(t, demo(t))
	s := timing.HorizontalSlice(p.WithCells(9))
	most := 0.0
	for i, v := range live(t, &p.Spot, &p.Spot, s, timing.LiveSummingLoss, 5) {
		if v < -1e-3 {
			t.Fatalf("a loss of %g dB in cell %d", v, i)
		}
		most = max(most, v)
	}
	if most < 1 {
		t.Errorf("no loss above %g dB", most)
	}
}

// The result is the same to the bit for any number of cores.
func TestLiveOnOneCore(t *testing.T) {
	p := plan(t, demo(t))
	s := timing.VerticalSlice(p.WithCells(10))
	for _, q := range quantities {
		want := live(t, &p.Spot, &p.Spot, s, q.Quantity, 5)
		cores := runtime.GOMAXPROCS(1)
		got := live(t, &p.Spot, &p.Spot, s, q.Quantity, 5)
		runtime.GOMAXPROCS(cores)
		for i := range want {
			if math.Float64bits(want[i]) != math.Float64bits(got[i]) {
				t.Fatalf("%s: cell %d is %g on one core, %g on all", q.name, i, got[i], want[i])
			}
		}
	}
}

func TestLiveStops(t *testing.T) {
	p := plan(t, demo(t))
	s := timing.HorizontalSlice(p.WithCells(9))
	ctx, stop := context.WithCancel(context.Background())
	l, err := timing.NewLive(ctx, &p.Spot, s, timing.LiveLevel, 1000, 5)
	if err != nil {
		t.Fatal(err)
	}
	stop()
	if err := l.Begin(make([]float64, 81), &p.Spot).Strip(ctx, whole(s)); !errors.Is(err, context.Canceled) {
		t.Errorf("Strip: %v", err)
	}
	if _, err := timing.NewLive(ctx, &p.Spot, s, timing.LiveLevel, 1000, 5); !errors.Is(err, context.Canceled) {
		t.Errorf("NewLive: %v", err)
	}
}

// BenchmarkLive prepares and fills maps of 32 by 32 cells of the demo.
func BenchmarkLive(b *testing.B) {
	p := plan(b, demo(b))
	s := timing.HorizontalSlice(p.WithCells(32))
	ctx := context.Background()
	for _, q := range quantities {
		b.Run(fmt.Sprintf("prepare %s", q.name), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := timing.NewLive(ctx, &p.Spot, s, q.Quantity, band.Octaves()[3], 5); err != nil {
					b.Fatal(err)
				}
			}
		})
		b.Run(fmt.Sprintf("fill %s", q.name), func(b *testing.B) {
			l, err := timing.NewLive(ctx, &p.Spot, s, q.Quantity, band.Octaves()[3], 5)
			if err != nil {
				b.Fatal(err)
			}
			dst := make([]float64, s.Columns*s.Rows)
			b.ReportAllocs()
			for b.Loop() {
				if err := l.Begin(dst, &p.Spot).Strip(ctx, whole(s)); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
