package search

import (
	"cmp"
	"context"
	"slices"

	"pappus/timing"
	"pappus/timing/cores"
)

// mostFound is how many designs are offered at most: what a table shows at a glance.
const mostFound = 10

// offer picks those that stand for the front, and gives reasons. One whose shell cannot be
// printed after all is left out of the front.
func (r *run) offer() {
	for {
		r.Found = nil
		pick := r.stand()
		slices.SortStableFunc(pick, func(a, b int) int { return cmp.Compare(r.full[b].Level, r.full[a].Level) })
		r.printable(pick)
		bad := -1
		for _, i := range pick {
			o := r.known[keyOf(r.full[i].Set)]
			if o == nil {
				bad = i
				break
			}
			f := Found{Point: r.full[i], Text: o.text, Plan: o.plan}
			f.Name, f.Pieces, f.Found = nameOf(o.plan.Array), o.pieces, len(r.Found)+1
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

// offered is what is made of a point that is offered.
type offered struct {
	text   []byte
	plan   *timing.Plan
	pieces int
}

// printable makes what is not known yet of points of those with full figures, on all cores; nil
// where one cannot be printed within the limits.
func (r *run) printable(points []int) {
	var keys []string
	var sets [][]Setting
	for _, i := range points {
		key := keyOf(r.full[i].Set)
		if _, is := r.known[key]; !is {
			r.known[key] = nil
			keys, sets = append(keys, key), append(sets, r.full[i].Set)
		}
	}
	made := make([]*offered, len(sets))
	cores.Each(len(sets), func(_, i int) { made[i] = r.offered(sets[i]) })
	for i, key := range keys {
		r.known[key] = made[i]
	}
}

// foresee makes what would be offered if the search were stopped now, which then soon ends: cutting
// ten shells takes longer than all else that follows.
func (r *run) foresee() {
	ctx := r.ctx
	r.ctx = context.WithoutCancel(ctx)
	r.printable(r.stand())
	r.ctx = ctx
}

// offered makes a design of settings; nil where it cannot be printed within the limits.
func (r *run) offered(set []Setting) *offered {
	plan := r.planOf(set)
	if plan == nil {
		return nil
	}
	text, err := r.named(set, plan.Array)
	if err != nil {
		return nil
	}
	segments, err := plan.Array.Segments()
	if most := r.Job.Design.Search.Pieces; err != nil || most > 0 && len(segments.Segments) > most {
		return nil
	}
	return &offered{text, plan, len(segments.Segments)}
}

// planOf is the plan of settings, which may be held; nil where there is none.
func (r *run) planOf(set []Setting) *timing.Plan {
	if i := slices.IndexFunc(r.held, func(h held) bool { return h.key == keyOf(set) }); i >= 0 {
		return r.held[i].plan
	}
	return r.fullOfSet(set).plan
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

// held is the plan of a design with full figures that no other beats, which need not be made again
// when it is offered: so a search that is stopped soon ends.
type held struct {
	key   string // of its settings
	aimed []float64
	plan  *timing.Plan
}

// hold keeps a plan until another beats it.
func (r *run) hold(set []Setting, aimed []float64, plan *timing.Plan) {
	if plan == nil || slices.ContainsFunc(r.held, func(h held) bool { return beats(h.aimed, aimed) }) {
		return
	}
	r.held = slices.DeleteFunc(r.held, func(h held) bool { return beats(aimed, h.aimed) })
	r.held = append(r.held, held{keyOf(set), aimed, plan})
}
