package verdict_test

import (
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"slices"
	"strings"
	"testing"

	"pappus/layout/design"
	"pappus/timing"
	"pappus/timing/recording"
	"pappus/timing/rehearsal"
	"pappus/timing/verdict"

	"github.com/google/go-cmp/cmp"
)

// byHand are four channels of the built-in design, each with drivers all round the body, so
// that what a string of it gives hardly differs from what the other does.
const byHand = `
[[channel]]
drivers = [1, 5, 9, 13, 17, 21, 25, 29, 34, 38]
[[channel]]
drivers = [2, 6, 10, 14, 18, 22, 26, 30, 35, 39]
invert = true
gain_db = -3
[[channel]]
drivers = [3, 7, 11, 15, 19, 23, 27, 31, 36, 40]
delay_us = 100
[[channel]]
drivers = [4, 8, 12, 16, 20, 24, 28, 32, 37]
`

// takes are recordings in memory.
type takes map[string]recording.Take

func (k takes) read(path string) (int, [][]float64, error) {
	x, ok := k[path]
	if !ok {
		return 0, nil, fmt.Errorf("%s: %w", path, fs.ErrNotExist)
	}
	return int(x.Rate), [][]float64{x.Samples, x.Reference}, nil
}

// TestJudge: recordings are found by their names, the two faults of the example are named,
// and what cannot be used is named beside what is judged.
func TestJudge(t *testing.T) {
	p := planOf(t, strings.Replace(string(design.DefaultTOML()), "\nchannels = 8", "", 1)+byHand)
	s := brief(t, 2)
	recorded, session := takes{}, rehearsal.NewExample(p, rate)
	for c := rehearsal.All; c < len(p.Channels); c++ {
		name := "all.wav"
		if c >= 0 {
			name = fmt.Sprintf("channel_%d.wav", p.Channels[c].ID)
		}
		one, err := session.Record(s, c)
		if err != nil {
			t.Fatal(err)
		}
		recorded[name] = one
	}
	clipped := recorded["all.wav"]
	clipped.Samples = slices.Clone(clipped.Samples)
	for i, v := range clipped.Samples {
		clipped.Samples[i] = max(-0.02, min(0.02, v))
	}
	faults := []string{"dead string [1] 2 of 2", "reversed [4]"}
	for _, test := range []struct {
		name    string
		change  func(k takes)
		faults  []string
		level   bool
		without bool // channels
		err     error
	}{
		{"all", func(takes) {}, faults, true, false, nil},
		{"as they were sent out", func(k takes) {
			k["sweep.wav"], k["sweep_channel_2.wav"] = k["all.wav"], k["channel_2.wav"]
			delete(k, "all.wav")
			delete(k, "channel_2.wav")
		}, faults, true, false, nil},
		{"not together", func(k takes) { delete(k, "all.wav") }, faults, false, false, nil},
		{"together only", func(k takes) {
			maps.DeleteFunc(k, func(name string, _ recording.Take) bool { return name != "all.wav" })
		}, nil, true, true, nil},
		{"one not recorded", func(k takes) { delete(k, "channel_2.wav") }, append([]string{"no recording [2]"}, faults...), true, false, nil},
		{"one clipped", func(k takes) { k["channel_2.wav"] = clipped }, append([]string{"unusable [2]"}, faults...), true, false, nil},
		{"a further one clipped", func(k takes) { k["channel_2_2.wav"], k["channel_3_2.wav"] = k["channel_2.wav"], clipped },
			append([]string{"take unusable [3]"}, faults...), true, false, nil},
		{"all clipped", func(k takes) { k["all.wav"] = clipped }, append([]string{"whole unusable"}, faults...), false, false, nil},
		{"one alone", func(k takes) {
			maps.DeleteFunc(k, func(name string, _ recording.Take) bool { return name != "all.wav" && name != "channel_1.wav" })
		},
			[]string{"no recording [2]", "no recording [3]", "no recording [4]", "uncompared"}, true, true, nil},
		{"none", func(k takes) { clear(k) }, nil, false, true, verdict.ErrNone},
	} {
		t.Run(test.name, func(t *testing.T) {
			k := maps.Clone(recorded)
			test.change(k)
			f, err := verdict.Takes{Sweep: s, Read: k.read, Level: verdict.LevelSetting{Case: timing.Aligned}}.Judge(p)
			if !errors.Is(err, test.err) || (err != nil) != (test.err != nil) {
				t.Fatal(err)
			}
			if diff := cmp.Diff(test.faults, told(f.Faults)); diff != "" && err == nil {
				t.Error(diff)
			}
			if (f.Level != nil) != test.level || (f.Channels == nil) != test.without {
				t.Errorf("level %v, channels %v", f.Level != nil, f.Channels != nil)
			}
		})
	}
	_, err := verdict.Takes{Sweep: s, Read: takes{"channel_1.wav": clipped}.read}.Judge(p)
	if err == nil || !strings.HasPrefix(err.Error(), "channel_1.wav: the recording is clipped") {
		t.Errorf("nothing else than clipped: %v", err)
	}
	for name, want := range map[string]bool{"CHANNEL_3.WAV": true, "channel_3_2.wav": true, "sweep_channel_4.wav": true, "channel_5.wav": false, "all.wav": false} {
		if verdict.IsPart(p, name) != want {
			t.Errorf("%s: %v", name, !want)
		}
	}
}
