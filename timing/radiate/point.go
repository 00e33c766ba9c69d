package radiate

import (
	"math"

	"pappus/layout"

	"gonum.org/v1/gonum/spatial/r3"
)

// point is a point source in open air.
type point struct{ medium *Medium }

// Point returns the field of a point source at the mount, as if the body were
// not there:
//
//	H = exp(-i k d)/d times the loss in air
//
// with d the straight distance in m. Morse and Ingard, Theoretical Acoustics,
// 7.1.
func Point(m *Medium) Field { return point{m} }

func (p point) At(dst []complex128, mounts []layout.Mount, place r3.Vec) {
	p.medium.check(dst, len(mounts))
	n := len(p.medium.Frequency)
	for m, mount := range mounts {
		d := distance(mount, place)
		for f := range n {
			dst[m*n+f] = p.medium.spread(f, d)
		}
	}
}

// distance returns the straight distance from a mount in m, NaN where there is none.
func distance(mount layout.Mount, place r3.Vec) float64 {
	if d := r3.Norm(r3.Sub(place, mount.Point)); d != 0 {
		return d
	}
	return math.NaN()
}
