package search

import (
	"slices"

	"pappus/layout"
)

// begin takes the design given in among those with full figures, where it is one.
func (r *run) begin() error {
	if r.Job.NoStart {
		return nil
	}
	a, err := byBall(layout.Build(r.Job.Design))
	if err != nil {
		return nil // a design that cannot be built may still say what to search
	}
	s, p := r.planned(a)
	if p == nil {
		return nil
	}
	r.Start = &Start{Figures: s.Figures, Broken: r.broken(s)}
	if s.Broken == "" && s.Level >= r.least {
		r.full = append(r.full, Point{Figures: s.Figures, Full: true, Variant: -1})
		r.hold(nil, r.aimed(s.Figures), p)
	}
	return nil
}

// stands says how the design given stands against what was found.
func (r *run) stands() {
	if r.Start == nil {
		return
	}
	own := r.aimed(r.Start.Figures)
	r.Start.OnFront = !slices.ContainsFunc(r.full, func(p Point) bool {
		return beats(r.aimed(p.Figures), own)
	})
	if r.Start.OnFront {
		return
	}
	if i := slices.IndexFunc(r.Found, func(f Found) bool { return noWorse(r.aimed(f.Figures), own) }); i >= 0 {
		r.Start.Better = i + 1
	}
}
