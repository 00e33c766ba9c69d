package box_test

import (
	"errors"
	"math"
	"math/cmplx"
	"testing"

	"pappus/layout/box"

	"gonum.org/v1/gonum/mat"
)

// TestHeavy: with air that weighs next to nothing the box is that without its mass. With more the
// poles are those of the circuit's state equations, and what sounds is what goes through the circuit;
// of the Q of the poles and that of a closed box with as high a hump the greater is the target's.
func TestHeavy(t *testing.T) {
	d := complete(t, cone)
	const n, volume = 20, 0.004
	light, err := box.Damp(d, n, volume, 0.8, air)
	if err != nil {
		t.Fatal(err)
	}
	if near := light.With(light.Resistance, 1e-6); math.Abs(near.Q/light.Q-1) > 1e-5 || light.Heavy() != 0 {
		t.Errorf("Q %g, want %g", near.Q, light.Q)
	}
	if flat := light.With(light.Resistance, 0); flat != light {
		t.Errorf("%+v, want %+v", flat, light)
	}
	byPoles, byHump := 0, 0
	for _, mass := range []float64{0.01, 0.05, 0.1, 0.2, 0.5} {
		v, err := box.DampHeavy(d, n, volume, 0.8, mass, air)
		if err != nil {
			t.Fatal(err)
		}
		poles, hump := polesQ(d, v), humpQ(d, v)
		if poles > hump {
			byPoles++
		} else {
			byHump++
		}
		if most := max(poles, hump); math.Abs(most-v.Q) > 1e-5 || math.Abs(v.Q-0.8) > 1e-5 {
			t.Errorf("%g kg/m4: Q %.9g, poles %.9g, hump %.9g", mass, v.Q, poles, hump)
		}
		if want := 2 * math.Pi * v.Resonance * mass / v.Resistance; math.Abs(v.Heavy()/want-1) > 1e-12 {
			t.Errorf("heavy %g, want %g", v.Heavy(), want)
		}
	}
	if byPoles == 0 || byHump == 0 {
		t.Errorf("%d by poles, %d by humps", byPoles, byHump)
	}
}

// polesQ is the greatest of all pairs of poles, by the states of the circuit: displacement and velocity
// of the cone, the box's pressure over the cone's stiffness, and the vent's flow.
func polesQ(d box.Driver, v box.Vented) (most float64) {
	ws, cab := 2*math.Pi*d.Fs, v.Volume/air.Stiffness()
	alpha, tau, mu := float64(v.Number)*d.Vas/v.Volume, ws*v.Resistance*cab, ws*ws*v.Mass*cab
	var eig mat.Eigen
	eig.Factorize(mat.NewDense(4, 4, []float64{
		0, 1, 0, 0,
		-1, -1 / d.Qts, -1, 0,
		0, alpha, 0, -1,
		0, 0, 1 / mu, -tau / mu,
	}), mat.EigenNone)
	for _, p := range eig.Values(nil) {
		if imag(p) > 0 {
			most = max(most, -cmplx.Abs(p)/(2*real(p)))
		}
	}
	return most
}

// humpQ is that of a closed box with as high a hump, by what goes through the circuit at many
// frequencies: what sounds is the change of the flow of cones and vent together.
func humpQ(d box.Driver, v box.Vented) float64 {
	cas, cab := d.Vas/air.Stiffness(), v.Volume/air.Stiffness()
	ws := 2 * math.Pi * d.Fs
	mas := 1 / (ws * ws * cas)
	most := 0.0
	for hz := 20.0; hz < 5000; hz *= 1.0005 {
		s := complex(0, 2*math.Pi*hz)
		through := complex(v.Resistance, 0) + s*complex(v.Mass, 0)
		boxed := 1 / (s*complex(cab, 0) + 1/through)
		cone := 1 / (complex(1/(ws*d.Qts*cas), 0) + s*complex(mas, 0) + 1/(s*complex(cas, 0)) + complex(float64(v.Number), 0)*boxed)
		sum := cone * (1 - boxed/through)
		most = max(most, cmplx.Abs(s*complex(mas, 0)*sum))
	}
	// Small 1972: the greatest level is Q2/sqrt(Q2 - 1/4), here looked for step by step.
	q := math.Sqrt2 / 2
	for q*q/math.Sqrt(q*q-0.25) < most {
		q += 1e-6
	}
	return q
}

// TestTooHeavy: where no vent brings the Q down, the one of the least Q is returned.
func TestTooHeavy(t *testing.T) {
	d := complete(t, cone)
	v, err := box.DampHeavy(d, 20, 0.004, 0.8, 40, air)
	if !errors.Is(err, box.ErrTarget) || !(v.Q > 0.8) {
		t.Fatalf("%+v, %v", v, err)
	}
	for _, f := range []float64{0.9, 1.1} {
		if other := v.With(f*v.Resistance, v.Mass); other.Q < v.Q {
			t.Errorf("Q %g with %g of the resistance, %g with it", other.Q, f, v.Q)
		}
	}
}

// TestFibreDensity goes there and back, and by the square of the diameter.
func TestFibreDensity(t *testing.T) {
	for _, rho := range []float64{12, 30, 60} {
		sigma := 25.989 * math.Pow(rho, 1.404)
		if got := box.FibreDensity(sigma, 0); math.Abs(got/rho-1) > 1e-12 {
			t.Errorf("%g kg/m3, want %g", got, rho)
		}
		if got := box.FibreDensity(4*sigma, 33e-6/2); math.Abs(got/rho-1) > 1e-12 {
			t.Errorf("half as thick: %g kg/m3, want %g", got, rho)
		}
	}
	if box.FinestFibre != 25e-6 || box.CoarsestFibre != 40e-6 || box.DensestFibre != 60 {
		t.Error("the fibre is another")
	}
}

// TestFibreFlow: 4 g in a tube of 53.1 mm and 18.5 mm are 97.6 kg/m3: 25.989 times 97.6 to the power
// of 1.404 is 16,150 Pa s/m2, over 0.0185 m and 22.15 cm2 1.349e5 Pa s/m3 (by hand); and back.
func TestFibreFlow(t *testing.T) {
	area := math.Pi * 0.0531 * 0.0531 / 4
	flow := box.FibreFlow(0.004, area, 0.0185)
	if math.Abs(flow/1.349e5-1) > 2e-3 {
		t.Errorf("%g Pa s/m3", flow)
	}
	if back := box.FibreFor(flow, area, 0.0185); math.Abs(back/0.004-1) > 1e-12 {
		t.Errorf("%g kg", back)
	}
}
