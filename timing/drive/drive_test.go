package drive_test

import (
	"fmt"
	"math"
	"math/cmplx"
	"testing"

	"pappus/layout"
	"pappus/timing/drive"

	"gonum.org/v1/gonum/integrate/quad"
	"pgregory.net/rapid"
)

func at(r drive.Response, hz float64) complex128 {
	dst := make([]complex128, 1)
	r.Fill(dst, []float64{hz})
	return dst[0]
}

func points(rows ...[3]float64) []layout.ResponsePoint {
	out := make([]layout.ResponsePoint, len(rows))
	for i, r := range rows {
		out[i] = layout.ResponsePoint{Frequency: r[0], Level: r[1], Phase: r[2]}
	}
	return out
}

func decibels(h complex128) float64 { return 20 * math.Log10(cmplx.Abs(h)) }

func highPass(t *testing.T, resonance, q float64) drive.Response {
	t.Helper()
	return drive.HighPass(resonance, q)
}

// TestHighPass checks closed forms of the second-order high-pass: Small 1972; for
// q = 1/sqrt(2) the Butterworth level -10 log10(1 + x^-4).
func TestHighPass(t *testing.T) {
	flat := 1 / math.Sqrt2
	butterworth := func(x float64) float64 { return -10 * math.Log10(1+math.Pow(x, -4)) }
	tests := []struct {
		name          string
		q, x          float64
		decibels      float64
		phase, within float64 // rad
	}{
		{"resonance, flattest", flat, 1, butterworth(1), math.Pi / 2, 1e-12},
		{"resonance, q 1", 1, 1, 0, math.Pi / 2, 1e-12},
		{"resonance, q 1.2", 1.2, 1, 20 * math.Log10(1.2), math.Pi / 2, 1e-12},
		{"an octave below", flat, 0.5, butterworth(0.5), math.Pi - math.Atan2(0.5/flat, 0.75), 1e-12},
		{"an octave above", flat, 2, butterworth(2), math.Atan2(2/flat, 3), 1e-12},
		{"far below, in opposite phase", flat, 1e-4, -160, math.Pi, 2e-4},
		{"far above, in phase", flat, 1e4, 0, 0, 2e-4},
		{"critical, q 0.5", 0.5, 1, 20 * math.Log10(0.5), math.Pi / 2, 1e-12},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			h := at(highPass(t, 180, test.q), 180*test.x)
			if off := decibels(h) - test.decibels; math.Abs(off) > 1e-9 {
				t.Errorf("level %.6f dB, want %.6f", decibels(h), test.decibels)
			}
			if off := cmplx.Phase(h) - test.phase; math.Abs(off) > test.within {
				t.Errorf("phase %.6f rad, want %.6f", cmplx.Phase(h), test.phase)
			}
		})
	}
}

// TestHighPassIsCausal: with exp(+i omega t) the poles lie in the left half
// plane, so that phase falls with frequency; the wrong sign of i would turn it.
func TestHighPassIsCausal(t *testing.T) {
	r := highPass(t, 200, 0.9)
	last := math.Inf(1)
	for hz := 10.0; hz < 20000; hz *= 1.1 {
		phase := cmplx.Phase(at(r, hz))
		if phase >= last {
			t.Fatalf("phase rises to %g rad at %.0f Hz", phase, hz)
		}
		last = phase
	}
}

func TestZeroResponseIsFlat(t *testing.T) {
	for _, hz := range []float64{0, 20, 20000} {
		if h := at(drive.Response{}, hz); h != 1 {
			t.Errorf("%g Hz: %v", hz, h)
		}
	}
}

// TestMeasured: a table with a slope of 6 dB per octave from 250 Hz to 8 kHz. Its
// energy goes as f^n, n = 0.6/log10(2), whose mean over log frequency is
// (4000^n - 500^n)/(n ln 8), by hand.
func TestMeasured(t *testing.T) {
	n := 0.6 / math.Log10(2)
	reference := 10 * math.Log10((math.Pow(4000, n)-math.Pow(500, n))/(n*math.Log(8)))
	level := func(hz float64) float64 { return 10 * n * math.Log10(hz) }
	r := drive.Measured(points([3]float64{250, level(250), 1}, [3]float64{1000, level(1000), -2},
		[3]float64{2000, level(2000), 3}, [3]float64{8000, level(8000), 2}))
	tests := []struct {
		name                string
		hz, decibels, phase float64
	}{
		{"a point", 1000, level(1000) - reference, -2},
		{"half way in log frequency", 500, level(500) - reference, -0.5},
		{"half way, phase unwrapped", 1000 * math.Sqrt2, level(1000*math.Sqrt2) - reference, (-2 + 3 - 2*math.Pi) / 2},
		{"last point", 8000, level(8000) - reference, 2},
		{"above: held", 16000, level(8000) - reference, 2},
		{"an octave below: 12 dB", 125, level(250) - 12 - reference, 1},
		{"two octaves below: 24 dB", 62.5, level(250) - 24 - reference, 1},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			h := at(r, test.hz)
			if off := decibels(h) - test.decibels; math.Abs(off) > 1e-9 {
				t.Errorf("level %.9f dB, want %.9f", decibels(h), test.decibels)
			}
			if off := math.Remainder(cmplx.Phase(h)-test.phase, 2*math.Pi); math.Abs(off) > 1e-9 {
				t.Errorf("phase %.9f rad, want %.9f", cmplx.Phase(h), test.phase)
			}
		})
	}
	if h := at(r, 0); h != 0 {
		t.Errorf("0 Hz: %v, want silence", h)
	}
}

// TestReference integrates the energy over the reference band by quadrature.
func TestReference(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		low := rapid.Float64Range(20, 3000).Draw(t, "low")
		steps := rapid.IntRange(1, 8).Draw(t, "steps")
		points := []layout.ResponsePoint{{Frequency: low, Level: rapid.Float64Range(40, 100).Draw(t, "level")}}
		for range steps {
			points = append(points, layout.ResponsePoint{
				Frequency: points[len(points)-1].Frequency * rapid.Float64Range(1.2, 4).Draw(t, "ratio"),
				Level:     rapid.Float64Range(40, 100).Draw(t, "level"),
			})
		}
		if points[steps].Frequency <= 500 {
			return
		}
		r := drive.Measured(points)
		edges := []float64{max(500, low)}
		for _, p := range points[1:] {
			if p.Frequency > edges[0] {
				edges = append(edges, min(4000, p.Frequency))
			}
		}
		energy := 0.0
		for i := 1; i < len(edges); i++ {
			if edges[i] > edges[i-1] {
				energy += quad.Fixed(func(u float64) float64 {
					h := at(r, math.Exp(u))
					return real(h)*real(h) + imag(h)*imag(h)
				}, math.Log(edges[i-1]), math.Log(edges[i]), 24, quad.Legendre{}, 0)
			}
		}
		if mean := energy / math.Log(edges[len(edges)-1]/edges[0]); math.Abs(mean-1) > 1e-9 {
			t.Errorf("mean energy %.12f, want 1", mean)
		}
	})
}

// TestMeasuredFollowsHighPass: a fine table of the closed form gives it back, up
// to its level.
func TestMeasuredFollowsHighPass(t *testing.T) {
	want := highPass(t, 150, 0.8)
	var points []layout.ResponsePoint
	for i := range 241 {
		hz := 40 * math.Pow(2, float64(i)/24)
		h := at(want, hz)
		points = append(points, layout.ResponsePoint{Frequency: hz, Level: 84 + decibels(h), Phase: cmplx.Phase(h)})
	}
	r := drive.Measured(points)
	offset := decibels(at(r, 2000)) - decibels(at(want, 2000))
	for hz := 20.0; hz < 20000; hz *= 1.07 {
		ratio := at(r, hz) / at(want, hz)
		if math.Abs(decibels(ratio)-offset) > 0.5 || (hz > 40 && math.Abs(cmplx.Phase(ratio)) > 0.01) {
			t.Errorf("%.0f Hz: off by %.3f dB and %.4f rad", hz, decibels(ratio)-offset, cmplx.Phase(ratio))
		}
	}
}

// TestExtremeLevels: levels that are possible in a table must not overflow the
// reference.
func TestExtremeLevels(t *testing.T) {
	for _, level := range []float64{-1000, 1000} {
		r := drive.Measured(points([3]float64{100, level}, [3]float64{10000, level}))
		if h := at(r, 1000); cmplx.Abs(h-1) > 1e-12 {
			t.Errorf("%g dB: %v", level, h)
		}
	}
}

// TestOffset: by hand, and the point source of Beranek and Mellow, chapter 4: a
// volume velocity U gives rho f U/(2 r) in free air, twice that in half space.
func TestOffset(t *testing.T) {
	tests := []struct {
		name                     string
		sensitivity, volts, want float64
	}{
		{"as measured, half space less 6.02 dB", 82, 2.83, 75.97940008672037},
		{"twice the voltage", 82, 5.66, 82},
		{"a tenth", 90, 0.283, 63.97940008672037},
		{"silence", 82, 0, math.Inf(-1)},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			got := drive.Offset(test.sensitivity, test.volts)
			if got != test.want && !(math.Abs(got-test.want) < 1e-9) {
				t.Errorf("got %.9f dB, want %.9f", got, test.want)
			}
		})
	}
}

func ExampleHighPass() {
	r := drive.HighPass(200, 1/math.Sqrt2)
	h := make([]complex128, 3)
	r.Fill(h, []float64{100, 200, 400})
	for _, v := range h {
		fmt.Printf("%.1f dB\n", 20*math.Log10(cmplx.Abs(v)))
	}
	// Output:
	// -12.3 dB
	// -3.0 dB
	// -0.3 dB
}

func ExampleOffset() {
	// 10 V from the amplifier over four drivers in series.
	fmt.Printf("%.1f dB\n", drive.Offset(82, 10.0/4))
	// Output: 74.9 dB
}

func BenchmarkFill(b *testing.B) {
	frequency := make([]float64, 256)
	for i := range frequency {
		frequency[i] = 20 * math.Exp(6.9*float64(i)/255)
	}
	closed := drive.HighPass(180, 0.7)
	points := make([]layout.ResponsePoint, 200)
	for i := range points {
		points[i] = layout.ResponsePoint{Frequency: 20 * math.Exp(6.9*float64(i)/199), Level: float64(i % 7)}
	}
	table := drive.Measured(points)
	for _, bench := range []struct {
		name string
		r    drive.Response
	}{{"high-pass", closed}, {"measured", table}} {
		b.Run(bench.name, func(b *testing.B) {
			b.ReportAllocs()
			dst := make([]complex128, len(frequency))
			for b.Loop() {
				bench.r.Fill(dst, frequency)
			}
		})
	}
}
