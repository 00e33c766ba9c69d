package damping

import (
	"math"
	"testing"

	"pappus/layout/dampinglog"
	"pappus/timing/impedancefit"
)

// TestThresholds: where each line is drawn, and why there.
func TestThresholds(t *testing.T) {
	at := func(q, grams float64) Trial {
		return Trial{Trial: dampinglog.Trial{StuffingG: grams}, Q: impedancefit.Estimate{Value: q}}
	}
	goal := Goal{Q: 0.7, MostG: 200, StartG: 20}
	next := func(trials ...Trial) Next {
		n, err := Propose(trials, goal)
		if err != nil {
			t.Fatal(err)
		}
		return n
	}
	// The 1/Q in the middle of one at the target, 1, and one so far off; both scatter by 0.06.
	middle := func(off float64) float64 {
		s, _ := fitLine(line{dose: []float64{10, 10}, inverse: []float64{1, 1 + off}, sigma: []float64{0.06, 0.06}}, 1)
		return math.Round(100*(s.height-1)/off) / 100
	}
	clear := func(q float64) bool { return Changes([]Trial{at(1, 0), at(q, 10)})[0].Clear }
	for _, test := range []struct {
		why       string
		got, want any
	}{
		{"4.5 percent off, 0.4 dB at the resonance, is there", next(at(0.7*math.Exp(0.045), 0)).Reached, true},
		{"5.5 percent is not", next(at(0.7*math.Exp(0.055), 0)).Reached, false},
		{"trials alike repeat within 3 percent: 8 percent may be chance at two sigmas of both", clear(0.92), false},
		{"8.5 percent is not", clear(0.915), true},
		{"0.4 off the target is off the line by 0.06: with as much scatter it weighs half", middle(0.4), 0.33},
		{"a twentieth of that weighs as much as one at the target", middle(0.02), 0.5},
		{"nothing is tried nearer to the end of a bracket than a tenth of it", next(at(0.74, 0), at(0.35, 100)).Trial.StuffingG, 10.0},
	} {
		t.Run(test.why, func(t *testing.T) {
			if test.got != test.want {
				t.Errorf("%v, want %v", test.got, test.want)
			}
		})
	}
}
