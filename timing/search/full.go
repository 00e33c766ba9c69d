package search

import (
	"slices"

	"pappus/timing"
	"pappus/timing/search/pareto"
)

// fullAll gives some of the fit their full figures.
func (r *run) fullAll(best, random []int) error {
	return each(r, Full, slices.Concat(best, random), r.fullOf, func(i int, w whole) {
		r.Full++
		r.take(Point{Figures: w.Figures, Random: slices.Contains(random, i), Set: r.space.Variant(w.variant).Settings, Variant: w.variant}, w)
		if _, noted := r.journal.full[w.variant]; !noted {
			r.journal.note("full", w.screened)
		}
	})
}

// whole is a candidate with full figures.
type whole struct {
	screened
	plan *timing.Plan // nil where the figures are the journal's, or it cannot be planned
}

// take takes a point with full figures in, where it breaks no limit.
func (r *run) take(p Point, w whole) {
	if w.Broken != "" {
		r.short.take(w.screened)
	}
	if w.Broken != "" || w.Level < r.least {
		return
	}
	p.Full = true
	r.full = append(r.full, p)
	r.shown.take(r.aimed(w.Figures), w.Figures)
	r.hold(p.Set, r.aimed(w.Figures), w.plan)
}

// fullOf gives one of the fit its full figures, those of its file as it would be offered.
func (r *run) fullOf(i int) whole {
	variant := r.fit[i].variant
	if s, ok := r.journal.full[variant]; ok {
		return whole{s, nil}
	}
	w := r.fullOfSet(r.space.Variant(variant).Settings)
	w.variant = variant
	return w
}

func (r *run) fullOfSet(set []Setting) whole {
	a, err := r.file(set)
	if err != nil {
		return whole{screened{Broken: notBuilt}, nil}
	}
	s, p := r.planned(a)
	return whole{s, p}
}

// front marks which of those with full figures no other beats, and returns them.
func (r *run) front() []int {
	points := make([][]float64, len(r.full))
	for i, p := range r.full {
		points[i] = r.aimed(p.Figures)
	}
	var front []int
	for i, l := range pareto.Layers(points) {
		if r.full[i].Front = l == 0; l == 0 {
			front = append(front, i)
		}
	}
	return front
}

// stand returns those that stand for the front.
func (r *run) stand() []int {
	front := r.front()
	points := make([][]float64, len(front))
	for i, f := range front {
		points[i] = r.aimed(r.full[f].Figures)
	}
	pick := pareto.Pick(points, mostFound)
	for i, p := range pick {
		pick[i] = front[p]
	}
	return pick
}
