package boundary

import (
	"math"
	"math/cmplx"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// byHand is the mean over a disc of exp(-ikR)/R less what goes like 1/R near the foot, summed in
// polar coordinates round the foot of the place, where R dR = rho d rho leaves nothing steep: the
// rays from the foot, and Simpson's rule along each.
func byHand(p Piston, k, s, z float64) complex128 {
	var sum complex128
	const rays, along = 600, 240
	ray := func(angle, from, to float64) {
		for i := range along + 1 {
			w := 2.0 + 2*float64(i%2)
			if i == 0 || i == along {
				w = 1
			}
			rho := from + (to-from)*float64(i)/along
			r := math.Hypot(rho, z)
			f := complex(1, 0) // rho/R where both are 0
			if r > 0 {
				f = cmplx.Rect(rho/r, -k*r)
			}
			sum += f * complex(w*(to-from)/along/3*angle, 0)
		}
	}
	a := p.Radius
	for i := range rays {
		if s < a { // all round
			t := 2 * math.Pi * (float64(i) + 0.5) / rays
			sin, cos := math.Sincos(t)
			ray(2*math.Pi/rays, 0, math.Sqrt(a*a-s*s*sin*sin)-s*cos)
			continue
		}
		// Where the disc is seen from outside: asin of the angle over its widest as the variable,
		// so that the ends, where the ray's length goes like a root, are smooth.
		widest := math.Asin(a / s)
		x := math.Pi * ((float64(i)+0.5)/rays - 0.5)
		t := widest * math.Sin(x)
		root := math.Sqrt(max(0, a*a-s*s*math.Sin(t)*math.Sin(t)))
		ray(math.Pi/rays*widest*math.Cos(x), s*math.Cos(t)-root, s*math.Cos(t)+root)
	}
	return sum / complex(math.Pi*a*a, 0)
}

// TestGiven holds the pressure of a disc in free air to a sum over rays from the place's foot.
func TestGiven(t *testing.T) {
	p := Piston{At: r3.Vec{X: 0.1, Y: -0.2, Z: 0.3}, Axis: r3.Unit(r3.Vec{X: 1, Y: 2, Z: -2}), Radius: 0.025}
	side := r3.Unit(r3.Cross(p.Axis, r3.Vec{X: 1}))
	for _, k := range []float64{1e-3, 5, 40, 90, 250} {
		for _, s := range []float64{0, 0.3, 0.9, 0.99, 1.01, 1.1, 2, 2.9, 3.1, 8, 60} {
			for _, z := range []float64{0, 0.02, 0.3, -1, 2.9, 8} {
				at := r3.Add(p.At, r3.Add(r3.Scale(s*p.Radius, side), r3.Scale(z*p.Radius, p.Axis)))
				got, want := p.given(k, at), byHand(p, k, s*p.Radius, math.Abs(z)*p.Radius)
				// As a part of what it is at the piston's middle, and far away of itself.
				whole := 2 / p.Radius
				if s > 1 {
					whole = max(1/(s*p.Radius), cmplx.Abs(want))
				}
				if e := cmplx.Abs(got-want) / whole; e > 3e-5 {
					t.Errorf("k %g, %g radii aside, %g above: %v, want %v, off %.1e", k, s, z, got, want, e)
				}
			}
		}
	}
}

// TestGivenOnTheAxis: in front of the middle of a piston the sum has an end (Pierce, Acoustics,
// 1989, 5-7): 2i/(k a^2) (exp(-ik sqrt(z^2+a^2)) - exp(-ikz)).
func TestGivenOnTheAxis(t *testing.T) {
	p := Piston{Axis: r3.Vec{Z: 1}, Radius: 0.02}
	for _, k := range []float64{1, 30, 90, 200} {
		for _, z := range []float64{0, 0.001, 0.02, 0.059, 0.061, 0.5} {
			want := complex(0, 2/(k*p.Radius*p.Radius)) * (cmplx.Rect(1, -k*math.Hypot(z, p.Radius)) - cmplx.Rect(1, -k*z))
			for _, side := range []float64{1, -1} {
				if got := p.given(k, r3.Vec{Z: side * z}); cmplx.Abs(got-want) > 1e-6*cmplx.Abs(want) {
					t.Errorf("k %g, %g m: %v, want %v", k, side*z, got, want)
				}
			}
		}
	}
}

// TestGivenFarAway: 2 J1(ka sin)/(ka sin) of a point source (Beranek and Mellow, 13.9 b).
func TestGivenFarAway(t *testing.T) {
	p := Piston{Axis: r3.Vec{Z: 1}, Radius: 0.02}
	const r = 1e4
	for _, k := range []float64{1, 30, 90, 300} {
		for _, angle := range []float64{0.01, 0.4, 1, 1.5} {
			sin, cos := math.Sincos(angle)
			x := k * p.Radius * sin
			want := cmplx.Rect(1/r, -k*r) * complex(2*math.J1(x)/x, 0)
			if got := p.given(k, r3.Vec{X: r * sin, Z: r * cos}); cmplx.Abs(got-want) > 2e-5/r {
				t.Errorf("k %g, %g rad: %v, want %v", k, angle, got*r, want*r)
			}
		}
	}
}

// TestStill: the closed form on the plane and the sum round the rim just above it are one.
func TestStill(t *testing.T) {
	p := Piston{Axis: r3.Vec{Z: 1}, Radius: 0.02}
	for _, s := range []float64{0, 0.2, 0.7, 0.95, 0.999, 1.001, 1.05, 1.5, 3} {
		on, above := p.still(s*p.Radius, 0), p.rimmed(s*p.Radius, 1e-7*p.Radius)
		if math.Abs(on-above) > 1e-5*on {
			t.Errorf("%g radii aside: %g, by the rim %g", s, on, above)
		}
	}
	if got, want := p.still(p.Radius, 0), 4/(math.Pi*p.Radius); math.Abs(got-want) > 1e-9*want {
		t.Errorf("on the rim: %g, want %g", got, want)
	}
}

// TestMeans: the means over an element that a piston's rim crosses, by another rule of many
// places, add to within 1e-4 of the steepest.
func TestMeans(t *testing.T) {
	patch := Polyhedron([][]r3.Vec{{{X: -0.05, Y: -0.05}, {X: 0.05, Y: -0.05}, {X: 0.05, Y: 0.05}, {X: -0.05, Y: 0.05}}})[0]
	e := element{u0: 0.2, u1: 0.9, v0: 0.15, v1: 0.7, nu: 4, nv: 3}
	for _, p := range []Piston{
		{Axis: r3.Vec{Z: 1}, Radius: 0.025}, {At: r3.Vec{X: -0.02, Y: -0.03}, Axis: r3.Vec{Z: 1}, Radius: 0.01},
		{At: r3.Vec{X: -0.02, Y: -0.02, Z: 0.0035}, Axis: r3.Unit(r3.Vec{X: -1, Z: 3}), Radius: 0.01},
	} {
		m := meaner{patch: &patch, k: 60, piston: p, element: &e, rimward: chosen.Rimward, sum: make([]complex128, 12), lu: make([]float64, 4), lv: make([]float64, 3)}
		m.take()
		want, most := make([]complex128, 12), 0.0
		lu, lv := make([]float64, 4), make([]float64, 3)
		const n = 300
		for i := range n {
			for j := range n {
				x, y := (float64(i)+0.5)/n, (float64(j)+0.5)/n
				at, du, dv := patch.at(e.u0+(e.u1-e.u0)*x, e.v0+(e.v1-e.v0)*y)
				value := p.given(m.k, at) * complex(r3.Norm(r3.Cross(du, dv))*(e.u1-e.u0)*(e.v1-e.v0)/n/n, 0)
				rule(4).lagrange(lu, x)
				rule(3).lagrange(lv, y)
				for a, u := range lu {
					for b, v := range lv {
						want[a*3+b] += value * complex(u*v, 0)
						most = max(most, cmplx.Abs(want[a*3+b]))
					}
				}
			}
		}
		for i, w := range want {
			if cmplx.Abs(m.sum[i]-w) > 1e-4*most {
				t.Errorf("%v: node %d: %v, want %v", p, i, m.sum[i], w)
			}
		}
	}
}
