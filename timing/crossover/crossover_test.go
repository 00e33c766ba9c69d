package crossover_test

import (
	"errors"
	"fmt"
	"math"
	"math/cmplx"
	"testing"

	"pappus/timing/biquad"
	"pappus/timing/crossover"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"gonum.org/v1/gonum/dsp/fourier"
	"pgregory.net/rapid"
)

var families = []crossover.Family{crossover.Butterworth, crossover.LinkwitzRiley, crossover.Bessel}

func filter(t testing.TB, kind crossover.Kind, family crossover.Family, order int, corner float64) crossover.Filter {
	t.Helper()
	return crossover.New(kind, family, order, corner)
}

// every runs a test for each family, order and kind.
func every(t *testing.T, corner float64, run func(t *testing.T, f crossover.Filter)) {
	for _, family := range families {
		for _, order := range family.Orders() {
			for _, kind := range []crossover.Kind{crossover.LowPass, crossover.HighPass} {
				f := filter(t, kind, family, order, corner)
				t.Run(f.String(), func(t *testing.T) { run(t, f) })
			}
		}
	}
}

func decibels(h complex128) float64 { return 20 * math.Log10(cmplx.Abs(h)) }

// TestCorner: half power for Butterworth and Bessel, half pressure for
// Linkwitz-Riley, analog and, because of the prewarp, digital.
func TestCorner(t *testing.T) {
	every(t, 310, func(t *testing.T, f crossover.Filter) {
		want := 10 * math.Log10(0.5)
		if f.Family() == crossover.LinkwitzRiley {
			want = 20 * math.Log10(0.5)
		}
		if got := decibels(f.Response(310)); math.Abs(got-want) > 1e-10 {
			t.Errorf("analog: %.12f dB at the corner, want %.12f", got, want)
		}
		chain, err := f.Digital(48000)
		if err != nil {
			t.Fatal(err)
		}
		var h [1]complex128
		chain.Fill(h[:], []float64{310}, 48000)
		if got := decibels(h[0]); math.Abs(got-want) > 1e-8 {
			t.Errorf("digital: %.12f dB at the corner, want %.12f", got, want)
		}
	})
}

// TestSlope: far into the stop band the level falls by 20 dB per decade and
// order, and the pass band is flat far from the corner.
func TestSlope(t *testing.T) {
	every(t, 1000, func(t *testing.T, f crossover.Filter) {
		far, near, pass := 1e6, 1e5, 1.0
		if f.Kind() == crossover.HighPass {
			far, near, pass = 1, 10, 1e6
		}
		if fall := decibels(f.Response(near)) - decibels(f.Response(far)); math.Abs(fall-20*float64(f.Order())) > 0.01 {
			t.Errorf("falls by %.4f dB per decade", fall)
		}
		if h := f.Response(pass); math.Abs(decibels(h)) > 1e-5 {
			t.Errorf("pass band %.7f dB", decibels(h))
		}
	})
}

// TestButterworthLevel: 1/(1 + x^2n), Butterworth 1930.
func TestButterworthLevel(t *testing.T) {
	for _, order := range crossover.Butterworth.Orders() {
		low := filter(t, crossover.LowPass, crossover.Butterworth, order, 700)
		high := filter(t, crossover.HighPass, crossover.Butterworth, order, 700)
		for hz := 70.0; hz < 7000; hz *= 1.13 {
			x := math.Pow(hz/700, 2*float64(order))
			for _, c := range []struct {
				got  complex128
				want float64
			}{{low.Response(hz), 1 / (1 + x)}, {high.Response(hz), x / (1 + x)}} {
				if power := real(c.got)*real(c.got) + imag(c.got)*imag(c.got); math.Abs(power/c.want-1) > 1e-12 {
					t.Fatalf("order %d, %.0f Hz: power %.15g, want %.15g", order, hz, power, c.want)
				}
			}
		}
	}
}

// The coefficients of 1/(1 + a s + b s^2), scaled to -3 dB at 1: U. Tietze and
// Ch. Schenk, Electronic Circuits, table of Bessel filters (the same numbers as
// in Texas Instruments, Op Amps for Everyone, SLOD006, chapter 16); quoted from
// memory.
func TestBesselAgainstTable(t *testing.T) {
	table := [][][2]float64{
		{{1, 0}},
		{{1.3617, 0.6180}},
		{{0.7560, 0}, {0.9996, 0.4772}},
		{{1.3397, 0.4889}, {0.7743, 0.3890}},
		{{0.6656, 0}, {1.1402, 0.4128}, {0.6216, 0.3245}},
		{{1.2217, 0.3887}, {0.9686, 0.3505}, {0.5131, 0.2756}},
		{{0.5937, 0}, {1.0944, 0.3395}, {0.8304, 0.3011}, {0.4332, 0.2381}},
		{{1.1112, 0.3162}, {0.9754, 0.2979}, {0.7202, 0.2621}, {0.3728, 0.2087}},
	}
	for i, want := range table {
		got := filter(t, crossover.LowPass, crossover.Bessel, i+1, 1).Sections()
		if len(got) != len(want) {
			t.Fatalf("order %d: %d sections", i+1, len(got))
		}
		for j, s := range got {
			a, b := 1/s.Frequency, 0.0
			if s.Q > 0 {
				a, b = 1/(s.Frequency*s.Q), 1/(s.Frequency*s.Frequency)
			}
			if math.Abs(a-want[j][0]) > 1.01e-4 || math.Abs(b-want[j][1]) > 1.01e-4 {
				t.Errorf("order %d, section %d: a %.5f, b %.5f, want %.4f, %.4f", i+1, j+1, a, b, want[j][0], want[j][1])
			}
		}
	}
}

// The poles above the real axis at -3.01 dB, by mpmath's polyroots at 40 digits
// from the reverse Bessel polynomials.
func TestBesselAgainstMpmath(t *testing.T) {
	table := map[int][]complex128{
		5: {-1.50231627144748, -1.38087732586044 + 0.717909587626768i, -0.957676548562682 + 1.4711243207304i},
		8: {-1.75740840040164 + 0.272867575102231i, -1.63693941812688 + 0.822795625139695i,
			-1.37384121763737 + 1.38835657587756i, -0.892869718847132 + 1.9983258436413i},
	}
	for order, poles := range table {
		for j, s := range filter(t, crossover.LowPass, crossover.Bessel, order, 1).Sections() {
			size, q := cmplx.Abs(poles[j]), 0.0
			if imag(poles[j]) > 0 {
				q = size / (-2 * real(poles[j]))
			}
			if math.Abs(s.Frequency/size-1) > 1e-13 || math.Abs(s.Q-q) > 1e-13 {
				t.Errorf("order %d: %v, want %.15g, %.15g", order, s, size, q)
			}
		}
	}
}

// TestBesselDelay: the low-pass's delay departs from that at 0 Hz only in the
// term of order 2n of frequency (Thomson 1949), so at a tenth of the corner it
// is flat to 1e-6 from order 3 on.
func TestBesselDelay(t *testing.T) {
	for order := 3; order <= 8; order++ {
		f := filter(t, crossover.LowPass, crossover.Bessel, order, 1)
		delay := func(hz float64) float64 {
			const step = 1e-4
			return -cmplx.Phase(f.Response(hz+step)/f.Response(hz-step)) / (2 * step)
		}
		if off := delay(0.1)/delay(0.01) - 1; math.Abs(off) > 2e-6 {
			t.Errorf("order %d: delay off by %g", order, off)
		}
	}
}

// TestLinkwitzRileySum: low-pass and high-pass add up to an all-pass, inverted
// for orders 2 and 6, so the level is flat; and both are in step at every frequency.
func TestLinkwitzRileySum(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		order := rapid.SampledFrom([]int{2, 4, 6, 8}).Draw(t, "order")
		corner := rapid.Float64Range(30, 5000).Draw(t, "corner")
		hz := corner * math.Exp(rapid.Float64Range(-4, 4).Draw(t, "ln ratio"))
		low := crossover.New(crossover.LowPass, crossover.LinkwitzRiley, order, corner)
		high := crossover.New(crossover.HighPass, crossover.LinkwitzRiley, order, corner)
		l, h := low.Response(hz), high.Response(hz)
		if order == 2 || order == 6 {
			h = -h
		}
		if sum := cmplx.Abs(l + h); math.Abs(sum-1) > 1e-12 {
			t.Fatalf("sum %.15g", sum)
		}
		if across := imag(l * cmplx.Conj(h)); math.Abs(across) > 1e-12 {
			t.Fatalf("out of step by %g", cmplx.Phase(l*cmplx.Conj(h)))
		}
	})
}

// TestLinkwitzRileySections: order 6 is the Butterworth filter of order 3, a pole of
// first order and a pair of Q 1 at the corner (its polynomial (s + 1)(s^2 + s + 1)
// stands in any filter handbook; from memory), twice: two poles of first order make a
// pair of Q 1/2.
func TestLinkwitzRileySections(t *testing.T) {
	got := filter(t, crossover.HighPass, crossover.LinkwitzRiley, 6, 250).Sections()
	want := []crossover.Section{{Frequency: 250, Q: 0.5}, {Frequency: 250, Q: 1}, {Frequency: 250, Q: 1}}
	if diff := cmp.Diff(want, got, cmpopts.EquateApprox(1e-12, 0)); diff != "" {
		t.Error(diff)
	}
}

// TestDigitalSumIsAllPass holds for the digital filters too: they are the analog
// ones on a bent axis.
func TestDigitalSumIsAllPass(t *testing.T) {
	for _, order := range []int{2, 4, 6, 8} {
		var h [2]complex128
		for hz := 20.0; hz < 23000; hz *= 1.2 {
			for i, kind := range []crossover.Kind{crossover.LowPass, crossover.HighPass} {
				chain, err := filter(t, kind, crossover.LinkwitzRiley, order, 900).Digital(48000)
				if err != nil {
					t.Fatal(err)
				}
				chain.Fill(h[i:i+1], []float64{hz}, 48000)
			}
			if order == 2 || order == 6 {
				h[1] = -h[1]
			}
			if size := cmplx.Abs(h[0] + h[1]); math.Abs(size-1) > 1e-8 {
				t.Errorf("order %d, %.0f Hz: %.12g", order, hz, size)
			}
		}
	}
}

// TestDigitalIsWarpedAnalog: the bilinear transform puts the analog response at
// tan(pi f/rate)/tan(pi corner/rate) times the corner.
func TestDigitalIsWarpedAnalog(t *testing.T) {
	const rate = 44100.0
	every(t, 1500, func(t *testing.T, f crossover.Filter) {
		chain, err := f.Digital(rate)
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range chain {
			if !s.IsStable() {
				t.Fatalf("%+v is not stable", s)
			}
		}
		var h [1]complex128
		for hz := 150.0; hz < 22000; hz *= 1.25 {
			chain.Fill(h[:], []float64{hz}, rate)
			want := f.Response(1500 * math.Tan(math.Pi*hz/rate) / math.Tan(math.Pi*1500/rate))
			if cmplx.Abs(h[0]-want) > 1e-9 {
				t.Fatalf("%.0f Hz: %v, want %v", hz, h[0], want)
			}
		}
	})
}

// TestRunning: samples through the filter have its response, by gonum's
// transform; a low corner at a high rate stays true.
func TestRunning(t *testing.T) {
	const n, rate = 1 << 16, 96000.0
	chain, err := filter(t, crossover.HighPass, crossover.LinkwitzRiley, 8, 120).Digital(rate)
	if err != nil {
		t.Fatal(err)
	}
	x := make([]float64, n)
	x[0] = 1
	chain.Filter(x, x)
	got := fourier.NewFFT(n).Coefficients(nil, x)
	var h [1]complex128
	for _, i := range []int{20, 82, 200, 5000, 30000} {
		chain.Fill(h[:], []float64{rate * float64(i) / n}, rate)
		if cmplx.Abs(got[i]-h[0]) > 1e-8 {
			t.Errorf("%g Hz: %v, want %v", rate*float64(i)/n, got[i], h[0])
		}
	}
}

// TestButterworthPolarity: order n turns the two apart by n quarter turns.
func TestButterworthPolarity(t *testing.T) {
	for _, order := range crossover.Butterworth.Orders() {
		low := filter(t, crossover.LowPass, crossover.Butterworth, order, 400).Response(400)
		high := filter(t, crossover.HighPass, crossover.Butterworth, order, 400).Response(400)
		want := cmplx.Rect(1, math.Pi/2*float64(order))
		if got := high / low; cmplx.Abs(got-want) > 1e-9 {
			t.Errorf("order %d: %v, want %v", order, got, want)
		}
	}
}

func TestImpossible(t *testing.T) {
	for name, make := range map[string]func(){
		"no order":                  func() { crossover.New(crossover.LowPass, crossover.Butterworth, 0, 100) },
		"order 9":                   func() { crossover.New(crossover.LowPass, crossover.Bessel, 9, 100) },
		"Linkwitz-Riley of order 3": func() { crossover.New(crossover.HighPass, crossover.LinkwitzRiley, 3, 100) },
		"0 Hz":                      func() { crossover.New(crossover.LowPass, crossover.Bessel, 2, 0) },
		"no number":                 func() { crossover.New(crossover.LowPass, crossover.Bessel, 2, math.NaN()) },
	} {
		t.Run(name, func(t *testing.T) {
			defer func() {
				if recover() == nil {
					t.Error("there is no such filter")
				}
			}()
			make()
		})
	}
	for name, rate := range map[string]float64{"too low": 2000, "endless": math.Inf(1), "no number": math.NaN()} {
		if _, err := filter(t, crossover.LowPass, crossover.Bessel, 3, 1000).Digital(rate); !errors.Is(err, crossover.ErrRate) {
			t.Errorf("a rate %s: %v", name, err)
		}
	}
}

func ExampleNew() {
	f := crossover.New(crossover.HighPass, crossover.Butterworth, 4, 250)
	fmt.Println(f)
	for _, s := range f.Sections() {
		fmt.Printf("%.0f Hz, Q %.3f\n", s.Frequency, s.Q)
	}
	// Output:
	// Butterworth high-pass of order 4 at 250 Hz
	// 250 Hz, Q 0.541
	// 250 Hz, Q 1.307
}

func BenchmarkResponse(b *testing.B) {
	f := filter(b, crossover.HighPass, crossover.Bessel, 8, 250)
	frequency, dst := make([]float64, 256), make([]complex128, 256)
	for i := range frequency {
		frequency[i] = 20 * math.Pow(1000, float64(i)/255)
	}
	b.ReportAllocs()
	for b.Loop() {
		for i, hz := range frequency {
			dst[i] = f.Response(hz)
		}
	}
}

func BenchmarkNew(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		filter(b, crossover.HighPass, crossover.Bessel, 8, 250)
	}
}

func BenchmarkDigital(b *testing.B) {
	f := filter(b, crossover.HighPass, crossover.Bessel, 8, 250)
	var c biquad.Chain
	b.ReportAllocs()
	for b.Loop() {
		c, _ = f.Digital(48000)
	}
	_ = c
}
