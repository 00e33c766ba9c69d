package impedancefit

import (
	"errors"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"pappus/layout/impedance"
)

// TestText: as many decimal places as show two digits of the error, 8 at most, and 4 without one.
func TestText(t *testing.T) {
	for _, c := range []struct {
		e    Estimate
		per  float64
		want string
	}{
		{Estimate{150.123456, 0.21}, 1, "150.12 +- 0.21"}, {Estimate{5e-5, 1.2e-6}, 1000, "0.0500 +- 0.0012"},
		{Estimate{1.23456789, 0}, 1, "1.2346 +- 0.0000"}, {Estimate{1.23456789, math.Inf(1)}, 1, "1.2346 +- +Inf"},
		{Estimate{1.0 / 3, 1e-9}, 1, "0.33333333 +- 0.00000000"}, {Estimate{150, 23}, 1, "150 +- 23"}, {Estimate{1.5, 0.1}, 1, "1.50 +- 0.10"},
	} {
		if value, sigma := c.e.Text(c.per); value+" +- "+sigma != c.want {
			t.Errorf("%s +- %s, want %s", value, sigma, c.want)
		}
	}
}

// TestRounded: a digit more than an error leaves sure, 3 at least and 6 at most.
func TestRounded(t *testing.T) {
	for _, c := range []struct{ v, sigma, want float64 }{
		{1.23456789, 0, 1.23457}, {1.23456789, 1e-9, 1.23457}, {1.23456789, 0.02, 1.235}, {1.23456789, 0.9, 1.23}, {123.456789, 0.2, 123.46}, {0.012345678, 2e-5, 0.012346},
		{1.0000004, 0.001, 1}, {0, 1, 0},
	} {
		if got := rounded(c.v, c.sigma); got != c.want {
			t.Errorf("%g +- %g: %g, want %g", c.v, c.sigma, got, c.want)
		}
	}
}

// TestPassive: which values a coil can have.
func TestPassive(t *testing.T) {
	for _, c := range []struct {
		name string
		fit  Fit
		want bool
	}{
		{"an inductance 1.8 errors below 0 is none, by noise", Fit{Inductance: Estimate{-1.8, 1}}, true},
		{"2.2 errors are not noise", Fit{Inductance: Estimate{-2.2, 1}}, false},
		{"a power of 1 is an inductance", Fit{Coil: Power, Exponent: Estimate{Value: 1}}, true},
		{"more is no coil", Fit{Coil: Power, Exponent: Estimate{Value: 1.05}}, false},
		{"nor is one that falls", Fit{Coil: Power, Exponent: Estimate{Value: -0.1}}, false},
	} {
		if c.fit.passive() != c.want {
			t.Error(c.name)
		}
	}
}

// TestSystematicFrom: of what a meter does not show, 0.02 percent, nothing is said, alike or not.
func TestSystematicFrom(t *testing.T) {
	for size, want := range map[float64]bool{1.8e-4: false, 2.2e-4: true} {
		f, err := Make(driver(func(i int) float64 { return size * math.Sqrt2 * math.Cos(0.3*float64(i)) }), Ideal)
		if err != nil || f.Systematic != want {
			t.Errorf("misfit %g: %v, %v", f.Misfit, f.Systematic, err)
		}
	}
}

// TestNoiseOfCurve: what is not smooth in a curve, by a known deviation, and over few points.
func TestNoiseOfCurve(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 41))
	curve := make([]float64, 20000)
	for i := range curve {
		curve[i] = 1e-4*float64(i) + 0.01*random.NormFloat64()
	}
	if got := noise(curve); math.Abs(got/0.01-1) > 0.03 {
		t.Errorf("%g, want 0.01", got)
	}
	if got := []float64{noise([]float64{0, 1}), noise([]float64{0, 1, 0})}; got[0] != 0 || got[1] == 0 {
		t.Error(got)
	}
}

// TestLeastOhm: five in a row, and no fewer, make the least.
func TestLeastOhm(t *testing.T) {
	var points []impedance.Point
	for _, ohm := range []float64{9, 9, 9, 9, 9, 4, 5, 6, 5, 6, 9, 9, 9, 9} {
		points = append(points, impedance.Point{Ohm: ohm})
	}
	if got := leastOhm(points); got != 5.2 {
		t.Error(got)
	}
}

// TestOver: a point below may be noise, and so may two; not three in a row.
func TestOver(t *testing.T) {
	row := func(ohms ...float64) (points []impedance.Point) {
		for _, ohm := range ohms {
			points = append(points, impedance.Point{Ohm: ohm})
		}
		return points
	}
	if !over(row(1, 1, 9, 1), 0, 1, 5) || over(row(1, 1, 1, 9), 0, 1, 5) {
		t.Error("two below, three below")
	}
}

// TestRatioError: what a parabola leaves over of n bins, over n - 3, is their noise. With a flat
// spectrum and bins at -3 to 3 the variance of the middle is 7/21 of it (A. Savitzky and M. J. E. Golay,
// Anal. Chem. 36 (1964) 1627).
func TestRatioError(t *testing.T) {
	whole, right := make([]complex128, 200), make([]complex128, 200)
	random := rand.New(rand.NewPCG(2, 41))
	const deviation = 0.01
	sum, count := 0.0, 0
	for range 400 {
		for b := range whole {
			whole[b] = 1
			right[b] = complex(0.5+deviation*random.NormFloat64(), deviation*random.NormFloat64())
		}
		_, sigma, ok := ratio(whole, right, 50)
		if !ok {
			t.Fatal("none")
		}
		sum, count = sum+sigma*sigma, count+1
	}
	if got, want := sum/float64(count), 2*deviation*deviation*7/21; math.Abs(got/want-1) > 0.08 {
		t.Errorf("variance %g, want %g", got, want)
	}
}

// TestRecordingEdges: how short, narrow and quiet a recording may be, and what is said of it.
func TestRecordingEdges(t *testing.T) {
	of := func(samples int, low, high, level float64) Recording {
		r := Recording{Whole: make([]float64, samples), Rate: 8000, SeriesOhm: 10, Low: low, High: high}
		for i := range r.Whole {
			r.Whole[i] = level * math.Sqrt2 * math.Sin(0.7*float64(i))
		}
		r.Driver = r.Whole
		return r
	}
	for _, c := range []struct {
		name string
		of   Recording
		want error
		said string
	}{
		{"95 periods of the lowest frequency are too few", of(95*80, 100, 1000, 0.1), errFew, "0.95 s, 1 s are needed for 100 Hz"},
		{"105 will do", of(105*80, 100, 1000, 0.1), nil, ""},
		{"1.9 times as high is less than an octave", of(9000, 100, 190, 0.1), errValue, "less than an octave"},
		{"2.1 times is more", of(9000, 100, 210, 0.1), nil, ""},
		{"86 dB below full scale", of(9000, 100, 1000, 5e-5), errQuiet, "86 dB below"},
	} {
		err := c.of.check()
		if !errors.Is(err, c.want) || err != nil && !strings.Contains(err.Error(), c.said) {
			t.Errorf("%s: %v", c.name, err)
		}
	}
}

// TestAlikeWithin: a mistake measures as a fault does within twice the tolerance.
func TestAlikeWithin(t *testing.T) {
	bank, err := impedance.NewBank([]int{2, 2}, 0, 0)
	if err != nil {
		t.Fatal(err)
	}
	for off, want := range map[float64]int{0.095: 1, 0.105: 0} { // from one driver alone, which is the whole load
		l := Load{Cause: Cause{State: impedance.Open}}
		if l.alike(off, bank, 7); len(l.Alike) != want {
			t.Errorf("%g off: %v", off, l.Alike)
		}
	}
}

// TestLoose: a misfit of 2 percent that is not noise is a leak.
func TestLoose(t *testing.T) {
	for misfit, want := range map[float64]bool{0.019: false, 0.021: true} {
		if got := (Fit{Systematic: true, Misfit: misfit}).loose(leaky); got != want {
			t.Errorf("%g: %v", misfit, got)
		}
	}
	if (Fit{Misfit: 0.1}).loose(leaky) {
		t.Error("noise is no leak")
	}
}

// TestPercents: misfits are said in percent.
func TestPercents(t *testing.T) {
	f := Fit{Resonance: Estimate{100, 1}, Qts: Estimate{1, 0.01}, Systematic: true, Misfit: 0.1, seen: [2]float64{20, 20000}}
	if err := f.judge(); err == nil || !strings.Contains(err.Error(), " 10 percent") {
		t.Error(err)
	}
	if err := (Study{Fit: f}).Doubt(); err == nil || !strings.Contains(err.Error(), " 10 percent") {
		t.Error(err)
	}
}
