package recording_test

import (
	"math"
	"testing"

	"pappus/timing/recording"
	"pappus/timing/sweep"

	"pgregory.net/rapid"
)

// TestAnySweep: whatever the sweep and the rate, what went nowhere comes out flat, in its
// place, the right way up.
func TestAnySweep(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rate := rapid.SampledFrom([]float64{8000, 16000, 44100, 48000, 96000}).Draw(t, "rate, Hz")
		most := 0.46 * rate
		start := rapid.Float64Range(20, min(3000, most/4)).Draw(t, "start, Hz")
		stop := rapid.Float64Range(4*start, most).Draw(t, "stop, Hz")
		s, err := sweep.New(start, stop, rapid.Float64Range(0.5, 1).Draw(t, "length, s"))
		if err != nil || s.CheckRate(rate) != nil {
			t.Skip(err)
		}
		s.Lead, s.Gap, s.Tail = 0.1, 0.2, 0.4
		sign := rapid.SampledFrom([]float64{1, -1}).Draw(t, "sign")
		ppm := rapid.Float64Range(-200, 200).Draw(t, "clock, ppm")
		x := scaled(s.Samples(rate*(1+ppm/1e6)), 0.7*sign)
		m, err := recording.Analyse(recording.Take{Rate: rate, Samples: noisy(x, 0.7, 60, 1)}, s, recording.Options{})
		if err != nil {
			t.Fatal(err)
		}
		// Times count from the first marker's place, which is known to a few samples, and less
		// well where its band is low.
		if math.Abs(m.At) > 6/rate+0.02/stop || m.Inverted != (sign < 0) || math.Abs(m.Drift-ppm) > 1 {
			t.Errorf("at %.2f us, inverted %v, clock %.2f ppm off", 1e6*m.At, m.Inverted, m.Drift-ppm)
		}
		for f, db := range m.Whole.Level {
			if off := db - 20*math.Log10(0.7); !(math.Abs(off) < 0.1+5*m.Whole.Error[f]) {
				t.Fatalf("at %.0f Hz off by %.3f dB", m.Frequency[f], off)
			}
		}
	})
}

// TestNothingPanics on what is no recording at all.
func TestNothingPanics(t *testing.T) {
	s, err := sweep.New(200, 4000, 0.3)
	if err != nil {
		t.Fatal(err)
	}
	good := s.Samples(16000)
	rapid.Check(t, func(t *rapid.T) {
		x := append([]float64(nil), good...)
		from := rapid.IntRange(0, len(x)).Draw(t, "from")
		x = x[from:rapid.IntRange(from, len(x)).Draw(t, "to")]
		for range rapid.IntRange(0, 3).Draw(t, "spoilt") {
			if len(x) > 0 {
				x[rapid.IntRange(0, len(x)-1).Draw(t, "where")] = rapid.Float64().Draw(t, "what")
			}
		}
		take := recording.Take{Rate: rapid.SampledFrom([]float64{0, 8000, 16000, 16003, 1e9}).Draw(t, "rate"), Samples: x}
		if rapid.Bool().Draw(t, "reference") {
			take.Reference = x
		}
		m, err := recording.Analyse(take, s, recording.Options{Gate: rapid.Float64Range(-0.1, 1).Draw(t, "gate")})
		if err != nil && m.Frequency != nil {
			t.Fatalf("a curve, and %v", err)
		}
	})
}
