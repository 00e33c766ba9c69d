package timing_test

import (
	"math"
	"testing"

	"pappus/layout"
	"pappus/timing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

// TestHandDelays: what is in step with a delay set by hand, worked by hand: all
// are to be heard with the latest, its own delay included.
func TestHandDelays(t *testing.T) {
	free := math.NaN()
	tests := []struct {
		name  string
		ms    []float64 // how late each is heard without delays
		set   []float64
		want  []float64
		short timing.DelayShort // in ms; none where empty
	}{
		{"none set", []float64{3, 5, 4}, []float64{free, free, free}, []float64{2, 0, 1}, timing.DelayShort{}},
		{"long enough", []float64{3, 5, 4}, []float64{2, free, free}, []float64{2, 0, 1}, timing.DelayShort{}},
		{"longer: the others wait for it", []float64{3, 5, 4}, []float64{6, free, free}, []float64{6, 4, 5}, timing.DelayShort{}},
		{"too short to be met", []float64{3, 5, 4}, []float64{0.5, free, free}, []float64{0.5, 0, 1}, timing.DelayShort{Channel: 1, Delay: 0.5, Early: 1.5, Needed: 2, Count: 1}},
		{"two are too short", []float64{3, 5, 4}, []float64{0.5, free, 0.5}, []float64{0.5, 0, 0.5}, timing.DelayShort{Channel: 1, Delay: 0.5, Early: 1.5, Needed: 2, Count: 2}},
		{"all set, in step", []float64{3, 5, 4}, []float64{9, 7, 8}, []float64{9, 7, 8}, timing.DelayShort{}},
		{"all set, off by half a step", []float64{3, 5, 4}, []float64{9.0005, 7, 8}, []float64{9.0005, 7, 8}, timing.DelayShort{}},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			speed := plan(t, plain(t)).SpeedOfSound
			metre, set := make([]float64, len(test.ms)), make([]float64, len(test.ms))
			for i := range metre {
				metre[i], set[i] = test.ms[i]*speed/1000, test.set[i]/1000
			}
			p := plan(t, handMade(t, metre, set))
			for i, c := range p.Channels {
				if math.Abs(1000*c.Delay-test.want[i]) > 1e-9 {
					t.Errorf("channel %d gets %g ms, want %g", c.ID, 1000*c.Delay, test.want[i])
				}
			}
			f, found := finding(p, "delay_short")
			if found != (test.short.Count > 0) {
				t.Fatalf("finds %+v", f)
			}
			if found {
				got := f.Fact.(timing.DelayShort)
				got.Delay, got.Early, got.Needed = 1000*got.Delay, 1000*got.Early, 1000*got.Needed
				if d := cmp.Diff(test.short, got, cmpopts.EquateApprox(0, 1e-6)); d != "" {
					t.Error(d)
				}
			}
		})
	}
}

// TestHandDelaysAreSet as they are: nothing is put on top of them so that rounding
// costs less, as there is where none is set by hand.
func TestHandDelaysAreSet(t *testing.T) {
	free := math.NaN()
	for name, set := range map[string]float64{"free": free, "by hand": 1e-3} {
		a := handMade(t, []float64{2, 2.1, 2.17}, []float64{set, free, free})
		a.Processor = layout.Processor{Rate: 48000, Step: 1. / 48000}
		p := plan(t, a)
		if on := p.Rounding.Common; (name == "by hand") != (on == 0) {
			t.Errorf("%s: all have %g s on top", name, on)
		}
		if got := p.Channels[0].Delay; name == "by hand" && got != set {
			t.Errorf("set to %g s by hand, planned with %g s", set, got)
		}
	}
}

// TestUnequalByHand: five in series beside one alone, at one voltage: each of the
// five gets a fifth of the voltage, so the one gets 25 times the power, and -13.98
// dB (20 lg 1/5) makes them alike (Ohm's law).
func TestUnequalByHand(t *testing.T) {
	five := func(gain float64, invert bool) *layout.Array {
		a := plain(t)
		a.Mounts = a.Mounts[:6]
		a.Channels = []layout.Channel{
			{ID: 1, Mounts: []int{0, 1, 2, 3, 4}, Series: 5, Parallel: 1, NominalOhm: 40, DCOhm: 35, Delay: math.NaN()},
			{ID: 2, Mounts: []int{5}, Series: 1, Parallel: 1, NominalOhm: 8, DCOhm: 7, Delay: math.NaN(), Gain: gain, Invert: invert},
		}
		return a
	}
	tests := []struct {
		name    string
		gain    float64
		invert  bool
		unequal bool
		opposed []int
	}{
		{"as it comes", 0, false, true, nil},
		{"made alike", -13.98, false, false, nil},
		{"and turned round", -13.98, true, false, []int{2}},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			p := plan(t, five(test.gain, test.invert))
			f, found := finding(p, "powers_unequal")
			want := timing.PowersUnequal{Loudest: 2, Quietest: 1, Apart: 20 * math.Log10(5), Even: []timing.SetGain{{Channel: 2, Gain: 20 * math.Log10(0.2)}}}
			if d := cmp.Diff(any(want), f.Fact, cmpopts.EquateApprox(0, 1e-9)); found != test.unequal || found && d != "" {
				t.Errorf("%v %s", found, d)
			}
			f, found = finding(p, "polarity_opposed")
			if d := cmp.Diff(any(timing.PolarityOpposed{Inverted: test.opposed}), f.Fact); found != (test.opposed != nil) || found && d != "" {
				t.Errorf("%v %s", found, d)
			}
		})
	}
	p := plan(t, five(-13.98, false))
	if a, b := p.Banks[0], p.Banks[1]; math.Abs(a.DriverWatt/b.DriverWatt-1) > 1e-3 {
		t.Errorf("made alike, the drivers get %g and %g W", a.DriverWatt, b.DriverWatt)
	}
}
