package figure_test

import (
	"errors"
	"io"
	"math"
	"math/cmplx"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"pappus/layout/dampinglog"
	"pappus/layout/impedance"
	"pappus/render/figure"
	"pappus/render/words"
	"pappus/timing/damping"
	"pappus/timing/impedancefit"
)

func impedanceLines(t *testing.T, perOctave int) figure.ImpedanceLines {
	t.Helper()
	planned, err := impedance.New(impedance.Driver{Resonance: 150, QMS: 3.2, QES: 1.14, DCOhm: 7.1, Inductance: 5e-5})
	if err != nil {
		t.Fatal(err)
	}
	real1, err := impedance.New(impedance.Driver{Resonance: 163, QMS: 2.6, QES: 1.3, DCOhm: 6.8, Inductance: 6e-5})
	if err != nil {
		t.Fatal(err)
	}
	l := figure.ImpedanceLines{Picture: words.Picture{Title: "Impedance in driver.csv", Below: "resonance 163.0 ± 0.2 Hz"}, Planned: planned.At, Fitted: real1.At}
	for i := range 10*perOctave + 1 {
		hz := 20 * math.Exp2(float64(i)/float64(perOctave))
		z := real1.At(hz) * complex(1+0.02*math.Sin(float64(i*i)), 0.02*math.Cos(float64(i*i)))
		l.Measured = append(l.Measured, impedance.Point{Frequency: hz, Ohm: cmplx.Abs(z), Degrees: cmplx.Phase(z) * 180 / math.Pi})
	}
	return l
}

func figureTrial(vents int, stuffing, q float64) damping.Trial {
	t := damping.Trial{Trial: dampinglog.Trial{Vents: vents, StuffingG: stuffing}, PeakOver: impedancefit.Estimate{Value: 1 + 2*q, Error: 0.02}, Q: impedancefit.Estimate{Value: q, Error: 0.01}}
	if vents > 0 {
		t.VentMM = 8
	}
	return t
}

// TestImpedanceAndTuning draws each picture as both formats.
func TestImpedanceAndTuning(t *testing.T) {
	g := damping.Goal{Q: 0.707, MostG: 90, StartG: 40, MostVents: 6, StartVents: 4, VentMM: 8}
	flat := figureTrial(0, 90, math.NaN())
	flat.Flat = true
	logs := map[string][]damping.Trial{
		"bare":    {figureTrial(0, 0, 1.4)},
		"several": {figureTrial(0, 0, 1.4), figureTrial(0, 40, 0.95), figureTrial(4, 40, 0.88), figureTrial(4, 60, 0.76), flat},
		"there":   {figureTrial(0, 0, 1.4), figureTrial(0, 50, 0.71)},
	}
	many, few, far := impedanceLines(t, 48), impedanceLines(t, 12), impedanceLines(t, 12)
	few.Fitted, far.Fitted = nil, nil
	far.Planned = func(float64) complex128 { return cmplx.NaN() }
	all := []picture{
		{"impedance", func(w io.Writer, f figure.Format) error { return figure.Impedance(w, f, many) }},
		{"impedance few", func(w io.Writer, f figure.Format) error { return figure.Impedance(w, f, few) }},
		{"impedance open", func(w io.Writer, f figure.Format) error { return figure.Impedance(w, f, far) }},
	}
	for name, trials := range logs {
		next, err := damping.Propose(trials, g)
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, picture{"tuning " + name, func(w io.Writer, f figure.Format) error {
			return figure.Tuning(w, f, "Lantern", trials, g, &next)
		}})
	}
	for _, p := range all {
		for _, format := range []figure.Format{figure.PNG, figure.SVG} {
			t.Run(p.name+" "+string(format), func(t *testing.T) {
				var b countingWriter
				if err := p.draw(&b, format); err != nil || b.n < 5000 {
					t.Fatalf("%d bytes, %v", b.n, err)
				}
				if *keep == "" {
					return
				}
				f, err := os.Create(filepath.Join(*keep, p.name+"."+string(format)))
				if err != nil {
					t.Fatal(err)
				}
				if err := errors.Join(p.draw(f, format), f.Close()); err != nil {
					t.Fatal(err)
				}
			})
		}
	}
	if err := figure.Impedance(io.Discard, figure.PNG, figure.ImpedanceLines{}); err == nil || !strings.Contains(err.Error(), "nothing to draw") {
		t.Error(err)
	}
	if err := figure.Tuning(io.Discard, figure.PNG, "", []damping.Trial{flat}, g, nil); err == nil || !strings.Contains(err.Error(), "nothing to draw") {
		t.Error(err)
	}
	if err := figure.Tuning(io.Discard, figure.PNG, "", logs["bare"], g, nil); err != nil {
		t.Error(err)
	}
}

type countingWriter struct{ n int }

func (c *countingWriter) Write(p []byte) (int, error) { c.n += len(p); return len(p), nil }
