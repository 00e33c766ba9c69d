package timing_test

import (
	"fmt"
	"testing"

	"pappus/timing"

	"gonum.org/v1/gonum/spatial/r3"
)

// BenchmarkMove moves the spot: arrivals, delays, the response at 256
// frequencies in all three curves, and the measures.
func BenchmarkMove(b *testing.B) {
	for _, drivers := range []int{60, 500, 2000} {
		b.Run(fmt.Sprintf("%d drivers", drivers), func(b *testing.B) {
			planner, err := timing.NewPlanner(even(b, drivers, false))
			if err != nil {
				b.Fatal(err)
			}
			b.ReportAllocs()
			for i := range b.N {
				if _, err := planner.Spot(r3.Vec{X: 1.8 + 0.001*float64(i%100), Y: 0.4, Z: 0.6}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// BenchmarkCover fills the whole coverage of a slice, its table included.
func BenchmarkCover(b *testing.B) {
	p := plan(b, demo(b))
	s := timing.HorizontalSlice(&p.Spot)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := timing.Cover(&p.Spot, s); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkMoveInRoom moves the spot in a room, of which the page hears 63 ways.
func BenchmarkMoveInRoom(b *testing.B) {
	p, err := timing.NewPlanner(inRoom(b))
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for i := range b.N {
		if _, err := p.Spot(r3.Vec{X: 1.8 + 0.001*float64(i%100), Y: 0.4, Z: 0.6}); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkSpatial looks at all directions from the demo, as built and with the delays.
func BenchmarkSpatial(b *testing.B) {
	p := plan(b, demo(b))
	b.ReportAllocs()
	for b.Loop() {
		if _, err := p.Spatial(); err != nil {
			b.Fatal(err)
		}
	}
}
