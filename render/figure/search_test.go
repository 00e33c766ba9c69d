package figure_test

import (
	"bytes"
	"fmt"
	"image/png"
	"math"
	"strings"
	"testing"

	"pappus/layout/design"
	"pappus/render/figure"
	"pappus/timing/search"
)

// searched is a search of some aims that offers so many designs, all with the demo's plan.
func searched(t testing.TB, offered int, aims ...search.Aim) *search.Result {
	t.Helper()
	d, err := lantern()
	if err != nil {
		t.Fatal(err)
	}
	r := &search.Result{Job: search.Job{Design: design.Default()}, Aims: aims, Space: 400, Screened: 400, Fit: 300, Full: 60}
	for i := range 60 {
		n := 12 + 2*i
		f := search.Figures{Drivers: n, Level: 80 + 20*math.Log10(float64(n)), Loss: float64(n%7) / 3, Evenness: float64(n % 5), Price: math.NaN(), Hours: float64(n) / 4, Litres: float64(n) / 30}
		p := search.Point{Name: fmt.Sprintf("ball of %d mm, %d drivers", 90+i, n), Figures: f, Full: i%3 > 0, Front: i%6 == 1}
		if p.Front && len(r.Found) < offered {
			p.Found = len(r.Found) + 1
			r.Found = append(r.Found, search.Found{Point: p, Plan: d.plan, Why: []search.Reason{{Code: search.OneOf, Value: math.NaN()}}})
		}
		r.Tried = append(r.Tried, p)
	}
	return r
}

// TestSearch: each number and name is in the picture, an axis for each aim, for one aim to four,
// one design to ten; all designs alike and values that are not known do no harm.
func TestSearch(t *testing.T) {
	cases := []struct {
		name    string
		offered int
		aims    []search.Aim
		spoil   func(r *search.Result)
		want    []string
	}{
		{"as usual", 10, []search.Aim{search.Loss, search.Level, search.Cost}, nil,
			[]string{">10<", "Ball of 91 mm", "drivers: fewer are better", "loudest, dB SPL: more is better", "lost by being out of step, dB: less is better"}},
		{"one aim", 3, []search.Aim{search.Drivers}, nil, []string{">3<", "litres inside: less is better"}},
		{"one design", 1, []search.Aim{search.Litres}, nil, []string{">1<", "drivers: fewer"}},
		{"none to be saved", 4, []search.Aim{search.Loss, search.Evenness}, nil, []string{"uneven all round, dB"}},
		{"four", 10, []search.Aim{search.Loss, search.Level, search.Hours, search.Evenness}, nil, []string{"hours of printing", "uneven", "loudest"}},
		{"all alike", 5, []search.Aim{search.Loss, search.Cost}, func(r *search.Result) {
			for i := range r.Found {
				r.Found[i].Figures = r.Found[0].Figures
			}
		}, []string{">5<"}},
		{"no sensitivity", 5, []search.Aim{search.Level, search.Cost}, func(r *search.Result) { r.Job.Design.Driver.Sensitivity = 0 }, []string{"dB over one driver at 1 m"}},
		{"not known", 2, []search.Aim{search.Level, search.Cost}, func(r *search.Result) {
			for i := range r.Found {
				r.Found[i].Level = math.NaN()
			}
		}, []string{"loudest"}},
		{"with the design given", 2, []search.Aim{search.Loss, search.Cost}, func(r *search.Result) {
			r.Start = &search.Start{Figures: search.Figures{Loss: 1, Drivers: 40}}
		}, []string{"the design given"}},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			r := searched(t, c.offered, c.aims...)
			if c.spoil != nil {
				c.spoil(r)
			}
			var b bytes.Buffer
			if err := figure.Search(&b, figure.SVG, r); err != nil {
				t.Fatal(err)
			}
			for _, w := range c.want {
				if !strings.Contains(b.String(), w) {
					t.Errorf("no %q in the picture", w)
				}
			}
			if strings.Contains(b.String(), "NaN") {
				t.Error("it has what is no number")
			}
			b.Reset()
			if err := figure.Search(&b, figure.PNG, r); err != nil {
				t.Fatal(err)
			}
			if _, err := png.Decode(&b); err != nil {
				t.Error(err)
			}
		})
	}
	if err := figure.Search(new(bytes.Buffer), figure.PNG, searched(t, 0, search.Loss)); err == nil {
		t.Error("nothing offered, and no error")
	}
}
