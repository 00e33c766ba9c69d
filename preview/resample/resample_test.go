package resample

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/gopxl/beep/v2"
	"pgregory.net/rapid"
)

// pairs are changes of rate as they come: down and up, near and far, and with
// little in common.
var pairs = [][2]int{
	{44100, 48000}, {48000, 44100}, {96000, 48000}, {192000, 44100}, {8000, 48000},
	{48000, 8000}, {384000, 8000}, {8000, 384000}, {44099, 48000}, {48000, 47999}, {383999, 44100},
}

// all resamples a whole signal, in pieces of odd sizes.
func all(r *Resampler, src []float64) []float64 {
	dst := make([]float64, r.Len(len(src))+1)
	n := 0
	for at := 0; at < len(src); {
		wrote, took := r.Process(dst[n:min(n+509, len(dst))], src[at:min(at+701, len(src))])
		n += wrote
		at += took
	}
	for {
		wrote := r.Finish(dst[n:min(n+77, len(dst))])
		if n += wrote; wrote == 0 {
			return dst[:n]
		}
	}
}

// tone is a sine of magnitude 1 whose ends rise and fall, so that it has no
// components but its own to below -140 dB (four-term window by A. H. Nuttall, IEEE
// Trans. ASSP 29 (1981) 84, all but the sides).
func tone(frequency float64, rate, n int) []float64 {
	x := make([]float64, n)
	for i := range x {
		x[i] = shape(float64(i)/float64(n)) * math.Sin(2*math.Pi*frequency*float64(i)/float64(rate))
	}
	return x
}

func shape(t float64) float64 {
	if t < 0 || t > 1 {
		return 0
	}
	w := 2 * math.Pi * t
	return 0.355768 - 0.487396*math.Cos(w) + 0.144232*math.Cos(2*w) - 0.012604*math.Cos(3*w)
}

// A tone below 0.45 of the lower rate must come out as the same tone at the other
// rate, at the same time: what differs is loss, ripple, image and alias together.
func TestTonesStay(t *testing.T) {
	for _, p := range pairs {
		r := New(p[0], p[1])
		lower := min(p[0], p[1])
		for _, share := range []float64{0.001, 0.1, 0.25, 0.4, 0.445} {
			r.Reset()
			n := max(1, 6000*p[0]/lower)
			f := share * float64(lower)
			have := all(r, tone(f, p[0], n))
			worst := 0.0
			for i, v := range have {
				at := float64(i) / float64(p[1])
				want := shape(at*float64(p[0])/float64(n)) * math.Sin(2*math.Pi*f*at)
				worst = max(worst, math.Abs(v-want))
			}
			if db := 20 * math.Log10(worst); db > -90 {
				t.Errorf("%d to %d, %.0f Hz: %.1f dB of error", p[0], p[1], f, db)
			}
		}
	}
}

// Above half of the lower rate nothing may be left.
func TestTonesGo(t *testing.T) {
	for _, p := range pairs {
		if p[1] >= p[0] {
			continue
		}
		r := New(p[0], p[1])
		for _, share := range []float64{0.505, 0.55, 0.7, 0.95, 1.3} {
			f := share * float64(p[1])
			if f > 0.49*float64(p[0]) {
				continue
			}
			r.Reset()
			worst := 0.0
			for _, v := range all(r, tone(f, p[0], 6000*p[0]/p[1])) {
				worst = max(worst, math.Abs(v))
			}
			if db := 20 * math.Log10(worst); db > -90 {
				t.Errorf("%d to %d, %.0f Hz: %.1f dB left", p[0], p[1], f, db)
			}
		}
	}
}

// The resampler of the library interpolates by a polynomial and does not filter:
// what is above half of the lower rate folds back. It is the reason why this
// package exists; should that change, the package may go.
func TestLibraryFolds(t *testing.T) {
	x := tone(30000, 96000, 12000)
	at := 0
	src := beep.StreamerFunc(func(samples [][2]float64) (int, bool) {
		n := min(len(samples), len(x)-at)
		for i := range n {
			samples[i][0] = x[at+i]
		}
		at += n
		return n, n > 0
	})
	out := make([][2]float64, 6000)
	n, _ := beep.Resample(16, 96000, 48000, src).Stream(out)
	worst := 0.0
	for _, v := range out[:n] {
		worst = max(worst, math.Abs(v[0]))
	}
	if db := 20 * math.Log10(worst); db < -1 {
		t.Errorf("30 kHz at a rate of 48 kHz: %.1f dB, expected to be folded back", db)
	}
}

// Pieces of any size make the same samples, as many as Len says.
func TestPieces(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := rapid.SampledFrom(pairs[:5]).Draw(t, "rates")
		x := make([]float64, rapid.IntRange(0, 9000).Draw(t, "samples"))
		random := rand.New(rand.NewPCG(3, 3))
		for i := range x {
			x[i] = random.NormFloat64()
		}
		r := New(p[0], p[1])
		want := make([]float64, r.Len(len(x)))
		n, took := r.Process(want, x)
		n += r.Finish(want[n:])
		if n != len(want) || took != len(x) {
			t.Fatalf("%d of %d samples, took %d of %d", n, len(want), took, len(x))
		}
		if n := r.Finish(make([]float64, 9)); n != 0 {
			t.Fatalf("%d samples after the end", n)
		}
		r.Reset()
		if diff := cmp.Diff(want, all(r, x)); diff != "" {
			t.Fatal(diff)
		}
	})
}

// Times of samples lie before the end: ceil(n to/from).
func TestLen(t *testing.T) {
	for _, c := range []struct{ from, to, n, want int }{
		{48000, 48000, 7, 7}, {44100, 48000, 44100, 48000}, {44100, 48000, 1, 2},
		{48000, 44100, 1, 1}, {48000, 44100, 2, 2}, {96000, 48000, 3, 2}, {48000, 96000, 0, 0},
	} {
		if have := New(c.from, c.to).Len(c.n); have != c.want {
			t.Errorf("%d samples from %d to %d: %d, want %d", c.n, c.from, c.to, have, c.want)
		}
	}
}

// Abramowitz and Stegun, table 9.8: exp(-x) I0(x), quoted from memory for 1; the
// others are the values of mpmath 1.3's besseli(0, x).
func TestBessel(t *testing.T) {
	for x, want := range map[float64]float64{0: 1, 1: 1.2660658777520084, 5: 27.239871823604442, 10: 2815.7166284662544} {
		if have := bessel(x); math.Abs(have/want-1) > 1e-14 {
			t.Errorf("I0(%g) = %.17g, want %.17g", x, have, want)
		}
	}
}

// Kaiser's worked example (Oppenheim and Schafer, section 7.5.3, from memory): 60
// dB over 0.2 pi takes an order of 37 and a beta of 5.653. Here the attenuation is
// fixed, so that the formula is taken from 60 to 100 dB.
func TestKaiser(t *testing.T) {
	order, beta := kaiser(0.1)
	if want := 36.219 * (100 - 8) / (60 - 8); math.Abs(order-want) > 0.01 {
		t.Errorf("order %g, want %g", order, want)
	}
	if want := 5.653 + 0.1102*40; math.Abs(beta-want) > 0.001 {
		t.Errorf("beta %g, want %g", beta, want)
	}
}

func TestPanics(t *testing.T) {
	for _, p := range [][2]int{{0, 48000}, {48000, 0}, {-1, 1}, {48000, 1}, {1, 48000}} {
		func() {
			defer func() {
				if recover() == nil {
					t.Errorf("%v: no panic", p)
				}
			}()
			New(p[0], p[1])
		}()
	}
}

func BenchmarkProcess(b *testing.B) {
	for _, p := range pairs {
		b.Run(fmt.Sprintf("%d_%d", p[0], p[1]), func(b *testing.B) {
			r := New(p[0], p[1])
			src := make([]float64, p[0]/10)
			dst := make([]float64, r.Len(len(src))+1)
			b.ReportAllocs()
			for b.Loop() { // a tenth of a second
				r.Process(dst, src)
			}
		})
	}
}

func BenchmarkNew(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		New(44100, 48000)
	}
}

func ExampleResampler() {
	r := New(44100, 48000)
	second := make([]float64, 44100)
	out := make([]float64, 48000)
	n, _ := r.Process(out, second)
	n += r.Finish(out[n:])
	fmt.Println(n)
	// Output: 48000
}
