package verdict

import (
	"cmp"
	"math"
	"slices"

	"pappus/timing"
)

// scattered fills in how far the channels that fit the plan stand from their middle, and from
// their siblings of like arrival.
func (f *fit) scattered(v *Channels, beside []float64) {
	var levels, near, times []float64
	for _, o := range f.channels {
		if o.residual > foreign {
			continue
		}
		levels, times = append(levels, o.level()), append(times, o.late)
		if !math.IsNaN(beside[o.index]) {
			near = append(near, beside[o.index])
		}
	}
	v.Scatter, v.ScatterBeside, v.ScatterTime = scatter(levels), scatter(near), scatter(times)
}

// off tells how far in dB a quiet or loud channel's level is off, against those that show it.
func (v *Channels) off(c Channel) Fact {
	f := Fact{Value: c.Level, Error: Expanded * c.LevelError}
	if math.Abs(c.Level) <= ordinary(c.LevelError, v.Scatter) {
		f.Value, f.Beside = c.Beside, true
	}
	return f
}

// judge tells whether a channel is quiet or loud: off its siblings, or off those of like
// arrival, by more than is ordinary.
func (v *Channels) judge(c *Channel) {
	off := ordinary(c.LevelError, v.Scatter)
	near := ordinary(c.LevelError, v.ScatterBeside)
	c.Quiet = c.Level < -off || c.Beside < -near
	c.Loud = !c.Quiet && (c.Level > off || c.Beside > near)
}

// ordinary returns how far in dB a channel's level may be off where nothing is wrong with
// it: as far as drivers of one make differ, as the siblings scatter, and as the expanded error
// of the measurement goes, each at 95 percent. What the model does not know of the body
// shows in the scatter even where nobody has said how large it is.
func ordinary(levelError, scatter float64) float64 {
	return math.Hypot(quiet, Expanded*math.Hypot(levelError, min(scatter, mostScatter)))
}

// ordinaryTime returns how far in s a channel may be off in time where nothing is wrong.
func (v *Channels) ordinaryTime(c Channel) float64 {
	return math.Hypot(inTime, Expanded*math.Hypot(c.Error, min(v.ScatterTime, inTime)))
}

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
	order := slices.DeleteFunc(slices.Clone(f.channels), func(o *channel) bool { return o.residual > foreign || isSilent(o.level()-gain) })
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

// scatter returns how far some values stand from their middle, as a standard deviation that
// a few odd ones do not move; 0 where there are too few.
func scatter(x []float64) float64 {
	if len(x) < leastOthers {
		return 0
	}
	middle, off := median(x), make([]float64, len(x))
	for i, v := range x {
		off[i] = math.Abs(v - middle)
	}
	slices.Sort(off)
	return normalMAD * off[len(off)/2]
}
