package main

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
)

// facets is a cube in a file of its own, heard by a model, of a radius in mm, its field solved for up to so many Hz.
func facets(t *testing.T, model string, radius, upTo float64) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "cube.toml")
	text := fmt.Sprintf("name = \"Cube\"\n[body]\nshape = \"cube\"\nradius_mm = %g\nstand_height_mm = 900\n[driver]\ndiameter_mm = 50\n[spot]\nx_m = 1.8\ny_m = 0.4\nz_m = 0.3\n[timing]\nmodel = %q\nsolve_to_hz = %g\n", radius, model, upTo)
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

// TestPageHearsTheBodyAsItIs: the body's own field is worked out beside the page. What a machine works out
// so is one field at a time, so one after the other.
func TestPageHearsTheBodyAsItIs(t *testing.T) {
	ctx := chromium(t)
	t.Run("told", func(t *testing.T) { tellsOfTheBody(t, ctx) })
	t.Run("gone over", func(t *testing.T) { goesOverToTheBody(t, ctx) })
}

// goesOverToTheBody: one press asks for it; meanwhile the ball stands for it; once it is there
// the page goes over, with the chair in the hand that holds it and what is tried; one press leads back.
func goesOverToTheBody(t *testing.T, ctx context.Context) {
	b := open(t, ctx, serving(t, facets(t, "sphere", 131, 1500)), 1440, 900)
	if said, press := b.text("#model-say"), b.text("#model-other"); !strings.HasPrefix(said, "All figures take the body for a ball; ") || press != "Hear the body as it is" {
		t.Fatalf("%q, and to press %q", said, press)
	}
	b.do(chromedp.Click("#keep"))
	b.rested(chromedp.Evaluate(`document.getElementById("desk").click(); document.querySelector('[aria-label="Reverse channel 3"]').click()`, nil))
	b.do(chromedp.Evaluate(`window.told = []; new MutationObserver(() => told.push(document.getElementById("model-say").textContent, document.getElementById("model-going").textContent)).observe(document.getElementById("model"), {subtree: true, childList: true, characterData: true, attributes: true})`, nil))
	var x, y float64
	mouse := func(kind input.MouseType, by float64) chromedp.Action {
		return input.DispatchMouseEvent(kind, x-by, y-by).WithButton(input.Left).WithClickCount(1)
	}
	b.do(chromedp.Click("#model-other"))
	b.until(`told.some((s) => s.startsWith("Until the field")) || document.getElementById("model-say").textContent.includes("as it is")`)
	x, y = b.seatAt("chair")
	b.do(mouse(input.MousePressed, 0), mouse(input.MouseMoved, 20), mouse(input.MouseMoved, 40))
	b.until(`document.getElementById("model-say").textContent.startsWith("All figures take the body as it is")`)
	held := b.number(`Number(document.getElementById("spot-x").value)`)
	if held > 1.7 {
		t.Errorf("the chair that is held is at %g m", held)
	}
	b.rested(mouse(input.MouseMoved, 60), mouse(input.MouseReleased, 60))
	b.until(`Number(document.getElementById("history-count").textContent) >= 2`) // going over is a rest, too
	var told []string
	b.do(chromedp.Evaluate(`told`, &told))
	for _, want := range []string{"Until the field of the body is solved for"} {
		if !slices.ContainsFunc(told, func(s string) bool { return strings.HasPrefix(s, want) }) {
			t.Errorf("it was not told %q, but %q", want, slices.Compact(told))
		}
	}
	if now := b.number(`Number(document.getElementById("spot-x").value)`); now >= held {
		t.Errorf("let go, the chair is at %g m, and was held at %g m", now, held)
	}
	if b.number(`document.querySelector('[aria-label="Reverse channel 3"]').getAttribute("aria-pressed") === "true" || document.querySelector('[aria-label="Reverse channel 3"]').checked ? 1 : 0`) != 1 {
		t.Error("what was tried is gone")
	}
	b.until(`!document.getElementById("model-bar").checkVisibility()`)
	if names := b.steps(); len(names) < 2 || names[0] != "who sits where" || names[len(names)-1] != "model of a driver body" {
		t.Errorf("undo leads back over %q", names)
	}
	if !strings.Contains(b.design(), `model = "body"`) {
		t.Error("the design has another model")
	}
	if said := b.text("#comparison"); !strings.Contains(said, "body heard asit isa ball") {
		t.Errorf("beside the ball: %q", said)
	}
	b.clean("as it is")
	b.do(chromedp.Evaluate(`scrollTo(0, 0)`, nil))
	b.seen("body_as_it_is")
	b.rested(chromedp.Click("#model-other"))
	b.until(`document.getElementById("model-say").textContent.startsWith("All figures take the body for a ball; ")`)
	b.do(chromedp.Click("#undo"))
	b.until(`document.getElementById("model-say").textContent.startsWith("All figures take the body as it is")`)
	b.quiet()
}

// tellsOfTheBody: while the field is worked out it is told how far that is, on small screens and large, and the press leads back to the ball.
func tellsOfTheBody(t *testing.T, ctx context.Context) {
	b := open(t, ctx, serving(t, facets(t, "body", 133, 12000)), 390, 844)
	b.until(`document.getElementById("model-going").textContent.startsWith("solving for the body's field: ")`)
	for _, width := range []int64{390, 1440} {
		b.do(emulation.SetDeviceMetricsOverride(width, 844, 1, false), chromedp.Sleep(300*time.Millisecond))
		for _, theme := range []string{"one theme", "the other"} {
			b.clean(fmt.Sprint(theme, ", ", width))
			b.seen(fmt.Sprintf("body_waits_%d_%.3s", width, theme))
			b.do(chromedp.Click("#theme"))
		}
	}
	b.rested(chromedp.Click("#model-other"))
	b.until(`!document.getElementById("model-bar").checkVisibility() && document.getElementById("model-going").textContent === ""`)
	if said := b.text("#model-say"); !strings.HasPrefix(said, "All figures take the body for a ball; ") {
		t.Errorf("back: %q", said)
	}
	b.quiet()
}
