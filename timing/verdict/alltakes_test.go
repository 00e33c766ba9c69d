package verdict_test

import (
	"errors"
	"math"
	"testing"

	"pappus/timing"
	"pappus/timing/rehearsal"
	"pappus/timing/sweep"
	"pappus/timing/verdict"

	"github.com/google/go-cmp/cmp"
)

// TestTakesOfAll: of four recordings of all channels the mean counts, and its noise is 6 dB
// lower; one that is of something else is named; what they scatter beyond the noise, as of a
// microphone that is turned up in the treble of one, is part of the errors there.
func TestTakesOfAll(t *testing.T) {
	p := free(t, demo(t))
	s, err := sweep.New(150, 20000, 1)
	if err != nil {
		t.Fatal(err)
	}
	recorded, stage := takes{}, rehearsal.NewStage(p)
	for take := 1; take <= 4; take++ {
		set := rehearsal.Setting{Case: timing.Aligned, Channel: rehearsal.All, Rate: rate, SNR: 30, Seed: uint64(take), Latency: 1e-3 * float64(take)}
		if recorded[sweep.TakeName("all", take)+".wav"], err = stage.Record(s, set); err != nil {
			t.Fatal(err)
		}
	}
	judge := func(k takes) verdict.Found {
		t.Helper()
		found, err := verdict.Takes{Sweep: s, Read: k.read, Level: verdict.LevelSetting{Case: timing.Aligned}}.Judge(p)
		if err != nil {
			t.Fatal(err)
		}
		return found
	}
	once := judge(takes{"all.wav": recorded["all.wav"]})
	four := judge(recorded)
	if by := once.Level.AboveNoise() - four.Level.AboveNoise(); math.Abs(by+6) > 1 {
		t.Errorf("four takes have %.2f dB less noise", -by)
	}
	if a, b := errorAt(once, 2000), errorAt(four, 2000); b > a {
		t.Errorf("an error of %.3f dB at 2 kHz, of one take %.3f", b, a)
	}

	// What was rehearsed by the plan turns as the plan does, and is not late where a wire tells.
	if x := four.Turns; math.Abs(x.Late) > 2e-6 || !x.Wired {
		t.Errorf("late by %.2f us", 1e6*x.Late)
	}
	for f, hz := range four.Turns.Frequency {
		x := four.Turns
		if by := math.Abs(x.Measured.Angle[f] - x.Planned.Angle[f]); hz > 400 && hz < 5000 && by > 0.1 {
			t.Errorf("%.0f Hz: %.3f rad off the plan", hz, by)
		}
	}

	brighter := takes{"all.wav": recorded["all.wav"], "all_2.wav": recorded["all_2.wav"]}
	x := recorded["all_2.wav"]
	x.Samples = append([]float64(nil), x.Samples...)
	for i := len(x.Samples) - 1; i > 0; i-- {
		x.Samples[i] -= 0.6 * x.Samples[i-1]
	}
	brighter["all_2.wav"] = x
	unlike := judge(brighter)
	if low, high := errorAt(unlike, 1000), errorAt(unlike, 5000); high < 2*errorAt(once, 5000) || low < errorAt(once, 1000) {
		t.Errorf("takes that differ: an error of %.2f dB at 1 kHz, %.2f at 5 kHz; of one %.2f, %.2f", low, high, errorAt(once, 1000), errorAt(once, 5000))
	}

	silent := recorded["all_2.wav"]
	silent.Samples = make([]float64, len(silent.Samples))
	faulty := judge(takes{"all.wav": recorded["all.wav"], "all_2.wav": silent, "all_3.wav": recorded["all_3.wav"]})
	if d := cmp.Diff([]string{"take unusable"}, told(faulty.Faults)); d != "" || faulty.Faults[0].Take != 2 {
		t.Errorf("a silent take: %s, %+v", d, faulty.Faults)
	}
	none := takes{"all.wav": silent, "all_2.wav": recorded["all.wav"]}
	if _, err := (verdict.Takes{Sweep: s, Read: none.read}).Judge(p); err == nil || errors.Is(err, verdict.ErrNone) {
		t.Errorf("without a first take: %v", err)
	}
}

// errorAt returns the error in dB of the third round a frequency in Hz.
func errorAt(f verdict.Found, hz float64) float64 {
	best := f.Level.Bands[0]
	for _, b := range f.Level.Bands {
		if math.Abs(math.Log(b.Centre/hz)) < math.Abs(math.Log(best.Centre/hz)) {
			best = b
		}
	}
	return best.Error
}
