package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"pappus/layout/design"

	"github.com/chromedp/chromedp"
)

// searchedFolder searches a few designs round the built-in one, into a folder beside it.
func searchedFolder(t *testing.T) string {
	t.Helper()
	home := t.TempDir()
	path := filepath.Join(home, "lantern.toml")
	text := string(design.DefaultTOML()) + "\n[search]\ndrivers = 40\n[search.body]\nshape = [\"ball\"]\nradius_mm = [120, 150]\n[search.mounts]\non = [\"even\"]\ncount = [16, 24, 32, 39]\n"
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	folder := filepath.Join(home, "search")
	if code := run([]string{"search", path, "-o", folder, "-q"}); code != 0 {
		t.Fatalf("the search ended with %d", code)
	}
	return folder
}

// TestPageOffersWhatWasFound: a folder of a search opens with its designs, sliders sort them anew, and a click,
// on the list or in the picture, opens one; so does the design that it lies beside.
func TestPageOffersWhatWasFound(t *testing.T) {
	ctx := chromium(t)
	folder := searchedFolder(t)
	b := open(t, ctx, serving(t, folder), 1440, 1200)
	b.until(`document.querySelectorAll("#offered-list li").length > 1`)
	if open := b.number(`document.querySelectorAll('#offered-list [aria-current="true"]').length`); open != 1 {
		t.Errorf("%g of those offered are open", open)
	}
	order := func() string {
		var text string
		b.do(chromedp.Evaluate(`[...document.querySelectorAll("#offered-list li")].map((e) => e.dataset.number).join()`, &text))
		return text
	}
	slide := func(aim string, to float64) chromedp.Action {
		return chromedp.Evaluate(fmt.Sprintf(`(() => { const s = document.getElementById("aim-%s"); s.value = %g; s.dispatchEvent(new Event("input")); })()`, aim, to), nil)
	}
	b.do(slide("loss", 1), slide("level", 0))
	quiet := order()
	b.do(slide("loss", 0), slide("level", 1), slide("cost", 0))
	loud := order()
	if quiet == loud {
		t.Errorf("whatever matters, the order is %s", quiet)
	}
	if !strings.HasPrefix(loud, "1,") && loud != "1" {
		t.Errorf("where level alone matters, the order is %s; 1 is the loudest", loud)
	}
	b.rested(chromedp.Click(`#offered-list li:last-child button`))
	last := loud[strings.LastIndex(loud, ",")+1:]
	if got := b.number(`Number(document.querySelector('#offered-list [aria-current="true"]').parentElement.dataset.number)`); fmt.Sprint(got) != last {
		t.Errorf("number %g is open, not %s", got, last)
	}
	if names := b.steps(); len(names) != 1 || !strings.HasPrefix(names[0], "opened "+last+", ") {
		t.Errorf("the steps are %q", names)
	}
	b.quiet()

	beside := open(t, ctx, serving(t, filepath.Join(filepath.Dir(folder), "lantern.toml")), 1280, 900)
	beside.until(`!document.getElementById("offered").hidden`)
	plain := open(t, ctx, func() string { address, _ := servedDemo(t); return address }(), 1280, 900)
	if plain.number(`document.getElementById("offered").hidden ? 1 : 0`) != 1 {
		t.Error("a design without a search offers some")
	}
	plain.quiet()
}
