package table_test

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"testing"

	"pappus/layout/dampinglog"
	"pappus/render/table"
	"pappus/timing/damping"
	"pappus/timing/impedancefit"
)

func writeFile(t *testing.T, path string, write func(*bytes.Buffer) error) {
	t.Helper()
	var b bytes.Buffer
	if err := write(&b); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, b.Bytes(), 0o600); err != nil {
		t.Fatal(err)
	}
}

func trialOf(vents int, stuffing, depth, q float64) damping.Trial {
	t := damping.Trial{Trial: dampinglog.Trial{Vents: vents, StuffingG: stuffing, DepthMM: depth}, Uneven: math.NaN(),
		Resonance: impedancefit.Estimate{Value: 210, Error: 0.2}, PeakOver: impedancefit.Estimate{Value: 1 + 2*q, Error: 0.01}, Q: impedancefit.Estimate{Value: q, Error: 0.01}}
	if vents > 0 {
		t.VentMM = 8
	}
	return t
}

func TestTuningScreen(t *testing.T) {
	g := damping.Goal{Q: 0.7, MostG: 90, StartG: 40, MostDepthMM: 80, MostVents: 6, StartVents: 4, VentMM: 8, Said: true}
	bare, loose := trialOf(0, 0, 0, 1.4), trialOf(0, 40, 0, 0.9)
	bare.Remark, bare.Date, bare.Uneven = "as printed", "2025-03-01", 1.23
	flat := trialOf(0, 80, 60, math.NaN())
	flat.Flat = true
	rough := bare
	rough.Fit.Systematic, rough.Fit.Misfit = true, 0.023
	cases := []struct {
		name   string
		trials []damping.Trial
		want   []string
	}{
		{"none", nil, []string{"pappus tune add --impedance FILE"}},
		{"bare", []damping.Trial{bare}, []string{"1 closed 0.0 g - 210.0 Hz 3.80 1.400 +- 0.010 1.2 dB", "as printed", "2025-03-01", "change the stuffing alone: 40 g", "no deeper than 80 mm", "cannot be told yet",
			"There is room for 90 g and 6 openings, going by the design and the trials. If more fits, say so with the next trial: --most-vents."}},
		{"one step", []damping.Trial{bare, loose}, []string{"Trial 2 against 1: stuffing 40 g, was 0 g; Q -0.500 +- 0.0", "Expect a Q of 0.6"}},
		{"too much", []damping.Trial{bare, flat}, []string{"no resonance is to be seen any more", "between two trials"}},
		{"two at once", []damping.Trial{bare, trialOf(4, 40, 0, 0.9)}, []string{"several things changed at once", "cannot be told: change one at a time", "4 x 8"}},
		{"the same", []damping.Trial{loose, loose}, []string{"the same again", "no more than trials scatter"}},
		{"there", []damping.Trial{bare, trialOf(0, 50, 30, 0.71)}, []string{"Trial 2 is there", "*"}},
		{"openings", []damping.Trial{bare, trialOf(0, 90, 60, 0.9)}, []string{"change the openings alone: 4 of 8 mm"}},
		{"more does harm", []damping.Trial{bare, trialOf(0, 60, 0, 0.8), trialOf(0, 80, 0, 0.95)}, []string{"More stuffing no longer lowers Q: it is 0.800 in trial 2 (60 g) and 0.950 in trial 3 (80 g).",
			"whether each file belongs to its trial. Begin from trial 2 and change the openings alone: 4 of 8 mm"}},
		{"less does harm", []damping.Trial{trialOf(0, 60, 0, 0.6), trialOf(0, 20, 0, 0.5)}, []string{"Less stuffing no longer raises Q", "The target is out of reach: the nearest Q is 0.6, not 0.7."}},
		{"rough", []damping.Trial{rough}, []string{"only within 2.3 percent: Q is rough"}},
		{"out of reach", []damping.Trial{trialOf(6, 90, 60, 0.9)}, []string{"The target is out of reach: with all that fits"}},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			next, why := damping.Propose(c.trials, g)
			var b bytes.Buffer
			if err := table.TuningScreen(&b, damping.Study{Name: "Lantern", Log: "a.damping.toml", Trials: c.trials, Goal: g, Next: next, Why: why}, false); err != nil {
				t.Fatal(err)
			}
			lines(t, b.String(), append(c.want, "target Q 0.7; log a.damping.toml", "which get warm", "resistors of crossovers", "low voltage")...)
		})
	}
}

func TestTrials(t *testing.T) {
	one := trialOf(4, 40, 35, 0.9)
	one.Remark = `with, "commas"`
	var b bytes.Buffer
	if err := table.Trials(&b, []damping.Trial{trialOf(0, 0, 0, 1.4), one}); err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(&b).ReadAll()
	if err != nil || len(rows) != 3 {
		t.Fatalf("%v, %v", rows, err)
	}
	if got := fmt.Sprint(rows[2]); got != `[2  4 8.00 40.0 35.0 210.00 0.20 2.8000 0.0100 0.9000 0.0100  with, "commas" 0.00]` {
		t.Error(got)
	}
}
