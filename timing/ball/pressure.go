package ball

import (
	"fmt"
	"math"
	"math/cmplx"
)

const (
	// nearby is the least a/r for which the static field is taken out.
	nearby = 1 / 1.002

	// A value is exact to goodEnough of its own size, as far as the end of the
	// series goes; on the surface at high ka that may take very many terms,
	// and a value is given with a bound up to tolerable.
	goodEnough = 1e-15
	tolerable  = 1e-9

	maxTerms = 1 << 20
)

// Pressure returns H of the package comment in 1/m: the complex pressure at
// distance r >= a from the centre and angle gamma from the cap's axis, for the
// wavenumber k, over that of a point source of equal volume velocity at 1 m in
// free air with its delay taken out. k is in rad/m, r in m, gamma in rad; the
// field is even in gamma and of period 2 pi.
//
// k may be 0 and r may be the radius: points on the surface, and on the cap
// itself, are served. From 0.2 per cent of the radius above the surface the
// rest of the series is below 1e-15 of the value. Nearer, where up to a
// million terms are summed, it is below 1e-9, and usually far below; else the
// error wraps ErrSlow. Other errors wrap ErrCap, ErrWavenumber, ErrDistance,
// ErrInside and ErrAngle. For one cap and many angles or wavenumbers use
// [Series].
func (c Cap) Pressure(k, r, gamma float64) (complex128, error) {
	if err := c.Check(); err != nil {
		return 0, err
	}
	if err := c.checkWavenumber(k); err != nil {
		return 0, err
	}
	if err := c.checkDistance(r); err != nil {
		return 0, err
	}
	if math.IsNaN(gamma) || math.IsInf(gamma, 0) {
		return 0, fmt.Errorf("%w: gamma = %g must be finite", ErrAngle, gamma)
	}
	v, err := c.relative(k*c.Radius, c.Radius/r, gamma)
	if err != nil {
		return 0, fmt.Errorf("k = %g rad/m, r = %g m, gamma = %g rad: %w", k, r, gamma, err)
	}
	return v * cmplx.Rect(1/r, -k*r), nil
}

// relative is the pressure over that of a point source at the centre.
func (c Cap) relative(ka, u, gamma float64) (complex128, error) {
	if u > nearby {
		return c.nearSurface(ka, u, math.Abs(math.Remainder(gamma, 2*math.Pi)))
	}
	var (
		b   = capBound(c.HalfAngle)
		q   = newCapWeights(c.HalfAngle)
		p   = newLegendre(gamma)
		g   = newRadial(ka, u)
		sum complex128
	)
	for n := 0; n < maxTerms; n++ {
		re, im := g.value()
		f := q.value() * p.value()
		sum += complex(f*re, f*im)
		if n%4 == 3 && g.rest(b) <= goodEnough*cmplx.Abs(sum) {
			return sum, nil
		}
		q.next()
		p.next()
		g.next()
	}
	return 0, ErrSlow
}

// nearSurface takes the static field out of the series. c_n tends to
// exp(ikr) (a/r)^n/(n+1); with t_n, T_n of the package comment, d ln(z^{n+1}
// h_n)/dz = t_n/z gives
//
//	|c_n - exp(ikr) u^n/(n+1)| <= u^n ((e^eta-1)/(n+1-T) + T/((n+1)(n+1-T))),
//	eta = (kr^2-ka^2)/(2(2n-1-kr)),  T = T_n(ka)
//
// which falls like n^-2 off the surface and n^-3 on it, faster than c_n by one
// or two powers.
func (c Cap) nearSurface(ka, u, gamma float64) (complex128, error) {
	var (
		kr     = ka / u
		s, co  = math.Sincos(kr)
		power  = 1.0 // u^n
		q      = newCapWeights(c.HalfAngle)
		p      = newLegendre(gamma)
		g      = newRadial(ka, u)
		static = c.static(u, gamma)
		bound  = newSurfaceBound(c.HalfAngle, ka, u, gamma)
		sr, si float64
		rest   = math.Inf(1)
		total  complex128
	)
	for n := 0; n < maxTerms; n++ {
		re, im := g.value()
		e := power / float64(n+1)
		f := q.value() * p.value()
		sr += f * (re - co*e)
		si += f * (im - s*e)
		if n%64 == 63 {
			total = complex(sr+co*static, si+s*static)
			rest = bound.rest(float64(n), power)
			if rest <= goodEnough*cmplx.Abs(total) {
				return total, nil
			}
		}
		q.next()
		p.next()
		g.next()
		power *= u
	}
	if rest <= tolerable*cmplx.Abs(total) {
		return total, nil
	}
	return 0, fmt.Errorf("%w: rest %.1g of %.1g after %d terms", ErrSlow, rest, cmplx.Abs(total), maxTerms)
}

// surfaceBound bounds what is left of the series without its static part.
type surfaceBound struct {
	cap, angle float64 // |q_n| <= cap/sqrt(n-1/2), |P_n| <= angle/sqrt(n+1/2)
	ka, kr, u  float64
}

func newSurfaceBound(halfAngle, ka, u, gamma float64) surfaceBound {
	return surfaceBound{
		cap:   capBound(halfAngle),
		angle: math.Sqrt(2 / (math.Pi * math.Abs(math.Sin(gamma)))),
		ka:    ka, kr: ka / u, u: u,
	}
}

// rest bounds the sum over m > n, where power is u^n. Beyond n the terms are at
// most b m^-1/2 u^m (E m^-2 + T m^-3), and m^-1/2 times the angle's constant
// less where that helps; the sums of powers are bounded by their integrals,
// or by the geometric series.
func (s surfaceBound) rest(n, power float64) float64 {
	if 2*n <= 2*(1+s.kr) || s.ka*s.ka >= 2*n-1-s.ka {
		return math.Inf(1) // T_n < 1 is used below, for 1/(n+1-T) < 1/n
	}
	var (
		eta = (s.kr*s.kr - s.ka*s.ka) / (2 * (2*n - 1 - s.kr))
		e   = eta * n * math.Exp(eta)
		t   = s.ka * s.ka / (2*n - 1 - s.ka) * n
		b   = s.cap * power * math.Sqrt(n/(n-0.5))
	)
	// the sum of m^-x over m > n
	tail := func(x float64) float64 {
		return min(math.Pow(n, 1-x)/(x-1), math.Pow(n, -x)*s.u/(1-s.u))
	}
	return b * min(e*tail(2.5)+t*tail(3.5), s.angle*(e*tail(3)+t*tail(4)))
}
