package equaliser

import (
	"cmp"
	"fmt"
	"math"
	"slices"
)

// worthwhile is the least part by which one section more must lower the RMS
// error.
const worthwhile = 0.1

// slight is the gain in dB below which a section is dropped again.
const slight = 0.05

// Fitted is what a fit ends with.
type Fitted struct {
	Sections []Section // by frequency
	// Before and After are the RMS distance in dB from the target at the
	// frequencies that are not left alone.
	Before, After float64
	// Correction is the level in dB that the sections add at each frequency.
	Correction []float64
}

// Fit looks for a few sections at a sampling rate in Hz that bring a level in dB
// closest to a target in dB, in the least squares, at frequencies in Hz that
// rise; those are best spaced evenly on a logarithmic axis, since each counts as
// much as any other. Sections are added while each lowers the RMS error by 10
// percent or more.
//
// Where leave is true the distance from the target does not count, boost is
// avoided, and so is cut that helps nowhere else: that is for nulls that come from
// timing. leave may be nil.
//
// The level should be an average over positions around the listening spot, so
// that what is fitted is not one point's accident. Errors wrap ErrCurve or
// ErrLimits; Fit panics where the lengths differ.
func Fit(frequency, level, target []float64, leave []bool, rate float64, l Limits) (Fitted, error) {
	if len(level) != len(frequency) || len(target) != len(frequency) || (leave != nil && len(leave) != len(frequency)) {
		panic("equaliser: lengths differ")
	}
	if err := l.check(rate); err != nil {
		return Fitted{}, err
	}
	if leave == nil {
		leave = make([]bool, len(frequency))
	}
	if err := checkCurve(frequency, level, target, leave, rate); err != nil {
		return Fitted{}, err
	}
	g := newGoal(frequency, level, target, leave, rate, l)
	var out Fitted
	g.correction(nil)
	out.Before = g.rms()
	sections := g.keepBoost(g.grow())
	sections = slices.DeleteFunc(sections, func(s Section) bool { return math.Abs(s.Gain) < slight })
	slices.SortStableFunc(sections, func(a, b Section) int {
		return cmp.Or(cmp.Compare(a.Frequency, b.Frequency), cmp.Compare(a.Shape, b.Shape))
	})
	g.correction(sections)
	out.Sections, out.After, out.Correction = sections, g.rms(), g.sum
	return out, nil
}

func checkCurve(frequency, level, target []float64, leave []bool, rate float64) error {
	open := 0
	for i, hz := range frequency {
		switch {
		case !(hz > 0 && hz < rate/2):
			return fmt.Errorf("equaliser: %w: point %d: %g Hz, must be above 0 and below half the rate", ErrCurve, i+1, hz)
		case i > 0 && hz <= frequency[i-1]:
			return fmt.Errorf("equaliser: %w: point %d: %g Hz does not rise above %g Hz", ErrCurve, i+1, hz, frequency[i-1])
		case !leave[i] && !(math.Abs(level[i]-target[i]) <= 1000):
			return fmt.Errorf("equaliser: %w: point %d: level %g dB, target %g dB", ErrCurve, i+1, level[i], target[i])
		}
		if !leave[i] {
			open++
		}
	}
	if open == 0 {
		return fmt.Errorf("equaliser: %w: no frequency that counts", ErrCurve)
	}
	return nil
}

// grow adds one section at a time.
func (g *goal) grow() []Section {
	var sections []Section
	best := g.cost(sections)
	for len(sections) < g.limits.Sections && best > 0 {
		more := g.refine(append(slices.Clone(sections), g.next(sections)), 0)
		cost := g.cost(more)
		if cost > best*(1-worthwhile)*(1-worthwhile) {
			break
		}
		sections, best = more, cost
	}
	return sections
}

// next returns the section that helps most beside those already there.
func (g *goal) next(sections []Section) Section {
	var best Section
	least := math.Inf(1)
	for _, start := range g.starts(sections) {
		tried := g.refine(append(slices.Clone(sections), start), len(sections))
		if c := g.cost(tried); c < least {
			least, best = c, tried[len(sections)]
		}
	}
	return best
}

// starts returns sections to begin from: peaks where the error is largest each
// way, wide and narrow, and the shelves that are not used yet.
func (g *goal) starts(sections []Section) []Section {
	g.correction(sections)
	l := g.limits
	high, low := 0, 0
	for i := range g.sum {
		if !g.leave[i] {
			if e := g.error(i); e > g.error(high) || g.leave[high] {
				high = i
			}
			if e := g.error(i); e < g.error(low) || g.leave[low] {
				low = i
			}
		}
	}
	var out []Section
	for _, i := range []int{high, low} {
		hz := max(l.Low, min(l.High, g.frequency[i]))
		gain := max(-l.Cut, min(l.Boost, -g.error(i)))
		for _, q := range []float64{1, 4} {
			out = append(out, Section{Peaking, hz, max(l.LeastQ, min(l.MostQ, q)), gain})
		}
	}
	if !l.Shelves {
		return out
	}
	for _, shelf := range []struct {
		shape Shape
		share float64 // of the way from Low to High, in log frequency
	}{{LowShelf, 0.25}, {HighShelf, 0.75}} {
		if !slices.ContainsFunc(sections, func(s Section) bool { return s.Shape == shelf.shape }) {
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
	keeps := func(by float64) bool {
		g.correction(scaled(by))
		return slices.Max(g.sum) <= g.limits.Boost
	}
	if keeps(1) {
		return sections
	}
	low, high := 0.0, 1.0
	for range 40 {
		if mid := (low + high) / 2; keeps(mid) {
			low = mid
		} else {
			high = mid
		}
	}
	return scaled(low)
}
