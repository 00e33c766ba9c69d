package timing_test

import (
	"math"
	"strings"
	"testing"

	"pappus/layout/advice"
	"pappus/layout/body"

	"gonum.org/v1/gonum/spatial/r3"
)

// TestLevelErrorOfABody: 12 flat faces are off by up to 4 dB from 2 kHz on and by less than 0.3
// in the 500 Hz octave, and the notes say so; a ball is not off; without a body there is
// nothing to be said.
func TestLevelErrorOfABody(t *testing.T) {
	a := twelve(t, r3.Vec{X: 2})
	p := plan(t, a)
	octaves, dB := p.LevelErrors()
	for i, hz := range octaves {
		if hz < 510 && dB[i] > 0.3 || hz > 1900 && (dB[i] < 3.4 || dB[i] > 4) {
			t.Errorf("%.0f Hz: %.2f dB", hz, dB[i])
		}
	}
	if notes := strings.Join(p.Notes(), "\n"); !strings.Contains(notes, "0.2 dB at 500 Hz") || !strings.Contains(notes, "3.7 dB at 4 kHz") {
		t.Errorf("notes: %s", notes)
	}
	a.Body = body.Ball(0.13)
	p = plan(t, a)
	if e, notes := p.LevelError(4000), strings.Join(p.Notes(), "\n"); e != 0 || strings.Contains(notes, "off by") {
		t.Errorf("a ball is off by %g dB: %s", e, notes)
	}
	a.Timing.Model, a.Timing.DelaysBy = "point", "straight"
	if e := plan(t, a).LevelError(4000); !math.IsNaN(e) {
		t.Errorf("a point's body is off by %g dB", e)
	}
}

// TestFarFromABall: a long prism is no ball, and the plan says so with its rank and cure;
// a cube still is one that the model was held to.
func TestFarFromABall(t *testing.T) {
	a := twelve(t, r3.Vec{X: 2})
	find := func() (found []advice.Finding) {
		for _, f := range plan(t, a).Warnings {
			if f.Code == "far_from_ball" {
				found = append(found, f)
			}
		}
		return found
	}
	var err error
	if a.Body, err = body.Prism(6, 0.15, 0.9); err != nil {
		t.Fatal(err)
	}
	if got := find(); len(got) != 1 || got[0].Rank != advice.Cost || got[0].Cure == "" {
		t.Errorf("long prism: %v", got)
	}
	if a.Body, err = body.Platonic("cube", 0.15); err != nil {
		t.Fatal(err)
	}
	if got := find(); len(got) > 0 {
		t.Errorf("cube: %v", got)
	}
}
