package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"pappus/layout/design"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
)

// TestPageOnAPhone: the code that the computer's bench shows opens the bench on a phone; the
// secret leaves the address bar, what is ticked there is seen on the computer, and what is ticked
// here there, without anything being loaded anew.
func TestPageOnAPhone(t *testing.T) {
	ctx := chromium(t)
	path := filepath.Join(t.TempDir(), "lantern.toml")
	if err := os.WriteFile(path, design.DefaultTOML(), 0o644); err != nil {
		t.Fatal(err)
	}
	address, given := withPhone(t, path)
	ready := `document.body.dataset.ready === "yes"`
	desk := openTo(t, ctx, address+"/bench", 1280, 900, ready)
	desk.do(chromedp.Click("#phone > summary"))
	if shown := desk.text("#phone .address"); shown != given {
		t.Errorf("the computer shows %s, the program said %s", shown, given)
	}
	if n := desk.number(`document.querySelector("#phone svg.code").viewBox.baseVal.width`); n != 33+8 && n != 29+8 {
		t.Errorf("the code is %g squares wide", n)
	}
	desk.clean("with the code")

	phone := openTo(t, ctx, given, 390, 844, ready)
	phone.do(emulation.SetTouchEmulationEnabled(true))
	var at string
	if phone.do(chromedp.Location(&at)); !strings.HasSuffix(at, "/bench") || strings.Contains(at, given[len(given)-26:]) {
		t.Errorf("the address bar has %s", at)
	}
	if hidden := phone.number(`Number(document.getElementById("back").checkVisibility() || document.getElementById("phone").checkVisibility())`); hidden != 0 {
		t.Error("the phone is led to what it may not open")
	}
	phone.clean("on the phone")
	var small string
	if phone.do(chromedp.Evaluate(low, &small)); small != "" {
		t.Errorf("too small to touch:\n%s", small)
	}
	done := `document.querySelectorAll("#discs .lit.is-done").length === `
	phone.do(chromedp.Click("#tick"))
	phone.until(done + "1")
	desk.until(done + "1")
	desk.do(chromedp.Click("#after"), chromedp.Click("#tick"))
	desk.until(done + "2")
	phone.until(done + "2")
	phone.do(chromedp.Reload())
	phone.until(ready + " && " + done + "2")
	held, err := os.ReadFile(filepath.Join(filepath.Dir(path), "lantern.bench.toml"))
	if err != nil || strings.Count(string(held), "[[string]]") != 1 {
		t.Errorf("the file: %v, %s", err, held)
	}
	if err := os.WriteFile(path, append(design.DefaultTOML(), "# mine\n"...), 0o644); err != nil {
		t.Fatal(err)
	}
	for _, b := range []*browser{phone, desk} {
		b.until(`document.getElementById("notice").textContent.startsWith("The design’s file has changed")`)
		b.quiet()
	}
}

// TestPageWithoutAPhone says how one is let in.
func TestPageWithoutAPhone(t *testing.T) {
	ctx := chromium(t)
	b := openTo(t, ctx, serving(t, "")+"/bench", 390, 844, `document.body.dataset.ready === "yes"`)
	b.do(chromedp.Click("#phone > summary"))
	if words := b.text("#phone-how"); !strings.Contains(words, "with --phone") {
		t.Errorf("it says %q", words)
	}
	b.clean("with the words opened")
	b.quiet()
}
