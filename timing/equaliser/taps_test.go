package equaliser_test

import (
	"math"
	"math/cmplx"
	"testing"

	"pappus/timing/equaliser"

	"gonum.org/v1/gonum/dsp/fourier"
)

// magnitude returns that of some sections at 4097 frequencies, and the sections'
// own response to a click, 1024 samples long.
func magnitude(t testing.TB, sections []equaliser.Section) (size, click []float64) {
	t.Helper()
	c, err := equaliser.Chain(sections, rate)
	if err != nil {
		t.Fatal(err)
	}
	frequency := make([]float64, 4097)
	for k := range frequency {
		frequency[k] = rate / 2 * float64(k) / 4096
	}
	h := make([]complex128, len(frequency))
	c.Fill(h, frequency, rate)
	size = make([]float64, len(h))
	for k := range h {
		size[k] = cmplx.Abs(h[k])
	}
	click = make([]float64, 1024)
	click[0] = 1
	c.Filter(click, click)
	return size, click
}

var sections = []equaliser.Section{{equaliser.LowShelf, 800, equaliser.ShelfQ, 4}, {equaliser.Peaking, 3000, 1.5, -6}, {equaliser.HighShelf, 8000, equaliser.ShelfQ, 3}}

// TestMinimumPhase: the sections of the cookbook have all poles and zeros inside
// the unit circle, so they are the minimum-phase filter of their own magnitude.
func TestMinimumPhase(t *testing.T) {
	size, want := magnitude(t, sections)
	got := equaliser.MinimumPhase(1024, size)
	for i := range got {
		if math.Abs(got[i]-want[i]) > 1e-9 {
			t.Fatalf("sample %d: %.12g, want %.12g", i, got[i], want[i])
		}
	}
}

// TestLinearPhase: symmetric, and as loud as it should be where the target is
// smooth.
func TestLinearPhase(t *testing.T) {
	size, _ := magnitude(t, sections)
	got := equaliser.LinearPhase(1023, size)
	for i := range got {
		if got[i] != got[1022-i] {
			t.Fatalf("tap %d is %g, its mirror %g", i, got[i], got[1022-i])
		}
	}
	h := fourier.NewFFT(8192).Coefficients(nil, append(got, make([]float64, 8192-1023)...))
	for k := range h {
		turned := h[k] * cmplx.Rect(1, 2*math.Pi*float64(k)*511/8192)
		if math.Abs(imag(turned)) > 1e-12 {
			t.Fatalf("bin %d: phase is not that of the delay", k)
		}
		if off := 20 * math.Log10(real(turned)/size[k]); math.Abs(off) > 0.05 {
			t.Fatalf("bin %d: off by %.3f dB", k, off)
		}
	}
}

// TestFlat: a flat magnitude is a click, at once or at half the length.
func TestFlat(t *testing.T) {
	flat := make([]float64, 65)
	for k := range flat {
		flat[k] = 0.5
	}
	at := func(h []float64, where int) {
		t.Helper()
		for i, x := range h {
			want := 0.0
			if i == where {
				want = 0.5
			}
			if math.Abs(x-want) > 1e-15 {
				t.Errorf("tap %d of %d: %g, want %g", i, len(h), x, want)
			}
		}
	}
	for _, taps := range []int{1, 2, 33, 65} {
		h := equaliser.MinimumPhase(taps, flat)
		at(h, 0)
		if taps%2 == 1 {
			at(equaliser.LinearPhase(taps, flat), taps/2)
		}
	}
}

// TestZeroMagnitude: minimum phase takes -120 dB instead, and stays finite.
func TestZeroMagnitude(t *testing.T) {
	size := make([]float64, 513)
	for k := range size {
		size[k] = math.Min(1, float64(k)/100)
	}
	h := equaliser.MinimumPhase(512, size)
	for i, x := range h {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			t.Fatalf("tap %d is %g", i, x)
		}
	}
}

func BenchmarkTaps(b *testing.B) {
	size, _ := magnitude(b, sections)
	b.Run("minimum phase", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			equaliser.MinimumPhase(1024, size)
		}
	})
	b.Run("linear phase", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			equaliser.LinearPhase(1023, size)
		}
	})
}
