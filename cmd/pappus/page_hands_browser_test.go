package main

import (
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// dragged takes what is at a place of the screen somewhere else by a mouse, in steps; held is
// done before it is let go.
func dragged(x, y, dx, dy float64, held ...chromedp.Action) []chromedp.Action {
	mouse := func(kind input.MouseType, share float64) chromedp.Action {
		return input.DispatchMouseEvent(kind, x+share*dx, y+share*dy).WithButton(input.Left).WithClickCount(1)
	}
	drag := []chromedp.Action{mouse(input.MousePressed, 0)}
	for i := range 8 {
		drag = append(drag, mouse(input.MouseMoved, float64(i+1)/8))
	}
	return append(append(drag, held...), mouse(input.MouseReleased, 1))
}

// ghostly tells whether the curves show what was before a hand took hold.
const ghostly = `document.getElementById("response-key").textContent.includes("before")`

// steps are the names of what was done, the newest first.
func (b *browser) steps() (names []string) {
	b.Helper()
	b.do(chromedp.Evaluate(`(() => {
		const box = document.getElementById("history");
		box.open = true;
		return new Promise((done) => setTimeout(() => { done([...box.querySelectorAll("li:not(.undone) button")].map((e) => e.textContent)); box.open = false; }, 50));
	})()`, &names, func(p *runtime.EvaluateParams) *runtime.EvaluateParams { return p.WithAwaitPromise(true) }))
	return names
}

// TestPageTakesHoldOfTheBody: radius, cut and turn are dragged and moved by keys; what is tried is shown
// beside a ghost of what was, and is one step of the design with a name; one that is broken off is none.
func TestPageTakesHoldOfTheBody(t *testing.T) {
	ctx := chromium(t)
	address, _ := servedDemo(t)
	b := open(t, ctx, address, 1440, 900)
	before := b.design()

	x, y := b.seatAt("grip-radius")
	var tried string
	b.rested(dragged(x, y, 30, 0, chromedp.Poll(ghostly+` && document.getElementById("grip-radius").getAttribute("aria-valuenow") > 155`, nil),
		chromedp.Evaluate(`document.getElementById("text").value`, &tried))...)
	if tried != before {
		t.Error("what is only tried is in the design")
	}
	b.until(`!document.getElementById("undo").disabled && document.body.dataset.busy === "no"`) // what was tried came to rest too
	radius := b.value("f-body-radius_mm")
	if radius == "150" || radius == "" || !strings.Contains(b.design(), "radius_mm = "+radius) {
		t.Errorf("the radius is %s", radius)
	}
	if got := b.steps(); len(got) != 1 || got[0] != "radius "+radius+" mm" {
		t.Errorf("the steps are %q", got)
	}
	if strings.Contains(b.text("#response-key"), "before") {
		t.Error("the ghost stays")
	}

	// One step however many keys.
	b.rested(chromedp.Focus("#grip-cut"), chromedp.KeyEvent(kb.ArrowUp), chromedp.KeyEvent(kb.ArrowUp))
	b.until(`document.getElementById("text").value.includes("cut_height_mm = 2 ")`)
	b.rested(chromedp.Focus("#grip-turn"), chromedp.KeyEvent(kb.ArrowRight, chromedp.KeyModifiers(input.ModifierShift)))
	b.until(`document.getElementById("text").value.includes("yaw_deg = 10 ")`)
	if got, want := fmt.Sprintf("%q", b.steps()), fmt.Sprintf("%q", []string{"turned to the left 10 °", "cut at height 2 mm", "radius " + radius + " mm"}); got != want {
		t.Errorf("the steps are %s, not %s", got, want)
	}

	// Escape, and all is as it was.
	was := b.design()
	x, y = b.seatAt("grip-radius")
	b.do(dragged(x, y, 40, 0, chromedp.Poll(ghostly, nil), chromedp.Focus("#grip-radius"), chromedp.KeyEvent(kb.Escape))...)
	b.until(fmt.Sprintf(`document.getElementById("grip-radius").getAttribute("aria-valuenow") === %q`, radius))
	if b.design() != was {
		t.Error("a drag that was broken off is in the design")
	}

	// Back by name, over several steps at once.
	b.do(chromedp.Evaluate(`document.getElementById("history").open = true`, nil), chromedp.Poll(`document.querySelectorAll("#history li button").length === 3`, nil))
	b.rested(chromedp.Click("#history li:last-child button"))
	if b.design() != before {
		t.Error("taken back, it is another design")
	}
	b.rested(choose("held", "ceiling"))
	b.until(`document.getElementById("text").value.includes('on = "ceiling"')`)
	b.quiet("422")
}

// TestPageMovesDrivers: one is left out and put back, and one given to another channel, by the list and by
// dragging it onto the channel's number.
func TestPageMovesDrivers(t *testing.T) {
	ctx := chromium(t)
	address, _ := servedDemo(t)
	b := open(t, ctx, address, 1440, 1200)
	drivers := func(channel int) string {
		return b.text(fmt.Sprintf(`#channels tr[data-channel="%d"] .ids`, channel))
	}
	b.do(choose("pick", "21"))
	b.rested(chromedp.Click("#pick-out"))
	b.until(`document.getElementById("text").value.includes("skip = [21, 33]")`)
	if got := b.text("#row"); got != "Place 21 is left empty." {
		t.Errorf("it says %q", got)
	}
	b.rested(chromedp.Click("#pick-out"))
	b.until(`document.getElementById("text").value.includes("skip = [33]")`)

	b.do(choose("pick", "1"))
	b.rested(choose("pick-channel", "2"))
	b.until(`document.querySelector('#channels tr[data-channel="2"] .ids').textContent.startsWith("1")`)
	if text := b.design(); strings.Count(text, "\n[[channel]]") != 8 || !strings.Contains(text, "\n# channels = 8") || !strings.Contains(text, "gain_db = -6") {
		t.Errorf("the channels are not written so:\n%s", text)
	}

	// Dragged onto a number. Picked from the list, a driver is turned to the front.
	b.do(choose("pick", "30"))
	from := b.number(`Number(document.getElementById("pick-channel").value)`)
	to := 3
	if from == 3 {
		to = 4
	}
	var chip, at struct{ X, Y float64 }
	b.until(`document.getElementById("solid").dataset.picked?.startsWith("30 ")`)
	b.do(chromedp.ScrollIntoView("#legend"), chromedp.Evaluate(`(() => {
		const canvas = document.getElementById("solid"), r = canvas.getBoundingClientRect(), [, x, y] = canvas.dataset.picked.split(" ").map(Number);
		return {x: r.x + x, y: r.y + y};
	})()`, &at), chromedp.Evaluate(fmt.Sprintf(`(() => { const r = document.querySelector('#legend [data-channel="%d"]').getBoundingClientRect(); return {x: r.x + r.width / 2, y: r.y + r.height / 2}; })()`, to), &chip))
	b.do(dragged(at.X, at.Y, chip.X-at.X, chip.Y-at.Y)...)
	b.until(fmt.Sprintf(`document.getElementById("pick-channel").value === "%d"`, to))
	if !strings.Contains(drivers(to), "30") {
		t.Errorf("channel %d has %s", to, drivers(to))
	}
	b.quiet()
}

// TestPageScrubsNumbers: words that are dragged change their number, and what it does is shown meanwhile.
func TestPageScrubsNumbers(t *testing.T) {
	ctx := chromium(t)
	address, _ := servedDemo(t)
	b := open(t, ctx, address, 1440, 900)
	b.do(chromedp.Click("#change"))
	var at struct{ X, Y float64 }
	b.do(chromedp.ScrollIntoView(`label[for="f-body-radius_mm"]`), chromedp.Evaluate(
		`(() => { const r = document.querySelector('label[for="f-body-radius_mm"]').getBoundingClientRect(); return {x: r.x + 10, y: r.y + r.height / 2}; })()`, &at))
	b.do(dragged(at.X, at.Y, 80, 0, chromedp.Poll(ghostly, nil))...)
	b.until(`document.getElementById("text").value.includes("radius_mm = 170 ")`)
	b.until(`document.body.dataset.busy === "no"`)
	if got := b.steps(); len(got) != 1 || got[0] != "radius 170 mm" {
		t.Errorf("the steps are %q", got)
	}
	b.quiet()
}

// TestPageShowsTheOther: a design that is kept is one key away, with what differs marked; a second key, or a change of the design, leads back.
func TestPageShowsTheOther(t *testing.T) {
	ctx := chromium(t)
	address, _ := servedDemo(t)
	b := open(t, ctx, address, 1440, 900)
	delays := b.text("#channels tbody")
	b.do(chromedp.Click("#keep"))
	b.rested(chromedp.Click("#change"), set("f-wiring-channels", "3"))
	three := b.text("#channels tbody")
	if three == delays {
		t.Fatal("three channels have the delays of eight")
	}
	own := b.design()
	b.rested(chromedp.Focus("#solid"), chromedp.KeyEvent("c"))
	if got := b.text("#channels tbody"); got != delays {
		t.Errorf("the kept design's delays are %q, not %q", got, delays)
	}
	if b.number(`document.querySelectorAll("#channels td.changed").length`) < 2 || !strings.Contains(b.text("#peek-say"), "kept 1") || b.design() != own {
		t.Error("it does not say whose delays they are")
	}
	b.rested(chromedp.KeyEvent("c"))
	if got := b.text("#channels tbody"); got != three {
		t.Errorf("back at this design, the delays are %q, not %q", got, three)
	}
	b.do(chromedp.KeyEvent("c"))
	b.until(`document.body.dataset.shows === "other"`)
	b.do(set("f-wiring-channels", "4")) // the other's map may come to rest meanwhile
	b.until(`document.body.dataset.shows === "own" && document.querySelectorAll("#channels tbody tr").length === 4`)
	b.quiet()
}

// TestPageFindsAPlace: a button turns the body so that the chair loses less, and says what that brings;
// what it says goes once the design is another, and so do the buttons with seats.
func TestPageFindsAPlace(t *testing.T) {
	ctx := chromium(t)
	address, _ := servedDemo(t)
	b := open(t, ctx, address, 1440, 900)
	b.rested(chromedp.Click(`#where [data-what="body"]`))
	b.until(`document.getElementById("where-say").textContent.startsWith("Here the chair loses")`)
	if text := b.design(); !strings.Contains(text, "\nyaw_deg = ") {
		t.Errorf("the body is not turned:\n%s", text)
	}
	b.rested(chromedp.Click("#undo"))
	b.until(`document.getElementById("where-say").textContent === ""`)
	b.do(chromedp.Click(`#where [data-what="chair"]`))
	b.until(`document.getElementById("where-say").textContent.startsWith("Here the chair loses") && document.getElementById("spot-x").value !== "1.80"`)
	b.do(chromedp.Click("#seat-add"))
	b.until(`document.getElementById("where").hidden`)
	b.quiet()
}
