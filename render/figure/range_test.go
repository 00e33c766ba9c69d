package figure

import (
	"testing"

	"pappus/timing"
)

// TestLevelRange: the named curves and some air, in steps of 5 dB; 20 dB at least and 50 at
// most; what is beyond 50 Hz to 20 kHz does not count.
func TestLevelRange(t *testing.T) {
	for _, test := range []struct {
		name      string
		hz, level []float64
		low, high float64
	}{
		{"nothing", []float64{49, 20001}, []float64{80, 80}, -30, 0},
		{"flat", []float64{50, 20000}, []float64{80, 80}, 65, 85},
		{"30 dB", []float64{100, 1000}, []float64{52.5, 83.5}, 50, 85},
		{"a hole", []float64{100, 1000}, []float64{0, 80}, 35, 85},
		{"silence", []float64{100, 1000}, []float64{-300, 80}, 65, 85},
		{"beyond", []float64{49, 100, 20001}, []float64{120, 80, 120}, 65, 85},
	} {
		t.Run(test.name, func(t *testing.T) {
			low, high := levelRange([]curve{{name: "it", frequency: test.hz, level: test.level}})
			if low != test.low || high != test.high {
				t.Errorf("%g to %g dB", low, high)
			}
		})
	}
}

// TestErrorBand is drawn from a tenth of a dB on.
func TestErrorBand(t *testing.T) {
	l := timing.Levelling{Frequency: []float64{100, 1000}, Target: 80, Error: []float64{0, 0.095}}
	if got := errorBand(l); got != nil {
		t.Errorf("%+v", got)
	}
	l.Error[1] = 0.105
	if got := errorBand(l); len(got) != 2 || got[0].level[1] != 80.105 || got[1].level[1] != 80-0.105 || got[0].name == "" || got[1].name != "" {
		t.Errorf("%+v", got)
	}
}
