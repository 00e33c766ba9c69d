package verdict

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"pappus/timing"
	"pappus/timing/recording"
)

// ErrMeasured is for measurements that cannot be held against a plan.
var ErrMeasured = errors.New("unusable measurement")

// What a fault is.
const (
	silent   = -20.0 // dB below the siblings' middle
	quiet    = -1.5  // drivers of one make differ by a decibel or so (common practice)
	alike    = 0.4   // share of the energy that does not fit the plan, at most, for a clear word
	better   = 0.5   // share of that which is left once the right string is taken for dead
	likeRest = 1.0   // dB, how near the gain then must be to its siblings'
)

// Setting says how the channels were measured.
type Setting struct {
	Case timing.Case // AsBuilt: no delays were set; Aligned: the plan's
	// The band in Hz that counts; 0: the design's own, by which it may take delays by the
	// field.
	Low, High float64
}

// Channels is what measurements of all channels, each played alone, tell.
type Channels struct {
	Low, High float64   // Hz, the band that counted
	Channels  []Channel // one for each of Plan.Channels
	// Common is what all channels have alike beside the plan, in dB over Frequency in Hz.
	Frequency, Common []float64
	Words             []string // what is wrong, each a sentence; none where all is well
}

// Channel is what a measurement tells of one channel.
type Channel struct {
	ID      int
	Planned float64 // s, when it should be heard after it is fed, its delay in that included
	Arrival float64 // s, when it was, by the same reckoning; NaN where it was not heard
	Late    float64 // s, the difference, over that of the middle channel; NaN too where it is not like the plan at all
	Error   float64 // s, one standard deviation of Late, by what does not fit
	Delay   float64 // s, proposed; never negative; the plan's where it was not heard
	Level   float64 // dB over what was planned, over the siblings' middle; -Inf where it was not heard
	Unlike  float64 // share of the energy that does not fit the plan
	// Reversed, Silent and Quiet tell of faults; DeadString is the index of the string that
	// does not play, -1: none, or not to be told.
	Reversed, Silent, Quiet bool
	DeadString              int
}

// OfChannels holds one measurement for each channel of a plan, in the same order, against
// it; nil stands for a channel of which nothing was heard. They need a reference, so that
// their times can be compared, and two of them must have been heard.
func OfChannels(p *timing.Plan, measured []*recording.Measured, set Setting) (Channels, error) {
	f, err := newFit(p, measured, set)
	if err != nil {
		return Channels{}, err
	}
	f.solve()
	return f.verdict(p), nil
}

// verdict puts what was fitted into words.
func (f *fit) verdict(p *timing.Plan) Channels {
	out := Channels{Low: f.low, High: f.high, Frequency: f.frequency, Common: f.commonLevel()}
	gain, late, sign := f.middle()
	for c := range p.Channels {
		v := Channel{ID: p.Channels[c].ID, Planned: f.planned[c], Delay: p.Channels[c].Delay,
			Arrival: math.NaN(), Late: math.NaN(), Error: math.NaN(), Level: math.Inf(-1), Unlike: 1, DeadString: -1}
		if one := f.channels[c]; one != nil {
			v.Level = 20*math.Log10(math.Abs(one.gain)) - gain
			v.Unlike = one.unlike
			v.Silent = v.Level < silent
			if !v.Silent {
				f.tell(&v, one, late, sign)
			}
		} else {
			v.Silent = true
		}
		out.Channels = append(out.Channels, v)
	}
	out.propose()
	out.speak(p)
	return out
}

// tell fills in what is known of a channel that plays.
func (f *fit) tell(v *Channel, one *one, late float64, sign float64) {
	if one.unlike > foreign {
		return
	}
	v.Arrival, v.Late, v.Error = v.Planned+one.late, one.late-late, one.lateError
	v.Reversed = one.gain*sign < 0
	v.DeadString = one.dead
	if one.dead >= 0 {
		v.Level += one.without // with what is missing
	}
	v.Quiet = v.Level < quiet*(1+2*one.unlike) // what does not fit is in the level too
}

// propose takes what each channel is late by off its delay, and makes none negative.
func (v *Channels) propose() {
	least := math.Inf(1)
	for i := range v.Channels {
		c := &v.Channels[i]
		if !math.IsNaN(c.Late) {
			c.Delay -= c.Late
			least = min(least, c.Delay)
		}
	}
	if least >= 0 {
		return
	}
	for i := range v.Channels {
		v.Channels[i].Delay -= least
	}
}

// speak says what is wrong.
func (v *Channels) speak(p *timing.Plan) {
	say := func(format string, a ...any) { v.Words = append(v.Words, fmt.Sprintf(format, a...)) }
	reversed := 0
	for i, c := range v.Channels {
		switch {
		case c.Silent:
			say("channel %d is silent: look for a loose wire or an open string, with the amplifier off", c.ID)
			continue
		case c.DeadString >= 0:
			say("channel %d: string %d of %d does not play (drivers %s): look for an open joint, with the amplifier off",
				c.ID, c.DeadString+1, len(p.Channels[i].Strings), ids(p, p.Channels[i].Strings[c.DeadString]))
		case c.Unlike > foreign:
			say("channel %d does not fit the plan (%.0f percent of its energy does not), so nothing is told of it: check that it is this channel, its delay, and the microphone's place", c.ID, 100*c.Unlike)
			continue
		case c.Quiet:
			say("channel %d is %.1f dB quieter than its siblings%s", c.ID, -c.Level, likeString(c.Level, len(p.Channels[i].Strings)))
		}
		if c.Reversed {
			reversed++
			say("channel %d is in reverse polarity: swap its two wires", c.ID)
		}
		if c.Unlike > alike {
			say("channel %d hardly fits the plan (%.0f percent of its energy does not): check that it is this channel, and the microphone's place", c.ID, 100*c.Unlike)
		}
	}
}

// likeString says so where a level in dB is what one string less of several would leave.
func likeString(level float64, strings int) string {
	if strings < 2 || math.Abs(level-20*math.Log10(1-1/float64(strings))) > likeRest {
		return ""
	}
	return fmt.Sprintf(", as if one of its %d strings did not play; measure its impedance, which tells", strings)
}

// ids returns the numbers of mounts on the body, for people.
func ids(p *timing.Plan, mounts []int) string {
	numbers := make([]int, len(mounts))
	for i, m := range mounts {
		numbers[i] = p.Array.Mounts[m].ID
	}
	slices.Sort(numbers)
	text := ""
	for i, n := range numbers {
		if i > 0 {
			text += ", "
		}
		text += fmt.Sprint(n)
	}
	return text
}
