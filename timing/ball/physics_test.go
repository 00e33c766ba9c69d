package ball

import (
	"math"
	"math/cmplx"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"
)

func decibels(x float64) float64 { return 20 * math.Log10(x) }

// A ball small against the wavelength is a point source at its centre. The
// first departure of the level is that of the dipole term 3/2 (a/r) cos gamma,
// so r is taken large.
func TestLowFrequency(t *testing.T) {
	c := Cap{Radius: 0.15, HalfAngle: 6 * degree}
	k := 0.01 / c.Radius
	r := 1e4 * c.Radius
	for gamma := 0.0; gamma <= 180; gamma += 15 {
		h, err := c.Pressure(k, r, gamma*degree)
		if err != nil {
			t.Fatal(err)
		}
		if e := decibels(cmplx.Abs(h) * r); math.Abs(e) > 0.01 {
			t.Errorf("gamma %g: %.4f dB from a point source", gamma, e)
		}
	}
	if p, _ := c.Power(k); math.Abs(p-1) > 1e-3 {
		t.Errorf("power %g of a point source", p)
	}
}

// The limit k = 0 is that of small k.
func TestStaticLimit(t *testing.T) {
	c := Cap{Radius: 0.15, HalfAngle: 6 * degree}
	for _, r := range []float64{0.15, 0.16, 0.5, 3} {
		zero, err := c.Pressure(0, r, 1)
		if err != nil {
			t.Fatal(err)
		}
		if imag(zero) != 0 {
			t.Errorf("r %g: static pressure %v is not real", r, zero)
		}
		small, err := c.Pressure(1e-9, r, 1)
		if err != nil {
			t.Fatal(err)
		}
		if cmplx.Abs(small-zero) > 1e-8*cmplx.Abs(zero) {
			t.Errorf("r %g: %v at k = 0, %v near it", r, zero, small)
		}
	}
}

// A whole sphere that moves is a point source with its delay: Morse and Ingard,
// chapter 7, the simple source: p over the point source is
// exp(ika)/(1+ika).
func TestPulsatingSphere(t *testing.T) {
	c := Cap{Radius: 0.2, HalfAngle: math.Pi}
	for _, k := range []float64{0, 1, 30, 300} {
		ka := k * c.Radius
		for _, r := range []float64{0.2, 0.3, 5} {
			h, err := c.Pressure(k, r, 2)
			if err != nil {
				t.Fatal(err)
			}
			want := cmplx.Rect(1/r, -k*(r-c.Radius)) / complex(1, ka)
			if e := cmplx.Abs(h-want) / cmplx.Abs(want); e > 1e-11 {
				t.Errorf("k %g, r %g: %v, want %v, relative error %.2g", k, r, h, want, e)
			}
		}
	}
}

// Energy: the mean square of the far field over all directions, by
// Gauss-Legendre quadrature, is the power from the coefficients.
func TestEnergy(t *testing.T) {
	for _, alpha := range []float64{1, 6, 45, 90} {
		c := Cap{Radius: 0.15, HalfAngle: alpha * degree}
		for _, ka := range []float64{0.05, 1, 8, 60, 200} {
			k := ka / c.Radius
			far, err := NewFarSeries(c, []float64{k})
			if err != nil {
				t.Fatal(err)
			}
			h := make([]complex128, 1)
			have := quad.Fixed(func(x float64) float64 {
				far.At(h, math.Acos(x))
				return (real(h[0])*real(h[0]) + imag(h[0])*imag(h[0])) / 2
			}, -1, 1, int(ka)+80, quad.Legendre{}, 0)
			want, err := c.Power(k)
			if err != nil {
				t.Fatal(err)
			}
			if e := math.Abs(have-want) / want; e > 1e-11 {
				t.Errorf("alpha %g, ka %g: quadrature %.15g, coefficients %.15g, relative error %.2g", alpha, ka, have, want, e)
			}
		}
	}
}

// The far field is the limit of r exp(ikr) H.
func TestFarLimit(t *testing.T) {
	c := Cap{Radius: 0.15, HalfAngle: 6 * degree}
	k := []float64{0, 0.01, 5, 100, 400}
	far, err := NewFarSeries(c, k)
	if err != nil {
		t.Fatal(err)
	}
	const r = 1e9
	near, err := NewSeries(c, k, r)
	if err != nil {
		t.Fatal(err)
	}
	want, have := make([]complex128, len(k)), make([]complex128, len(k))
	for _, gamma := range []float64{0, 1, 3} {
		far.At(want, gamma)
		near.At(have, gamma)
		for f := range k {
			h := have[f] / cmplx.Rect(1/r, -k[f]*r)
			if e := cmplx.Abs(h-want[f]) / cmplx.Abs(want[f]); e > 1e-6 {
				t.Errorf("k %g, gamma %g: %v at %g m, %v in the limit", k[f], gamma, h, r, want[f])
			}
		}
	}
}

// Reciprocity: the mean pressure over the still cap, from a point source
// outside at (r, gamma), is what the cap gives there for the same volume
// velocity. The scattered field of a point source outside a rigid sphere is
// Bowman, Senior and Uslenghi, Electromagnetic and Acoustic Scattering by
// Simple Shapes, section 10.3 (quoted from memory); on its surface the total pressure is, by the
// Wronskian DLMF 10.50.1, the sum of (2n+1) h_n(kr)/(ka^2 h_n'(ka)) P_n, here
// with the functions themselves, not by the ratios that the package uses. The
// mean over the cap is by quadrature in two dimensions.
func TestReciprocity(t *testing.T) {
	const a, alpha = 0.15, 8 * degree
	hankel := func(z float64, n int) []complex128 {
		h := make([]complex128, n+1)
		e := cmplx.Rect(1, -z)
		h[0] = 1i * e / complex(z, 0)
		h[1] = e * complex(-1/z, 1/(z*z))
		for i := 1; i < n; i++ {
			h[i+1] = complex(float64(2*i+1)/z, 0)*h[i] - h[i-1]
		}
		return h
	}
	for _, ka := range []float64{0.5, 4, 20} {
		for _, s := range []float64{1.5, 10} {
			k, r := ka/a, s*a
			n := int(ka) + 60
			far, near := hankel(k*r, n+1), hankel(ka, n+1)
			heard := func(cosine float64) complex128 {
				var sum complex128
				before, p := 0.0, 1.0
				for i := range n {
					slope := complex(float64(i)/ka, 0)*near[i] - near[i+1]
					sum += complex(float64(2*i+1)*p, 0) * far[i] / slope
					before, p = p, (float64(2*i+1)*cosine*p-float64(i)*before)/float64(i+1)
				}
				return -sum / complex(k*a*a, 0)
			}
			for _, gamma := range []float64{0, 1, 2.5} {
				mean := func(part func(complex128) float64) float64 {
					return quad.Fixed(func(x float64) float64 {
						return quad.Fixed(func(phi float64) float64 {
							cosine := x*math.Cos(gamma) + math.Sqrt(1-x*x)*math.Sin(gamma)*math.Cos(phi)
							return part(heard(cosine))
						}, 0, math.Pi, 24, quad.Legendre{}, 0) / math.Pi
					}, math.Cos(alpha), 1, 24, quad.Legendre{}, 0) / (1 - math.Cos(alpha))
				}
				want := complex(mean(func(v complex128) float64 { return real(v) }), mean(func(v complex128) float64 { return imag(v) }))
				have, err := Cap{Radius: a, HalfAngle: alpha}.Pressure(k, r, gamma)
				if err != nil {
					t.Fatal(err)
				}
				if e := cmplx.Abs(have-want) / cmplx.Abs(want); e > 1e-9 {
					t.Errorf("ka %g, r/a %g, gamma %g: sent %v, heard %v, relative difference %.2g", ka, s, gamma, have, want, e)
				}
			}
		}
	}
}

// At high frequencies the axis hears a piston in a plane baffle, which doubles a
// point source in free air (Kinsler et al., Fundamentals of Acoustics, chapter
// 7). The cap is small enough against the wavelength not to be a dome.
func TestBaffleLimit(t *testing.T) {
	c := Cap{Radius: 0.15, HalfAngle: 1 * degree}
	var before float64
	for _, ka := range []float64{1, 5, 20, 60, 400} {
		far, err := NewFarSeries(c, []float64{ka / c.Radius})
		if err != nil {
			t.Fatal(err)
		}
		h := make([]complex128, 1)
		far.At(h, 0)
		have := cmplx.Abs(h[0])
		if miss := math.Abs(have - 2); ka >= 20 && miss > 2/ka+0.1 {
			t.Errorf("ka %g: on the axis %g of a point source", ka, have)
		}
		if ka <= 20 && have < before {
			t.Errorf("ka %g: the axis fell from %g to %g", ka, before, have)
		}
		before = have
	}
}

// The shadow deepens with the frequency and with the angle, up to where the
// sound that comes round the other way is heard.
func TestShadow(t *testing.T) {
	c := Cap{Radius: 0.15, HalfAngle: 5 * degree}
	ka := []float64{5, 10, 20, 40}
	k := make([]float64, len(ka))
	for i := range k {
		k[i] = ka[i] / c.Radius
	}
	s, err := NewSeries(c, k, 2)
	if err != nil {
		t.Fatal(err)
	}
	h := make([]complex128, len(k))
	before := make([]float64, len(k))
	for f := range before {
		before[f] = math.Inf(1)
	}
	for gamma := 95.0; gamma <= 130; gamma += 5 {
		s.At(h, gamma*degree)
		for f := range h {
			level := cmplx.Abs(h[f])
			if level >= before[f] {
				t.Errorf("ka %g: louder at %g degrees than before", ka[f], gamma)
			}
			before[f] = level
			if f > 0 && level >= cmplx.Abs(h[f-1]) {
				t.Errorf("gamma %g: louder at ka %g than at %g", gamma, ka[f], ka[f-1])
			}
		}
	}
}
