package page

import (
	"testing"

	"pappus/layout/design"
	"pappus/render/document"
)

// TestLean: at rest it is told how far one may lean, on either view, round the chair; not while the chair is
// dragged, nor where each place has delays of its own.
func TestLean(t *testing.T) {
	for _, c := range []struct {
		name  string
		move  move
		leans bool
	}{
		{"from above", move{View: "above", Quantity: "smear", Cells: 40}, true},
		{"from the side", move{View: "side", Quantity: "level", Cells: 40}, true},
		{"dragged", move{View: "above", Quantity: "smear", Cells: 24}, false},
		{"own delays", move{View: "above", Quantity: "smear", Cells: 40, Delays: "own"}, false},
		{"no map", move{View: "above", Cells: 40}, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			p, _ := newPage(t, string(design.DefaultTOML()))
			made, err := p.plans.of(t.Context(), string(design.DefaultTOML()), p.work)
			if err != nil {
				t.Fatal(err)
			}
			spot := &made.plan.Spot
			c.move.Spot = document.TripleOf(6, 1, spot.Array.Spot)
			var lean []edge
			send := func(v any) error {
				if d, ok := v.(drawn); ok && d.Lean != nil {
					lean = d.Lean
				}
				return nil
			}
			if err := newPainter(send).draw(t.Context(), t.Context(), job{c.move, made, spot}); err != nil {
				t.Fatal(err)
			}
			if !c.leans {
				if lean != nil {
					t.Errorf("it has %d lines", len(lean))
				}
				return
			}
			// The chair is between the lines' ends across the map.
			low, high := number(1e9), number(-1e9)
			for _, line := range lean {
				for _, at := range line {
					low, high = min(low, at[1]), max(high, at[1])
				}
			}
			up := number(spot.Array.Spot.Y)
			if c.move.View == "side" {
				up = number(spot.Array.Spot.Z)
			}
			if !(low < up && up < high) {
				t.Errorf("the chair at %v is not between %v and %v", up, low, high)
			}
		})
	}
}
