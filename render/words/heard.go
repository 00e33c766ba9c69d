package words

import (
	"slices"

	"pappus/layout/prose"
	"pappus/timing"
	"pappus/timing/radiate"
)

// What the page has on the button that asks for the other model of a body, and what it says
// where something is to be built from a plan in which the ball still stands for the body.
const (
	HearBody     = "Hear the body as it is"
	HearBall     = "Take the ball again"
	StayBall     = "Stay with the ball"
	NotYetSolved = "the field of this body is not solved for yet, and the delays may still change a little: wait on the page until it is, or take the ball there"
)

// HeardAs says in a sentence whether the plan takes the body for a ball or as it is, and whether
// the ball is only there until the body's field is solved for. It is empty in models without a body.
func HeardAs(p *timing.Plan, waits bool) string {
	switch s := p.Solved(); {
	case s != nil:
		return "All figures take the body as it is, with its faces and edges, up to " + prose.Hertz(s.From, 2) + "; from " + prose.Hertz(s.To, 2) + " on a ball stands for it."
	case p.Array.Timing.Model != radiate.SphereModel:
		return ""
	case waits:
		return "Until the field of the body is solved for, all figures take it for a ball."
	}
	if _, dB := p.LevelErrors(); slices.Max(dB) >= hardlyOff {
		return prose.Sprintf("All figures take the body for a ball; the level of one driver can be off by up to %.1f dB.", slices.Max(dB))
	}
	return "All figures take the body for a ball."
}

// NotSolved says why a body's field could not be solved for.
func NotSolved(why string) string {
	return "The field of this body cannot be solved for: " + why + ". The ball goes on standing for it."
}
