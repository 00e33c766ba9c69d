package ball

import "math"

// static is the field of the cap for k -> 0, over that of the point source: the
// sum of q_n u^n P_n/(n+1), as the mean over the cap of Neumann's function of
// the sphere,
//
//	N(R) = sum of (2n+1)/(n+1) u^n P_n(cos psi) = 2/R - (1/u) ln((1+u+R)/(1-u+R))
//
// with R^2 = 1 - 2u cos psi + u^2: the generating function of the Legendre
// polynomials (DLMF 18.12.11) and its integral by u. The mean is taken in rings
// of angle psi about the direction of the point; the part of a ring that lies
// within the cap is an angle of the spherical triangle with sides psi, gamma
// and alpha. gamma is in 0..pi.
func (c Cap) static(u, gamma float64) float64 {
	alpha := c.HalfAngle
	kernel := func(psi float64) float64 {
		h := math.Sin(psi / 2)
		r := math.Sqrt((1-u)*(1-u) + 4*u*h*h)
		if r == 0 {
			return 2 // of sin psi / R, on the surface
		}
		return math.Sin(psi) * (2/r - math.Log1p(2*u/(1-u+r))/u)
	}
	part := func(psi float64) float64 {
		over := math.Sin((alpha+psi-gamma)/2) * math.Sin((alpha+gamma-psi)/2)
		under := math.Sin((alpha+gamma+psi)/2) * math.Sin((gamma+psi-alpha)/2)
		return math.Atan2(math.Sqrt(max(over, 0)), math.Sqrt(max(under, 0))) * 2 / math.Pi
	}
	inner := math.Abs(alpha - gamma)
	outer := math.Pi - math.Abs(math.Pi-alpha-gamma)
	sum := integral(inner, outer, func(psi float64) float64 { return part(psi) * kernel(psi) })
	if gamma < alpha {
		sum += integral(0, inner, kernel)
	}
	if alpha+gamma > math.Pi {
		sum += integral(outer, math.Pi, kernel)
	}
	return sum / versine(alpha)
}

// integral of f from lo to hi by the double exponential rule (Takahasi and Mori,
// Publ. RIMS 9 (1974) 721), which bears singular ends; steps are halved until
// the sum stands still.
func integral(lo, hi float64, f func(float64) float64) float64 {
	if !(hi > lo) {
		return 0
	}
	at := func(t float64) float64 {
		e := math.Exp(-math.Pi * math.Sinh(math.Abs(t)))
		d := e / (1 + e) // of the range, from the nearer end
		x := lo + (hi-lo)*d
		if t > 0 {
			x = hi - (hi-lo)*d
		}
		return f(x) * math.Pi * math.Cosh(t) * d / (1 + e)
	}
	const reach = 3.4 // the weight is below 1e-40 beyond
	step := 0.5
	sum := at(0)
	for t := step; t < reach; t += step {
		sum += at(t) + at(-t)
	}
	for range 7 {
		before := sum * step
		step /= 2
		for t := step; t < reach; t += 2 * step {
			sum += at(t) + at(-t)
		}
		if math.Abs(sum*step-before) <= 1e-15*math.Abs(before) {
			break
		}
	}
	return sum * step * (hi - lo)
}
