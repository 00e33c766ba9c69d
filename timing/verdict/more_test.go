package verdict_test

import (
	"errors"
	"math"
	"testing"

	"pappus/timing"
	"pappus/timing/biquad"
	"pappus/timing/recording"
	"pappus/timing/rehearsal"
	"pappus/timing/verdict"

	"github.com/google/go-cmp/cmp"
	"gonum.org/v1/gonum/spatial/r3"
)

// TestWhatThePlanDoesNotKnow: drivers with a resonance that the plan does not know of, the
// same for all, change nothing; a channel late by half a millisecond, one quieter by 2.5 dB, and
// one that was not heard, are told.
func TestWhatThePlanDoesNotKnow(t *testing.T) {
	p := demo(t)
	s := demoSweep(t, p)
	const late, weak, mute = 3, 5, 6
	const shift = 28 // samples, 0.58 ms: as much as a delay that was not set
	// A peak of +8 dB, Q 1.5 at 900 Hz (W3C Audio EQ Cookbook).
	w, a := 2*math.Pi*900/rate, math.Pow(10, 8.0/40)
	alpha := math.Sin(w) / 3
	drivers := biquad.Chain{{B0: (1 + alpha*a) / (1 + alpha/a), B1: -2 * math.Cos(w) / (1 + alpha/a), B2: (1 - alpha*a) / (1 + alpha/a),
		A1: -2 * math.Cos(w) / (1 + alpha/a), A2: (1 - alpha/a) / (1 + alpha/a)}}
	measured := make([]*recording.Measured, len(p.Channels))
	for c := range measured {
		x, err := rehearsal.NewStage(p).Record(s, rehearsal.Setting{Channel: c, Rate: rate, SNR: 60, Seed: uint64(c)})
		if err != nil {
			t.Fatal(err)
		}
		drivers.Filter(x.Samples, x.Samples)
		switch c {
		case late:
			copy(x.Samples[shift:], x.Samples[:len(x.Samples)-shift])
		case weak:
			for i := range x.Samples {
				x.Samples[i] *= math.Pow(10, -2.5/20)
			}
		case mute:
			x, err = rehearsal.NewStage(p).Record(s, rehearsal.Setting{Channel: c, Rate: rate, SNR: 60, DeadStrings: all(p, c)})
			if err != nil {
				t.Fatal(err)
			}
		}
		m, err := recording.Analyse(x, s, recording.Options{})
		if c == mute {
			if !errors.Is(err, recording.ErrQuiet) {
				t.Fatalf("a silent channel: %v", err)
			}
			continue
		}
		if err != nil {
			t.Fatal(err)
		}
		measured[c] = &m
	}
	v, err := verdict.OfChannels(p, measured, verdict.Setting{})
	if err != nil {
		t.Fatal(err)
	}
	for c, got := range v.Channels {
		want, level := 0.0, 0.0
		if c == late {
			want = shift / rate
		}
		if c == weak {
			level = -2.5
		}
		if c == mute {
			if !got.Silent || !math.IsNaN(got.Late) {
				t.Errorf("the silent one: %+v", got)
			}
			continue
		}
		if math.Abs(got.Late-want) > 3e-6 || math.Abs(got.Level-level) > 0.2 || got.Quiet != (c == weak) || got.Reversed || got.Silent || got.DeadString >= 0 {
			t.Errorf("channel %d: late %.2f us, want %.2f; %+v", got.ID, 1e6*got.Late, 1e6*want, got)
		}
		least := math.Inf(1)
		for _, other := range p.Channels {
			least = min(least, other.Delay)
		}
		if got.Delay < 0 {
			t.Errorf("channel %d: delay %g", got.ID, got.Delay)
		}
	}
	// The peak is what all have alike: its height over the level two octaves above.
	peak, far := 0.0, 0.0
	for i, hz := range v.Frequency {
		if math.Abs(hz/900-1) < 0.01 {
			peak = v.Common[i]
		}
		if math.Abs(hz/7000-1) < 0.01 {
			far = v.Common[i]
		}
	}
	if math.Abs(peak-far-8) > 0.4 {
		t.Errorf("all have %.2f dB alike, want 8", peak-far)
	}
	if diff := cmp.Diff([]string{"quiet [6] -2.5", "silent [7]", "late [4] 583"}, told(v.Faults)); diff != "" {
		t.Error(diff)
	}
}

// all returns all strings of a channel.
func all(p *timing.Plan, c int) [][2]int {
	var out [][2]int
	for s := range p.Banks[c].Strings {
		out = append(out, [2]int{c, s})
	}
	return out
}

// TestLevel: the whole array at three places is as planned, within the error bars and the
// steps of the axis, whatever the microphone's gain.
func TestLevel(t *testing.T) {
	p := demo(t)
	s := demoSweep(t, p)
	var positions []verdict.Position
	for i, by := range []r3.Vec{{}, {Y: 0.15}, {Z: 0.1}} {
		there := *p
		array := *p.Array
		array.Spot = r3.Add(array.Spot, by)
		there.Array = &array // the same delays, heard from elsewhere
		x, err := rehearsal.NewStage(&there).Record(s, rehearsal.Setting{Case: timing.Aligned, Channel: rehearsal.All, Rate: rate, SNR: 50, Seed: uint64(i)})
		if err != nil {
			t.Fatal(err)
		}
		m, err := recording.Analyse(x, s, recording.Options{})
		if err != nil {
			t.Fatal(err)
		}
		positions = append(positions, verdict.Position{At: array.Spot, Measured: m})
	}
	one, err := verdict.OfLevel(p, positions[:1], verdict.LevelSetting{Case: timing.Aligned})
	if err != nil {
		t.Fatal(err)
	}
	if len(one.Bands) < 15 {
		t.Errorf("%d bands", len(one.Bands))
	}
	for _, b := range one.Bands {
		if math.Abs(b.Difference) > 0.1+4*b.Error {
			t.Errorf("%.0f Hz: %.2f dB over the plan, error %.2f", b.Centre, b.Difference, b.Error)
		}
	}
	if one.Uneven > 0.1 {
		t.Errorf("uneven by %.2f dB", one.Uneven)
	}
	// With another case than played it does not fit.
	wrong, err := verdict.OfLevel(p, positions[:1], verdict.LevelSetting{Case: timing.AsBuilt})
	if err != nil {
		t.Fatal(err)
	}
	if wrong.Uneven < 1 {
		t.Errorf("without delays it is uneven by %.2f dB only", wrong.Uneven)
	}
	if wrong.Uneven > 2 && (!wrong.OtherCase || wrong.OtherUneven > 0.1) || one.OtherCase {
		t.Errorf("which case fits: said wrongly %+v, said rightly %v", wrong.OtherUneven, one.OtherCase)
	}
	// Bands go as far up as the sweep does, to the last third of an octave below 18 kHz.
	if last := one.Bands[len(one.Bands)-1].Centre; math.Abs(last/15849-1) > 0.01 && math.Abs(last/12589-1) > 0.01 {
		t.Errorf("the last band is at %.0f Hz", last)
	}
	// Another sweep than was played comes out far over the plan.
	other := positions[0]
	other.Measured.Whole.Transfer = append([]complex128(nil), other.Measured.Whole.Transfer...)
	for i := len(other.Measured.Frequency) * 3 / 4; i < len(other.Measured.Frequency); i++ {
		other.Measured.Whole.Transfer[i] *= 1e3
	}
	if _, err := verdict.OfLevel(p, []verdict.Position{other}, verdict.LevelSetting{Case: timing.Aligned}); !errors.Is(err, verdict.ErrMeasured) {
		t.Errorf("60 dB over the plan: %v", err)
	}
	if _, err := verdict.OfLevel(p, positions, verdict.LevelSetting{Case: timing.Aligned}); err != nil {
		t.Error(err)
	}
	if _, err := verdict.OfLevel(p, nil, verdict.LevelSetting{}); !errors.Is(err, verdict.ErrMeasured) {
		t.Errorf("no position: %v", err)
	}
	if _, err := verdict.OfLevel(p, positions[:1], verdict.LevelSetting{Low: 30000, High: 40000}); !errors.Is(err, verdict.ErrMeasured) {
		t.Errorf("nothing to match: %v", err)
	}
}

func TestChannelErrors(t *testing.T) {
	p := demo(t)
	none := make([]*recording.Measured, len(p.Channels))
	alone := append([]*recording.Measured(nil), none...)
	f := make([]float64, 100)
	for i := range f {
		f[i] = 500 + 50*float64(i)
	}
	alone[0] = &recording.Measured{Frequency: f, Whole: recording.Response{Transfer: make([]complex128, 100)}}
	for name, measured := range map[string][]*recording.Measured{
		"too few": none[1:], "none heard": none, "only one heard": alone,
	} {
		if _, err := verdict.OfChannels(p, measured, verdict.Setting{}); !errors.Is(err, verdict.ErrMeasured) {
			t.Errorf("%s: %v", name, err)
		}
	}
}
