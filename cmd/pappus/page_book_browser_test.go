package main

import (
	"fmt"
	"testing"

	"github.com/chromedp/chromedp"
)

// TestPageBook: the wiring book has a drawing and a table of pieces for every string, its lengths are
// those to cut, and every reading says what others mean; it is fit for a phone, and taken away as PDF.
func TestPageBook(t *testing.T) {
	ctx := chromium(t)
	b := openTo(t, ctx, serving(t, "")+"/book", 1280, 900, `document.body.dataset.ready === "yes"`)
	for _, c := range []struct {
		name, script string
		want         float64
	}{
		{"drawings", `document.querySelectorAll("#drawings svg[role=img]").length`, 8},
		{"drivers with a plus", `document.querySelectorAll("#drawings svg").length && [...document.querySelectorAll(".pieces tbody tr td:nth-child(2)")].filter((td) => / \+$/.test(td.textContent)).length`, 39},
		{"pieces that are not cut", `(() => { const cut = new Map([...document.querySelectorAll("#lengths tr")].map((r) => [r.children[0].textContent, Number(r.children[1].textContent)]));
			for (const td of document.querySelectorAll(".pieces tbody td:last-child")) cut.set(td.textContent, (cut.get(td.textContent) ?? 0) - 1); return [...cut.values()].filter((n) => n !== 0).length; })()`, 0},
		{"readings that say nothing", `[...document.querySelectorAll("#readings td:last-child")].filter((td) => td.textContent.length < 20).length`, 0},
		{"readings of channels", `document.querySelectorAll("#whole tr").length`, 8},
		{"terminals", `document.querySelectorAll("#terminals tr").length`, 16},
		{"not offered as PDF", `document.getElementById("pdf").hidden ? 1 : 0`, 0},
	} {
		if got := b.number(c.script); got != c.want {
			t.Errorf("%s: %g, want %g", c.name, got, c.want)
		}
	}
	for _, width := range []int64{1280, 390} {
		b.do(chromedp.EmulateViewport(width, 844))
		for _, theme := range []string{"one theme", "the other"} {
			b.clean(fmt.Sprint(theme, ", ", width))
			for _, id := range []string{"order", "channels", "readings"} {
				b.do(chromedp.Evaluate(fmt.Sprintf(`document.getElementById(%q).scrollIntoView()`, id), nil))
				b.seen(fmt.Sprintf("book_%d_%.3s_%s", width, theme, id))
			}
			b.do(chromedp.Evaluate(`document.getElementById("theme").click()`, nil))
		}
	}
	b.quiet()
}
