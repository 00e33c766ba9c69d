package main

import (
	"fmt"
	"io"
	"mime/multipart"
	"os"
	"path/filepath"
	"strings"
	"testing"

	sound "pappus/preview/sweep"
	"pappus/render/outdir"
	"pappus/timing"
	"pappus/timing/verdict"

	"github.com/chromedp/chromedp"
)

// rehearsedDemo writes made-up recordings of the demo, with a dead string and a reversed
// channel, and returns their paths.
func rehearsedDemo(t *testing.T) (*timing.Plan, []string) {
	t.Helper()
	p, err := new(flags).planOf(t.Context(), nil, "")
	if err != nil {
		t.Fatal(err)
	}
	s, err := sound.New(p, sound.Options{})
	if err != nil {
		t.Fatal(err)
	}
	folder, files := t.TempDir(), rehearsed(p, s, 0)
	if err := outdir.Write(t.Context(), folder, files, func(string) {}, nil); err != nil {
		t.Fatal(err)
	}
	var paths []string
	for _, f := range files {
		paths = append(paths, filepath.Join(folder, f.Name))
	}
	return p, paths
}

// TestMeasurePage: one recording whatever its name is of the whole array; a channel's name
// in capitals will do; what is no recording is refused by name.
func TestMeasurePage(t *testing.T) {
	t.Parallel()
	p, paths := rehearsedDemo(t)
	open := func(path string) func() (multipart.File, error) {
		return func() (multipart.File, error) { return os.Open(path) }
	}
	v, err := sound.Judge(t.Context(), p, []verdict.Recording{{Name: "Take 3.wav", Open: open(paths[0])}}, timing.Aligned)
	if err != nil || v.Level == nil || v.Channels != nil || len(v.Faults) > 0 || v.Level.Uneven > 1 {
		t.Errorf("one: %+v, %v", v.Faults, err)
	}
	var all []verdict.Recording
	for _, path := range paths {
		all = append(all, verdict.Recording{Name: strings.ToUpper(filepath.Base(path)), Open: open(path)})
	}
	if v, err = sound.Judge(t.Context(), p, all, timing.Aligned); err != nil || v.Channels == nil || len(v.Faults) != 2 {
		t.Errorf("all: %+v, %v", v.Channels, err)
	}
	// Of channels that are missing, or of files that cannot be read, nothing is told; of the rest it is.
	some := append([]verdict.Recording{{Name: "channel_4.wav", Open: text("no sound")}}, all[1:4]...)
	v, err = sound.Judge(t.Context(), p, some, timing.Aligned)
	if err != nil || v.Channels == nil || !v.Channels.Channels[3].Missing || v.Channels.Channels[2].Missing || v.Faults[len(v.Faults)-2].Code != verdict.NoRecording {
		t.Errorf("some: %+v, %v", v.Channels, err)
	}
	for _, test := range []struct {
		name  string
		files []verdict.Recording
		want  string
	}{
		{"noise", []verdict.Recording{{Name: "x.wav", Open: text("no sound at all")}}, "all.wav"},
		{"others", []verdict.Recording{{Name: "one.wav"}, {Name: "two.wav"}}, "has neither all.wav nor channel_1.wav"},
	} {
		if _, err := sound.Judge(t.Context(), p, test.files, timing.Aligned); err == nil || !strings.Contains(err.Error(), test.want) {
			t.Errorf("%s: %v, want %q", test.name, err, test.want)
		}
	}
}

// TestPageMeasures: recordings that are chosen on the page name both faults, and the
// measured level is drawn until it is put away.
func TestPageMeasures(t *testing.T) {
	ctx := chromium(t)
	_, paths := rehearsedDemo(t)
	address, _ := servedDemo(t)
	b := open(t, ctx, address, 1280, 900)
	b.do(chromedp.SetUploadFiles("#recordings", paths, chromedp.ByQuery))
	b.until(`document.querySelector("#built-found table") !== null`)
	found := b.text("#built-found")
	for _, want := range []string{"Channel 1: string 3 of 3 does not play", "Channel 8 is in reverse polarity", "differ from the plan by"} {
		if !strings.Contains(found, want) {
			t.Errorf("no %q in %q", want, found)
		}
	}
	if rows := b.number(`document.querySelectorAll("#built-found tbody tr").length`); rows != 8 {
		t.Errorf("%g channels", rows)
	}
	if key := b.text("#response-key"); !strings.Contains(key, "measured") {
		t.Errorf("the key says %q", key)
	}
	b.do(chromedp.Click("#unmeasure"))
	b.until(`document.getElementById("built-found").textContent === ""`)
	b.quiet()

	text := filepath.Join(t.TempDir(), "notes.wav")
	if err := os.WriteFile(text, []byte("none"), 0o600); err != nil {
		t.Fatal(err)
	}
	b.do(chromedp.SetUploadFiles("#recordings", []string{text}, chromedp.ByQuery))
	b.until(`document.querySelector("#built-found .fault") !== null`)
	if words := b.text("#built-found .fault"); !strings.HasPrefix(words, "Not measured: all.wav") {
		t.Errorf("it says %q", words)
	}
	b.quiet(fmt.Sprint(400))
}

// text opens what is no recording.
func text(words string) func() (multipart.File, error) {
	return func() (multipart.File, error) {
		return struct {
			*strings.Reader
			io.Closer
		}{strings.NewReader(words), io.NopCloser(nil)}, nil
	}
}
