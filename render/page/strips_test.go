package page

import (
	"math"
	"testing"

	"pappus/layout/design"
	"pappus/timing"
)

// TestOlderStripsAreDropped: once a newer move comes, no more than the strip that is under way is
// drawn of the fine map of an older one.
func TestOlderStripsAreDropped(t *testing.T) {
	text := movable[1].text
	p, _ := newPage(t, text)
	id := ask[planAnswer](t, p, "/api/plan", asked{text}).ID
	conn := dial(t, serve(t, p))
	first := move{Seq: 1, ID: id, Spot: triple{2, 0.4, 0.6}, View: "above", Quantity: "comb_onset", Cells: mostCells}
	say(t, conn, first)
	for a := hear(t, conn); a.Strip == nil || !a.Strip.Fine; a = hear(t, conn) {
	}
	next := first
	next.Seq, next.Spot, next.Quantity, next.Cells = 2, triple{2, 0.5, 0.6}, "smear", dragCells+1
	say(t, conn, next)
	known, late := false, 0
	for {
		a := hear(t, conn)
		switch {
		case a.Seq == 1 && a.Strip != nil && a.Strip.Last:
			t.Fatal("the map of the older move is drawn to its end")
		case a.Seq == 1 && known:
			late++
		case a.Seq == 2 && a.Spot != nil:
			known = true
		case a.Seq == 2 && a.Strip != nil && a.Strip.Fine && a.Strip.Last:
			if late > 1 {
				t.Errorf("%d strips of the older move came after the figures of the newer", late)
			}
			return
		}
	}
}

// TestRestingMapIsThePlans: the map of a chair at rest is the one that plan draws, every cell to
// the digits that are shown.
func TestRestingMapIsThePlans(t *testing.T) {
	text := string(design.DefaultTOML())
	p, _ := newPage(t, text)
	id := ask[planAnswer](t, p, "/api/plan", asked{text}).ID
	server, s := serve(t, p), &session{plans: p.plans}
	seq := int64(0)
	for _, at := range []triple{{1.8, 0.4, 0.6}, {1, -1.2, 0.9}} {
		_, spot := s.answer(move{ID: id, Spot: at})
		if spot == nil {
			t.Fatal(at)
		}
		for view, slice := range map[string]timing.Slice{"above": timing.HorizontalSlice(spot.WithCells(48)), "side": timing.VerticalSlice(spot.WithCells(48))} {
			c, err := timing.Cover(spot, slice)
			if err != nil {
				t.Fatal(err)
			}
			conn := dial(t, server) // only now: who answers no pings meanwhile is closed
			for _, q := range []struct {
				name  string
				band  float64
				scale float64
				want  []float64
			}{
				{"smear", 0, 1e6, c.Smear}, {"comb_onset", 0, 1, c.CombOnset}, {"loss", 0, 1, c.Loss},
				{"level", 125, 1, c.Level[0]}, {"level", 1000, 1, c.Level[3]}, {"level", 8000, 1, c.Level[6]},
			} {
				seq++
				a := answered(t, conn, move{Seq: seq, ID: id, Spot: at, View: view, Quantity: q.name, Band: q.band, Cells: 48})
				if a.Map == nil || len(a.Map.values) != len(q.want) {
					t.Fatalf("%s from %s: %v", q.name, view, a)
				}
				for cell, v := range a.Map.values {
					want := q.want[cell] * q.scale
					if q.name == "comb_onset" {
						want = min(want, float64(a.Map.Most))
					}
					if !a.Map.has[cell] || math.IsNaN(v) != math.IsNaN(want) || math.Abs(v-want) > 0.5/a.Map.Per+1e-6 {
						t.Fatalf("%s %g from %s, cell %d: %g, in plan's map %g", q.name, q.band, view, cell, v, want)
					}
				}
			}
		}
	}
}

// TestOwnMapOfMany: of 300 drivers, too, there is a map in which each place has its own delays; at
// its edge it is compared with the one that timing makes.
func TestOwnMapOfMany(t *testing.T) {
	text := movable[1].text
	p, _ := newPage(t, text)
	id := ask[planAnswer](t, p, "/api/plan", asked{text}).ID
	conn, s := dial(t, serve(t, p)), &session{plans: p.plans}
	m := move{Seq: 1, ID: id, Spot: triple{2, 0.4, 0.6}, View: "above", Quantity: "smear", Delays: "own", Cells: dragCells + 1}
	a := answered(t, conn, m)
	_, at := s.answer(m)
	slice := timing.HorizontalSlice(at.WithCells(a.Map.Columns))
	live, err := timing.NewOwnLive(t.Context(), at, slice, timing.LiveSmear, 0, restOctave)
	if err != nil {
		t.Fatal(err)
	}
	want, edge := make([]float64, len(a.Map.values)), timing.Strip{From: slice.Columns - 1, To: slice.Columns}
	if err := live.Begin(want, at).Strip(t.Context(), edge); err != nil {
		t.Fatal(err)
	}
	for cell, v := range a.Map.values {
		if edge.Has(slice, cell) && !(math.Abs(v-1e6*want[cell]) <= 0.5/a.Map.Per+1e-6) {
			t.Errorf("cell %d of %d is %g us, by timing %g", cell, len(want), v, 1e6*want[cell])
		}
	}
}
