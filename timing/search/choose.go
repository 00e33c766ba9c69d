package search

import (
	"cmp"
	"math"
	"math/rand/v2"
	"slices"

	"pappus/timing/search/pareto"
)

// One candidate in fullPart gets its full figures, but no more than mostFull; of these one in
// randomPart is drawn at random from those whose screening promises nothing. Fronts of three
// aims over 3,000 to 7,000 candidates have 12 to 30 designs, and 200 plans take some ten
// seconds of a core.
const (
	fullPart   = 20
	mostFull   = 200
	randomPart = 10
)

// quieter is how many dB under the loudest found a design may be where the file gives no
// level: half as loud (S. S. Stevens, The measurement of loudness, JASA 27 (1955) 815).
const quieter = 10.0

// floor takes out what is too quiet where the file gives no level.
func (r *run) floor() {
	if r.Job.Design.Search.Level != nil {
		return
	}
	loudest := math.Inf(-1)
	for _, s := range r.fit {
		loudest = max(loudest, s.Level)
	}
	r.least = loudest - quieter
	r.fit = slices.DeleteFunc(r.fit, func(s screened) bool { return s.Level < r.least })
}

// points are the aims of the fit.
func (r *run) points() [][]float64 {
	out := make([][]float64, len(r.fit))
	for i, s := range r.fit {
		out[i] = r.aimed(s.Figures)
	}
	return out
}

// choose returns which of the fit get full figures: by layers of what screening found, and
// some of the rest at random.
func (r *run) choose() (best, random []int) {
	if r.Stopped {
		return pareto.Pick(r.points(), mostFound), nil
	}
	most := min(max(r.Space/fullPart, mostFound), mostFull, len(r.fit))
	layer := pareto.Layers(r.points())
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
