package band_test

import (
	"fmt"
	"math"
	"testing"

	"pappus/timing/band"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// TestOctaves checks exact centres against IEC 61260-1:2014, annex E (quoted
// from memory to five figures).
func TestOctaves(t *testing.T) {
	want := []float64{125.89, 251.19, 501.19, 1000, 1995.3, 3981.1, 7943.3}
	for i, got := range band.Octaves() {
		if math.Abs(got-want[i]) > 1e-4*want[i] {
			t.Errorf("octave %d: got %g, want %g", i, got, want[i])
		}
	}
}

// TestThirds checks some exact third-octave centres in the same way, and that
// neighbours share their edges.
func TestThirds(t *testing.T) {
	thirds := band.ThirdsWithin(88, 11300)
	for i, want := range map[int]float64{0: 100, 5: 316.23, 10: 1000, 11: 1258.9, 20: 10000} {
		if math.Abs(thirds[i]-want) > 1e-4*want {
			t.Errorf("third %d: got %g, want %g", i, thirds[i], want)
		}
	}
	for i := range thirds[1:] {
		_, high := band.Edges(thirds[i], 3)
		low, _ := band.Edges(thirds[i+1], 3)
		if math.Abs(high/low-1) > 1e-12 {
			t.Errorf("third %d ends at %g, the next begins at %g", i, high, low)
		}
	}
}

func TestName(t *testing.T) {
	var got []string
	for _, c := range band.ThirdsWithin(88, 11300) {
		got = append(got, band.Name(c))
	}
	want := []string{"100", "125", "160", "200", "250", "315", "400", "500", "630", "800", "1k",
		"1.25k", "1.6k", "2k", "2.5k", "3.15k", "4k", "5k", "6.3k", "8k", "10k"}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

func TestHertz(t *testing.T) {
	for centre, want := range map[float64]string{125.89: "125 Hz", 1000: "1 kHz", 3162.3: "3.15 kHz"} {
		if got := band.Hertz(centre); got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
}

func TestFrequenciesStandInTheirBand(t *testing.T) {
	octaves := band.Octaves()
	all := band.Frequencies(octaves, 1, 5)
	for i, f := range all {
		low, high := band.Edges(octaves[i/5], 1)
		if f <= low || f >= high {
			t.Errorf("%g Hz is outside of %g to %g", f, low, high)
		}
		if i > 0 && math.Abs(f/all[i-1]-math.Pow(band.Ratio, 0.2)) > 1e-12 {
			t.Errorf("%g Hz does not follow %g evenly", f, all[i-1])
		}
	}
}

func TestSmoothKeepsConstants(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		level := rapid.Float64Range(-80, 120).Draw(t, "level")
		n := rapid.IntRange(2, 300).Draw(t, "n")
		f, db := make([]float64, n), make([]float64, n)
		band.Log(f, 20, 20000)
		for i := range db {
			db[i] = level
		}
		for i, got := range band.Smooth(nil, f, db, 3) {
			if math.Abs(got-level) > 1e-9 {
				t.Fatalf("at %g Hz: %g, want %g", f[i], got, level)
			}
		}
	})
}

// TestSmoothComb smooths the comb of two equal arrivals: its energy mean is
// twice one arrival's, 3.01 dB (closed form), once teeth are much closer than a
// third of an octave.
func TestSmoothComb(t *testing.T) {
	const n, delay = 20000, 5e-3
	f, db := make([]float64, n), make([]float64, n)
	band.Log(f, 100, 20000)
	for i := range f {
		db[i] = 10 * math.Log10(2+2*math.Cos(2*math.Pi*f[i]*delay)+1e-12)
	}
	smooth := band.Smooth(nil, f, db, 3)
	for i := range f {
		if f[i] > 8000 && f[i] < 17000 && math.Abs(smooth[i]-3.0103) > 0.25 {
			t.Fatalf("at %g Hz: %g dB", f[i], smooth[i])
		}
	}
}

// TestSmoothIsAnEnergyMean puts one third-octave of 0 dB into silence: at its
// middle the mean is 0 dB, at its edges half of the energy.
func TestSmoothIsAnEnergyMean(t *testing.T) {
	const n = 40001
	f, db := make([]float64, n), make([]float64, n)
	band.Log(f, 100, 10000)
	low, high := band.Edges(1000, 3)
	for i := range f {
		db[i] = -200
		if f[i] >= low && f[i] <= high {
			db[i] = 0
		}
	}
	smooth := band.Smooth(nil, f, db, 3)
	for _, test := range []struct{ at, want float64 }{{1000, 0}, {low, -3.0103}, {high, -3.0103}} {
		i := int(math.Round(float64(n-1) * math.Log(test.at/100) / math.Log(100)))
		if math.Abs(smooth[i]-test.want) > 0.02 {
			t.Errorf("at %g Hz: %g dB, want %g", test.at, smooth[i], test.want)
		}
	}
}

func ExampleOctaves() {
	for _, c := range band.Octaves() {
		fmt.Print(band.Name(c), " ")
	}
	fmt.Println()
	// Output: 125 250 500 1k 2k 4k 8k
}

func BenchmarkSmooth(b *testing.B) {
	const n = 256
	f, db, dst := make([]float64, n), make([]float64, n), make([]float64, n)
	band.Log(f, 50, 20000)
	b.ReportAllocs()
	for b.Loop() {
		band.Smooth(dst, f, db, 3)
	}
}
