package main

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// TestPageStopsWhatCannotBePlanned: the reason heads the page, what is left of the former
// plan is pale and takes no press, sound ends, and one press mends it or takes it back.
func TestPageStopsWhatCannotBePlanned(t *testing.T) {
	ctx := chromium(t)
	address, _ := servedDemo(t)
	b := open(t, ctx, address, 1280, 900)
	b.do(chromedp.Click("#play"))
	b.until(`document.getElementById("hear").dataset.state === "on"`)
	b.do(chromedp.Click("#change"), set("f-body-radius_mm", "5"))
	b.until(`document.body.dataset.design === "stopped"`)
	if said := b.text("#stopped"); !strings.Contains(said, "cannot be planned") || !strings.Contains(said, "must be from 20 to 5000") || !strings.Contains(said, "radius_mm becomes 101") {
		t.Errorf("it says %q", said)
	}
	b.until(`sounding === 0`)
	if pale := b.number(`Number(getComputedStyle(document.getElementById("shown")).opacity)`); pale > 0.5 {
		t.Errorf("the former plan is at %g of its strength", pale)
	}
	for _, id := range []string{"copy", "play", "walk", "sweeps", "take-design", "print", "keep"} {
		if b.number(fmt.Sprintf(`document.getElementById(%q).closest("[inert]") === null ? 1 : 0`, id)) == 1 {
			t.Errorf("%s can be pressed", id)
		}
	}
	if b.number(`[...document.querySelectorAll("#files button")].filter((e) => e.closest("[inert]") === null).length`) != 0 {
		t.Error("files can be taken")
	}

	b.rested(chromedp.Click("#cure"))
	if got := b.attribute("design"); got != "planned" || b.number(`document.getElementById("shown").inert ? 1 : 0`) != 0 {
		t.Errorf("mended, it is %s", got)
	}
	b.until(`document.getElementById("f-body-radius_mm").value === "101"`)
	b.do(chromedp.Click("#undo"))
	b.until(`document.body.dataset.design === "stopped"`)
	b.rested(chromedp.Click("#stopped-undo"))
	b.until(`document.body.dataset.design === "planned" && document.getElementById("f-body-radius_mm").value === "150"`)
	b.quiet("422")
}

// TestPageBeginsWithWhatCannotBePlanned: a file that cannot be planned when the page is
// opened is told, too, and one press mends it.
func TestPageBeginsWithWhatCannotBePlanned(t *testing.T) {
	ctx := chromium(t)
	address := serving(t, changed(t, map[string]any{"mounts.skip": []any{77}}))
	b := openTo(t, ctx, address, 390, 844, `document.body.dataset.design === "stopped"`)
	if said := b.text("#stopped"); !strings.Contains(said, "there is no mount 77") || !strings.Contains(said, "skip = [77] is taken out") {
		t.Errorf("it says %q", said)
	}
	if b.number(`document.getElementById("stopped-undo").hidden && document.getElementById("stopped-former").hidden ? 1 : 0`) != 1 {
		t.Error("there is nothing to undo and nothing former")
	}
	b.do(chromedp.Click("#cure"))
	b.until(`document.body.dataset.design === "planned" && document.body.dataset.rest > 0 && document.querySelectorAll("#pick option").length === 41`)
	b.quiet("422")
}

// TestPageMendsWhatAChangeBreaks: another shape is no dead end; what was mended is said
// and undone in one step, by keys too.
func TestPageMendsWhatAChangeBreaks(t *testing.T) {
	ctx := chromium(t)
	address, _ := servedDemo(t)
	b := open(t, ctx, address, 1280, 900)
	b.do(chromedp.Click("#change"))
	text := `document.getElementById("text").value`
	var before, after string
	b.do(chromedp.Evaluate(text, &before))
	b.rested(set("f-body-shape", "dodecahedron"))
	if said := b.text("#mended"); !strings.Contains(said, "skip = [33] was taken out: a dodecahedron, cut as this one is, has 6 places") {
		t.Errorf("it says %q", said)
	}
	if n := b.number(`document.querySelectorAll("#pick option").length - 1`); n != 6 {
		t.Errorf("%g drivers", n)
	}
	b.rested(chromedp.Click("#mended-undo"))
	if b.do(chromedp.Evaluate(text, &after)); after != before || b.number(`document.getElementById("mended").hidden ? 1 : 0`) != 1 {
		t.Errorf("undone in one step it is\n%s", after)
	}
	b.rested(set("f-mounts-on", "even"))
	b.until(`Number(document.getElementById("f-mounts-count").value) === 39`)
	b.do(chromedp.Click("#design-title"), chromedp.KeyEvent("z", chromedp.KeyModifiers(2))) // Control
	b.until(text + `.includes("\non = \"faces\"")`)
	b.do(set("f-driver-diameter_mm", "45"))
	b.until(`document.getElementById("f-driver-cutout_mm").value === "46" && document.getElementById("f-driver-flange_mm").value === "53"`)
	b.do(chromedp.Evaluate(`document.getElementById("there-room").click()`, nil))
	b.until(`document.getElementById("there-room").checked && !document.getElementById("there-surface").checked`)
	b.until(`document.getElementById("mended").textContent.includes("[surface] was taken out")`)
	b.quiet()
}

// TestPageHeadsWithFindings: what to know stands first, the worst with a word of its own;
// strings with their loads are on the screen; the map shows whose hands are meant.
func TestPageHeadsWithFindings(t *testing.T) {
	ctx := chromium(t)
	address := serving(t, changed(t, map[string]any{"driver.flange_mm": 70.0}))
	b := open(t, ctx, address, 1280, 900)
	first := b.text("#findings-list li")
	if !strings.Contains(first, "Does not work") || !strings.Contains(first, "overlap") {
		t.Errorf("it begins with %q", first)
	}
	n := b.number(`document.querySelectorAll("#findings-list li").length`)
	if stops := b.number(`document.querySelectorAll("#findings-list li.stops").length`); n > 8 || stops < 1 {
		t.Errorf("%g findings, %g of them stop", n, stops)
	}
	if b.number(`document.getElementById("findings").compareDocumentPosition(document.getElementById("lede-say")) & 4`) == 0 {
		t.Error("the findings do not stand first")
	}
	if rows, shown := b.number(`document.querySelectorAll("#wiring tbody tr").length`), b.number(`document.getElementById("wiring").offsetHeight`); rows != 8 || shown < 100 {
		t.Errorf("%g channels in a table of %g px", rows, shown)
	}
	if ids := b.number(`[...document.querySelectorAll("#wiring .joints span")].flatMap((s) => s.textContent.split(" → ")).length`); ids != 39 {
		t.Errorf("%g drivers in strings", ids)
	}
	if row := b.text("#wiring tbody tr"); !strings.Contains(row, "Ω at ") || !strings.Contains(row, " W") {
		t.Errorf("a row says %q", row)
	}
	if rows, planned := b.number(`document.querySelectorAll("#fronts tbody tr").length`), b.text("#fronts .picked-row"); rows < 2 || !strings.Contains(planned, "as planned") {
		t.Errorf("of %g splits the planned one says %q", rows, planned)
	}
	b.do(chromedp.Evaluate(`document.getElementById("omni-ask").click()`, nil))
	b.until(`document.getElementById("omni-say").textContent !== ""`)
	if said := b.text("#omni-say"); !strings.Contains(said, "as built it passes in every octave from 125 Hz to 4 kHz; with the delays, which aim at the chair, it passes at 125 Hz and fails at 250 Hz") ||
		!strings.Contains(said, "Over all directions, up and down too, its level deviates by 2.0 dB as built, by 4.8 dB with the delays") {
		t.Errorf("all round it says %q", said)
	}
	// Who sits in front has the left hand lower on the map than the right one.
	hand := func(id string) float64 {
		return b.number(fmt.Sprintf(`(() => { const r = document.getElementById(%q).getBoundingClientRect(); return r.y + r.height / 2; })()`, id))
	}
	if l, r := hand("hand-left"), hand("hand-right"); l < r+40 {
		t.Errorf("the left hand is at %g, the right one at %g", l, r)
	}
	if words := b.text("#slice-say"); !strings.Contains(words, "0.63 m above the table or floor") {
		t.Errorf("the slice is said to be %q", words)
	}
	b.rested(chromedp.Evaluate(`for (const [axis, v] of [["x", "1.56"], ["y", "0"], ["z", "2.32"]]) { const f = document.getElementById("spot-" + axis); f.value = v; f.dispatchEvent(new Event("input", {bubbles: true})); }`, nil))
	if said := b.text("#lede-say"); !strings.Contains(said, "Sit 1.56 m away along the floor, straight in front.") || strings.Contains(said, "2.79") {
		t.Errorf("of a chair that is high up it says %q", said)
	}
	b.quiet()
}

// slow holds the sound of a case back till it is let go, and has what leaves the graph
// reach the ear two seconds later.
const slow = `{
	const fetch = window.fetch;
	window.fetch = async (path, how) => {
		if (String(path).endsWith("api/ears") && String(how.body).includes('"per_driver"')) await new Promise((go) => { window.letGo = go; });
		return fetch(path, how);
	};
	AudioContext.prototype.getOutputTimestamp = function () {
		return {contextTime: Math.max(1e-6, this.currentTime - 2), performanceTime: performance.now()};
	};
}`

// TestPageSaysWhatIsHeard: not what was pressed, but what the ear gets.
func TestPageSaysWhatIsHeard(t *testing.T) {
	ctx := chromium(t)
	address, _ := servedDemo(t)
	b := open(t, ctx, address, 1280, 900)
	b.do(chromedp.Evaluate(slow, nil), chromedp.Click("#play"))
	heard := `(document.querySelector("#cases [data-heard]")?.dataset.case ?? "")`
	b.until(heard + ` === "aligned"`)
	b.do(chromedp.Evaluate(`document.querySelector('#cases input[value="per_driver"]').click()`, nil))
	b.until(`window.letGo !== undefined`)
	b.do(chromedp.Focus("#swap"), chromedp.Sleep(500*time.Millisecond))
	if said := b.text("#hear-say"); strings.Contains(said, "Now") || b.number(heard+` === "aligned" ? 1 : 0`) != 1 {
		t.Errorf("before the sound is there it says %q", said)
	}
	b.do(chromedp.Evaluate(`window.heardAt = 0; window.goneAt = performance.now(); letGo();
		new MutationObserver(() => { if (!heardAt && document.getElementById("hear-say").textContent === "Now a delay for each driver.") heardAt = performance.now(); }).observe(document.getElementById("hear-say"), {childList: true, characterData: true, subtree: true})`, nil))
	b.until(`heardAt > 0 && ` + heard + ` === "per_driver"`)
	if ms := b.number(`heardAt - goneAt`); ms < 1900 {
		t.Errorf("it says so %g ms after the sound came, which is heard 2 s later", ms)
	}
	b.do(chromedp.KeyEvent(kb.Tab), chromedp.Click("#play"))
	b.until(heard + ` === ""`)
	b.quiet()
}
