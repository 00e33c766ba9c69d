package main

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// clean checks the page by the rules of axe-core, and that nothing is wider than it.
func (b *browser) clean(step string) {
	b.Helper()
	axe, err := os.ReadFile("../../render/page/web/node_modules/axe-core/axe.min.js")
	if err != nil {
		b.Skip("axe-core is not here: npm ci in render/page/web brings it")
	}
	var raw string
	b.do(chromedp.Evaluate(string(axe), nil), chromedp.Evaluate(`axe.run().then(r => JSON.stringify(r.violations))`, &raw, func(p *runtime.EvaluateParams) *runtime.EvaluateParams {
		return p.WithAwaitPromise(true)
	}))
	var found []struct {
		ID, Help string
		Nodes    []struct{ HTML, FailureSummary string }
	}
	if err := json.Unmarshal([]byte(raw), &found); err != nil {
		b.Fatal(err)
	}
	for _, f := range found {
		b.Errorf("%s: %s: %s, as at %.200s: %s", step, f.ID, f.Help, f.Nodes[0].HTML, f.Nodes[0].FailureSummary)
	}
	if over := b.number(`document.documentElement.scrollWidth - document.documentElement.clientWidth`); over > 0 {
		b.Errorf("%s: %g px too wide", step, over)
	}
}

// low are the shown things to touch that are lower or narrower than a fingertip, of which a
// tick or a choice is as large as its label.
const low = `[...document.querySelectorAll("button, select, summary, a, textarea, input:not([type=file])")]
	.filter(e => e.checkVisibility() && !e.classList.contains("skip") && e.closest("p, li") === null)
	.map(e => [e, (e.matches("[type=checkbox], [type=radio]") ? e.closest("label") : e).getBoundingClientRect()])
	.filter(([, r]) => r.height < 43.9 || r.width < 43.9).map(([e, r]) => e.outerHTML.slice(0, 80) + " " + r.width + " x " + r.height).join("\n")`

// TestPageUnderFingers: on a screen that is touched everything is as large as a fingertip.
func TestPageUnderFingers(t *testing.T) {
	ctx := chromium(t)
	b := open(t, ctx, serving(t, ""), 390, 844)
	b.do(emulation.SetDeviceMetricsOverride(390, 844, 1, true), emulation.SetTouchEmulationEnabled(true))
	b.until(`matchMedia("(pointer: coarse)").matches`)
	for _, step := range []struct {
		name string
		do   chromedp.Action
	}{
		{"as it opens", chromedp.Sleep(0)},
		{"with the design", chromedp.Evaluate(`document.getElementById("change").click(); for (const d of document.querySelectorAll("details")) d.open = true`, nil)},
		{"with seats", chromedp.Evaluate(`document.getElementById("seat-add").click()`, nil)},
		{"with one kept", chromedp.Evaluate(`document.getElementById("keep").click()`, nil)},
	} {
		b.do(step.do)
		b.do(chromedp.Sleep(500 * time.Millisecond))
		b.until(`document.body.dataset.busy === "no"`)
		var small string
		if b.do(chromedp.Evaluate(low, &small)); small != "" {
			b.Errorf("%s, too small to touch:\n%s", step.name, small)
		}
		if over := b.number(`document.documentElement.scrollWidth - 390`); over > 0 {
			b.Errorf("%s: %g px too wide", step.name, over)
		}
	}
	b.quiet()
}

// TestPageAtTheBench: ticked on a phone by key and by finger, read again after a reload and
// from the file; printed whole.
func TestPageAtTheBench(t *testing.T) {
	ctx := chromium(t)
	address, path := servedDemo(t)
	ready := `document.body.dataset.ready === "yes"`
	b := openTo(t, ctx, address+"/bench", 390, 844, ready)
	b.clean("as it opens")
	if found := b.text("#now-title"); !strings.Contains(found, "plus lead to") {
		t.Errorf("it begins with %q", found)
	}
	var small string
	if b.do(chromedp.Evaluate(low, &small)); small != "" {
		t.Errorf("too small to touch:\n%s", small)
	}
	steps := int(b.number(`document.querySelectorAll("#steps li").length`))
	b.do(chromedp.Click("#tick"))
	b.until(`document.body.dataset.step === "1" && document.querySelectorAll("#discs .lit.is-done").length === 1`)
	b.do(chromedp.Focus("#tick"), chromedp.KeyEvent(kb.ArrowRight), chromedp.KeyEvent(kb.ArrowLeft), chromedp.KeyEvent(" "))
	b.until(`document.body.dataset.step === "2" && !document.getElementById("now-reading").hidden`)
	if words := b.text("#now-more"); !strings.HasPrefix(words, "Good from ") {
		t.Errorf("of the reading it says %q", words)
	}
	file := filepath.Join(filepath.Dir(path), "lantern.bench.toml")
	held, err := os.ReadFile(file)
	if err != nil || strings.Count(string(held), "[[string]]") != 1 {
		t.Errorf("the file: %v, %s", err, held)
	}
	b.do(chromedp.Reload())
	b.until(ready + ` && document.getElementById("done").textContent === ` + fmt.Sprintf("%q", fmt.Sprintf("2 of %d steps done", steps)))
	b.do(chromedp.Click("#theme"))
	b.clean("the other theme")
	if n := b.number(`document.querySelectorAll("#paper article").length`); n != 8 {
		t.Errorf("%g channels are printed", n)
	}
	b.quiet()
}

// TestPageAtTheBenchOfTheDemo keeps ticks in the browser, since the demo has no folder.
func TestPageAtTheBenchOfTheDemo(t *testing.T) {
	ctx := chromium(t)
	b := openTo(t, ctx, serving(t, "")+"/bench", 390, 844, `document.body.dataset.ready === "yes"`)
	b.do(chromedp.Click("#tick"))
	b.until(`document.getElementById("done").textContent.startsWith("1 of")`)
	b.do(chromedp.Reload())
	b.until(`document.getElementById("done")?.textContent.startsWith("1 of")`)
	if words := b.text("#kept"); words != "Ticks are kept in this browser." {
		t.Errorf("it says %q", words)
	}
	b.quiet()
}
