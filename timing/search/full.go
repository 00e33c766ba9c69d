package search

import (
	"context"
	"math"
	"slices"

	"pappus/timing/search/pareto"
)

// fullAll gives the best of the fit, and some at random, their full figures.
func (r *run) fullAll() error {
	best, random := r.choose()
	list := slices.Concat(best, random)
	isRandom := map[int]bool{}
	for _, i := range random {
		isRandom[i] = true
	}
	return each(r, Full, list, r.fullOf, func(i int, s screened) error {
		if r.Full++; s.Broken == "" {
			set := r.space.at(s.variant)
			r.full = append(r.full, Point{Figures: s.Figures, Full: true, Random: isRandom[i], Set: set, Variant: s.variant})
			r.shown.take(r.aimed(s.Figures), s.Figures)
		}
		r.journal.note("full", s)
		return nil
	})
}

// fullOf gives one of the fit its full figures.
func (r *run) fullOf(i int) screened {
	variant := r.fit[i].variant
	if s, ok := r.journal.full[variant]; ok {
		return s
	}
	out := screened{variant: variant}
	a, text, err := r.space.array(r.space.at(variant))
	if err != nil {
		out.Broken = "cannot_be_built"
		return out
	}
	out.Figures, _, out.Broken = r.made(r.ctx, text, a)
	return out
}

// front marks which of those with full figures no other beats.
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

// mostFound is how many designs are offered at most: what a table shows at a glance.
const mostFound = 10

// offer picks those that stand for the front, and gives reasons.
func (r *run) offer() error {
	front := r.front()
	points := make([][]float64, len(front))
	for i, f := range front {
		points[i] = r.aimed(r.full[f].Figures)
	}
	pick := pareto.Pick(points, mostFound)
	slices.SortStableFunc(pick, func(a, b int) int {
		return compareLevel(r.full[front[a]].Figures, r.full[front[b]].Figures)
	})
	for n, i := range pick {
		p := &r.full[front[i]]
		p.Found = n + 1
		a, text, err := r.space.array(p.Set)
		if err != nil {
			return err
		}
		_, plan, _ := r.made(context.WithoutCancel(r.ctx), text, a)
		p.Name = r.space.name(a)
		r.Found = append(r.Found, Found{Point: *p, Text: text, Plan: plan})
	}
	r.reason()
	r.Tried = append(r.Tried, r.full...)
	r.sample()
	return nil
}

func compareLevel(a, b Figures) int {
	switch {
	case a.Level > b.Level:
		return -1
	case a.Level < b.Level:
		return 1
	}
	return 0
}

// mostShown is how many of those screened alone stand in Tried: more are a cloud.
const mostShown = 2000

// sample adds some of those screened alone to what was tried: evenly over the space.
func (r *run) sample() {
	step := max(1, (len(r.fit)+mostShown-1)/mostShown)
	for i := 0; i < len(r.fit); i += step {
		s := r.fit[i]
		r.Tried = append(r.Tried, Point{Figures: s.Figures, Set: r.space.at(s.variant), Variant: s.variant})
	}
}

// reason says why each design found is offered.
func (r *run) reason() {
	first := func(code Code, less func(f Figures) float64) {
		best, at := math.Inf(1), -1
		for i, f := range r.Found {
			if v := less(f.Figures); v < best {
				best, at = v, i
			}
		}
		if at >= 0 {
			r.Found[at].Why = append(r.Found[at].Why, Reason{Code: code, Value: math.Abs(best)})
		}
	}
	first(Loudest, Level.of)
	first(LeastLoss, Loss.of)
	first(Cheapest, Cost.of)
	first(Fewest, Drivers.of)
	first(Evenest, Evenness.of)
	for i := range r.Found {
		if len(r.Found[i].Why) == 0 {
			r.Found[i].Why = []Reason{{Code: OneOf, Value: math.NaN()}}
		}
	}
}
