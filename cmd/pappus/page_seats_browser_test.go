package main

import (
	"fmt"
	"maps"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"pappus/layout/design"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// seatAt is where a seat's middle is on the screen, once it is in sight.
func (b *browser) seatAt(id string) (x, y float64) {
	b.Helper()
	var at struct{ X, Y float64 }
	b.do(chromedp.ScrollIntoView("#"+id), chromedp.Evaluate(fmt.Sprintf(
		`(() => { const r = document.getElementById(%q).getBoundingClientRect(); return {x: r.x + r.width / 2, y: r.y + r.height / 2}; })()`, id), &at))
	return at.X, at.Y
}

// design is the design's text as the page has it.
func (b *browser) design() string {
	b.Helper()
	var text string
	b.do(chromedp.Evaluate(`document.getElementById("text").value`, &text))
	return text
}

// TestPageAddsSeats: the chair becomes the first of two seats; one is dragged by the mouse
// and by a finger, moved by keys, named, weighed and taken away; and all of it is undone.
func TestPageAddsSeats(t *testing.T) {
	ctx := chromium(t)
	path := filepath.Join(t.TempDir(), "few.toml")
	if err := os.WriteFile(path, []byte(edited(t, upper(map[string]any{}))), 0o644); err != nil {
		t.Fatal(err)
	}
	b := open(t, ctx, serving(t, path), 1440, 900)
	before := b.design()
	if b.number(`document.getElementById("losses").getBoundingClientRect().height`) != 0 || b.attribute("seats") != "none" {
		t.Fatal("a design without seats has a table of them")
	}
	b.do(chromedp.Click("#seat-add"))
	b.until(`document.body.dataset.seats === "many" && document.querySelectorAll("#seat-losses .each tr").length === 2`)
	text := b.design()
	if strings.Count(text, "\n[[seat]]") != 2 || strings.Contains(text, "\n[spot]") || !strings.Contains(text, "# a heated reading room") {
		t.Errorf("two seats are not written so:\n%s", text)
	}
	if name := b.value("seat-name"); name != "seat 2" {
		t.Errorf("%q is picked", name)
	}
	b.until(`document.body.dataset.busy === "no" && !document.getElementById("losses").hidden`)

	figures := func() string { return b.text("#seat-losses .each") }
	had, place := figures(), b.number(`Number(document.getElementById("spot-y").value)`)
	x, y := b.seatAt("seat-2")
	mouse := func(kind input.MouseType, d float64) chromedp.Action {
		return input.DispatchMouseEvent(kind, x-d, y+d).WithButton(input.Left).WithClickCount(1)
	}
	drag := []chromedp.Action{mouse(input.MousePressed, 0)}
	for i := range 8 {
		drag = append(drag, mouse(input.MouseMoved, float64(6*(i+1))))
	}
	b.do(drag...)
	b.until(fmt.Sprintf(`document.querySelector("#seat-losses .each").textContent !== %q`, had))
	b.rested(mouse(input.MouseReleased, 48))
	if now := b.number(`Number(document.getElementById("spot-y").value)`); now > place-0.2 {
		t.Errorf("dragged, it is at %g m and was at %g m", now, place)
	}
	b.until(fmt.Sprintf(`document.getElementById("text").value !== %q`, text))
	if b.design() == text {
		t.Error("the place where it was dragged to is not written")
	}

	place = b.number(`Number(document.getElementById("spot-x").value)`)
	x, y = b.seatAt("seat-2")
	touch := func(kind input.TouchType, d float64) chromedp.Action {
		points := []*input.TouchPoint{{X: x + d, Y: y}}
		if kind == input.TouchEnd {
			points = []*input.TouchPoint{}
		}
		return input.DispatchTouchEvent(kind, points)
	}
	b.rested(touch(input.TouchStart, 0), touch(input.TouchMove, 15), touch(input.TouchMove, 30), touch(input.TouchEnd, 30))
	if now := b.number(`Number(document.getElementById("spot-x").value)`); now < place+0.1 {
		t.Errorf("dragged by a finger, it is at %g m and was at %g m", now, place)
	}

	// By keys alone: from seat to seat, and along the floor.
	second := b.value("spot-x")
	b.do(chromedp.Focus("#seat-2"), chromedp.KeyEvent("n"))
	b.until(fmt.Sprintf(`document.activeElement.id === "seat-1" && document.getElementById("seat-name").value === "seat 1" && document.getElementById("spot-x").value !== %q`, second))
	place = b.number(`Number(document.getElementById("spot-x").value)`)
	b.rested(chromedp.KeyEvent(kb.ArrowRight), chromedp.KeyEvent(kb.ArrowRight))
	if moved := b.number(`Number(document.getElementById("spot-x").value)`) - place; moved < 0.09 || moved > 0.11 {
		t.Errorf("two keys moved it by %g m", moved)
	}

	b.rested(typed("seat-name", "by the window"))
	b.rested(typed("seat-weight", "2"))
	b.until(`document.querySelector("#seat-losses .each").textContent.includes("by the window")`)
	if text := b.design(); !strings.Contains(text, `name = "by the window"`) || !strings.Contains(text, "\nweight = 2 ") {
		t.Errorf("its name and its weight are not written:\n%s", text)
	}

	b.do(chromedp.Focus("#seat-1"), chromedp.KeyEvent(kb.Delete))
	b.until(`document.body.dataset.seats === "none" && document.activeElement.id === "chair"`)
	if text := b.design(); strings.Count(text, "\n[[seat]]") != 1 {
		t.Errorf("one seat is not left:\n%s", text)
	}
	for range 20 {
		if b.number(`Number(document.getElementById("undo").disabled)`) == 1 {
			break
		}
		b.do(chromedp.Click("#undo"))
		b.until(`document.body.dataset.busy === "no"`)
	}
	if b.design() != before {
		t.Errorf("all undone, the design is\n%s", b.design())
	}
	b.until(`document.body.dataset.seats === "none"`)
	b.quiet()
}

// value is what a field holds.
func (b *browser) value(id string) string {
	b.Helper()
	var v string
	b.do(chromedp.Evaluate(fmt.Sprintf(`document.getElementById(%q).value`, id), &v))
	return v
}

// typed types into any field.
func typed(id, value string) chromedp.Action {
	return chromedp.Evaluate(fmt.Sprintf(`(() => { const f = document.getElementById(%q); f.focus(); f.value = %q; f.dispatchEvent(new Event("change", {bubbles: true})); f.blur(); })()`, id, value), nil)
}

// edited is the demo with some keys set.
func edited(t *testing.T, set map[string]any) string {
	t.Helper()
	text := design.DefaultTOML()
	for _, key := range slices.Sorted(maps.Keys(set)) {
		var err error
		if text, err = design.Set(text, key, set[key]); err != nil {
			t.Fatal(err)
		}
	}
	return string(text)
}

// upper leaves the demo the drivers that look upward, so that a plan for several seats is soon made.
func upper(set map[string]any) map[string]any {
	set["mounts.skip"], set["mounts.keep_clear_below_deg"] = nil, 40.0
	return set
}

// fiveSeats is the demo with five seats 2 m from the axis, 30 degrees apart.
func fiveSeats(t *testing.T) string {
	t.Helper()
	set := map[string]any{"spot": nil}
	for i := range 5 {
		sin, cos := math.Sincos(float64(i-2) * math.Pi / 6)
		at := fmt.Sprintf("seat[%d].", i+1)
		set[at+"x_m"], set[at+"y_m"], set[at+"z_m"] = math.Round(2000*cos)/1000, math.Round(2000*sin)/1000, 0.6
	}
	return edited(t, set)
}

// rowOfSeats is the demo with a row of three seats in the place of its spot.
func rowOfSeats(t *testing.T) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "row.toml")
	text := edited(t, upper(map[string]any{"spot": nil})) + "\n[[area]]\nname = \"sofa\"\nshape = \"line\"\ncount = 3\nfrom_m = [2, -0.6, 0.6]\nto_m = [2, 0.6, 0.6]\n"
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

// TestPageMovesARow of seats as a whole, and shows its keys in the form.
func TestPageMovesARow(t *testing.T) {
	ctx := chromium(t)
	b := open(t, ctx, serving(t, rowOfSeats(t)), 1440, 900)
	b.until(`document.querySelectorAll("#seat-losses .each tr").length === 3`)
	b.do(chromedp.Focus("#seat-1"))
	b.rested(chromedp.KeyEvent(kb.ArrowRight), chromedp.KeyEvent(kb.ArrowRight), chromedp.KeyEvent(kb.ArrowUp))
	b.until(`document.getElementById("text").value.includes("from_m = [2.1, -0.55, 0.6]")`)
	if text := b.design(); !strings.Contains(text, "to_m = [2.1, 0.65, 0.6]") {
		t.Errorf("its other end stays:\n%s", text)
	}
	b.do(chromedp.Click("#change"))
	b.rested(set("f-area-1-count", "4"))
	b.until(`document.querySelectorAll("#seat-losses .each tr").length === 4`)
	b.rested(set("f-seats-aim", "worst"))
	b.until(`document.getElementById("aim").value === "worst"`)
	b.quiet()
}

// TestPageAllRound: for nobody in particular the page tells how loud and how even it is all
// round, with both circles, and one slider leads from even to loud.
func TestPageAllRound(t *testing.T) {
	ctx := chromium(t)
	path := filepath.Join(t.TempDir(), "round.toml")
	if err := os.WriteFile(path, []byte(edited(t, upper(map[string]any{"seats.aim": "round", "wiring.channels": 4}))), 0o644); err != nil {
		t.Fatal(err)
	}
	b := open(t, ctx, serving(t, path), 1440, 900)
	b.until(`document.querySelectorAll("#circles tbody tr").length === 4 && document.getElementById("seats-scroll").hidden && !document.getElementById("polar-upright").hidden`)
	if front := b.text("#loud-say"); !strings.Contains(front, "uneven by") {
		t.Errorf("it says %q", front)
	}
	had := b.text("#circles tbody")
	b.do(chromedp.Evaluate(`(() => { const f = document.getElementById("loud"); f.value = "1"; f.dispatchEvent(new Event("change")); })()`, nil))
	b.until(fmt.Sprintf(`document.getElementById("text").value.includes("\nloud = 1 ") && document.querySelector("#circles tbody").textContent !== %q`, had))
	b.rested(typed("aim", "even"))
	b.until(`document.getElementById("circles-scroll").hidden && !document.getElementById("seats-scroll").hidden`)
	if text := b.design(); strings.Contains(text, "\nloud = 1 ") {
		t.Errorf("loud is of no other aim:\n%s", text)
	}
	b.quiet()
}
