package boundary

import (
	"math"
	"math/cmplx"

	"gonum.org/v1/gonum/spatial/r3"
)

// Piston is a round flat piston on the surface, or before it, that moves evenly.
type Piston struct {
	At     r3.Vec  // its middle, m
	Axis   r3.Vec  // of unit length, out of the body
	Radius float64 // m
}

// given returns the pressure that a piston gives at a place in free air, of volume velocity so
// that a point source in its place gives exp(-ikR)/R: the mean of that over the disc. In polar
// coordinates round the foot of the place on the disc's plane, R dR = rho d rho, and what is
// left is a sum round the rim, with z the height above the plane, P the rim seen from the foot:
//
//	i/(pi a^2 k) sum over the rim of (exp(-ikR) - exp(-ikz)) (P x dP)/P^2
//
// (the same step as for a field on the axis of a piston, Pierce, Acoustics, 1989, 5-7).
func (p Piston) given(k float64, at r3.Vec) complex128 {
	d := r3.Sub(at, p.At)
	z := r3.Dot(d, p.Axis)
	flat := r3.Sub(d, r3.Scale(z, p.Axis))
	s := r3.Norm(flat)
	z = math.Abs(z)
	far := math.Hypot(z, s)
	if far > 3*p.Radius {
		return p.ringed(k, s, z)
	}
	return p.rimmed(k, s, z)
}

// ringed is the mean over the disc by a product rule: rings at Gauss's radii, even steps.
func (p Piston) ringed(k, s, z float64) complex128 {
	g := rule(4)
	const steps = 16
	var sum complex128
	for i, x := range g.at {
		r := p.Radius * math.Sqrt(x)
		for j := range steps {
			_, cos := sincos[j][0], sincos[j][1]
			d := math.Sqrt(z*z + s*s + r*r - 2*s*r*cos)
			sin, c := math.Sincos(k * d)
			w := g.weight[i] / steps / d
			sum += complex(w*c, -w*sin)
		}
	}
	return sum
}

var sincos = func() (out [16][2]float64) {
	for i := range out {
		out[i][0], out[i][1] = math.Sincos(2 * math.Pi * (float64(i) + 0.5) / float64(len(out)))
	}
	return out
}()

// rimmed is the sum round the rim.
func (p Piston) rimmed(k, s, z float64) complex128 {
	gap := math.Hypot(z, s-p.Radius) / p.Radius
	steps := 48
	if gap < 0.5 {
		steps = int(min(4096, 48*math.Ceil(0.5/max(gap, 1e-6))))
	}
	e0 := cmplx.Rect(1, -k*z)
	var sum complex128
	for j := range steps {
		sin, cos := math.Sincos(2 * math.Pi * (float64(j) + 0.5) / float64(steps))
		x, y := p.Radius*cos-s, p.Radius*sin
		rho2 := x*x + y*y
		cross := (x*p.Radius*cos + y*p.Radius*sin) / max(rho2, 1e-30)
		r := math.Sqrt(rho2 + z*z)
		sum += (cmplx.Rect(1, -k*r) - e0) * complex(cross, 0)
	}
	// sum * (2 pi/steps) * 2 / (2 pi a^2) * i/k
	return sum * complex(0, 2/(float64(steps)*p.Radius*p.Radius*k))
}

// near tells whether the pressure of a piston is steeper on an element than its nodes show.
func (p Piston) near(e *element) bool {
	return r3.Norm(r3.Sub(e.middle, p.At)) < e.reach+4*p.Radius
}

// meaner takes the means over an element of what a piston gives, weighted by the polynomials of
// its nodes. On the piston's own face the pressure is twice what it gives and a smooth rest; the
// layer of what the nodes do not show of the former is that of its projection on the
// polynomials, and to have that in the solution is to have it in the right side.
type meaner struct {
	mesh    *Mesh
	k       float64
	piston  Piston
	element *element
	sum     []complex128
	lu, lv  []float64
}

func (m *meaner) piece(cut [4]float64, depth int) {
	p, e := &m.mesh.patch[m.element.patch], m.element
	u, v := (cut[0]+cut[1])/2, (cut[2]+cut[3])/2
	middle, du, dv := p.at(u, v)
	reach := math.Hypot(r3.Norm(du)*(cut[1]-cut[0]), r3.Norm(dv)*(cut[3]-cut[2])) / 2
	if depth < 7 && reach > m.piston.Radius/32 && reach > 0.7*m.piston.fromRim(middle) {
		m.piece([4]float64{cut[0], u, cut[2], v}, depth+1)
		m.piece([4]float64{u, cut[1], cut[2], v}, depth+1)
		m.piece([4]float64{cut[0], u, v, cut[3]}, depth+1)
		m.piece([4]float64{u, cut[1], v, cut[3]}, depth+1)
		return
	}
	g, gu, gv := rule(4), rule(e.nu), rule(e.nv)
	for i, x := range g.at {
		u := cut[0] + (cut[1]-cut[0])*x
		gu.lagrange(m.lu, (u-e.u0)/(e.u1-e.u0))
		for j, y := range g.at {
			v := cut[2] + (cut[3]-cut[2])*y
			at, du, dv := p.at(u, v)
			w := g.weight[i] * g.weight[j] * (cut[1] - cut[0]) * (cut[3] - cut[2]) * r3.Norm(r3.Cross(du, dv))
			value := m.piston.given(m.k, at) * complex(w, 0)
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
	d := r3.Sub(at, p.At)
	z := r3.Dot(d, p.Axis)
	return math.Hypot(z, r3.Norm(r3.Sub(d, r3.Scale(z, p.Axis)))-p.Radius)
}
