package layout

import (
	"errors"
	"fmt"

	"pappus/layout/design"
	"pappus/layout/prose"

	"gonum.org/v1/gonum/spatial/r3"
)

// Why no sound can reach a place.
var (
	ErrInside       = errors.New("place inside the body")
	ErrBelowSurface = errors.New("place below the surface")
	ErrAboveCeiling = errors.New("place above the ceiling")
	ErrBehindWall   = errors.New("place behind the wall")
	ErrOverlap      = errors.New("bodies in one another")
	ErrOutsideRoom  = errors.New("place outside the room")
)

// Reach returns what keeps sound from a place in m: ErrOutsideRoom, what there is to say of
// a place beyond the surface, or ErrInside; nil where nothing does.
func (a *Array) Reach(p r3.Vec) error {
	switch {
	case !a.Room.Contains(p):
		return ErrOutsideRoom
	case !a.Surface.Clears(p):
		_, _, _, _, err := a.Surface.beyond()
		return err
	}
	for _, body := range a.Bodies() {
		if a.Body.Contains(body.Into(p)) {
			return ErrInside
		}
	}
	return nil
}

// ReachSpot is Reach for a listening spot, which must be outside of the balls that stand
// for the bodies, too.
func (a *Array) ReachSpot(p r3.Vec) error {
	if err := a.Reach(p); err != nil {
		return err
	}
	for _, body := range a.Bodies() {
		if a.Body.InBall(body.Into(p)) {
			return ErrInside
		}
	}
	return nil
}

// who is somebody who listens, as the errors of this package have it.
func who(l design.Listener) string {
	if l.Key == "spot" {
		return "the listening spot"
	}
	return l.Who
}

// checkListeners tells of a listening spot or a seat that is in a body.
func (a *Array) checkListeners(d *design.Design) error {
	for _, l := range d.Listeners() {
		for _, body := range a.Bodies() {
			if at := body.Into(l.At); a.Body.Contains(at) || a.Body.InBall(at) {
				return fault(d, l.Key, "", prose.Sprintf("%s is %.3g m from the body's centre, inside the body; must be outside", who(l), r3.Norm(at)), ErrInside)
			}
		}
	}
	return nil
}

// slack is what rounding may add to a place in m: a driver may be right on the surface.
const slack = 1e-9

// checkPlaces tells of a spot, a seat or a mount that is beyond the surface or outside the
// room.
func (a *Array) checkPlaces(d *design.Design) error {
	there, here, axis, bound, err := a.Surface.beyond()
	for _, l := range d.Listeners() {
		if key := l.Axis(axis); !a.Surface.Clears(l.At) {
			return fault(d, key, d.Shown(key), prose.Sprintf("%s is %s; must be %s %.4g", who(l), there, bound, a.Surface.Height), err)
		}
		if !d.Room.Contains(l.At) {
			return fault(d, l.Key, "", who(l)+" is outside the room; must be inside", ErrOutsideRoom)
		}
	}
	for _, m := range a.Mounts {
		at := a.PlaceOf(m)
		if a.Surface.Present && a.Surface.Gap(at) < -slack {
			return fault(d, "mounts", "", prose.Sprintf("driver %d is %.3g mm %s; must be %s",
				m.ID, -a.Surface.Gap(at)/mm, there, here), err)
		}
		if !d.Room.Contains(at) {
			return fault(d, "mounts", "", fmt.Sprintf("driver %d is outside the room; must be inside", m.ID), ErrOutsideRoom)
		}
	}
	return nil
}

// checkWoofer tells of a woofer that is in the body, beyond the surface or outside the room.
func (a *Array) checkWoofer(d *design.Design) error {
	w := d.Woofer
	if !w.Present {
		return nil
	}
	for _, body := range a.Bodies() {
		if at := body.Into(w.At); a.Body.Contains(at) {
			return fault(d, "woofer", "", prose.Sprintf("the woofer is %.3g m from the body's centre, inside the body; must be outside", r3.Norm(at)), ErrInside)
		}
	}
	there, _, axis, bound, err := a.Surface.beyond()
	switch {
	case !a.Surface.Clears(w.At):
		return fault(d, "woofer."+axis+"_m", d.Shown("woofer."+axis+"_m"), prose.Sprintf(
			"the woofer is %s; must be %s %.4g, or give a [room] in place of the surface", there, bound, a.Surface.Height), err)
	case !d.Room.Contains(w.At):
		return fault(d, "woofer", "", "the woofer is outside the room; must be inside", ErrOutsideRoom)
	}
	return nil
}
