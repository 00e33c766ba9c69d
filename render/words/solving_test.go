package words

import (
	"testing"

	"pappus/timing/radiate"
)

func TestSolving(t *testing.T) {
	for got, want := range map[string]string{
		ToSolve(150, true):     "Solving for the field of the body as it is: about 3 minutes, once; it is kept.",
		ToSolve(1.2, false):    "Solving for the field of the body as it is: about 1 second.",
		Solving(0.417, 89):     "solving for the body's field: 42 %, about 89 seconds left",
		Solving(0.999999, 0):   "solving for the body's field: 100 %, about 1 second left",
		Solving(0.05, 12*60+1): "solving for the body's field: 5 %, about 12 minutes left",
	} {
		if got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
}

// TestSolved: how far a body is taken as it is, and why no farther.
func TestSolved(t *testing.T) {
	s := &radiate.Solution{From: 2828, To: 4000}
	says(t, solved(s, 4000, 0.15), []string{"up to 4 kHz; from 2.8 kHz to there the rigid ball of 150 mm radius"}, []string{"asks"})
	s.Short = true
	says(t, solved(s, 8000, 0.15), []string{"The design asks for 8 kHz (solve_to_hz), which would take more than 5 minutes on two cores."}, nil)
}
