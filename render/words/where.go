package words

import (
	"fmt"
	"math"

	"pappus/layout/prose"
	"pappus/timing/where"
)

// BetterPlace says what a better place of the chair, or of the body, brings, or that there is none.
func BetterPlace(f where.Found, what string) string {
	now, was := f.Best.Spot, f.Before.Spot
	if !f.Better() {
		return fmt.Sprintf("No other place for the %s is worth the move: the chair loses %s for want of step%s.", what,
			decibelsOf(was.Aligned.Loss), rippled(was.Ripple, "; echoes make the level uneven by %s"))
	}
	out := fmt.Sprintf("Here the chair loses %s for want of step, and lost %s before", decibelsOf(now.Aligned.Loss), decibelsOf(was.Aligned.Loss))
	if now.Ripple == 0 && was.Ripple == 0 {
		return out + "."
	}
	return out + fmt.Sprintf("; echoes make the level uneven by %s, and did by %s.", decibelsOf(now.Ripple), decibelsOf(was.Ripple))
}

func decibelsOf(v float64) string { return prose.Sprintf("%.1f dB", math.Round(10*v)/10+0) }

func rippled(v float64, words string) string {
	if v == 0 {
		return ""
	}
	return fmt.Sprintf(words, decibelsOf(v))
}
