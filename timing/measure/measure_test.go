package measure_test

import (
	"fmt"
	"math"
	"math/cmplx"
	"testing"

	"pappus/testdata/reference"
	"pappus/timing/measure"

	"pgregory.net/rapid"
)

// sums returns magnitude of the sum and sum of magnitudes of arrivals with
// amplitudes, at one frequency.
func sums(frequency float64, arrival, amplitude []float64) (sum, parts float64) {
	var s complex128
	for i, t := range arrival {
		s += cmplx.Rect(amplitude[i], -2*math.Pi*frequency*t)
		parts += amplitude[i]
	}
	return cmplx.Abs(s), parts
}

// TestTextbookSums checks the closed forms of combs_and_sums.csv (Everest and
// Pohlmann, Master Handbook of Acoustics, comb-filter chapter).
func TestTextbookSums(t *testing.T) {
	level := func(frequency, amplitude float64) float64 {
		s, _ := sums(frequency, []float64{0, 1e-3}, []float64{1, amplitude})
		return 20 * math.Log10(s)
	}
	equal := func(count int, phase float64) float64 {
		var s complex128
		for i := range count {
			s += cmplx.Rect(1, phase*float64(i))
		}
		return 20 * math.Log10(cmplx.Abs(s))
	}
	tenDown := math.Pow(10, -0.5)
	unrelated := make([]float64, 50)
	got := map[string]float64{
		"two equal arrivals in step":                          equal(2, 0),
		"first notch for 1.000 ms between two equal arrivals": extreme(func(f float64) float64 { return level(f, 1) }, 100, 900, -1),
		"first peak above dc for 1.000 ms":                    extreme(func(f float64) float64 { return level(f, 1) }, 600, 1400, 1),
		"peak with second arrival 10 dB down":                 level(1000, tenDown),
		"dip with second arrival 10 dB down":                  level(500, tenDown),
		"50 equal arrivals in step":                           equal(50, 0),
		"50 equal unrelated arrivals":                         measure.Decibels(float64(len(unrelated))),
	}
	rows, err := reference.Table("combs_and_sums.csv")
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range rows {
		if v, ok := got[row["case"]]; ok && math.Abs(v-row.Float("value")) > 6e-4 {
			t.Errorf("%s: got %g %s, want %s", row["case"], v, row["unit"], row["value"])
		}
	}
}

// extreme walks in steps of 0.1 Hz for the highest (sign 1) or lowest value.
func extreme(f func(float64) float64, from, to, sign float64) float64 {
	best, at := math.Inf(-1), 0.0
	for i := range int((to - from) * 10) {
		x := from + float64(i)/10
		if v := sign * f(x); v > best {
			best, at = v, x
		}
	}
	return at
}

// TestCombOnset: two equal arrivals T apart sum to cos(pi f T) of their
// magnitudes, which is -3 dB at f = acos(10^(-3/20)) / (pi T) (closed form).
func TestCombOnset(t *testing.T) {
	const apart = 1e-3
	want := math.Acos(math.Pow(10, -3.0/20)) / (math.Pi * apart)
	var frequency, sum, parts []float64
	for f := 50.0; f < 20000; f *= 1.0237 {
		s, p := sums(f, []float64{0, apart}, []float64{1, 1})
		frequency, sum, parts = append(frequency, f), append(sum, s), append(parts, p)
	}
	if got := measure.CombOnset(frequency, sum, parts); math.Abs(got/want-1) > 0.001 {
		t.Errorf("got %g Hz, want %g", got, want)
	}
	if got := measure.CombOnset(frequency, parts, parts); !math.IsInf(got, 1) {
		t.Errorf("in step: got %g Hz, want none", got)
	}
	if got := measure.CombOnset(frequency, make([]float64, len(parts)), parts); got != frequency[0] {
		t.Errorf("silence: got %g Hz, want the first frequency", got)
	}
}

func TestSmear(t *testing.T) {
	tests := []struct {
		name            string
		arrival, weight []float64
		want            float64
	}{
		{"none", nil, nil, 0},
		{"one", []float64{3}, []float64{2}, 0},
		{"two equal", []float64{0, 2}, []float64{1, 1}, 1},
		{"weighted", []float64{0, 1}, []float64{3, 1}, math.Sqrt(3) / 4},
		{"silent ones do not count", []float64{0, 0, 9}, []float64{1, 1, 0}, 0},
		{"all silent", []float64{0, 9}, []float64{0, 0}, 0},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			if got := measure.Smear(test.arrival, test.weight); math.Abs(got-test.want) > 1e-15 {
				t.Errorf("got %g, want %g", got, test.want)
			}
		})
	}
}

// TestSmearDoesNotMindTheClock: a common delay and a common gain change nothing.
func TestSmearDoesNotMindTheClock(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 20).Draw(t, "n")
		a, b, w, x := make([]float64, n), make([]float64, n), make([]float64, n), make([]float64, n)
		late := rapid.Float64Range(0, 0.1).Draw(t, "late")
		gain := rapid.Float64Range(0.1, 10).Draw(t, "gain")
		for i := range n {
			a[i] = rapid.Float64Range(0, 1e-3).Draw(t, "arrival")
			w[i] = rapid.Float64Range(0, 1).Draw(t, "weight")
			b[i], x[i] = a[i]+late, gain*w[i]
		}
		if d := measure.Smear(a, w) - measure.Smear(b, x); math.Abs(d) > 1e-12 {
			t.Fatalf("differs by %g s", d)
		}
		if s := measure.Smear(a, w); s > measure.Spread(a)/2+1e-15 {
			t.Fatalf("smear %g is above half of the spread %g (Popoviciu's inequality)", s, measure.Spread(a))
		}
	})
}

func TestDeviation(t *testing.T) {
	if got := measure.Deviation([]float64{-1, 1, math.NaN(), math.Inf(-1)}); got != 1 {
		t.Errorf("got %g, want 1", got)
	}
	if got := measure.Deviation([]float64{math.NaN()}); got != 0 {
		t.Errorf("none left: got %g", got)
	}
}

func ExampleSmear() {
	arrival := []float64{5.0e-3, 5.2e-3, 5.4e-3} // s
	energy := []float64{4, 2, 1}
	fmt.Printf("%.0f us\n", 1e6*measure.Smear(arrival, energy))
	// Output: 146 us
}

func BenchmarkSmear(b *testing.B) {
	arrival, weight := make([]float64, 60), make([]float64, 60)
	for i := range arrival {
		arrival[i], weight[i] = float64(i)*1e-6, 1
	}
	b.ReportAllocs()
	for b.Loop() {
		measure.Smear(arrival, weight)
	}
}

func BenchmarkCombOnset(b *testing.B) {
	const n = 256
	frequency, sum, parts := make([]float64, n), make([]float64, n), make([]float64, n)
	for i := range frequency {
		frequency[i], sum[i], parts[i] = 50*math.Pow(1.0237, float64(i)), 1, 1.1
	}
	b.ReportAllocs()
	for b.Loop() {
		measure.CombOnset(frequency, sum, parts)
	}
}
