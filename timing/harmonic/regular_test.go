package harmonic

import (
	"math"
	"math/cmplx"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// TestSphericalBessel holds j_n to its power series (DLMF 10.53.1) where that is sure, to closed
// forms of the first three, and to the sum over n of (2n+1) j_n^2 = 1 (DLMF 10.60.12).
func TestSphericalBessel(t *testing.T) {
	for _, z := range []float64{0, 1e-200, 1e-8, 0.01, 0.5, 1, 3, math.Pi, 4.493409457909064, 10, 30, 80} {
		j := make([]float64, 160)
		sphericalBessel(j, z)
		if z >= 0.5 {
			sin, cos := math.Sincos(z)
			for n, want := range []float64{sin / z, sin/z/z - cos/z, (3/z/z-1)*sin/z - 3*cos/z/z} {
				if math.Abs(j[n]-want) > 1e-14*(1+1/z/z/z) {
					t.Errorf("j_%d(%g): %g, want %g", n, z, j[n], want)
				}
			}
		}
		sum := 0.0
		for n, v := range j {
			sum += float64(2*n+1) * v * v
		}
		if math.Abs(sum-1) > 1e-12 {
			t.Errorf("%g: the squares add to %.15g", z, sum)
		}
		if z > 6 {
			continue
		}
		for _, n := range []int{0, 1, 2, 5, 12, 25} {
			term := 1.0 // z^n/(2n+1)!!
			for i := 1; i <= n; i++ {
				term *= z / float64(2*i+1)
			}
			want := 0.0
			for i := range 40 {
				want += term
				term *= -z * z / 2 / float64(i+1) / float64(2*n+2*i+3)
			}
			if math.Abs(j[n]-want) > 1e-13*math.Abs(want)+1e-15 {
				t.Errorf("j_%d(%g): %g, want %g", n, z, j[n], want)
			}
		}
	}
}

// TestOutgoing: h_0 is i exp(-iz)/z, and with j_n the Wronskian j_n-1 h_n - j_n h_n-1 is i/z^2
// (DLMF 10.50.1 for the second kind).
func TestOutgoing(t *testing.T) {
	for _, z := range []float64{0.3, 1, 5, 20, 60} {
		h, j := make([]complex128, 30), make([]float64, 30)
		Outgoing(h, z)
		sphericalBessel(j, z)
		if want := cmplx.Rect(1/z, -z) * 1i; cmplx.Abs(h[0]-want) > 1e-14/z {
			t.Errorf("h_0(%g): %v, want %v", z, h[0], want)
		}
		for n := 1; n < len(h); n++ {
			got := complex(j[n-1], 0)*h[n] - complex(j[n], 0)*h[n-1]
			if want := complex(0, 1/z/z); cmplx.Abs(got-want) > 1e-10*cmplx.Abs(want) {
				t.Errorf("degree %d, %g: %v, want %v", n, z, got, want)
			}
		}
	}
}

// TestSlope holds the waves' slope to differences, on the axis and at the origin too.
func TestSlope(t *testing.T) {
	const degree, k, step = 9, 20, 1e-4
	value := func(v r3.Vec) []float64 {
		w := NewRegular(degree, k)
		w.At(v)
		out := make([]float64, 2*Count(degree))
		w.Value(out, 1)
		return out
	}
	for _, at := range []r3.Vec{{X: 0.1, Y: -0.2, Z: 0.3}, {Z: 0.2}, {Z: -0.4}, {X: 0.3}, {}, {X: 1e-9, Z: 1}, {X: -0.02, Y: 0.01}} {
		for _, along := range []r3.Vec{{X: 1}, {Y: 1}, {Z: 1}, {X: 0.3, Y: -2, Z: 0.7}} {
			w := NewRegular(degree, k)
			w.At(at)
			got := make([]float64, 2*Count(degree))
			w.Slope(got, along)
			p, m := value(r3.Add(at, r3.Scale(step, along))), value(r3.Sub(at, r3.Scale(step, along)))
			pp, mm := value(r3.Add(at, r3.Scale(2*step, along))), value(r3.Sub(at, r3.Scale(2*step, along)))
			for i, v := range got {
				want := (8*(p[i]-m[i]) - (pp[i] - mm[i])) / (12 * step)
				if math.Abs(v-want) > 1e-8*k {
					t.Errorf("at %v along %v, coefficient %d: %g, want %g", at, along, i, v, want)
				}
			}
		}
	}
}

// TestPlaneWave: the waves add to a point source far away: exp(-ikR)/R is the sum over n, m of
// -ik (2n+1) h_n(kd) e_m times the waves at one place and the angles of the other (DLMF 10.60.3).
func TestPlaneWave(t *testing.T) {
	const degree, k = 25, 15
	source, at := r3.Vec{X: 0.9, Y: -0.7, Z: 0.5}, r3.Vec{X: 0.2, Y: 0.1, Z: -0.3}
	w := NewRegular(degree, k)
	w.At(at)
	wave := make([]float64, 2*Count(degree))
	w.Value(wave, 1)
	h := make([]complex128, degree+1)
	Outgoing(h, k*r3.Norm(source))
	var sum complex128
	for m := range degree + 1 {
		sin, cos := math.Sincos(float64(m) * math.Atan2(source.Y, source.X))
		for i, p := range legendreOf(degree, m, source) {
			n, e := m+i, 2.0
			if m == 0 {
				e = 1
			}
			a := Index(degree, n, m)
			sum += complex(0, -k*float64(2*n+1)*e*p) * h[n] * complex(wave[a]*cos+wave[a+Count(degree)]*sin, 0)
		}
	}
	r := r3.Norm(r3.Sub(source, at))
	if want := cmplx.Rect(1/r, -k*r); cmplx.Abs(sum-want) > 1e-9 {
		t.Errorf("%v, want %v", sum, want)
	}
}

// legendreOf returns N_nm of a direction for n from m to a degree.
func legendreOf(degree, m int, at r3.Vec) []float64 {
	r, flat := r3.Norm(at), math.Hypot(at.X, at.Y)
	out := make([]float64, degree+1-m)
	newRoots(degree+1).legendre(out, m, at.Z/r, sectoral(m)*math.Pow(flat/r, float64(m)))
	return out
}
