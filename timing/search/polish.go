package search

import (
	"cmp"
	"math"
	"slices"

	"pappus/timing"
	"pappus/timing/search/pareto"
)

// Polishing goes on from those that stand for the front with steps of a part of a knob's own
// step, until none makes them better: down to a hundredth of a radius, a degree, a millimetre,
// which is what can be built. What is found on the way, and no other beats, gets full figures,
// mostPolished at most.
var polishSteps = []float64{8, 4, 2, 1}

const (
	mostAgain    = 4 // steps of one length in a row
	mostPolished = 20
	mostEmpty    = 4 // places that are tried to be left empty, each alone: the quietest
)

// knob is a key that polishing may turn.
type knob struct {
	key       string
	step      func(now float64) float64
	unit      float64 // to which values are rounded
	from, to  float64
	onlyGiven bool // turned only where the design has the key
}

// knobs lists what may be polished: ranges that the design gives, or in the usual space the
// radius, the cut and the turn.
func (r *run) knobs() (out []knob) {
	vary := r.Job.Design.Search.Vary
	if len(vary) == 0 {
		even := func(float64) float64 { return 1 }
		return []knob{
			{"body.radius_mm", func(now float64) float64 { return now / 100 }, 0.5, 1, math.Inf(1), false},
			{"body.cut_height_mm", even, 0.5, math.Inf(-1), math.Inf(1), true},
			{"placing.yaw_deg", even, 1, -180, 180, false},
		}
	}
	for _, v := range vary {
		if v.Choices == nil && !v.Whole && v.Step == 0 {
			span := v.To - v.From
			unit := math.Pow(10, math.Floor(math.Log10(span))-3)
			out = append(out, knob{v.Key, func(float64) float64 { return span / 200 }, unit, v.From, v.To, false})
		}
	}
	return out
}

// turned returns settings with a knob turned by so many of its steps; false where that changes
// nothing, or the knob is not there.
func (r *run) turned(k knob, set []Setting, steps float64) ([]Setting, bool) {
	d, err := r.Job.Design.With(set...)
	if err != nil {
		return nil, false
	}
	now, is := d.Get(k.key).(float64)
	if !is && k.onlyGiven {
		return nil, false
	}
	v := math.Round((now+steps*k.step(now))/k.unit) * k.unit
	if v = min(max(v, k.from), k.to); v == now {
		return nil, false
	}
	return setTo(set, k.key, v), true
}

// polished is what was found from one design, by settings: figures as screening has them.
type polished struct {
	set []Setting
	screened
}

// polish turns knobs of those that stand for the front.
func (r *run) polish() error {
	knobs := r.knobs()
	list := slices.DeleteFunc(r.stand(), func(i int) bool { return r.full[i].Set == nil })
	if len(knobs) == 0 {
		return nil
	}
	var found []polished
	err := each(r, Polishing, list, func(i int) []polished { return r.better(knobs, r.full[i]) },
		func(_ int, some []polished) { found = append(found, some...) })
	if err != nil || r.Stopped {
		return err
	}
	return r.fullOfPolished(r.worth(found))
}

// better turns knobs of a point while that makes it better, and returns all that was tried.
func (r *run) better(knobs []knob, p Point) (tried []polished) {
	best := polished{p.Set, r.judge(p.Set)}
	try := func(set []Setting) bool {
		if r.ctx.Err() != nil {
			return false
		}
		next := polished{set, r.judge(set)}
		if next.Broken != "" {
			return false
		}
		tried = append(tried, next)
		if beats(r.aimed(next.Figures), r.aimed(best.Figures)) {
			best = next
			return true
		}
		return false
	}
	for _, steps := range polishSteps {
		for _, k := range knobs {
			for _, way := range []float64{-1, 1} {
				for range mostAgain {
					if set, ok := r.turned(k, best.set, way*steps); !ok || !try(set) {
						break
					}
				}
			}
		}
	}
	for _, set := range r.emptied(best.set) {
		try(set)
	}
	return tried
}

// emptied returns settings with one place more left empty: of the usual space alone, whose
// places are all taken.
func (r *run) emptied(set []Setting) (out [][]Setting) {
	if len(r.Job.Design.Search.Vary) > 0 {
		return nil
	}
	a, err := r.array(set)
	if err != nil {
		return nil
	}
	p, err := timing.Sketch(r.ctx, a)
	if err != nil {
		return nil
	}
	order := make([]int, len(p.Arrivals))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(i, j int) int { return cmp.Compare(p.Arrivals[i].Level, p.Arrivals[j].Level) })
	for _, m := range order[:min(mostEmpty, len(order))] {
		out = append(out, setTo(set, "mounts.skip", []any{a.Mounts[m].ID}))
	}
	return out
}

// worth returns what of some no other beats, of these and those with full figures, the few that
// stand for it.
func (r *run) worth(found []polished) []polished {
	points := make([][]float64, len(found))
	for i, p := range found {
		points[i] = r.aimed(p.Figures)
	}
	for _, p := range r.full {
		points = append(points, r.aimed(p.Figures))
	}
	layer, seen := pareto.Layers(points), map[string]bool{}
	var out []polished
	for i, p := range found {
		known := slices.ContainsFunc(points[len(found):], func(q []float64) bool { return noWorse(q, points[i]) })
		if key := keyOf(p.set); layer[i] == 0 && !known && !seen[key] {
			seen[key] = true
			out = append(out, p)
		}
	}
	points = points[:0]
	for _, p := range out {
		points = append(points, r.aimed(p.Figures))
	}
	var few []polished
	for _, i := range pareto.Pick(points, mostPolished) {
		few = append(few, out[i])
	}
	return few
}

// fullOfPolished gives those polished their full figures.
func (r *run) fullOfPolished(some []polished) error {
	list := make([]int, len(some))
	for i := range list {
		list[i] = i
	}
	return each(r, Polishing, list, func(i int) whole { return r.fullOfSet(some[i].set) }, func(i int, w whole) {
		r.Polished++
		r.take(Point{Figures: w.Figures, Set: some[i].set, Variant: -1}, w)
	})
}
