package figure

import (
	"math"
	"testing"

	"pappus/layout"
	"pappus/timing"

	"github.com/google/go-cmp/cmp"
	"gonum.org/v1/gonum/spatial/r3"
)

// TestWalls: what of a room, or of what the body is fixed to, each slice cuts.
func TestWalls(t *testing.T) {
	above := timing.Slice{Right: r3.Vec{X: 1}, Up: r3.Vec{Y: 1}}
	side := timing.Slice{Right: r3.Vec{X: 0.6, Y: -0.8}, Up: r3.Vec{Z: 1}}
	room, on := &layout.Array{}, func(what string, height float64) *layout.Array {
		return &layout.Array{Surface: layout.Surface{Present: true, On: what, Height: height}}
	}
	room.Room.Present, room.Room.Size, room.Room.Body = true, r3.Vec{X: 5, Y: 4, Z: 3}, r3.Vec{X: 1, Y: 1.5, Z: 1}
	for _, test := range []struct {
		name  string
		array *layout.Array
		slice timing.Slice
		want  []wall
	}{
		{"open air", &layout.Array{}, side, nil},
		{"table from above", on(layout.OnSurface, -0.2), above, nil},
		{"table from the side", on(layout.OnSurface, -0.2), side, []wall{{"table or floor", false, -0.2, -1}}},
		{"ceiling", on(layout.OnCeiling, 0.3), side, []wall{{"ceiling", false, 0.3, 1}}},
		{"wall from above", on(layout.OnWall, -0.3), above, []wall{{"wall", true, -0.3, -1}}},
		{"wall from the side", on(layout.OnWall, -0.3), side, []wall{{"wall", true, -0.5, -1}}},
		{"room from above", room, above, []wall{{"back wall", true, -1, -1}, {"front wall", true, 4, 1}, {"right wall", false, -1.5, -1}, {"left wall", false, 2.5, 1}}},
		{"room from the side", room, side, []wall{{"floor", false, -1, -1}, {"ceiling", false, 2, 1}, {"back wall", true, -1 / 0.6, -1}, {"right wall", true, 1.5 / 0.8, 1}}},
	} {
		t.Run(test.name, func(t *testing.T) {
			v := view{plan: &timing.Plan{Spot: timing.Spot{Array: test.array}}, slice: test.slice}
			near := cmp.Comparer(func(a, b float64) bool { return a-b < 1e-12 && b-a < 1e-12 })
			if d := cmp.Diff(test.want, v.walls(), cmp.AllowUnexported(wall{}), near); d != "" {
				t.Error(d)
			}
		})
	}
}

// TestNote: a map that has nothing to show says so.
var inf = math.Inf(1)

func TestNote(t *testing.T) {
	c := func(smear, loss, onset float64) *timing.Coverage {
		two := func(v float64) []float64 { return []float64{v, v} }
		return &timing.Coverage{Band: []float64{1000}, Level: [][]float64{two(loss)}, Smear: two(smear), CombOnset: two(onset), Loss: two(loss)}
	}
	for _, test := range []struct {
		name string
		of   Quantity
		want bool
	}{
		{"smear of nothing", Smear(c(0.45e-6, 0, 0)), true},
		{"some smear", Smear(c(0.55e-6, 0, 0)), false},
		{"no loss", Loss(c(0, 0.045, 0)), true},
		{"some loss", Loss(c(0, 0.055, 0)), false},
		{"no combs", CombOnset(c(0, 0, inf)), true},
		{"combs", CombOnset(c(0, 0, 900)), false},
		{"silence", Level(c(0, -inf, 0), 0), true},
		{"a level", Level(c(0, 80, 0), 0), false},
	} {
		if got := test.of.note(); (got != "") != test.want {
			t.Errorf("%s: %q", test.name, got)
		}
	}
}
