package proof

import (
	"bytes"
	"context"
	"io"
	"slices"
	"testing"

	"pappus/layout/design"
	"pappus/timing/search"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

// little is a part of the bodies that is searched in a second.
func little(t testing.TB) *space {
	s := readSpace(t, "bodies").only("placing.yaw_deg", 0).only("body.radius_mm", 90, 120).only("body.cut_height_mm", -30, 0)
	return s.only("body.shape", "dodecahedron", "icosahedron", "truncated icosahedron", "rhombicosidodecahedron")
}

func run(t testing.TB, ctx context.Context, job search.Job, j *memory, tell func(search.Progress)) *search.Result {
	r, err := search.Run(ctx, job, j, tell)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// same tells where two results are not the same to the bit. The job's share may differ.
func same(a, b *search.Result) string {
	x, y := *a, *b
	x.Job, y.Job = search.Job{}, search.Job{}
	bare := func(in []search.Found) (out []search.Found) {
		for _, f := range in {
			f.Plan = nil // made of the text alone
			out = append(out, f)
		}
		return out
	}
	x.Found, y.Found = bare(x.Found), bare(y.Found)
	return cmp.Diff(x, y, cmpopts.EquateNaNs())
}

// A run in shares that are joined, in any order, is one run to the bit; so is one that was
// killed anywhere and goes on from its journal, its last line whole or not.
func TestSharesAndKilledRunsAreOneRun(t *testing.T) {
	job, whole := little(t).job(t, 3), &memory{}
	want := run(t, context.Background(), job, whole, nil)
	if len(want.Found) < 3 {
		t.Fatalf("only %d found", len(want.Found))
	}
	var parts []io.Reader
	for _, share := range []int{2, 3, 1} {
		job, part := job, &memory{}
		job.Share, job.Shares = share, 3
		if r := run(t, context.Background(), job, part, nil); !r.Shared || len(r.Found) > 0 {
			t.Errorf("share %d: shared %v, %d found", share, r.Shared, len(r.Found))
		}
		parts = append(parts, bytes.NewReader(part.data))
	}
	joined, err := search.Join(context.Background(), job, parts, &memory{}, nil)
	if err != nil {
		t.Fatal(err)
	}
	if diff := same(want, joined); diff != "" {
		t.Errorf("joined (+) and one run (-): %s", diff)
	}
	for _, part := range []float64{0.001, 0.3, 0.77, 0.999} {
		killed := &memory{data: slices.Clone(whole.data[:int(part*float64(len(whole.data)))])}
		if diff := same(want, run(t, context.Background(), job, killed, nil)); diff != "" {
			t.Errorf("killed after %v of its journal (+) and one run (-): %s", part, diff)
		}
	}
}

// Where a run is stopped it keeps what it has, and goes on from there to the same end.
func TestStopKeepsWhatWasFound(t *testing.T) {
	job := little(t).job(t, 1)
	stages := map[search.Stage]int{}
	want := run(t, context.Background(), job, &memory{}, func(p search.Progress) { stages[p.Stage]++ })
	for stage := range stages {
		j := &memory{}
		ctx, stop := context.WithCancel(context.Background())
		r := run(t, ctx, job, j, func(p search.Progress) {
			if p.Stage == stage {
				stop()
			}
		})
		if diff := same(want, r); !r.Stopped && diff != "" {
			t.Errorf("%s: not stopped, and not all that there is: %s", stage, diff)
		}
		if stage != search.Screening && len(r.Found) == 0 {
			t.Errorf("%s: nothing found", stage)
		}
		if len(j.lines()) == 0 {
			t.Errorf("%s: nothing kept", stage)
		}
		if diff := same(want, run(t, context.Background(), job, j, nil)); diff != "" {
			t.Errorf("%s: gone on from there (+) and one run (-): %s", stage, diff)
		}
	}
}

// A wider limit never makes the front worse: for each design with full figures within the
// narrow one there is one in the wide that is nowhere worse.
func TestWiderLimitIsNeverWorse(t *testing.T) {
	s := little(t)
	for key, limits := range map[string][]any{
		"search.drivers":     {20, 32, 60},
		"search.litres_most": {2.5, 4, 20},
	} {
		var before [][]float64
		for _, limit := range limits {
			r := run(t, context.Background(), s.limit("search.level_db", 80).limit(key, limit).job(t, 1), &memory{}, nil)
			now := found(r)
			for _, p := range before {
				if shareOf([][]float64{p}, now) == 0 {
					t.Errorf("%s = %v: nothing as good as %v", key, limit, p)
				}
			}
			if before = before[:0]; len(now) == 0 {
				t.Errorf("%s = %v: nothing found", key, limit)
			}
			for _, f := range r.Found {
				before = append(before, []float64{f.Loss, -f.Level, float64(f.Drivers)})
			}
		}
	}
}

// Each design offered is planned as it is told, from its own text, and none of those tried in
// full beats it.
func TestOfferedPlanAsTold(t *testing.T) {
	s := little(t)
	r := run(t, context.Background(), s.job(t, 2), &memory{}, nil)
	all := found(r)
	for _, f := range r.Found {
		d, err := design.Parse("found.toml", f.Text)
		if err != nil {
			t.Fatal(f.Name, err)
		}
		got := planned(d, err)
		if got.whyNot != "" || got.loss != f.Loss || got.level != f.Level || got.drivers != f.Drivers {
			t.Errorf("%s: told %v dB, %v dB, %d drivers; planned %+v", f.Name, f.Loss, f.Level, f.Drivers, got)
		}
		for _, p := range all {
			if q := got.point(); noWorse(p, q) && !noWorse(q, p) {
				t.Errorf("%s: %v is beaten by %v", f.Name, q, p)
			}
		}
	}
}

// The demo as a start: something found is nowhere worse, or it is on the front itself.
func TestDemoAsStart(t *testing.T) {
	s := readSpace(t, "even").only("placing.yaw_deg", 0).only("wiring.channels", 6, 8).only("body.cut_height_mm", 0).only("body.radius_mm", 110, 130, 150)
	s.base = append(design.DefaultTOML(), '\n')
	text := s.text()
	d, err := design.Parse("demo.toml", text)
	if err != nil {
		t.Fatal(err)
	}
	r := run(t, context.Background(), search.Job{Design: d, Text: text, Seed: 1}, &memory{}, nil)
	if r.Start == nil {
		t.Fatal("nothing said of the start")
	}
	at := []float64{r.Start.Loss, -r.Start.Level, float64(r.Start.Drivers)}
	beaten := slices.ContainsFunc(found(r), func(p []float64) bool { return noWorse(p, at) && !noWorse(at, p) })
	if r.Start.OnFront == beaten {
		t.Errorf("on the front: %v, and beaten: %v", r.Start.OnFront, beaten)
	}
	if !r.Start.OnFront && r.Start.Better == 0 {
		t.Errorf("neither on the front, nor anything named that is nowhere worse: %+v", r.Start)
	}
	if n := r.Start.Better; n > 0 {
		f := r.Found[n-1]
		if p := []float64{f.Loss, -f.Level, float64(f.Drivers)}; !noWorse(p, at) {
			t.Errorf("design %d is told to be nowhere worse: %v against %v", n, p, at)
		}
	}
}
