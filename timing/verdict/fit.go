package verdict

import (
	"fmt"
	"math"
	"math/cmplx"
	"slices"

	"pappus/timing"
	"pappus/timing/recording"
)

// How channels are fitted.
const (
	rounds     = 12     // of channels and what they have alike, in turn
	firstRound = 3      // in which strings may be taken for dead
	looks      = 3      // rounds in which each channel is looked at anew, where it was found
	reach      = 0.002  // s on each side of the time by which all are late
	nearby     = 0.0003 // s on each side that an echo hardly comes within
	clean      = 0.15   // share of the energy that does not fit, at most, of what is further off
	foreign    = 0.5    // share of the energy that does not fit: a channel of which nothing is told
	elsewhere  = 1.5    // times as alike a channel must be at its strongest sound, out of reach, to be taken there
	leastCount = 24     // frequencies that a channel must be heard at
	apart      = 16     // steps in a period of the highest frequency
)

// one is what is fitted to one channel.
type one struct {
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
	unlike                float64 // share of the energy that does not fit
	dead                  int     // index of a string; -1: none
	without               float64 // dB, what a dead string takes off the channel
}

// fit holds all channels against a plan.
type fit struct {
	low, high float64
	frequency []float64
	planned   []float64 // s
	channels  []*one    // nil: not heard
	common    []complex128
	axis      []float64 // all frequencies that were measured, of which from to before to are the fit's
	from, to  int
	timed     bool // all of them have a reference, so that their times can be compared
}

func newFit(p *timing.Plan, measured []*recording.Measured, set Setting) (*fit, error) {
	if len(measured) != len(p.Channels) {
		return nil, fmt.Errorf("%w: %d for %d channels", ErrMeasured, len(measured), len(p.Channels))
	}
	first := slices.IndexFunc(measured, func(m *recording.Measured) bool { return m != nil })
	if first < 0 {
		return nil, fmt.Errorf("%w: no channel was heard", ErrMeasured)
	}
	f := &fit{low: set.Low, high: set.High, timed: true}
	if f.low == 0 {
		f.low = p.Array.Timing.FieldLow
	}
	if f.high == 0 {
		f.high = p.Array.Timing.FieldHigh
	}
	from, to := f.inBand(measured[first].Frequency)
	f.axis, f.from, f.to = measured[first].Frequency, from, to
	f.frequency = f.axis[from:to]
	if len(f.frequency) < leastCount {
		return nil, fmt.Errorf("%w: little of %.0f to %.0f Hz was measured", ErrMeasured, f.low, f.high)
	}
	f.common = make([]complex128, len(f.frequency))
	for i := range f.common {
		f.common[i] = 1
	}
	grid := newGrid(p, set.Case, f.high)
	strings := p.StringTransfers(set.Case, grid.frequency)
	heard := 0
	for c, m := range measured {
		planned := p.ChannelTime(c)
		if set.Case != timing.AsBuilt {
			planned += p.Channels[c].Delay
		}
		f.planned = append(f.planned, planned)
		w := windowOf(p, c, set, f.low)
		brief := make([][]complex128, len(strings[c]))
		for s, one := range strings[c] {
			strings[c][s] = grid.seen(one, w, f.frequency)
			brief[s] = grid.seen(one, w.brief(), f.frequency)
		}
		one, err := f.one(m, measured[first], from, to, strings[c], planned)
		if err != nil {
			return nil, fmt.Errorf("channel %d: %w", p.Channels[c].ID, err)
		}
		if one != nil {
			one.window, one.brief, one.briefly = w, w.brief(), brief
			if c < len(set.Repeats) {
				one.repeats = usable(set.Repeats[c], m)
			}
			f.timed = f.timed && m.Absolute
			heard++
		}
		f.channels = append(f.channels, one)
	}
	if heard < 2 {
		return nil, fmt.Errorf("%w: only one channel was heard; at least two can be compared", ErrMeasured)
	}
	return f, nil
}

// inBand returns which frequencies are in the band.
func (f *fit) inBand(frequency []float64) (from, to int) {
	for from < len(frequency) && frequency[from] < f.low {
		from++
	}
	to = from
	for to < len(frequency) && frequency[to] <= f.high {
		to++
	}
	return from, to
}

// one returns a channel that is still to be fitted, nil where it was not heard.
func (f *fit) one(m, like *recording.Measured, from, to int, strings [][]complex128, planned float64) (*one, error) {
	if m == nil {
		return nil, nil
	}
	if !slices.Equal(m.Frequency, like.Frequency) {
		return nil, fmt.Errorf("%w: not the same sweep as for the others", ErrMeasured)
	}
	o := &one{measured: m, heard: slices.Clone(m.Whole.Transfer[from:to]), strings: strings, plan: make([]complex128, to-from), late: m.At - planned, dead: -1}
	count := 0
	for _, v := range o.heard {
		if !cmplx.IsNaN(v) {
			count++
		}
	}
	if count < leastCount {
		return nil, nil
	}
	o.leave(-1)
	return o, nil
}

// leave makes the plan that of all strings but one; -1: of all.
func (o *one) leave(dead int) {
	clear(o.plan)
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

func energy(v complex128) float64 { return real(v)*real(v) + imag(v)*imag(v) }

// solve fits the channels and what they have alike in turn.
func (f *fit) solve() {
	near := f.near()
	for round := range rounds {
		for c, o := range f.channels {
			if o == nil {
				continue
			}
			if round == 0 {
				f.search(o, near[c])
			}
			if round < looks {
				o.look(o.measured, f.frequency)
			}
			f.adjust(o)
			if round == looks {
				f.doubt(o, near[c])
			}
		}
		if round >= firstRound && f.heard() > few {
			gain, _, _ := f.middle()
			for _, o := range f.channels {
				if o != nil {
					f.bury(o, gain)
				}
			}
		}
		if round < rounds-1 {
			f.share()
		}
	}
	if f.heard() <= few {
		f.buryFew()
	}
}

// near returns where in s each channel is looked for: where all are, or, without a
// reference, where its own strongest sound is.
func (f *fit) near() []float64 {
	out := make([]float64, len(f.channels))
	late := f.together()
	for c, o := range f.channels {
		if out[c] = late; o != nil && !f.timed {
			out[c] = o.late
		}
	}
	return out
}

// match returns the real part of the sum of what was heard over what is expected, for a
// time by which it is late, in s, and its first two derivatives by that.
func (f *fit) match(o *one, late float64) (sum, slope, bend float64) {
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

// together returns by how much in s all channels are late, as the converters between player
// and loudspeaker make them. It is one of the times of the channels' strongest sounds, over
// the plan's, at which most of what was heard of all is what was planned: of a channel that
// plays away from the microphone the strongest sound may be an echo, of most it is not.
func (f *fit) together() float64 {
	best, most := 0.0, -1.0
	for _, candidate := range f.channels {
		if candidate == nil {
			continue
		}
		sum := 0.0
		for _, o := range f.channels {
			if o == nil {
				continue
			}
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
func (f *fit) highest(o *one, near, reach float64) (late, top float64) {
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
func (f *fit) search(o *one, near float64) {
	strongest := o.late
	late, top := f.highest(o, near, reach)
	if math.Abs(strongest-near) > reach {
		if far, most := f.highest(o, strongest, nearby); most > elsewhere*top {
			late = far
		}
	}
	o.late = late
}

// doubt looks once more nearby the time of all for a channel that was found elsewhere and
// hardly fits there: that is an echo, louder than what comes straight from a channel that
// plays away from the microphone. What does not fit at all there stays where it was, if it
// fits there, and so does what fits far worse there. A channel that fits nowhere yet is looked
// for all over its reach: where a table's echo makes two sounds of one, the wrong one of them
// may be the most alike to the plan.
func (f *fit) doubt(o *one, near float64) {
	if o.unlike <= clean || o.unlike <= foreign && math.Abs(o.late-near) <= nearby {
		return
	}
	found := o.copy()
	f.tryAt(o, near)
	if o.unlike > foreign && found.unlike <= foreign || found.unlike < better*o.unlike {
		*o = *found
	}
	if o.unlike <= foreign {
		return
	}
	best := o.copy()
	for by := -reach; by <= reach; by += nearby {
		if f.tryAt(o, near+by); o.unlike < best.unlike {
			best = o.copy()
		}
	}
	*o = *best
}

// tryAt fits a channel nearby a time in s.
func (f *fit) tryAt(o *one, near float64) {
	o.late, _ = f.highest(o, near, nearby)
	o.look(o.measured, f.frequency)
	f.adjust(o)
}

// copy returns a channel that can be fitted in another way.
func (o *one) copy() *one {
	c := *o
	c.heard, c.plan = slices.Clone(o.heard), slices.Clone(o.plan)
	return &c
}

// adjust finds the time by Newton's steps, then gain and what does not fit.
func (f *fit) adjust(o *one) {
	for range 30 {
		sum, slope, bend := f.match(o, o.late)
		if bend*sum >= 0 {
			break
		}
		step := slope / bend
		o.late -= max(-5e-6, min(5e-6, step))
		if math.Abs(step) < 1e-11 {
			break
		}
	}
	sum, _, bend := f.match(o, o.late)
	var planned, heard float64
	count := 0.0
	for i, v := range o.heard {
		if !cmplx.IsNaN(v) {
			planned += energy(o.plan[i] * f.common[i])
			heard += energy(v)
			count++
		}
	}
	o.gain, o.size = sum/planned, math.Sqrt(heard/planned)
	o.unlike = max(0, 1-sum*sum/(planned*heard))
	// Half of what does not fit is at right angles, and moves the time.
	o.lateError = math.Sqrt(o.unlike * heard / (2 * count) / math.Abs(o.gain*bend))
}

// bury takes one string for dead where the channel is too weak and the rest fits much
// better.
func (f *fit) bury(o *one, middle float64) {
	if o.dead >= 0 || len(o.strings) < 2 || 20*math.Log10(math.Abs(o.gain))-middle > quiet/2 {
		return
	}
	kept := *o
	kept.plan = slices.Clone(o.plan)
	best := kept
	for s := range o.strings {
		o.leave(s)
		f.adjust(o)
		if o.unlike < best.unlike {
			best = *o
			best.plan = slices.Clone(o.plan)
		}
	}
	*o = kept
	level := 20*math.Log10(math.Abs(best.gain)) - middle
	if best.dead >= 0 && best.unlike < better*kept.unlike && math.Abs(level) < likeRest {
		*o = best
	}
}

// share finds what all channels have alike. Times and gains keep their mean.
func (f *fit) share() {
	for i, hz := range f.frequency {
		var top complex128
		low := 0.0
		for _, o := range f.channels {
			if o == nil || o.unlike > foreign || cmplx.IsNaN(o.heard[i]) {
				continue
			}
			p := o.plan[i] * cmplx.Rect(o.gain, -2*math.Pi*hz*o.late)
			top += cmplx.Conj(p) * o.heard[i]
			low += energy(p)
		}
		if low > 0 {
			f.common[i] = top / complex(low, 0)
		}
	}
}

// middle returns the middle gain in dB and time in s of the channels, and the sign that most
// of them have, by their energy.
func (f *fit) middle() (gain, late, sign float64) {
	var gains, times []float64
	for _, o := range f.channels {
		if o != nil && o.unlike <= foreign {
			gains = append(gains, 20*math.Log10(math.Abs(o.gain)))
		}
	}
	slices.Sort(gains)
	if len(gains) > 0 {
		gain = gains[len(gains)/2] // the upper one of an even count: faults make channels weak
	}
	for _, o := range f.channels {
		if o == nil || o.unlike > foreign || 20*math.Log10(math.Abs(o.gain))-gain < silent {
			continue
		}
		times = append(times, o.late)
		sign += math.Copysign(1, o.gain)
	}
	return gain, median(times), math.Copysign(1, sign)
}

// median returns the middle of some numbers, the lower one of an even count.
func median(x []float64) float64 {
	if len(x) == 0 {
		return 0
	}
	x = slices.Clone(x)
	slices.Sort(x)
	return x[(len(x)-1)/2]
}

// commonLevel returns what all channels have alike, in dB.
func (f *fit) commonLevel() []float64 {
	out := make([]float64, len(f.common))
	for i, v := range f.common {
		out[i] = 20 * math.Log10(cmplx.Abs(v))
	}
	return out
}
