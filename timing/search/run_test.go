package search_test

import (
	"bytes"
	"context"
	"errors"
	"io"
	"math"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"

	"pappus/layout/design"
	"pappus/timing"
	"pappus/timing/search"

	"pappus/testdata/planned"

	"github.com/google/go-cmp/cmp"
)

// job is a search for balls of even places: 240 candidates, with what is said beside.
func job(t testing.TB, more string) search.Job {
	t.Helper()
	text := design.DefaultTOML()
	for _, s := range []design.Setting{{Key: "mounts.skip"}, {Key: "body.base"}, {Key: "body.subdivision"},
		{Key: "body.shape", Value: "ball"}, {Key: "mounts.on", Value: "even"}, {Key: "mounts.count", Value: 40}} {
		var err error
		if text, err = design.Set(text, s.Key, s.Value); err != nil {
			t.Fatal(err)
		}
	}
	text = append(text, "\n[search]\n"+more+`
[search.body]
radius_mm = [90, 100, 110, 120, 130]
cut_height_mm = [-40, 0]
[search.mounts]
count = [24, 32, 40, 48]
[search.placing]
yaw_deg = [0, 10]
[search.wiring]
channels = [3, 4, 6]
`...)
	d, err := design.Parse("balls.toml", text)
	if err != nil {
		t.Fatal(err)
	}
	return search.Job{Design: d, Text: text, Seed: 1}
}

func run(t testing.TB, j search.Job, notes search.Journal) *search.Result {
	t.Helper()
	r, err := search.Run(context.Background(), j, notes, nil)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// bits is all of a result that people see.
func bits(r *search.Result) any {
	type design struct {
		Name, Text string
		Figures    [16]uint64
		Why        int
	}
	var out []design
	for _, f := range r.Found {
		out = append(out, design{f.Name, string(f.Text), figures(f.Figures), len(f.Why)})
	}
	var tried [][16]uint64
	for _, p := range r.Tried {
		tried = append(tried, figures(p.Figures))
	}
	return []any{out, tried, r.Screened, r.Fit, r.Full, r.Polished}
}

func figures(f search.Figures) [16]uint64 {
	var out [16]uint64
	for i, v := range []float64{f.Loss, f.Level, f.Onset, f.Evenness, f.Lowest, float64(f.Drivers), float64(f.Channels), f.Price,
		f.Plastic, f.Mass, f.Hours, f.Litres, f.Width, f.Height, f.Depth, float64(f.Pieces)} {
		out[i] = math.Float64bits(v)
	}
	return out
}

// TestFound: figures are those of a plan of the design offered, which can be built as it is and
// printed, and no other that was tried beats it.
func TestFound(t *testing.T) {
	r := run(t, job(t, ""), nil)
	if len(r.Found) < 5 || len(r.Found) > 10 || r.Space != 240 || r.Screened != 240 || r.Full != 12 {
		t.Fatalf("%d found, %d of %d screened, %d in full", len(r.Found), r.Screened, r.Space, r.Full)
	}
	random, loudest, quietest := 0, math.Inf(-1), math.Inf(1)
	for _, p := range r.Tried {
		if p.Random {
			random++
		}
		loudest, quietest = max(loudest, p.Level), min(quietest, p.Level)
	}
	if random != 1 || loudest-quietest > 10 || loudest-quietest < 8.5 {
		t.Errorf("%d at random; from %v to %v dB", random, quietest, loudest)
	}
	for _, f := range r.Found {
		p := planned.Text(t, string(f.Text))
		if f.Loss != p.Aligned.Loss || f.Level != p.Loudest || f.Onset != p.Aligned.CombOnset || f.Evenness != p.Unevenness() || f.Drivers != len(p.Array.Mounts) {
			t.Errorf("%s: %+v, planned %+v and %v dB", f.Name, f.Figures, p.Aligned, p.Loudest)
		}
		if slices.ContainsFunc(p.Warnings, func(w timing.Finding) bool { return w.Rank.Stops() }) {
			t.Errorf("%s: %+v", f.Name, p.Warnings)
		}
		if _, err := p.Array.Segments(); err != nil {
			t.Errorf("%s: %v", f.Name, err)
		}
		if !f.Front || len(f.Why) == 0 {
			t.Errorf("%s: %+v", f.Name, f.Why)
		}
		for _, p := range r.Tried {
			if p.Loss <= f.Loss && p.Level >= f.Level && p.Drivers <= f.Drivers && (p.Loss < f.Loss || p.Level > f.Level || p.Drivers < f.Drivers) {
				t.Errorf("%s is beaten by %+v", f.Name, p)
			}
		}
	}
}

// notes is a journal in memory.
func notes(t testing.TB, text string) *os.File {
	t.Helper()
	f, err := os.Create(filepath.Join(t.TempDir(), "notes.csv"))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = f.Close() })
	if _, err := f.WriteString(text); err != nil {
		t.Fatal(err)
	}
	return f
}

func read(t testing.TB, f *os.File) string {
	t.Helper()
	data, err := os.ReadFile(f.Name())
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}

// TestSharesAreOneRun: joined, in any order, on any number of cores.
func TestSharesAreOneRun(t *testing.T) {
	want := bits(run(t, job(t, ""), nil))
	before := runtime.GOMAXPROCS(5)
	defer runtime.GOMAXPROCS(before)
	var parts []io.Reader
	for share := 3; share >= 1; share-- {
		j, n := job(t, ""), notes(t, "")
		j.Share, j.Shares = share, 3
		r := run(t, j, n)
		if !r.Shared || r.Screened != 80 || len(r.Found) > 0 {
			t.Errorf("share %d: %+v", share, r)
		}
		parts = append(parts, strings.NewReader(read(t, n)))
	}
	r, err := search.Join(context.Background(), job(t, ""), parts, nil, nil)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(want, bits(r)); diff != "" {
		t.Error(diff)
	}
	if _, err := search.Join(context.Background(), job(t, ""), []io.Reader{bytes.NewReader(nil)}, nil, nil); !errors.Is(err, search.ErrMissing) {
		t.Errorf("without shares: %v", err)
	}
}

// TestKilledGoesOn: wherever the journal ends.
func TestKilledGoesOn(t *testing.T) {
	whole := notes(t, "")
	want := bits(run(t, job(t, ""), whole))
	text := read(t, whole)
	for _, part := range []float64{0, 0.001, 0.3, 0.7, 0.98, 1} {
		n := notes(t, text[:int(part*float64(len(text)))])
		if diff := cmp.Diff(want, bits(run(t, job(t, ""), n))); diff != "" {
			t.Errorf("from %v: %s", part, diff)
		}
		if got := read(t, n); got != text {
			t.Errorf("from %v the journal is another", part)
		}
	}
	other := job(t, "")
	other.Seed = 2
	if _, err := search.Run(context.Background(), other, notes(t, text), nil); !errors.Is(err, search.ErrJournal) {
		t.Errorf("another seed: %v", err)
	}
	if _, err := search.Run(context.Background(), other, notes(t, "frequency_hz,ohm\n1,2\n"), nil); !errors.Is(err, search.ErrJournal) {
		t.Errorf("another file: %v", err)
	}
}

// TestStoppedKeeps: what was found by then, of each stage.
func TestStoppedKeeps(t *testing.T) {
	for _, stage := range []search.Stage{search.Screening, search.Full, search.Polishing} {
		t.Run(string(stage), func(t *testing.T) {
			j := job(t, "")
			j.Design.Search.Vary[0].Choices = nil
			j.Design.Search.Vary[0].From, j.Design.Search.Vary[0].To = 90, 100
			ctx, stop := context.WithCancel(context.Background())
			r, err := search.Run(ctx, j, nil, func(p search.Progress) {
				if p.Stage == stage {
					stop()
				}
			})
			if err != nil || !r.Stopped && stage != search.Polishing || len(r.Found) == 0 {
				t.Errorf("%+v, %v", r, err)
			}
		})
	}
}
