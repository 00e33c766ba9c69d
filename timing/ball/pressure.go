package ball

import (
	"math"
	"math/cmplx"

	"pappus/layout/prose"
)

const (
	// nearby is the least a/r for which the slow part of the series is taken
	// out.
	nearby = 1 / 1.002

	// The series ends when its rest is below goodEnough of the value. Near the
	// surface goodNearby is the aim, or rounding of the closed form; the value
	// is given if both together are below tolerable.
	goodEnough = 1e-15
	goodNearby = 1e-12
	tolerable  = 1e-9
	rounding   = 1e-14 // of the closed form and its sum; measured below that

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
// rest of the series is below 1e-15 of the value. Nearer, bound and rounding
// are below 1e-9 of it, as a rule 1e-12, after up to a million terms; where they
// are not, in a very deep shadow at ka of some hundreds, the error wraps
// ErrSlow. Other errors wrap ErrCap, ErrWavenumber, ErrDistance, ErrInside and
// ErrAngle. For one cap and many angles or wavenumbers use [Series].
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
		return 0, prose.Errorf("%w: gamma = %g must be finite", ErrAngle, gamma)
	}
	v, err := c.relative(k*c.Radius, c.Radius/r, gamma)
	if err != nil {
		return 0, prose.Errorf("k = %g rad/m, r = %g m, gamma = %g rad: %w", k, r, gamma, err)
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

// nearSurface takes out of the series what falls slowly: all of it, or the
// static field only where rounding asks for that; see surface.
func (c Cap) nearSurface(ka, u, gamma float64) (complex128, error) {
	f := newSurface(ka, u)
	v, err := c.withoutSlowPart(f, gamma)
	if err != nil {
		f.static = true
		v, err = c.withoutSlowPart(f, gamma)
	}
	return v, err
}

func (c Cap) withoutSlowPart(f surface, gamma float64) (complex128, error) {
	var (
		si, co = math.Sincos(f.kr)
		closed = c.capMean(gamma, f.kernel)
		slack  = rounding * math.Abs(closed)
		b      = capBound(c.HalfAngle)
		most   = math.Sqrt(2 / (math.Pi * math.Abs(math.Sin(gamma)))) // of |P_n| sqrt(n+1/2)
		q      = newCapWeights(c.HalfAngle)
		p      = newLegendre(gamma)
		g      = newRadial(f.ka, f.u)
		power  = 1.0 // u^n
		sr, sm float64
		rest   = math.Inf(1)
		total  complex128
	)
	for i := range maxTerms {
		n := float64(i)
		re, im := g.value()
		e := power * f.term(n)
		w := q.value() * p.value()
		sr += w * (re - co*e)
		sm += w * (im - si*e)
		if i%64 == 63 {
			total = complex(sr+co*closed, sm+si*closed)
			rest = power * f.rest(n, b, most)
			if rest <= max(goodNearby*cmplx.Abs(total), slack/4) {
				break
			}
		}
		q.next()
		p.next()
		g.next()
		power *= f.u
	}
	if rest+slack > tolerable*cmplx.Abs(total) {
		return 0, prose.Errorf("%w: rest %.1g and rounding %.1g in %.1g", ErrSlow, rest, slack, cmplx.Abs(total))
	}
	return total, nil
}
