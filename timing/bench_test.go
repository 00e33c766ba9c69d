package timing_test

import (
	"fmt"
	"math"
	"testing"

	"pappus/layout"
	"pappus/layout/body"
	"pappus/layout/spread"
	"pappus/timing"

	"gonum.org/v1/gonum/spatial/r3"
)

// even lays drivers out evenly on a ball of 300 mm on a hard or no surface.
func even(t testing.TB, drivers int, surface bool) *layout.Array {
	t.Helper()
	u, _, err := spread.Even(drivers, 1)
	if err != nil {
		t.Fatal(err)
	}
	a := &layout.Array{
		Air:      layout.Air{Temperature: 294.15, Humidity: 0.45, Pressure: 101325},
		Body:     body.Ball(0.15),
		Driver:   layout.Driver{ConeRadius: 0.016, NominalOhm: 8, DCOhm: 7, Sensitivity: math.NaN()},
		Timing:   layout.Timing{Model: "sphere", DelaysBy: "path", FieldLow: 500, FieldHigh: 8000},
		Wiring:   layout.Wiring{MinimumLoad: 4},
		Coverage: layout.Coverage{HalfWidth: 2.8, Cells: 32},
		Spot:     r3.Vec{X: 1.8, Y: 0.4, Z: 0.6},
		Surface:  layout.Surface{Present: surface, Height: -0.175},
	}
	for i, p := range u {
		a.Mounts = append(a.Mounts, layout.Mount{ID: i + 1, Point: r3.Scale(0.15, p), Normal: p, Face: -1})
	}
	return a
}

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
				if _, err := planner.Move(r3.Vec{X: 1.8 + 0.001*float64(i%100), Y: 0.4, Z: 0.6}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// BenchmarkCover fills the whole coverage of a slice, its table included.
func BenchmarkCover(b *testing.B) {
	p := plan(b, demo(b))
	s := timing.HorizontalSlice(p)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := timing.Cover(p, s); err != nil {
			b.Fatal(err)
		}
	}
}
