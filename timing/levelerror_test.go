package timing_test

import (
	"math"
	"testing"

	"pappus/layout/advice"
	"pappus/layout/body"
	"pappus/timing"

	"gonum.org/v1/gonum/spatial/r3"
)

// TestLevelErrorOfABody: 12 flat faces are off by up to 4 dB from 2 kHz on and by less than 0.3
// in the 500 Hz octave; a ball is not off; without a body there is
// nothing to be said.
func TestLevelErrorOfABody(t *testing.T) {
	a := twelve(t, r3.Vec{X: 2})
	p := plan(t, a)
	octaves, dB := p.LevelErrors()
	for i, hz := range octaves {
		if hz < 510 && dB[i] > 0.3 || hz > 1900 && (dB[i] < 3.3 || dB[i] > 4) {
			t.Errorf("%.0f Hz: %.2f dB", hz, dB[i])
		}
	}
	a.Body = body.Ball(0.13)
	p = plan(t, a)
	if e := p.LevelError(4000); e != 0 {
		t.Errorf("a ball is off by %g dB", e)
	}
	a.Timing.Model, a.Timing.DelaysBy = "point", "straight"
	if e := plan(t, a).LevelError(4000); !math.IsNaN(e) {
		t.Errorf("a point's body is off by %g dB", e)
	}
}

// TestFarFromABall: a long prism is no ball, and the plan says so with its rank;
// a cube still is one that the model was held to.
func TestFarFromABall(t *testing.T) {
	a := twelve(t, r3.Vec{X: 2})
	find := func() (found []timing.Finding) {
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
	if got := find(); len(got) != 1 || got[0].Rank != advice.Cost || got[0].Fact.(timing.FarFromBall).Off < 0.1 {
		t.Errorf("long prism: %v", got)
	}
	if a.Body, err = body.Platonic("cube", 0.15); err != nil {
		t.Fatal(err)
	}
	if got := find(); len(got) > 0 {
		t.Errorf("cube: %v", got)
	}
}
