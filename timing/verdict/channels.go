package verdict

import (
	"math"
	"slices"

	"pappus/timing"
	"pappus/timing/recording"
)

// What a fault is.
const (
	silent = -20.0 // dB below the siblings' middle: crosstalk of amplifiers and wires is 40 dB below, what shadows take 10 (common practice)
	quiet  = -1.5  // drivers of one make differ by a decibel or so (common practice): a string of six that is dead takes 1.58 dB
	alike  = 0.4   // share of the energy that does not fit the plan, at most, for a clear word: what fits is 1.8 dB over what does not
	// mostScatter in dB is the most that the scatter of the channels counts for: with more,
	// nothing of 3 dB, as one string of three or four is, would be told any more.
	mostScatter = 1.0
)

// Setting says how the channels were measured.
type Setting struct {
	Case timing.Case // AsBuilt: no delays were set; Aligned: the plan's
	// The band in Hz that counts; 0: the design's own, by which it may take delays by the
	// field.
	Low, High float64
	// Missing are the channels, as indices, of which there is no recording that can be used;
	// nothing is told of them.
	Missing []int
	// LevelError in dB and TimeError in s are one standard error of what the model says of one
	// channel over another; both 0: what the plan says of its model (Plan.LevelError).
	LevelError, TimeError float64
	// Repeats are further recordings of each channel, as many as there are; nil: none. A channel
	// is then what the mean of its recordings says.
	Repeats [][]*recording.Measured
	// Whole is a recording of all channels, if there is one: that of a channel must not be the
	// same.
	Whole *recording.Measured
}

// Channels is what measurements of all channels, each played alone, tell.
type Channels struct {
	Low, High float64   // Hz, the band that counted
	Channels  []Channel // one for each of Plan.Channels
	// Common is what all channels have alike beside the plan, in dB over Frequency in Hz, but
	// for the gain of the middle one, Gain in dB.
	Frequency, Common []float64
	Gain              float64
	// OtherCase tells that the channels look as if the delays were set where Setting says
	// they were not, or the other way round: then no delays are proposed.
	OtherCase bool
	// Scatter in dB and ScatterTime in s are how far the channels stand from their middle,
	// ScatterBeside in dB from those of like arrival, as standard deviations that a few odd
	// channels do not move; 0 for fewer than four.
	Scatter, ScatterBeside, ScatterTime float64
	Faults                              []Fact // none where all is well
	Notes                               []Fact // what else to know

	timed bool // by the wire beside each
}

// Channel is what a measurement tells of one channel.
type Channel struct {
	ID      int
	Planned float64 // s, when it should be heard after it is fed, its delay in that included
	Arrival float64 // s, when it was, computed the same way; NaN where it was not heard
	Late    float64 // s, the difference, over that of the middle channel; NaN too where it is not like the plan at all
	Error   float64 // s, one standard error of Late: noise, bands, window, siblings and model
	Delay   float64 // s, proposed, what can be set; never negative; the plan's where it was not heard; NaN: none follows
	Level   float64 // dB over what was planned, over the siblings' middle; -Inf where it was not heard
	// Beside is the level in dB over that of the siblings that are heard a little sooner and a
	// little later; NaN where there are too few.
	Beside float64
	// LevelError in dB is one standard error of Level, as Error is; NaN where nothing is told.
	LevelError float64
	Residual   float64 // share of the energy that does not fit the plan
	// Missing: there was no recording. Reversed, Silent, Quiet and Loud tell of faults; DeadString
	// is the index of the string that does not play, -1: none, or not to be told.
	Missing, Reversed, Silent, Quiet, Loud bool
	DeadString                             int
}

// OfChannels holds one measurement for each channel of a plan, in the same order, against
// it; nil stands for a channel of which nothing was heard. Two of them must have been heard,
// and without a reference their times cannot be compared.
func OfChannels(p *timing.Plan, measured []*recording.Measured, set Setting) (Channels, error) {
	f, err := newFit(p, measured, set)
	if err != nil {
		return Channels{}, err
	}
	f.solve()
	f.errors(p, set)
	return f.verdict(p, measured, set), nil
}

// verdict tells what was fitted.
func (f *fit) verdict(p *timing.Plan, measured []*recording.Measured, set Setting) Channels {
	out := Channels{Low: f.low, High: f.high, Frequency: f.frequency, Common: f.commonLevel()}
	gain, late, sign := f.middle()
	out.Gain, out.timed = gain, f.timed
	level, time := f.commonErrors()
	beside := f.beside(p, gain)
	f.scattered(&out, beside)
	for c := range p.Channels {
		v := Channel{ID: p.Channels[c].ID, Planned: f.planned[c], Delay: p.Channels[c].Delay, Missing: slices.Contains(set.Missing, c),
			Arrival: math.NaN(), Late: math.NaN(), Error: math.NaN(), LevelError: math.NaN(), Beside: beside[c], Level: math.Inf(-1), Residual: 1, DeadString: -1}
		if one := f.of(c); one != nil {
			v.Level = one.loudness() - gain
			v.Residual = one.residual
			v.Silent = isSilent(v.Level)
			if !v.Silent {
				f.tell(&v, one, gain, late, sign)
				v.LevelError, v.Error = withBias(math.Hypot(v.LevelError, level), one.lean), math.Hypot(v.Error, time)
				out.judge(&v)
			}
		} else {
			v.Silent = !v.Missing
		}
		if v.Missing {
			v.Level = math.NaN()
		}
		out.Channels = append(out.Channels, v)
	}
	out.Notes = f.notes()
	odd := f.odd(&out, p, measured, set)
	out.propose(p, odd, f.timed)
	out.tellFaults(p, odd)
	return out
}

// isSilent tells whether a channel's level in dB over its siblings' middle is as good as none.
func isSilent(level float64) bool { return level < silent }

// tell fills in what is known of a channel that plays.
func (f *fit) tell(v *Channel, one *channel, gain, late, sign float64) {
	if one.residual > foreign {
		return
	}
	if f.timed {
		v.Arrival, v.Late, v.Error = v.Planned+one.late, one.late-late, one.lateError
	}
	v.Level = one.level() - gain
	v.Reversed = one.gain*sign < 0
	v.DeadString = one.dead
	if one.dead >= 0 {
		v.Level += one.without // with what is missing
		v.Beside += one.without
	}
	v.LevelError = one.levelError
}

// odd finds what is wrong with the recordings themselves, and returns the channels of which
// nothing else is to be told.
func (f *fit) odd(v *Channels, p *timing.Plan, measured []*recording.Measured, set Setting) []int {
	inverted, wire := wires(measured)
	for c := range v.Channels {
		one := &v.Channels[c]
		if inverted[c] && one.Reversed {
			one.Reversed = false
			v.fault(Fact{Code: WireInverted}, c)
		}
		if isTurned(wire[c], one.Level) && !one.Silent {
			one.Quiet, one.Loud, one.Level, one.Beside = false, false, math.NaN(), math.NaN()
			v.fault(Fact{Code: WireLevel, Value: wire[c]}, c)
		}
	}
	odd := f.asWhole(set.Whole)
	if v.OtherCase = odd == nil && f.timed && v.otherCase(p, set.Case); v.OtherCase {
		if set.Case == timing.AsBuilt {
			v.fault(Fact{Code: DelaysSet})
		} else {
			v.fault(Fact{Code: NoDelaysSet})
		}
		return nil
	}
	if odd == nil {
		odd = f.alike()
	}
	if odd != nil {
		v.fault(Fact{Code: Alike}, odd...)
		return odd
	}
	if a, b, ok := f.exchanged(); ok {
		v.fault(Fact{Code: Exchanged}, a, b)
		return []int{a, b}
	}
	return nil
}

// fault adds what is wrong with channels, by their indices.
func (v *Channels) fault(f Fact, channels ...int) {
	f.Channels = v.ids(channels)
	v.Faults = append(v.Faults, f)
}

// ids returns the numbers of channels.
func (v *Channels) ids(channels []int) []int {
	var out []int
	for _, c := range channels {
		out = append(out, v.Channels[c].ID)
	}
	return out
}

// notes tells what else to know.
func (f *fit) notes() []Fact {
	if !f.timed {
		return []Fact{{Code: NoWire}}
	}
	for _, o := range f.channels {
		if o.gain > 0 || o.residual > foreign {
			return nil
		}
	}
	return []Fact{{Code: AllInverted}}
}

// propose takes what each channel is late by off its delay, makes none negative, and rounds
// to what the processor can be set to. Nothing is proposed for odd channels.
func (v *Channels) propose(p *timing.Plan, odd []int, timed bool) {
	least := math.Inf(1)
	for i := range v.Channels {
		c := &v.Channels[i]
		switch {
		case v.OtherCase || !timed || slices.Contains(odd, i):
			c.Delay = math.NaN()
		case !math.IsNaN(c.Late):
			c.Delay -= c.Late
			least = min(least, c.Delay)
		}
	}
	for i := range v.Channels {
		v.Channels[i].Delay = p.Settable(v.Channels[i].Delay - min(least, 0))
	}
}
