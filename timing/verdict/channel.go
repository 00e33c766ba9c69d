package verdict

import (
	"math"
	"math/cmplx"
	"slices"

	"pappus/timing/recording"
)

// How a channel is found.
const (
	reach     = 0.002  // s on each side of the time by which all are late: 0.7 m of way
	nearby    = 0.0003 // s on each side that an echo hardly comes within: 103 mm of way
	clean     = 0.15   // share of the energy that does not fit, at most, of what is further off: what noise 8 dB below leaves
	foreign   = 0.5    // share of the energy that does not fit: a channel of which nothing is told: two sounds as strong as each other: which of them is the channel nobody can say; in sweeps.csv 0.7 and 1.4 times as much miss and invent as little
	elsewhere = 1.5    // times as alike a channel must be at its strongest sound, out of reach, to be taken there: 3.5 dB, which no echo is over the straight sound of a channel that faces the microphone
	apart     = 16     // steps in a period of the highest frequency: within 1/32 of a period a sum is within 2 percent of its top
)

// channel is what is fitted to one channel.
type channel struct {
	index    int // of the plan's channels
	measured *recording.Measured
	repeats  []*recording.Measured // of the same channel
	window   window
	brief    window         // that ends sooner
	briefly  [][]complex128 // what the plan says of each string through that
	heard    []complex128   // at the fit's frequencies; NaN where too weak
	strings  [][]complex128 // what the plan says of each
	plan     []complex128   // their sum, but for a dead one
	gain     float64        // with its sign
	size     float64        // as the gain, of all that was heard, whether it fits or not
	late     float64        // s
	// Standard errors, in dB and s: of all that a channel has of its own.
	levelError, lateError float64
	lean                  float64 // dB that a body's faces make of it over the middle one, which nobody takes off
	residual              float64 // share of the energy that does not fit
	dead                  int     // index of a string; -1: none
	without               float64 // dB, what a dead string takes off the channel
}

// level returns the channel's level over the plan's in dB.
func (o *channel) level() float64 { return 20 * math.Log10(math.Abs(o.gain)) }

// loudness returns that of all that was heard over the plan's in dB, whether it fits or not.
func (o *channel) loudness() float64 { return 20 * math.Log10(o.size) }

// count returns at how many frequencies the channel was heard.
func (o *channel) count() int {
	n := 0
	for _, v := range o.heard {
		if !cmplx.IsNaN(v) {
			n++
		}
	}
	return n
}

// copy returns a channel that can be fitted in another way.
func (o *channel) copy() *channel {
	c := *o
	c.heard, c.plan = slices.Clone(o.heard), slices.Clone(o.plan)
	return &c
}

// leave makes the plan that of all strings but one; -1: of all.
func (o *channel) leave(dead int) {
	o.plan = make([]complex128, len(o.heard))
	var all, some float64
	for f := range o.plan {
		var missing complex128
		for s, v := range o.strings {
			if s == dead {
				missing = v[f]
			} else {
				o.plan[f] += v[f]
			}
		}
		some += energy(o.plan[f])
		all += energy(o.plan[f] + missing)
	}
	o.dead, o.without = dead, 10*math.Log10(some/all)
}

// match returns the real part of the sum of what was heard over what is expected, for a
// time by which it is late, in s, and its first two derivatives by that.
func (f *fit) match(o *channel, late float64) (sum, slope, bend float64) {
	for i, v := range o.heard {
		if cmplx.IsNaN(v) {
			continue
		}
		w := 2 * math.Pi * f.frequency[i]
		c := v * cmplx.Conj(o.plan[i]*f.common[i]) * cmplx.Rect(1, w*late)
		sum += real(c)
		slope -= w * imag(c)
		bend -= w * w * real(c)
	}
	return sum, slope, bend
}

// estimate is the one that all verdicts follow from: it finds, by least squares with all else
// held, a channel's time, by Newton's steps from where it is, its gain, what does not fit,
// and the time's standard error by that.
func (f *fit) estimate(o *channel) {
	for range 30 { // free: once near, each step has twice as many digits right
		sum, slope, bend := f.match(o, o.late)
		if bend*sum >= 0 {
			break
		}
		step := slope / bend
		o.late -= max(-5e-6, min(5e-6, step)) // free: a stride that is too long is cut, and others follow
		if math.Abs(step) < 1e-11 {           // free: a thousandth of what noise leaves
			break
		}
	}
	sum, _, bend := f.match(o, o.late)
	var planned, heard, count float64
	for i, v := range o.heard {
		if !cmplx.IsNaN(v) {
			planned += energy(o.plan[i] * f.common[i])
			heard += energy(v)
			count++
		}
	}
	o.gain, o.size = sum/planned, math.Sqrt(heard/planned)
	o.residual = max(0, 1-sum*sum/(planned*heard))
	// Half of what does not fit is at right angles, and moves the time.
	o.lateError = math.Sqrt(o.residual * heard / (2 * count) / math.Abs(o.gain*bend))
}

// together returns by how much in s all channels are late, as the converters between player
// and loudspeaker make them. It is one of the times of the channels' strongest sounds, over
// the plan's, at which most of what was heard of all is what was planned: of a channel that
// plays away from the microphone the strongest sound may be an echo, of most it is not.
func (f *fit) together() float64 {
	best, most := 0.0, -1.0
	for _, candidate := range f.channels {
		sum := 0.0
		for _, o := range f.channels {
			planned := 0.0
			for _, v := range o.plan {
				planned += energy(v)
			}
			_, top := f.highest(o, candidate.late, nearby)
			sum += top * top / planned
		}
		if sum > most {
			best, most = candidate.late, sum
		}
	}
	return best
}

// highest returns where, within reach of a time in s, what was heard is most alike to the
// plan, in either polarity, and how much.
func (f *fit) highest(o *channel, near, reach float64) (late, top float64) {
	step := 1 / f.high / apart
	for d := -reach; d <= reach; d += step {
		if sum, _, _ := f.match(o, near+d); math.Abs(sum) > top {
			late, top = near+d, math.Abs(sum)
		}
	}
	return late, top
}

// search finds a channel's time roughly: near that of all, or, where it is far more like
// the plan there, at its strongest sound, as of a channel whose delay is milliseconds off.
func (f *fit) search(o *channel, near float64) {
	strongest := o.late
	late, top := f.highest(o, near, reach)
	if math.Abs(strongest-near) > reach {
		if far, most := f.highest(o, strongest, nearby); most > elsewhere*top {
			late = far
		}
	}
	o.late = late
}

// lookAgain looks once more nearby the time of all for a channel that was found elsewhere and
// hardly fits there: that is an echo, louder than what comes straight from a channel that
// plays away from the microphone. What does not fit at all there stays where it was, if it
// fits there, and so does what fits far worse there. A channel that fits nowhere yet is looked
// for all over its reach: where a table's echo makes two sounds of one, the wrong one of them
// may be the most alike to the plan.
func (f *fit) lookAgain(o *channel, near float64) {
	if o.residual <= clean || o.residual <= foreign && math.Abs(o.late-near) <= nearby {
		return
	}
	found := o.copy()
	f.tryAt(o, near)
	if o.residual > foreign && found.residual <= foreign || found.residual < better*o.residual {
		*o = *found
	}
	if o.residual <= foreign {
		return
	}
	best := o.copy()
	for by := -reach; by <= reach; by += nearby {
		if f.tryAt(o, near+by); o.residual < best.residual {
			best = o.copy()
		}
	}
	*o = *best
}

// tryAt fits a channel nearby a time in s.
func (f *fit) tryAt(o *channel, near float64) {
	o.late, _ = f.highest(o, near, nearby)
	o.look(o.measured, f.frequency)
	f.estimate(o)
}
