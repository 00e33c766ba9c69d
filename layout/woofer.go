package layout

import (
	"fmt"

	"pappus/layout/design"
	"pappus/layout/prose"

	"gonum.org/v1/gonum/spatial/r3"
)

func woofer(d design.Woofer) Woofer {
	if !d.Present {
		return Woofer{}
	}
	return Woofer{
		Present: true, At: r3.Vec{X: d.XM, Y: d.YM, Z: d.ZM}, Crossover: d.CrossoverHz, Order: d.Order,
		Sensitivity: orNaN(d.SensitivityDB), Gain: d.GainDB, Invert: d.Invert,
	}
}

// checkWoofer tells of a woofer that is in the body, below the surface or outside
// the room.
func checkWoofer(d *design.Design, a *Array) error {
	w := a.Woofer
	switch {
	case !w.Present:
		return nil
	case a.Body.Contains(w.At):
		return fault(d, "woofer", "", prose.Sprintf("the woofer is %.3g m from the body's centre, inside the body; must be outside", r3.Norm(w.At)), ErrInside)
	case !a.Surface.Above(w.At):
		return fault(d, "woofer.z_m", fmt.Sprint(d.Woofer.ZM), prose.Sprintf(
			"the woofer is below the surface; must be at least %.4g, or give a [room] in place of the surface", a.Surface.Height), ErrBelowSurface)
	case !a.Room.Contains(w.At):
		return fault(d, "woofer", "", "the woofer is outside the room; must be inside", ErrOutsideRoom)
	}
	return nil
}
