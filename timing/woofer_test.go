package timing_test

import (
	"context"
	"errors"
	"fmt"
	"math"
	"math/cmplx"
	"slices"
	"testing"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/timing"
	"pappus/timing/biquad"
	"pappus/timing/exposure"

	"github.com/google/go-cmp/cmp"
	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

func withWoofer(t testing.TB, a *layout.Array) (*timing.Plan, timing.Woofer) {
	t.Helper()
	p := plan(t, a)
	w, err := timing.WithWoofer(&p.Spot)
	if err != nil {
		t.Fatal(err)
	}
	return p, w
}

// TestWooferSumIsFlat: both sides are half the pressure at the crossover and the sum
// of equals in step is an all-pass, order 2 with one side inverted (S. H. Linkwitz,
// J. Audio Eng. Soc. 24 (1976) 2; Lipshitz and Vanderkooy, J. Audio Eng. Soc. 31 (1983)
// 82). The loss in air, more over the woofer's longer way, takes less than 0.01 dB
// from it.
func TestWooferSumIsFlat(t *testing.T) {
	for _, order := range []int{2, 4, 8} {
		t.Run(fmt.Sprint("order ", order), func(t *testing.T) {
			p, w := withWoofer(t, inStep(t, order))
			if math.Abs(w.Meets-300) > 0.5 {
				t.Errorf("meet at %g Hz", w.Meets)
			}
			if w.Invert != (order == 2) || !w.Matched || math.Abs(w.Louder) > 1e-9 {
				t.Errorf("inverted %t, matched %t, louder by %g dB", w.Invert, w.Matched, w.Louder)
			}
			whole := p.Transfer(nil, timing.Aligned, w.Frequency)
			for f, hz := range w.Frequency {
				full := 20 * math.Log10(cmplx.Abs(whole[f]))
				if math.Abs(w.Sum[f]-full) > 0.01 {
					t.Errorf("%.0f Hz: sum %.4f dB, want %.4f", hz, w.Sum[f], full)
				}
				// Butterworth of half the order twice: 1/(1 + x^order) of the pressure.
				x := math.Pow(hz/300, float64(order))
				if got, want := w.ArrayLevel[f]-full, 20*math.Log10(x/(1+x)); math.Abs(got-want) > 1e-9 {
					t.Errorf("%.0f Hz: array %.6f dB, want %.6f", hz, got, want)
				}
				if got, want := w.WooferLevel[f]-full, -20*math.Log10(1+x); math.Abs(got-want) > 0.01 && hz < 2000 {
					t.Errorf("%.0f Hz: woofer %.6f dB, want %.6f", hz, got, want)
				}
			}
			if math.Abs(w.Loss) > 1e-4 || w.OtherLoss < 10 {
				t.Errorf("loses %g dB, the other way %g", w.Loss, w.OtherLoss)
			}
			if len(w.Warnings) > 0 {
				t.Errorf("warns: %+v", w.Warnings)
			}
		})
	}
}

// TestCrossoverIsHalf: -6.02 dB on each side at the crossover itself.
func TestCrossoverIsHalf(t *testing.T) {
	for _, order := range []int{2, 4, 8} {
		_, w := withWoofer(t, inStep(t, order))
		for _, h := range []complex128{w.LowPass.Response(300), w.HighPass.Response(300)} {
			if got, want := 20*math.Log10(cmplx.Abs(h)), -20*math.Log10(2); math.Abs(got-want) > 1e-9 {
				t.Errorf("order %d: %g dB, want %g", order, got, want)
			}
		}
	}
}

// TestWooferDelay: whichever is nearer waits, by the way that it is nearer over the
// speed of sound, and the other does not.
func TestWooferDelay(t *testing.T) {
	a := inStep(t, 4)
	p, latest := plan(t, a), 0.0
	for _, r := range p.Arrivals {
		latest = max(latest, r.Straight)
	}
	rapid.Check(t, func(t *rapid.T) {
		far := rapid.Float64Range(0.2, 5).Draw(t, "m")
		array := *a
		array.Woofer.At = r3.Add(a.Spot, r3.Vec{Y: far})
		w, err := timing.WithWoofer(move(t, &array))
		if err != nil {
			t.Fatal(err)
		}
		late := (latest - far) / p.SpeedOfSound
		if math.Abs(w.Delay-max(0, late)) > 1e-12 || math.Abs(w.ArrayDelay-max(0, -late)) > 1e-12 {
			t.Fatalf("woofer %g s, array %g s, want %g between them", w.Delay, w.ArrayDelay, late)
		}
		if math.Abs(w.Loss) > 1e-3 || w.Invert {
			t.Fatalf("loses %g dB, inverted %t", w.Loss, w.Invert)
		}
	})
}

// TestWooferLevel: a point source over a hard floor is the sum of two waves (L. E.
// Kinsler et al., Fundamentals of Acoustics, 4th ed., 6.8, method of images); the
// sensitivity is for half space, 6.02 dB more than in free air (common practice).
func TestWooferLevel(t *testing.T) {
	a := inStep(t, 4)
	a.Surface = layout.Surface{Present: true, Height: -0.6}
	a.Driver.Sensitivity, a.Wiring.Voltage = 80, 5.66
	a.Woofer.Sensitivity, a.Woofer.Gain = 90, -3
	p, w := withWoofer(t, a)
	if w.Matched {
		t.Error("matched though both sensitivities are known")
	}
	direct, mirrored := a.Woofer.At, a.Woofer.At
	mirrored.Z = 2*a.Surface.Height - mirrored.Z
	for f, hz := range w.Frequency {
		if hz > 500 {
			break // the loss in air begins to show
		}
		sum := complex(0, 0)
		for _, from := range []r3.Vec{direct, mirrored} {
			d := r3.Norm(r3.Sub(a.Spot, from))
			sum += cmplx.Rect(1/d, -2*math.Pi*hz/p.SpeedOfSound*d)
		}
		x := math.Pow(hz/300, 4)
		want := 90 - 20*math.Log10(2) + 20*math.Log10(2) - 3 + 20*math.Log10(cmplx.Abs(sum)/(1+x)) // 5.66 V is twice 2.83 V
		if math.Abs(w.WooferLevel[f]-want) > 0.02 {
			t.Errorf("%.0f Hz: %.3f dB, want %.3f", hz, w.WooferLevel[f], want)
		}
	}
	a.Woofer.Gain = -3 - w.Louder
	if _, even := withWoofer(t, a); math.Abs(even.Louder) > 1e-9 {
		t.Errorf("with the gain that it says it is still %g dB louder", even.Louder)
	}
}

// TestWooferMeets: with the woofer 12.30 dB weaker both are as loud where (f/fc)^4, the
// ratio of a Linkwitz-Riley pair of order 4 (Linkwitz 1976), is 10^(-12.30/20): at
// 10^(-12.30/80) of the crossover, and the polarity is that of the louder sum there.
func TestWooferMeets(t *testing.T) {
	a := inStep(t, 4)
	a.Woofer.Gain = -12.30
	_, w := withWoofer(t, a)
	if want := 300 * math.Pow(10, -12.30/80); math.Abs(w.Meets-want) > 0.5 {
		t.Errorf("meet at %g Hz, want %g", w.Meets, want)
	}
	if w.Invert || math.Abs(w.Loss) > 1e-3 || math.Abs(w.Louder+12.30) > 1e-9 {
		t.Errorf("inverted %t, loses %g dB, louder by %g dB", w.Invert, w.Loss, w.Louder)
	}
	a.Woofer.Gain = -40
	a.Woofer.Crossover = 40
	if _, w = withWoofer(t, a); w.Meets != 40 {
		t.Errorf("meet at %g Hz below what is computed, want the crossover", w.Meets)
	}
}

// TestSwappedWires: swapped wires ask for the other polarity and change nothing else.
func TestSwappedWires(t *testing.T) {
	a := inStep(t, 2)
	_, w := withWoofer(t, a)
	a.Woofer.Invert = true
	_, swapped := withWoofer(t, a)
	if w.Invert == swapped.Invert {
		t.Errorf("inverted %t both ways", w.Invert)
	}
	if d := cmp.Diff(w.Sum, swapped.Sum); d != "" {
		t.Error(d)
	}
}

// TestHighPassTurnsThePhase: an octave above its corner a Butterworth high-pass of
// order 4, of Qs 0.5412 and 1.3066, is ahead by atan(0.5 0.7654/0.75) + atan(0.5
// 1.8478/0.75) = 77.96 degrees (coefficients of Tietze and Schenk's table, from
// memory). Two equals so far apart lose 20 log10 cos(38.98 degrees) = 2.19 dB. The
// high-pass also delays its pass band: with the woofer inverted and later by what is
// left to half a turn, 102.04 degrees, both stay together over the band.
func TestHighPassTurnsThePhase(t *testing.T) {
	a := inStep(t, 4)
	a.Protection = layout.Protection{Family: "butterworth", Order: 4, Corner: 150}
	_, w := withWoofer(t, a)
	turned := math.Atan(0.5*0.7654/0.75) + math.Atan(0.5*1.8478/0.75)
	if want := -20 * math.Log10(math.Cos(turned/2)); math.Abs(w.Loss-want) > 0.1 {
		t.Errorf("loses %.3f dB, want about %.3f", w.Loss, want)
	}
	if want := (math.Pi - turned) / (2 * math.Pi * 300); math.Abs(w.Finer.Delay-want) > 0.02*want || w.Finer.Invert == w.Invert {
		t.Errorf("finer: %+v, want about %g s", w.Finer, want)
	}
	if w.Finer.Loss > 0.01 || w.Loss > w.OtherLoss {
		t.Errorf("finer %g dB, as it is %g, the other way %g", w.Finer.Loss, w.Loss, w.OtherLoss)
	}
	if len(w.Warnings) != 1 {
		t.Fatalf("warns: %+v", w.Warnings)
	}
	if f := w.Warnings[0].Fact.(timing.CrossoverLoss); *f.Finer != w.Finer || !f.Other || f.Loss != w.Loss || f.Meets != w.Meets {
		t.Errorf("finds %+v", f)
	}
}

func TestWooferWarns(t *testing.T) {
	a := loudDemo(t)
	a.Woofer = layout.Woofer{Present: true, At: r3.Vec{X: -0.5, Z: 0.2}, Crossover: 60, Order: 4}
	p, w := withWoofer(t, a)
	if !(p.Protection.Corner > 60) || !slices.ContainsFunc(w.Warnings, func(f timing.Finding) bool { return f.Code == "crossover_low" }) {
		t.Errorf("%+v above %g Hz", w.Warnings, p.Protection.Corner)
	}
}

// TestHearingWithTheWoofer: a woofer that drowns the array is a point source behind a
// low-pass of 1/(1 + x^4) of the pressure (Linkwitz 1976), half the pressure of its
// sensitivity in open air: its pink noise is summed by hand in third octaves, with the
// weights of IEC 61672-1. What ears may stand of it is NIOSH's, at whatever level the
// array alone has.
func TestHearingWithTheWoofer(t *testing.T) {
	for _, test := range []struct {
		name         string
		array, gain  float64 // dB: the drivers' sensitivity, the woofer's gain
		noise        bool    // is warned of
		lowest, most float64 // dBA
	}{
		{"both quiet", 1, -30, false, 40, 75},
		{"woofer loud", 1, 10, true, 85, 120},
		{"both loud", 88, 10, true, 85, 120},
	} {
		t.Run(test.name, func(t *testing.T) {
			a := inStep(t, 4)
			a.Driver.Sensitivity, a.Wiring.Voltage = test.array, 2.83
			a.Woofer.Sensitivity, a.Woofer.Gain, a.Woofer.Crossover = 100, test.gain, 1000
			p := plan(t, a)
			far := r3.Norm(r3.Sub(a.Spot, a.Woofer.At))
			var frequency, level []float64
			for n := -17; n <= 13; n++ { // 20 Hz to 20 kHz
				hz := 1000 * math.Pow(10, float64(n)/10)
				frequency = append(frequency, hz)
				level = append(level, 100+test.gain-20*math.Log10(2*far*(1+math.Pow(hz/1000, 4)))-10*math.Log10(31))
			}
			g := p.Maximum
			want := exposure.Level(frequency, level)
			if test.array == 1 && math.Abs(g.Noise-want) > 0.25 { // the ends of the band are cut otherwise
				t.Errorf("%g dBA, want %g", g.Noise, want)
			}
			if !(g.Noise >= test.lowest && g.Noise <= test.most) {
				t.Errorf("%g dBA, want %g to %g", g.Noise, test.lowest, test.most)
			}
			if hours := 8 * math.Pow(2, (85-g.Noise)/3); g.Noise >= 80 && math.Abs(g.Hours-hours) > 1e-9 || g.Noise < 80 && !math.IsInf(g.Hours, 1) {
				t.Errorf("%g hours at %g dBA, want %g", g.Hours, g.Noise, hours)
			}
			f, found := finding(p, "hearing")
			if found != test.noise {
				t.Fatalf("warns: %+v", p.Warnings)
			}
			if found && f.Fact != (timing.HearingRisk{ByNoise: true, WithWoofer: true, Volt: 2.83, Noise: g.Noise, Tone: f.Fact.(timing.HearingRisk).Tone, Hours: g.Hours}) {
				t.Errorf("finds %+v", f)
			}
		})
	}
}

func TestWooferErrors(t *testing.T) {
	p := plan(t, plain(t))
	if _, err := timing.WithWoofer(&p.Spot); !errors.Is(err, timing.ErrWoofer) {
		t.Errorf("without a woofer: %v", err)
	}
	p.Array.Woofer = layout.Woofer{Present: true, At: p.Array.Spot, Crossover: 300, Order: 4}
	if _, err := timing.WithWoofer(&p.Spot); !errors.Is(err, timing.ErrWoofer) {
		t.Errorf("at the spot: %v", err)
	}
}

// TestProcessorWithWoofer: the channels get the crossover's high-pass and wait for the
// woofer, which comes last; both sides of the coefficients are half at the crossover
// (Linkwitz 1976).
func TestProcessorWithWoofer(t *testing.T) {
	a := demo(t)
	without := plan(t, a)
	before, err := timing.Processor(without, nil)
	if err != nil {
		t.Fatal(err)
	}
	a.Woofer = layout.Woofer{Present: true, At: r3.Vec{X: -3, Z: 0.3}, Crossover: 300, Order: 4, Gain: -2}
	p, w := withWoofer(t, a)
	rows, err := timing.Processor(p, nil)
	if err != nil {
		t.Fatal(err)
	}
	if len(rows) != len(before)+1 || w.ArrayDelay == 0 {
		t.Fatalf("%d rows, %d before; array waits %g s", len(rows), len(before), w.ArrayDelay)
	}
	half := func(filters []timing.ProcessorFilter, name string) {
		var chain biquad.Chain
		for _, f := range filters {
			if f.Name == name {
				chain = append(chain, f.Coefficients)
			}
		}
		h := make([]complex128, 1)
		chain.Fill(h, []float64{300}, 48000)
		if got, want := 20*math.Log10(cmplx.Abs(h[0])), -20*math.Log10(2); len(chain) != 2 || math.Abs(got-want) > 1e-9 {
			t.Errorf("%s: %d sections, %g dB, want %g", name, len(chain), got, want)
		}
	}
	for i, r := range before {
		got := rows[i]
		if waits := got.Exact - p.Rounding.Common; math.Abs(waits-(r.Exact-without.Rounding.Common)-w.ArrayDelay) > 1e-15 || got.Gain != r.Gain || got.Name != "" || len(got.Filters) != len(r.Filters)+2 {
			t.Errorf("channel %+v", got)
		}
	}
	half(rows[0].Filters, "crossover high-pass")
	last := rows[len(rows)-1]
	if last.Name != timing.WooferName || last.Channel != len(rows) || last.Delay != w.Delay || math.Abs(last.Exact-p.Rounding.Common) > 1e-12 || last.Gain != -2 || last.Invert != w.Invert {
		t.Errorf("woofer %+v", last)
	}
	half(last.Filters, "crossover low-pass")
}

func ExampleWithWoofer() {
	d := design.Default()
	d.Woofer = design.Woofer{Present: true, At: r3.Vec{X: -0.5, Y: 0.3, Z: 0.1}, Crossover: 450, Order: 4}
	a, err := layout.Build(d)
	if err != nil {
		fmt.Println(err)
		return
	}
	p, err := timing.Make(context.Background(), a)
	if err != nil {
		fmt.Println(err)
		return
	}
	w, err := timing.WithWoofer(&p.Spot)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("woofer heard after %.2f ms, array after %.2f ms: the array waits %.2f ms\n",
		1000*w.Arrival, 1000*w.ArrayArrival, 1000*w.ArrayDelay)
	// Output: woofer heard after 6.84 ms, array after 5.99 ms: the array waits 0.85 ms
}

func BenchmarkWithWoofer(b *testing.B) {
	a := demo(b)
	a.Woofer = layout.Woofer{Present: true, At: r3.Vec{X: -0.5, Z: 0.2}, Crossover: 300, Order: 4}
	p := plan(b, a)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := timing.WithWoofer(&p.Spot); err != nil {
			b.Fatal(err)
		}
	}
}
