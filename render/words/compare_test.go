package words

import (
	"math"
	"testing"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/timing"
	"pappus/timing/radiate"
	"pappus/timing/search"
)

// TestCompared: plans are named by their models too where those differ.
func TestCompared(t *testing.T) {
	ball, body := planned(), planned()
	ball.Array, body.Array = &layout.Array{Name: "One", Timing: layout.Timing{Model: "sphere"}}, &layout.Array{Name: "Two", Timing: layout.Timing{Model: "body"}}
	both := PlansOf([]timing.Candidate{{Plan: ball}, {Plan: body}})
	if !ModelsDiffer(both) || Compared(ball, both) != "One, model sphere" || Compared(body, both) != "Two, model body" {
		t.Errorf("%v, %q, %q", ModelsDiffer(both), Compared(ball, both), Compared(body, both))
	}
	if both = both[:1]; ModelsDiffer(both) || Compared(ball, both) != "One" {
		t.Errorf("%v, %q", ModelsDiffer(both), Compared(ball, both))
	}
	says(t, FromTheBall(ball), []string{"path and field begin on the ball"}, []string{"as it is"})
}

// TestOctave: an octave has a star where more than a tenth of the field at its upper edge is the
// ball's, that is where the join begins 1.7 % below that edge or more.
func TestOctave(t *testing.T) {
	for _, test := range []struct {
		from, centre float64
		want         string
	}{
		{2818, 1995.26, "2 kHz"},
		{2818 / 1.015, 1995.26, "2 kHz"},
		{2818 / 1.02, 1995.26, "2 kHz *"},
		{2818, 3981.07, "4 kHz *"},
		{2818, 125.89, "125 Hz"},
	} {
		if got := Octave(&radiate.Solution{From: test.from, To: math.Pow(2, 0.25) * test.from}, test.centre); got != test.want {
			t.Errorf("join from %.0f Hz: %q, want %q", test.from, got, test.want)
		}
	}
	if got := Octave(nil, 7943.28); got != "8 kHz" {
		t.Errorf("of a ball %q", got)
	}
}

// TestSearchedBy: a search says so where it hears by another model than the design's.
func TestSearchedBy(t *testing.T) {
	d := &design.Design{}
	r := &search.Result{Job: search.Job{Design: d}}
	d.Timing.Model = "sphere"
	says(t, SearchedBy(r), nil, []string{"."})
	d.Timing.Model = "body"
	says(t, SearchedBy(r), []string{"heard by the ball", `the files keep model = "body"`}, nil)
}
