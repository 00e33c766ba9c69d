package verdict_test

import (
	"fmt"
	"math"
	"sync"
	"testing"

	"pappus/testdata/planned"
	"pappus/timing"
	"pappus/timing/recording"
	"pappus/timing/rehearsal"
	"pappus/timing/sweep"
	"pappus/timing/verdict"

	"github.com/google/go-cmp/cmp"
)

// cubeText is six drivers on a cube, each a channel: points, so that their delays can be
// computed by hand and recordings are quickly made.
var cubeText = planned.Faces("cube", "[timing]\nmodel = \"point\"\n%s")

func planOf(t testing.TB, text string) *timing.Plan {
	t.Helper()
	return planned.Text(t, text)
}

// spoil changes what was recorded of a channel; after the last comes that of all.
type spoil func(channel int, x *recording.Take)

// brief returns a sweep whose silences are no longer than what is rehearsed here needs: half of the usual ones are more
// than half of what transforms take.
func brief(t testing.TB, length float64) sweep.Sweep {
	t.Helper()
	s, err := sweep.New(150, 20000, length)
	if err != nil {
		t.Fatal(err)
	}
	s.Lead, s.Gap, s.Tail = 0.2, 0.2, 0.5
	return s
}

// record records and measures a plan's channels, and last all of them.
func record(t testing.TB, p *timing.Plan, set rehearsal.Setting, by spoil) []*recording.Measured {
	t.Helper()
	s := brief(t, 1)
	set.Rate, set.SNR, set.Latency = rate, 60, 0.0113
	stage := rehearsal.NewStage(p)
	var out []*recording.Measured
	for c := range len(p.Channels) + 1 {
		set.Channel, set.Seed = c, uint64(c)
		if c == len(p.Channels) {
			set.Channel = rehearsal.All
		}
		x, err := stage.Record(s, set)
		if err != nil {
			t.Fatal(err)
		}
		if by != nil {
			by(c, &x)
		}
		m, err := recording.Analyse(x, s, recording.Options{})
		if err != nil {
			t.Fatalf("recording %d: %v", c+1, err)
		}
		out = append(out, &m)
	}
	return out
}

// scale multiplies samples.
func scale(x []float64, by float64) {
	for i := range x {
		x[i] *= by
	}
}

// TestOddRecordings: what is wrong with the recordings, not the array, is named, and nothing
// is made up from them; what is wrong with the array is told from what is not.
func TestOddRecordings(t *testing.T) {
	channels := ""
	for d := 1; d <= 6; d++ {
		channels += fmt.Sprintf("[[channel]]\ndrivers = [%d]\n", d)
	}
	p := planOf(t, fmt.Sprintf(cubeText, channels))
	n := len(p.Channels)
	recorded := map[timing.Case]func() []*recording.Measured{}
	for _, c := range []timing.Case{timing.AsBuilt, timing.Aligned} {
		recorded[c] = sync.OnceValue(func() []*recording.Measured { return record(t, p, rehearsal.Setting{Case: c}, nil) })
	}
	reversed := func(channels ...int) func() []*recording.Measured {
		return func() []*recording.Measured {
			return record(t, p, rehearsal.Setting{Case: timing.Aligned, Reversed: channels}, nil)
		}
	}
	spoilt := func(by spoil) func() []*recording.Measured {
		return func() []*recording.Measured { return record(t, p, rehearsal.Setting{Case: timing.Aligned}, by) }
	}
	type channels6 = []verdict.Channel
	tests := []struct {
		name    string
		said    timing.Case
		heard   func() []*recording.Measured
		change  func(m []*recording.Measured, set *verdict.Setting)
		faults  []string // as told has them
		note    verdict.Code
		without bool // delays are not proposed for all
		check   func(c channels6) bool
	}{
		{"all well", timing.Aligned, recorded[timing.Aligned], nil, nil, "", false, nil},
		{"as built", timing.AsBuilt, recorded[timing.AsBuilt], nil, nil, "", false, nil},
		{"no delays set, unsaid", timing.Aligned, recorded[timing.AsBuilt], nil, []string{"no delays set"}, "", true, nil},
		{"delays set, said not", timing.AsBuilt, recorded[timing.Aligned], nil, []string{"delays set"}, "", true, nil},
		{"3 ms late", timing.Aligned, spoilt(func(c int, x *recording.Take) {
			if c == 2 {
				const shift = 144
				copy(x.Samples[shift:], x.Samples[:len(x.Samples)-shift])
			}
		}), nil, []string{"late [3] 3000"}, "", false, func(c channels6) bool { return !c[2].Silent && math.Abs(c[2].Late-0.003) < 2e-6 }},
		{"two exchanged", timing.AsBuilt, recorded[timing.AsBuilt], func(m []*recording.Measured, _ *verdict.Setting) { m[0], m[1] = m[1], m[0] },
			[]string{"exchanged [1 2]"}, "", true, nil},
		{"all play on each", timing.Aligned, recorded[timing.Aligned], func(m []*recording.Measured, set *verdict.Setting) {
			for c := range n {
				m[c] = m[n]
			}
			set.Whole = m[n]
		}, []string{"alike [1 2 3 4 5 6]"}, "", true, nil},
		{"one file twice", timing.Aligned, recorded[timing.Aligned], func(m []*recording.Measured, _ *verdict.Setting) { m[4] = m[3] },
			[]string{"alike [4 5]"}, "", true, nil},
		{"a wire upside down", timing.Aligned, spoilt(func(c int, x *recording.Take) {
			if c == 0 {
				scale(x.Reference, -1)
			}
		}), nil, []string{"wire inverted [1]"}, "", false, func(c channels6) bool { return !c[0].Reversed }},
		{"a wire 20 dB down", timing.Aligned, spoilt(func(c int, x *recording.Take) {
			if c == 0 {
				scale(x.Reference, 0.1)
			}
		}), nil, []string{"wire level [1] -20.0"}, "", false, func(c channels6) bool { return math.IsNaN(c[0].Level) }},
		{"player turned down", timing.Aligned, spoilt(func(c int, x *recording.Take) {
			if c == 0 {
				scale(x.Reference, 0.5)
				scale(x.Samples, 0.5)
			}
		}), nil, nil, "", false, func(c channels6) bool { return math.Abs(c[0].Level) < 0.1 }},
		{"half reversed", timing.Aligned, reversed(0, 1, 2), nil, []string{"halves [1 2 3] [4 5 6]"}, "", false, nil},
		{"all reversed", timing.Aligned, reversed(0, 1, 2, 3, 4, 5), nil, nil, verdict.AllInverted, false, nil},
		{"louder", timing.Aligned, spoilt(func(c int, x *recording.Take) {
			if c == 5 {
				scale(x.Samples, 1.3)
			}
		}), nil, []string{"loud [6] 2.3"}, "", false, nil},
		{"no wire", timing.Aligned, func() []*recording.Measured {
			return record(t, p, rehearsal.Setting{Case: timing.Aligned, Reversed: []int{3}}, func(c int, x *recording.Take) {
				x.Reference = nil
				if c == 1 {
					scale(x.Samples, 0.7)
				}
			})
		}, nil, []string{"quiet [2] -3.1", "reversed [4]"}, verdict.NoWire, true, func(c channels6) bool { return math.IsNaN(c[0].Late) }},
		{"one missing", timing.Aligned, recorded[timing.Aligned], func(m []*recording.Measured, set *verdict.Setting) {
			m[2], set.Missing = nil, []int{2}
		}, nil, "", false, func(c channels6) bool { return c[2].Missing && !c[2].Silent && math.IsNaN(c[2].Level) }},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			measured := append([]*recording.Measured(nil), test.heard()...)
			set := verdict.Setting{Case: test.said}
			if test.change != nil {
				test.change(measured, &set)
			}
			v, err := verdict.OfChannels(p, measured[:n], set)
			if err != nil {
				t.Fatal(err)
			}
			var notes []verdict.Fact
			if test.note != "" {
				notes = []verdict.Fact{{Code: test.note}}
			}
			if diff := cmp.Diff(test.faults, told(v.Faults)) + cmp.Diff(notes, v.Notes); diff != "" {
				t.Error(diff)
			}
			none := 0
			for i, c := range v.Channels {
				if math.IsNaN(c.Delay) {
					none++
				} else if off := c.Delay - p.Channels[i].Delay; test.faults == nil && math.Abs(off) > 5e-6 {
					t.Errorf("channel %d: proposed is %.1f us more than planned", c.ID, 1e6*off)
				}
			}
			if (none > 0) != test.without {
				t.Errorf("%d channels without a proposed delay", none)
			}
			if test.check != nil && !test.check(v.Channels) {
				t.Errorf("%+v", v.Channels)
			}
		})
	}
}
