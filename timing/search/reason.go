package search

import (
	"math"
	"slices"
)

// firsts are the reasons to offer a design, the most telling first, and what each makes small.
var firsts = []struct {
	code Code
	of   func(f Figures) float64
}{
	{Loudest, Level.of}, {LeastLoss, Loss.of}, {Cheapest, Price.of}, {Fewest, Drivers.of}, {Evenest, Evenness.of}, {Smallest, Litres.of}, {Quickest, Hours.of},
}

// mostReasons is how many reasons a sentence bears.
const mostReasons = 3

// reason says why each design found is offered.
func (r *run) reason() {
	for _, f := range firsts {
		r.first(f.code, All, f.of, func(Found) bool { return true }, 0)
	}
	for _, f := range firsts[:2] {
		r.first(f.code, OnePiece, f.of, func(f Found) bool { return f.Pieces == 1 }, 0)
	}
	for i := range r.Found {
		r.reasonUpTo(&r.Found[i])
	}
	r.reasonMiddle()
	for i := range r.Found {
		f := &r.Found[i]
		if len(f.Why) == 0 {
			f.Why = []Reason{{Code: OneOf, Value: math.NaN()}}
		}
		f.Why = f.Why[:min(len(f.Why), mostReasons)]
	}
}

// first gives a reason to the first of a group, where it is not the first of all already.
func (r *run) first(code Code, among Group, of func(f Figures) float64, in func(f Found) bool, limit float64) {
	best, at, others := math.Inf(1), -1, 0
	for i, f := range r.Found {
		if !in(f) {
			continue
		}
		others++
		if v := of(f.Figures); v < best {
			best, at = v, i
		}
	}
	if at < 0 || others < 2 || slices.ContainsFunc(r.Found[at].Why, func(w Reason) bool { return w.Code == code }) {
		return
	}
	if code == Loudest {
		best = -best
	}
	r.Found[at].Why = append(r.Found[at].Why, Reason{code, among, best, limit})
}

// reasonUpTo gives a design that is first by nothing yet a reason among those with as many
// drivers or fewer.
func (r *run) reasonUpTo(f *Found) {
	if len(f.Why) > 0 {
		return
	}
	for _, first := range []int{0, 1, 4} { // loudest, least loss, evenest
		own, best := firsts[first].of(f.Figures), true
		fewer := 0
		for _, g := range r.Found {
			if g.Drivers <= f.Drivers && g.Found != f.Found {
				fewer++
				best = best && firsts[first].of(g.Figures) > own
			}
		}
		if best && fewer > 0 {
			value := own
			if first == 0 {
				value = -own
			}
			f.Why = append(f.Why, Reason{firsts[first].code, UpTo, value, float64(f.Drivers)})
			return
		}
	}
}

// reasonMiddle names the one that is nearest to the best in all aims at once, each over its
// range among those found, where it has no reason yet.
func (r *run) reasonMiddle() {
	low, high := slices.Repeat([]float64{math.Inf(1)}, len(r.Aims)), slices.Repeat([]float64{math.Inf(-1)}, len(r.Aims))
	for _, f := range r.Found {
		for k, v := range r.aimed(f.Figures) {
			low[k], high[k] = min(low[k], v), max(high[k], v)
		}
	}
	best, at := math.Inf(1), -1
	for i, f := range r.Found {
		sum := 0.0
		for k, v := range r.aimed(f.Figures) {
			if high[k] > low[k] {
				part := (v - low[k]) / (high[k] - low[k])
				sum += part * part
			}
		}
		if sum < best {
			best, at = sum, i
		}
	}
	if at < 0 || slices.ContainsFunc(r.Found[at].Why, func(w Reason) bool { return w.Among == All }) {
		return
	}
	r.Found[at].Why = append([]Reason{{Code: Middle, Value: math.NaN()}}, r.Found[at].Why...)
}
