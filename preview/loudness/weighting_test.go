package loudness

import (
	"math"
	"math/cmplx"
	"testing"

	"pappus/timing/biquad"
)

// At 48 kHz the sections must be those of ITU-R BS.1770-5, Annex 1, tables 1 and
// 2 (values from memory, as they stand in many open implementations).
func TestTables(t *testing.T) {
	for i, want := range [2]biquad.Section{
		{B0: 1.53512485958697, B1: -2.69169618940638, B2: 1.19839281085285, A1: -1.69065929318241, A2: 0.73248077421585},
		{B0: 1, B1: -2, B2: 1, A1: -1.99004745483398, A2: 0.99007225036621},
	} {
		have := Weighting(48000)[i]
		for _, c := range []struct {
			name       string
			have, want float64
		}{{"b0", have.B0, want.B0}, {"b1", have.B1, want.B1}, {"b2", have.B2, want.B2}, {"a1", have.A1, want.A1}, {"a2", have.A2, want.A2}} {
			if math.Abs(c.have-c.want) > 1e-14 {
				t.Errorf("section %d: %s %.15f, want %.15f", i+1, c.name, c.have, c.want)
			}
		}
	}
}

// The weighting in dB at 48 kHz over a decade is that at the other rates, up to
// where the bilinear transform bends the axis: the shelf is flat there, so that
// the difference stays small.
func TestOtherRatesWeightAlike(t *testing.T) {
	level := func(hz, rate float64) float64 {
		s := Weighting(rate)
		return 20 * math.Log10(cmplx.Abs(s[0].At(hz, rate)*s[1].At(hz, rate)))
	}
	for _, rate := range []float64{32000, 44100, 88200, 96000, 192000, 384000} {
		for hz := 10.0; hz < min(20000, 0.45*rate); hz *= 1.1 {
			if d := level(hz, rate) - level(hz, 48000); math.Abs(d) > 0.15 {
				t.Errorf("%g samples a second: %+.3f dB at %.0f Hz", rate, d, hz)
			}
		}
		for _, s := range Weighting(rate) {
			if !s.IsStable() {
				t.Errorf("%g samples a second: %+v is not stable", rate, s)
			}
		}
	}
}

// From one rate to another and back, nothing may change.
func TestMoveBack(t *testing.T) {
	for _, rate := range []float64{8000, 44100, 384000} {
		for _, s := range []biquad.Section{shelf, highPass} {
			have := move(move(s, 48000, rate), rate, 48000)
			if math.Abs(have.B0-s.B0)+math.Abs(have.B1-s.B1)+math.Abs(have.B2-s.B2)+math.Abs(have.A1-s.A1)+math.Abs(have.A2-s.A2) > 1e-9 {
				t.Errorf("%g: %+v, want %+v", rate, have, s)
			}
		}
	}
}
