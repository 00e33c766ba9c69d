package preview

import (
	"math"
	"testing"

	"github.com/gopxl/beep/v2"
)

// played streams seconds of a sound that is given by its time in s, the same
// left and right.
func played(seconds float64, sound func(t float64) float64) beep.Streamer {
	at := 0
	return beep.Take(int(seconds*rate), beep.StreamerFunc(func(dst [][2]float64) (int, bool) {
		for i := range dst {
			v := sound(float64(at+i) / rate)
			dst[i] = [2]float64{v, v}
		}
		at += len(dst)
		return len(dst), true
	}))
}

func tone(hz, amplitude float64) func(float64) float64 {
	return func(t float64) float64 { return amplitude * math.Sin(2*math.Pi*hz*t) }
}

// pluck dies away within half a second, clicks come three a second.
func pluck(amplitude float64) func(float64) float64 {
	return func(t float64) float64 { return amplitude * math.Exp(-12*t) * math.Sin(2*math.Pi*440*t) }
}

func clicks(amplitude, hz float64) func(float64) float64 {
	return func(t float64) float64 {
		_, since := math.Modf(3 * t)
		since = since/3 - 0.01
		return amplitude * math.Cos(2*math.Pi*hz*since) * math.Exp(-since*since*1e6)
	}
}

func TestGains(t *testing.T) {
	none := math.Inf(-1)
	peak := func(dB float64) float64 { return math.Pow(10, dB/20) }
	for _, c := range []struct {
		name   string
		levels []Level
		want   []float64 // dB above Ceiling
	}{
		{"none", nil, []float64{}},
		{"one", []Level{{-20, -20, -20, peak(-6)}}, []float64{6}},
		{"the peakier one leads", []Level{{-20, 0, 0, peak(-6)}, {-10, 0, 0, peak(-4)}}, []float64{6, -4}},
		{"one silent", []Level{{none, none, none, 0}, {-10, 0, 0, peak(-6)}}, []float64{none, 6}},
		{"one without blocks", []Level{{-20, -30, 0, peak(-6)}, {none, -36, 0, peak(-6)}}, []float64{0, 6}},
		{"one without loudness", []Level{{-20, -30, -40, peak(-6)}, {none, none, -46, peak(-6)}}, []float64{0, 6}},
		{"all silent", []Level{{none, none, none, 0}}, []float64{none}},
	} {
		have := Gains(c.levels)
		if len(have) != len(c.want) {
			t.Fatalf("%s: %v", c.name, have)
		}
		for i := range have {
			if want := Ceiling * peak(c.want[i]); math.Abs(have[i]-want) > 1e-12 {
				t.Errorf("%s: gain %d is %g, want %g", c.name, i, have[i], want)
			}
		}
	}
}

// What Gains makes of a set is measured afterwards, also where the gates bite:
// on sounds that are mostly silence, on one that is too quiet for the first gate
// until it is raised, and on one that is too short for a block.
func TestGainsMatch(t *testing.T) {
	for _, c := range []struct {
		name    string
		seconds float64
		sounds  []func(float64) float64
		measure func(Level) float64
	}{
		{"tones", 3, []func(float64) float64{tone(100, 0.5), tone(1000, 0.1), tone(5000, 0.02)}, integrated},
		{"clicks", 6, []func(float64) float64{clicks(0.9, 2000), clicks(0.01, 500)}, integrated},
		{"one pluck in silence", 6, []func(float64) float64{pluck(0.9), pluck(0.001)}, integrated},
		{"quiet by 90 dB", 3, []func(float64) float64{tone(300, 0.5), tone(300, 0.5e-4), clicks(3e-5, 2000)}, integrated},
		{"quiet by 140 dB", 3, []func(float64) float64{tone(300, 0.5e-7), pluck(1e-7)}, integrated},
		{"loud by 90 dB", 6, []func(float64) float64{pluck(3e4), tone(300, 1e4), clicks(0.9, 2000)}, integrated},
		{"too short", 0.3, []func(float64) float64{tone(300, 0.5), tone(3000, 0.01)}, ungated},
	} {
		t.Run(c.name, func(t *testing.T) {
			var levels []Level
			for _, sound := range c.sounds {
				levels = append(levels, LevelOf(played(c.seconds, sound), rate))
			}
			peak, first := 0.0, 0.0
			for i, gain := range Gains(levels) {
				l := LevelOf(played(c.seconds, func(t float64) float64 { return gain * c.sounds[i](t) }), rate)
				peak = max(peak, l.Peak)
				if i == 0 {
					first = c.measure(l)
				}
				if have := c.measure(l); !(math.Abs(have-first) < 0.1) {
					t.Errorf("sound %d: %.3f LUFS, the first %.3f", i, have, first)
				}
			}
			if db := 20 * math.Log10(peak); math.Abs(db+3) > 1e-6 {
				t.Errorf("highest true peak at %.6f dBTP, want -3", db)
			}
		})
	}
}

func integrated(l Level) float64 { return l.Integrated }
func ungated(l Level) float64    { return l.Ungated }

// A sine's RMS is its peak over the root of two. 997 Hz from both front channels
// at full scale reads 3.01 LU more than from one, which is -3.01 LKFS (ITU-R
// BS.1770-5, Annex 1).
func TestLevelOf(t *testing.T) {
	l := LevelOf(played(5, tone(997, 0.5)), rate)
	half := 20 * math.Log10(0.5)
	for _, c := range []struct {
		name                  string
		have, want, tolerance float64
	}{
		{"integrated", l.Integrated, half, 0.01},
		{"ungated", l.Ungated, half, 0.01},
		{"RMS", l.RMS, half - 10*math.Log10(2), 0.001},
		{"peak", 20 * math.Log10(l.Peak), half, 0.01},
	} {
		if !(math.Abs(c.have-c.want) <= c.tolerance) {
			t.Errorf("%s %.4f, want %.4f", c.name, c.have, c.want)
		}
	}
	none := math.Inf(-1)
	for name, s := range map[string]beep.Streamer{
		"nothing": played(0, tone(1, 1)),
		"silence": played(1, tone(1000, 0)),
	} {
		if l := LevelOf(s, rate); l != (Level{none, none, none, 0}) {
			t.Errorf("%s: %+v", name, l)
		}
	}
	broken := played(1, func(t float64) float64 { return math.NaN() })
	if l := LevelOf(broken, rate); l != (Level{none, none, none, 0}) {
		t.Errorf("no numbers: %+v", l)
	}
}

func BenchmarkLevelOf(b *testing.B) {
	sound := tone(997, 0.5)
	b.ReportAllocs()
	for b.Loop() {
		LevelOf(played(6, sound), rate)
	}
}
