package impedancefit_test

import (
	"errors"
	"fmt"
	"math"
	"math/cmplx"
	"math/rand/v2"
	"slices"
	"testing"

	"pappus/layout/impedance"
	"pappus/testdata/reference"
	"pappus/testdata/trialtable"
	"pappus/timing/impedancefit"

	"pgregory.net/rapid"
)

// network is a driver's circuit, written down apart from the package.
type network struct {
	fs, qms, qes, re, le float64
	k                    float64 // semi-inductance
	l2, r2               float64 // shunted inductance
	power, exponent      float64 // power law: ohm at 1 rad/s
}

func (n network) at(hz float64) complex128 {
	s := complex(0, 2*math.Pi*hz)
	// The moving part as a parallel circuit of resistance, inductance and capacitance.
	res := n.re * n.qms / n.qes
	w := 2 * math.Pi * n.fs
	admittance := complex(1/res, 0) + s*complex(n.qms/(res*w), 0) + complex(n.qms*w/res, 0)/s
	z := complex(n.re, 0) + s*complex(n.le, 0) + 1/admittance + complex(n.k, 0)*cmplx.Sqrt(s)
	if n.power > 0 {
		z += complex(n.power, 0) * cmplx.Pow(s, complex(n.exponent, 0))
	}
	if n.l2 > 0 {
		z += 1 / (1/(s*complex(n.l2, 0)) + complex(1/n.r2, 0))
	}
	return z
}

// measure samples an impedance, perOctave points to the octave, with noise in
// proportion to it; random may be nil where noise is 0.
func measure(at func(hz float64) complex128, low, high float64, perOctave int, noise float64, random *rand.Rand) []impedance.Point {
	n := int(math.Log2(high/low)*float64(perOctave)) + 1
	points := make([]impedance.Point, n)
	for i := range points {
		hz := low * math.Exp2(float64(i)/float64(perOctave))
		z := at(hz)
		if noise > 0 {
			z *= complex(1+noise*random.NormFloat64(), noise*random.NormFloat64())
		}
		points[i] = impedance.Point{Frequency: hz, Ohm: cmplx.Abs(z), Degrees: cmplx.Phase(z) * 180 / math.Pi}
	}
	return points
}

var small = network{fs: 150, qms: 3.2, qes: 1.14, re: 7.1, le: 5e-5}

func best(t testing.TB, points []impedance.Point) impedancefit.Fit {
	t.Helper()
	f, err := impedancefit.Best(points)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// TestDefinitions: on a coil without inductance the definitions of Small, JAES 20
// (1972) 383, which IEC 60268-5 has too, are exact: Rmax = Re + Res, f1 f2 = fs2, and
// the Q that follow. What is read between points errs by their spacing.
func TestDefinitions(t *testing.T) {
	n := small
	n.le = 0
	d, err := impedancefit.Define(measure(n.at, 20, 20000, 200, 0, nil))
	if err != nil {
		t.Fatal(err)
	}
	for name, v := range map[string][2]float64{
		"fs": {d.Resonance, n.fs}, "Rmax": {d.PeakOhm, n.re * (1 + n.qms/n.qes)}, "f1 f2": {d.Low * d.High, n.fs * n.fs},
		"Qms": {d.Qms, n.qms}, "Qes": {d.Qes, n.qes}, "Qts": {d.Qts, n.qms * n.qes / (n.qms + n.qes)},
	} {
		if math.Abs(v[0]/v[1]-1) > 2e-3 {
			t.Errorf("%s: %g, want %g", name, v[0], v[1])
		}
	}
}

// TestKnownNetworks: values within 0.5 percent at 0.1 percent of noise, the coil told
// by the points.
func TestKnownNetworks(t *testing.T) {
	cases := []struct {
		name string
		n    network
		coil impedancefit.Coil
	}{
		{"small driver", small, impedancefit.Ideal},
		{"no inductance", network{fs: 150, qms: 3.2, qes: 1.14, re: 7.1}, impedancefit.Ideal},
		{"damped", network{fs: 210, qms: 1.1, qes: 2.6, re: 3.7, le: 4e-5}, impedancefit.Ideal},
		{"high Q", network{fs: 95, qms: 9.5, qes: 0.62, re: 6.2, le: 2.2e-4}, impedancefit.Ideal},
		{"solid iron", network{fs: 150, qms: 3.2, qes: 1.14, re: 7.1, le: 4e-5, k: 0.012}, impedancefit.Semi},
		{"shunted", network{fs: 150, qms: 3.2, qes: 1.14, re: 7.1, le: 6e-5, l2: 2e-4, r2: 4}, impedancefit.Shunted},
		{"power law", network{fs: 150, qms: 3.2, qes: 1.14, re: 7.1, power: 0.004, exponent: 0.7}, impedancefit.Power},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			f := best(t, measure(c.n.at, 20, 20000, 24, 1e-3, rand.New(rand.NewPCG(1, 8))))
			if f.Coil != c.coil {
				t.Errorf("takes the coil for a %v", f.Coil)
			}
			check := func(name string, got impedancefit.Estimate, want, within float64) {
				if math.Abs(got.Value-want) > within*want {
					t.Errorf("%s: %.5g +- %.2g, want %g", name, got.Value, got.Error, want)
				}
			}
			check("fs", f.Resonance, c.n.fs, 5e-3)
			check("Qms", f.Qms, c.n.qms, 5e-3)
			check("Qes", f.Qes, c.n.qes, 5e-3)
			check("Qts", f.Qts, c.n.qms*c.n.qes/(c.n.qms+c.n.qes), 5e-3)
			check("Re", f.DCOhm, c.n.re, 5e-3)
			check("peak over Re", f.PeakOver, 1+c.n.qms/c.n.qes, 5e-3)
			if c.coil == impedancefit.Ideal && c.n.le > 0 {
				check("Le", f.Inductance, c.n.le, 5e-3)
			}
			reactance := imag(c.n.at(1000)) + c.n.re*c.n.qms/c.n.qes*imagOf(c.n)
			got := f.InductanceAt(1000)
			if want := reactance / (2000 * math.Pi); math.Abs(got.Value-want) > 4*got.Error+1e-9 {
				t.Errorf("inductance at 1 kHz %.4g +- %.2g, want %.4g", got.Value, got.Error, want)
			}
			for _, hz := range []float64{30, 150, 900, 15000} {
				if z := f.At(hz); cmplx.Abs(z/c.n.at(hz)-1) > 5e-3 {
					t.Errorf("%g Hz: %v, want %v", hz, z, c.n.at(hz))
				}
			}
			if f.Systematic || len(f.LeftOut) > 0 || math.Abs(f.Misfit/1e-3/math.Sqrt2-1) > 0.15 {
				t.Errorf("systematic %v, left out %v, misfit %g", f.Systematic, f.LeftOut, f.Misfit)
			}
		})
	}
}

// imagOf returns by how much the moving part's reactance at 1 kHz falls short of 0,
// for a resistance of 1.
func imagOf(n network) float64 {
	u := n.qms * (1000/n.fs - n.fs/1000)
	return u / (1 + u*u)
}

// TestAgainstSciPy fits noisy impedances that scipy.optimize.least_squares has fitted
// too, by other values, derivatives and search: values agree to a thousandth of their
// standard error, and standard errors to a hundredth.
func TestAgainstSciPy(t *testing.T) {
	rows, err := reference.Table("impedance_noisy.csv")
	if err != nil {
		t.Fatal(err)
	}
	want, err := reference.Table("impedance_fit.csv")
	if err != nil {
		t.Fatal(err)
	}
	points := map[string][]impedance.Point{}
	for _, r := range rows {
		points[r["case"]] = append(points[r["case"]], impedance.Point{Frequency: r.Float("frequency_hz"), Ohm: r.Float("ohm"), Degrees: r.Float("degrees")})
	}
	fits := map[string]impedancefit.Fit{}
	for name, p := range points {
		coil := impedancefit.Ideal
		if name == "solid iron" {
			coil = impedancefit.Semi
		}
		f, err := impedancefit.Make(p, coil)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		if len(f.LeftOut) > 0 {
			t.Fatalf("%s: left out %v", name, f.LeftOut)
		}
		fits[name] = f
	}
	for _, r := range want {
		f := fits[r["case"]]
		got := map[string]impedancefit.Estimate{"dc_ohm": f.DCOhm, "resonance_hz": f.Resonance, "qms": f.Qms, "qes": f.Qes,
			"qts": f.Qts, "inductance_h": f.Inductance, "semi_ohm": f.SemiOhm}[r["name"]]
		if math.Abs(got.Value-r.Float("value")) > 1e-3*r.Float("error") || math.Abs(got.Error/r.Float("error")-1) > 1e-2 {
			t.Errorf("%s: %s %.10g +- %.6g, want %s +- %s", r["case"], r["name"], got.Value, got.Error, r["value"], r["error"])
		}
	}
	if len(want) < 24 {
		t.Errorf("%d rows", len(want))
	}
}

// tries is how often something is drawn: few times, which tell enough for the bounds of its test, and many with -whole.
func tries(few, many int) int {
	if trialtable.Whole() {
		return many
	}
	return few
}

// TestErrorBars: over many invented drivers and noises, the true value is within 1
// standard error in about 68 percent and within 3 in 95 percent at least (99.7 for
// normal errors).
func TestErrorBars(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 8))
	between := func(low, high float64) float64 { return low * math.Pow(high/low, random.Float64()) }
	var one, three, all float64
	for range tries(100, 400) {
		n := network{fs: between(60, 400), qms: between(0.8, 10), qes: between(0.4, 5), re: between(2, 30)}
		n.le = between(0.001, 0.3) * n.re / (2 * math.Pi * 1000)
		coil := impedancefit.Ideal
		if random.IntN(2) == 1 {
			coil = impedancefit.Semi
			n.k = between(0.02, 0.2) * n.re / math.Sqrt(2*math.Pi*1000)
		}
		noise := between(1e-3, 0.03)
		f, err := impedancefit.Make(measure(n.at, 20, 20000, 24+random.IntN(24), noise, random), coil)
		if err != nil {
			t.Fatalf("%+v, noise %g: %v", n, noise, err)
		}
		for _, v := range []struct {
			got  impedancefit.Estimate
			want float64
		}{
			{f.Resonance, n.fs}, {f.Qms, n.qms}, {f.Qes, n.qes}, {f.Qts, n.qms * n.qes / (n.qms + n.qes)}, {f.DCOhm, n.re},
			{f.Inductance, n.le}, {f.PeakOver, 1 + n.qms/n.qes},
		} {
			all++
			if off := math.Abs(v.got.Value-v.want) / v.got.Error; off < 3 {
				three++
				if off < 1 {
					one++
				}
			}
		}
	}
	t.Logf("within 1: %.3f, within 3: %.4f", one/all, three/all)
	if one/all < 0.62 || one/all > 0.74 || three/all < 0.985 {
		t.Errorf("within 1: %.3f, within 3: %.4f", one/all, three/all)
	}
}

// TestHum: spikes at mains frequencies are left out and named, and do not move the
// values.
func TestHum(t *testing.T) {
	points := measure(small.at, 20, 20000, 48, 1e-3, rand.New(rand.NewPCG(4, 8)))
	hummed := map[int]bool{}
	for i := range points {
		for _, hum := range []float64{50, 100, 150} {
			if math.Abs(points[i].Frequency/hum-1) < 0.0075 {
				points[i].Ohm *= 1.3
				hummed[i] = true
			}
		}
	}
	f := best(t, points)
	if len(f.LeftOut) != len(hummed) || len(hummed) < 3 {
		t.Errorf("left out %v of %d", f.LeftOut, len(hummed))
	}
	if math.Abs(f.Resonance.Value-small.fs) > 4*f.Resonance.Error || math.Abs(f.Qms.Value-small.qms) > 4*f.Qms.Error {
		t.Errorf("%+v %+v", f.Resonance, f.Qms)
	}
}

// TestSystematic: an ideal coil does not follow solid iron, and the fit says so. Its
// errors are wider than noise makes them, so that the true values are not far outside.
func TestSystematic(t *testing.T) {
	cases := []struct {
		name  string
		n     network
		coil  impedancefit.Coil
		rough bool
	}{
		{"a little iron", network{k: 0.0005}, impedancefit.Ideal, false},
		{"some iron", network{k: 0.005}, impedancefit.Ideal, true},
		{"a power law", network{power: 0.004, exponent: 0.7}, impedancefit.Semi, true},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			n := small
			n.k, n.power, n.exponent = c.n.k, c.n.power, c.n.exponent
			f, err := impedancefit.Make(measure(n.at, 20, 20000, 24, 1e-3, rand.New(rand.NewPCG(5, 8))), c.coil)
			if err != nil || !f.Systematic || f.Rough() != c.rough {
				t.Fatalf("systematic %v, rough %v, misfit %g, %v", f.Systematic, f.Rough(), f.Misfit, err)
			}
			for name, v := range map[string]struct {
				got  impedancefit.Estimate
				want float64
			}{"Re": {f.DCOhm, n.re}, "fs": {f.Resonance, n.fs}, "Qms": {f.Qms, n.qms}, "Qes": {f.Qes, n.qes}} {
				if off := math.Abs(v.got.Value - v.want); off > 4*v.got.Error {
					t.Errorf("%s %.5g +- %.2g, want %g", name, v.got.Value, v.got.Error, v.want)
				}
			}
		})
	}
}

func TestFaults(t *testing.T) {
	random := rand.New(rand.NewPCG(6, 8))
	good := measure(small.at, 20, 20000, 24, 0.01, random)
	changed := func(phase func(degrees float64) float64) []impedance.Point {
		out := slices.Clone(good)
		for i := range out {
			out[i].Degrees = phase(out[i].Degrees)
		}
		return out
	}
	// A driver on a port, about: two peaks with a saddle between.
	port := func(hz float64) complex128 {
		n, other := small, small
		n.fs, other.fs = 60, 200
		return n.at(hz) + other.at(hz) - complex(small.re, 0)
	}
	flat := network{fs: 1e-3, qms: 1, qes: 1, re: 8, le: 1e-5}
	cases := []struct {
		name   string
		points []impedance.Point
		want   error
	}{
		{"none", nil, impedancefit.ErrFew},
		{"eleven", good[:11], impedancefit.ErrFew},
		{"none over the peak", measure(small.at, 20, 20000, 2, 0, nil), impedancefit.ErrFew},
		{"a resistor", measure(func(float64) complex128 { return 8 }, 20, 20000, 24, 0, nil), impedancefit.ErrNoPeak},
		{"a noisy resistor", measure(func(float64) complex128 { return 8 }, 20, 20000, 24, 0.03, random), impedancefit.ErrNoPeak},
		{"a coil alone", measure(flat.at, 200, 20000, 24, 0.001, random), impedancefit.ErrNoPeak},
		{"begins on the peak", measure(small.at, 150, 20000, 24, 0.01, random), impedancefit.ErrEdge},
		{"ends on the peak", measure(small.at, 20, 150, 24, 0.001, random), impedancefit.ErrNoPeak},
		{"begins over the peak", measure(small.at, 200, 20000, 24, 0.01, random), impedancefit.ErrEdge},
		{"no phases", changed(func(float64) float64 { return 0 }), impedancefit.ErrPhase},
		{"phases turned round", changed(func(d float64) float64 { return -d }), impedancefit.ErrPhase},
		{"two peaks", measure(port, 20, 20000, 24, 0.005, random), impedancefit.ErrShape},
		{"falls back", append(good[:20:20], good[10:]...), impedancefit.ErrValue},
		{"no number", append([]impedance.Point{{Frequency: math.NaN(), Ohm: 1}}, good...), impedancefit.ErrValue},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			if f, err := impedancefit.Best(c.points); !errors.Is(err, c.want) {
				t.Errorf("%v, %+v, want %v", err, f.Resonance, c.want)
			}
		})
	}
}

// TestNeverPanics: any table gives values or an error.
func TestNeverPanics(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(0, 60).Draw(t, "points")
		points := make([]impedance.Point, n)
		hz := 10.0
		for i := range points {
			hz *= rapid.Float64Range(1.001, 1.5).Draw(t, "step")
			points[i] = impedance.Point{Frequency: hz, Ohm: rapid.Float64Range(0.01, 1e5).Draw(t, "ohm"), Degrees: rapid.Float64Range(-90, 90).Draw(t, "degrees")}
		}
		f, err := impedancefit.Best(points)
		if err == nil && !(f.Qts.Value > 0 && f.Qts.Error >= 0 && f.Resonance.Value > 0 && f.DCOhm.Value > 0) {
			t.Fatalf("%+v", f)
		}
	})
}

func ExampleBest() {
	curve, err := impedance.New(impedance.Driver{Resonance: 150, QMS: 3.2, QES: 1.14, DCOhm: 7.1, Inductance: 5e-5})
	if err != nil {
		fmt.Println(err)
		return
	}
	f, err := impedancefit.Best(measure(curve.At, 20, 20000, 24, 0.005, rand.New(rand.NewPCG(7, 8))))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("resonance %.2f +- %.2f Hz, Qms %.2f +- %.2f, Qes %.3f +- %.3f\n",
		f.Resonance.Value, f.Resonance.Error, f.Qms.Value, f.Qms.Error, f.Qes.Value, f.Qes.Error)
	// Output:
	// resonance 150.00 +- 0.17 Hz, Qms 3.21 +- 0.07, Qes 1.141 +- 0.018
}

func BenchmarkBest(b *testing.B) {
	points := measure(small.at, 20, 20000, 48, 0.003, rand.New(rand.NewPCG(8, 8)))
	b.ReportAllocs()
	for b.Loop() {
		if _, err := impedancefit.Best(points); err != nil {
			b.Fatal(err)
		}
	}
}
