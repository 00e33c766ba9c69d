package search

import (
	"cmp"
	"math"
	"math/rand/v2"
	"slices"

	"pappus/timing/search/pareto"
)

// One candidate in fullPart gets its full figures, but no more than mostFull, and of these one
// in randomPart is drawn at random from those whose screening promises nothing.
const (
	fullPart   = 20
	mostFull   = 200
	leastFull  = 20
	randomPart = 10
)

// limitsOf returns what a design's search must keep.
func limitsOf(job Job) limits {
	return limits{aims: []Aim{Loss, Level, Cost}, most: 120, least: 12, level: math.NaN()}
}

// floors takes out what is too quiet.
func (r *run) floors() {
	l := &r.limits
	if l.floor = l.level; math.IsNaN(l.level) {
		loudest := math.Inf(-1)
		for _, s := range r.fit {
			loudest = max(loudest, s.Level)
		}
		l.floor = loudest - floorUnderLoudest
	}
	r.fit = slices.DeleteFunc(r.fit, func(s screened) bool { return s.Level < l.floor })
}

// choose returns which of the fit get full figures: by layers of what screening found, within a
// layer the first by what stands for it; and some at random, which are told apart.
func (r *run) choose() (best, random []int) {
	most := min(max(r.Space/fullPart, leastFull), mostFull, len(r.fit))
	points := make([][]float64, len(r.fit))
	for i, s := range r.fit {
		points[i] = r.aimed(s.Figures)
	}
	layer := pareto.Layers(points)
	order := make([]int, len(r.fit))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(layer[a], layer[b]) })
	drawn := most / randomPart
	best = order[:most-drawn]
	rest := slices.Clone(order[most-drawn:])
	rng := rand.New(rand.NewPCG(r.Job.Seed, 0))
	rng.Shuffle(len(rest), func(i, j int) { rest[i], rest[j] = rest[j], rest[i] })
	return best, rest[:min(drawn, len(rest))]
}
