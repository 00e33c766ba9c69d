package main

import (
	"fmt"
	"os"
	"path/filepath"
	"testing"
	"time"

	example "pappus/testdata/planned"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// kitIs is true on the page where its parts are so: none, making, made or stale.
func kitIs(state string) string {
	return fmt.Sprintf(`document.getElementById("kit").dataset.state === %q`, state)
}

// TestPageKit: the printed parts are made by a press, shown in three dimensions and in a list, taken
// apart by a slider, picked by hand and by keys, taken away; and they are stale once the design has others.
func TestPageKit(t *testing.T) {
	ctx := chromium(t)
	path := filepath.Join(t.TempDir(), "dome.toml")
	if err := os.WriteFile(path, []byte(example.SmallDome), 0o600); err != nil {
		t.Fatal(err)
	}
	b := open(t, ctx, serving(t, path), 1440, 1000)
	b.do(chromedp.ScrollIntoView("#kit"), chromedp.Click("#kit-make"))
	b.seen("kit-making")
	b.until(kitIs("made") + ` && document.getElementById("kit-solid").dataset.apart > 0`)
	rows := b.number(`document.querySelectorAll("#kit-parts tbody tr").length`)
	if rows < 2 {
		t.Errorf("%g parts", rows)
	}
	b.seenDrawn("kit-half")
	apart := func() float64 { return b.number(`Number(document.getElementById("kit-solid").dataset.apart)`) }
	half := apart()
	b.do(chromedp.Focus("#kit-apart"), chromedp.KeyEvent(kb.End))
	b.until(fmt.Sprintf(`Number(document.getElementById("kit-solid").dataset.apart) > %g`, 1.9*half))
	b.seenDrawn("kit-apart")
	b.do(chromedp.KeyEvent(kb.Home))
	b.until(`document.getElementById("kit-solid").dataset.apart === "0.000"`)
	b.seenDrawn("kit-together")

	// By keys, by the list, by the pointer.
	b.do(chromedp.Focus("#kit-solid"), chromedp.KeyEvent("n"))
	first := b.text("#kit-parts tbody button")
	b.until(fmt.Sprintf(`document.getElementById("kit-solid").dataset.marked === %q && document.getElementById("kit-picked").textContent.startsWith(%q)`, first, first))
	b.do(chromedp.Evaluate(`[...document.querySelectorAll("#kit-parts button")].at(-1).click()`, nil))
	b.until(`document.querySelector("#kit-parts tbody tr:last-child button").getAttribute("aria-pressed") === "true" && document.querySelectorAll("#kit-parts [aria-pressed=true]").length === 1`)
	b.seenDrawn("kit-alone")
	b.do(chromedp.Evaluate(`[...document.querySelectorAll("#kit-parts button")].at(-1).click()`, nil))
	b.until(`document.getElementById("kit-solid").dataset.marked === ""`)
	var at struct{ X, Y float64 }
	b.do(chromedp.Evaluate(`(() => { const r = document.getElementById("kit-solid").getBoundingClientRect(); return {x: r.x + r.width / 2, y: r.y + r.height / 2}; })()`, &at))
	b.do(input.DispatchMouseEvent(input.MouseMoved, at.X+20, at.Y))
	b.until(`!document.getElementById("kit-tag").hidden && document.getElementById("kit-tag").textContent === document.getElementById("kit-solid").dataset.marked`)
	b.do(chromedp.MouseClickXY(at.X+20, at.Y))
	b.until(`document.querySelector("#kit-parts [aria-pressed=true]")?.textContent === document.getElementById("kit-solid").dataset.marked`)
	b.clean("parts")

	// Another chair has the same parts; another radius has others.
	b.rested(away()...)
	b.until(kitIs("made") + ` && document.getElementById("history-count").textContent === "1"`)
	b.do(chromedp.Click("#change"))
	b.rested(set("f-body-radius_mm", "61"))
	b.until(`document.getElementById("history-count").textContent === "2" && ` + kitIs("stale") + ` && document.getElementById("kit-files").hidden && !document.getElementById("kit-make").hidden`)
	b.do(chromedp.Click("#undo"))
	b.until(kitIs("made") + ` && !document.getElementById("kit-files").hidden`)
	b.quiet()
}

// seenDrawn is seen, once what is drawn beside the page is there.
func (b *browser) seenDrawn(name string) {
	b.Helper()
	if os.Getenv("PAPPUS_PICTURES") == "" {
		return
	}
	b.do(chromedp.Sleep(1500 * time.Millisecond))
	b.seen(name)
}

// TestPageKitIsGivenUp: what is stopped, or of a design that is changed, is not made.
func TestPageKitIsGivenUp(t *testing.T) {
	ctx := chromium(t)
	address, _ := servedDemo(t)
	b := open(t, ctx, address, 1280, 900)
	b.do(chromedp.Click("#kit-make"))
	b.until(kitIs("making") + ` && !document.getElementById("kit-bar").hidden`)
	b.do(chromedp.Click("#kit-stop"))
	b.until(kitIs("none") + ` && document.getElementById("kit-bar").hidden && !document.getElementById("kit-make").hidden`)
	b.do(chromedp.Click("#kit-make"), chromedp.Click("#change"))
	b.rested(set("f-body-radius_mm", "155"))
	b.until(kitIs("none") + ` && document.getElementById("kit-say").textContent.includes("changed meanwhile")`)
	b.quiet()
}
