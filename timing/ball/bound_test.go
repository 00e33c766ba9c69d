package ball

import (
	"errors"
	"math"
	"math/cmplx"
	"testing"

	"pgregory.net/rapid"
)

// The rest of the series is never above its bound: sum further and compare.
func TestRestBound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ka := math.Pow(10, rapid.Float64Range(-3, 2.3).Draw(t, "log ka"))
		alpha := rapid.Float64Range(0.5, 120).Draw(t, "alpha") * degree
		u := 1 - math.Pow(10, rapid.Float64Range(-2, 0).Draw(t, "log 1-u"))
		stop := rapid.Float64Range(1e-16, 0.5).Draw(t, "stop")
		w := weights{cap: newCapWeights(alpha), bound: capBound(alpha)}
		g := newRadial(ka, u)
		n := 0
		for g.rest(w.bound) > stop {
			g.next()
			n++
		}
		bound := g.rest(w.bound)
		var rest float64 // every |P_n| <= 1 is reached on the axis only if no signs cancel
		for last := 1.0; last > 1e-18*(1+rest); {
			g.next()
			n++
			re, im := g.value()
			q := w.at(n)
			rest += math.Abs(q) * math.Hypot(re, im)
			last = g.rest(w.bound)
		}
		if rest > bound*(1+1e-9) {
			t.Fatalf("ka %g, alpha %g, u %g: after term %d the rest is %g, the bound %g", ka, alpha, u, n, rest, bound)
		}
	})
}

// The same for what is left near the surface when the slow part is out.
func TestSurfaceBound(t *testing.T) {
	for _, c := range []struct {
		ka, u, alpha float64
		static       bool
	}{
		{0.5, 1, 5, false}, {0.5, 1 / 1.002, 5, false}, {3, 1, 60, false}, {10, 1 / 1.0001, 5, false},
		{10, 1 / 1.001, 1, false}, {20, 1, 12, false}, {20, 1 / 1.0015, 30, false}, {60, 1, 5, false},
		{60, 1 / 1.00001, 5, false}, {60, 1 / 1.002, 5, false},
		{0.5, 1, 5, true}, {10, 1 / 1.0001, 5, true}, {60, 1, 20, true}, {60, 1 / 1.001, 20, true},
	} {
		alpha := c.alpha * degree
		f, b := newSurface(c.ka, c.u), capBound(alpha)
		f.static = c.static
		q, g := newCapWeights(alpha), newRadial(c.ka, c.u)
		s, co := math.Sincos(f.kr)
		type point struct{ n, bound, from float64 }
		var points []point
		var sum, power float64 = 0, 1
		for i := range 100_000 {
			n := float64(i)
			re, im := g.value()
			e := power * f.term(n)
			// rounding of re and im hides what is left of later terms
			if left := math.Hypot(re-co*e, im-s*e); left > 1e-13*math.Hypot(re, im) {
				sum += math.Abs(q.value()) * left
			}
			if i == 200 || i == 500 || i == 2000 || i == 5000 {
				points = append(points, point{n, power * f.rest(n, b, math.Inf(1)), sum})
			}
			q.next()
			g.next()
			power *= c.u
		}
		told := 0
		for _, at := range points {
			rest := sum - at.from
			if rest > at.bound {
				t.Errorf("%+v: after %g the rest is %g, the bound %g", c, at.n, rest, at.bound)
			}
			if at.bound < 200*rest {
				told++
			}
		}
		if told == 0 {
			t.Errorf("%+v: the bound says too little: %v", c, points)
		}
	}
}

// The slow part in closed form against its series, where that is quick.
func TestClosedForm(t *testing.T) {
	for _, alpha := range []float64{0.5, 5, 60, 90, 150, 180} {
		for _, gamma := range []float64{0, 0.4, 5, 5.0001, 30, 90, 149, 180} {
			for _, u := range []float64{0.9, 0.999, 0.9999} {
				for _, ka := range []float64{0, 3, 60} {
					c := Cap{Radius: 1, HalfAngle: alpha * degree}
					f := newSurface(ka, u)
					q, p := newCapWeights(c.HalfAngle), newLegendre(gamma*degree)
					var want float64
					power := 1.0
					for n := 0.0; power > 1e-18; n++ {
						want += q.value() * power * p.value() * f.term(n)
						q.next()
						p.next()
						power *= u
					}
					have := c.capMean(gamma*degree, f.kernel)
					if e := math.Abs(have-want) / max(1, math.Abs(want)); e > 1e-11*(1+f.e+f.t) {
						t.Errorf("alpha %g, gamma %g, u %g, ka %g: have %.16g, want %.16g, relative error %.2g", alpha, gamma, u, ka, have, want, e)
					}
				}
			}
		}
	}
}

// On the surface: the plain series, summed very far, against the quick way; the
// last terms' mean takes out their oscillation.
func TestPressureOnSurface(t *testing.T) {
	for _, c := range []struct{ ka, alpha, gamma float64 }{
		{0, 5, 40}, {0.5, 5, 90}, {3, 20, 10}, {12, 5, 120}, {60, 5, 30}, {60, 30, 120}, {60, 12, 80},
	} {
		v, err := Cap{Radius: 1, HalfAngle: c.alpha * degree}.Pressure(c.ka, 1, c.gamma*degree)
		if err != nil {
			t.Fatal(err)
		}
		v *= cmplx.Rect(1, c.ka)
		q, p, g := newCapWeights(c.alpha*degree), newLegendre(c.gamma*degree), newRadial(c.ka, 1)
		const terms = 3_000_000
		var sum, mean complex128
		for n := range terms {
			re, im := g.value()
			sum += complex(q.value()*p.value(), 0) * complex(re, im)
			if n >= terms/2 {
				mean += sum / (terms / 2)
			}
			q.next()
			p.next()
			g.next()
		}
		e := cmplx.Abs(v-mean) / cmplx.Abs(mean)
		t.Logf("%+v: relative difference %.2g", c, e)
		if e > 1e-9 {
			t.Errorf("%+v: have %v, summed far %v, relative difference %.2g", c, v, mean, e)
		}
	}
}

// Both ways of summing meet where one gives way to the other, and the field is
// continuous down to the surface.
func TestPressureContinuous(t *testing.T) {
	for _, ka := range []float64{0, 0.1, 5, 60} {
		for _, gamma := range []float64{0, 4, 5, 70, 180} {
			c := Cap{Radius: 1, HalfAngle: 5 * degree}
			near, err := c.nearSurface(ka, 1/1.003, gamma*degree)
			if err != nil {
				t.Fatal(err)
			}
			far, err := c.relative(ka, 1/1.003, gamma*degree)
			if err != nil {
				t.Fatal(err)
			}
			e := cmplx.Abs(near-far) / cmplx.Abs(far)
			if e > 1e-9 || ka <= 5 && e > 3e-12 {
				t.Errorf("ka %g, gamma %g: %v and %v differ by %.2g", ka, gamma, near, far, e)
			}
			on, err := c.relative(ka, 1, gamma*degree)
			if err != nil {
				t.Fatal(err)
			}
			above, err := c.relative(ka, 1/(1+1e-9), gamma*degree)
			if err != nil {
				t.Fatal(err)
			}
			if e := cmplx.Abs(on-above) / cmplx.Abs(on); e > 1e-6 {
				t.Errorf("ka %g, gamma %g: %v on the surface, %v just above", ka, gamma, on, above)
			}
		}
	}
}

func TestErrors(t *testing.T) {
	good := Cap{Radius: 0.15, HalfAngle: 0.1}
	nan, inf := math.NaN(), math.Inf(1)
	for _, c := range []struct {
		name        string
		cap         Cap
		k, r, gamma float64
		want        error
	}{
		{"no radius", Cap{0, 0.1}, 1, 1, 0, ErrCap},
		{"negative radius", Cap{-1, 0.1}, 1, 1, 0, ErrCap},
		{"NaN radius", Cap{nan, 0.1}, 1, 1, 0, ErrCap},
		{"infinite radius", Cap{inf, 0.1}, 1, inf, 0, ErrCap},
		{"no cap", Cap{0.15, 0}, 1, 1, 0, ErrCap},
		{"NaN cap", Cap{0.15, nan}, 1, 1, 0, ErrCap},
		{"cap over the whole turn", Cap{0.15, 3.2}, 1, 1, 0, ErrCap},
		{"negative k", good, -1, 1, 0, ErrWavenumber},
		{"NaN k", good, nan, 1, 0, ErrWavenumber},
		{"huge k", good, 1e9, 1, 0, ErrWavenumber},
		{"infinite k", good, inf, 1, 0, ErrWavenumber},
		{"inside", good, 1, 0.14, 0, ErrInside},
		{"negative r", good, 1, -1, 0, ErrInside},
		{"NaN r", good, 1, nan, 0, ErrDistance},
		{"infinite r", good, 1, inf, 0, ErrDistance},
		{"NaN gamma", good, 1, 1, nan, ErrAngle},
		{"infinite gamma", good, 1, 1, inf, ErrAngle},
	} {
		if _, err := c.cap.Pressure(c.k, c.r, c.gamma); !errors.Is(err, c.want) {
			t.Errorf("%s: pressure says %v, want %v", c.name, err, c.want)
		}
		if c.want == ErrAngle {
			continue
		}
		if _, err := NewSeries(c.cap, []float64{c.k}, c.r); !errors.Is(err, c.want) {
			t.Errorf("%s: series says %v, want %v", c.name, err, c.want)
		}
	}
	if _, err := NewSeries(good, []float64{1}, 0.15); !errors.Is(err, ErrTooNear) {
		t.Errorf("series on the surface says %v", err)
	}
}

// Every value in the whole range is a finite number.
func TestFinite(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := Cap{Radius: 0.15, HalfAngle: rapid.Float64Range(1e-4, math.Pi).Draw(t, "half angle")}
		k := math.Pow(10, rapid.Float64Range(-12, 3.3).Draw(t, "log k"))
		r := 0.15 * (1.002 + math.Pow(10, rapid.Float64Range(-3, 9).Draw(t, "log height")))
		gamma := rapid.Float64Range(0, math.Pi).Draw(t, "gamma")
		h, err := c.Pressure(k, r, gamma)
		if err != nil || cmplx.IsNaN(h) || cmplx.IsInf(h) {
			t.Fatalf("%v, %v", h, err)
		}
		p, err := c.Power(k)
		if err != nil || !(p > 0) || math.IsInf(p, 0) {
			t.Fatalf("power %v, %v", p, err)
		}
	})
}
