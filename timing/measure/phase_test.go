package measure_test

import (
	"math"
	"math/cmplx"
	"testing"

	"pappus/timing/band"
	"pappus/timing/crossover"
	"pappus/timing/measure"
)

// TestPhaseClosedForms: excess phase and group delay of a pure delay, an all-pass and high-passes
// against their closed forms, late by 5 ms, at the frequencies of a plan.
//
// All-pass of first order: (1-s)/(1+s), s = i f/f0: phase -2 atan(f/f0), group delay
// 1/(pi f0 (1+(f/f0)^2)). High-pass of first order, s/(1+s): pi/2 - atan(f/f0), half of that delay.
// Butterworth of second order, s^2/(1+s sqrt 2+s^2): pi - atan2(x sqrt 2, 1-x^2), and
// sqrt 2 (1+x^2)/(1+x^4)/(2 pi f0). Minimum phase, all three (Oppenheim and Schafer, 5.6).
func TestPhaseClosedForms(t *testing.T) {
	const first, f0 = 5e-3, 300.0
	frequency := make([]float64, 256)
	band.Log(frequency, 50, 20000)
	second := crossover.New(crossover.HighPass, crossover.Butterworth, 2, f0)
	for _, test := range []struct {
		name         string
		of           func(f float64) complex128
		phase, delay func(x float64) float64
	}{
		{"pure delay", func(float64) complex128 { return 1 },
			func(float64) float64 { return 0 }, func(float64) float64 { return 0 }},
		{"a later part alone", func(f float64) complex128 { return cmplx.Rect(2, -2*math.Pi*f*4e-4) },
			func(x float64) float64 { return -2 * math.Pi * x * f0 * 4e-4 }, func(float64) float64 { return 4e-4 }},
		{"all-pass", func(f float64) complex128 { return (1 - complex(0, f/f0)) / (1 + complex(0, f/f0)) },
			func(x float64) float64 { return -2 * math.Atan(x) }, func(x float64) float64 { return 1 / (math.Pi * f0 * (1 + x*x)) }},
		{"high-pass of first order", func(f float64) complex128 { return complex(0, f/f0) / (1 + complex(0, f/f0)) },
			func(x float64) float64 { return math.Pi/2 - math.Atan(x) }, func(x float64) float64 { return 1 / (2 * math.Pi * f0 * (1 + x*x)) }},
		{"high-pass of second order", second.Response,
			func(x float64) float64 { return math.Pi - math.Atan2(x*math.Sqrt2, 1-x*x) },
			func(x float64) float64 { return math.Sqrt2 * (1 + x*x) / (1 + x*x*x*x) / (2 * math.Pi * f0) }},
	} {
		t.Run(test.name, func(t *testing.T) {
			pressure := make([]complex128, len(frequency))
			for i, f := range frequency {
				pressure[i] = test.of(f) * cmplx.Rect(0.01, -2*math.Pi*f*first)
			}
			phase := measure.ExcessPhase(frequency, pressure, first, first+3e-4)
			delay := measure.GroupDelay(frequency, phase)
			turns := 2 * math.Pi * math.Round((phase[0]-test.phase(frequency[0]/f0))/(2*math.Pi))
			for i, f := range frequency {
				if want := test.phase(f/f0) + turns; math.Abs(phase[i]-want) > 1e-9 {
					t.Fatalf("%g Hz: phase %g, want %g", f, phase[i], want)
				}
				if want := test.delay(f / f0); math.Abs(delay[i]-want) > 1e-9+3e-3*want {
					t.Fatalf("%g Hz: group delay %g s, want %g", f, delay[i], want)
				}
			}
		})
	}
}

// TestPhaseNearNought: at 1 kHz the phase is within half a turn of 0, however many turns there are
// below, and a silent frequency does not break the line.
func TestPhaseNearNought(t *testing.T) {
	frequency := []float64{100, 990, 995, 1000, 1005, 1010}
	pressure := make([]complex128, len(frequency))
	for i, f := range frequency {
		pressure[i] = cmplx.Rect(1, 3.2-0.1*(f-1000))
	}
	pressure[2] = 0
	phase := measure.ExcessPhase(frequency, pressure, 0, 0)
	for i, want := range []float64{math.NaN(), 4.2, math.NaN(), 3.2, 2.7, 2.2} {
		if want -= 2 * math.Pi; i > 0 && !(math.Abs(phase[i]-want) < 1e-9) && !(math.IsNaN(want) && math.IsNaN(phase[i])) {
			t.Errorf("%g Hz: %g, want %g", frequency[i], phase[i], want)
		}
	}
	delay := measure.GroupDelay(frequency, phase)
	if !math.IsNaN(delay[1]) || !(math.Abs(delay[4]-0.1/(2*math.Pi)) < 1e-9) {
		t.Errorf("group delay %v", delay)
	}
	if short := measure.GroupDelay(frequency[:2], phase[:2]); !math.IsNaN(short[0]) {
		t.Errorf("of two frequencies: %v", short)
	}
}

// TestPhaseWithin: the phase is within half a turn of 0 at 1 kHz, not at 800 Hz or 1.2 kHz.
func TestPhaseWithin(t *testing.T) {
	frequency := []float64{700, 800, 900, 1000, 1100, 1200, 1300}
	pressure := make([]complex128, len(frequency))
	for i := range pressure {
		pressure[i] = cmplx.Rect(1, -2.5*float64(i)) // turns by 2.5 rad each
	}
	phase := measure.ExcessPhase(frequency, pressure, 0, 0)
	if at := phase[3]; math.Abs(at) > math.Pi || math.Abs(phase[1]) < math.Pi || math.Abs(phase[5]) < math.Pi {
		t.Errorf("%g rad", phase)
	}
}

// TestGroupDelayOfThree: three frequencies have a group delay, that of their line.
func TestGroupDelayOfThree(t *testing.T) {
	for i, v := range measure.GroupDelay([]float64{100, 200, 300}, []float64{0, -2 * math.Pi * 0.1, -2 * math.Pi * 0.2}) {
		if !(math.Abs(v-1e-3) <= 1e-12) {
			t.Errorf("%d: %g s, want 1 ms", i, v)
		}
	}
}
