package head

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

const (
	// Radius of the head in m.
	Radius = 0.0875

	// EarAngle lies between the nose and either ear, in rad.
	EarAngle = 100 * math.Pi / 180
)

// Ears returns the directions of both ears from the centre of an upright head
// that looks along nose, of any length but 0; its height does not count. Azimuth
// is counter-clockwise, so the left ear is at +EarAngle. Where nose points straight
// up or down the head looks along x.
func Ears(nose r3.Vec) (left, right r3.Vec) {
	azimuth := math.Atan2(nose.Y, nose.X)
	ear := func(angle float64) r3.Vec {
		sin, cos := math.Sincos(azimuth + angle)
		return r3.Vec{X: cos, Y: sin}
	}
	return ear(EarAngle), ear(-EarAngle)
}
