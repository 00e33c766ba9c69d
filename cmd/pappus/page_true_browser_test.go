package main

import (
	"context"
	"encoding/json"
	"fmt"
	"math"
	"net/url"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"time"

	"pappus/layout/design"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/coder/websocket"
)

// changed returns the built-in design with some keys set.
func changed(t *testing.T, set map[string]any) string {
	t.Helper()
	text := design.DefaultTOML()
	for key, value := range set {
		var err error
		if text, err = design.Set(text, key, value); err != nil {
			t.Fatal(err)
		}
	}
	path := filepath.Join(t.TempDir(), "lantern.toml")
	if err := os.WriteFile(path, text, 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

// choose picks an option as a person does.
func choose(id, value string) chromedp.Action {
	return chromedp.Evaluate(fmt.Sprintf(`(() => { const s = document.getElementById(%q); s.value = %q; s.dispatchEvent(new Event("change", {bubbles: true})); })()`, id, value), nil)
}

// away moves the chair by keys, two long steps.
func away() []chromedp.Action {
	return []chromedp.Action{chromedp.Focus("#chair"), chromedp.KeyEvent(kb.ArrowUp), chromedp.KeyEvent(kb.ArrowUp), chromedp.KeyEvent(kb.ArrowUp), chromedp.KeyEvent(kb.ArrowUp)}
}

// TestPageCallsTheRightEndGood: delays are made for the chair, so the end of the
// scale that is called good is the one where the chair's own cell lies.
func TestPageCallsTheRightEndGood(t *testing.T) {
	ctx := chromium(t)
	address, _ := servedDemo(t)
	b := open(t, ctx, address, 1280, 900)
	for _, c := range []struct{ quantity, unit string }{{"smear", "us"}, {"summing_loss", "dB"}, {"comb_onset", "Hz"}} {
		b.do(choose("quantity", c.quantity))
		b.until(fmt.Sprintf(`answer.map && answer.map.unit === %q && answer.map.columns > 32`, c.unit))
		// How many cells in a hundred are below the one that the chair is in.
		below := b.number(`(() => {
			const {columns, rows, low_m, high_m, values} = answer.map;
			const at = (i, n) => Math.floor(n * (answer.spot_m[i] - low_m[i]) / (high_m[i] - low_m[i]));
			const own = values[at(1, rows) * columns + at(0, columns)], known = values.filter((v) => v !== null);
			return 100 * known.filter((v) => v < own).length / known.length;
		})()`)
		var scale string
		b.do(chromedp.Evaluate(`document.getElementById("bar").getAttribute("aria-label")`, &scale))
		title, isLowLight := b.text("#bar-title"), strings.Contains(scale, ", light, to ")
		if (below > 25 && below < 75) || !strings.HasSuffix(title, "light is good") || isLowLight != (below < 50) {
			t.Errorf("%s: the chair's cell is above %.0f in a hundred, and the scale says %q, %q", c.quantity, below, title, scale)
		}
	}
	b.quiet()
}

// TestPageOfOneDriver: nothing combs anywhere, so that the map is as good as can be all
// over, and there is no delay to set.
func TestPageOfOneDriver(t *testing.T) {
	path := filepath.Join(t.TempDir(), "one.toml")
	text := "name = \"one\"\n[body]\nshape = \"ball\"\nradius_mm = 100\n[mounts]\non = \"even\"\ncount = 1\n[driver]\ndiameter_mm = 32\ncutout_mm = 33\nflange_mm = 40\ndepth_mm = 18\nnominal_ohm = 8\ndc_ohm = 7.1\n[spot]\nx_m = 1.8\ny_m = 0.4\nz_m = 0.3\n"
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	b := open(t, chromium(t), serving(t, path), 1280, 900)
	if said := b.text("#lede-say"); !strings.Contains(said, "One channel needs no delay.") {
		t.Errorf("it says %q", said)
	}
	if said := b.text("#comb-after"); said != "20 kHz" {
		t.Errorf("no combs up to %q", said)
	}
	// Light is good: near a corner all of red, green and blue are high.
	b.until(`document.getElementById("room").dataset.map === "new"`)
	if light := b.number(`(() => { const m = document.getElementById("map"); return Math.min(...m.getContext("2d").getImageData(20, 20, 1, 1).data.slice(0, 3)); })()`); light < 150 {
		t.Errorf("a map without combs is as dark as %g", light)
	}
	b.quiet()
}

// delays are those of the table, in ms.
func (b *browser) delays() (out []float64) {
	b.Helper()
	var cells []string
	b.do(chromedp.Evaluate(`[...document.querySelectorAll("#channels tbody td.strong")].map((c) => c.textContent)`, &cells))
	for _, c := range cells {
		v, err := strconv.ParseFloat(c, 64)
		if err != nil {
			b.Errorf("a delay is %q", c)
		}
		out = append(out, v)
	}
	return out
}

// TestPageDelaysCanBeSet: every delay that the page tells to set is one that the
// processor has, at rest that of the processor's own table.
func TestPageDelaysCanBeSet(t *testing.T) {
	ctx := chromium(t)
	const step = 100.0 // us
	path := changed(t, map[string]any{"processor.step_us": step})
	address := serving(t, path)
	b := open(t, ctx, address, 1280, 900)
	check := func(when string) {
		t.Helper()
		for i, ms := range b.delays() {
			if steps := 1000 * ms / step; math.Abs(steps-math.Round(steps)) > 1e-6 {
				t.Errorf("%s, channel %d: %g ms is no multiple of %g us", when, i+1, ms, step)
			}
		}
	}
	check("as it opens")
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	var plan struct {
		Processor []struct {
			Delay float64 `json:"delay_ms"`
		}
		Rounding struct {
			Loss []*float64 `json:"loss_db"`
		}
	}
	if err := json.Unmarshal(fetch(t, address, "/api/plan", map[string]any{"text": string(text)}), &plan); err != nil {
		t.Fatal(err)
	}
	for i, ms := range b.delays() {
		if want := plan.Processor[i].Delay; math.Abs(ms-want) > 1e-6 {
			t.Errorf("channel %d: %g ms, the processor is set to %g ms", i+1, ms, want)
		}
	}
	worst := 0.0
	for _, l := range plan.Rounding.Loss {
		if l != nil {
			worst = max(worst, *l)
		}
	}
	if words := b.text("#step"); !strings.Contains(words, "steps of 100 µs") || !strings.Contains(words, fmt.Sprintf("%.1f dB", worst)) {
		t.Errorf("of a step that costs up to %.1f dB it says %q", worst, words)
	}
	before := b.delays()
	b.do(away()...)
	b.until(`answer.spot_m && Math.abs(answer.spot_m[1] - Number(document.getElementById("spot-y").value)) < 1e-3`)
	check("on the way")
	b.until(`document.body.dataset.busy === "no" && !document.getElementById("step").textContent.includes("once the chair rests")`)
	check("at rest elsewhere")
	if fmt.Sprint(b.delays()) == fmt.Sprint(before) {
		t.Error("the delays stayed")
	}
	b.quiet()
}

// TestPageMapOfARoom: when a room takes the table's place, the map of the table is
// taken back at once, and the room's comes soon; the headline is of what the delays
// do, not of what the walls do.
func TestPageMapOfARoom(t *testing.T) {
	ctx := chromium(t)
	address, _ := servedDemo(t)
	b := open(t, ctx, address, 1280, 900)
	b.do(chromedp.Click("#change"))
	b.do(chromedp.Evaluate(`window.seen = []; new MutationObserver(() => seen.push([room.dataset.map, document.body.dataset.busy].join())).observe(document.getElementById("room"), {attributes: true, attributeFilter: ["data-map"]})`, nil))
	began := time.Now()
	b.do(chromedp.Evaluate(`document.getElementById("there-room").closest("details").open = true; document.getElementById("there-room").click()`, nil))
	b.until(`seen.some((s) => s.startsWith("old"))`)
	if words := b.text("#map-say"); b.number(`room.dataset.map === "old" ? 1 : 0`) == 1 && words != "Computing the map…" {
		t.Errorf("over the old map it says %q", words)
	}
	b.until(`room.dataset.map === "new" && document.getElementById("there-room").checked`)
	t.Logf("the room's first map came after %.1f s", time.Since(began).Seconds())
	b.until(`answer.map && answer.map.columns > 32`)
	t.Logf("its finer one of %g columns after %.1f s", b.number(`answer.map.columns`), time.Since(began).Seconds())
	before, after := b.number(`answer.measures.unaligned.comb_onset_hz`), b.number(`answer.measures.aligned.comb_onset_hz`)
	echo := b.number(`answer.echoes[0].dip_hz`)
	if !(after > 3*before && after > 3*echo) {
		t.Errorf("the direct sound combs from %g Hz, with the delays from %g; the room from %g", before, after, echo)
	}
	if words, said := b.text("#comb-words"), b.text("#lede-say"); !strings.Contains(words, "direct sound") || !strings.Contains(said, fmt.Sprintf("combs from %.0f Hz on", echo)) {
		t.Errorf("it says %q, %q", words, said)
	}
	b.quiet()
}

// TestPageOutlivesTheProgram: what is shown of a former place is said to be; when the
// program is there again the chair stays where it was put, and its place comes into
// the design.
func TestPageOutlivesTheProgram(t *testing.T) {
	ctx := chromium(t)
	path := changed(t, nil)
	address, stop := servingUntil(t, path, "0")
	defer stop()
	b := open(t, ctx, address, 1280, 900)
	far := b.number(`Number(document.getElementById("spot-y").value)`)
	stop()
	b.until(`document.body.dataset.live === "lost" && document.getElementById("notice").textContent.includes("The program has stopped")`)
	if figures := b.attribute("figures"); figures != "true" {
		t.Errorf("of a chair that stands still the figures are %s", figures)
	}
	b.do(away()...)
	b.until(`document.body.dataset.figures === "former" && document.getElementById("lede-say").textContent.includes("former place")`)
	b.until(`document.getElementById("room").dataset.map === "old" && document.getElementById("map-say").textContent.startsWith("No map")`)
	b.do(chromedp.Sleep(time.Second)) // it would be written into the design by now
	b.do(chromedp.Evaluate(`document.getElementById("take-design").click()`, nil))
	if words := b.text("#notice"); strings.Contains(words, "fetch") {
		t.Errorf("it says %q", words)
	}
	where, err := url.Parse(address)
	if err != nil {
		t.Fatal(err)
	}
	anew, again := servingUntil(t, path, where.Port())
	defer again()
	b.until(`document.getElementById("notice").textContent.includes("open the address that the program printed")`)
	b.beside(anew)
	b.until(`document.body.dataset.live === "open" && document.body.dataset.figures === "true" && document.getElementById("notice").hidden`)
	b.until(fmt.Sprintf(`Math.abs(Number(document.getElementById("spot-y").value) - %g) < 1e-6 && document.body.dataset.busy === "no"`, far+0.2))
	b.until(fmt.Sprintf(`document.getElementById("text").value.includes("y_m = %.4g")`, far+0.2))
	b.until(`document.getElementById("file-state").textContent === "changed"`) // once it is computed anew
	b.quiet("403", "503", "ERR_CONNECTION_REFUSED", "WebSocket", "ERR_EMPTY_RESPONSE", "ERR_CONNECTION_RESET", "ERR_INCOMPLETE_CHUNKED_ENCODING")
}

// TestPageInTheBody: a place in the body has no figures.
func TestPageInTheBody(t *testing.T) {
	ctx := chromium(t)
	address, _ := servedDemo(t)
	b := open(t, ctx, address, 1280, 900)
	b.do(chromedp.Evaluate(`for (const [axis, v] of [["x", "0.01"], ["y", "0.01"], ["z", "0.01"]]) { const f = document.getElementById("spot-" + axis); f.value = v; f.dispatchEvent(new Event("input", {bubbles: true})); }`, nil))
	b.until(`document.body.dataset.figures === "former" && document.getElementById("lede-say").textContent.includes("inside the body")`) // and not only late
	if words := b.text("#lede-say"); !strings.Contains(words, "for the former place, ") {
		t.Errorf("it says %q", words)
	}
	b.do(chromedp.Evaluate(`{ const f = document.getElementById("spot-x"); f.value = "1.5"; f.dispatchEvent(new Event("input", {bubbles: true})); }`, nil))
	b.until(`document.body.dataset.figures === "true" && document.getElementById("text").value.includes("x_m = 1.5")`)
	b.quiet("422") // nothing is heard there
}

// TestPageLosesNothing: text that is typed but not taken, text that cannot be planned,
// a design that was put by for another, one that was only downloaded.
func TestPageLosesNothing(t *testing.T) {
	ctx := chromium(t)
	address, path := servedDemo(t)
	b := open(t, ctx, address, 1280, 900)
	b.do(chromedp.Click("#change"))
	typed := func(text string) chromedp.Action {
		return chromedp.Evaluate(fmt.Sprintf(`{ const t = document.getElementById("text"); t.closest("details").open = true; t.value = %q; t.dispatchEvent(new Event("input", {bubbles: true})); }`, text), nil)
	}
	demo := string(design.DefaultTOML())
	b.do(typed(demo + "# mine\n"))
	b.do(away()...)
	b.until(`document.getElementById("text-say").textContent.includes("changed meanwhile") && document.body.dataset.busy === "no"`)
	var text string
	if b.do(chromedp.Evaluate(`document.getElementById("text").value`, &text)); !strings.HasSuffix(text, "# mine\n") {
		t.Error("what was typed is gone with the chair's move")
	}
	b.do(chromedp.Evaluate(`document.getElementById("text-drop").click()`, nil))
	if b.do(chromedp.Evaluate(`document.getElementById("text").value`, &text)); strings.Contains(text, "# mine") || b.text("#text-say") != "" {
		t.Error("what was dropped is still there")
	}

	// Downloaded is not saved; and the browser asks before it leaves.
	b.do(chromedp.Evaluate(`document.getElementById("take-design").click()`, nil), chromedp.Sleep(300*time.Millisecond))
	if got := b.text("#file-state"); got != "changed" {
		t.Errorf("downloaded, the file is %q", got)
	}
	b.do(chromedp.Click("#change"), chromedp.Reload())
	b.mu.Lock()
	if b.leaves != 1 {
		t.Errorf("it asked %d times before it left", b.leaves)
	}
	b.mu.Unlock()
	b.until(`document.body.dataset.ready === "yes" && document.body.dataset.rest > 0`)

	// Another design is opened over changes, and undone.
	b.do(chromedp.Click("#change"))
	b.rested(set("f-body-radius_mm", "141"))
	other := filepath.Join(t.TempDir(), "other.toml")
	if err := os.WriteFile(other, []byte(little), 0o600); err != nil {
		t.Fatal(err)
	}
	b.do(chromedp.Click("#open"), chromedp.SetUploadFiles("#open-file", []string{other}))
	b.until(`document.getElementById("design-name").textContent === "Ball of six" && document.getElementById("save").textContent === "Download"`)
	if got := b.text("#file-state"); got != "" {
		t.Errorf("just opened, it is %q", got)
	}
	b.do(chromedp.Click("#undo"))
	b.until(`document.getElementById("design-name").textContent.startsWith("Lantern") && document.getElementById("save").textContent === "Save"`)

	// Broken text is saved, and said to be broken as long as it is.
	b.do(typed(strings.Replace(demo, "[body]", "[bod]", 1)), chromedp.Evaluate(`document.getElementById("text-apply").click()`, nil))
	b.until(`document.getElementById("faults").textContent !== ""`)
	b.do(chromedp.Click("#save"))
	b.until(`document.getElementById("notice").textContent.includes("Saved, but it cannot be planned")`)
	if held, err := os.ReadFile(path); err != nil || !strings.Contains(string(held), "[bod]") {
		t.Errorf("the file was not written: %v", err)
	}
	b.do(chromedp.Click("#undo"))
	b.until(`document.getElementById("notice").hidden`)
	b.quiet("422")
}

// TestPageShowsEveryFault: a fault that is far from what was changed is told at the
// panel's top, with the way to its field.
func TestPageShowsEveryFault(t *testing.T) {
	ctx := chromium(t)
	address, _ := servedDemo(t)
	b := open(t, ctx, address, 1280, 900)
	broken := strings.Replace(string(design.DefaultTOML()), "skip = [33]", "skip = [77]", 1)
	b.do(chromedp.Click("#change"), chromedp.Evaluate(fmt.Sprintf(`{ const t = document.getElementById("text"); t.closest("details").open = true; t.value = %q; t.dispatchEvent(new Event("input", {bubbles: true})); document.getElementById("text-apply").click(); }`, broken), nil))
	b.until(`document.querySelector("#faults a") !== null`)
	if role := b.number(`document.getElementById("faults").getAttribute("role") === "status" ? 1 : 0`); role != 1 {
		t.Error("faults have no live role")
	}
	b.do(chromedp.Click("#faults a"))
	var at string
	b.do(chromedp.Evaluate(`document.activeElement.id`, &at))
	if want := "f-mounts-skip"; at != want {
		t.Errorf("the link leads to %q, not %q: %s", at, want, b.text("#faults"))
	}
	b.quiet("422")
}

// TestPageSoundsDoNotPileUp: whatever is pressed, one thing sounds, and it stops.
func TestPageSoundsDoNotPileUp(t *testing.T) {
	ctx := chromium(t)
	address, _ := servedDemo(t)
	b := open(t, ctx, address, 1280, 900)
	press := func(id string) chromedp.Action {
		return chromedp.Evaluate(fmt.Sprintf(`document.getElementById(%q).click()`, id), nil)
	}
	say := `document.getElementById("play").textContent`
	sounds := `document.getElementById("hear").dataset.state === "on" && sounding === 1`
	b.do(press("walk"))
	b.until(sounds + ` && ` + loudness + ` > 1e-3`)
	b.do(press("walk")) // back in the chair, where it goes on
	b.do(chromedp.Sleep(time.Second))
	if n := b.number(`sounding`); n != 1 {
		t.Errorf("of two presses %g sound", n)
	}
	b.do(press("play"))
	b.until(`sounding === 0 && ` + say + ` === "Play"`)

	b.do(press("walk"))
	if got := b.text("#play"); got != "Stop" {
		t.Errorf("before the walk is heard it says %q", got)
	}
	b.do(press("play"), chromedp.Sleep(2*time.Second))
	if n := b.number(`sounding`); n != 0 || b.text("#play") != "Play" {
		t.Errorf("stopped before it was heard, %g sound", n)
	}

	b.do(press("play"), press("play"), press("play"))
	b.until(sounds)
	b.do(press("walk"), press("swap"), press("two-ears"))
	b.until(sounds)
	b.do(press("play"))
	b.until(`sounding === 0 && ` + say + ` === "Play"`)
	b.quiet()
}

// TestPageGivesWay: a page whose place newer ones took says so, and goes on once it is turned to.
func TestPageGivesWay(t *testing.T) {
	ctx := chromium(t)
	address, _ := servedDemo(t)
	b := open(t, ctx, address, 1280, 900)
	client, base := letIn(t, address)
	for range 8 {
		dialling, stop := context.WithTimeout(t.Context(), 10*time.Second)
		conn, _, err := websocket.Dial(dialling, strings.Replace(base, "http", "ws", 1)+"/api/live", &websocket.DialOptions{HTTPClient: client})
		stop()
		if err != nil {
			t.Fatal(err)
		}
		defer conn.CloseNow()
		go func() { _, _, _ = conn.Read(t.Context()) }() // it answers when it is asked whether it is there
	}
	b.until(`document.getElementById("notice").textContent.startsWith("This page rests") && document.body.dataset.live === "lost"`)
	b.seen("rests")
	b.do(chromedp.Click("h1"))
	b.until(`document.body.dataset.live === "open" && document.getElementById("notice").hidden`)
	b.quiet("WebSocket")
}
