package timing_test

import (
	"math"
	"os"
	"testing"

	"pappus/layout/body"
	"pappus/timing"
	"pappus/timing/radiate"
	"pappus/timing/store"

	"gonum.org/v1/gonum/spatial/r3"
)

// TestLevelErrorOfASolvedBody: where the body's field is solved for, its error is that of two
// meshes, far below the ball's, up to the join, and the ball's above it.
func TestLevelErrorOfASolvedBody(t *testing.T) {
	a := twelve(t, r3.Vec{X: 2})
	ball := plan(t, a)
	if ball.Solved() != nil {
		t.Error("a ball is solved for")
	}
	a.Timing.Model, a.Timing.SolveTo = "body", 500
	p := plan(t, a)
	s := p.Solved()
	if s == nil || s.Short || s.From < 500 || math.Abs(s.To/s.From-math.Pow(2, 0.25)) > 1e-9 {
		t.Fatalf("solved %+v", s)
	}
	for hz := 100.0; hz < 8000; hz *= 1.3 {
		got, of := p.LevelError(hz), ball.LevelError(hz)
		switch {
		case hz >= s.To && got != of:
			t.Errorf("%.0f Hz: %g dB, of the ball %g", hz, got, of)
		case hz <= s.From && (got != s.Off(hz) || got <= 0 || got > 0.1):
			t.Errorf("%.0f Hz: %g dB, of the meshes %g", hz, got, s.Off(hz))
		case hz > s.From && hz < s.To && (got < min(of, s.Off(hz)) || got > max(of, s.Off(hz))):
			t.Errorf("%.0f Hz: %g dB, not between %g and %g", hz, got, s.Off(hz), of)
		}
	}
}

// TestWorthSolving: the true field is offered where the ball is off by 1 dB in some octave that
// it would be solved for: of the dodecahedron (3.9 dB) and up to 2 kHz, not up to 500 Hz (0.2),
// of 80 faces at 4 kHz and not up to 2 kHz (0.7), nor of a ball, nor in another model.
func TestWorthSolving(t *testing.T) {
	eighty, err := body.Geodesic("icosahedron", 2, 0.15)
	if err != nil {
		t.Fatal(err)
	}
	twenty, err := body.Platonic("icosahedron", 0.15)
	if err != nil {
		t.Fatal(err)
	}
	small, err := body.Platonic("dodecahedron", 0.134)
	if err != nil {
		t.Fatal(err)
	}
	large, err := body.Platonic("dodecahedron", 0.143)
	if err != nil {
		t.Fatal(err)
	}
	for _, test := range []struct {
		name  string
		body  *body.Body // nil: the dodecahedron
		model string
		to    float64
		want  bool
	}{
		{"12 faces", nil, "sphere", 4000, true},
		{"12 faces to 2 kHz", nil, "sphere", 2000, true},
		{"12 faces to 500 Hz", nil, "sphere", 600, false},
		{"off by 0.9 dB", small, "sphere", 1000, false},
		{"off by 1.1 dB", large, "sphere", 1000, true},
		{"20 faces", twenty, "sphere", 4000, true},
		{"80 faces", eighty, "sphere", 4000, true},
		{"80 faces to 2 kHz", eighty, "sphere", 2000, false},
		{"a ball", body.Ball(0.15), "sphere", 4000, false},
		{"points", nil, "point", 4000, false},
	} {
		a := twelve(t, r3.Vec{X: 2})
		if test.body != nil {
			a.Body = test.body
			for i := range a.Mounts {
				a.Mounts[i].Face = -1
			}
		}
		a.Timing.Model, a.Timing.SolveTo = test.model, test.to
		if test.model == "point" {
			a.Timing.DelaysBy = "straight"
		}
		p := plan(t, a)
		if got := p.IsWorthSolving(); got != test.want {
			t.Errorf("%s: %v", test.name, got)
		}
	}
}

// TestPlacesTriedEmptyAreNotSolvedForAnew: a plan that tries places left empty, for better strings,
// solves for its body once.
func TestPlacesTriedEmptyAreNotSolvedForAnew(t *testing.T) {
	folder := t.TempDir()
	radiate.Kept = store.Store{Folder: folder}
	defer func() { radiate.Kept = store.Store{} }()
	a := onOne(t, 5, 4)
	a.Timing.Model, a.Timing.SolveTo = "body", 500
	f, found := finding(plan(t, a), "strings_waste")
	if !found || f.Fact.(timing.StringsWaste).Empty == nil {
		t.Fatalf("nothing was tried empty: %v", f)
	}
	entries, err := os.ReadDir(folder)
	if err != nil || len(entries) != 1 {
		t.Errorf("%d fields were solved for (%v)", len(entries), err)
	}
}
