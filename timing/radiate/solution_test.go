package radiate

import (
	"math"
	"testing"

	"pappus/layout"
	"pappus/layout/body"
	"pappus/timing/boundary"
)

// TestSolution: the ball has no share up to From, half of it half way on an axis of octaves,
// all from To on; two meshes that are 1 % apart are off by 0.086 dB, and between two steps the
// error goes straight from one to the other.
func TestSolution(t *testing.T) {
	s := &Solution{From: 2000 / joins, To: 2000, step: 1000, off: []float64{0, 0.01, 0.03}}
	for name, test := range map[string]struct{ got, want float64 }{
		"below":        {s.Share(1000), 0},
		"where begun":  {s.Share(s.From), 0},
		"half way":     {s.Share(2000 / math.Sqrt(joins)), 0.5},
		"at the end":   {s.Share(2000), 1},
		"above":        {s.Share(9000), 1},
		"1 %":          {s.Off(1000), 20 * math.Log10(1.01)},
		"between":      {s.Off(1500), 20 * math.Log10(1.02)},
		"beyond":       {s.Off(9000), 20 * math.Log10(1.03)},
		"0.086 dB":     {math.Round(1000*s.Off(1000)) / 1000, 0.086},
		"nothing at 0": {s.Off(0), 0},
	} {
		if math.Abs(test.got-test.want) > 1e-12 {
			t.Errorf("%s: %g, want %g", name, test.got, test.want)
		}
	}
}

// TestSolutionIsShort: where a table ends below what the design asks for, and not where it ends
// a step above; the ball has none.
func TestSolutionIsShort(t *testing.T) {
	table := &boundary.Table{Step: 2, Reach: 0.15, Waves: make([][][]complex64, 8), Off: make([]float64, 8)} // to 14 rad/m
	for asked, short := range map[float64]bool{13 / (2 * math.Pi) * speedAt20 / joins: false, 15 / (2 * math.Pi) * speedAt20 / joins: true} {
		a := &layout.Array{Body: body.Ball(0.15), Timing: layout.Timing{Model: BodyModel, SolveTo: asked}}
		s := (&Scene{Array: a, Field: &bodyField{table: table}}).Solution(340)
		if want := 14 * 340 / (2 * math.Pi); s.Short != short || math.Abs(s.To-want) > 1e-9 || math.Abs(s.From-want/joins) > 1e-9 {
			t.Errorf("asked to %.0f Hz: %+v, want to %.1f", asked, s, want)
		}
	}
	if s := (&Scene{Field: &sphere{}}).Solution(340); s != nil {
		t.Errorf("of a ball %+v", s)
	}
}
