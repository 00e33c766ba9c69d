package timing_test

import (
	"math"
	"math/cmplx"
	"testing"

	"pappus/layout"
	"pappus/timing"
	"pappus/timing/head"

	"gonum.org/v1/gonum/spatial/r3"
)

// heardWith returns what one ear hears of a plan at a place, with a woofer.
func heardWith(t testing.TB, p *timing.Plan, w *timing.Woofer, c timing.Case, place r3.Vec, frequency []float64) []complex128 {
	t.Helper()
	h, err := timing.NewHearing(&p.Spot, timing.Listening{Cases: []timing.Case{c}, Woofer: w}, []r3.Vec{place}, frequency)
	if err != nil {
		t.Fatal(err)
	}
	dst := [][]complex128{make([]complex128, len(frequency))}
	h.At(dst, place)
	return dst[0]
}

// TestWooferIsHeard: at the spot array and woofer sum to what the plan says of them, in
// the open, over a surface and in a room, with sensitivities and without.
func TestWooferIsHeard(t *testing.T) {
	for name, change := range map[string]func(*layout.Array){
		"in the open": func(*layout.Array) {},
		"over a surface": func(a *layout.Array) {
			a.Surface = layout.Surface{Present: true, Height: -1}
			a.Driver.Sensitivity, a.Woofer.Sensitivity = 82, 88
		},
		"in a room": func(a *layout.Array) {
			a.Room = layout.Room{Present: true, Size: r3.Vec{X: 5, Y: 4, Z: 2.6}, Body: r3.Vec{X: 2, Y: 1.5, Z: 0.8}, Order: 1}
		},
		"wires swapped": func(a *layout.Array) { a.Woofer.Invert = true },
		"order 2":       func(a *layout.Array) { a.Woofer.Order = 2 },
	} {
		t.Run(name, func(t *testing.T) {
			a := inStep(t, 4)
			change(a)
			p, w := withWoofer(t, a)
			for f, v := range heardWith(t, p, &w, timing.Aligned, a.Spot, w.Frequency) {
				if got := 20 * math.Log10(cmplx.Abs(v)); math.Abs(got-w.Sum[f]) > 1e-6 {
					t.Fatalf("%.0f Hz: %.6f dB, want %.6f", w.Frequency[f], got, w.Sum[f])
				}
			}
		})
	}
}

// TestWooferAsBuilt: without delays the woofer adds its own wave, as late as its way is
// long, to the array behind its high-pass; with an ideal point both arrive together.
func TestWooferAsBuilt(t *testing.T) {
	a := inStep(t, 4)
	p, w := withWoofer(t, a)
	frequency := []float64{60, 150, 300, 600, 1500}
	way := r3.Norm(r3.Sub(a.Spot, a.Woofer.At))
	both := heardWith(t, p, &w, timing.AsBuilt, a.Spot, frequency)
	array := heardWith(t, p, nil, timing.AsBuilt, a.Spot, frequency)
	var first float64
	for f, hz := range frequency {
		wave := (both[f] - w.HighPass.Response(hz)*array[f]) / w.LowPass.Response(hz) *
			cmplx.Rect(way, 2*math.Pi*hz*way/p.SpeedOfSound)
		if f == 0 {
			first = real(wave)
		}
		// Air takes two hundredths of a dB at most.
		if math.Abs(imag(wave)/real(wave)) > 1e-6 || math.Abs(real(wave)/first-1) > 0.003 {
			t.Errorf("%g Hz: the woofer alone is %v, want %g", hz, wave, first)
		}
	}
	if from, to := w.Span(&p.Spot, timing.IdealPoint, true, a.Spot); math.Abs(to-from) > 1e-9 {
		t.Errorf("with an ideal point from %g to %g s", from, to)
	}
	array0, woofer0 := w.Lags(&p.Spot, timing.AsBuilt)
	if array0 != 0 || woofer0 != 0 {
		t.Errorf("as built delays of %g and %g s", array0, woofer0)
	}
	from, to := w.Span(&p.Spot, timing.AsBuilt, true, a.Spot)
	least, most := p.Span(timing.AsBuilt, true, a.Spot)
	if late := way / p.SpeedOfSound; from != min(least, late) || to != max(most, late) {
		t.Errorf("as built from %g to %g s; the woofer comes at %g", from, to, late)
	}
}

// TestWooferIsHeardFromItsPlace: at low tones two ears hear what one hears without a head;
// at higher ones the ear on the woofer's side is the louder one.
func TestWooferIsHeardFromItsPlace(t *testing.T) {
	a := inStep(t, 4)
	a.Spot = r3.Vec{X: 2}
	a.Woofer.At, a.Woofer.Crossover, a.Woofer.Gain = r3.Vec{X: 2, Y: 1.5}, 1500, 40
	p, w := withWoofer(t, a)
	frequency := []float64{20, 1000}
	e, err := timing.NewEars(&p.Spot, timing.Listening{Cases: []timing.Case{timing.Aligned}, Woofer: &w}, []r3.Vec{a.Spot}, frequency)
	if err != nil {
		t.Fatal(err)
	}
	left, right := [][]complex128{make([]complex128, 2)}, [][]complex128{make([]complex128, 2)}
	e.At(left, right, a.Spot, r3.Vec{X: -1}) // it looks at the body, so the woofer is to its right
	one := heardWith(t, p, &w, timing.Aligned, a.Spot, frequency)
	// A rigid ball in the field of a low tone from r: the sum over n of (2n+1)/(n+1) (a/r)^n
	// P_n(+-1) of the pressure at the ear that faces it and the one that turns from it (the
	// static limit of the series in Duda and Martens 1998).
	ball := func(sign float64) (sum float64) {
		for n := range 6 {
			sum += float64(2*n+1) / float64(n+1) * math.Pow(sign*head.Radius/1.5, float64(n))
		}
		return sum
	}
	for ear, want := range map[*complex128]float64{&right[0][0]: ball(1), &left[0][0]: ball(-1)} {
		if got := cmplx.Abs(*ear) / cmplx.Abs(one[0]); math.Abs(got-want) > 0.003 {
			t.Errorf("at 20 Hz an ear hears %.4f of what one without a head does, want %.4f", got, want)
		}
	}
	if nearer := 20 * math.Log10(cmplx.Abs(right[0][1])/cmplx.Abs(left[0][1])); nearer < 3 {
		t.Errorf("at 1 kHz the nearer ear hears %.1f dB more", nearer)
	}
}

// TestNoWooferToHear: without one, or with the spot at it, the array is heard alone.
func TestNoWooferToHear(t *testing.T) {
	if w := timing.HeardWoofer(&plan(t, plain(t)).Spot); w != nil {
		t.Errorf("of no woofer: %+v", w)
	}
	a := inStep(t, 4)
	a.Woofer.At = a.Spot
	if w := timing.HeardWoofer(&plan(t, a).Spot); w != nil {
		t.Errorf("at the spot: %+v", w)
	}
	if w := timing.HeardWoofer(&plan(t, inStep(t, 8)).Spot); w == nil || w.Ring() < 0.01 {
		t.Errorf("beside the array: %+v", w)
	}
}
