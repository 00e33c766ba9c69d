package radiate

import (
	"pappus/layout"

	"gonum.org/v1/gonum/spatial/r3"
)

// Field is the sound of one mount in the room, for the slice of frequencies
// that the field was made with.
//
// Add adds, for every point p and frequency f,
//
//	dst[p*len(weight)+f] += weight[f] * H(mount, points[p], f)
//
// where H is the complex pressure at the point, time factor exp(+i omega t),
// over the pressure that a point source of the same volume velocity would give
// at 1 m in free air without loss, its delay taken out: for such a source at
// the mount itself H = exp(-i k d)/d, d in m.
//
// The caller owns dst and weight; Add keeps neither and does not change
// weight. weight must have one value for each frequency of the field, and dst
// len(points)*len(weight); Add panics otherwise. A point on or inside the
// body's surface gives NaN, which callers take for "inside". Add allocates
// nothing and may be called from several goroutines with different dst.
type Field interface {
	Add(dst []complex128, mount layout.Mount, points []r3.Vec, weight []complex128)
}
