package preview

import (
	"pappus/layout"
	"pappus/layout/prose"

	"gonum.org/v1/gonum/spatial/r3"
)

// reach returns what keeps sound from places in m: an error that wraps
// layout.ErrUnreachable.
func reach(a *layout.Array, places ...r3.Vec) error {
	for _, at := range places {
		if err := a.Reach(at); err != nil {
			return prose.Errorf("at %.3g, %.3g, %.3g m: %w", at.X, at.Y, at.Z, err)
		}
	}
	return nil
}
