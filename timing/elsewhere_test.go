package timing_test

import (
	"errors"
	"testing"

	"pappus/layout"
	"pappus/timing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"gonum.org/v1/gonum/spatial/r3"
)

// TestPlanAt: a plan at its own spot is itself; elsewhere its channels keep their
// drivers and delays, what is heard is what Transfer says for that place, and a place inside
// the body is refused.
func TestPlanAt(t *testing.T) {
	p := plan(t, demo(t))
	same, err := p.At(p.Array.Spot)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(&p.Spot, &same.Spot, cmpopts.IgnoreUnexported(timing.Spot{}), cmpopts.IgnoreFields(timing.Spot{}, "Array"), cmpopts.EquateNaNs()); diff != "" {
		t.Errorf("at its own spot:\n%s", diff)
	}
	there := r3.Vec{X: 1, Y: -1.7, Z: 0.6}
	q, err := p.At(there)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(p.Channels, q.Channels, cmpopts.EquateNaNs()); diff != "" || q.Array.Spot != there || q.Arrivals[0].Time == p.Arrivals[0].Time {
		t.Errorf("elsewhere: %v, %s", q.Array.Spot, diff)
	}
	want := hear(t, p, timing.Listening{Cases: []timing.Case{timing.Aligned}}, there)
	for f, v := range q.Transfer(nil, timing.Aligned, few) {
		if off(v, want[f]) > 1e-9 {
			t.Errorf("%g Hz: %v, want %v", few[f], v, want[f])
		}
	}
	if _, err := p.At(r3.Vec{}); !errors.Is(err, layout.ErrInside) {
		t.Errorf("inside: %v", err)
	}
}
