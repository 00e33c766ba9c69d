package verdict

import (
	"cmp"
	"math"
	"pappus/timing"
	"slices"
)

// besideEach is how many siblings on each side tell what a channel's level should be: of four
// one may be faulty.
const besideEach = 2

// beside returns how far in dB each channel's level is over that of its siblings of like
// arrival, NaN where there are not enough on each side. A driver's shadow grows smoothly with
// the way round the body, and so does what a model of it does wrong: on a line through the
// levels of those that are heard a little sooner and a little later that is taken out, where
// a channel's own fault stays.
func (f *fit) beside(p *timing.Plan, gain float64) []float64 {
	out := slices.Repeat([]float64{math.NaN()}, len(f.planned))
	order := slices.DeleteFunc(slices.Clone(f.channels), func(o *channel) bool { return o.unlike > foreign || isSilent(o.level()-gain) })
	arrival := func(o *channel) float64 { return p.ChannelTime(o.index) }
	slices.SortStableFunc(order, func(a, b *channel) int { return cmp.Compare(arrival(a), arrival(b)) })
	for place := besideEach; place < len(order)-besideEach; place++ {
		o := order[place]
		var at, level []float64
		for _, other := range slices.Concat(order[place-besideEach:place], order[place+1:place+1+besideEach]) {
			at, level = append(at, arrival(other)), append(level, other.level())
		}
		out[o.index] = o.level() - onLine(at, level, arrival(o))
	}
	return out
}

// onLine returns the value at a place of the line of repeated medians through some points,
// which fewer than half of them hardly move (A. F. Siegel, Biometrika 69 (1982) 242).
func onLine(x, y []float64, at float64) float64 {
	var slopes []float64
	for i := range x {
		var own []float64
		for j := range x {
			if x[i] != x[j] {
				own = append(own, (y[i]-y[j])/(x[i]-x[j]))
			}
		}
		slopes = append(slopes, centre(own))
	}
	slope, rest := centre(slopes), make([]float64, len(x))
	for i := range x {
		rest[i] = y[i] - slope*(x[i]-at)
	}
	return centre(rest)
}

// centre is the median as statistics have it, the mean of both middle ones of an even count;
// 0 for none.
func centre(x []float64) float64 {
	if len(x) == 0 {
		return 0
	}
	x = slices.Sorted(slices.Values(x))
	return (x[(len(x)-1)/2] + x[len(x)/2]) / 2
}
