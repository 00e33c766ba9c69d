package ball

import (
	"math"

	"pappus/layout/prose"
)

// Coefficients appends to dst the terms q_n c_n of the package comment at the distance r in
// m for the wavenumber k in rad/m, until the rest of the series is below tolerance times
// the sum of the sizes of the terms. Times P_n(cos gamma) exp(-ikr)/r they add up to H;
// r may be +Inf, for the far field. Errors wrap ErrCap, ErrWavenumber, ErrDistance,
// ErrInside and ErrTooNear.
func (c Cap) Coefficients(dst []complex128, k, r, tolerance float64) ([]complex128, error) {
	if err := c.Check(); err != nil {
		return nil, err
	}
	if err := c.checkWavenumber(k); err != nil {
		return nil, err
	}
	if !math.IsInf(r, 1) {
		if err := c.checkDistance(r); err != nil {
			return nil, err
		}
	}
	if dst = NewTerms(c).At(dst, k, r, tolerance); dst == nil {
		return nil, prose.Errorf("%w: a/r = %g, k = %g rad/m", ErrTooNear, c.Radius/r, k)
	}
	return dst, nil
}

// Terms gives the coefficients of one cap again and again, and keeps what does not change
// with distance and wavenumber. It is for one goroutine.
type Terms struct {
	cap Cap
	w   weights
}

// NewTerms returns the terms of a cap that Check has passed.
func NewTerms(c Cap) *Terms {
	return &Terms{c, weights{cap: newCapWeights(c.HalfAngle), bound: capBound(c.HalfAngle)}}
}

// At is [Cap.Coefficients] for wavenumbers and distances that are known to be possible;
// nil where the series is too long.
func (t *Terms) At(dst []complex128, k, r, tolerance float64) []complex128 {
	return t.w.coefficients(dst, k*t.cap.Radius, t.cap.Radius/r, tolerance)
}
