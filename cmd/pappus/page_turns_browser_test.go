package main

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// press presses what a selector finds.
func press(selector string) chromedp.Action {
	return chromedp.Evaluate(fmt.Sprintf(`document.querySelector(%q).click()`, selector), nil)
}

// TestPageShowsHowSoundTurns: phase and group delay stand in the level's place, follow what is tried,
// and leave it again.
func TestPageShowsHowSoundTurns(t *testing.T) {
	ctx := chromium(t)
	address, _ := servedDemo(t)
	b := open(t, ctx, address, 1440, 900)
	said := func() string {
		var text string
		b.do(chromedp.Evaluate(`document.getElementById("turns").getAttribute("aria-label")`, &text))
		return text
	}
	b.do(press(`[name="response-of"][value="group"]`))
	b.until(`document.querySelector("#turns canvas") !== null && document.getElementById("curves").hidden && document.getElementById("turns").getAttribute("aria-label").startsWith("Group delay")`)
	if unit := b.text("#response-unit"); !strings.HasPrefix(unit, "ms") {
		t.Errorf("it is in %q", unit)
	}
	group := said()
	b.rested(press("#desk"), press(`[aria-label="Reverse channel 1"]`))
	b.until(fmt.Sprintf(`document.getElementById("turns").getAttribute("aria-label") !== %q`, group))
	b.do(press(`[name="response-of"][value="phase"]`))
	b.until(`document.getElementById("turns").getAttribute("aria-label").startsWith("Phase") && document.getElementById("response-unit").textContent.startsWith("degrees")`)
	b.do(press(`[name="response-of"][value="level"]`))
	b.until(`document.getElementById("turns").hidden && document.querySelector("#curves canvas") !== null && document.getElementById("response-unit").textContent.startsWith("dB")`)
	b.quiet()
}

// TestPageSaysDelaysTwice: each delay has the way beside it that sound goes in it, and what is muted is
// said to be for listening.
func TestPageSaysDelaysTwice(t *testing.T) {
	ctx := chromium(t)
	address, _ := servedDemo(t)
	b := open(t, ctx, address, 1440, 900)
	var rows [][2]float64
	b.do(chromedp.Evaluate(`[...document.querySelectorAll("#channels tr[data-channel]")].map((r) => [Number(r.querySelector(".strong").textContent), Number(r.querySelector(".way").textContent)])`, &rows))
	for _, r := range rows {
		if math.Abs(r[1]-343.4*r[0]) > 1+0.002*r[1] {
			t.Errorf("%g ms is a way of %g mm", r[0], r[1])
		}
	}
	b.do(press("#desk"), press(`[aria-label="Mute channel 2"]`))
	b.until(`document.getElementById("desk-say").textContent.includes("channel 2 silent. Solo and mute are for listening: the design keeps all its channels.")`)
	b.do(press(`[aria-label="Mute channel 2"]`), press(`[aria-label="Reverse channel 2"]`))
	b.until(`document.getElementById("desk-say").textContent === "Not as planned: channel 2 reversed."`)
	b.quiet()
}

// TestPageTriesForSeats: what seats lose is by what is tried, beside what they lose as planned. The page
// begins with what is found at once, and takes what is better.
func TestPageTriesForSeats(t *testing.T) {
	ctx := chromium(t)
	path := filepath.Join(t.TempDir(), "seats.toml")
	if err := os.WriteFile(path, []byte(fiveSeats(t)), 0o644); err != nil {
		t.Fatal(err)
	}
	b := open(t, ctx, serving(t, path), 1440, 900)
	if more := b.text("#lede-more"); strings.Contains(more, "found at once") {
		t.Errorf("it is done and says %q", more)
	}
	if n := b.number(`performance.getEntriesByType("resource").filter((e) => e.name.endsWith("api/plan")).length`); n != 2 {
		t.Errorf("it was planned %g times", n)
	}
	const worst = "#seat-losses .whole tr:first-child .strong"
	planned := b.text(worst)
	b.do(press("#desk"), press(`[aria-label="Reverse channel 1"]`))
	b.until(fmt.Sprintf(`document.querySelector(%q).textContent !== %q && document.getElementById("smear-words").textContent === "As tried, the worst seat loses"`, worst, planned))
	b.until(fmt.Sprintf(`document.getElementById("smear-before").textContent === "%s dB" && document.getElementById("smear-after").textContent === document.querySelector(%q).textContent + " dB"`, planned, worst))
	if say := b.text("#losses-say"); !strings.HasPrefix(say, "For all: with the delays as you try them.") {
		t.Errorf("it says %q", say)
	}
	b.do(press("#desk-reset"))
	b.until(fmt.Sprintf(`document.querySelector(%q).textContent === %q`, worst, planned))
	b.quiet()
}

// TestPageFits: nothing of the page is wider than the window, with another design beside it, and the head of
// the delays has its buttons on one line.
func TestPageFits(t *testing.T) {
	ctx := chromium(t)
	address, _ := servedDemo(t)
	for _, wide := range []int64{1440, 1100, 820, 390, 320} {
		b := open(t, ctx, address, wide, 900)
		b.do(press("#keep"))
		b.until(`document.querySelector("#comparison table") !== null`)
		if over := b.number(`document.documentElement.scrollWidth - innerWidth`); over > 0 {
			t.Errorf("%d px: the page is wider by %g", wide, over)
		}
		if over := b.number(`(() => { const box = document.getElementById("comparison"); return box.scrollWidth - box.clientWidth; })()`); over > 0 && wide > 320 {
			t.Errorf("%d px: the other design's table is wider by %g", wide, over)
		}
		if off := b.number(`document.getElementById("desk").getBoundingClientRect().top - document.getElementById("copy").getBoundingClientRect().top`); math.Abs(off) > 4 {
			t.Errorf("%d px: the buttons of the delays are %g px apart", wide, off)
		}
		b.quiet()
	}
}
