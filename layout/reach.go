package layout

import (
	"errors"

	"gonum.org/v1/gonum/spatial/r3"
)

// Why no sound can reach a place.
var (
	ErrInside       = errors.New("place inside the body")
	ErrBelowSurface = errors.New("place below the surface")
	ErrOutsideRoom  = errors.New("place outside the room")
)

// Reach returns what keeps sound from a place in m: ErrOutsideRoom, ErrBelowSurface or
// ErrInside; nil where nothing does.
func (a *Array) Reach(p r3.Vec) error {
	switch {
	case !a.Room.Contains(p):
		return ErrOutsideRoom
	case !a.Surface.Above(p):
		return ErrBelowSurface
	case a.Body.Contains(p):
		return ErrInside
	}
	return nil
}

// ReachSpot is Reach for a listening spot, which must be outside of the ball that stands
// for the body, too.
func (a *Array) ReachSpot(p r3.Vec) error {
	if err := a.Reach(p); err != nil || !a.Body.InBall(p) {
		return err
	}
	return ErrInside
}
