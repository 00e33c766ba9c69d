package layout

import (
	"errors"
	"fmt"
	"math"

	"pappus/layout/body"
	"pappus/layout/design"
	"pappus/layout/prose"

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

// Surface is a large level surface below the body, a table or a floor.
type Surface struct {
	Present    bool
	Height     float64 // m, from the body's centre
	Absorption Absorption
}

// Above tells whether a point in m is above the surface or on it; it always is
// where there is none.
func (s Surface) Above(p r3.Vec) bool { return !s.Present || p.Z >= s.Height }

// surface gives what the design has below the body.
func surface(d *design.Design, shell *body.Body) Surface {
	if !d.Surface.Present {
		return Surface{}
	}
	return Surface{Present: true, Height: shell.Lowest() - d.Body.Stand, Absorption: d.Surface.Absorption}
}

// standing tells whether something hard below the body makes it whole by its mirror
// image: a surface or a room's floor that is nearer to its lowest point than the radius
// of the body's ball. Farther away sound goes under it as in open air; where on the way
// the one becomes the other is a judgement, not a measurement.
func (a *Array) standing() bool {
	gap := math.Inf(1) // from the body's lowest point down
	switch low := a.Body.Lowest(); {
	case a.Room.Present:
		gap = low + a.Room.Body.Z
	case a.Surface.Present:
		gap = low - a.Surface.Height
	}
	return gap < a.Body.BallRadius
}

// who is somebody who listens, as the errors of this package have it.
func who(l design.Listener) string {
	if l.Key == "spot" {
		return "the listening spot"
	}
	return l.Who
}

// checkListeners tells of a listening spot or a seat that is in the body.
func checkListeners(d *design.Design, b *body.Body) error {
	for _, l := range d.Listeners() {
		if b.Contains(l.At) || b.InBall(l.At) {
			return fault(d, l.Key, "", prose.Sprintf("%s is %.3g m from the body's centre, inside the body; must be outside", who(l), r3.Norm(l.At)), ErrInside)
		}
	}
	return nil
}

// checkPlaces tells of a spot, a seat or a mount that is below the surface or outside
// the room.
func checkPlaces(d *design.Design, s Surface, mounts []Mount) error {
	for _, l := range d.Listeners() {
		if key := l.Axis("z"); !s.Above(l.At) {
			return fault(d, key, d.Shown(key), prose.Sprintf("%s is below the surface; must be at least %.4g", who(l), s.Height), ErrBelowSurface)
		}
		if !d.Room.Contains(l.At) {
			return fault(d, l.Key, "", who(l)+" is outside the room; must be inside", ErrOutsideRoom)
		}
	}
	for _, m := range mounts {
		if !s.Above(m.Point) {
			return fault(d, "mounts", "", prose.Sprintf("driver %d is %.3g mm below the surface; must be above it",
				m.ID, (s.Height-m.Point.Z)/mm), ErrBelowSurface)
		}
		if !d.Room.Contains(m.Point) {
			return fault(d, "mounts", "", fmt.Sprintf("driver %d is outside the room; must be inside", m.ID), ErrOutsideRoom)
		}
	}
	return nil
}

// checkWoofer tells of a woofer that is in the body, below the surface or outside
// the room.
func checkWoofer(d *design.Design, b *body.Body, s Surface) error {
	w := d.Woofer
	switch {
	case !w.Present:
		return nil
	case b.Contains(w.At):
		return fault(d, "woofer", "", prose.Sprintf("the woofer is %.3g m from the body's centre, inside the body; must be outside", r3.Norm(w.At)), ErrInside)
	case !s.Above(w.At):
		return fault(d, "woofer.z_m", d.Shown("woofer.z_m"), prose.Sprintf(
			"the woofer is below the surface; must be at least %.4g, or give a [room] in place of the surface", s.Height), ErrBelowSurface)
	case !d.Room.Contains(w.At):
		return fault(d, "woofer", "", "the woofer is outside the room; must be inside", ErrOutsideRoom)
	}
	return nil
}
