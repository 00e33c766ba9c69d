package excursion_test

import (
	"fmt"
	"math"
	"math/cmplx"
	"testing"

	"pappus/timing/crossover"
	"pappus/timing/excursion"

	"pgregory.net/rapid"
)

// small is a small wide-band driver of invented values.
var small = excursion.Driver{BL: 2.1, Mass: 1.4e-3, DCOhm: 7.1, Resonance: 240, Q: 0.95}

func draw(t *rapid.T) excursion.Driver {
	return excursion.Driver{
		BL:        rapid.Float64Range(0.5, 10).Draw(t, "Bl"),
		Mass:      rapid.Float64Range(0.5e-3, 50e-3).Draw(t, "Mms"),
		DCOhm:     rapid.Float64Range(2, 16).Draw(t, "Re"),
		Resonance: rapid.Float64Range(30, 400).Draw(t, "fc"),
		Q:         rapid.Float64Range(0.3, 2).Draw(t, "Qtc"),
	}
}

// TestExcursionAgainstMotion integrates the equations of motion and of the coil
// by Runge and Kutta's method until the start has died away, and reads the
// amplitude off the last period:
//
//	M x'' + R x' + k x = Bl i,  V = Re i + Bl x'
func TestExcursionAgainstMotion(t *testing.T) {
	d := small
	wc := 2 * math.Pi * d.Resonance
	loss := wc*d.Mass/d.Q - d.BL*d.BL/d.DCOhm // mechanical, what the coil does not damp
	if loss <= 0 {
		t.Fatal("the values do not fit together")
	}
	for _, hz := range []float64{40, 150, 240, 600} {
		w := 2 * math.Pi * hz
		force := func(time, x, v float64) float64 {
			current := (math.Sqrt2*3*math.Sin(w*time) - d.BL*v) / d.DCOhm
			return (d.BL*current - loss*v - d.Mass*wc*wc*x) / d.Mass
		}
		step := 1 / (hz * 4000)
		x, v, peak := 0.0, 0.0, 0.0
		periods := int(math.Ceil(0.08*hz)) + 2
		for i := range periods * 4000 {
			time := float64(i) * step
			k1x, k1v := v, force(time, x, v)
			k2x, k2v := v+step/2*k1v, force(time+step/2, x+step/2*k1x, v+step/2*k1v)
			k3x, k3v := v+step/2*k2v, force(time+step/2, x+step/2*k2x, v+step/2*k2v)
			k4x, k4v := v+step*k3v, force(time+step, x+step*k3x, v+step*k3v)
			x += step / 6 * (k1x + 2*k2x + 2*k3x + k4x)
			v += step / 6 * (k1v + 2*k2v + 2*k3v + k4v)
			if i >= (periods-1)*4000 {
				peak = max(peak, math.Abs(x))
			}
		}
		if got := 3 * d.Excursion(hz); math.Abs(got/peak-1) > 1e-5 {
			t.Errorf("%g Hz: %g m, the motion has %g m", hz, got, peak)
		}
	}
}

// Without a high-pass: Q/sqrt(1 - 1/4Q^2) times the value at rest where Q is above
// 1/sqrt 2; else it only grows downwards (Small 1972, and any text on resonance).
func TestPeakWithoutHighPass(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := draw(t)
		rest := d.BL * 5 * math.Sqrt2 / (d.DCOhm * d.Mass * math.Pow(2*math.Pi*d.Resonance, 2))
		metre, want := d.Peak(5, crossover.Filter{}), rest
		if d.Q > 1/math.Sqrt2 {
			want = rest * d.Q / math.Sqrt(1-1/(4*d.Q*d.Q))
		}
		if math.Abs(metre/want-1) > 1e-6 {
			t.Fatalf("%g m, want %g m", metre, want)
		}
	})
}

// TestLeastCorner: at the corner the cone keeps within Xmax at every frequency of
// a fine sweep and just reaches it; a corner a hair lower lets it go too far.
func TestLeastCorner(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := draw(t)
		family := rapid.SampledFrom([]crossover.Family{crossover.Butterworth, crossover.LinkwitzRiley, crossover.Bessel}).Draw(t, "family")
		order := rapid.SampledFrom(family.Orders()).Draw(t, "order")
		most := d.Peak(4, crossover.Filter{}) * rapid.Float64Range(0.1, 0.9).Draw(t, "share")
		corner, ok := d.LeastCorner(highPass(family, order), 4, most)
		if !ok {
			return
		}
		sweep := func(corner float64) float64 {
			f := crossover.New(crossover.HighPass, family, order, corner)
			peak := 0.0
			for hz := 0.5; hz < 30000; hz *= 1.01 {
				peak = max(peak, 4*d.Excursion(hz)*cmplx.Abs(f.Response(hz)))
			}
			return peak
		}
		if peak := sweep(corner); peak > most*(1+1e-6) || peak < most*(1-1e-3) && corner > 1 {
			t.Fatalf("%v of order %d at %g Hz: %g m of %g m", family, order, corner, peak, most)
		}
		if corner > 2 && sweep(corner*0.99) <= most {
			t.Fatalf("%v of order %d: %g Hz would do as well as %g", family, order, corner*0.99, corner)
		}
	})
}

func TestLeastCornerAtTheEnds(t *testing.T) {
	free, filter := small.Peak(2, crossover.Filter{}), highPass(crossover.Butterworth, 1)
	for _, test := range []struct {
		name     string
		most, hz float64
		ok       bool
	}{
		{"none needed", free * 1.01, 0, true},
		{"the lowest", free * (1 - 1e-7), 1, true},
		{"none will do", 1e-9, 0, false},
	} {
		t.Run(test.name, func(t *testing.T) {
			if hz, ok := small.LeastCorner(filter, 2, test.most); hz != test.hz || ok != test.ok {
				t.Errorf("%g Hz, %v", hz, ok)
			}
		})
	}
}

// TestNoCornerAbove20kHz: what a corner of 19 kHz keeps is kept, and what only one of 21
// kHz would keep is not.
func TestNoCornerAbove20kHz(t *testing.T) {
	first := crossover.New(crossover.HighPass, crossover.Butterworth, 1, 19000)
	if hz, ok := small.LeastCorner(first, 2, small.Peak(2, first)); !ok || math.Abs(hz-19000) > 1 {
		t.Errorf("%g Hz, %v", hz, ok)
	}
	if hz, ok := small.LeastCorner(first, 2, small.Peak(2, first.Moved(21000))); ok {
		t.Errorf("%g Hz", hz)
	}
}

func TestIsKnown(t *testing.T) {
	for name, change := range map[string]func(*excursion.Driver){
		"no force factor": func(d *excursion.Driver) { d.BL = 0 },
		"no mass":         func(d *excursion.Driver) { d.Mass = math.NaN() },
		"no resistance":   func(d *excursion.Driver) { d.DCOhm = -1 },
		"no resonance":    func(d *excursion.Driver) { d.Resonance = 0 },
		"endless Q":       func(d *excursion.Driver) { d.Q = math.Inf(1) },
	} {
		d := small
		if change(&d); d.IsKnown() || !small.IsKnown() {
			t.Error(name)
		}
	}
}

func highPass(family crossover.Family, order int) crossover.Filter {
	return crossover.New(crossover.HighPass, family, order, 200)
}

func TestLimit(t *testing.T) {
	bounds := excursion.Bounds{Excursion: 0.4e-3, Power: 2, Volt: 5}
	unknown := excursion.Driver{DCOhm: 7.1}
	tests := []struct {
		name     string
		driver   excursion.Driver
		hz       float64
		highPass crossover.Filter
		volt     float64
		by       excursion.Cause
	}{
		{"20 Hz", small, 20, crossover.Filter{}, 0.4e-3 / small.Excursion(20), excursion.ByExcursion},
		{"240 Hz", small, 240, crossover.Filter{}, 0.4e-3 / small.Excursion(240), excursion.ByExcursion},
		{"2 kHz", small, 2000, crossover.Filter{}, math.Sqrt(2 * 7.1), excursion.ByHeat},
		{"20 Hz behind a high-pass", small, 20, highPass(crossover.Butterworth, 4), 5, excursion.ByAmplifier},
		{"not known", unknown, 20, crossover.Filter{}, math.Sqrt(2 * 7.1), excursion.ByHeat},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			if volt, by := test.driver.Limit(test.hz, test.highPass, bounds); math.Abs(volt-test.volt) > 1e-12 || by != test.by {
				t.Errorf("%g V by %v, want %g V by %v", volt, by, test.volt, test.by)
			}
		})
	}
}

func ExampleDriver_LeastCorner() {
	d := excursion.Driver{BL: 2.1, Mass: 1.4e-3, DCOhm: 7.1, Resonance: 240, Q: 0.95}
	f := crossover.New(crossover.HighPass, crossover.Butterworth, 4, 1)
	hz, ok := d.LeastCorner(f, 3.5, 0.4e-3)
	fmt.Printf("%.0f Hz, %v\n", hz, ok)
	// Output: 197 Hz, true
}

func BenchmarkLeastCorner(b *testing.B) {
	f := highPass(crossover.LinkwitzRiley, 8)
	b.ReportAllocs()
	for b.Loop() {
		small.LeastCorner(f, 3.5, 0.4e-3)
	}
}
