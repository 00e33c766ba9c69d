package words

import (
	"strings"
	"testing"

	"pappus/layout/impedance"
	"pappus/timing/impedancefit"
	"pappus/timing/trial"
)

func TestInHundred(t *testing.T) {
	for want, c := range map[string]trial.Count{
		"0 in 100 (0 to 4)": {Cases: 100}, "2 in 100 (1 to 4)": {Cases: 500, Times: 10}, "100 in 100 (96 to 100)": {Cases: 100, Times: 100}, "33 in 100 (6 to 79)": {Cases: 3, Times: 1},
	} {
		if got := InHundred(c); got != want {
			t.Errorf("%s, want %s", got, want)
		}
	}
}

// TestTrialsSaid: each verdict is followed by how often it is wrong.
func TestTrialsSaid(t *testing.T) {
	open := impedancefit.Cause{State: impedance.Open, Strings: 1, Length: 2, Ratio: 1.5}
	for _, c := range []struct {
		name string
		load impedancefit.Load
		want string // with which it begins
	}{
		{"as planned", impedancefit.Load{Sure: true}, "Of made-up channels with a fault, some look as planned: an open string in "},
		{"open", impedancefit.Load{Sure: true, Cause: open}, "Of made-up channels without a fault, "},
		{"a leak", impedancefit.Load{Sure: true, Loose: true}, "Of made-up channels without a fault, "},
		{"not sure", impedancefit.Load{}, ""},
	} {
		if got := LoadTrials(c.load); !strings.HasPrefix(got, c.want) || c.want == "" && got != "" {
			t.Errorf("%s: %s", c.name, got)
		}
	}
	for _, fault := range impedancefit.Faults {
		if c := impedancefit.Trials().Of(fault, trial.Missed); c.Cases == 0 {
			t.Errorf("nothing is known of %s", fault)
		}
	}
	for _, text := range []string{ChangeTrials(), NextTrials()} {
		if strings.Contains(text, "NaN") || strings.Contains(text, " 0 made-up") {
			t.Error(text)
		}
	}
	for _, recorded := range []bool{false, true} {
		if got := ImpedanceErrors(recorded); strings.Contains(got, "NaN") || !strings.Contains(got, "Qts ") {
			t.Error(got)
		}
	}
}
