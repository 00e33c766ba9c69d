package main

import (
	"fmt"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
)

// TestPageDoor: the secret leaves the address bar; who comes without it is told what to do; two
// programs on two ports let the same browser in beside each other; and a link in a file leads in, too.
func TestPageDoor(t *testing.T) {
	ctx := chromium(t)
	one, _ := servedDemo(t)
	two, _ := servedDemo(t)
	ready := `document.body.dataset.ready === "yes"`
	base := one[:strings.LastIndex(one, "/")+1]

	stranger := openTo(t, ctx, base, 640, 360, `document.querySelector("h1").textContent === "Not this way"`)
	if words := stranger.text("p"); !strings.HasPrefix(words, "The program was started anew, or this browser was not here yet: open the address that the program printed") {
		t.Errorf("a stranger is told %q", words)
	}
	stranger.seen("stranger")
	stranger.clean("a stranger's page")
	stranger.quiet("403")

	b := openTo(t, ctx, one, 1280, 900, ready)
	b.do(chromedp.Navigate(two))
	b.until(ready)
	b.do(chromedp.Navigate(base))
	b.until(ready)
	var at string
	if b.do(chromedp.Location(&at)); at != base {
		t.Errorf("the address bar has %s", at)
	}
	b.quiet()

	file := filepath.Join(t.TempDir(), "open.html")
	if err := os.WriteFile(file, fmt.Appendf(nil, "<!doctype html><meta http-equiv=refresh content='0;url=%s'>", one), 0o600); err != nil {
		t.Fatal(err)
	}
	led := openTo(t, ctx, "about:blank", 1280, 900, "true")
	led.do(chromedp.Navigate((&url.URL{Scheme: "file", Path: filepath.ToSlash(file)}).String()))
	for at = ""; at != base && led.ctx.Err() == nil; time.Sleep(100 * time.Millisecond) {
		// One page follows another, and there may be none just now.
		_ = chromedp.Run(led.ctx, chromedp.Evaluate(`document.body?.dataset.ready === "yes" ? location.href : ""`, &at))
	}
	if at != base {
		t.Errorf("led by a file the address bar has %s", at)
	}
	led.quiet()
}
