package page

import (
	"testing"

	"pappus/render/document"

	"github.com/google/go-cmp/cmp"
)

// TestPhaseOfMove: how the sound turns is in an answer where it is wanted, with what is tried, at
// every other frequency of the response.
func TestPhaseOfMove(t *testing.T) {
	p, _ := newPage(t, small)
	plan := ask[planAnswer](t, p, "/api/plan", asked{small})
	s := &session{plans: p.plans}
	if a, _ := s.answer(move{ID: plan.ID, Spot: plan.Spot}); a.Phase != nil {
		t.Error("it is there unasked")
	}
	m := move{ID: plan.ID, Spot: plan.Spot, Phase: true}
	a, spot := s.answer(m)
	want := document.OfPhase(spot.Phase, 2)
	if diff := cmp.Diff(&want, a.Phase); diff != "" || len(a.Phase.Aligned.Group) != len(plan.Plan.Response.Frequency)/2 {
		t.Errorf("%d frequencies, %s", len(a.Phase.Aligned.Group), diff)
	}
	m.Turned = []turned{{Channel: plan.Plan.Channels[0].ID, Late: 700}}
	if tried, _ := s.answer(m); cmp.Equal(tried.Phase.Aligned, a.Phase.Aligned) || !cmp.Equal(tried.Phase.Unaligned, a.Phase.Unaligned) {
		t.Error("a delay that is tried does not turn the sound")
	}
}

// TestSeatsAsTried: what seats lose is by what is tried, with what they lose as planned beside it.
func TestSeatsAsTried(t *testing.T) {
	p, _ := newPage(t, twoSeats)
	plan := ask[planAnswer](t, p, "/api/plan", asked{twoSeats})
	s := &session{plans: p.plans}
	a, spot := s.answer(move{ID: plan.ID, Spot: plan.Spot, Turned: []turned{{Channel: plan.Plan.Channels[0].ID, Late: 500}}})
	if spot == nil || !cmp.Equal(a.AsPlanned.Seats, seatingOf(plan.Plan.Seats, false)) || a.figures.Seats.Planned.Worst < a.AsPlanned.Seats.Planned.Worst+0.5 {
		t.Errorf("%+v", a)
	}
}
