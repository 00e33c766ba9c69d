package main

import (
	"context"
	"fmt"
	"testing"

	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
)

// counting counts how often each canvas is cleared to be drawn anew.
const counting = `{
	window.drawn = {map: 0, polar: 0, curves: 0};
	const clear = CanvasRenderingContext2D.prototype.clearRect;
	CanvasRenderingContext2D.prototype.clearRect = function (...box) {
		const name = this.canvas.closest("#curves") ? "curves" : this.canvas.id;
		if (name in drawn) drawn[name]++;
		return clear.apply(this, box);
	};
}`

// walked moves the chair by keys in each of some frames, and tells how often canvases were drawn meanwhile; it walks again, some
// times, until that is as it should be: on a slow machine the chair may come to rest between two frames.
const walked = `(async () => {
	const frame = () => new Promise(requestAnimationFrame);
	let got;
	for (let tries = 0; tries < 40; tries++) {
		await new Promise((then) => setTimeout(then, 600));
		const was = {...drawn};
		for (let i = 0; i < 8; i++) {
			document.getElementById("chair").dispatchEvent(new KeyboardEvent("keydown", {key: i %% 2 ? "ArrowLeft" : "ArrowRight", bubbles: true}));
			await frame();
		}
		got = Object.fromEntries(Object.keys(was).map((k) => [k, drawn[k] - was[k]]));
		if (%s) break;
	}
	return got;
})()`

// TestPageLetsWhatIsOutOfViewWait: curves and circle are below the window; they are drawn once the chair rests, and with each move
// where they are seen.
func TestPageLetsWhatIsOutOfViewWait(t *testing.T) {
	ctx := chromium(t)
	address, _ := servedDemo(t)
	b := openTo(t, ctx, "about:blank", 1440, 700, "true")
	b.do(chromedp.ActionFunc(func(ctx context.Context) error {
		_, err := page.AddScriptToEvaluateOnNewDocument(counting).Do(ctx)
		return err
	}), chromedp.Navigate(address))
	b.until(`document.body.dataset.rest > 0 && document.getElementById("room").dataset.map === "new"`)
	walk := func(until string) (got map[string]int) {
		b.do(chromedp.Evaluate(fmt.Sprintf(walked, until), &got, func(p *runtime.EvaluateParams) *runtime.EvaluateParams { return p.WithAwaitPromise(true) }))
		return got
	}
	if got := walk(`got.map > 0 && got.polar + got.curves === 0`); got["map"] == 0 || got["polar"]+got["curves"] != 0 {
		t.Errorf("out of view: %v, want the map alone", got)
	}
	b.do(chromedp.Evaluate(`drawn.polar = drawn.curves = 0`, nil))
	b.until(`drawn.polar > 0 && drawn.curves > 0`) // once it rests
	b.do(chromedp.Evaluate(`document.getElementById("curves").scrollIntoView({block: "center"})`, nil))
	if got := walk(`got.polar > 2 && got.curves > 2`); got["polar"] <= 2 || got["curves"] <= 2 {
		t.Errorf("in view: %v, want all that is seen with each move", got)
	}
	b.quiet()
}
