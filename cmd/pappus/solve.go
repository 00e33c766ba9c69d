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
		left := leftOf(done, seconds, time.Since(begun).Seconds())
		if whole := left / (1 - min(done, 0.99)); first && whole > patience.Seconds() {
			said.note(words.ToSolve(whole, radiate.Kept.Folder != ""))
		}
		first = false
		said.say(words.Solving(done, left))
	})
}

// foretold is the part of the work after which what it took tells better than the forecast how
// long the rest takes: the first steps are over in no time, and hardly tell.
const foretold = 0.1

// leftOf returns the seconds that are left of work of which a part is done: by a forecast of
// the whole at first, and then by what it has taken so far.
func leftOf(done, forecast, taken float64) float64 {
	if done < foretold {
		return forecast * (1 - done)
	}
	return taken / done * (1 - done)
}
