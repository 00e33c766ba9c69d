package search

import (
	"cmp"
	"slices"

	"pappus/timing"
	"pappus/timing/search/pareto"
)

// fullAll gives some of the fit their full figures.
func (r *run) fullAll(best, random []int) error {
	return each(r, Full, slices.Concat(best, random), r.fullOf, func(i int, s screened) {
		r.Full++
		r.take(Point{Figures: s.Figures, Random: slices.Contains(random, i), Set: r.space.Variant(s.variant).Settings, Variant: s.variant}, s)
		if _, noted := r.journal.full[s.variant]; !noted {
			r.journal.note("full", s)
		}
	})
}

// take takes a point with full figures in, where it breaks no limit.
func (r *run) take(p Point, s screened) {
	if s.Broken != "" {
		r.short.take(s)
	}
	if s.Broken != "" || s.Level < r.least {
		return
	}
	p.Full = true
	r.full = append(r.full, p)
	r.shown.take(r.aimed(s.Figures), s.Figures)
}

// fullOf gives one of the fit its full figures, those of its file as it would be offered.
func (r *run) fullOf(i int) screened {
	variant := r.fit[i].variant
	if s, ok := r.journal.full[variant]; ok {
		return s
	}
	s := r.fullOfSet(r.space.Variant(variant).Settings)
	s.variant = variant
	return s
}

func (r *run) fullOfSet(set []Setting) screened {
	_, a, err := r.file(set)
	if err != nil {
		return screened{Broken: notBuilt}
	}
	s, _ := r.planned(a)
	return s
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

// mostFound is how many designs are offered at most: what a table shows at a glance.
const mostFound = 10

// offer picks those that stand for the front, and gives reasons. One whose shell cannot be
// printed after all is left out of the front.
func (r *run) offer() {
	for {
		r.Found = nil
		pick := r.stand()
		slices.SortStableFunc(pick, func(a, b int) int { return cmp.Compare(r.full[b].Level, r.full[a].Level) })
		bad := -1
		for _, i := range pick {
			f, ok := r.offered(&r.full[i])
			if !ok {
				bad = i
				break
			}
			f.Found = len(r.Found) + 1
			r.Found = append(r.Found, f)
		}
		if bad < 0 {
			break
		}
		r.full = slices.Delete(r.full, bad, bad+1)
	}
	for _, f := range r.Found {
		i := slices.IndexFunc(r.full, func(p Point) bool { return keyOf(p.Set) == keyOf(f.Set) && p.Variant == f.Variant })
		r.full[i].Found, r.full[i].Name, r.full[i].Pieces = f.Found, f.Name, f.Pieces
	}
	r.reason()
	r.Tried = append(r.Tried, r.full...)
	r.sample()
}

// offered makes a design of a point; not ok where it cannot be printed within the limits.
func (r *run) offered(p *Point) (f Found, ok bool) {
	text, a, err := r.named(p.Set)
	if err != nil {
		return f, false
	}
	plan, err := timing.Make(r.ctx, a)
	if err != nil {
		return f, false
	}
	segments, err := a.Segments()
	if err != nil {
		return f, false
	}
	f = Found{Point: *p, Text: text, Plan: plan}
	f.Name, f.Pieces = nameOf(a), len(segments.Segments)
	most := r.Job.Design.Search.Pieces
	return f, most == 0 || f.Pieces <= most
}

// mostShown is how many of those screened alone stand in Tried: more are a cloud.
const mostShown = 2000

// sample adds some of those screened alone to what was tried: evenly over the space.
func (r *run) sample() {
	full := map[int]bool{}
	for _, p := range r.full {
		full[p.Variant] = true
	}
	step := max(1, (len(r.fit)+mostShown-1)/mostShown)
	for i := 0; i < len(r.fit); i += step {
		if s := r.fit[i]; !full[s.variant] {
			r.Tried = append(r.Tried, Point{Figures: s.Figures, Set: r.space.Variant(s.variant).Settings, Variant: s.variant})
		}
	}
}
