package main

import (
	"context"
	"time"

	"pappus/layout"
	"pappus/render/words"
	"pappus/timing/radiate"
)

// solve solves for the field of an array's body where its model asks for that and it is not at
// hand, and says how far it is and how long that takes.
func solve(ctx context.Context, said *progress, a *layout.Array) error {
	begun, first := time.Now(), true
	return radiate.Solve(ctx, a, func(done, seconds float64) {
		left := radiate.Left(done, seconds, time.Since(begun).Seconds())
		if whole := left / (1 - min(done, 0.99)); first && whole > patience.Seconds() {
			said.note(words.ToSolve(whole, radiate.Kept.Folder != ""))
		}
		first = false
		said.say(words.Solving(done, left))
	})
}
