package exposure_test

import (
	"fmt"
	"math"
	"testing"

	"pappus/timing/exposure"
)

// IEC 61672-1:2013, table 3, from 10 Hz to 20 kHz in third octaves at their
// exact frequencies, quoted from memory.
func TestWeighting(t *testing.T) {
	table := []float64{
		-70.4, -63.4, -56.7, -50.5, -44.7, -39.4, -34.6, -30.2, -26.2, -22.5,
		-19.1, -16.1, -13.4, -10.9, -8.6, -6.6, -4.8, -3.2, -1.9, -0.8,
		0, 0.6, 1.0, 1.2, 1.3, 1.2, 1.0, 0.5, -0.1, -1.1,
		-2.5, -4.3, -6.6, -9.3,
	}
	for i, want := range table {
		hz := 1000 * math.Pow(10, float64(i-20)/10)
		if got := exposure.Weighting(hz); math.Abs(got-want) > 0.0501 {
			t.Errorf("%.4g Hz: %.3f dB, want %.1f", hz, got, want)
		}
	}
	if got := exposure.Weighting(1000); got != 0 {
		t.Errorf("1 kHz: %g dB", got)
	}
	if got := exposure.Weighting(0); !math.IsInf(got, -1) {
		t.Errorf("0 Hz: %g dB", got)
	}
}

// IEC 61672-1:2013, annex E, gives the poles to a thousandth of a hertz: 20.599,
// 107.653, 737.862 and 12194.217 Hz, and 2.000 dB at 1 kHz; quoted from memory.
func TestWeightingFromPoles(t *testing.T) {
	for hz := 10.0; hz < 20000; hz *= 1.3 {
		x := hz * hz
		square := func(f float64) float64 { return x + f*f }
		top := 12194.217 * 12194.217 * x * x
		want := 20*math.Log10(top/(square(20.599)*math.Sqrt(square(107.653)*square(737.862))*square(12194.217))) + 2.000
		if got := exposure.Weighting(hz); math.Abs(got-want) > 5e-4 {
			t.Errorf("%.1f Hz: %.5f dB, want %.5f", hz, got, want)
		}
	}
}

// NIOSH 98-126, table 1-1, quoted from memory, as printed: hours, minutes and
// seconds.
func TestAllowed(t *testing.T) {
	tests := []struct {
		level, want, within float64 // dBA, s
	}{
		{80, 25*3600 + 24*60, 30},
		{82, 16 * 3600, 1e-6},
		{85, 8 * 3600, 1e-6},
		{86, 6*3600 + 21*60, 30},
		{87, 5*3600 + 2*60, 30},
		{88, 4 * 3600, 1e-6},
		{90, 2*3600 + 31*60, 30},
		{91, 2 * 3600, 1e-6},
		{94, 3600, 1e-6},
		{95, 47*60 + 37, 0.5},
		{97, 30 * 60, 1e-6},
		{100, 15 * 60, 1e-6},
		{103, 7*60 + 30, 1e-6},
		{106, 3*60 + 45, 1e-6},
		{115, 28, 0.5},
		{141, 0, 0},
	}
	for _, test := range tests {
		if got := exposure.Allowed(test.level) * 3600; math.Abs(got-test.want) > test.within {
			t.Errorf("%g dBA: %.1f s, want %.1f", test.level, got, test.want)
		}
	}
	if !math.IsNaN(exposure.Allowed(math.NaN())) {
		t.Error("no level has a time")
	}
}

// TestThreeDecibelsMore halve the time.
func TestThreeDecibelsMore(t *testing.T) {
	for _, level := range []float64{60, 85, 93.7, 130} {
		if ratio := exposure.Allowed(level) / exposure.Allowed(level+3); math.Abs(ratio-2) > 1e-12 {
			t.Errorf("%g dBA: %g", level, ratio)
		}
	}
}

// Two equal bands at 1 kHz are 3.01 dB more than one; one at 100 Hz counts 19.1
// dB less.
func TestLevel(t *testing.T) {
	if got := exposure.Level([]float64{1000, 1000}, []float64{70, 70}); math.Abs(got-70-10*math.Log10(2)) > 1e-12 {
		t.Errorf("%g dBA", got)
	}
	if got := exposure.Level([]float64{100}, []float64{90}); math.Abs(got-70.9) > 0.05 {
		t.Errorf("%g dBA", got)
	}
	if got := exposure.Level(nil, nil); !math.IsInf(got, -1) {
		t.Errorf("silence has %g dBA", got)
	}
}

func ExampleAllowed() {
	fmt.Printf("%.0f minutes\n", 60*exposure.Allowed(94))
	// Output: 60 minutes
}

func BenchmarkLevel(b *testing.B) {
	frequency, level := make([]float64, 21), make([]float64, 21)
	for i := range frequency {
		frequency[i], level[i] = 100*math.Pow(10, float64(i)/10), 80
	}
	b.ReportAllocs()
	for b.Loop() {
		exposure.Level(frequency, level)
	}
}
