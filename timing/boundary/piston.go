package boundary

import (
	"math"

	"gonum.org/v1/gonum/mathext"
	"gonum.org/v1/gonum/spatial/r3"
)

// Piston is a round flat piston on the surface, or before it, that moves evenly.
type Piston struct {
	At     r3.Vec  // its middle, m
	Axis   r3.Vec  // of unit length, out of the body
	Radius float64 // m
}

// given returns the pressure that a piston gives at a place in free air, of volume velocity so
// that a point source in its place gives exp(-ikR)/R: the mean of that over the disc.
func (p Piston) given(k float64, at r3.Vec) complex128 {
	s, z := p.foot(at)
	if math.Hypot(s, z) > 3*p.Radius {
		return p.ringed(k, s, z)
	}
	return complex(p.still(s, z), 0) + p.rest(k, s, z)
}

// foot returns how far a place is from the disc's axis and from its plane, in m.
func (p Piston) foot(at r3.Vec) (s, z float64) {
	d := r3.Sub(at, p.At)
	z = r3.Dot(d, p.Axis)
	return r3.Norm(r3.Sub(d, r3.Scale(z, p.Axis))), math.Abs(z)
}

// ringed is the mean over the disc by a product rule, for places beyond three radii: n rings at
// Gauss's radii, 4n even steps. What it leaves goes with ((ka/2)^2n/(2n)!)^2 and (a/R)^4n.
func (p Piston) ringed(k, s, z float64) complex128 {
	n := min(3+int(k*p.Radius/2), len(rules)-1)
	g, around := rule(n), circle(4*n)
	var sum complex128
	for i, x := range g.at {
		r := p.Radius * math.Sqrt(x)
		for _, t := range around {
			d := math.Sqrt(z*z + s*s + r*r - 2*s*r*t[1])
			sin, c := math.Sincos(k * d)
			w := g.weight[i] / float64(4*n) / d
			sum += complex(w*c, -w*sin)
		}
	}
	return sum
}

// circle returns sine and cosine at so many even steps, of those that are kept ready.
func circle(steps int) [][2]float64 { return circles[steps/4] }

var circles = func() (out [64][][2]float64) {
	for i := range out {
		out[i] = make([][2]float64, 4*i)
		for j := range out[i] {
			out[i][j][0], out[i][j][1] = math.Sincos(2 * math.Pi * (float64(j) + 0.5) / float64(4*i))
		}
	}
	return out
}()

// still is the mean over the disc of 1/R, for a place at s from its axis and z above its plane.
// In polar coordinates round the foot of the place, R dR = rho d rho, and what is left is a sum
// round the rim, with P the rim seen from the foot,
//
//	1/(pi a^2) sum of (R - z) (P x dP)/P^2
//
// On the plane it is, with Legendre's complete integrals of parameter m (Durand, Électrostatique, 1964,
// from memory; held to the sum in a test), 4/(pi a) E(s^2/a^2) inside and
// 4s/(pi a^2) (E(m) - (1-m) K(m)), m = a^2/s^2, outside.
func (p Piston) still(s, z float64) float64 {
	a := p.Radius
	if z > 1e-9*a {
		return p.rimmed(s, z)
	}
	if s < a {
		return 4 / (math.Pi * a) * mathext.CompleteE(s*s/(a*a))
	}
	m := min(a*a/(s*s), 1-1e-15)
	return 4 * s / (math.Pi * a * a) * (mathext.CompleteE(m) - (1-m)*mathext.CompleteK(m))
}

// rimmed is the sum of still: steps are as fine as the rim is near.
func (p Piston) rimmed(s, z float64) float64 {
	gap := math.Hypot(z, s-p.Radius) / p.Radius
	steps := 48
	if gap < 0.5 {
		steps = int(min(4096, 48*math.Ceil(0.5/max(gap, 1e-6))))
	}
	sum := 0.0
	sin, cos := math.Sincos(math.Pi / float64(steps))
	turnS, turnC := math.Sincos(2 * math.Pi / float64(steps))
	for range steps {
		cross, r := p.rim(s, z, sin, cos)
		sum += (r - z) * cross
		sin, cos = sin*turnC+cos*turnS, cos*turnC-sin*turnS
	}
	return sum * 2 / (float64(steps) * p.Radius * p.Radius)
}

// rim returns (P x dP)/P^2 for a step of one radian, and R, at a place of the rim.
func (p Piston) rim(s, z, sin, cos float64) (cross, r float64) {
	x, y := p.Radius*cos-s, p.Radius*sin
	rho2 := max(x*x+y*y, 1e-30)
	return p.Radius * (p.Radius - s*cos) / rho2, math.Sqrt(rho2 + z*z)
}

// rest is the mean over the disc of (exp(-ikR)-1)/R, by the same step as still
//
//	i/(pi a^2 k) sum of (exp(-ikR) - exp(-ikz) + ik(R-z)) (P x dP)/P^2
//
// (as for a field on the axis of a piston, Pierce, Acoustics, 1989, 5-7). Near the rim, where P
// comes near nothing, what is summed stays bounded, so that few steps are enough everywhere.
func (p Piston) rest(k, s, z float64) complex128 {
	around := circle(min(32+4*int(k*p.Radius), 4*len(circles)-4))
	sin0, cos0 := math.Sincos(k * z)
	var re, im float64
	for _, t := range around {
		cross, r := p.rim(s, z, t[0], t[1])
		sin, cos := math.Sincos(k * r)
		re += (cos - cos0) * cross
		im += (sin0 - sin + k*(r-z)) * cross
	}
	scale := 2 / (float64(len(around)) * p.Radius * p.Radius * k)
	return complex(-im*scale, re*scale)
}

// near tells whether the pressure of a piston is steeper on an element than its nodes show.
func (p Piston) near(e *element, beside float64) bool {
	return r3.Norm(r3.Sub(e.middle, p.At)) < e.reach+beside*p.Radius
}

// meaner takes the means over an element of what a piston gives, weighted by the polynomials of
// its nodes. On the piston's own face the pressure is twice what it gives and a smooth rest; the
// layer of what the nodes do not show of the former is that of its projection on the
// polynomials, and to have that in the solution is to have it in the right side.
type meaner struct {
	patch   *Patch
	k       float64
	piston  Piston
	element *element
	sum     []complex128
	rimward float64
	lu, lv  []float64
}

// smooth is how many nodes along each side take the mean of what is not steep.
const smooth = 8

// take takes the means: of exp(-ikR)/R less 1/R, which is not steep, over the element as it is,
// and of 1/R over pieces of it.
func (m *meaner) take() {
	e := m.element
	whole := [4]float64{e.u0, e.u1, e.v0, e.v1}
	m.over(whole, smooth, func(s, z float64) complex128 { return m.piston.rest(m.k, s, z) })
	m.piece(whole, 0)
}

// piece adds the means of 1/R over a piece, cut in four until it is small beside its way to the rim.
func (m *meaner) piece(cut [4]float64, depth int) {
	u, v := (cut[0]+cut[1])/2, (cut[2]+cut[3])/2
	middle, du, dv := m.patch.at(u, v)
	reach := reach(r3.Scale(cut[1]-cut[0], du), r3.Scale(cut[3]-cut[2], dv))
	if depth < 7 && reach > m.piston.Radius/32 && reach > m.rimward*m.piston.fromRim(middle) {
		m.piece([4]float64{cut[0], u, cut[2], v}, depth+1)
		m.piece([4]float64{u, cut[1], cut[2], v}, depth+1)
		m.piece([4]float64{cut[0], u, v, cut[3]}, depth+1)
		m.piece([4]float64{u, cut[1], v, cut[3]}, depth+1)
		return
	}
	m.over(cut, 4, func(s, z float64) complex128 { return complex(m.piston.still(s, z), 0) })
}

// over adds the means of a function of the place over a piece.
func (m *meaner) over(cut [4]float64, nodes int, value func(s, z float64) complex128) {
	e := m.element
	g, gu, gv := rule(nodes), rule(e.nu), rule(e.nv)
	for i, x := range g.at {
		u := cut[0] + (cut[1]-cut[0])*x
		gu.lagrange(m.lu, (u-e.u0)/(e.u1-e.u0))
		for j, y := range g.at {
			v := cut[2] + (cut[3]-cut[2])*y
			at, du, dv := m.patch.at(u, v)
			w := g.weight[i] * g.weight[j] * (cut[1] - cut[0]) * (cut[3] - cut[2]) * r3.Norm(r3.Cross(du, dv))
			value := value(m.piston.foot(at)) * complex(w, 0)
			gv.lagrange(m.lv, (v-e.v0)/(e.v1-e.v0))
			n := 0
			for _, a := range m.lu {
				for _, b := range m.lv {
					m.sum[n] += value * complex(a*b, 0)
					n++
				}
			}
		}
	}
}

// fromRim returns how far a place is from a piston's rim, in m.
func (p Piston) fromRim(at r3.Vec) float64 {
	s, z := p.foot(at)
	return math.Hypot(z, s-p.Radius)
}
