package verdict_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"pappus/timing"
	"pappus/timing/rehearsal"
	"pappus/timing/sweep"
	"pappus/timing/verdict"

	"gonum.org/v1/gonum/spatial/r3"
)

// TestSilentOfTwo: of two channels the one that does not play is told, whether nothing is heard of it or
// what amplifiers and wires let through; without a recording of both there is nothing else to judge.
func TestSilentOfTwo(t *testing.T) {
	p := planOf(t, on("cube", "faces", 2, 1, r3.Vec{X: 1.6, Y: 0.7, Z: 0.5}, "").text)
	s := sweep.Sweep{Start: 150, Stop: 5600, Length: 0.8, Rise: 0.02, Fall: 0.005, Lead: 0.3, Gap: 0.2, Tail: 0.3}
	stage := rehearsal.NewStage(p)
	for _, test := range []struct {
		name string
		gain float64 // dB, of the second channel
		want []string
	}{
		{"nothing is heard", math.Inf(-1), []string{"silent [2]", "uncompared"}},
		{"crosstalk", -40, []string{"silent [2]"}},
		{"21 dB below the other", -21, []string{"silent [2]"}},
	} {
		t.Run(test.name, func(t *testing.T) {
			recorded := takes{}
			for c, name := range []string{"all", "channel_1", "channel_2"} {
				set := rehearsal.Setting{Case: timing.Aligned, Channel: c - 1, Rate: 2.4 * s.Stop, SNR: 70, Seed: uint64(c + 1), Latency: 0.011, Gain: []float64{0, test.gain}}
				take, err := stage.Record(s, set)
				if err != nil {
					t.Fatal(err)
				}
				recorded[name+".wav"] = take
			}
			judge := verdict.Takes{Sweep: s, Read: recorded.read, Level: verdict.LevelSetting{Case: timing.Aligned}}
			found, err := judge.Judge(p)
			if got := told(found.Faults); err != nil || !slices.Equal(got, test.want) {
				t.Errorf("%q, %v; want %q", got, err, test.want)
			}
			delete(recorded, "all.wav")
			if _, err := judge.Judge(p); (err != nil) != (len(test.want) > 1) || err != nil && !strings.HasPrefix(err.Error(), "channel 2 is silent: ") {
				t.Errorf("without that of both: %v", err)
			}
		})
	}
}
