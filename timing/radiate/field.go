package radiate

import (
	"fmt"

	"pappus/layout"

	"gonum.org/v1/gonum/spatial/r3"
)

// The models of a driver that a design may name.
const (
	SphereModel = "sphere"
	PointModel  = "point"
	BaffleModel = "baffle"
	BodyModel   = "body"
)

// Field is the sound of drivers at one place after another, for the slice of frequencies
// that the field was made with.
//
// At sets, for every mount m and frequency f of n,
//
//	dst[m*n+f] = H(mounts[m], place, f)
//
// where H is the complex pressure at the place, time factor exp(+i omega t),
// over the pressure that a point source of the same volume velocity would give
// at 1 m in free air without loss, its delay taken out: for such a source at
// the mount itself H = exp(-i k d)/d, d in m. H is NaN at a source that is a point.
//
// At panics where dst has another length. It keeps nothing, allocates nothing once it has
// been called, and may be called from several goroutines with different dst.
type Field interface {
	At(dst []complex128, mounts []layout.Mount, place r3.Vec)
}

// newField returns the field that an array's design names, where it is a series to a
// tolerance. The error tells of a model that is none, or of a ball or frequency that package
// ball refuses.
func newField(a *layout.Array, m *Medium, tolerance float64) (Field, error) {
	switch a.Timing.Model {
	case PointModel:
		return Point(m), nil
	case BaffleModel:
		return Baffle(m, a.Driver.ConeRadius), nil
	case SphereModel:
		return Sphere(m, ConeCap(a), a.Body.BallCentre, tolerance)
	case BodyModel:
		return newBody(a, m, tolerance)
	}
	return nil, fmt.Errorf("no model is called %q", a.Timing.Model)
}
