package timing_test

import (
	"math"
	"testing"

	"pappus/timing"

	"github.com/google/go-cmp/cmp"
)

// TestHeld on the demo, whose 7.1 ohm go in strings of 2 at 4 ohm, with long strings
// allowed by the builder: channels of 5 drivers can only be one string of 5, in which
// each gets 2/5 of the voltage of one in a string of 2: 7.96 dB (Ohm's law). What is
// promised of the cure is what a plan with it has.
func TestHeld(t *testing.T) {
	a := demo(t)
	a.Timing.DelaysBy, a.Wiring.LongestString = "path", 5
	p := plan(t, a)
	var want []int
	for _, c := range p.Channels {
		if len(c.Mounts) == 5 {
			want = append(want, c.ID)
		}
	}
	h, held := p.Held()
	if diff := cmp.Diff(want, h.Channels); diff != "" || !held || h.Series != 5 || math.Abs(h.By-20*math.Log10(2.5)) > 1e-9 {
		t.Fatalf("%+v, %v: %s", h, held, diff)
	}
	f, found := finding(p, "strings_hold_down")
	if d := cmp.Diff(any(h), f.Fact); !found || d != "" || h.Cure != 2 {
		t.Errorf("%v, %+v: %s", found, h, d)
	}
	a.Wiring.LongestString = 0
	cured := plan(t, a)
	if longestOf(cured) != h.Cure || len(cured.Channels) != len(p.Channels) || math.Abs(cured.Aligned.Smear-h.Smear) > 1e-12 {
		t.Errorf("strings of %d, %d channels, %g s; promised %+v", longestOf(cured), len(cured.Channels), cured.Aligned.Smear, h)
	}
	louder := 0.0
	for i, hz := range p.Response.Frequency {
		if hz < 400 { // where nothing is lost
			louder = cured.Response.Aligned[i] - p.Response.Aligned[i]
		}
	}
	if math.Abs(louder-h.Louder) > 0.5 {
		t.Errorf("%g dB louder, promised %g", louder, h.Louder)
	}
	if _, still := cured.Held(); still {
		t.Error("still held down")
	}
}

// TestNothingHeld: equal strings hold nothing down, nor do channels laid out by hand.
func TestNothingHeld(t *testing.T) {
	one := demo(t)
	one.Wiring.Channels = 1
	for name, p := range map[string]*timing.Plan{"one channel": plan(t, one), "by hand": plan(t, byHand(t, 1e-6, 0, 100))} {
		if h, held := p.Held(); held {
			t.Errorf("%s: %v", name, h)
		}
	}
}

// TestLongestString: no channel has longer strings where there is such a split, and
// where there is none the plan says so.
func TestLongestString(t *testing.T) {
	tests := []struct {
		name           string
		split          string
		mounts, most   int
		channels, long int
		warns          bool
	}{
		{"by arrival", "arrival", 39, 2, 8, 2, false},
		{"by height", "height", 39, 2, 8, 2, false},
		{"seven in one channel", "arrival", 7, 3, 1, 7, true},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			a := demo(t)
			a.Mounts = a.Mounts[:test.mounts]
			a.Wiring.Split, a.Wiring.Channels, a.Wiring.LongestString = test.split, test.channels, test.most
			p := plan(t, a)
			longest := 0
			for _, c := range p.Channels {
				longest = max(longest, c.Series)
			}
			f, warns := finding(p, "strings_too_long")
			if warns && f.Fact != (timing.LongStrings{Longest: test.long, Asked: test.most, Channels: test.channels}) {
				t.Errorf("%+v", f)
			}
			if longest != test.long || len(p.Channels) != test.channels || warns != test.warns {
				t.Errorf("strings of %d in %d channels; warnings %+v", longest, len(p.Channels), p.Warnings)
			}
		})
	}
}
