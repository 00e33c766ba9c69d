package boundary_test

import (
	"math"
	"math/cmplx"
	"testing"

	"pappus/timing/boundary"
	"pappus/timing/harmonic"

	"gonum.org/v1/gonum/spatial/r3"
)

// onDisc returns the mean of a piston's pressure over another's disc, just above it.
func onDisc(x *boundary.Pressure, from int, to boundary.Piston, total func(at r3.Vec) complex128) complex128 {
	f := harmonic.Round(to.Axis)
	const rings, round = 4, 8
	var sum complex128
	for i := range rings {
		r := to.Radius * math.Sqrt((float64(i)+0.5)/rings)
		for j := range round {
			sin, cos := math.Sincos(2 * math.Pi * (float64(j) + float64(i)/2) / round)
			at := r3.Add(to.At, r3.Add(r3.Scale(r*cos, f.X), r3.Scale(r*sin, f.Y)))
			sum += total(r3.Add(at, r3.Scale(1e-4, to.Axis))) / (rings * round)
		}
	}
	return sum
}

// TestEnergy: the power that leaves a piston, by its mean pressure, is that through a far sphere:
// with p over i w rho Q/4pi,
//
//	-Im (mean of p) = k/(4 pi) integral of |p|^2 r^2 over all directions
//
// and what its waves carry is, by the size of exp(-ikR)/R far away, the sum over n, m of
// e_m (|C|^2+|S|^2)/((2n+1) k^2 |h_n(k reach)|^2) times 4 pi (DLMF 14.30.8).
func TestEnergy(t *testing.T) {
	half := faces(cut(t, solid(t, "dodecahedron", 0.15), 0))
	odd := askew(faces(cut(t, geodesic(t, 1, 0.15), -0.03)))
	for _, c := range []struct {
		name   string
		faces  [][]r3.Vec
		inside r3.Vec
	}{{"half dodecahedron", half, r3.Vec{Z: 0.05}}, {"askew", odd, r3.Vec{Z: 0.03}}} {
		p := &boundary.Problem{Patches: boundary.Polyhedron(c.faces), Inside: c.inside}
		all := onFaces(c.faces, 0.015)[:3]
		for _, hz := range []float64{300, 1000, 2500} {
			k := number(hz)
			x := solved(t, ready(t, p, all), k, density)
			const degree = 24
			reach := p.Reach()
			w := x.Waves(degree, reach)
			radial := make([]complex128, degree+1)
			harmonic.Outgoing(radial, k*reach)
			for i, one := range all {
				near := -imag(onDisc(x, i, one, func(at r3.Vec) complex128 { return x.At(i, at) }))
				far := 0.0
				for m := range degree + 1 {
					for n := m; n <= degree; n++ {
						e := 2.0
						if m == 0 {
							e = 1
						}
						a := harmonic.Index(degree, n, m)
						size := square(cmplx.Abs(w[i][a])) + square(cmplx.Abs(w[i][a+harmonic.Count(degree)]))
						far += e * size / float64(2*n+1) / square(k*cmplx.Abs(radial[n])) * k
					}
				}
				if dB := 10 * math.Log10(near/far); !(math.Abs(dB) < 0.05) {
					t.Errorf("%s, %g Hz, piston %d: the power far away is %.4f dB off", c.name, hz, i, dB)
				}
			}
		}
	}
}

// TestReciprocity: the mean pressure of a piston on another's disc is that of the other on its.
func TestReciprocity(t *testing.T) {
	odd := askew(faces(cut(t, geodesic(t, 1, 0.15), -0.03)))
	p := &boundary.Problem{
		Patches: boundary.Polyhedron(odd), Inside: r3.Vec{Z: 0.03},
		Plane: boundary.Plane{Present: true, Normal: r3.Vec{Z: 1}, Height: -0.1},
	}
	all := onFaces(odd, 0.02)
	all = []boundary.Piston{all[0], all[len(all)/2], all[len(all)-1]}
	all[1].Radius = 0.01
	for _, hz := range []float64{300, 1000, 2500} {
		x := solved(t, ready(t, p, all), number(hz), density)
		for i := range all {
			for j := range i {
				a := onDisc(x, i, all[j], func(at r3.Vec) complex128 { return x.At(i, at) + x.At(i, mirrored(p.Plane, at)) })
				b := onDisc(x, j, all[i], func(at r3.Vec) complex128 { return x.At(j, at) + x.At(j, mirrored(p.Plane, at)) })
				if dB := level(a / b); math.Abs(dB) > 0.05 || math.Abs(cmplx.Phase(a/b)) > 0.5*radian {
					t.Errorf("%g Hz, pistons %d and %d: %.4f dB, %.3f degrees apart", hz, i, j, dB, cmplx.Phase(a/b)/radian)
				}
			}
		}
	}
}

func mirrored(p boundary.Plane, v r3.Vec) r3.Vec {
	return r3.Sub(v, r3.Scale(2*(r3.Dot(v, p.Normal)-p.Height), p.Normal))
}

// TestWaves: the waves about the centre are the pressure from the surface, near the body and far,
// from 1 Hz on; with the centre elsewhere too.
func TestWaves(t *testing.T) {
	f := faces(solid(t, "dodecahedron", 0.15))
	for _, centre := range []r3.Vec{{}, {X: 0.01, Y: -0.02, Z: 0.03}} {
		p := &boundary.Problem{Patches: boundary.Polyhedron(f), Centre: centre}
		s, reach := ready(t, p, onFaces(f, 0.025)[:1]), p.Reach()
		for _, hz := range []float64{1, 100, 1000, 3000} {
			k, degree := number(hz), 40
			x := solved(t, s, k, density)
			w := x.Waves(degree, reach)[0]
			for _, r := range []float64{1.3, 2, 12} {
				var got, want []complex128
				for _, angle := range []float64{5, 40, 90, 120, 180} {
					at := r3.Add(centre, towards(r*reach, angle))
					want = append(want, x.At(0, at))
					got = append(got, heard(w, degree, k, reach, r3.Sub(at, centre)))
				}
				if dB := off(got, want); dB > 0.003 {
					t.Errorf("%g Hz, %g times the reach, centre %v: %.4f dB off", hz, r, centre, dB)
				}
			}
		}
	}
}

// heard returns, of waves about the origin, the pressure at a place outside reach.
func heard(waves []complex128, degree int, k, reach float64, at r3.Vec) complex128 {
	far, near := make([]complex128, degree+1), make([]complex128, degree+1)
	harmonic.Outgoing(far, k*r3.Norm(at))
	harmonic.Outgoing(near, k*reach)
	for n := range far {
		far[n] /= near[n]
	}
	angle, wave := make([]float64, len(waves)), make([]complex128, len(waves))
	harmonic.Angles(angle, degree, at)
	harmonic.TimesRadial(wave, angle, far, degree)
	var sum complex128
	for i, v := range waves {
		sum += v * wave[i]
	}
	return sum
}

// TestRigid: on the surface of a raised body over a plane the sound moves nowhere but with a
// piston: on other faces the slope outward is nothing beside 4/a^2, which it is on a piston.
func TestRigid(t *testing.T) {
	f := faces(cut(t, solid(t, "dodecahedron", 0.15), -0.05))
	p := &boundary.Problem{
		Patches: boundary.Polyhedron(f), Inside: r3.Vec{Z: 0.03},
		Plane: boundary.Plane{Present: true, Normal: r3.Vec{Z: 1}, Height: -0.1},
	}
	all := onFaces(f, 0.025)
	for _, hz := range []float64{300, 1200, 2500} {
		x := solved(t, ready(t, p, all[:2]), number(hz), density)
		for i, other := range all[1:] {
			const h = 1e-3
			total := func(up float64) complex128 {
				at := r3.Add(other.At, r3.Scale(up, other.Axis))
				return x.At(0, at) + x.At(0, mirrored(p.Plane, at))
			}
			// One-sided, second order: half way on the slope is exact to h^2.
			slope := (-3*total(h) + 4*total(2*h) - total(3*h)) / (2 * h)
			slope = 2*slope - (-3*total(2*h)+4*total(3*h)-total(4*h))/(2*h) // at the surface
			if e := cmplx.Abs(slope) * square(all[0].Radius) / 4; e > 0.01 {
				t.Errorf("%g Hz, face %d: the slope is %.4f of a piston's", hz, i+1, e)
			}
		}
	}
}
