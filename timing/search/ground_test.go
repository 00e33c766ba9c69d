package search

import (
	"errors"
	"testing"

	"pappus/layout"
)

// TestByBall: a search hears by the ball where the design has the field solved for, and leaves
// other models and errors as they are.
func TestByBall(t *testing.T) {
	for given, want := range map[string]string{"body": "sphere", "sphere": "sphere", "point": "point", "baffle": "baffle"} {
		if a, err := byBall(&layout.Array{Timing: layout.Timing{Model: given}}, nil); err != nil || a.Timing.Model != want {
			t.Errorf("%s: %s, %v; want %s", given, a.Timing.Model, err, want)
		}
	}
	if _, err := byBall(nil, errors.ErrUnsupported); !errors.Is(err, errors.ErrUnsupported) {
		t.Error(err)
	}
}
