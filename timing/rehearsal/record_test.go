package rehearsal_test

import (
	"errors"
	"math"
	"slices"
	"testing"

	"pappus/testdata/planned"
	"pappus/timing"
	"pappus/timing/rehearsal"
	"pappus/timing/sweep"
)

func demo(t testing.TB) (*timing.Plan, sweep.Sweep) {
	t.Helper()
	p := planned.Demo(t, nil)
	s, err := sweep.New(200, 16000, 1)
	if err != nil {
		t.Fatal(err)
	}
	return p, s
}

// TestRecord: the same setting gives the same recording, not clipped; channels add up to the
// whole; a reversed one is turned over.
func TestRecord(t *testing.T) {
	p, s := demo(t)
	record := func(set rehearsal.Setting) []float64 {
		t.Helper()
		set.Rate, set.SNR = 44100, math.Inf(1)
		x, err := rehearsal.NewStage(p).Record(s, set)
		if err != nil {
			t.Fatal(err)
		}
		if len(x.Samples) != len(x.Reference) || slices.Max(x.Samples) >= 1 || slices.Min(x.Samples) <= -1 {
			t.Fatalf("%d samples and %d, up to %g", len(x.Samples), len(x.Reference), slices.Max(x.Samples))
		}
		return x.Samples
	}
	whole := record(rehearsal.Setting{Channel: rehearsal.All})
	if !slices.Equal(whole, record(rehearsal.Setting{Channel: rehearsal.All})) {
		t.Error("not the same again")
	}
	sum := make([]float64, len(whole))
	for c := range p.Channels {
		one, sign := record(rehearsal.Setting{Channel: c, Reversed: []int{1}}), 1.0
		if c == 1 {
			sign = -1
		}
		for i, v := range one {
			sum[i] += sign * v
		}
	}
	for i, v := range whole {
		if math.Abs(sum[i]-v) > 1e-9 {
			t.Fatalf("sample %d: channels add up to %g, all give %g", i, sum[i], v)
		}
	}
}

func TestErrors(t *testing.T) {
	p, s := demo(t)
	usual := rehearsal.Setting{Rate: 48000, SNR: 60}
	for name, change := range map[string]func(*rehearsal.Setting){
		"no such channel": func(set *rehearsal.Setting) { set.Channel = len(p.Channels) },
		"one point":       func(set *rehearsal.Setting) { set.Case = timing.IdealPoint },
		"noise":           func(set *rehearsal.Setting) { set.SNR = math.NaN() },
		"clock":           func(set *rehearsal.Setting) { set.Drift = 1e6 },
		"latency":         func(set *rehearsal.Setting) { set.Latency = -1 },
	} {
		set := usual
		change(&set)
		if _, err := rehearsal.NewStage(p).Record(s, set); !errors.Is(err, rehearsal.ErrSetting) {
			t.Errorf("%s: %v", name, err)
		}
	}
	usual.Rate = 8000
	if _, err := rehearsal.NewStage(p).Record(s, usual); !errors.Is(err, sweep.ErrRate) {
		t.Errorf("rate: %v", err)
	}
	if _, err := rehearsal.NewStage(p).Record(sweep.Sweep{}, usual); !errors.Is(err, sweep.ErrSweep) {
		t.Errorf("no sweep: %v", err)
	}
}
