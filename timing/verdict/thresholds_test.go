package verdict

import (
	"fmt"
	"math"
	"math/cmplx"
	"slices"
	"testing"

	"pappus/timing"
	"pappus/timing/recording"
)

// TestThresholds: where each line is drawn, and why there.
func TestThresholds(t *testing.T) {
	nan := math.NaN()
	level := func(db, err, scatter float64) string {
		v, c := Channels{Scatter: scatter, ScatterBeside: scatter}, Channel{Level: db, Beside: nan, LevelError: err}
		switch v.judge(&c); {
		case c.Quiet:
			return "quiet"
		case c.Loud:
			return "loud"
		}
		return ""
	}
	late := func(s, err, scatter float64) bool {
		v := Channels{ScatterTime: scatter}
		return math.Abs(s) > v.ordinaryTime(Channel{Error: err})
	}
	fault := func(c Channel) Code {
		c.DeadString = -1
		v := Channels{Channels: []Channel{c, {DeadString: -1}, {DeadString: -1}}}
		v.tellFaults(&timing.Plan{Spot: timing.Spot{Channels: make([]timing.Channel, 3)}, Banks: make([]timing.Bank, 3)}, nil)
		if len(v.Faults) == 0 {
			return ""
		}
		return v.Faults[0].Code
	}
	recorded := func(by float64) *channel { // by a share of the energy of both apart from 1
		// (a-1)2/(a2+1) = by
		a := (1 + math.Sqrt(by*(2-by))) / (1 - by)
		return &channel{measured: &recording.Measured{Whole: recording.Response{Transfer: []complex128{complex(a, 0)}}}, plan: []complex128{1}}
	}
	alike := func(measured, planned float64) bool {
		one, other := recorded(0), recorded(measured)
		other.index, other.plan = 1, recorded(planned).whole()
		return len((&fit{channels: []*channel{one, other}, to: 1}).alike()) > 0
	}
	band := func(db float64) bool { return Level{Bands: []Band{{Centre: 1000, Difference: db}}}.check() != nil }
	third := func(known int) int {
		v := Level{Low: 500, High: 4000, Frequency: []float64{880, 1150}}
		measured, planned := []float64{1, 1}, []float64{1, 1}
		for i := range 20 {
			value := 1.0
			if i >= known {
				value = nan
			}
			v.Frequency = slices.Insert(v.Frequency, i+1, 900+10*float64(i))
			measured, planned = slices.Insert(measured, i+1, value), slices.Insert(planned, i+1, 1)
		}
		v.match(measured, planned)
		return len(v.Bands)
	}
	const us = 1e-6
	for _, test := range []struct {
		why       string
		got, want any
	}{
		{"one string of six that is dead leaves 1.58 dB less, and is told", level(-1.58, 0, 0), "quiet"},
		{"drivers of one make differ by 1.4 dB, which is no fault", level(-1.4, 0, 0), ""},
		{"as little is loud", level(1.58, 0, 0), "loud"},
		{"95 of 100 lie within two standard errors: one of 1 dB hides 2.4 dB", level(-2.4, 1, 0), ""},
		{"and does not hide 2.6 dB", level(-2.6, 1, 0), "quiet"},
		{"however far siblings scatter, a dead string of four, 2.5 dB, is just told", level(-2.51, 0, 9), "quiet"},
		{"but nothing less is", level(-2.4, 0, 9), ""},
		{"19 dB less is a weak channel", isSilent(-19), false},
		{"21 dB less is what the others' sound through its wires leaves", isSilent(-21), true},
		{"a dead string of four, 2.5 dB, is not taken for one of three, 3.52 dB", likeString(20*math.Log10(3.0/4), 3), false},
		{"one of three is, as near as drivers are", likeString(20*math.Log10(2.0/3)-0.9, 3), true},
		{"or as far the other way", likeString(20*math.Log10(2.0/3)+0.9, 3), true},
		{"one of two seats is not most of them", areMost(1, 2), false},
		{"two of three are", areMost(2, 3), true},
		{"half of the energy of another thing tells nothing of the channel", fault(Channel{Residual: 0.52}), Unlike},
		{"with a little more than half of its own it is to be doubted", fault(Channel{Residual: 0.48}), Vague},
		{"from 42 percent on", fault(Channel{Residual: 0.42}), Vague},
		{"with 38 percent it is what a room's echoes do", fault(Channel{Residual: 0.38}), Code("")},
		{"19 us, 6.5 mm of air, is as near as a microphone is placed", late(19*us, 0, 0), false},
		{"21 us is not", late(-21*us, 0, 0), true},
		{"siblings' scatter hides twice 20 us at most, 45 us in all", late(44*us, 0, 1), false},
		{"and no more", late(46*us, 0, 1), true},
		{"recordings that differ by 29.6 dB are of different channels", alike(1.1e-3, 0.5), false},
		{"by 30.5 dB not even a microphone's noise apart", alike(0.9e-3, 0.5), true},
		{"unless the plan tells them apart by no more than 13 dB itself", alike(1e-4, 0.045), false},
		{"which it does from 13 dB on", alike(1e-4, 0.055), true},
		{"a file twice is the same to rounding", alike(0.9e-9, 0), true},
		{"and no two recordings are", alike(1.1e-9, 0), false},
		{"a wire 1.1 dB off that explains the level is a gain that was turned", isTurned(1.1, -1.1), true},
		{"one 0.9 dB off is as near as knobs are set", isTurned(0.9, 3), false},
		{"and where the level is as planned nothing was wrong", isTurned(3, 0.9), false},
		{"39 dB over the plan are a gain that was not written down", band(39), false},
		{"41 dB are another sweep", band(41), true},
		{"of a third of 20 frequencies 11 tell of it", third(11), 1},
		{"and 9 do not", third(9), 0},
		{"an array that is 2.1 dB uneven is looked at the other way", Level{Uneven: 2.1}.isOther(Level{Uneven: 0.9}), true},
		{"one of 1.9 dB is as good as rooms let it be", Level{Uneven: 1.9}.isOther(Level{Uneven: 0.1}), false},
		{"the other way must be twice as good", Level{Uneven: 4}.isOther(Level{Uneven: 2.1}), false},
		{"which 1.9 of 4 dB is", Level{Uneven: 4}.isOther(Level{Uneven: 1.9}), true},
		{"seats that are 1.1 dB off their plans are looked at channel by channel", isSuspect(1.1, 0.1, 1), true},
		{"as drivers are off, by 0.9 dB, they may be", isSuspect(0.9, 0.1, 1), false},
		{"the channel must be twice as good as none", isSuspect(4, 2.1, 5), false},
		{"and as any other", isSuspect(4, 1.6, 3), false},
		{"which 1.4 of 3 dB is", isSuspect(4, 1.4, 3), true},
		{"what is as odd as may be costs 1 by its shape, level and time each", costOf(0.05, 1, 30*us), 3.0},
		{"and 25 at most", costOf(2, 10, 1), 75.0},
		{"an exchange saves more than two such oddities of two channels", isExchange(10, 1.5), true},
		{"which 7.6 is not", isExchange(9, 1.4), false},
		{"and leaves a quarter at most", isExchange(100, 26), false},
		{"as 24 of 100 is", isExchange(100, 24), true},
	} {
		t.Run(test.why, func(t *testing.T) {
			if test.got != test.want && fmt.Sprintf("%.9v", test.got) != fmt.Sprintf("%.9v", test.want) {
				t.Errorf("%v, want %v", test.got, test.want)
			}
		})
	}
}

// whole returns a synthetic channel's recording.
func (o *channel) whole() []complex128 { return o.measured.Whole.Transfer }

// TestOtherCase: channels that are as late as their delays, or early, look as if those were
// set where they were said not to be; most must, and most must not fit what was said.
func TestOtherCase(t *testing.T) {
	const us = 1e-6
	spread := []float64{0, 100 * us, 200 * us, 300 * us, 400 * us, 500 * us}
	for _, test := range []struct {
		why    string
		delays []float64
		off    []float64 // s, over what the other case makes of it
		want   bool
	}{
		{"all as by the other case", spread, nil, true},
		{"within a tenth of the span, 50 us, is in time", spread, []float64{45 * us, 0, 0, 0, 0, -45 * us}, true},
		{"beyond it is not", spread, []float64{55 * us, 0, 0, 0, -55 * us, 0}, false},
		{"five of six are most of them", spread, []float64{200 * us}, true},
		{"four of six may be chance", spread, []float64{200 * us, 0, 0, 0, 0, -200 * us}, false},
		{"half of the channels may have no delay, and fit both", []float64{0, 0, 0, 300 * us, 400 * us, 500 * us}, nil, true},
		{"three of five fit what was said: that is what was played", []float64{0, 0, 0, 300 * us, 400 * us}, nil, false},
		{"delays of a few microseconds tell nothing", []float64{0, 6 * us, 12 * us, 18 * us}, nil, false},
	} {
		t.Run(test.why, func(t *testing.T) {
			var v Channels
			p := new(timing.Plan)
			for i, delay := range test.delays {
				if i < len(test.off) {
					v.Channels = append(v.Channels, Channel{Late: delay + test.off[i]})
				} else {
					v.Channels = append(v.Channels, Channel{Late: delay})
				}
				p.Channels = append(p.Channels, timing.Channel{Delay: delay})
			}
			if got := v.otherCase(p, timing.AsBuilt); got != test.want {
				t.Errorf("%v, want %v", got, test.want)
			}
		})
	}
}

// TestScatter: of normal values it is their standard deviation, one of them far off or not;
// three values tell nothing.
func TestScatter(t *testing.T) {
	var x []float64
	for i := range 1001 {
		x = append(x, math.Sqrt2*math.Erfinv(2*(float64(i)+0.5)/1001-1))
	}
	if s := scatter(append(x, 1000)); math.Abs(s-1) > 0.01 {
		t.Errorf("%g, want 1", s)
	}
	if scatter([]float64{1, 2, 3}) != 0 || scatter([]float64{1, 2, 3, 5}) == 0 {
		t.Error("four values are the least that scatter")
	}
}

// TestBury: a string is taken for dead where the rest is within a decibel of the siblings, the
// channel is weaker than drivers differ by half, and half of what did not fit is left at most.
func TestBury(t *testing.T) {
	for _, test := range []struct {
		why  string
		gain float64 // dB, of the string that plays
		echo float64 // share of the energy of what is heard that nothing explains
		want int
	}{
		{"as planned, but for a string", 0, 0.01, 1},
		{"0.9 dB louder, as drivers of one make are", 0.9, 0.01, 1},
		{"1.1 dB louder is something else", 1.1, 0.01, -1},
		{"0.9 dB quieter", -0.9, 0.01, 1},
		{"1.1 dB quieter", -1.1, 0.01, -1},
		{"45 percent of what did not fit is left", 0, 0.29, 1},
		{"55 percent is left", 0, 0.37, -1},
	} {
		t.Run(test.why, func(t *testing.T) {
			f, o := deadString(math.Pow(10, test.gain/20), test.echo)
			f.estimate(o)
			if f.bury(o, 0); o.dead != test.want {
				t.Errorf("string %d of level %.2f dB, unlike %.3f; want %d", o.dead, o.level(), o.residual, test.want)
			}
		})
	}
}

// deadString returns a channel of two strings, of which the second is heard 100 us after the
// first and does not play: the first has a gain, and a share of the energy of what is heard is
// of something else.
func deadString(gain, echo float64) (*fit, *channel) {
	f := &fit{low: 1000, high: 8000}
	o := &channel{index: 0, dead: -1, strings: make([][]complex128, 2)}
	for i := range 64 {
		hz := 1000 * math.Exp2(float64(i)/21)
		f.frequency, f.common = append(f.frequency, hz), append(f.common, 1)
		first := cmplx.Rect(1, 0)
		o.strings[0] = append(o.strings[0], first)
		o.strings[1] = append(o.strings[1], cmplx.Rect(1, -2*math.Pi*hz*100e-6))
		other := cmplx.Rect(math.Sqrt(echo/(1-echo)), 1.9*float64(i*i))
		o.heard = append(o.heard, complex(gain, 0)*(first+other))
	}
	o.leave(-1)
	f.channels = []*channel{o}
	return f, o
}
