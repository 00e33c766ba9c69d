package page

import (
	"fmt"
	"slices"
	"testing"
	"time"

	"pappus/layout/design"
)

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
