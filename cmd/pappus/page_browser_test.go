package main

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"pappus/layout/design"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/cdproto/target"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// listening stands between the page's sound and the loudspeaker, so that what is
// heard can be measured; counts the sources that sound; and keeps the last figures of a move,
// with the fine map once all of its strips are there.
const listening = `{
	const connect = AudioNode.prototype.connect;
	AudioNode.prototype.connect = function (to, ...rest) {
		if (to instanceof AudioDestinationNode) {
			window.heard = this.context.createAnalyser();
			window.heard.fftSize = 32768;
			connect.call(this, window.heard);
		}
		return connect.call(this, to, ...rest);
	};
	const start = AudioBufferSourceNode.prototype.start;
	window.sounding = 0;
	AudioBufferSourceNode.prototype.start = function (...when) {
		window.sounding++;
		this.addEventListener("ended", () => window.sounding--);
		return start.apply(this, when);
	};
	let map = null;
	const hear = (said) => {
		if (said.spot_m || said.fault) window.answer = said;
		const s = said.strip;
		if (!s) return;
		if (map === null || map.seq !== said.seq || map.columns !== s.columns) map = {...s, seq: said.seq, values: new Array(s.columns * s.rows).fill(null)};
		const bytes = atob(s.cells);
		for (let i = 0, at = 0; i < map.values.length; i++) {
			const far = Math.max(Math.abs(2 * (i % s.columns) + 1 - s.columns), Math.abs(2 * Math.floor(i / s.columns) + 1 - s.rows));
			if (far < s.from || far >= s.to) continue;
			const n = bytes.charCodeAt(at) + 256 * bytes.charCodeAt(at + 1);
			map.values[i] = n === 65535 ? null : (s.least + n) / s.per;
			at += 2;
		}
		if (s.fine && s.last) window.answer = {...window.answer, map};
	};
	window.WebSocket = class extends WebSocket {
		constructor(...where) {
			super(...where);
			if (!String(where[0]).endsWith("/watch")) this.addEventListener("message", (e) => hear(JSON.parse(e.data)));
		}
	};
}`

// loudness is the RMS of what the page plays at this instant; -1: no sound was made.
const loudness = `(() => {
	if (!window.heard) return -1;
	const samples = new Float32Array(window.heard.fftSize);
	window.heard.getFloatTimeDomainData(samples);
	return Math.sqrt(samples.reduce((sum, v) => sum + v * v, 0) / samples.length);
})()`

// browser is a page in a real browser, and what it complained of.
type browser struct {
	testing.TB
	ctx context.Context

	mu         sync.Mutex
	complaints []string
	leaves     int // how often it asked whether to leave
}

// chrome is the one browser of all tests, started for the first of them.
var chrome struct {
	sync.Once
	ctx  context.Context
	stop func()
}

// chromium returns the browser for a test that runs beside others, since a page mostly waits.
func chromium(t *testing.T) context.Context {
	t.Helper()
	t.Parallel()
	return started(t)
}

// started returns the browser, started where it is not yet.
func started(t testing.TB) context.Context {
	t.Helper()
	path, err := exec.LookPath("chromium-headless-shell") // without a window round it, which costs as much again
	if err != nil {
		path, err = exec.LookPath("chromium")
	}
	if err != nil {
		t.Skip("there is no chromium here")
	}
	chrome.Do(func() {
		options := append(slices.Clone(chromedp.DefaultExecAllocatorOptions[:]), chromedp.ExecPath(path), chromedp.NoSandbox,
			chromedp.Flag("disable-gpu", true), chromedp.Flag("use-angle", "swiftshader"), chromedp.Flag("enable-unsafe-swiftshader", true),
			chromedp.Flag("disable-quic", true), chromedp.Flag("disable-component-update", true), chromedp.Flag("mute-audio", false))
		allocated, stop := chromedp.NewExecAllocator(context.Background(), options...)
		chrome.ctx, _ = chromedp.NewContext(allocated)
		chrome.stop = stop
		err = chromedp.Run(chrome.ctx)
	})
	if err != nil {
		t.Fatal(err)
	}
	return chrome.ctx
}

// open opens the page in a browser and waits until it is drawn.
func open(t testing.TB, ctx context.Context, address string, width, height int64) *browser {
	t.Helper()
	return openTo(t, ctx, address, width, height, `document.body.dataset.ready === "yes" && document.body.dataset.rest > 0 && document.body.dataset.busy === "no"`)
}

// window opens a window of its own, since a tab behind another is not drawn.
func window(t testing.TB, ctx context.Context) target.ID {
	t.Helper()
	browser := cdp.WithExecutor(ctx, chromedp.FromContext(ctx).Browser)
	own, err := target.CreateBrowserContext().WithDisposeOnDetach(true).Do(browser)
	if err != nil {
		t.Fatal(err)
	}
	id, err := target.CreateTarget("about:blank").WithBrowserContextID(own).WithNewWindow(true).Do(browser)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = target.DisposeBrowserContext(own).Do(browser) })
	return id
}

// openTo is open until a condition holds; of an address with /bench or /book behind it that
// view, which is there once the browser was let in.
func openTo(t testing.TB, ctx context.Context, address string, width, height int64, until string) *browser {
	t.Helper()
	tab, stop := chromedp.NewContext(ctx, chromedp.WithTargetID(window(t, ctx)))
	t.Cleanup(stop)
	tab, stop = context.WithTimeout(tab, 6*time.Minute)
	t.Cleanup(stop)
	b := &browser{TB: t, ctx: tab}
	chromedp.ListenTarget(tab, b.listen)
	b.do(log.Enable(),
		chromedp.ActionFunc(func(ctx context.Context) error {
			_, err := page.AddScriptToEvaluateOnNewDocument(listening).Do(ctx)
			return err
		}),
		emulation.SetDeviceMetricsOverride(width, height, 1, false),
		b.goTo(address))
	b.until(until)
	return b
}

// goTo opens an address.
func (b *browser) goTo(address string) chromedp.Action {
	for _, view := range []string{"/bench", "/book"} {
		if door, is := strings.CutSuffix(address, view); is {
			return chromedp.Tasks{chromedp.Navigate(door), chromedp.Navigate(door[:strings.LastIndex(door, "/")] + view)}
		}
	}
	return chromedp.Navigate(address)
}

// beside opens an address in another tab with the same cookies.
func (b *browser) beside(address string) {
	b.Helper()
	b.do(chromedp.ActionFunc(func(ctx context.Context) error {
		here, err := target.GetTargetInfo().Do(ctx)
		if err != nil {
			return err
		}
		browser := cdp.WithExecutor(ctx, chromedp.FromContext(ctx).Browser)
		_, err = target.CreateTarget(address).WithBrowserContextID(here.BrowserContextID).WithBackground(true).Do(browser)
		return err
	}))
}

// listen keeps what the browser complains of.
func (b *browser) listen(event any) {
	b.mu.Lock()
	defer b.mu.Unlock()
	switch e := event.(type) {
	case *runtime.EventExceptionThrown:
		b.complaints = append(b.complaints, e.ExceptionDetails.Error())
	case *log.EventEntryAdded:
		if e.Entry.Level == log.LevelError {
			b.complaints = append(b.complaints, e.Entry.Text+" "+e.Entry.URL)
		}
	case *page.EventJavascriptDialogOpening:
		b.leaves++
		go func() { _ = chromedp.Run(b.ctx, page.HandleJavaScriptDialog(true)) }()
	}
}

// quiet checks that the browser complained of nothing but what is allowed.
func (b *browser) quiet(allowed ...string) {
	b.Helper()
	b.mu.Lock()
	defer b.mu.Unlock()
	for _, c := range b.complaints {
		if !slices.ContainsFunc(allowed, func(a string) bool { return strings.Contains(c, a) }) {
			b.Errorf("the browser says: %s", c)
		}
	}
}

func (b *browser) do(actions ...chromedp.Action) {
	b.Helper()
	if err := chromedp.Run(b.ctx, actions...); err != nil {
		b.Fatal(err)
	}
}

// until waits for a condition in the page, or in the one that comes in its place meanwhile.
func (b *browser) until(condition string) {
	b.Helper()
	ctx, stop := context.WithTimeout(b.ctx, 2*time.Minute)
	defer stop()
	err := chromedp.Run(ctx, chromedp.Poll(condition, nil))
	for ctx.Err() == nil && err != nil && strings.Contains(err.Error(), "Cannot find context") {
		err = chromedp.Run(ctx, chromedp.Poll(condition, nil))
	}
	if err != nil {
		var state string
		_ = chromedp.Run(b.ctx, chromedp.Evaluate(`JSON.stringify(document.body.dataset) + document.getElementById("notice").textContent`, &state))
		b.Fatalf("waited for %s: %v; %s", condition, err, state)
	}
}

func (b *browser) number(of string) float64 {
	b.Helper()
	var v float64
	b.do(chromedp.Evaluate(of, &v))
	return v
}

func (b *browser) text(of string) string {
	b.Helper()
	var v string
	b.do(chromedp.Evaluate(`document.querySelector(`+fmt.Sprintf("%q", of)+`).textContent`, &v))
	return v
}

// rested waits for a fine answer to what comes after a change.
func (b *browser) rested(change ...chromedp.Action) {
	b.Helper()
	before := b.number(`Number(document.body.dataset.rest)`)
	b.do(change...)
	b.until(fmt.Sprintf(`Number(document.body.dataset.rest) > %g && document.body.dataset.busy === "no"`, before))
}

// set types into a field of the design.
func set(id, value string) chromedp.Action {
	return chromedp.Evaluate(fmt.Sprintf(`(() => { const f = document.getElementById(%q); f.closest("details").open = true; f.focus(); f.value = %q; f.dispatchEvent(new Event("change", {bubbles: true})); })()`, id, value), nil)
}

// servedDemo runs the command on a copy of the built-in design.
func servedDemo(t *testing.T) (address, path string) {
	t.Helper()
	path = filepath.Join(t.TempDir(), "lantern.toml")
	if err := os.WriteFile(path, design.DefaultTOML(), 0o644); err != nil {
		t.Fatal(err)
	}
	return serving(t, path), path
}

// TestPageFollowsTheChair: drag the chair with the mouse, and delays, measures and
// the spot's fields follow; then by keys alone.
func TestPageFollowsTheChair(t *testing.T) {
	ctx := chromium(t)
	address, _ := servedDemo(t)
	b := open(t, ctx, address, 1280, 900)
	if got := b.text("#design-name"); got != "Lantern for the story corner" {
		t.Errorf("it is called %q", got)
	}
	smear, delays := b.text("#smear-after"), b.text("#channels tbody")
	if !strings.Contains(b.text("#lede-say"), "Sit 1.84 m away along the floor, 13° to the loudspeaker's left. Set these eight delays.") || !strings.Contains(smear, "µs") {
		t.Errorf("it says %q, %q", b.text("#lede-say"), smear)
	}
	var at struct{ X, Y float64 }
	b.do(chromedp.ScrollIntoView("#chair"), chromedp.Evaluate(
		`(() => { const r = document.getElementById("chair").getBoundingClientRect(); return {x: r.x + r.width / 2, y: r.y + r.height / 2}; })()`, &at))
	mouse := func(kind input.MouseType, dx float64) chromedp.Action {
		return input.DispatchMouseEvent(kind, at.X-dx, at.Y-dx).WithButton(input.Left).WithClickCount(1)
	}
	drag := []chromedp.Action{mouse(input.MousePressed, 0)}
	for i := range 12 {
		drag = append(drag, mouse(input.MouseMoved, float64(10*(i+1))))
	}
	seq := b.number(`Number(document.body.dataset.seq)`)
	b.rested(append(drag, mouse(input.MouseReleased, 120))...)
	if b.number(`Number(document.body.dataset.seq)`) <= seq {
		t.Error("no answer came while the chair was dragged")
	}
	if x := b.number(`Number(document.getElementById("spot-x").value)`); x > 1.7 {
		t.Errorf("the chair is still at %g m", x)
	}
	if b.text("#channels tbody") == delays {
		t.Error("the delays stayed")
	}

	// By keys alone: the skip link leads to the chair, arrows move it.
	b.do(chromedp.Navigate(address))
	b.until(`document.body.dataset.ready === "yes" && document.body.dataset.rest > 0`)
	b.do(chromedp.KeyEvent(kb.Tab), chromedp.KeyEvent(kb.Enter))
	b.until(`document.activeElement.id === "chair"`)
	x := b.number(`Number(document.getElementById("spot-x").value)`)
	b.rested(chromedp.KeyEvent(kb.ArrowRight), chromedp.KeyEvent(kb.ArrowRight))
	if moved := b.number(`Number(document.getElementById("spot-x").value)`) - x; moved < 0.09 || moved > 0.11 {
		t.Errorf("two keys moved it by %g m", moved)
	}
	b.until(`document.getElementById("summary").textContent !== ""`)
	b.quiet()
}

func (b *browser) attribute(name string) string {
	b.Helper()
	var v string
	b.do(chromedp.Evaluate(`document.body.dataset.`+name, &v))
	return v
}

// TestPageChangesTheDesign: change the body, undo, redo, a fault at its field, save
// with the remarks kept, reload.
func TestPageChangesTheDesign(t *testing.T) {
	ctx := chromium(t)
	address, path := servedDemo(t)
	b := open(t, ctx, address, 1280, 900)
	b.do(chromedp.Click("#change"))
	drivers := func() float64 {
		return b.number(`[...document.querySelectorAll("#pick option")].filter((o) => /^[0-9]+$/.test(o.text)).length`)
	}
	if n := drivers(); n != 39 {
		t.Fatalf("%g drivers", n)
	}
	b.rested(set("f-body-subdivision", "3"))
	many := drivers()
	if many <= 39 {
		t.Errorf("%g drivers on the finer body", many)
	}
	b.rested(chromedp.Click("#undo"))
	if n := drivers(); n != 39 {
		t.Errorf("undone, %g drivers", n)
	}
	b.rested(chromedp.Click("#redo"))
	if n := drivers(); n != many {
		t.Errorf("redone, %g drivers", n)
	}

	b.do(set("f-body-radius_mm", "5"))
	b.until(`!document.getElementById("f-body-radius_mm-fault").hidden`)
	if words := b.text("#f-body-radius_mm-fault"); !strings.Contains(words, "20 to 5000") {
		t.Errorf("the fault says %q", words)
	}
	b.rested(set("f-body-radius_mm", "140"))
	b.until(`document.getElementById("f-body-radius_mm-fault").hidden`)

	b.do(chromedp.Click("#save"))
	b.until(`document.getElementById("file-state").textContent === ""`)
	saved, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"radius_mm = 140", "subdivision = 3", "# a heated reading room", "# Or a box room, in place of the surface."} {
		if !strings.Contains(string(saved), want) {
			t.Errorf("the saved file has no %q", want)
		}
	}
	b.do(chromedp.Reload())
	b.until(`document.body.dataset.ready === "yes"`)
	b.until(`document.getElementById("f-body-radius_mm").value === "140"`)
	b.quiet("422") // the answer to the radius that cannot be
}

// painted is the share of a part of the body's picture that is drawn on, from its
// upper left corner to x and y of its width and height; the picture is drawn anew,
// since a browser does not keep it.
const painted = `(async (share) => {
	window.dispatchEvent(new Event("beforeprint"));
	const still = document.getElementById("solid-still");
	const data = still.getContext("2d").getImageData(0, 0, still.width, Math.round(share * still.height)).data;
	window.dispatchEvent(new Event("afterprint"));
	let drawn = 0;
	for (let i = 3; i < data.length; i += 4) if (data[i] === 255) drawn++;
	return drawn / (data.length / 4);
})(%g)`

// TestPageShowsTheBody on its table and in the middle of a room, where the floor is
// far below it; and prints it, on one sheet.
func TestPageShowsTheBody(t *testing.T) {
	ctx := chromium(t)
	room := strings.Replace(string(design.DefaultTOML()), "[surface]\nabsorption = 0.1 ", "[room]\nsize_m = [6, 4.5, 2.7]\nbody_at_m = [1.5, 2.2, 1.2]\nabsorption = 0.3 ", 1)
	if !strings.Contains(room, "\n[room]") {
		t.Fatal("the design has no surface to put a room in the place of")
	}
	hung := edited(t, map[string]any{"placing.on": "ceiling", "spot.z_m": -1.0})
	for _, test := range []struct{ name, text string }{{"on a table", string(design.DefaultTOML())}, {"in a room", room}, {"under a ceiling", hung}, {"with seats", fiveSeats(t)}} {
		t.Run(test.name, func(t *testing.T) {
			path := filepath.Join(t.TempDir(), "lantern.toml")
			if err := os.WriteFile(path, []byte(test.text), 0o644); err != nil {
				t.Fatal(err)
			}
			b := open(t, ctx, serving(t, path), 1440, 900)
			var share float64
			b.do(chromedp.Evaluate(fmt.Sprintf(painted, 0.7), &share, func(p *runtime.EvaluateParams) *runtime.EvaluateParams {
				return p.WithAwaitPromise(true)
			}))
			if share < 0.15 || share > 0.75 {
				t.Errorf("the body takes %.3f of its picture", share)
			}
			var sheet []byte
			b.do(chromedp.ActionFunc(func(ctx context.Context) (err error) {
				const a4Wide, a4High = 210 / 25.4, 297 / 25.4 // inches; ISO 216
				sheet, _, err = page.PrintToPDF().WithPaperWidth(a4Wide).WithPaperHeight(a4High).WithPreferCSSPageSize(true).Do(ctx)
				return err
			}))
			if pages := bytes.Count(sheet, []byte("/Type /Page\n")); pages != 1 {
				t.Errorf("it prints on %d sheets", pages)
			}
			b.quiet()
		})
	}
}

// TestPageIsHeard: the sound graph gives nothing before it is asked, rises quietly,
// goes on through a change of case and stops.
func TestPageIsHeard(t *testing.T) {
	ctx := chromium(t)
	address, _ := servedDemo(t)
	b := open(t, ctx, address, 1280, 900)
	if l := b.number(loudness); l > 0 {
		t.Errorf("it plays at %g before it is asked", l)
	}
	b.do(chromedp.Click("#play"))
	b.until(`document.getElementById("hear").dataset.state === "on"`)
	b.until(loudness + ` > 1e-3`)
	time.Sleep(1600 * time.Millisecond)
	aligned := b.number(loudness)
	if aligned > 0.1 {
		t.Errorf("it begins as loud as %g", aligned)
	}
	b.do(chromedp.Click("#swap"))
	time.Sleep(900 * time.Millisecond)
	if built := b.number(loudness); built < aligned/2 || built > aligned*2 {
		t.Errorf("as built it is as loud as %g, aligned %g", built, aligned)
	}
	if on := b.text("#cases input:checked + span"); on != "without delays" {
		t.Errorf("now %q plays", on)
	}
	b.do(chromedp.Click("#play"))
	b.until(loudness + ` === 0`)
	b.quiet()
}

// TestPagesAtOnce: two people change different things, and neither sees the
// other's until it is saved; the second to save is told.
func TestPagesAtOnce(t *testing.T) {
	ctx := chromium(t)
	address, _ := servedDemo(t)
	one, two := open(t, ctx, address, 1280, 900), open(t, ctx, address, 900, 900)
	one.do(chromedp.Click("#change"))
	two.do(chromedp.Click("#change"))
	one.rested(set("f-wiring-channels", "4"))
	two.rested(set("f-wiring-channels", "3"))
	rows := `document.querySelectorAll("#channels tbody tr").length`
	if a, b := one.number(rows), two.number(rows); a != 4 || b != 3 {
		t.Errorf("%g and %g channels", a, b)
	}
	one.do(chromedp.Click("#save"))
	one.until(`document.getElementById("file-state").textContent === ""`)
	two.do(chromedp.Click("#save"))
	two.until(`document.getElementById("notice").textContent.includes("Not saved")`)
	one.quiet()
	two.quiet("409")
}

// TestPageIsAccessible by the rules of axe-core, at three widths, light and dark,
// with the design open and shut, mended, not to be built and not to be planned.
func TestPageIsAccessible(t *testing.T) {
	ctx := chromium(t)
	axe, err := os.ReadFile("../../render/page/web/node_modules/axe-core/axe.min.js")
	if err != nil {
		t.Skip("axe-core is not here: npm ci in render/page/web brings it")
	}
	address, _ := servedDemo(t)
	for _, width := range []int64{390, 900, 1440} {
		t.Run(fmt.Sprint(width), func(t *testing.T) {
			t.Parallel()
			b := open(t, ctx, address, width, 900)
			b.do(chromedp.Evaluate(string(axe), nil))
			for _, step := range []struct {
				name string
				do   chromedp.Action
			}{
				{"as it opens", chromedp.Sleep(0)}, {"the other theme", chromedp.Click("#theme")}, {"with the design", chromedp.Click("#change")},
				{"with channels to turn", chromedp.Evaluate(`document.getElementById("desk").click(); document.querySelector('[aria-label="Reverse channel 3"]').click()`, nil)}, {"with seats", chromedp.Click("#seat-add")},
				{"too wide a driver", set("f-driver-diameter_mm", "60")}, {"no radius", set("f-body-radius_mm", "5")}, {"the first theme", chromedp.Click("#theme")},
			} {
				b.do(step.do, chromedp.Sleep(time.Second))
				for range 2 { // a plan that has come is drawn in the next frame
					b.until(`document.body.dataset.busy === "no" && (room.dataset.map === "new" || document.body.dataset.design === "stopped")`)
					b.do(chromedp.Sleep(300 * time.Millisecond))
				}
				var found []struct {
					ID, Help string
					Nodes    []struct{ HTML, FailureSummary string }
				}
				var raw string
				b.do(chromedp.Evaluate(`axe.run().then(r => JSON.stringify(r.violations))`, &raw, func(p *runtime.EvaluateParams) *runtime.EvaluateParams {
					return p.WithAwaitPromise(true)
				}))
				if err := json.Unmarshal([]byte(raw), &found); err != nil {
					t.Fatal(err)
				}
				for _, f := range found {
					t.Errorf("%s: %s: %s, as at %.200s: %s", step.name, f.ID, f.Help, f.Nodes[0].HTML, f.Nodes[0].FailureSummary)
				}
				if over := b.number(`document.documentElement.scrollWidth - document.documentElement.clientWidth`); over > 0 {
					t.Errorf("%s: %g px too wide", step.name, over)
				}
			}
			if b.number(`document.querySelectorAll("#findings-list .stops").length`) == 0 || b.attribute("design") != "stopped" {
				t.Error("nothing was wrong with the design")
			}
			b.quiet("422")
		})
	}
}
