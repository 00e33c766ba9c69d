package verdict_test

import (
	"math"
	"testing"

	"pappus/timing"
	"pappus/timing/verdict"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

// known returns a level at ten frequencies, 100 Hz to 1 kHz, of which some are not known, with
// one standard error in dB.
func known(failure float64, not ...int) verdict.Level {
	var l verdict.Level
	for i := range 10 {
		l.Frequency = append(l.Frequency, 100*float64(i+1))
		l.Measured, l.Noise = append(l.Measured, 90), append(l.Noise, 60)
	}
	for _, i := range not {
		l.Measured[i] = math.NaN()
	}
	l.Bands = []verdict.Band{{Centre: 500, Measured: 90, Error: failure}}
	return l
}

// TestDoubtful: what was not measured, and what is known within more than 3 dB only.
func TestDoubtful(t *testing.T) {
	edge := math.Sqrt(200 * 300)
	for name, c := range map[string]struct {
		level verdict.Level
		want  []timing.Null
	}{
		"all is known":        {known(0.5), []timing.Null{{Low: 50, High: 100}, {Low: 1000, High: 20000}}},
		"just enough":         {known(1.45), []timing.Null{{Low: 50, High: 100}, {Low: 1000, High: 20000}}},
		"an error of 3.1 dB":  {known(1.55), []timing.Null{{Low: 50, High: 20000}}},
		"nothing below":       {known(0.5, 0, 1), []timing.Null{{Low: 50, High: edge}, {Low: 1000, High: 20000}}},
		"a gap in the middle": {known(0.5, 2), []timing.Null{{Low: 50, High: 100}, {Low: edge, High: math.Sqrt(300 * 400)}, {Low: 1000, High: 20000}}},
		"no bands":            {verdict.Level{Frequency: []float64{100}, Measured: []float64{1}}, []timing.Null{{Low: 50, High: 20000}}},
	} {
		if d := cmp.Diff(c.want, c.level.Doubtful(50, 20000), cmpopts.EquateApprox(1e-12, 0)); d != "" {
			t.Errorf("%s: %s", name, d)
		}
	}
	if got := known(0.5).Doubtful(150, 400); got != nil {
		t.Errorf("within what is known: %v", got)
	}
}

// TestAboveNoise: of a level 30 dB over its noise, and of one without any.
func TestAboveNoise(t *testing.T) {
	l := known(0.5)
	if got := l.AboveNoise(); math.Abs(got-30) > 1e-9 {
		t.Errorf("%.2f dB", got)
	}
	for f := range l.Noise {
		l.Noise[f] = math.Inf(-1)
	}
	if got := l.AboveNoise(); !math.IsInf(got, 1) {
		t.Errorf("without noise: %.2f dB", got)
	}
}
