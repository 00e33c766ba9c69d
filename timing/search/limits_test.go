package search_test

import (
	"context"
	"math"
	"testing"

	"pappus/layout/design"
	"pappus/timing/search"
	"pappus/timing/search/pareto"
)

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
