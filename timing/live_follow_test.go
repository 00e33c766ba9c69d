package timing_test

import (
	"fmt"
	"math"
	"testing"

	"pappus/layout"
	"pappus/timing"

	"gonum.org/v1/gonum/spatial/r3"
)

// inRoom puts the built-in design into a room.
func inRoom(t testing.TB) *layout.Array {
	a := demo(t)
	a.Surface = layout.Surface{}
	a.Room = layout.Room{Present: true, Size: r3.Vec{X: 6, Y: 4.5, Z: 2.7}, Body: r3.Vec{X: 1.5, Y: 2.2, Z: 0.6}, Order: 3}
	for wall := range a.Room.Absorption {
		for b := range a.Room.Absorption[wall] {
			a.Room.Absorption[wall][b] = 0.2
		}
	}
	return a
}

// What is looked up is what is computed, but for the table's error: delays and
// paths are the same, levels within twice 0.05 dB where the drivers do not cancel.
func TestFollowIsMove(t *testing.T) {
	exact, err := timing.NewPlanner(inRoom(t))
	if err != nil {
		t.Fatal(err)
	}
	quick, err := timing.NewPlanner(inRoom(t))
	if err != nil {
		t.Fatal(err)
	}
	if err := quick.Follow(); err != nil {
		t.Fatal(err)
	}
	for _, spot := range []r3.Vec{{X: 1.8, Y: 0.4, Z: 0.6}, {X: -1.2, Y: -2, Z: -0.4}, {X: 0.2, Y: 0.1, Z: 0.2}, {X: 4.4, Y: 2.2, Z: 2}} {
		want, err := exact.Spot(spot)
		if err != nil {
			t.Fatal(err)
		}
		got, err := quick.Spot(spot)
		if err != nil {
			t.Fatal(err)
		}
		for m, w := range want.Arrivals {
			g := got.Arrivals[m]
			if g.Path != w.Path || g.Time != w.Time || g.Seen != w.Seen || math.Abs(g.Level-w.Level) > 0.1 {
				t.Errorf("spot %v, driver %d: %+v, want %+v", spot, m, g, w)
			}
		}
		for f, w := range want.Response.InStep {
			if g := got.Response.InStep[f]; math.Abs(g-w) > 0.2 {
				t.Errorf("spot %v, %.0f Hz: %.3f dB, want %.3f", spot, want.Response.Frequency[f], g, w)
			}
		}
	}
}

// BenchmarkFollow moves the spot in a room.
func BenchmarkFollow(b *testing.B) {
	for _, follow := range []bool{false, true} {
		b.Run(fmt.Sprintf("follow %v", follow), func(b *testing.B) {
			p, err := timing.NewPlanner(inRoom(b))
			if err != nil {
				b.Fatal(err)
			}
			if follow {
				if err := p.Follow(); err != nil {
					b.Fatal(err)
				}
			}
			b.ReportAllocs()
			for i := range b.N {
				if _, err := p.Spot(r3.Vec{X: 1.8 + 0.001*float64(i%100), Y: 0.4, Z: 0.6}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
	b.Run("ready", func(b *testing.B) {
		p, err := timing.NewPlanner(inRoom(b))
		if err != nil {
			b.Fatal(err)
		}
		b.ReportAllocs()
		for b.Loop() {
			if err := p.Follow(); err != nil {
				b.Fatal(err)
			}
		}
	})
}
