package radiate

import (
	"math"

	"pappus/layout"

	"gonum.org/v1/gonum/spatial/r3"
)

// baffle is a flat piston in an infinite baffle.
type baffle struct {
	medium *Medium
	cone   float64
}

// Baffle returns the field of a flat piston with a cone radius in m, in an
// infinite baffle that goes through the mount at right angles to its normal:
//
//	H = 2 exp(-i k d)/d * Piston(k a sin theta) times the loss in air
//
// in front of the baffle, half of that in its plane (the mean of both sides)
// and 0 behind. This is the far field: d large against a and against k a^2/2.
// Kinsler, Frey, Coppens and Sanders, Fundamentals of Acoustics, 4th ed., 7.4.
func Baffle(m *Medium, cone float64) Field { return baffle{m, cone} }

func (b baffle) At(dst []complex128, mounts []layout.Mount, place r3.Vec) {
	b.medium.check(dst, len(mounts))
	n := len(b.medium.Frequency)
	for m, mount := range mounts {
		row, ray := dst[m*n:(m+1)*n], r3.Sub(place, mount.Point)
		d, side := distance(mount, place), strength(r3.Dot(ray, mount.Normal))
		if side == 0 {
			clear(row)
			continue
		}
		sin := r3.Norm(r3.Cross(ray, mount.Normal)) / d
		for f := range row {
			row[f] = b.medium.spread(f, d) * complex(side*Piston(b.medium.Wavenumber[f]*b.cone*sin), 0)
		}
	}
}

// strength is 2 in front of a baffle, 0 behind and 1 in its plane.
func strength(height float64) float64 {
	switch {
	case height > 0:
		return 2
	case height < 0:
		return 0
	}
	return 1
}

// Piston returns the far-field directivity 2 J1(x)/x of a flat circular piston,
// x = k a sin theta; 1 on the axis. Kinsler, Frey, Coppens and Sanders,
// Fundamentals of Acoustics, 4th ed..
func Piston(x float64) float64 {
	if math.Abs(x) < 1e-4 {
		return 1 - x*x/8 // the next term, x^4/192, is below 1e-18
	}
	return 2 * math.J1(x) / x
}
