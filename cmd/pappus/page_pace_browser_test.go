package main

import (
	"context"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"pappus/layout/design"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/cdproto/tracing"
	"github.com/chromedp/chromedp"
)

// pacing notes, in the page's own time, when the pointer moved, when a move was asked, when its figures were drawn,
// and when a map was.
const pacing = `{
	window.pace = {moved: [], asked: [], drawn: [], maps: 0, bytes: 0, most: 0, first: 0};
	addEventListener("pointermove", () => pace.moved.push(performance.now()), true);
	window.WebSocket = class extends WebSocket {
		constructor(...where) {
			super(...where);
			this.addEventListener("message", ({ data }) => {
				pace.bytes += data.length;
				pace.most = Math.max(pace.most, data.length);
				if (data.includes('"columns"')) pace.maps++;
			});
		}
		send(text) {
			pace.asked.push([JSON.parse(text).seq, performance.now()]);
			super.send(text);
		}
	};
	addEventListener("DOMContentLoaded", () => new MutationObserver(() => {
		pace.first ||= performance.now();
		pace.drawn.push([Number(document.body.dataset.seq), performance.now()]);
	}).observe(document.body, {attributeFilter: ["data-seq"]}));
}`

// paceOf is what was noted.
type paceOf struct {
	Moved        []float64
	Asked, Drawn [][2]float64
	Maps         int
	Bytes, Most  float64
	First        float64
}

// late returns how long after each move of the pointer the figures of it, or of a later one, were drawn, in ms; of
// those that never were, infinity.
func (p paceOf) late() []float64 {
	var out []float64
	for _, t := range p.Moved {
		asked := slices.IndexFunc(p.Asked, func(a [2]float64) bool { return a[1] >= t })
		late := math.Inf(1)
		if asked >= 0 {
			if drawn := slices.IndexFunc(p.Drawn, func(d [2]float64) bool { return d[0] >= p.Asked[asked][0] }); drawn >= 0 {
				late = p.Drawn[drawn][1] - t
			}
		}
		out = append(out, late)
	}
	slices.Sort(out)
	return out
}

// tasks collects how long the tasks of the page's main thread take, in ms.
type tasks struct {
	sync.Mutex
	took []float64
	done chan struct{}
}

// listen takes in what a trace says.
func (k *tasks) listen(event any) {
	switch e := event.(type) {
	case *tracing.EventDataCollected:
		k.Lock()
		defer k.Unlock()
		for _, raw := range e.Value {
			var one struct {
				Name string
				Dur  float64
				Cat  string
			}
			if json.Unmarshal([]byte(raw), &one) == nil && one.Name == "RunTask" {
				k.took = append(k.took, one.Dur/1000)
			}
		}
	case *tracing.EventTracingComplete:
		close(k.done)
	}
}

// BenchmarkPage drags the chair, and a seat, over the page in a real browser, at sixty moves a second: how late figures are drawn, how
// long tasks take, how many maps came.
func BenchmarkPage(b *testing.B) {
	for _, c := range []struct{ name, text, handle string }{
		{"39 drivers", string(design.DefaultTOML()), "chair"},
		{"300 drivers", ballOf(300, 600), "chair"},
		{"1000 drivers", ballOf(1000, 1000), "chair"},
		{"39 drivers, 40 seats", fortySeats(), "seat-20"},
	} {
		b.Run(c.name, func(b *testing.B) {
			path := filepath.Join(b.TempDir(), "design.toml")
			if err := os.WriteFile(path, []byte(c.text), 0o600); err != nil {
				b.Fatal(err)
			}
			address := serving(b, path)
			for b.Loop() {
				drag(b, address, c.handle)
			}
		})
	}
}

// drag drags a handle to and fro for three seconds.
func drag(t *testing.B, address, handle string) {
	tab, stop := chromedp.NewContext(started(t), chromedp.WithTargetID(window(t, started(t))))
	defer stop()
	tab, stop = context.WithTimeout(tab, 3*time.Minute)
	defer stop()
	b := &browser{TB: t, ctx: tab}
	k := &tasks{done: make(chan struct{})}
	chromedp.ListenTarget(tab, k.listen)
	b.do(chromedp.ActionFunc(func(ctx context.Context) error {
		_, err := page.AddScriptToEvaluateOnNewDocument(pacing).Do(ctx)
		return err
	}), chromedp.EmulateViewport(1440, 900), chromedp.Navigate(address))
	b.until(`document.body.dataset.ready === "yes" && document.body.dataset.rest > 0 && document.getElementById("room").dataset.map === "new"`)
	first := b.number("pace.first")
	x, y := b.seatAt(handle)
	b.do(chromedp.Sleep(time.Second), chromedp.ActionFunc(func(ctx context.Context) error {
		return tracing.Start().WithTraceConfig(&tracing.TraceConfig{IncludedCategories: []string{"disabled-by-default-devtools.timeline", "devtools.timeline"}}).Do(ctx)
	}), input.DispatchMouseEvent(input.MousePressed, x, y).WithButton(input.Left).WithClickCount(1),
		chromedp.Evaluate(`Object.assign(pace, {moved: [], asked: [], drawn: [], maps: 0, bytes: 0, most: 0}); 0`, nil))
	tick := time.NewTicker(time.Second / 60)
	defer tick.Stop()
	for i := range 180 {
		<-tick.C
		d := 60 * math.Sin(float64(i)/15)
		b.do(input.DispatchMouseEvent(input.MouseMoved, x+d/2, y+d).WithButton(input.Left))
	}
	maps := b.number("pace.maps")
	b.do(chromedp.Sleep(300*time.Millisecond), input.DispatchMouseEvent(input.MouseReleased, x, y).WithButton(input.Left).WithClickCount(1))
	var p paceOf
	b.do(chromedp.Evaluate("pace", &p), chromedp.ActionFunc(func(ctx context.Context) error { return tracing.End().Do(ctx) }))
	<-k.done
	late := p.late()
	at := func(of []float64, q float64) float64 { return of[min(int(q*float64(len(of))), len(of)-1)] }
	slices.Sort(k.took)
	long := 0
	for _, ms := range k.took {
		if ms > 50 {
			long++
		}
	}
	for name, v := range map[string]float64{
		"first-ms": first, "moves": float64(len(p.Moved)), "frames": float64(len(p.Drawn)), "late-ms-p50": at(late, 0.5), "late-ms-p95": at(late, 0.95), "maps": maps,
		"task-ms-max": at(k.took, 1), "task-ms-p99": at(k.took, 0.99), "tasks-over-50ms": float64(long), "answer-kB-most": p.Most / 1000,
	} {
		t.ReportMetric(v, name)
	}
}

// ballOf is a ball of so many drivers over a table, with channels as an amplifier has them.
func ballOf(drivers int, radius float64) string {
	return fmt.Sprintf("name = \"Ball of %d\"\n[body]\nshape = \"ball\"\nradius_mm = %g\nstand_height_mm = 25\n[mounts]\non = \"even\"\ncount = %d\n"+
		"[driver]\ndiameter_mm = 32\ncutout_mm = 33\nflange_mm = 40\ndepth_mm = 18\nnominal_ohm = 8\ndc_ohm = 7.1\n"+
		"[wiring]\nchannels = 16\nminimum_load_ohm = 4\n[surface]\nabsorption = 0.1\n[spot]\nx_m = 2\ny_m = 0.4\nz_m = 0.6\n", drivers, radius, drivers)
}

// fortySeats is the built-in design with forty seats in five rows in place of its chair.
func fortySeats() string {
	text, rest, _ := strings.Cut(string(design.DefaultTOML()), "[spot]")
	_, after, _ := strings.Cut(rest, "\n[")
	for i := range 40 {
		text += fmt.Sprintf("[[seat]]\nx_m = %g\ny_m = %g\nz_m = 0.6\n", 1.2+0.5*float64(i/8), 0.5*float64(i%8)-1.75)
	}
	return text + "[" + after
}
