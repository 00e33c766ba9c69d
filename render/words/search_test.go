package words_test

import (
	"math"
	"slices"
	"testing"

	"pappus/layout/design"
	"pappus/render/words"
	"pappus/timing/search"
)

// asked is a search of the demo's driver.
func asked() *search.Result {
	d := design.Default()
	d.Search.Drivers, d.Search.Channels = 120, 6
	return &search.Result{Job: search.Job{Design: d}, Aims: []search.Aim{search.Loss, search.Level, search.Cost}, Space: 4180, Screened: 4180, Fit: 2911, Full: 80, Polished: 7}
}

func TestWhy(t *testing.T) {
	cases := []struct {
		name       string
		why        []search.Reason
		text, file string
	}{
		{"loudest", []search.Reason{{Code: search.Loudest}}, "The loudest", "3_loudest.toml"},
		{"in one piece", []search.Reason{{Code: search.Loudest, Among: search.OnePiece}}, "The loudest that prints in one piece", "3_loudest_in_one_piece.toml"},
		{"of few drivers", []search.Reason{{Code: search.Evenest, Among: search.UpTo, Limit: 40}}, "The evenest all round with up to 40 drivers", "3_evenest_up_to_40.toml"},
		{"two", []search.Reason{{Code: search.LeastLoss}, {Code: search.Smallest}}, "The one most in step and the smallest", "3_least_loss.toml"},
		{"none of its own", []search.Reason{{Code: search.OneOf}}, "Another way between the others", "3_design.toml"},
	}
	for _, c := range cases {
		f := search.Found{Point: search.Point{Found: 3}, Why: c.why}
		if got := words.Why(asked(), f); got != c.text {
			t.Errorf("%s: %q", c.name, got)
		}
		if got := words.FileOf(f); got != c.file {
			t.Errorf("%s: %q", c.name, got)
		}
	}
	for _, code := range []search.Code{search.Loudest, search.LeastLoss, search.Cheapest, search.Evenest, search.Fewest, search.Quickest, search.Smallest, search.Middle, search.OneOf} {
		if words.Why(asked(), search.Found{Why: []search.Reason{{Code: code}}}) == "" {
			t.Errorf("no words for %s", code)
		}
	}
}

// TestWhyOverNext: a design that is first by little says what it has over the next and for what.
func TestWhyOverNext(t *testing.T) {
	r := asked()
	of := func(number, drivers int, loss, level float64, why search.Reason) search.Found {
		return search.Found{Point: search.Point{Found: number, Figures: search.Figures{Drivers: drivers, Loss: loss, Level: level, Price: math.NaN()}}, Why: []search.Reason{why}}
	}
	none := search.Reason{Code: search.OneOf}
	r.Found = []search.Found{of(1, 60, 1.5, 100, search.Reason{Code: search.Middle})}
	if got := words.Why(r, r.Found[0]); got != "The only one that no other beats" {
		t.Error(got)
	}
	r.Found = []search.Found{of(1, 60, 1.5, 100, none), of(2, 31, 1.2, 98.8, search.Reason{Code: search.Loudest, Among: search.UpTo, Limit: 31}), of(3, 30, 0.9, 98.78, none)}
	for i, want := range []string{
		"1.2 dB louder than 2, for 0.30 dB more lost and 29 drivers more",
		"The loudest with up to 31 drivers",
		"0.30 dB less lost and 1 driver fewer than 2",
	} {
		if got := words.Why(r, r.Found[i]); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

func TestSearched(t *testing.T) {
	r := asked()
	r.Tried = []search.Point{{Front: true}, {}, {Front: true}}
	if got := words.Searched(r); got != "Lantern for the story corner: what to build from 120 drivers and 6 channels" {
		t.Error(got)
	}
	if got := words.SearchedHow(r); got != "4180 designs: 2911 can be built and keep all limits, 87 planned in full; no other beats 2 of them in the loss, the loudest level and the drivers at once" {
		t.Error(got)
	}
	r.Job.Design.Search.Channels, r.Screened = 0, 20
	if got := words.Searched(r); got != "Lantern for the story corner: what to build from 120 drivers" {
		t.Error(got)
	}
	if got := words.SearchedHow(r); got[:20] != "20 of 4180 designs: " {
		t.Error(got)
	}
	r.Found = []search.Found{{Point: search.Point{Figures: search.Figures{Price: 300}}}}
	if got := words.AimAxis(r, search.Cost); got != "price: less is better" {
		t.Error(got)
	}
}

func TestNotLookedFor(t *testing.T) {
	r := asked()
	r.Lowest = 300
	if got := words.NotLookedFor(r); got != "Not looked for, as [search] says nothing of it: fewer than 12 drivers, what does not play down to 300 Hz and what is more than 10 dB quieter than the loudest." {
		t.Error(got)
	}
	level := 90.0
	r.Job.Design.Lines, r.Job.Design.Search.Lowest, r.Job.Design.Search.Level = map[string]int{"search.least_drivers": 3}, 200, &level
	if got := words.NotLookedFor(r); got != "" {
		t.Error(got)
	}
}

func TestOutOfReach(t *testing.T) {
	dome := search.Point{Name: "dome of 150 mm, 62 drivers"}
	cases := []struct {
		short search.Shortfall
		want  string
	}{
		{search.Shortfall{Key: "search.least_drivers", Asked: 80, Nearest: 62, By: dome}, "No design of 40 mm flanges takes 80 drivers: 62 are the most, dome of 150 mm, 62 drivers."},
		{search.Shortfall{Key: "search.drivers", Asked: 1, Nearest: 12}, "No design of 40 mm flanges makes do with 1 driver: 12 are the fewest."},
		{search.Shortfall{Key: "search.pieces", Asked: 2, Nearest: 1}, "No design of 40 mm flanges is printed in 2 pieces: 1 is the fewest."},
		{search.Shortfall{Key: "search.width_mm", Asked: 100, Nearest: 181.2}, "No design of 40 mm flanges is at most 100 mm wide: 181.2 mm is the least."},
		{search.Shortfall{Key: "drivers_misfit"}, "Every design of 40 mm flanges that keeps all limits has drivers that do not fit."},
		{search.Shortfall{Key: "search.price", Asked: 100, Nearest: math.NaN()}, "No design of 40 mm flanges costs at most 100."},
	}
	for _, c := range cases {
		c.short.None = true
		r := asked()
		r.Short = []search.Shortfall{c.short}
		if got := words.OutOfReach(r); !slices.Equal(got, []string{c.want}) {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}

func TestOfStart(t *testing.T) {
	r := asked()
	r.Found = []search.Found{{}, {Point: search.Point{Figures: search.Figures{Drivers: 30, Loss: 0.5, Level: 100}}}}
	r.Found[0].Price = math.NaN()
	own := search.Figures{Drivers: 39, Loss: 0.75, Level: 100, Price: math.NaN()}
	r.Found[1].Price = math.NaN()
	cases := []struct {
		name  string
		start *search.Start
		want  string
	}{
		{"none", nil, ""},
		{"on the front", &search.Start{Figures: own, OnFront: true}, "The design given is on the front itself: nothing found is better than it in the loss, the loudest level and the drivers at once."},
		{"beaten", &search.Start{Figures: own, Better: 2}, "Design 2 is nowhere worse than the design given: 0.25 dB less lost and 9 drivers fewer."},
		{"has more", &search.Start{Figures: own, Broken: []search.Shortfall{{Key: "search.channels", Asked: 6, Nearest: 8}}}, "The design given does not keep all limits: it has 8 channels, and 6 are asked."},
		{"breaks a limit", &search.Start{Figures: own, Broken: []search.Shortfall{{Key: "search.width_mm", Asked: 200, Nearest: 300}}}, "The design given does not keep all limits: it has 300 mm, and 200 mm is asked."},
	}
	for _, c := range cases {
		r.Start = c.start
		if got := words.OfStart(r); got != c.want {
			t.Errorf("%s: %q", c.name, got)
		}
	}
}

func TestSearchProgress(t *testing.T) {
	p := search.Progress{Stage: search.Screening, Done: 12345, Of: 98765, Front: 321, Loss: 0.412, Level: 112.34, Drivers: 12}
	got := words.SearchProgress(p)
	if want := "screening 12345 of 98765: front 321, 0.41 dB lost, 112.3 dB"; got != want || len(got) > 60 {
		t.Error(got)
	}
	if p.Front = 0; words.SearchProgress(p) != "screening 12345 of 98765" {
		t.Error(words.SearchProgress(p))
	}
}
