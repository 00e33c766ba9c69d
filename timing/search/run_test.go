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

	"pappus/layout"
	"pappus/layout/design"
	"pappus/timing"
	"pappus/timing/search"
	"pappus/timing/search/pareto"

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
		d, err := design.Parse("found.toml", f.Text)
		if err != nil {
			t.Fatal(err)
		}
		a, err := layout.Build(d)
		if err != nil {
			t.Fatal(err)
		}
		p, err := timing.Make(t.Context(), a)
		if err != nil {
			t.Fatal(err)
		}
		if f.Loss != p.Aligned.Loss || f.Level != p.Loudest || f.Onset != p.Aligned.CombOnset || f.Evenness != p.Unevenness() || f.Drivers != len(a.Mounts) {
			t.Errorf("%s: %+v, planned %+v and %v dB", f.Name, f.Figures, p.Aligned, p.Loudest)
		}
		if slices.ContainsFunc(p.Warnings, func(w timing.Finding) bool { return w.Rank.Stops() }) {
			t.Errorf("%s: %+v", f.Name, p.Warnings)
		}
		if _, err := a.Segments(); err != nil {
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

// TestLimits: each is kept by all that is found, makes no front better, and is told of where
// nothing keeps it.
func TestLimits(t *testing.T) {
	free := run(t, job(t, ""), nil)
	for _, c := range []struct {
		limit string
		keeps func(f search.Figures) bool
	}{
		{"drivers = 20", func(f search.Figures) bool { return f.Drivers <= 20 }},
		{"least_drivers = 30", func(f search.Figures) bool { return f.Drivers >= 30 }},
		{"width_mm = 210", func(f search.Figures) bool { return f.Width <= 0.21 }},
		{"level_db = 96", func(f search.Figures) bool { return f.Level >= 96 }},
		{"litres_most = 2.5", func(f search.Figures) bool { return f.Litres <= 2.5 }},
		{"lowest_hz = 220", func(f search.Figures) bool { return f.Lowest <= 220 }},
	} {
		t.Run(c.limit, func(t *testing.T) {
			r := run(t, job(t, c.limit), nil)
			if len(r.Found) == 0 {
				t.Fatalf("none found: %+v", r.Short)
			}
			for _, f := range r.Found {
				if !c.keeps(f.Figures) {
					t.Errorf("%s: %+v", f.Name, f.Figures)
				}
			}
			if r.Fit >= free.Fit || len(r.Short) == 0 {
				t.Errorf("%d of %d are fit; %+v", r.Fit, free.Fit, r.Short)
			}
			if covered(r) > covered(free)*(1+1e-9) {
				t.Errorf("covers %v, without the limit %v", covered(r), covered(free))
			}
		})
	}
}

// covered is the hypervolume of what has full figures.
func covered(r *search.Result) float64 {
	var points [][]float64
	for _, p := range r.Tried {
		if p.Full {
			points = append(points, []float64{p.Loss, -p.Level, float64(p.Drivers)})
		}
	}
	return pareto.Hypervolume(points, []float64{10, -60, 130})
}

// TestOutOfReach names the nearest of those that keep all else.
func TestOutOfReach(t *testing.T) {
	r := run(t, job(t, "least_drivers = 80"), nil)
	if len(r.Found) > 0 || len(r.Short) == 0 {
		t.Fatalf("%d found, %+v", len(r.Found), r.Short)
	}
	if s := r.Short[0]; s.Key != "search.least_drivers" || s.Asked != 80 || s.Nearest != 30 || !s.None || s.By.Name == "" {
		t.Errorf("%+v", s)
	}
}

// TestStart: the design given is on the front, or a design found is nowhere worse.
func TestStart(t *testing.T) {
	r := run(t, job(t, ""), nil)
	if r.Start == nil || !r.Start.OnFront && r.Start.Better == 0 && len(r.Start.Broken) == 0 {
		t.Fatalf("%+v", r.Start)
	}
	j := job(t, "")
	j.NoStart = true
	if r := run(t, j, nil); r.Start != nil {
		t.Errorf("%+v", r.Start)
	}
}

// TestLowest: the usual space holds no toys for treble, unless the file says otherwise.
func TestLowest(t *testing.T) {
	for _, c := range []struct {
		name   string
		fs     float64
		woofer bool
		want   float64
	}{
		{"speech", 150, false, 300},
		{"a stiff driver", 400, false, 560},
		{"not known", 0, false, 0},
		{"with a woofer", 150, true, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			d := design.Default()
			d.Driver.Small.Fs, d.Woofer.Present = c.fs, c.woofer
			ctx, stop := context.WithCancel(context.Background())
			stop()
			r, err := search.Run(ctx, search.Job{Design: d, Text: design.DefaultTOML(), NoStart: true}, nil, nil)
			if err != nil {
				t.Fatal(err)
			}
			if math.Abs(r.Lowest-c.want) > 1e-9 {
				t.Errorf("%v Hz, want %v", r.Lowest, c.want)
			}
		})
	}
	if r := run(t, job(t, "lowest_hz = 220"), nil); r.Lowest != 220 {
		t.Errorf("the file's: %v Hz", r.Lowest)
	}
}
