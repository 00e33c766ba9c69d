package timing_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pappus/layout"
	"pappus/layout/advice"
	"pappus/timing"

	"github.com/google/go-cmp/cmp"
)

// TestHeld on the demo, whose 7.1 ohm go in strings of 2 at 4 ohm: channels of 5
// drivers can only be one string of 5, in which each gets 2/5 of the voltage of one
// in a string of 2: 7.96 dB (Ohm's law). What is promised of the cure is what a plan
// with it has.
func TestHeld(t *testing.T) {
	a := demo(t)
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
	if h.Cure == 0 || h.Cure >= 5 || math.Abs(h.Louder-20*math.Log10(5/float64(h.Cure))) > 1e-9 || h.Smear > 1.1*p.Aligned.Smear {
		t.Fatalf("no cure: %+v", h)
	}
	for _, part := range []string{"Channels 2, 5 and 6 hold", "8.0 dB", "longest_string = 2", "8.0 dB louder"} {
		if !strings.Contains(h.String(), part) {
			t.Errorf("%q says nothing of %q", h, part)
		}
	}
	a.Wiring.LongestString = h.Cure
	cured := plan(t, a)
	longest := 0
	for _, c := range cured.Channels {
		longest = max(longest, c.Series)
	}
	if longest != h.Cure || len(cured.Channels) != len(p.Channels) || math.Abs(cured.Aligned.Smear-h.Smear) > 1e-12 {
		t.Errorf("strings of %d, %d channels, %g s; promised %+v", longest, len(cured.Channels), cured.Aligned.Smear, h)
	}
	louder := slices.Max(cured.Response.InStep) - slices.Max(p.Response.InStep)
	if math.Abs(louder-h.Louder) > 1e-6 {
		t.Errorf("%g dB louder, promised %g", louder, h.Louder)
	}
	if slices.ContainsFunc(cured.Warnings, func(f advice.Finding) bool { return strings.Contains(f.String(), "longest_string") }) {
		t.Errorf("warns: %q", cured.Warnings)
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
			warns := slices.ContainsFunc(p.Warnings, func(f advice.Finding) bool { return strings.Contains(f.String(), "longest_string") })
			if longest != test.long || len(p.Channels) != test.channels || warns != test.warns {
				t.Errorf("strings of %d in %d channels; warnings %q", longest, len(p.Channels), p.Warnings)
			}
		})
	}
}

// byHand gives the demo a channel for each delay in us.
func byHand(t testing.TB, step float64, delays ...float64) *layout.Array {
	a := demo(t)
	a.Wiring.Channels, a.Channels, a.Processor.Step = 0, nil, step
	for i, d := range delays {
		a.Channels = append(a.Channels, layout.Channel{ID: i + 1, Series: 1, Parallel: 1, NominalOhm: 8, DCOhm: 7.1, Delay: d * 1e-6})
	}
	for m := range a.Mounts {
		c := &a.Channels[m%len(delays)]
		c.Mounts = append(c.Mounts, m)
	}
	return a
}
