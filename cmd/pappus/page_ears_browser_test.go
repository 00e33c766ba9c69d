package main

import (
	"context"
	"encoding/base64"
	"encoding/binary"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/preview"
	"pappus/preview/programme"
	"pappus/timing"

	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
	"github.com/gopxl/beep/v2"
)

// rendered plays for so many seconds into memory in place of a loudspeaker, does something after
// a part of them, and gives the samples of both sides.
const rendered = `(async (seconds, change, at) => {
	const resume = OfflineAudioContext.prototype.resume;
	window.AudioContext = function () {
		const offline = new OfflineAudioContext(2, seconds * 48000, 48000);
		offline.resume = async () => {};
		offline.getOutputTimestamp = () => ({contextTime: 0, performanceTime: 0});
		window.offline = offline;
		return offline;
	};
	const volume = document.getElementById("volume");
	volume.value = "0";
	volume.dispatchEvent(new Event("input"));
	document.getElementById("play").click();
	while (document.getElementById("hear").dataset.state !== "on") await new Promise((then) => setTimeout(then, 5));
	if (change) offline.suspend(at).then(async () => {
		change();
		await new Promise((then) => setTimeout(then, 1000));
		await resume.call(offline);
	});
	const heard = await offline.startRendering();
	document.getElementById("play").click();
	const bytes = new Uint8Array(new Float32Array([...heard.getChannelData(0), ...heard.getChannelData(1)]).buffer);
	let text = "";
	for (let i = 0; i < bytes.length; i += 32768) text += String.fromCharCode(...bytes.subarray(i, i + 32768));
	return btoa(text);
})(%g, %s, %g)`

// measured holds once the page has fetched how loud cases are.
const measured = `performance.getEntriesByType("resource").filter((e) => e.name.endsWith("api/loudness")).length >= %d && document.body.dataset.busy === "no"`

// render opens a design's page, sets it up, and returns what it plays.
func render(t *testing.T, text, setUp string, seconds float64, change string, at float64) [2][]float64 {
	t.Helper()
	path := filepath.Join(t.TempDir(), "mine.toml")
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	b := open(t, chrome.ctx, serving(t, path), 1280, 900)
	b.until(fmt.Sprintf(measured, 1))
	b.do(chromedp.Evaluate(setUp, nil), chromedp.Sleep(0))
	b.until(fmt.Sprintf(measured, 2))
	var coded string
	b.do(chromedp.Evaluate(fmt.Sprintf(rendered, seconds, change, at), &coded, func(p *runtime.EvaluateParams) *runtime.EvaluateParams { return p.WithAwaitPromise(true) }))
	raw, err := base64.StdEncoding.DecodeString(coded)
	if err != nil {
		t.Fatal(err)
	}
	all := make([]float64, len(raw)/4)
	for i := range all {
		all[i] = float64(math.Float32frombits(binary.LittleEndian.Uint32(raw[4*i:])))
	}
	b.quiet()
	return [2][]float64{all[:len(all)/2], all[len(all)/2:]}
}

// listened is what the command listen plays of pink noise in a case, matched in loudness with all
// that the page offers.
func listened(t *testing.T, text string, who preview.Listener, name string) [2][]float64 {
	t.Helper()
	d, err := design.Parse("mine.toml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	a, err := layout.Build(d)
	if err != nil {
		t.Fatal(err)
	}
	p, err := timing.Make(context.Background(), a)
	if err != nil {
		t.Fatal(err)
	}
	noise, _ := programme.Named("pink_noise")
	s := &preview.Audition{Plan: &p.Spot, Listener: who, Cases: preview.CasesOf(&p.Spot), Source: preview.FromProgramme(noise)}
	if err := s.Prepare(t.Context()); err != nil {
		t.Fatal(err)
	}
	c, _ := preview.CaseNamed(s.Cases, name)
	var out [2][]float64
	for i := range s.Cases {
		if s.Cases[i] != c {
			continue
		}
		samples := make([][2]float64, 200000)
		n, _ := beep.Take(len(samples), s.Endless(len(s.Cases))[i]).Stream(samples)
		for _, v := range samples[:n] {
			out[0], out[1] = append(out[0], v[0]), append(out[1], v[1])
		}
	}
	return out
}

// TestPageSoundsAsListenDoes: the samples of the page's sound graph are those of the command
// listen, loudness too, within -60 dB, but for how late they come.
func TestPageSoundsAsListenDoes(t *testing.T) {
	chromium(t)
	few := edited(t, upper(map[string]any{}))
	room := strings.Replace(few, "[surface]\nabsorption = 0.1 ", "[room]\nsize_m = [6, 4.5, 2.7]\nbody_at_m = [1.5, 2.2, 1.2]\nabsorption = 0.3 ", 1)
	for _, c := range []struct {
		name, text, chosen string
		who                preview.Listener
	}{
		{"as built", few, "as_built", preview.Listener{}},
		{"aligned, two ears", few, "aligned", preview.Listener{TwoEars: true}},
		{"aligned in a room", room, "aligned", preview.Listener{}},
		{"as built in a room, two ears", room, "as_built", preview.Listener{TwoEars: true}},
		{"aligned without the room", room, "aligned", preview.Listener{Dry: true}},
	} {
		t.Run(c.name, func(t *testing.T) {
			setUp := fmt.Sprintf(`(() => {
				document.querySelector('#cases input[value=%q]').click();
				for (const [id, is] of [["two-ears", %t], ["dry", %t]]) document.getElementById(id).checked = is;
				document.getElementById("dry").dispatchEvent(new Event("change"));
			})()`, c.chosen, c.who.TwoEars, c.who.Dry)
			have, want := render(t, c.text, setUp, 4, "null", 0), listened(t, c.text, c.who, c.chosen)
			const from, n = 96000, 72000 // s 2 to 3.5, after the volume has risen
			late, least := 0, math.Inf(1)
			for k := 300; k < 1500; k++ {
				if off := offBy(have[0][from+k:from+k+2000], want[0][from:from+2000]); off < least {
					late, least = k, off
				}
			}
			for side := range have {
				if db := offBy(have[side][from+late:from+late+n], want[side][from:from+n]); db > -60 {
					t.Errorf("side %d, %d samples late: %.1f dB apart", side, late, db)
				} else {
					t.Logf("side %d, %d samples late: %.1f dB apart", side, late, db)
				}
			}
		})
	}
}

// offBy returns the energy of a difference over that of what is wanted, in dB.
func offBy(have, want []float64) float64 {
	off, all := 0.0, 0.0
	for i, v := range want {
		off += (have[i] - v) * (have[i] - v)
		all += v * v
	}
	return 10 * math.Log10(off/all)
}

// TestPageChangesWithoutAClick: of a sweep, which goes up without a step, no sample is further from
// the one before it while the sound changes than in the moments round that, by more than a sweep
// through a comb swells meanwhile.
func TestPageChangesWithoutAClick(t *testing.T) {
	chromium(t)
	few := edited(t, upper(map[string]any{}))
	for name, change := range map[string]string{
		"nothing":          `() => {}`,
		"another case":     `() => document.getElementById("swap").click()`,
		"a reversed one":   `() => { document.getElementById("desk").click(); document.querySelector('[aria-label="Reverse channel 1"]').click(); }`,
		"one alone":        `() => { document.getElementById("desk").click(); document.querySelector('[aria-label="Solo channel 3"]').click(); }`,
		"a wrong delay":    `() => { document.getElementById("desk").click(); const f = document.querySelector('input[type="range"][aria-label^="Channel 2 "]'); f.value = "1.3"; f.dispatchEvent(new Event("input")); }`,
		"a moved chair":    `() => { const f = document.getElementById("spot-y"); f.value = "-0.5"; f.dispatchEvent(new Event("input", {bubbles: true})); }`,
		"another ear":      `() => document.getElementById("two-ears").click()`,
		"a walk to a side": `() => document.getElementById("walk").click()`,
	} {
		t.Run(name, func(t *testing.T) {
			have := render(t, few, `(() => { const f = document.getElementById("programme"); f.value = "sweep"; f.dispatchEvent(new Event("change")); })()`, 3, change, 2.2)
			step := func(from, to float64) float64 {
				most := 0.0
				for i := int(from * 48000); i < int(to*48000); i++ {
					most = max(most, math.Abs(have[0][i]-have[0][i-1]))
				}
				return most
			}
			around := max(step(1.9, 2.19), step(2.4, 2.6))
			if change := step(2.19, 2.4); change > 1.25*around || change == 0 {
				t.Errorf("a step of %.5f where it changes, at most %.5f round that", change, around)
			} else {
				t.Logf("a step of %.5f where it changes, at most %.5f round that", change, around)
			}
		})
	}
}
