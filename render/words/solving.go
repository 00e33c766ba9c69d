package words

import (
	"fmt"
	"math"

	"pappus/layout/prose"
)

// ToSolve says, before it is solved for, how long the field of a body takes, and whether it is
// kept.
func ToSolve(seconds float64, kept bool) string {
	text := "Solving for the field of the body as it is: " + about(seconds)
	if kept {
		return text + ", once; it is kept."
	}
	return text + "."
}

// Solving says how far that is, and what is left, in 60 letters at most.
func Solving(done, left float64) string {
	return fmt.Sprintf("solving for the body's field: %.0f %%, %s left", 100*done, about(left))
}

// about is a time in round figures.
func about(seconds float64) string {
	if seconds < 90 {
		return "about " + prose.Count(max(1, int(math.Round(seconds))), "second", "seconds")
	}
	return "about " + prose.Count(int(math.Round(seconds/60)), "minute", "minutes")
}
