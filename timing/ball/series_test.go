package ball

import (
	"math"
	"math/cmplx"
	"testing"

	"pappus/testdata/reference"

	"gonum.org/v1/gonum/integrate/quad"
	"pgregory.net/rapid"
)

const degree = math.Pi / 180

// series returns a series that ends where only rounding is left.
func series(t testing.TB, c Cap, k []float64) *Series {
	t.Helper()
	s, err := NewSeries(c, k, 1e-17)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// relative returns the pressure over that of a point source at the centre.
func relative(t testing.TB, c Cap, k, r, gamma float64) complex128 {
	t.Helper()
	s, h := series(t, c, []float64{0, k}), make([]complex128, 2)
	s.Move(r)
	s.At(h, gamma)
	return h[1]
}

// TestTables holds the series to every row of the reference tables: to 1e-9, and to 5e-12
// up to ka = 60. Beyond that the shadow is so deep that rounding shows.
func TestTables(t *testing.T) {
	for _, name := range []string{"cap_on_rigid_sphere.csv", "cap_on_rigid_sphere_more.csv"} {
		rows, err := reference.Table(name)
		if err != nil || len(rows) < 100 {
			t.Fatalf("%s: %d rows, %v", name, len(rows), err)
		}
		for _, row := range rows {
			ka, want := row.Float("ka"), complex(row.Float("re"), row.Float("im"))
			c := Cap{Radius: 0.16, HalfAngle: row.Float("cap_half_angle_deg") * degree}
			got := relative(t, c, ka/c.Radius, row.Float("r_over_a")*c.Radius, row.Float("gamma_deg")*degree)
			tolerance := 5e-12
			if ka > 60 {
				tolerance = 1e-9
			}
			if e := cmplx.Abs(got-want) / cmplx.Abs(want); !(e <= tolerance) {
				t.Errorf("%s: %v: relative error %.2g", name, row, e)
			}
		}
	}
}

// The rest of the series is never above its bound: sum further and compare.
func TestRestBound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ka := math.Pow(10, rapid.Float64Range(-3, 2.3).Draw(t, "log ka"))
		alpha := rapid.Float64Range(0.5, 120).Draw(t, "alpha") * degree
		u := 1 - math.Pow(10, rapid.Float64Range(-2, 0).Draw(t, "log 1-u"))
		stop := rapid.Float64Range(1e-16, 0.5).Draw(t, "stop")
		w, b := newCapWeights(alpha), capBound(alpha)
		g := newRadial(ka, u)
		n := 0
		for g.rest(b) > stop {
			g.next()
			w.next()
			n++
		}
		bound := g.rest(b)
		var rest float64 // every |P_n| <= 1 is reached on the axis only if no signs cancel
		for last := 1.0; last > 1e-18*(1+rest); {
			g.next()
			n++
			w.next()
			re, im := g.value()
			rest += math.Abs(w.value()) * math.Hypot(re, im)
			last = g.rest(b)
		}
		if rest > bound*(1+1e-9) {
			t.Fatalf("ka %g, alpha %g, u %g: after term %d the rest is %g, the bound %g", ka, alpha, u, n, rest, bound)
		}
	})
}

// TestErrors: what is no cap and no wavenumber.
func TestErrors(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, test := range []struct {
		name string
		cap  Cap
		k    float64
		want string
	}{
		{"good", Cap{0.15, 0.1}, 1, ""},
		{"the greatest ka", Cap{0.15, 0.1}, 1e4 / 0.15, ""},
		{"no radius", Cap{0, 0.1}, 1, "ball: radius 0 m must be above 0 and finite"},
		{"NaN radius", Cap{nan, 0.1}, 1, "ball: radius nan m must be above 0 and finite"},
		{"infinite radius", Cap{inf, 0.1}, 1, "ball: radius inf m must be above 0 and finite"},
		{"no cap", Cap{0.15, 0}, 1, "ball: half angle 0 rad of a cap must be from 1e-6 to pi"},
		{"cap over the whole turn", Cap{0.15, 3.2}, 1, "ball: half angle 3.2 rad of a cap must be from 1e-6 to pi"},
		{"negative k", Cap{0.15, 0.1}, -1, "ball: wavenumber -1 rad/m must be from 0 to 66666.7"},
		{"NaN k", Cap{0.15, 0.1}, nan, "ball: wavenumber nan rad/m must be from 0 to 66666.7"},
		{"huge k", Cap{0.15, 0.1}, 1.2e4 / 0.15, "ball: wavenumber 80000 rad/m must be from 0 to 66666.7"},
	} {
		said := ""
		if _, err := NewSeries(test.cap, []float64{test.k}, 1e-9); err != nil {
			said = err.Error()
		}
		if said != test.want {
			t.Errorf("%s: %q, want %q", test.name, said, test.want)
		}
	}
}

// TestFinite: every value in the whole range is a finite number, and nothing is nearer than
// Nearest.
func TestFinite(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := Cap{Radius: 0.15, HalfAngle: rapid.Float64Range(1e-4, math.Pi).Draw(t, "half angle")}
		k := math.Pow(10, rapid.Float64Range(-12, 3.3).Draw(t, "log k"))
		s, err := NewSeries(c, []float64{k}, 1e-9)
		if err != nil {
			t.Fatal(err)
		}
		var h, nearest [1]complex128
		s.Move(c.Radius * math.Pow(10, rapid.Float64Range(-3, 9).Draw(t, "log r/a")))
		s.At(h[:], rapid.Float64Range(0, math.Pi).Draw(t, "gamma"))
		if cmplx.IsNaN(h[0]) || cmplx.IsInf(h[0]) {
			t.Fatal(h[0])
		}
		s.Move(Nearest * c.Radius)
		s.At(h[:], 1)
		s.Move(c.Radius / 2)
		if s.At(nearest[:], 1); h != nearest {
			t.Fatalf("%v in the ball, %v nearest", nearest, h)
		}
	})
}

// TestPulsatingSphere: a whole sphere that moves is a point source with its delay: Morse and
// Ingard, chapter 7, the simple source: p over the point source is exp(ika)/(1+ika). A ball
// small against the wavelength is one too, and at k = 0 the field is real.
func TestPulsatingSphere(t *testing.T) {
	c := Cap{Radius: 0.2, HalfAngle: math.Pi}
	for _, k := range []float64{0, 1, 30, 300} {
		for _, r := range []float64{0.21, 0.3, 5, math.Inf(1)} {
			want := cmplx.Rect(1, k*c.Radius) / complex(1, k*c.Radius)
			if e := cmplx.Abs(relative(t, c, k, r, 2)/want - 1); e > 1e-11 {
				t.Errorf("k %g, r %g: relative error %.2g", k, r, e)
			}
		}
	}
	small := Cap{Radius: 0.15, HalfAngle: 6 * degree}
	for gamma := 0.0; gamma <= 180; gamma += 15 {
		if e := 20 * math.Log10(cmplx.Abs(relative(t, small, 0.01/small.Radius, 1e4*small.Radius, gamma*degree))); math.Abs(e) > 0.01 {
			t.Errorf("gamma %g: %.4f dB from a point source", gamma, e)
		}
	}
	still, slow := relative(t, small, 0, 0.16, 1), relative(t, small, 1e-9, 0.16, 1)
	if imag(still) != 0 || cmplx.Abs(slow-still) > 1e-8*cmplx.Abs(still) {
		t.Errorf("%v at k = 0, %v near it", still, slow)
	}
}

// TestEnergy: the mean square of the far field over all directions, by Gauss-Legendre
// quadrature, is the power from the coefficients.
func TestEnergy(t *testing.T) {
	for _, alpha := range []float64{1, 6, 45, 90} {
		c := Cap{Radius: 0.15, HalfAngle: alpha * degree}
		for _, ka := range []float64{0.05, 1, 8, 60, 200} {
			far, h := series(t, c, []float64{ka / c.Radius}), make([]complex128, 1)
			far.Move(math.Inf(1))
			have := quad.Fixed(func(x float64) float64 {
				far.At(h, math.Acos(x))
				return (real(h[0])*real(h[0]) + imag(h[0])*imag(h[0])) / 2
			}, -1, 1, int(ka)+80, quad.Legendre{}, 0)
			want := 0.0
			re, im := far.Terms(0)
			for n := range re {
				want += (re[n]*re[n] + im[n]*im[n]) / float64(2*n+1)
			}
			if e := math.Abs(have-want) / want; e > 1e-11 {
				t.Errorf("alpha %g, ka %g: quadrature %.15g, coefficients %.15g, relative error %.2g", alpha, ka, have, want, e)
			}
		}
	}
}

// TestFarLimit: what is far away is the limit.
func TestFarLimit(t *testing.T) {
	c := Cap{Radius: 0.15, HalfAngle: 6 * degree}
	for _, k := range []float64{0, 0.01, 5, 100, 400} {
		for _, gamma := range []float64{0, 1, 3} {
			near, far := relative(t, c, k, 1e9, gamma), relative(t, c, k, math.Inf(1), gamma)
			if e := cmplx.Abs(near-far) / cmplx.Abs(far); e > 1e-6 {
				t.Errorf("k %g, gamma %g: %v far away, %v in the limit", k, gamma, near, far)
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
				have := relative(t, Cap{Radius: a, HalfAngle: alpha}, k, r, gamma) * cmplx.Rect(1/r, -k*r)
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
		have := cmplx.Abs(relative(t, c, ka/c.Radius, math.Inf(1), 0))
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
	s := series(t, c, k)
	s.Move(2)
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

// TestSeriesAllocatesNothing once it has been at its nearest distance.
func TestSeriesAllocatesNothing(t *testing.T) {
	s, h := series(t, Cap{Radius: 0.15, HalfAngle: 0.1}, []float64{1, 300}), make([]complex128, 2)
	s.Move(0.16)
	if n := testing.AllocsPerRun(20, func() { s.Move(2); s.At(h, 1) }); n > 0 {
		t.Errorf("%g allocations", n)
	}
}

// BenchmarkSeries is a spot 2 m away: 256 wavenumbers up to ka = 44, and 60 angles.
func BenchmarkSeries(b *testing.B) {
	c, k := Cap{Radius: 0.15, HalfAngle: 5.4 * degree}, make([]float64, 256)
	for i := range k {
		k[i] = 44 / c.Radius * float64(i+1) / 256
	}
	s, dst := series(b, c, k), make([]complex128, len(k))
	b.ReportAllocs()
	for b.Loop() {
		s.Move(2)
		for i := range 60 {
			s.At(dst, float64(i)*math.Pi/60)
		}
	}
}
