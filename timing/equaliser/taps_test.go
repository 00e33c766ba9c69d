package equaliser_test

import (
	"errors"
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
	got, err := equaliser.MinimumPhase(1024, size)
	if err != nil {
		t.Fatal(err)
	}
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
	got, err := equaliser.LinearPhase(1023, size)
	if err != nil {
		t.Fatal(err)
	}
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
		h, err := equaliser.MinimumPhase(taps, flat)
		if err != nil {
			t.Fatal(err)
		}
		at(h, 0)
		if taps%2 == 1 {
			if h, err = equaliser.LinearPhase(taps, flat); err != nil {
				t.Fatal(err)
			}
			at(h, taps/2)
		}
	}
}

// TestZeroMagnitude: minimum phase takes -120 dB instead, and stays finite.
func TestZeroMagnitude(t *testing.T) {
	size := make([]float64, 513)
	for k := range size {
		size[k] = math.Min(1, float64(k)/100)
	}
	h, err := equaliser.MinimumPhase(512, size)
	if err != nil {
		t.Fatal(err)
	}
	for i, x := range h {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			t.Fatalf("tap %d is %g", i, x)
		}
	}
}

func TestMagnitude(t *testing.T) {
	dst := make([]float64, 9) // 0, 3000, ... 24000 Hz
	if err := equaliser.Magnitude(dst, rate, []float64{3000, 12000}, []float64{0, -12}); err != nil {
		t.Fatal(err)
	}
	for k, db := range map[int]float64{0: 0, 1: 0, 2: -6, 4: -12, 8: -12} {
		if got := 20 * math.Log10(dst[k]); math.Abs(got-db) > 1e-12 {
			t.Errorf("%d Hz: %g dB, want %g", k*3000, got, db)
		}
	}
}

func TestTapsErrors(t *testing.T) {
	minimum := func(taps int, size []float64) error { _, err := equaliser.MinimumPhase(taps, size); return err }
	linear := func(taps int, size []float64) error { _, err := equaliser.LinearPhase(taps, size); return err }
	curve := func(frequency, level []float64) error {
		return equaliser.Magnitude(make([]float64, 3), rate, frequency, level)
	}
	tests := []struct {
		name string
		err  error
		want error
	}{
		{"no taps", minimum(0, []float64{1, 1}), equaliser.ErrTaps},
		{"too many", minimum(3, []float64{1, 1}), equaliser.ErrTaps},
		{"even", linear(2, []float64{1, 1}), equaliser.ErrTaps},
		{"one magnitude", linear(1, []float64{1}), equaliser.ErrTaps},
		{"below 0", minimum(1, []float64{1, -1}), equaliser.ErrCurve},
		{"no number", linear(1, []float64{1, math.NaN()}), equaliser.ErrCurve},
		{"silence", minimum(1, []float64{0, 0}), equaliser.ErrCurve},
		{"no points", curve(nil, nil), equaliser.ErrCurve},
		{"falling", curve([]float64{2, 1}, []float64{0, 0}), equaliser.ErrCurve},
		{"no level", curve([]float64{1}, []float64{math.Inf(1)}), equaliser.ErrCurve},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			if !errors.Is(test.err, test.want) {
				t.Errorf("%v, want %v", test.err, test.want)
			}
		})
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
