package ball

import "math"

// surface is the slow part of the series near the surface, and a bound on what
// is left when it is taken out.
//
// With t_n and T_n of the package comment, d ln(z^{n+1} h_n)/dz = t_n/z, so that
//
//	c_n = exp(ikr) u^n F G,  F = exp(integral of t_n/z from ka to kr),  G = 1/(n+1 - t_n(ka))
//
// and t_n = z^2/(2n-1) to within
//
//	d_n(z) = z^2 T_{n-1} / ((2n-1)(2n-1-T_{n-1})).
//
// Large n leaves 1/(n+1) of F G, the static field, then e/((n+1)(n+2)) with
// e = (kr^2-ka^2)/4 from F, and t/((n+1)(n+2)(n+3)) with t = ka^2/2 from G. They
// are chosen for their closed sums. What is left of F G is at most, with
// eta = (kr^2-ka^2)/(2(2n-1-kr)) and T, d at kr where not said otherwise,
//
//	(eta^2 exp(eta)/2 + d ln(r/a) + 5e/(2n^2))/n + e T(ka)/n^3    from F
//	+ t (4.5+6.5/n)/n^4 + d(ka)/n^2 + T(ka)^2/n^3                 from G
//
// as soon as T < 1, where 1/(n+1-T) < 1/n.
//
// In a deep shadow at high ka the closed sums of the second and third term are
// so much larger than the field that rounding shows. Then the static field
// alone is taken out, which leaves at most eta exp(eta)/n + T(ka)/n^2.
type surface struct {
	ka, kr, u float64
	e, t      float64
	static    bool // the static field alone is taken out
}

func newSurface(ka, u float64) surface {
	kr := ka / u
	return surface{ka: ka, kr: kr, u: u, e: (kr - ka) * (kr + ka) / 4, t: ka * ka / 2}
}

// term is what is taken out of c_n, without exp(ikr) u^n.
func (s *surface) term(n float64) float64 {
	if s.static {
		return 1 / (n + 1)
	}
	return (1 + (s.e+s.t/(n+3))/(n+2)) / (n + 1)
}

// rest bounds the sum over m > n of what is left, without the common u^n, where
// |q_m| <= b/sqrt(m-1/2) and |P_m| <= min(1, p/sqrt(m+1/2)). It is +Inf as long
// as it says nothing. Each power of m is summed by its integral, or by the
// geometric series in u.
func (s *surface) rest(n, b, p float64) float64 {
	bigT := func(n, z float64) float64 { return z * z / (2*n - 1 - z) }
	if 2*n-3 <= 2*s.kr || bigT(n-1, s.kr) >= 1 {
		return math.Inf(1)
	}
	d := func(z float64) float64 {
		t := bigT(n-1, z)
		return z * z * t / ((2*n - 1) * (2*n - 1 - t))
	}
	tail := func(x float64) float64 { // the sum of u^(m-n) m^-x
		return min(math.Pow(n, 1-x)/(x-1), math.Pow(n, -x)*s.u/(1-s.u))
	}
	eta := 2 * s.e / (2*n - 1 - s.kr)
	t := bigT(n, s.ka)
	fromF, fromG, power := eta*math.Exp(eta)*n, t*n, 2.5
	if !s.static {
		fromF = (eta*eta*math.Exp(eta)/2-d(s.kr)*math.Log(s.u))*n*n + 2.5*s.e + s.e*t
		fromG = s.t*(4.5+6.5/n) + d(s.ka)*n*n + t*t*n
		power = 3.5
	}
	plain := fromF*tail(power) + fromG*tail(power+1)
	if p < math.Sqrt(n) {
		plain = min(plain, p*(fromF*tail(power+0.5)+fromG*tail(power+1.5)))
	}
	return b * plain * math.Sqrt(n/(n-0.5))
}

// kernel is the sum of (2n+1) u^n term(n) P_n(cos psi), times sin psi: by
// partial fractions from the generating function of the Legendre polynomials
// (DLMF 18.12.11), 1/R with R^2 = 1 - 2u cos psi + u^2, and
//
//	sum of u^(n+m) P_n/(n+m) = J_{m-1} = integral of v^(m-1)/R(v) from 0 to u
//
// with J_0 = ln((1+u+R)/(1-u+R)). The first part, 2/R - J_0/u, is Neumann's
// function of the sphere.
func (s *surface) kernel(psi float64) float64 {
	u, h := s.u, math.Sin(psi/2)
	r := math.Sqrt((1-u)*(1-u) + 4*u*h*h)
	if r == 0 {
		return 2 // of 2 sin psi/R, on the surface
	}
	c := 1 - 2*h*h
	j0 := math.Log1p(2 * u / (1 - u + r))
	j1 := r - 1 + c*j0
	j2 := (u*r + 3*c*j1 - j0) / 2
	i1, i2, i3 := j0/u, j1/(u*u), j2/(u*u*u)
	if s.static {
		return math.Sin(psi) * (2/r - i1)
	}
	return math.Sin(psi) * (2/r - i1 + s.e*(3*i2-i1) + s.t*(3*i2-(i1+5*i3)/2))
}

// capMean is the sum of q_n f_n P_n(cos gamma) for gamma in 0..pi, where kernel
// is that of (2n+1) f_n P_n(cos psi), times sin psi: its mean over the cap, in
// rings of angle psi about the direction of the point. The part of a ring that
// lies within the cap is an angle of the spherical triangle with the sides
// psi, gamma and alpha: with half its circumference h, the squared tangent of
// half that angle is sin(h-gamma) sin(h-psi) / (sin h sin(h-alpha)).
func (c Cap) capMean(gamma float64, kernel func(psi float64) float64) float64 {
	alpha := c.HalfAngle
	lo := math.Abs(alpha - gamma)
	width := 2 * min(alpha, gamma, math.Pi-alpha, math.Pi-gamma)
	sum := integral(lo, width, func(psi, below, above float64) float64 {
		// Distances from the ends of the ring are exact; the others are not near zero.
		first, second := below, 2*lo+below // 2(h-gamma), 2(h-alpha)
		if gamma < alpha {
			first, second = second, first
		}
		third, fourth := above, alpha+gamma+psi // 2(h-psi), 2h
		if alpha+gamma > math.Pi {
			third, fourth = alpha+gamma-psi, above
		}
		over := math.Sin(first/2) * math.Sin(third/2)
		under := math.Sin(second/2) * math.Sin(fourth/2)
		return math.Atan2(math.Sqrt(max(over, 0)), math.Sqrt(max(under, 0))) * 2 / math.Pi * kernel(psi)
	})
	whole := func(psi, _, _ float64) float64 { return kernel(psi) }
	if gamma < alpha {
		sum += integral(0, lo, whole)
	}
	if alpha+gamma > math.Pi {
		sum += integral(lo+width, alpha+gamma-math.Pi, whole)
	}
	return sum / versine(alpha)
}
