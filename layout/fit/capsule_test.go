package fit

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// TestCapsules: no two points of the lines are nearer than is told, and two are as near.
func TestCapsules(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		point := func(name string) r3.Vec {
			c := rapid.IntRange(-4, 4) // so that some are level, touch or are points
			return r3.Vec{X: float64(c.Draw(t, name+" x")), Y: float64(c.Draw(t, name+" y")), Z: float64(c.Draw(t, name+" z"))}
		}
		p := capsule{point("a"), point("b"), 0.25}
		q := capsule{point("c"), point("d"), 0.5}
		got, back := p.apart(q)+0.75, q.apart(p)+0.75
		least := math.Inf(1)
		const steps = 200
		for i := range steps + 1 {
			at := r3.Add(p.a, r3.Scale(float64(i)/steps, r3.Sub(p.b, p.a)))
			// The nearest to a point on the other line, in one step.
			along, f := r3.Sub(q.b, q.a), 0.0
			if n := r3.Norm2(along); n > 0 {
				f = min(1, max(0, r3.Dot(r3.Sub(at, q.a), along)/n))
			}
			least = min(least, r3.Norm(r3.Sub(at, r3.Add(q.a, r3.Scale(f, along)))))
		}
		step := r3.Norm(r3.Sub(p.b, p.a)) / steps
		if got > least+1e-9 || got < least-step-1e-9 || math.Abs(got-back) > 1e-9 {
			t.Errorf("%g apart, the other way %g; by steps %g", got, back, least)
		}
	})
}
