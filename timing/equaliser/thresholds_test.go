package equaliser

import (
	"fmt"
	"math"
	"testing"
)

// TestThresholds: where each line is drawn, and what weighs how much.
func TestThresholds(t *testing.T) {
	const rate = 48000
	frequency, care := make([]float64, 200), make([]Care, 200)
	for i := range frequency {
		frequency[i] = 50 * math.Pow(360, float64(i)/199)
	}
	l := Limits{Sections: 1, Low: 60, High: 16000, LeastQ: 0.4, MostQ: 6, Boost: 6, Cut: 12}
	g := newGoal(frequency, make([]float64, 200), make([]float64, 200), care, rate, l)
	level := func(s ...Section) []float64 {
		g.correction(s)
		return append([]float64(nil), g.sum...)
	}
	sections := func(level []float64) int {
		f, err := Fit(frequency, level, make([]float64, 200), nil, rate, l)
		if err != nil {
			t.Fatal(err)
		}
		return len(f.Sections)
	}
	bump := level(Section{Peaking, 1000, 2, 4})
	rms := 0.0
	for _, v := range bump {
		rms += v * v / 200
	}
	// lowered is a bump whose cut lowers the RMS distance by a share: beside it no section can
	// do anything about values that change sign from one frequency to the next.
	lowered := func(share float64) int {
		noise := math.Sqrt(rms / (1/((1-share)*(1-share)) - 1))
		out := append([]float64(nil), bump...)
		for i := range out {
			out[i] += noise * float64(1-2*(i%2))
		}
		return sections(out)
	}
	// weight is that of a dB from a section in the middle of one frequency, over that of a dB
	// from the target.
	weight := func(care Care, gain float64, boost float64) string {
		one := newGoal([]float64{1000}, []float64{0}, []float64{0}, []Care{care}, rate, Limits{Boost: boost})
		return fmt.Sprintf("%.2f", one.cost([]Section{{Peaking, 1000, 2, gain}}))
	}
	for _, test := range []struct {
		why       string
		got, want any
	}{
		{"a section that lowers the RMS distance by 9.3 percent is not worth it", lowered(0.093), 0},
		{"by 10.7 percent it is", lowered(0.107), 1},
		{"0.045 dB are nothing to set", sections(level(Section{Peaking, 1000, 2, 0.045})), 0},
		{"0.055 dB are", sections(level(Section{Peaking, 1000, 2, 0.055})), 1},
		{"a dB over the target is a dB", weight(Count, 1, 6), "1.00"},
		{"over the limit of boosts it weighs ten more", weight(Count, 1, 0), "11.00"},
		{"so it does in a null", weight(Leave, 1, 6), "10.00"},
		{"beside one a hundred, and one for the distance", weight(CutOnly, 1, 6), "101.00"},
		{"a cut in a null weighs a fifth", weight(Leave, -1, 6), "0.20"},
	} {
		t.Run(test.why, func(t *testing.T) {
			if test.got != test.want {
				t.Errorf("%v, want %v", test.got, test.want)
			}
		})
	}
}

// TestMinimumPhaseFloor: the first tap is the geometric mean of the magnitude (A. V. Oppenheim
// and R. W. Schafer, Discrete-Time Signal Processing, chapter 13: the cepstrum at 0); here a
// quarter of the band is 0, taken for -120 dB, and half of it a straight line from 1 to 0,
// whose mean logarithm is -1.
func TestMinimumPhaseFloor(t *testing.T) {
	magnitude := make([]float64, 1<<15+1)
	for k := range magnitude {
		magnitude[k] = max(0, min(1, 1.5-2*float64(k)/(1<<15)))
	}
	want := -120.0/4 - 20/math.Ln10/2
	if got := 20 * math.Log10(MinimumPhase(64, magnitude)[0]); math.Abs(got-want) > 0.05 {
		t.Errorf("%g dB, want %g", got, want)
	}
}
