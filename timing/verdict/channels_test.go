package verdict_test

import (
	"context"
	"errors"
	"fmt"
	"math"
	"slices"
	"sync"
	"testing"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/timing"
	"pappus/timing/recording"
	"pappus/timing/rehearsal"
	"pappus/timing/sweep"
	"pappus/timing/verdict"
)

const rate = 48000.0

// builtIn is the built-in design's plan.
var builtIn = sync.OnceValues(func() (*timing.Plan, error) {
	d, err := design.Parse("lantern.toml", design.DefaultTOML())
	if err != nil {
		return nil, err
	}
	a, err := layout.Build(d)
	if err != nil {
		return nil, err
	}
	return timing.Make(context.Background(), a)
})

func demo(t testing.TB) *timing.Plan {
	t.Helper()
	p, err := builtIn()
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// demoSweep rises from the demo's high-pass.
func demoSweep(t testing.TB, p *timing.Plan) sweep.Sweep {
	t.Helper()
	s, err := sweep.New(p.Protection.Corner, 20000, 3)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// hear records every channel in turn, and measures.
func hear(t testing.TB, p *timing.Plan, set rehearsal.Setting, silent ...int) []*recording.Measured {
	t.Helper()
	s := demoSweep(t, p)
	out := make([]*recording.Measured, len(p.Channels))
	stage := rehearsal.NewStage(p)
	for c := range out {
		set.Channel, set.Seed, set.Rate = c, uint64(c), rate
		x, err := stage.Record(s, set)
		if err != nil {
			t.Fatal(err)
		}
		m, err := recording.Analyse(x, s, recording.Options{})
		if err != nil {
			if len(silent) > 0 && silent[0] == c && errors.Is(err, recording.ErrQuiet) {
				continue
			}
			t.Fatalf("channel %d: %v", c, err)
		}
		out[c] = &m
	}
	return out
}

// withStrings returns a channel that has at least two strings, and another channel.
func withStrings(t testing.TB, p *timing.Plan) (several, other int) {
	t.Helper()
	several = -1
	for c, bank := range p.Banks {
		if len(bank.Strings) > 1 && several < 0 {
			several = c
		} else {
			other = c
		}
	}
	if several < 0 {
		t.Fatal("no channel has two strings")
	}
	return several, other
}

// TestDemo: with one dead string and one channel in reverse, both are found and nothing else,
// and the delays that the plan gave are proposed within 5 microseconds.
func TestDemo(t *testing.T) {
	p := demo(t)
	dead, reversed := withStrings(t, p)
	for _, test := range []struct {
		name       string
		c          timing.Case
		snr, drift float64
		faults     bool
	}{
		{"no faults", timing.AsBuilt, 60, 0, false},
		{"two faults", timing.AsBuilt, 60, 0, true},
		{"two faults, delays set, clocks apart", timing.Aligned, 60, 80, true},
		{"two faults in noise", timing.AsBuilt, 40, -100, true},
	} {
		t.Run(test.name, func(t *testing.T) {
			set := rehearsal.Setting{Case: test.c, SNR: test.snr, Drift: test.drift, Latency: 0.0123}
			if test.faults {
				set.DeadStrings, set.Reversed = [][2]int{{dead, 1}}, []int{reversed}
			}
			v, err := verdict.OfChannels(p, hear(t, p, set), verdict.Setting{Case: test.c})
			if err != nil {
				t.Fatal(err)
			}
			for c, got := range v.Channels {
				if late := 1e6 * (got.Delay - p.Channels[c].Delay); math.Abs(late) > 5 {
					t.Errorf("channel %d: a delay of %.1f us, the plan's and %.1f", got.ID, 1e6*got.Delay, late)
				}
				if want := test.faults && c == reversed; got.Reversed != want {
					t.Errorf("channel %d: reversed %v", got.ID, got.Reversed)
				}
				want := -1
				if test.faults && c == dead {
					want = 1
				}
				if got.DeadString != want || got.Silent || got.Quiet != (want >= 0) {
					t.Errorf("channel %d: dead string %d, want %d; silent %v, quiet %v, level %.2f dB, unlike %.4f", got.ID, got.DeadString, want, got.Silent, got.Quiet, got.Level, got.Residual)
				}
				t.Logf("channel %d: late %.2f us (%.2f), level %.2f dB, unlike %.2g", got.ID, 1e6*got.Late, 1e6*got.Error, got.Level, got.Residual)
			}
			var want []string
			if test.faults {
				want = []string{
					fmt.Sprintf("dead string [%d] 2 of %d", p.Channels[dead].ID, len(p.Banks[dead].Strings)),
					fmt.Sprintf("reversed [%d]", p.Channels[reversed].ID)}
				slices.Sort(want)
			}
			if got := slices.Sorted(slices.Values(told(v.Faults))); !slices.Equal(got, want) {
				t.Errorf("faults %q, want %q", got, want)
			}
		})
	}
}

// told writes facts so that they can be compared: code, channels, others, value in dB or time
// in us.
func told(facts []verdict.Fact) []string {
	var out []string
	for _, f := range facts {
		text := string(f.Code)
		for _, channels := range [][]int{f.Channels, f.Others} {
			if len(channels) > 0 {
				text += fmt.Sprint(" ", channels)
			}
		}
		switch {
		case f.String > 0:
			text += fmt.Sprintf(" %d of %d", f.String, f.Strings)
		case f.Strings > 0:
			text += fmt.Sprintf(" one of %d", f.Strings)
		case f.Value != 0:
			text += fmt.Sprintf(" %.1f", f.Value)
		}
		for _, s := range f.Times {
			text += fmt.Sprintf(" %.0f", 1e6*s)
		}
		out = append(out, text)
	}
	return out
}
