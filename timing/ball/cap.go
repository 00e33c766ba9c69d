package ball

import (
	"math"

	"pappus/layout/prose"
)

// Nearest is the least distance from the centre, in radii, at which the field is summed:
// nearer the series falls too slowly, and what is asked for there is taken from here.
const Nearest = 1.01

// Cap is a polar cap on a rigid ball.
type Cap struct {
	Radius    float64 // of the ball, m, above 0
	HalfAngle float64 // between the cap's axis and its rim as seen from the centre, rad, from 1e-6 to pi
}

// The bounds of what is summed. A smaller cap is a point for any purpose, and 1-cos of it
// far from the ends of the range of float64. There are about ka terms.
const (
	minHalfAngle = 1e-6
	maxKA        = 1e4
)

// check names what is impossible of a cap and wavenumbers in rad/m; nil: nothing.
func (c Cap) check(k []float64) error {
	if !(c.Radius > 0) || math.IsInf(c.Radius, 1) {
		return prose.Errorf("ball: radius %.6g m must be above 0 and finite", c.Radius)
	}
	if !(c.HalfAngle >= minHalfAngle && c.HalfAngle <= math.Pi) {
		return prose.Errorf("ball: half angle %.6g rad of a cap must be from %.6g to pi", c.HalfAngle, minHalfAngle)
	}
	for _, k := range k {
		if !(k >= 0) || k*c.Radius > maxKA {
			return prose.Errorf("ball: wavenumber %.6g rad/m must be from 0 to %.6g", k, maxKA/c.Radius)
		}
	}
	return nil
}

// versine is 1 - cos x without the loss near zero.
func versine(x float64) float64 {
	s := math.Sin(x / 2)
	return 2 * s * s
}
