package impedancefit

import (
	"fmt"
	"math"
	"math/cmplx"
	"testing"

	"pappus/layout/box"
	"pappus/layout/impedance"

	"gonum.org/v1/gonum/mat"
)

// noiseOf is the error by noise of a value at its place: less than what is not noise makes, so that both show.
func noiseOf(i int) float64 { return 1e-3 * float64(i+1) }

// known is a fit of a driver with errors by noise, and no doubts.
func known(hz float64) Fit {
	f := Fit{circuit: circuit{coil: Ideal, x: []float64{math.Log(7), math.Log(20), math.Log(hz), math.Log(3), 1e-3}, henry: 0.1}, spread: mat.NewSymDense(5, nil)}
	for i := range 5 {
		f.spread.SetSym(i, i, math.Pow(noiseOf(i), 2))
	}
	f.values()
	return f
}

// TestMechanicalErrors: errors are what the first derivatives make of those of both measurements, of
// the mass (1.5 percent), the box (2), the area (1.5) and the air (2), and of a suspension that is
// 7.1 percent softer a decade lower. Derivatives are taken by differences.
func TestMechanicalErrors(t *testing.T) {
	good := Second{Area: 1e-3, Air: box.Air{Density: 1.2, SoundSpeed: 343}}
	values := func(m Mechanical) []float64 { return []float64{m.Mass.Value, m.Cms.Value, m.Vas.Value, m.BL.Value} }
	for _, c := range []struct {
		name     string
		with     Second
		other    float64 // Hz
		mass, by float64 // of the mass: what creep adds to its logarithm
	}{
		{"a mass", Second{Mass: 1e-3}, 75, 0.015, -0.07125 * 16.0 / 7 * math.Log10(4.0/3)},
		{"a box", Second{Volume: 1e-3}, 150, 0.02, -0.07125 * math.Log10(1.5) / 0.5},
	} {
		t.Run(c.name, func(t *testing.T) {
			second := good
			second.Mass, second.Volume = c.with.Mass, c.with.Volume
			make := func(change func(one, two *Fit, s *Second)) []float64 {
				one, two, s := known(100), known(c.other), second
				change(&one, &two, &s)
				one.values()
				two.values()
				m, err := one.Mechanical(two, s)
				if err != nil {
					t.Fatal(err)
				}
				return values(m)
			}
			base := make(func(*Fit, *Fit, *Second) {})
			sum := [4]float64{}
			add := func(sigma float64, change func(one, two *Fit, s *Second, by float64)) {
				const step = 1e-5
				for k, v := range make(func(one, two *Fit, s *Second) { change(one, two, s, step) }) {
					sum[k] += math.Pow(math.Log(v/base[k])/step*sigma, 2)
				}
			}
			for i := range 4 { // the coil does not come in
				add(noiseOf(i), func(one, _ *Fit, _ *Second, by float64) { one.circuit.x[i] += by })
				add(noiseOf(i), func(_, two *Fit, _ *Second, by float64) { two.circuit.x[i] += by })
			}
			add(c.mass, func(_, _ *Fit, s *Second, by float64) { s.Mass *= 1 + by; s.Volume *= 1 + by })
			add(0.015, func(_, _ *Fit, s *Second, by float64) { s.Area *= 1 + by })
			add(0.02, func(_, _ *Fit, s *Second, by float64) { s.Air.Density *= 1 + by })
			for k, power := range []float64{1, -1, -1, 0.5} {
				sum[k] += math.Pow(power*c.by, 2)
			}
			m, err := known(100).Mechanical(known(c.other), second)
			if err != nil {
				t.Fatal(err)
			}
			for k, e := range []Estimate{m.Mass, m.Cms, m.Vas, m.BL} {
				if got, want := e.Error/e.Value, math.Sqrt(sum[k]); math.Abs(got/want-1) > 2e-3 {
					t.Errorf("value %d: %.5f, want %.5f", k, got, want)
				}
			}
		})
	}
}

// creepingZ is a driver's impedance in ohm with a suspension that creeps, as a loss and a spring (see creeping), what
// it loses at the resonance taken off.
func creepingZ(hz, creep float64) complex128 {
	u := hz / 150
	s := complex(creep, 0) * complex(math.Log10(u), math.Pi/2/math.Ln10)
	y := 1 + complex(0, 3*(u-1/u)) + 3*complex(0, -1/u)*s - complex(3*creep*math.Pi/2/math.Ln10, 0)
	return 7 + 20/y + complex(0, 1e-5*2*math.Pi*hz)
}

// hzOf are 200 frequencies over three decades.
func hzOf(i int) float64 { return 20 * math.Pow(1000, float64(i)/199) }

func creepingPoints(creep float64) (points []impedance.Point) {
	for i := range 200 {
		points = append(points, pointOf(hzOf(i), creepingZ(hzOf(i), creep)))
	}
	return points
}

func pointOf(hz float64, z complex128) impedance.Point {
	return impedance.Point{Frequency: hz, Ohm: cmplx.Abs(z), Degrees: cmplx.Phase(z) * 180 / math.Pi}
}

// TestDoubts: what a fit says of each doubt is how far it moves where the points are off by that
// much, within a tenth of it.
func TestDoubts(t *testing.T) {
	const series = 10.0
	z := func(i int, creep float64) complex128 { return creepingZ(hzOf(i), creep) }
	fit := func(of func(i int) complex128) Fit {
		points := make([]impedance.Point, 200)
		for i := range points {
			points[i] = pointOf(hzOf(i), of(i))
		}
		d, err := define(points)
		if err != nil {
			t.Fatal(err)
		}
		f, err := fitted(points, nil, d, Ideal, series)
		if err != nil {
			t.Fatal(err)
		}
		return f
	}
	base := fit(func(i int) complex128 { return z(i, 0) })
	const small = 0.01 // of each doubt, so that it is as good as linear
	for k, c := range []struct {
		name string
		of   func(i int) complex128
	}{
		byScale:  {"ohms off by 0.6 percent", func(i int) complex128 { return z(i, 0) * (1 + small*0.006) }},
		byWarmth: {"a coil that has 0.5 percent more at the end", func(i int) complex128 { return z(i, 0) + complex(7*small*0.005*float64(i)/199, 0) }},
		byCreep:  {"softer by 7.1 percent a decade lower", func(i int) complex128 { return z(i, small*0.07125) }},
		byGain: {"inputs that differ by 0.5 percent", func(i int) complex128 {
			h := z(i, 0) / (z(i, 0) + series) * (1 + small*0.005)
			return series * h / (1 - h)
		}},
	} {
		moved := fit(c.of)
		moved.circuit.x[overLe] *= moved.circuit.henry / base.circuit.henry
		for i, x := range moved.circuit.x {
			got, want := base.doubts[k][i], (x-base.circuit.x[i])/small
			if math.Abs(got-want) > 0.03*math.Abs(want)+2e-5 {
				t.Errorf("%s: value %d moves by %.6f, said %.6f", c.name, i, want, got)
			}
		}
	}
	for _, w := range []weights{{logRe: 1}, {logQms: 1}} {
		if all := base.deviation(w); all <= base.noise(w) || fmt.Sprintf("%.9f", base.Noise().DCOhm.Error/7) != fmt.Sprintf("%.9f", base.noise(weights{logRe: 1})) {
			t.Error(all)
		}
	}
}

// TestCreepShows: what a creeping suspension leaves between circuit and points is laid to it and does
// not count as noise, too, up to 15 percent softer a decade lower; what is stiffer counts whole.
func TestCreepShows(t *testing.T) {
	left := func(creep float64) float64 {
		s := newSearch(creepingPoints(creep), Ideal, definitions{Resonance: 150, PeakOhm: 27, DCOhm: 7, Qms: 3})
		if _, err := s.run(); err != nil {
			t.Fatal(err)
		}
		var chol mat.Cholesky
		chol.Factorize(s.square)
		rest, whole := 0.0, 0.0
		for i, v := range s.lessCreep(s.doubted(&chol, 0)[byCreep]) {
			rest, whole = rest+real(v*cmplx.Conj(v)), whole+real(s.off[i]*cmplx.Conj(s.off[i]))
		}
		return math.Sqrt(rest / whole)
	}
	for _, c := range []struct{ creep, low, high float64 }{{0.02, 0, 0.05}, {0.14, 0, 0.2}, {0.3, 0.3, 0.6}, {-0.02, 1, 1}} {
		if got := left(c.creep); got < c.low || got > c.high {
			t.Errorf("%g: %.3f of the residual is left, want %g to %g", c.creep, got, c.low, c.high)
		}
	}
}

// TestLeaks: a box's leaks move the values as a fit says, and both they and creep make a box look too small
// a spring, so that their errors add.
func TestLeaks(t *testing.T) {
	one, two := known(100), known(150)
	second := Second{Volume: 1e-3, Area: 1e-3, Air: box.Air{Density: 1.2, SoundSpeed: 343}}
	vas := func() float64 {
		m, err := one.Mechanical(two, second)
		if err != nil {
			t.Fatal(err)
		}
		return m.Vas.Error / m.Vas.Value
	}
	base := vas()
	two.leak = weights{logFs: 0.1}
	down := 100.0 / 150
	// Vas is V (fc Qec/(fs Qes) - 1), of which the ratio is 1.5.
	leak := (1 - down*down) * down * 0.1 * 3
	creep := 0.07125 * math.Log10(1.5) / 0.5
	if got, want := vas(), math.Sqrt(base*base+leak*leak+1.5*leak*creep); math.Abs(got/want-1) > 1e-9 {
		t.Errorf("%.6f, want %.6f", got, want)
	}
}

// TestLeaking: a box whose leaks have a Q of 10 at most, any above that being as likely, has one over 0.0475 of it: what
// that changes an impedance by is its derivative, by differences.
func TestLeaking(t *testing.T) {
	c := circuit{coil: Ideal, x: []float64{math.Log(7), math.Log(20), math.Log(150), math.Log(3), 1e-3}, henry: 0.1}
	var slope [most]complex128
	for _, hz := range []float64{50, 100, 140, 200, 400} {
		z, u := c.at(&slope, hz), hz/150
		moving := func(leak float64) complex128 { return 20 / complex(1+3*leak*(1/(u*u)-1), 3*(u-1/u)) }
		const step = 1e-6
		want := (moving(0.0475*step) - moving(0)) / z / step
		if got := c.leaking(hz, z); cmplx.Abs(got-want) > 1e-4*cmplx.Abs(want) {
			t.Errorf("%g Hz: %g, want %g", hz, got, want)
		}
	}
}
