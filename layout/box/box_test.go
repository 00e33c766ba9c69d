package box_test

import (
	"errors"
	"fmt"
	"math"
	"math/cmplx"
	"testing"

	"pappus/layout/box"

	"gonum.org/v1/gonum/mat"
	"pgregory.net/rapid"
)

var air = box.Air{Density: 1.2, SoundSpeed: 343.2}

// cone is an invented driver of 50 mm.
var cone = box.Driver{Fs: 130, Qms: 4, Qes: 0.9, Re: 7.1, Mms: 1.6e-3, Sd: 1.3e-3}

func complete(t testing.TB, d box.Driver) box.Driver {
	t.Helper()
	d, err := d.Complete(air)
	if err != nil {
		t.Fatal(err)
	}
	return d
}

func TestDivide(t *testing.T) {
	got, err := box.Divide(0.010, 0.001, 0.00005, 0.0005, 20)
	if err != nil {
		t.Fatal(err)
	}
	if math.Abs(got.Net-0.0075) > 1e-15 || math.Abs(got.Share-0.000375) > 1e-15 || math.Abs(got.Drivers-0.001) > 1e-15 {
		t.Errorf("%+v", got)
	}
	for name, v := range map[string][4]float64{
		"nothing left": {0.001, 0.001, 0, 0}, "below nothing": {0.001, 0, 0.001, 0}, "no number": {math.NaN(), 0, 0, 0},
	} {
		if _, err := box.Divide(v[0], v[1], v[2], v[3], 2); err == nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// TestClosed checks alignments that are known in closed form (Small 1972):
// Q of 1/sqrt(2) is the flattest, 3 dB down at its resonance; 0.5 is critically
// damped, 6 dB down there and 3 dB at sqrt(1+sqrt 2) times it; Q of 1 peaks by
// 2/sqrt(3), 1.25 dB, at sqrt(2) times it; 0.577 is the Bessel alignment, 3 dB
// down at 1.272 times it.
func TestClosed(t *testing.T) {
	cases := []struct {
		name            string
		q, f3, peak, at float64
		within          float64
	}{
		{"flattest", math.Sqrt2 / 2, 1, 0, math.Inf(1), 1e-9},
		{"critically damped", 0.5, math.Sqrt(1 + math.Sqrt2), 0, math.Inf(1), 1e-9},
		{"Bessel", 1 / math.Sqrt(3), 1.272, 0, math.Inf(1), 5e-4},
		{"one", 1, math.Sqrt((math.Sqrt(5) - 1) / 2), 20 * math.Log10(2/math.Sqrt(3)), math.Sqrt2, 1e-9},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			// 1 + alpha = 4 for 20 drivers of a Vas of 3 l on 20 l.
			d := box.Driver{Fs: 100, Qts: c.q / 2, Vas: 0.003}
			got, err := box.Close(d, 20, 0.020)
			if err != nil {
				t.Fatal(err)
			}
			if math.Abs(got.Alpha-3) > 1e-12 || math.Abs(got.Resonance-200) > 1e-9 || math.Abs(got.Q-c.q) > 1e-12 {
				t.Errorf("%+v", got)
			}
			if math.Abs(got.F3/200-c.f3) > c.within || math.Abs(got.Peak-c.peak) > c.within {
				t.Errorf("%+v, want F3 %g times the resonance and a peak of %g dB", got, c.f3, c.peak)
			}
			if r := got.PeakAt / 200; r != c.at && !(math.Abs(r-c.at) < c.within) {
				t.Errorf("peak at %g times the resonance, want %g", r, c.at)
			}
		})
	}
}

// TestComplete: a mass of 10 g on 1 mm/N resonates at 50.33 Hz; with 100 cm2 in
// air of rho c2 = 141.3 kPa that is 14.13 l; 6 T m into 8 ohm give it a Qes of
// 2 pi 50.33 0.01 8/36 = 0.7027, and with a Qms of 3 a Qts of 0.5694.
func TestComplete(t *testing.T) {
	want := box.Driver{Fs: 50.3292121, Qts: 0.569359914, Qms: 3, Qes: 0.702728369, Vas: 0.0141343488, Re: 8, BL: 6, Mms: 0.01, Cms: 1e-3, Sd: 0.01}
	cases := []struct {
		name string
		d    box.Driver
	}{
		{"from its parts", box.Driver{Qms: 3, Re: 8, BL: 6, Mms: 0.01, Cms: 1e-3, Sd: 0.01}},
		{"from mass and resonance", box.Driver{Fs: 50.3292121, Qms: 3, Re: 8, BL: 6, Mms: 0.01, Sd: 0.01}},
		{"from Vas", box.Driver{Fs: 50.3292121, Qts: 0.569359914, Qes: 0.702728369, Vas: 0.0141343488, Re: 8, Sd: 0.01}},
		{"area not given", box.Driver{Fs: 50.3292121, Qts: 0.569359914, Qms: 3, Vas: 0.0141343488, Re: 8, Cms: 1e-3}},
		{"resistance not given", box.Driver{Qts: 0.569359914, Qms: 3, BL: 6, Mms: 0.01, Cms: 1e-3, Sd: 0.01}},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			got := complete(t, c.d)
			for name, v := range map[string][2]float64{
				"Fs": {got.Fs, want.Fs}, "Qts": {got.Qts, want.Qts}, "Qms": {got.Qms, want.Qms}, "Qes": {got.Qes, want.Qes}, "Vas": {got.Vas, want.Vas},
				"Re": {got.Re, want.Re}, "BL": {got.BL, want.BL}, "Mms": {got.Mms, want.Mms}, "Cms": {got.Cms, want.Cms}, "Sd": {got.Sd, want.Sd},
			} {
				if !(math.Abs(v[0]/v[1]-1) < 1e-7) {
					t.Errorf("%s: %.8g, want %.8g", name, v[0], v[1])
				}
			}
		})
	}
}

func TestBadValues(t *testing.T) {
	if d, err := (box.Driver{Qts: 0.8, Qes: 0.5}).Complete(air); err == nil {
		t.Errorf("Qts above Qes: %+v", d)
	}
	good := complete(t, cone)
	cases := []struct {
		name string
		do   func() error
		want error
	}{
		{"no mass", func() error {
			_, _, err := box.Vented{Driver: box.Driver{Fs: 100, Qms: 3, Vas: 0.001, Re: 7, BL: 3, Sd: 0.001}}.Flow(1, 100)
			return err
		}, box.ErrMissing},
		{"no Vas", func() error { _, err := box.Close(box.Driver{Fs: 100, Qts: 0.5}, 1, 1); return err }, box.ErrMissing},
		{"Q over the closed box's", func() error { _, err := box.Damp(good, 1, 0.001, 9, air); return err }, box.ErrTarget},
		{"Q that no vent gives", func() error { _, err := box.Damp(good, 1, 0.001, 0.51, air); return err }, box.ErrTarget},
		{"Q of no pair of poles", func() error {
			_, err := box.Damp(box.Driver{Fs: 100, Qts: 0.4, Vas: 0.001}, 8, 0.001, 0.49, air)
			return err
		}, box.ErrTarget},
		{"Q of poles that are nearly one", func() error {
			_, err := box.Damp(box.Driver{Fs: 100, Qts: 0.4, Vas: 0.001}, 8, 0.001, 0.51, air)
			return err
		}, nil},
		{"Q no number", func() error { _, err := box.Damp(good, 1, 0.001, math.NaN(), air); return err }, box.ErrTarget},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			if err := c.do(); !errors.Is(err, c.want) {
				t.Errorf("%v, want %v", err, c.want)
			}
		})
	}
}

// nodes solves the circuit of every driver, the box and the vent by nodal
// analysis, in electrical and mechanical values: one unknown force balance for
// each cone and the box's pressure, as real and imaginary parts.
func nodes(v box.Vented, volt, hz float64) (cones, vent complex128) {
	d, n := v.Driver, v.Number
	w := 2 * math.Pi * hz
	rms := 2 * math.Pi * d.Fs * d.Mms / d.Qms
	zm := complex(rms+d.BL*d.BL/d.Re, w*d.Mms-1/(w*d.Cms))
	yb := complex(1/v.Resistance, w*v.Volume/(air.Density*air.SoundSpeed*air.SoundSpeed))
	size := n + 1
	a, b := mat.NewDense(2*size, 2*size, nil), mat.NewVecDense(2*size, nil)
	put := func(i, j int, z complex128) {
		a.Set(2*i, 2*j, real(z))
		a.Set(2*i, 2*j+1, -imag(z))
		a.Set(2*i+1, 2*j, imag(z))
		a.Set(2*i+1, 2*j+1, real(z))
	}
	for i := range n {
		put(i, i, zm)                // of a cone's velocity
		put(i, n, complex(d.Sd, 0))  // the box presses back
		put(n, i, complex(-d.Sd, 0)) // and takes what the cones move
		b.SetVec(2*i, volt*d.BL/d.Re)
	}
	put(n, n, yb)
	var x mat.VecDense
	if err := x.SolveVec(a, b); err != nil {
		panic(err)
	}
	for i := range n {
		cones += complex(d.Sd*x.AtVec(2*i), d.Sd*x.AtVec(2*i+1))
	}
	return cones, complex(x.AtVec(2*n), x.AtVec(2*n+1)) / complex(v.Resistance, 0)
}

// Flows are those of the circuit solved node by node.
func TestFlow(t *testing.T) {
	d := complete(t, cone)
	c, err := box.Close(d, 7, 0.004)
	if err != nil {
		t.Fatal(err)
	}
	v, err := box.Damp(d, 7, 0.004, 0.8*c.Q, air)
	if err != nil {
		t.Fatal(err)
	}
	for _, hz := range []float64{20, 80, 150, 200, 400, 2000} {
		cones, vent, err := v.Flow(2.83, hz)
		if err != nil {
			t.Fatal(err)
		}
		wantCones, wantVent := nodes(v, 2.83, hz)
		if math.Abs(cones/cmplx.Abs(wantCones)-1) > 1e-9 || math.Abs(vent/cmplx.Abs(wantVent)-1) > 1e-9 {
			t.Errorf("%g Hz: %g and %g m3/s, want %g and %g", hz, cones, vent, cmplx.Abs(wantCones), cmplx.Abs(wantVent))
		}
	}
}

// The vent that is found gives poles with the Q that was asked for: eigenvalues
// of the circuit's state equations, which know nothing of the cubic.
func TestDamp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := box.Driver{Fs: rapid.Float64Range(40, 400).Draw(t, "fs"), Qts: rapid.Float64Range(0.5, 1.2).Draw(t, "qts"), Vas: 0.001}
		n := rapid.IntRange(1, 60).Draw(t, "drivers")
		volume := rapid.Float64Range(0.002, 0.05).Draw(t, "volume")
		c, err := box.Close(d, n, volume)
		if err != nil {
			t.Fatal(err)
		}
		want := c.Q * rapid.Float64Range(0.55, 0.98).Draw(t, "part")
		if want <= 0.51 {
			t.Skip("no pair")
		}
		v, err := box.Damp(d, n, volume, want, air)
		if errors.Is(err, box.ErrTarget) {
			t.Skip("out of reach")
		} else if err != nil {
			t.Fatal(err)
		}
		// State: the cone's displacement and velocity in units of the driver's
		// resonance, and the box's pressure over the stiffness of the cone.
		tau := 2 * math.Pi * d.Fs * v.Resistance * volume / (air.Density * air.SoundSpeed * air.SoundSpeed)
		state := mat.NewDense(3, 3, []float64{
			0, 1, 0,
			-1, -1 / d.Qts, -1,
			0, c.Alpha, -1 / tau,
		})
		var eig mat.Eigen
		if !eig.Factorize(state, mat.EigenNone) {
			t.Fatal("no eigenvalues")
		}
		for _, p := range eig.Values(nil) {
			if imag(p) <= 1e-9 {
				continue
			}
			if q := cmplx.Abs(p) / (-2 * real(p)); math.Abs(q-want) > 1e-6 || math.Abs(v.Q-want) > 1e-6 || math.Abs(v.Resonance/(d.Fs*cmplx.Abs(p))-1) > 1e-6 {
				t.Fatalf("Q of %.9g by the poles and %.9g as reported at %g Hz, want %.9g", q, v.Q, v.Resonance, want)
			}
			return
		}
		t.Fatal("no pair of poles")
	})
}

func TestVent(t *testing.T) {
	v := box.Vent{Radius: 0.004, Number: 16, Depth: 0.003}
	area := 16 * math.Pi * 16e-6
	near := func(name string, got, want float64) {
		t.Helper()
		if math.Abs(got/want-1) > 1e-12 {
			t.Errorf("%s: %g, want %g", name, got, want)
		}
	}
	near("area", v.Area(), area)
	near("specific", v.Specific(1e5), 1e5*area)
	near("velocity", v.Velocity(1e-3), 1e-3/area)
	near("gap", v.GapRatio(0.9, 0.025), 0.0225/area)
	near("mass", v.MassRatio(1e5, 200, air), 400*math.Pi*1.2*0.0098/area/1e5)
}

func ExampleClose() {
	d, err := box.Driver{Fs: 130, Qms: 4, Qes: 0.9, Re: 7.1, Mms: 1.6e-3, Sd: 1.3e-3}.Complete(box.Air{Density: 1.2, SoundSpeed: 343.2})
	if err != nil {
		fmt.Println(err)
		return
	}
	c, err := box.Close(d, 39, 0.006)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("resonance %.0f Hz, Q %.2f, 3 dB down at %.0f Hz\n", c.Resonance, c.Q, c.F3)
	// Output:
	// resonance 204 Hz, Q 1.15, 3 dB down at 152 Hz
}

func ExampleDamp() {
	air := box.Air{Density: 1.2, SoundSpeed: 343.2}
	d, err := box.Driver{Fs: 130, Qms: 4, Qes: 0.9, Re: 7.1, Mms: 1.6e-3, Sd: 1.3e-3}.Complete(air)
	if err != nil {
		fmt.Println(err)
		return
	}
	v, err := box.Damp(d, 39, 0.006, 0.9, air)
	if err != nil {
		fmt.Println(err)
		return
	}
	holes := box.Vent{Radius: 0.005, Number: 39, Depth: 0.003}
	fmt.Printf("%d holes with %.0f Pa s/m over them bring Q to %.2f\n", holes.Number, holes.Specific(v.Resistance), v.Q)
	// Output:
	// 39 holes with 101 Pa s/m over them bring Q to 0.90
}

func BenchmarkDamp(b *testing.B) {
	d := complete(b, cone)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := box.Damp(d, 39, 0.006, 0.9, air); err != nil {
			b.Fatal(err)
		}
	}
}
