package main

import (
	"errors"
	"fmt"
	"os"
	"strings"
	"testing"

	"pappus/layout/design"

	"github.com/chromedp/chromedp"
	"github.com/evanw/esbuild/pkg/api"
)

// TestPageSeesTheDisk: an editor changes the file under a page; it is shown, taken, merged
// with a conflict, and written over.
func TestPageSeesTheDisk(t *testing.T) {
	ctx := chromium(t)
	address, path := servedDemo(t)
	b := open(t, ctx, address, 1280, 900)
	demo := string(design.DefaultTOML())
	write := func(pairs ...string) {
		t.Helper()
		text := strings.NewReplacer(pairs...).Replace(demo)
		if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	shown, gone := `!document.getElementById("disk").hidden`, `document.getElementById("disk").hidden && document.body.dataset.busy === "no"`
	value := func(id string) string { b.Helper(); return b.value(id) }

	write("radius_mm = 150", "radius_mm = 160")
	b.until(shown)
	if lines := b.text("#disk-lines"); !strings.Contains(lines, "radius_mm = 150") || !strings.Contains(lines, "radius_mm = 160") || b.number(`document.querySelectorAll("#disk-lines .gone, #disk-lines .came").length`) != 2 {
		t.Errorf("it shows %q", lines)
	}
	b.clean("changed on the disk")
	b.do(chromedp.Click("#disk-take"))
	b.until(gone)
	if got, state := value("f-body-radius_mm"), b.text("#file-state"); got != "160" || state != "" {
		t.Errorf("taken, the radius is %s, the file %q", got, state)
	}

	b.do(chromedp.Click("#change"))
	b.rested(set("f-body-radius_mm", "155"))
	b.rested(set("f-wiring-channels", "4"))
	write("radius_mm = 150", "radius_mm = 170", "temperature_c = 21.0", "temperature_c = 25.0")
	b.until(shown)
	b.do(chromedp.Click("#disk-merge"))
	b.until(`document.querySelectorAll(".conflict").length === 1`)
	b.clean("a conflict")
	b.do(chromedp.Click(`.conflict label:nth-of-type(2) input`), chromedp.Click("#disk-merge"))
	b.until(gone)
	for id, want := range map[string]string{"f-body-radius_mm": "155", "f-wiring-channels": "4"} {
		if got := value(id); got != want {
			t.Errorf("merged, %s is %s, want %s", id, got, want)
		}
	}
	if text := b.value("text"); !strings.Contains(text, "temperature_c = 25.0") {
		t.Error("what the editor set is gone")
	}

	write("radius_mm = 150", "radius_mm = 180")
	b.do(chromedp.Click("#save")) // before anybody has told the page
	b.until(`document.getElementById("notice").textContent.startsWith("Not saved: the file was changed by another program since it was read")`)
	b.until(shown)
	b.do(chromedp.ScrollIntoView("#notice"))
	b.seen("conflict")
	b.do(chromedp.Click("#disk-keep"))
	b.until(gone)
	b.do(chromedp.Click("#save"))
	b.until(`document.getElementById("file-state").textContent === ""`)
	if held, err := os.ReadFile(path); err != nil || !strings.Contains(string(held), "radius_mm = 155") {
		t.Errorf("the file was not written over: %v", err)
	}
	if err := errors.Join(os.Remove(path), os.Mkdir(path, 0o700)); err != nil {
		t.Fatal(err)
	}
	b.until(`document.getElementById("notice").textContent.includes("The design’s file cannot be read: it is a folder, not a file. What is here can be downloaded.")`)
	b.seen("another")
	b.quiet("409")
}

// TestPageIsAsItWas after a reload and after the file has changed meanwhile.
func TestPageIsAsItWas(t *testing.T) {
	ctx := chromium(t)
	address, path := servedDemo(t)
	b := open(t, ctx, address, 1280, 900)
	b.do(chromedp.Click("#change"))
	b.rested(set("f-body-radius_mm", "155"))
	b.rested(set("f-wiring-channels", "4"))
	b.do(chromedp.Click("#keep"), chromedp.Evaluate(`{ const q = document.getElementById("quantity"); q.value = "level"; q.dispatchEvent(new Event("change", {bubbles: true})); }`, nil))
	b.until(`document.getElementById("comparison").textContent.includes("kept 1")`)
	reload := func() {
		b.do(chromedp.Reload())
		b.until(`document.body.dataset.ready === "yes" && document.body.dataset.rest > 0 && document.body.dataset.busy === "no"`)
	}
	reload()
	b.until(`document.getElementById("quantity").value === "level" && document.getElementById("comparison").textContent.includes("kept 1")`)
	if got, state := b.value("f-body-radius_mm"), b.text("#file-state"); got != "155" || state != "changed" {
		t.Errorf("the radius is %s, the file %q", got, state)
	}
	b.do(chromedp.Click("#undo"))
	b.until(`document.body.dataset.busy === "no" && document.getElementById("f-wiring-channels").value !== "4"`)

	text := strings.Replace(string(design.DefaultTOML()), "radius_mm = 150", "radius_mm = 170", 1)
	if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
		t.Fatal(err)
	}
	reload()
	b.until(`!document.getElementById("disk").hidden && !document.getElementById("disk-merge").hidden`)
	if got := b.value("f-body-radius_mm"); got != "155" {
		t.Errorf("with a file that has changed, the radius is %s", got)
	}
	b.do(chromedp.Click("#disk-take"))
	b.until(`document.getElementById("disk").hidden && document.body.dataset.busy === "no" && document.getElementById("f-body-radius_mm").value === "170"`)
	reload()
	if got, state := b.value("f-body-radius_mm"), b.text("#file-state"); got != "170" || state != "" {
		t.Errorf("at last the radius is %s, the file %q", got, state)
	}
	b.quiet()
}

// TestPageKeepsNoMore: of one thing a browser keeps a third of what it gives a page, and no more.
func TestPageKeepsNoMore(t *testing.T) {
	ctx := chromium(t)
	source, err := os.ReadFile("../../render/page/web/src/keep.ts")
	if err != nil {
		t.Fatal(err)
	}
	made := api.Transform(string(source), api.TransformOptions{Loader: api.LoaderTS, Format: api.FormatIIFE, GlobalName: "keeping"})
	address, _ := servedDemo(t)
	b := open(t, ctx, address, 800, 600)
	b.do(chromedp.Evaluate(string(made.Code), nil))
	for letters, want := range map[int]bool{1_400_000: true, 1_600_000: false} {
		var kept bool
		b.do(chromedp.Evaluate(fmt.Sprintf(`keeping.keep("it", "x", 1, "a".repeat(%d)) && keeping.kept("it", "x", 1).length === %[1]d`, letters), &kept))
		if kept != want {
			t.Errorf("%d letters are kept: %t", letters, kept)
		}
	}
	b.quiet()
}
