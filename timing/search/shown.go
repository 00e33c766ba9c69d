package search

import (
	"math"
	"slices"
)

// shown is the front as it grows, for progress.
type shown struct {
	front   [][]float64
	loss    float64
	level   float64
	drivers int
}

// take takes a candidate in.
func (s *shown) take(p []float64, f Figures) {
	if s.drivers == 0 {
		s.loss, s.level, s.drivers = f.Loss, f.Level, f.Drivers
	}
	s.loss, s.level, s.drivers = min(s.loss, f.Loss), max(s.level, f.Level), min(s.drivers, f.Drivers)
	if slices.ContainsFunc(s.front, func(q []float64) bool { return noWorse(q, p) }) {
		return
	}
	s.front = append(slices.DeleteFunc(s.front, func(q []float64) bool { return noWorse(p, q) }), p)
}

// noWorse tells whether p is nowhere greater than q.
func noWorse(p, q []float64) bool {
	for i := range p {
		if !(p[i] <= q[i]) {
			return false
		}
	}
	return true
}

// beats tells whether p is nowhere greater than q, and somewhere less.
func beats(p, q []float64) bool { return noWorse(p, q) && !noWorse(q, p) }

func (s *shown) progress(stage Stage, done, of int) Progress {
	p := Progress{Stage: stage, Done: done, Of: of, Front: len(s.front), Loss: s.loss, Level: s.level, Drivers: s.drivers}
	if s.drivers == 0 {
		p.Loss, p.Level = math.NaN(), math.NaN()
	}
	return p
}
