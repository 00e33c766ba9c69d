package loudness

import (
	"math"
	"testing"

	"pappus/preview/loudness/truepeak"
	"pappus/testdata/reference"
)

// lcg gives numbers from -1 to 1: the generator of Numerical Recipes.
type lcg uint32

func (s *lcg) next() float64 {
	*s = *s*1664525 + 1013904223
	return float64(*s)/(1<<31) - 1
}

// The signals of the reference table, as its script describes them.
var signals = map[string]func(rate int) [][2]float64{
	"steps": func(rate int) [][2]float64 {
		source, out := lcg(1770), [][2]float64(nil)
		for _, level := range []float64{-20, -75, -45, -10, -30, -65, -15, -40, -72, -25, -80, -50} {
			gain := math.Pow(10, level/20)
			for range rate {
				l := gain * source.next()
				out = append(out, [2]float64{l, gain * source.next() / 2})
			}
		}
		return out
	},
	"chirp": func(rate int) [][2]float64 {
		return drawn(10*rate, func(n int) (float64, float64) {
			t := float64(n) / float64(rate)
			angle := 2 * math.Pi * (20*t + 499*t*t)
			return 0.3 * math.Sin(angle), 0.1 * math.Cos(angle)
		})
	},
	"hum": func(rate int) [][2]float64 {
		source := lcg(1770)
		return drawn(4*rate, func(n int) (float64, float64) {
			return 0.5 * math.Sin(100*math.Pi*float64(n)/float64(rate)), 0.01 * source.next()
		})
	},
	"clicks": func(rate int) [][2]float64 {
		return drawn(9*rate, func(n int) (float64, float64) {
			if n%(rate/3) == 100 {
				return 0.8, -0.4
			}
			return 0, 0
		})
	},
	"burst": func(rate int) [][2]float64 {
		return drawn(rate*7/10, func(n int) (float64, float64) {
			v := math.Sin(4000 * math.Pi * float64(n) / float64(rate))
			if n > rate*6/10 {
				return 0.5 * v, 0.5 * v
			}
			return 0.001 * v, 0.001 * v
		})
	},
}

func drawn(length int, at func(n int) (left, right float64)) [][2]float64 {
	out := make([][2]float64, length)
	for n := range out {
		out[n][0], out[n][1] = at(n)
	}
	return out
}

// Another library must read the same. It keeps the high-pass's numerator at 1, -2,
// 1 at every rate where the prototype is carried over here, so that the loudness
// differs by a constant but at 48 kHz.
//
// Its true peak comes from fewer points and a shorter filter, and it does not look
// past the last sample: a tone must agree, and what is full up to half the rate or
// breaks off may read more here, and nothing less by over 0.1 dB.
func TestAgainstAnotherLibrary(t *testing.T) {
	rows, err := reference.Table("loudness.csv")
	if err != nil {
		t.Fatal(err)
	}
	tolerance := map[int]float64{22050: 0.06, 44100: 0.005, 48000: 0.0001, 96000: 0.03}
	above := map[string]float64{"steps": 1.2, "chirp": 0.5, "hum": 0.05, "clicks": 0.05, "burst": 0.05}
	for _, row := range rows {
		name, rate := row["signal"], int(row.Float("rate"))
		samples := signals[name](rate)
		m, peak := measured(samples, rate), truepeak.New(rate)
		peak.Push(samples)
		for measure, have := range map[string]float64{"integrated_lufs": m.Integrated(0), "momentary_lufs": momentary(m)} {
			if want := row.Float(measure); !(math.Abs(have-want) <= tolerance[rate]) {
				t.Errorf("%s at %d: %s %.5f, want %.5f", name, rate, measure, have, want)
			}
		}
		have, want := 20*math.Log10(peak.Peak()), row.Float("true_peak_dbtp")
		if !(have > want-0.1 && have < want+above[name]) {
			t.Errorf("%s at %d: %.3f dBTP, want %.3f", name, rate, have, want)
		}
	}
	if len(rows) != 4*len(signals) {
		t.Errorf("%d rows", len(rows))
	}
}
