package biquad_test

import (
	"fmt"
	"math"
	"math/cmplx"
	"math/rand/v2"
	"testing"

	"pappus/timing/biquad"

	"gonum.org/v1/gonum/dsp/fourier"
	"gonum.org/v1/gonum/mat"
	"pgregory.net/rapid"
)

// chain is a resonance and a shelf of arbitrary stable values.
var chain = biquad.Chain{{0.4, -0.3, 0.2, -1.2, 0.6}, {1.1, 0.2, 0.05, 0.3, -0.2}}

// TestFillIsTheTransformOfFilter: the response is the transform of what the
// chain makes of one click (gonum's transform).
func TestFillIsTheTransformOfFilter(t *testing.T) {
	const n, rate = 512, 48000.0
	click := make([]float64, n)
	click[0] = 1
	chain.Filter(click, click)
	want := fourier.NewFFT(n).Coefficients(nil, click)
	frequency := make([]float64, len(want))
	for i := range frequency {
		frequency[i] = rate * float64(i) / n
	}
	got := make([]complex128, len(want))
	chain.Fill(got, frequency, rate)
	for i := range got {
		if cmplx.Abs(got[i]-want[i]) > 1e-12 {
			t.Fatalf("%g Hz: %v, want %v", frequency[i], got[i], want[i])
		}
	}
}

// TestFilterFollowsItsEquation works the difference equation out as it stands.
func TestFilterFollowsItsEquation(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	x := make([]float64, 200)
	for i := range x {
		x[i] = r.NormFloat64()
	}
	want := append([]float64(nil), x...)
	for _, s := range chain {
		in := append([]float64(nil), want...)
		at := func(v []float64, i int) float64 {
			if i < 0 {
				return 0
			}
			return v[i]
		}
		for i := range want {
			want[i] = s.B0*in[i] + s.B1*at(in, i-1) + s.B2*at(in, i-2) - s.A1*at(want, i-1) - s.A2*at(want, i-2)
		}
	}
	got := make([]float64, len(x))
	chain.Filter(got, x)
	for i := range got {
		if math.Abs(got[i]-want[i]) > 1e-12 {
			t.Fatalf("sample %d: %g, want %g", i, got[i], want[i])
		}
	}
}

// TestIsStable compares with the poles, found as eigenvalues by gonum.
func TestIsStable(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := biquad.Section{B0: 1, A1: rapid.Float64Range(-2.5, 2.5).Draw(t, "a1"), A2: rapid.Float64Range(-1.5, 1.5).Draw(t, "a2")}
		var e mat.Eigen
		if !e.Factorize(mat.NewDense(2, 2, []float64{-s.A1, -s.A2, 1, 0}), mat.EigenNone) {
			t.Fatal("no poles")
		}
		largest := 0.0
		for _, p := range e.Values(nil) {
			largest = max(largest, cmplx.Abs(p))
		}
		if math.Abs(largest-1) > 1e-9 && s.IsStable() != (largest < 1) {
			t.Fatalf("poles out to %g, stable: %v", largest, s.IsStable())
		}
	})
}

func TestThrough(t *testing.T) {
	for _, hz := range []float64{0, 100, 23000} {
		if h := biquad.Through.At(hz, 48000); h != 1 {
			t.Errorf("%g Hz: %v", hz, h)
		}
	}
	var empty [1]complex128
	biquad.Chain(nil).Fill(empty[:], []float64{100}, 48000)
	if empty[0] != 1 {
		t.Error(empty)
	}
}

func ExampleChain_Filter() {
	mean := biquad.Chain{{B0: 0.5, B1: 0.5}} // of two samples
	out := make([]float64, 4)
	mean.Filter(out, []float64{2, 4, 4, 0})
	fmt.Println(out)
	// Output: [1 3 4 2]
}

func BenchmarkFilter(b *testing.B) {
	x, y := make([]float64, 48000), make([]float64, 48000)
	x[0] = 1
	b.SetBytes(8 * 48000)
	b.ReportAllocs()
	for b.Loop() {
		chain.Filter(y, x)
	}
}

func BenchmarkFill(b *testing.B) {
	frequency, dst := make([]float64, 256), make([]complex128, 256)
	for f := range frequency {
		frequency[f] = 20 + 80*float64(f)
	}
	b.ReportAllocs()
	for b.Loop() {
		chain.Fill(dst, frequency, 48000)
	}
}
