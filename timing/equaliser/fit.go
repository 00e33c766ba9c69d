package equaliser

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"pappus/layout/prose"
	"pappus/layout/solve"
)

// worthwhile is the least part by which one section more must lower the RMS
// error.
const worthwhile = 0.1

// slight is the gain in dB below which a section is dropped again.
const slight = 0.05

// Care is what counts at a frequency.
type Care int8

// How a fit cares for a frequency.
const (
	// Count: the distance from the target counts.
	Count Care = iota
	// CutOnly: so it does, but a target above the level is the level itself, and boost is
	// avoided. That is for the edges of nulls.
	CutOnly
	// Leave: it does not count, boost is avoided, and so is cut that helps nowhere else.
	// That is for nulls that come from timing.
	Leave
)

// Fitted is what a fit ends with.
type Fitted struct {
	Sections []Section // by frequency
	// Before and After are the RMS distance in dB from the target over the frequencies
	// that are not left alone.
	Before, After float64
	// Lift is the mean distance in dB from the target that is left where all counts, if the
	// shape alone is judged; else 0.
	Lift float64
	// Correction is the level in dB that the sections add at each frequency.
	Correction []float64
}

// Fit looks for a few sections at a sampling rate in Hz that bring a level in dB
// closest to a target in dB, in the least squares, at frequencies in Hz that
// rise; those are best spaced evenly on a logarithmic axis, since each counts as
// much as any other. Sections are added while each lowers the RMS error by 10
// percent or more, and by the limits' Worth.
//
// care tells what counts at each frequency; nil: all of it.
//
// The level should be an average over positions around the listening spot, so
// that what is fitted is not one point's accident; where it counts it must be finite, and
// some of it must count, or the error wraps ErrCurve. Fit panics where the lengths differ.
func Fit(frequency, level, target []float64, care []Care, rate float64, l Limits) (Fitted, error) {
	if len(level) != len(frequency) || len(target) != len(frequency) || (care != nil && len(care) != len(frequency)) {
		panic("equaliser: lengths differ")
	}
	if care == nil {
		care = make([]Care, len(frequency))
	}
	open := 0
	for i, c := range care {
		if c == Leave {
			continue
		}
		if open++; !(math.Abs(level[i]-target[i]) <= 1000) {
			return Fitted{}, prose.Errorf("%w: level %g dB at %.4g Hz, target %g dB", ErrCurve, level[i], frequency[i], target[i])
		}
	}
	if open == 0 {
		return Fitted{}, fmt.Errorf("%w: no frequency that counts", ErrCurve)
	}
	g := newGoal(frequency, level, target, care, rate, l)
	var out Fitted
	out.Before = g.rmsOf(nil)
	sections := g.keepBoost(g.prune(g.settle(g.grow())))
	sections = slices.DeleteFunc(sections, func(s Section) bool { return math.Abs(s.Gain) < slight })
	if len(sections) == 0 {
		g.moved = 0
	}
	slices.SortStableFunc(sections, func(a, b Section) int {
		return cmp.Or(cmp.Compare(a.Frequency, b.Frequency), cmp.Compare(a.Shape, b.Shape))
	})
	out.Sections, out.After, out.Correction, out.Lift = sections, g.rmsOf(sections), g.sum, g.moved+g.lift()
	return out, nil
}

// grow adds one section at a time.
func (g *goal) grow() []Section {
	var sections []Section
	best, left := g.cost(sections), g.rmsOf(sections)
	for len(sections) < g.limits.Sections && best > 0 {
		more, found := g.next(sections)
		if !found {
			break
		}
		more = g.together(more)
		cost, rms := g.cost(more), g.rms()
		if cost > best*(1-worthwhile)*(1-worthwhile) || rms > left-g.limits.Worth {
			break
		}
		sections, best, left = more, cost, rms
	}
	return sections
}

// settle moves the target to the level that sections have come to, if the shape alone is
// judged, and refines them for that.
func (g *goal) settle(sections []Section) []Section {
	g.correction(sections)
	if lift := g.lift(); lift != 0 && len(sections) > 0 {
		g.moved = lift
		return g.together(sections)
	}
	return sections
}

// together refines all sections, unless they would then get too close.
func (g *goal) together(sections []Section) []Section {
	if moved := g.refine(sections, 0); g.allow(moved) {
		return moved
	}
	return sections
}

// prune drops sections again, the idlest first, that later ones have left with less to
// do than they must be worth.
func (g *goal) prune(sections []Section) []Section {
	for g.limits.Worth > 0 && len(sections) > 0 {
		var fewer []Section
		least := math.Inf(1)
		for i := range sections {
			without := g.together(slices.Delete(slices.Clone(sections), i, i+1))
			if rms := g.rmsOf(without); rms < least {
				fewer, least = without, rms
			}
		}
		if least >= g.rmsOf(sections)+g.limits.Worth {
			break
		}
		sections = fewer
	}
	return sections
}

// next returns the sections and the one more that helps most beside them; found is
// false where none may be added.
func (g *goal) next(sections []Section) (more []Section, found bool) {
	least := math.Inf(1)
	for _, start := range g.starts(sections) {
		tried := g.refine(append(slices.Clone(sections), start), len(sections))
		if c := g.cost(tried); c < least && g.allow(tried) {
			least, more, found = c, tried, true
		}
	}
	return more, found
}

// starts returns sections to begin from: peaks where the error is largest each
// way, wide and narrow, and the shelves that are not used yet.
func (g *goal) starts(sections []Section) []Section {
	g.correction(sections)
	l := g.limits
	var open []int
	for i, care := range g.care {
		if care != Leave {
			open = append(open, i)
		}
	}
	by := func(i, k int) int { return cmp.Compare(g.error(i), g.error(k)) }
	var out []Section
	for _, i := range []int{slices.MaxFunc(open, by), slices.MinFunc(open, by)} {
		hz := max(l.Low, min(l.High, g.frequency[i]))
		gain := max(-l.Cut, min(l.Boost, -g.error(i)))
		for _, q := range []float64{1, 4} {
			out = append(out, Section{Peaking, hz, max(l.LeastQ, min(l.MostQ, q)), gain})
		}
	}
	for _, shelf := range []struct {
		use   bool
		shape Shape
		share float64 // of the way from Low to High, in log frequency
	}{{l.LowShelf, LowShelf, 0.25}, {l.HighShelf, HighShelf, 0.75}} {
		if shelf.use && !slices.ContainsFunc(sections, func(s Section) bool { return s.Shape == shelf.shape }) {
			hz := l.Low * math.Pow(l.High/l.Low, shelf.share)
			out = append(out, Section{shelf.shape, hz, ShelfQ, 0})
		}
	}
	return out
}

// keepBoost lowers all boosts alike until the sum keeps to the limit too.
func (g *goal) keepBoost(sections []Section) []Section {
	scaled := func(by float64) []Section {
		out := slices.Clone(sections)
		for i := range out {
			if out[i].Gain > 0 {
				out[i].Gain *= by
			}
		}
		return out
	}
	left := func(by float64) float64 {
		g.correction(scaled(by))
		return g.limits.Boost - slices.Max(g.sum)
	}
	if left(1) >= 0 {
		return sections
	}
	const tolerance = 1e-12
	by, _ := solve.Root(left, 0, 1, tolerance)
	return scaled(max(0, by-tolerance))
}
