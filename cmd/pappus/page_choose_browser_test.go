package main

import (
	"fmt"
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// barOf is the slider of a channel's delay.
func barOf(channel int) string { return fmt.Sprintf(`[data-bar="%d"]`, channel) }

// seen keeps a picture of the page where a folder is asked for by PAPPUS_PICTURES.
func (b *browser) seen(name string) {
	b.Helper()
	folder := os.Getenv("PAPPUS_PICTURES")
	if folder == "" {
		return
	}
	var png []byte
	b.do(chromedp.CaptureScreenshot(&png))
	if err := os.WriteFile(folder+"/"+name+".png", png, 0o644); err != nil {
		b.Fatal(err)
	}
}

// TestPageTriesDelays: a bar is dragged and moved by keys; the comb is seen at once in the curves, the
// figures, the table and the map, beside what is planned; it is the desk's own trial; one press takes
// it back, another into the design.
func TestPageTriesDelays(t *testing.T) {
	ctx := chromium(t)
	address, _ := servedDemo(t)
	b := open(t, ctx, address, 1440, 1000)
	before, comb, delay := b.design(), b.text("#comb-after"), b.text(`#channels tr[data-channel="3"] .strong`)
	var at struct{ X, Y float64 }
	b.do(chromedp.ScrollIntoView(barOf(3)), chromedp.Evaluate(`(() => { const r = document.querySelector('`+barOf(3)+`').getBoundingClientRect(); return {x: r.x + r.width / 2, y: r.y + r.height / 2}; })()`, &at))
	b.do(dragged(at.X, at.Y, 40, 0, chromedp.Poll(ghostly, nil))...)
	b.until(`document.getElementById("lede-do").textContent === "You try other delays."`)
	b.seen("tried")
	if got := b.text("#comb-before"); got != comb {
		t.Errorf("beside it stands %q, planned %q", got, comb)
	}
	b.until(`document.getElementById("comb-after").textContent !== "` + comb + `"`)
	b.until(`document.querySelector('#channels tr[data-channel="3"] .strong.changed') !== null`)
	if got := b.text(`#channels tr[data-channel="3"] .strong.changed`); got == delay {
		t.Errorf("the delay is %q, as planned", got)
	}
	if b.design() != before {
		t.Error("what is only tried is in the design")
	}
	if say := b.text("#map-of"); !strings.Contains(say, "as tried") {
		t.Errorf("the map says %q", say)
	}

	// The desk's figure is the same trial, and Escape takes it back.
	b.do(chromedp.Click("#desk"))
	late := b.number(`document.querySelector('[data-of="3"] input[type="number"]').valueAsNumber`)
	b.do(chromedp.Focus(barOf(3)), chromedp.KeyEvent(kb.ArrowRight))
	if got := b.number(`document.querySelector('[data-of="3"] input[type="number"]').valueAsNumber`); got < late+0.009 || got > late+0.011 {
		t.Errorf("a key makes %g ms of %g", got, late)
	}
	b.do(chromedp.KeyEvent(kb.Escape))
	b.until(`!(` + ghostly + `) && document.getElementById("comb-after").textContent === "` + comb + `" && document.getElementById("desk-reset").hidden`)

	// A muted and a reversed channel are seen too.
	b.do(chromedp.Click(`[data-of="3"] button[aria-label^="Reverse"]`))
	b.until(ghostly)
	b.clean("with a trial")
	b.do(chromedp.Click("#desk-reset"))
	b.until(`!(` + ghostly + `)`)

	// Taken, it is the design's.
	b.do(chromedp.Focus(barOf(3)), chromedp.KeyEvent(kb.PageUp), chromedp.KeyEvent(kb.PageUp), chromedp.KeyEvent(kb.PageUp))
	var planned float64
	if _, err := fmt.Sscan(delay, &planned); err != nil {
		t.Fatal(err)
	}
	tried := fmt.Sprintf("%.3f", planned+0.3)
	b.until(ghostly + ` && document.querySelector('#channels tr[data-channel="3"] .strong').textContent === "` + tried + `"`)
	b.do(chromedp.Click("#desk-take"))
	b.until(`document.getElementById("text").value.includes("\ndelay_us = ") && document.body.dataset.busy === "no"`)
	b.until(`!(` + ghostly + `) && document.getElementById("desk-take").hidden`)
	if text := b.design(); strings.Count(text, "\n[[channel]]") != 8 || len(regexp.MustCompile(`(?m)^delay_us = `).FindAllString(text, -1)) != 8 {
		t.Errorf("the delays are not written so:\n%s", text)
	}
	if got := b.text(`#channels tr[data-channel="3"] .strong`); got != tried {
		t.Errorf("taken, the delay is %q, tried %q", got, tried)
	}
	b.quiet()
}

// TestPageChoosesWhoseDelays: the map shows the chair's delays, each place's own, or those of the seats,
// and says so; the level is direct or with the table's echo.
func TestPageChoosesWhoseDelays(t *testing.T) {
	ctx := chromium(t)
	address, _ := servedDemo(t)
	b := open(t, ctx, address, 1440, 1000)
	says := func(want string) {
		t.Helper()
		if got := b.text("#map-of"); got != want {
			t.Errorf("the map says %q, want %q", got, want)
		}
	}
	says("With this chair’s delays; the direct sound")
	b.rested(choose("quantity", "smear"))
	b.seen("shared")
	b.rested(choose("delays-of", "own"))
	says("Each place with its own best delays; the direct sound")
	b.seen("own")
	b.rested(choose("delays-of", ""), choose("quantity", "level"))
	if got := b.text("#map-of"); !strings.HasPrefix(got, "With this chair’s delays; with the ") {
		t.Errorf("the map says %q", got)
	}
	b.rested(choose("quantity", "direct_level"))
	says("With this chair’s delays; the direct sound")
	b.do(chromedp.Click("#seat-add"))
	b.until(`document.getElementById("delays-of").options.length === 3`)
	b.rested(choose("delays-of", "chair"))
	b.clean("with seats")
	b.quiet()
}
