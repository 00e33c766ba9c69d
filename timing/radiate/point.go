package radiate

import (
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
// 7.1. H is NaN at the mount itself.
func Point(m *Medium) Field { return point{m} }

func (p point) Add(dst []complex128, mount layout.Mount, points []r3.Vec, weight []complex128) {
	p.medium.check(dst, len(points), weight)
	for _, at := range points {
		d := r3.Norm(r3.Sub(at, mount.Point))
		scale := over(1, d)
		row := dst[:len(weight)]
		dst = dst[len(weight):]
		for f, w := range weight {
			row[f] += w * p.medium.wave(f, d) * scale
		}
	}
}
