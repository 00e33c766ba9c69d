package verdict

import (
	"errors"
	"fmt"
	"math"
	"math/cmplx"
	"slices"

	"pappus/timing"
	"pappus/timing/band"
	"pappus/timing/recording"
)

// errMeasured is for measurements that cannot be held against a plan.
var errMeasured = errors.New("unusable measurement")

// How channels are fitted.
const (
	// rounds of channels and what they have alike, in turn. That is the power iteration for the strongest product of a
	// factor for each channel and one for each frequency: a round leaves of what is off the ratio of the second
	// strongest's energy to its own (Golub and Van Loan, Matrix Computations, 8.2), which is less than foreign
	// where channels count: of a first guess that is off by the whole, 1/4096 or 0.002 dB at worst. Of 55
	// loudspeakers of the trial a round left 0.32 at most, and the last moved no level by more than 1e-5 dB.
	rounds = 12 // free: there eight leave 0.0002 dB, and more leave nothing
	// looks are the rounds in which each channel is looked at anew, where it was found, before windows stand still
	// and strings may be taken for dead: of those loudspeakers the next round moved no channel by more than
	// 0.07 dB and 0.15 us, after one look by 0.8 dB and 8 us, after two by 0.24 dB and 0.6 us.
	looks      = 3  // free: in sweeps.csv two and four miss and invent as little
	leastCount = 24 // frequencies that a channel must be heard at: half an octave
)

// fit holds all channels against a plan.
type fit struct {
	low, high float64
	frequency []float64
	planned   []float64  // s, of each of the plan's channels
	channels  []*channel // those that were heard
	common    []complex128
	axis      []float64 // all frequencies that were measured, of which from to before to are the fit's
	from, to  int
	timed     bool // all of them have a reference, so that their times can be compared
}

func newFit(p *timing.Plan, measured []*recording.Measured, set Setting) (*fit, error) {
	if len(measured) != len(p.Channels) {
		return nil, fmt.Errorf("%w: %d for %d channels", errMeasured, len(measured), len(p.Channels))
	}
	first := slices.IndexFunc(measured, func(m *recording.Measured) bool { return m != nil })
	if first < 0 {
		return nil, fmt.Errorf("%w: no channel was heard", errMeasured)
	}
	f := &fit{low: set.Low, high: set.High, timed: true, axis: measured[first].Frequency}
	if f.low == 0 {
		f.low = p.Array.Timing.FieldLow
	}
	if f.high == 0 {
		f.high = p.Array.Timing.FieldHigh
	}
	f.from, f.to = band.Range(f.axis, f.low, f.high)
	if f.frequency = f.axis[f.from:f.to]; len(f.frequency) < leastCount {
		return nil, fmt.Errorf("%w: little of %.0f to %.0f Hz was measured", errMeasured, f.low, f.high)
	}
	f.common = slices.Repeat([]complex128{1}, len(f.frequency))
	grid := newGrid(p, set.Case, f.high)
	strings := p.StringTransfers(set.Case, grid.frequency)
	for c, m := range measured {
		f.planned = append(f.planned, p.ChannelTime(c)+set.delay(p, c))
		if m == nil {
			continue
		}
		if !slices.Equal(m.Frequency, f.axis) {
			return nil, fmt.Errorf("channel %d: %w: not the same sweep as for the others", p.Channels[c].ID, errMeasured)
		}
		o := &channel{index: c, measured: m, heard: slices.Clone(f.whole(m)), window: windowOf(p, c, set, f.low), late: m.At - f.planned[c], dead: -1}
		if o.count() < leastCount {
			continue
		}
		o.brief = o.window.brief()
		for _, s := range strings[c] {
			o.strings = append(o.strings, grid.seen(s, o.window, f.frequency))
			o.briefly = append(o.briefly, grid.seen(s, o.brief, f.frequency))
		}
		o.leave(-1)
		if c < len(set.Repeats) {
			o.repeats = usable(set.Repeats[c], m)
		}
		f.timed = f.timed && m.Absolute
		f.channels = append(f.channels, o)
	}
	if len(f.channels) < 2 {
		return nil, fmt.Errorf("%w: only one channel was heard; at least two can be compared", errMeasured)
	}
	return f, nil
}

// delay returns the delay in s that a channel had.
func (set Setting) delay(p *timing.Plan, channel int) float64 {
	if set.Case == timing.AsBuilt {
		return 0
	}
	return p.Channels[channel].Delay
}

// whole returns all that was heard in the band.
func (f *fit) whole(m *recording.Measured) []complex128 { return m.Whole.Transfer[f.from:f.to] }

// of returns one of the plan's channels; nil: not heard.
func (f *fit) of(channel int) *channel {
	for _, o := range f.channels {
		if o.index == channel {
			return o
		}
	}
	return nil
}

// solve fits the channels and what they have alike in turn.
func (f *fit) solve() {
	near := f.together()
	for round := range rounds {
		for _, o := range f.channels {
			at := near
			if !f.timed {
				at = o.measured.At - f.planned[o.index]
			}
			if round == 0 {
				f.search(o, at)
			}
			if round < looks {
				o.look(o.measured, f.frequency)
			}
			f.estimate(o)
			if round == looks {
				f.lookAgain(o, at)
			}
		}
		if round >= looks && len(f.channels) > few {
			gain, _, _ := f.middle()
			for _, o := range f.channels {
				f.bury(o, gain)
			}
		}
		if round < rounds-1 {
			f.share()
		}
	}
	if len(f.channels) <= few {
		f.buryFew()
	}
}

// share finds what all channels have alike. Times and gains keep their mean.
func (f *fit) share() {
	for i, hz := range f.frequency {
		var top complex128
		low := 0.0
		for _, o := range f.channels {
			if o.residual > foreign || cmplx.IsNaN(o.heard[i]) {
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

// middle returns the middle gain in dB and time in s of the channels that fit, and the sign
// that most of them have.
func (f *fit) middle() (gain, late, sign float64) {
	var gains, times []float64
	for _, o := range f.channels {
		if o.residual <= foreign {
			gains = append(gains, o.level())
		}
	}
	if len(gains) > 0 {
		slices.Sort(gains)
		gain = gains[len(gains)/2] // the upper one of an even count: faults make channels weak
	}
	for _, o := range f.channels {
		if o.residual <= foreign && !isSilent(o.level()-gain) {
			times = append(times, o.late)
			sign += math.Copysign(1, o.gain)
		}
	}
	return gain, median(times), math.Copysign(1, sign)
}

// reference returns the index of the channel whose level is the middle one; below 0: none fits.
func (f *fit) reference() int {
	gain, _, _ := f.middle()
	return slices.IndexFunc(f.channels, func(o *channel) bool { return o.residual <= foreign && o.level() == gain })
}

// commonLevel returns what all channels have alike, in dB.
func (f *fit) commonLevel() []float64 {
	out := make([]float64, len(f.common))
	for i, v := range f.common {
		out[i] = 20 * math.Log10(cmplx.Abs(v))
	}
	return out
}

// copy returns a fit that can go another way.
func (f *fit) copy() *fit {
	c := *f
	c.common = slices.Clone(f.common)
	c.channels = make([]*channel, len(f.channels))
	for i, o := range f.channels {
		c.channels[i] = o.copy()
	}
	return &c
}

func energy(v complex128) float64 { return real(v)*real(v) + imag(v)*imag(v) }

// median returns the middle of some numbers, the lower one of an even count; 0 for none.
func median(x []float64) float64 {
	if len(x) == 0 {
		return 0
	}
	return slices.Sorted(slices.Values(x))[(len(x)-1)/2]
}
