package timing

import (
	"context"

	"pappus/layout"
)

// Sketch is Make without all that takes long and no other figure hangs on: the Spot, Maximum
// and Loudest alone, to the bit as Make has them. Where the array has several seats its
// channels are sought quickly, and are a little worse or as good. Errors are those of Make.
func Sketch(ctx context.Context, a *layout.Array) (*Plan, error) {
	p, err := NewPlanner(a)
	if err != nil {
		return nil, err
	}
	spot, err := p.spot(ctx, a, sketched)
	if err != nil {
		return nil, err
	}
	plan := &Plan{Spot: *spot}
	plan.Maximum.levels(spot)
	plan.Loudest = plan.Maximum.loudest()
	return plan, ctx.Err()
}
