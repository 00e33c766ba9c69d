package words_test

import (
	"testing"

	"pappus/render/words"
	"pappus/timing"
	"pappus/timing/where"
)

// TestBetterPlace to the letter.
func TestBetterPlace(t *testing.T) {
	place := func(loss, ripple float64) where.Place {
		return where.Place{Spot: &timing.Spot{Aligned: timing.Measures{Loss: loss}, Ripple: ripple}}
	}
	for _, test := range []struct {
		name         string
		before, best where.Place
		want         string
	}{
		{"in open air", place(1.27, 0), place(0.44, 0), "Here the chair loses 0.4 dB for want of step, and lost 1.3 dB before."},
		{"in a room", place(1.2, 2.2), place(0.7, 1), "Here the chair loses 0.7 dB for want of step, and lost 1.2 dB before; echoes make the level uneven by 1.0 dB, and did by 2.2 dB."},
		{"none", place(0.5, 0), place(0.45, 0), "No other place for the chair is worth the move: the chair loses 0.5 dB for want of step."},
		{"none in a room", place(0.5, 1), place(0.5, 1), "No other place for the chair is worth the move: the chair loses 0.5 dB for want of step; echoes make the level uneven by 1.0 dB."},
	} {
		t.Run(test.name, func(t *testing.T) {
			if got := words.BetterPlace(where.Found{Before: test.before, Best: test.best}, "chair"); got != test.want {
				t.Errorf("it says\n%s, not\n%s", got, test.want)
			}
		})
	}
}
