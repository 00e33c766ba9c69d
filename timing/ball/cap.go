package ball

import (
	"errors"
	"math"

	"pappus/layout/prose"
)

// Errors that the functions of this package wrap.
var (
	ErrCap        = errors.New("impossible cap")
	ErrWavenumber = errors.New("impossible wavenumber")
	ErrInside     = errors.New("point inside the ball")
	ErrTooNear    = errors.New("point too near the ball for a series")
	ErrDistance   = errors.New("impossible distance")
	ErrAngle      = errors.New("impossible angle")
	ErrSlow       = errors.New("series does not reach its bound")
)

// Cap is a polar cap on a rigid ball.
type Cap struct {
	Radius    float64 // of the ball, m, above 0
	HalfAngle float64 // between the cap's axis and its rim as seen from the centre, rad, above 0, to pi
}

// Check returns an error that wraps ErrCap and names the value at fault, or
// nil.
func (c Cap) Check() error {
	if !(c.Radius > 0) || math.IsInf(c.Radius, 1) {
		return prose.Errorf("%w: radius %g m must be above 0 and finite", ErrCap, c.Radius)
	}
	if !(c.HalfAngle >= minHalfAngle && c.HalfAngle <= math.Pi) {
		return prose.Errorf("%w: half angle %g rad must be from %g to pi", ErrCap, c.HalfAngle, minHalfAngle)
	}
	return nil
}

// minHalfAngle keeps 1-cos and its reciprocal far from the ends of the range
// of float64; such a cap is a point for any purpose.
const minHalfAngle = 1e-6

// checkWavenumber accepts k >= 0, rad/m.
func (c Cap) checkWavenumber(k float64) error {
	if !(k >= 0) || k*c.Radius > maxKA {
		return prose.Errorf("%w: k = %g rad/m must be from 0 to %g", ErrWavenumber, k, maxKA/c.Radius)
	}
	return nil
}

// maxKA bounds the work, not the formulas: there are about ka terms.
const maxKA = 1e4

// checkDistance accepts r >= a, m.
func (c Cap) checkDistance(r float64) error {
	switch {
	case math.IsNaN(r) || math.IsInf(r, 0):
		return prose.Errorf("%w: r = %g m must be finite", ErrDistance, r)
	case r < c.Radius:
		return prose.Errorf("%w: r = %g m is under the radius %g m", ErrInside, r, c.Radius)
	}
	return nil
}

// versine is 1 - cos x without the loss near zero.
func versine(x float64) float64 {
	s := math.Sin(x / 2)
	return 2 * s * s
}
