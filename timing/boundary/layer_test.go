package boundary

import (
	"math"
	"math/cmplx"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// box returns the faces of a box about the origin.
func box(x, y, z float64) [][]r3.Vec {
	at := func(a, b, c float64) r3.Vec { return r3.Vec{X: a * x, Y: b * y, Z: c * z} }
	return [][]r3.Vec{
		{at(1, -1, -1), at(1, 1, -1), at(1, 1, 1), at(1, -1, 1)}, {at(-1, -1, -1), at(-1, -1, 1), at(-1, 1, 1), at(-1, 1, -1)},
		{at(-1, 1, -1), at(-1, 1, 1), at(1, 1, 1), at(1, 1, -1)}, {at(-1, -1, -1), at(1, -1, -1), at(1, -1, 1), at(-1, -1, 1)},
		{at(-1, -1, 1), at(1, -1, 1), at(1, 1, 1), at(-1, 1, 1)}, {at(-1, -1, -1), at(-1, 1, -1), at(1, 1, -1), at(1, -1, -1)},
	}
}

// TestSolidAngle: the layer of a pressure of one everywhere, without waves, is minus the part of
// all directions in which the surface is seen: one inside, a half on it, nothing outside.
func TestSolidAngle(t *testing.T) {
	for _, c := range []struct {
		name    string
		patches []Patch
	}{
		{"box", Polyhedron(box(0.1, 0.07, 0.05))}, {"ball", CutBall(0.1, -1)}, {"cut ball", CutBall(0.1, -0.03)}, {"cap", CutBall(0.1, 0.07)},
	} {
		m := newMesh(c.patches, 50, 6, 0.02, chosen)
		l := newLayer(m, 0, chosen)
		sum := func(at r3.Vec, flat int) float64 {
			re, im := make([]float64, len(m.at)), make([]float64, len(m.at))
			l.add(re, im, at, 1, flat)
			all := 0.0
			for _, v := range re {
				all += v
			}
			return all
		}
		for _, f := range []float64{0.3, 0.9, 0.99, 1.01, 1.1, 3} {
			for i, at := range m.at {
				want := -1.0
				if f > 1 {
					want = 0
				}
				if i%37 == 0 {
					inside := r3.Vec{Z: 0.08}
					if c.name == "ball" || c.name == "box" {
						inside = r3.Vec{Z: 0.01}
					}
					if got := sum(r3.Add(inside, r3.Scale(f, r3.Sub(at, inside))), -1); math.Abs(got-want) > 3e-4 {
						t.Errorf("%s: %g of the way to %v: %.6f, want %g", c.name, f, at, got, want)
					}
				}
			}
		}
		for i, at := range m.at {
			if i%5 != 0 {
				continue
			}
			if got := sum(at, m.patch[m.element[m.home[i]].patch].flat); math.Abs(got+0.5) > 3e-4 {
				t.Errorf("%s: on the surface at %v: %.6f, want -0.5", c.name, at, got)
			}
		}
	}
}

// TestLayer holds a row to an integral over many places of each element, whose pressure is the
// polynomial of its nodes' values.
func TestLayer(t *testing.T) {
	for _, patches := range [][]Patch{Polyhedron(box(0.1, 0.07, 0.05)), CutBall(0.1, -0.03)} {
		const k = 60
		m := newMesh(patches, k, 5, 0.02, chosen)
		l := newLayer(m, k, chosen)
		value := func(i int) float64 { return 1 + 30*m.at[i].X - 200*m.at[i].Y*m.at[i].Z }
		for _, at := range []r3.Vec{{X: 0.02, Y: 0.01, Z: 0.03}, {X: 0.2, Y: -0.1, Z: 0.05}, {X: 0.04, Y: 0.02, Z: 0.12}, {X: 2, Y: 1}} {
			re, im := make([]float64, len(m.at)), make([]float64, len(m.at))
			l.add(re, im, at, 1, -1)
			var got, want complex128
			for i := range re {
				got += complex(re[i]*value(i), im[i]*value(i))
			}
			const n, each = 40, 10 // four times four pieces of ten times ten Gauss nodes
			g := rule(each)
			for e := range m.element {
				el := &m.element[e]
				lu, lv := make([]float64, el.nu), make([]float64, el.nv)
				for i := range n {
					for j := range n {
						x, y := (float64(i/each)+g.at[i%each])*each/n, (float64(j/each)+g.at[j%each])*each/n
						w := g.weight[i%each] * g.weight[j%each] * each * each / n / n
						to, du, dv := m.patch[el.patch].at(el.u0+(el.u1-el.u0)*x, el.v0+(el.v1-el.v0)*y)
						kr, ki := l.kernel(at, to, r3.Scale((el.u1-el.u0)*(el.v1-el.v0)*w, r3.Cross(du, dv)))
						rule(el.nu).lagrange(lu, x)
						rule(el.nv).lagrange(lv, y)
						p := 0.0
						for a, u := range lu {
							for b, v := range lv {
								p += u * v * value(el.first+a*el.nv+b)
							}
						}
						want += complex(kr*p, ki*p)
					}
				}
			}
			if cmplx.Abs(got-want) > 1e-3*cmplx.Abs(want) {
				t.Errorf("at %v: %v, want %v", at, got, want)
			}
		}
	}
}
