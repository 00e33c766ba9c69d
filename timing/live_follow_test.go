package timing_test

import (
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
