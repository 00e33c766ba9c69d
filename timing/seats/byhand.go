package seats

import (
	"fmt"
	"math"
	"slices"
)

// feeds returns what each driver is fed by channels laid out by hand; nil without any.
func (l Limits) feeds(drivers int) ([]feed, error) {
	if l.Groups == nil {
		return nil, nil
	}
	if len(l.Groups) == 0 || l.Gain != nil && len(l.Gain) != len(l.Groups) || l.Delay != nil && len(l.Delay) != len(l.Groups) {
		return nil, fmt.Errorf("seats: each channel must have a gain and a delay")
	}
	fed, in := make([]feed, drivers), make([]bool, drivers)
	for g, group := range l.Groups {
		one := feed{gain: 1}
		if l.Gain != nil {
			one.gain = l.Gain[g]
		}
		if l.set(g) {
			one.delay = l.Delay[g]
		}
		for _, d := range group {
			if d < 0 || d >= drivers || in[d] {
				return nil, fmt.Errorf("seats: driver %d must be one of 0 to %d and in one channel", d, drivers-1)
			}
			fed[d], in[d] = one, true
		}
	}
	return fed, nil
}

// set tells whether a channel's delay is set by hand.
func (l Limits) set(g int) bool { return l.Delay != nil && !math.IsNaN(l.Delay[g]) }

// anySet tells whether any is.
func (l Limits) anySet() bool {
	for g := range l.Groups {
		if l.set(g) {
			return true
		}
	}
	return false
}

// byHand finds the delays of channels laid out by hand that are free.
func (p *planner) byHand(e effort) (Answer, error) {
	l := p.limits
	best := p.best(len(l.Groups), p.handStarts(), e, 1)
	if err := p.ctx.Err(); err != nil {
		return Answer{}, err
	}
	out := Answer{Groups: l.Groups}
	first := 0
	if !l.anySet() {
		first = slices.Min(best.delay)
	}
	for g, d := range best.delay {
		out.Delay = append(out.Delay, float64(d-first)*l.Step)
		if l.set(g) {
			out.Delay[g] = l.Delay[g]
		}
	}
	out.Figures = p.field.Judge(out.Groups, l.Gain, out.Delay)
	return out, nil
}

// handStarts are the delays that bring channels into step at each seat, and in the mean over
// all.
func (p *planner) handStarts() []start {
	group := make([]int, len(p.problem.driver))
	at := make([]int, p.field.Drivers)
	for i, d := range p.problem.driver {
		at[d] = i
	}
	groups := make([][]int, len(p.limits.Groups))
	for g, drivers := range p.limits.Groups {
		for _, d := range drivers {
			groups[g] = append(groups[g], at[d])
			group[at[d]] = g
		}
	}
	var out []start
	for s := -1; s < p.problem.seats; s++ {
		one := start{group, make([]float64, len(groups))}
		for g, drivers := range groups {
			one.delay[g] = -p.problem.meanArrival(drivers, s)
		}
		out = append(out, one)
	}
	return out
}
