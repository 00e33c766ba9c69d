package page

import (
	"encoding/json"
	"fmt"
	"slices"
	"testing"
	"time"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/timing"
)

const ms = time.Millisecond

// TestPace of maps, by what they took the last time.
func TestPace(t *testing.T) {
	after := func(cells int, took time.Duration, foretold int) pace { // foretells that a square map takes so long
		return pace{cells: cells, cell: took / time.Duration(foretold*foretold)}
	}
	for _, c := range []struct {
		name      string
		has, want int
	}{
		{"as many again in the time that a dragged one has", after(24, 46*ms, 24).next(24, 24, dragCells), 24},
		{"fewer where they take longer", after(24, 56*ms, 24).next(24, 24, dragCells), 16},
		{"more where they take well less", after(16, 33*ms, 24).next(16, 16, dragCells), 24},
		{"no more where that is not sure", after(16, 38*ms, 24).next(16, 16, dragCells), 16},
		{"no more than are asked for", after(16, 0, 1).next(16, 16, 20), 16},
		{"as many as are asked for", after(16, 0, 1).next(16, 16, 8), 8},
		{"fewest where all take long", after(32, time.Hour, 12).next(32, 32, dragCells), 12},
		{"most where none does", after(12, 1, 1).next(12, 12, dragCells), 32},
		{"a strip in the time that it has", pace{cell: ms / 10}.strip(), 400},
		{"a strip of cells that take long", pace{cell: time.Second}.strip(), 1},
		{"a strip of cells not known", pace{}.strip(), 1},
		{"a strip of cells in no time", pace{cell: 1}.strip(), mostStrip},
	} {
		if c.has != c.want {
			t.Errorf("%s: %d, want %d", c.name, c.has, c.want)
		}
	}
	if after(32, 90*ms, 32).waits(32, 32, 32) || !after(32, 110*ms, 32).waits(32, 32, 32) {
		t.Error("it is not a tenth of a second from which on a map waits")
	}
	if breath(45*ms) != 45*ms || breath(time.Second) < 45*ms || breath(time.Second) > 55*ms {
		t.Error("the figures have not as much of the machine as the map")
	}
	s := timing.Slice{Columns: 96, Rows: 96, Name: "above"}
	b := newPainter(nil)
	b.maps = lastUsed[mapOf, *timing.Live](mostMaps)
	for took, want := range map[time.Duration]int{3700 * ms: 96, 4300 * ms: 92} {
		b.paces[kind{}] = after(96, took, 96)
		if n := b.ownCells(kind{}, s); n != want {
			t.Errorf("each with its own delays, in %v: %d cells, want %d", took, n, want)
		}
	}
}

// TestFirstCells: the first map that a painter draws is no larger than most machines draw soon.
func TestFirstCells(t *testing.T) {
	p, _ := newPage(t, small)
	id := ask[planAnswer](t, p, "/api/plan", asked{small}).ID
	for cells, want := range map[int]int{dragCells: 16, 8: 8} {
		if a := answered(t, dial(t, serve(t, p)), move{ID: id, Spot: triple{1, 1, 1}, View: "above", Quantity: "smear", Cells: cells}); a.Map.Columns != want {
			t.Errorf("%d cells of %d", a.Map.Columns, cells)
		}
	}
}

// TestLargestStrip: a strip with as many cells as it may have is hardly under 20 KB.
func TestLargestStrip(t *testing.T) {
	a := &layout.Array{Coverage: layout.Coverage{HalfWidth: 2.5, Cells: mostCells}}
	s := timing.HorizontalSlice(&timing.Spot{Array: a})
	out := stripOf(s, quantities[0], s.Strips(mostStrip)[0], make([]float64, s.Columns*s.Rows))
	if body, err := json.Marshal(drawn{Seq: 123456, Strip: out}); err != nil || len(body) > 20<<10 || len(body) < 18<<10 {
		t.Errorf("%d bytes, %v", len(body), err)
	}
}

// ballOf is a ball of so many drivers over a table, with channels as an amplifier has them.
func ballOf(drivers int, radius float64) string {
	return fmt.Sprintf("name = \"Ball of %d\"\n[body]\nshape = \"ball\"\nradius_mm = %g\nstand_height_mm = 25\n[mounts]\non = \"even\"\ncount = %d\n"+
		"[driver]\ndiameter_mm = 32\ncutout_mm = 33\nflange_mm = 40\ndepth_mm = 18\nnominal_ohm = 8\ndc_ohm = 7.1\n"+
		"[wiring]\nchannels = 16\nminimum_load_ohm = 4\n[surface]\nabsorption = 0.1\n[spot]\nx_m = 2\ny_m = 0.4\nz_m = 0.6\n", drivers, radius, drivers)
}

// movable are the designs that moves are timed on.
var movable = []struct{ name, text string }{
	{"39 drivers", string(design.DefaultTOML())},
	{"300 drivers", ballOf(300, 600)},
	{"1000 drivers", ballOf(1000, 1000)},
}

// BenchmarkFigures has the figures of one move after another over the socket, without a map.
func BenchmarkFigures(b *testing.B) {
	for _, c := range movable {
		b.Run(c.name, func(b *testing.B) {
			p, _ := newPage(b, c.text)
			id := ask[planAnswer](b, p, "/api/plan", asked{c.text}).ID
			conn := dial(b, serve(b, p))
			var took []time.Duration
			i, bytes := 0, 0
			for b.Loop() {
				i++
				began := time.Now()
				say(b, conn, move{Seq: int64(i), ID: id, Spot: triple{2 + 0.01*float64(i%100), 0.4, 0.6}})
				a := hear(b, conn)
				if a.Seq != int64(i) || len(a.Columns.Level) == 0 {
					b.Fatal(a)
				}
				bytes = max(bytes, a.bytes)
				took = append(took, time.Since(began))
			}
			quantiles(b, took)
			b.ReportMetric(float64(bytes), "bytes-most")
		})
	}
}

// quantiles reports the half and the 95th part of times.
func quantiles(b *testing.B, took []time.Duration) {
	slices.Sort(took)
	for _, q := range []struct {
		name string
		at   float64
	}{{"ms-p50", 0.5}, {"ms-p95", 0.95}} {
		b.ReportMetric(float64(took[min(int(q.at*float64(len(took))), len(took)-1)].Microseconds())/1000, q.name)
	}
}
