package sweep_test

import (
	"errors"
	"fmt"
	"math"
	"math/cmplx"
	"testing"

	"pappus/timing/sweep"

	"gonum.org/v1/gonum/dsp/fourier"
	"pgregory.net/rapid"
)

func made(t testing.TB, start, stop, length float64) sweep.Sweep {
	t.Helper()
	s, err := sweep.New(start, stop, length)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// TestFarina checks the sweep against the formulae of A. Farina, AES 108th Convention, 2000,
// preprint 5093: the phase w1 T/ln(w2/w1) (exp(t ln(w2/w1)/T) - 1), and the time by which
// the N-th harmonic comes ahead, T ln N/ln(w2/w1).
func TestFarina(t *testing.T) {
	const rate, start, stop, length = 48000.0, 50.0, 18000.0, 3.0
	s := made(t, start, stop, length)
	x := make([]float64, int(length*rate))
	s.Fill(x, rate, 0)
	w1, w2 := 2*math.Pi*start, 2*math.Pi*stop
	for i := int(s.Rise*rate) + 1; i < int((length-s.Fall)*rate); i += 37 {
		time := float64(i) / rate
		want := math.Sin(w1 * length / math.Log(w2/w1) * (math.Exp(time*math.Log(w2/w1)/length) - 1))
		if math.Abs(x[i]-want) > 1e-9 {
			t.Fatalf("at %g s: %g, want %g", time, x[i], want)
		}
	}
	for k := 2; k <= 5; k++ {
		if want := length * math.Log(float64(k)) / math.Log(stop/start); math.Abs(s.Ahead(k)-want) > 1e-12 {
			t.Errorf("harmonic %d stands %g s ahead, want %g", k, s.Ahead(k), want)
		}
	}
}

// TestPinkSpectrum: the spectrum falls by 3 dB an octave (Farina 2000), and its magnitude is
// half of the square root of L/f (method of stationary phase, a fact of the trade).
func TestPinkSpectrum(t *testing.T) {
	const rate = 48000.0
	s := made(t, 40, 20000, 5)
	x := make([]float64, 1<<18)
	s.Fill(x, rate, 0)
	spectrum := fourier.NewFFT(len(x)).Coefficients(nil, x)
	for hz := 100.0; hz < 16000; hz *= math.Sqrt2 {
		k := int(hz * float64(len(x)) / rate)
		sum := 0.0
		for i := k - k/20; i <= k+k/20; i++ {
			sum += math.Pow(cmplx.Abs(spectrum[i])/rate, 2)
		}
		got := math.Sqrt(sum / float64(2*(k/20)+1))
		want := math.Sqrt(s.Growth()/hz) / 2
		if off := 20 * math.Log10(got/want); math.Abs(off) > 0.1 {
			t.Errorf("at %.0f Hz: off by %.3f dB", hz, off)
		}
	}
}

// TestShape: never over 1, silent where it is to be, the same at any rate and from any place
// between two samples.
func TestShape(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		start := rapid.Float64Range(20, 8000).Draw(t, "start, Hz")
		stop := rapid.Float64Range(2*start, 16000).Draw(t, "stop, Hz")
		s, err := sweep.New(start, stop, rapid.Float64Range(0.3, 1).Draw(t, "length, s"))
		if err != nil {
			t.Fatal(err)
		}
		rate := rapid.SampledFrom([]float64{40000, 44100, 48000.0048}).Draw(t, "rate, Hz")
		x := s.Samples(rate)
		for i, v := range x {
			time := float64(i) / rate
			if math.Abs(v) > 1+1e-12 {
				t.Fatalf("%g at %g s", v, time)
			}
			loud := time >= s.First() && time <= s.First()+s.MarkerSeconds() ||
				time >= s.Begin() && time <= s.Begin()+s.Length ||
				time >= s.First()+s.Apart() && time <= s.First()+s.Apart()+s.MarkerSeconds()
			if !loud && math.Abs(v) > 1e-12 {
				t.Fatalf("%g in the silence at %g s", v, time)
			}
		}
		if low, high := s.MarkerBand(); low < start || high > stop || high < 1.2*low {
			t.Fatalf("marker from %g to %g Hz in a sweep from %g to %g", low, high, start, stop)
		}
		late := rapid.Float64Range(0, 1).Draw(t, "samples late")
		a, b := make([]float64, 500), make([]float64, 500)
		s.Fill(a, rate, late)
		s.Fill(b, rate, late+100)
		for i, v := range a[:400] {
			if math.Abs(b[i+100]-v) > 1e-6 {
				t.Fatalf("sample %d: %g, 100 later %g", i, v, b[i+100])
			}
		}
	})
}

func TestErrors(t *testing.T) {
	nan := math.NaN()
	for name, c := range map[string][3]float64{
		"falls": {200, 100, 1}, "less than an octave": {100, 199, 1}, "too low": {0, 100, 1}, "too high": {100, 2e5, 1},
		"too short": {100, 1000, 0.1}, "too long": {100, 1000, 61}, "not a start": {nan, 1000, 1}, "not a stop": {100, nan, 1}, "not a length": {100, 1000, nan},
	} {
		if _, err := sweep.New(c[0], c[1], c[2]); !errors.Is(err, sweep.ErrSweep) {
			t.Errorf("%s: %v", name, err)
		}
	}
	s := made(t, 100, 20000, 1)
	if err := s.CheckRate(44100); err != nil {
		t.Error(err)
	}
	for _, rate := range []float64{40000, 0, nan} {
		if err := s.CheckRate(rate); !errors.Is(err, sweep.ErrRate) {
			t.Errorf("%g Hz: %v", rate, err)
		}
	}
	s.Gap = 0
	if err := s.Check(); !errors.Is(err, sweep.ErrSweep) {
		t.Errorf("no gap: %v", err)
	}
	s.Gap, s.Rise = 0.5, 0.9
	if err := s.Check(); !errors.Is(err, sweep.ErrSweep) {
		t.Errorf("all fade: %v", err)
	}
}

func ExampleNew() {
	s, err := sweep.New(150, 20000, 10)
	fmt.Println(err)
	fmt.Printf("%.1f s in all; the second harmonic comes %.2f s ahead\n", s.Duration(), s.Ahead(2))
	// Output:
	// <nil>
	// 12.7 s in all; the second harmonic comes 1.42 s ahead
}

func BenchmarkFill(b *testing.B) {
	s, x := made(b, 100, 20000, 10), make([]float64, 480000)
	b.ReportAllocs()
	for b.Loop() {
		s.Fill(x, 48000, 0.5)
	}
}
