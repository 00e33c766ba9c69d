package bill

import (
	"math"

	"pappus/layout"
	"pappus/layout/poly"

	"gonum.org/v1/gonum/spatial/r3"
)

// rearShare is how far behind its flange a driver's middle of mass is, of its depth.
const rearShare = 0.6

// Balance is where the mass of one body is, its shell and drivers, as far as it is known.
type Balance struct {
	Mass   float64 // kg
	Centre r3.Vec  // m, in the body's frame
	// Hook is where the body meets what it is fixed to: on the upright line through its centre, in
	// the body's frame.
	Hook r3.Vec
	// Lean is by what angle in rad a body hung by Hook alone leans, so that Centre is plumb below
	// it; NaN where Centre is not below it.
	Lean float64
	// Counter is what mass in kg on the body, straight across from Centre and as far from the
	// upright line as the body reaches there, would make it hang straight.
	Counter float64
}

// BalanceOf returns the balance of the first body with a printed shell, as it is held. known is
// false where a driver's mass is not known.
func BalanceOf(a *layout.Array, shell poly.Mesh) (b Balance, known bool) {
	if !(a.Driver.Mass > 0) {
		return b, false
	}
	b.Mass = shell.Volume() * a.Print.Density
	sum := r3.Scale(b.Mass, shell.Centroid())
	for _, m := range a.Own() {
		at := r3.Sub(m.Point, r3.Scale(rearShare*a.Driver.Depth, m.Normal))
		sum = r3.Add(sum, r3.Scale(a.Driver.Mass, at))
		b.Mass += a.Driver.Mass
	}
	b.Centre = r3.Scale(1/b.Mass, sum)
	held := a.Bodies()[0]
	up := layout.Towards(a.On)
	b.Hook = held.In(r3.Scale(a.Extent(up), up))
	b.lean(held.In(up), a.Body.Radius)
	return b, true
}

// lean finds how a body hangs by its hook, up in its own frame.
func (b *Balance) lean(up r3.Vec, reach float64) {
	below := r3.Dot(r3.Sub(b.Hook, b.Centre), up)
	aside := r3.Norm(r3.Sub(b.Centre, r3.Scale(r3.Dot(b.Centre, up), up)))
	b.Lean = math.NaN()
	if below > 0 {
		b.Lean = math.Atan2(aside, below)
	}
	b.Counter = b.Mass * aside / reach
}
