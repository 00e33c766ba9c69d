package ball

import "math"

// Power returns the power that the cap radiates at the wavenumber k, rad/m, over
// that of a point source of equal volume velocity in free air: the mean over
// all directions of the squared far field, which by the Legendre
// polynomials' orthogonality (DLMF 18.3.1) is the sum of |q_n c_n|^2/(2n+1) with
// c_n at infinity. It tends to 1 for k -> 0. Errors wrap ErrCap and
// ErrWavenumber.
func (c Cap) Power(k float64) (float64, error) {
	if err := c.Check(); err != nil {
		return 0, err
	}
	if err := c.checkWavenumber(k); err != nil {
		return 0, err
	}
	w := weights{cap: newCapWeights(c.HalfAngle), bound: capBound(c.HalfAngle)}
	row := w.coefficients(nil, k*c.Radius, 0, 1e-18)
	if row == nil {
		return math.NaN(), ErrSlow
	}
	var sum float64
	for n, v := range row {
		sum += (real(v)*real(v) + imag(v)*imag(v)) / float64(2*n+1)
	}
	return sum, nil
}
