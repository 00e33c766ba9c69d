package excursion_test

import (
	"errors"
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

// Small 1972, part 1: the reference efficiency in a half space is rho/(2 pi c)
// (Bl Sd/Mms)^2/Re; the level at 1 m of the power that it makes of 2.83 V is the
// sensitivity.
func TestSensitivity(t *testing.T) {
	const density, speed, area = 1.2, 343.2, 8e-4
	efficiency := density / (2 * math.Pi * speed) * math.Pow(small.BL*area/small.Mass, 2) / small.DCOhm
	watt := efficiency * 2.83 * 2.83 / small.DCOhm
	pascal := math.Sqrt(watt * density * speed / (2 * math.Pi))
	if got, want := small.Sensitivity(density, area), 20*math.Log10(pascal/20e-6); math.Abs(got-want) > 1e-9 {
		t.Errorf("%.4f dB, want %.4f", got, want)
	}
}

// Without a high-pass: Q/sqrt(1 - 1/4Q^2) times the value at rest, at sqrt(1 -
// 1/2Q^2) of the resonance, where Q is above 1/sqrt 2; else it only grows
// downwards (Small 1972, and any text on resonance).
func TestPeakWithoutHighPass(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := draw(t)
		rest := d.BL * 5 * math.Sqrt2 / (d.DCOhm * d.Mass * math.Pow(2*math.Pi*d.Resonance, 2))
		hz, metre := d.Peak(5, crossover.Filter{})
		wantHz, want := 0.0, rest
		if d.Q > 1/math.Sqrt2 {
			wantHz = d.Resonance * math.Sqrt(1-1/(2*d.Q*d.Q))
			want = rest * d.Q / math.Sqrt(1-1/(4*d.Q*d.Q))
		}
		if math.Abs(metre/want-1) > 1e-6 {
			t.Fatalf("%g m, want %g m", metre, want)
		}
		if d.Q > 0.8 && math.Abs(hz/wantHz-1) > 1e-3 || d.Q < 0.7 && hz != 0 {
			t.Fatalf("at %g Hz, want %g Hz", hz, wantHz)
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
		_, free := d.Peak(4, crossover.Filter{})
		most := free * rapid.Float64Range(0.1, 0.9).Draw(t, "share")
		corner, err := d.LeastCorner(family, order, 4, most)
		if errors.Is(err, excursion.ErrCorner) {
			return
		}
		if err != nil {
			t.Fatal(err)
		}
		sweep := func(corner float64) float64 {
			f, err := crossover.New(crossover.HighPass, family, order, corner)
			if err != nil {
				t.Fatal(err)
			}
			peak := 0.0
			for hz := 0.5; hz < 30000; hz *= 1.01 {
				peak = max(peak, 4*d.Excursion(hz)*cmplx.Abs(f.Response(hz)))
			}
			return peak
		}
		if peak := sweep(corner); peak > most*(1+1e-6) || peak < most*(1-1e-3) && corner > excursion.LowestCorner {
			t.Fatalf("%v of order %d at %g Hz: %g m of %g m", family, order, corner, peak, most)
		}
		if corner > 2 && sweep(corner*0.99) <= most {
			t.Fatalf("%v of order %d: %g Hz would do as well as %g", family, order, corner*0.99, corner)
		}
	})
}

func TestNoHighPassNeeded(t *testing.T) {
	_, free := small.Peak(2, crossover.Filter{})
	if hz, err := small.LeastCorner(crossover.Butterworth, 2, 2, free*1.01); hz != 0 || err != nil {
		t.Errorf("%g Hz, %v", hz, err)
	}
}

func TestLimits(t *testing.T) {
	high, err := crossover.New(crossover.HighPass, crossover.Butterworth, 4, 200)
	if err != nil {
		t.Fatal(err)
	}
	frequency := []float64{20, 100, 240, 2000}
	got := make([]excursion.Limit, len(frequency))
	bounds := excursion.Bounds{Excursion: 0.4e-3, Power: 2, Volt: 5}
	small.Limits(got, frequency, crossover.Filter{}, bounds)
	for i, cause := range []excursion.Cause{excursion.ByExcursion, excursion.ByExcursion, excursion.ByExcursion, excursion.ByHeat} {
		if got[i].By != cause {
			t.Errorf("%g Hz: limited to %g V by %v, want %v", frequency[i], got[i].Volt, got[i].By, cause)
		}
	}
	if want := math.Sqrt(2 * 7.1); got[3].Volt != want {
		t.Errorf("2 W in 7.1 ohm: %g V, want %g V", got[3].Volt, want)
	}
	if reached := got[1].Volt * small.Excursion(100); math.Abs(reached-0.4e-3) > 1e-15 {
		t.Errorf("at the limit the cone moves by %g m", reached)
	}
	small.Limits(got, frequency, high, bounds)
	if got[0].By != excursion.ByAmplifier || got[0].Volt != 5 {
		t.Errorf("20 Hz behind a high-pass: %g V by %v", got[0].Volt, got[0].By)
	}
}

func TestErrors(t *testing.T) {
	corner := func(change func(*excursion.Driver), order int, volt, most float64) error {
		d := small
		change(&d)
		_, err := d.LeastCorner(crossover.Butterworth, order, volt, most)
		return err
	}
	keep := func(*excursion.Driver) {}
	tests := []struct {
		name string
		err  error
		want error
	}{
		{"no force factor", corner(func(d *excursion.Driver) { d.BL = 0 }, 2, 1, 1e-3), excursion.ErrDriver},
		{"no mass", corner(func(d *excursion.Driver) { d.Mass = math.NaN() }, 2, 1, 1e-3), excursion.ErrDriver},
		{"endless Q", corner(func(d *excursion.Driver) { d.Q = math.Inf(1) }, 2, 1, 1e-3), excursion.ErrDriver},
		{"no voltage", corner(keep, 2, 0, 1e-3), excursion.ErrLimit},
		{"no excursion", corner(keep, 2, 1, -1), excursion.ErrLimit},
		{"order 9", corner(keep, 9, 1, 1e-3), crossover.ErrFilter},
		{"hopeless", corner(keep, 1, 100, 1e-9), excursion.ErrCorner},
		{"bounds", excursion.Bounds{Excursion: 1e-3, Power: 0, Volt: 1}.Check(), excursion.ErrLimit},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			if !errors.Is(test.err, test.want) {
				t.Errorf("%v, want %v", test.err, test.want)
			}
		})
	}
}

func ExampleDriver_LeastCorner() {
	d := excursion.Driver{BL: 2.1, Mass: 1.4e-3, DCOhm: 7.1, Resonance: 240, Q: 0.95}
	hz, err := d.LeastCorner(crossover.Butterworth, 4, 3.5, 0.4e-3)
	fmt.Printf("%.0f Hz, %v\n", hz, err)
	// Output: 197 Hz, <nil>
}

func BenchmarkLeastCorner(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		small.LeastCorner(crossover.LinkwitzRiley, 8, 3.5, 0.4e-3)
	}
}

func BenchmarkLimits(b *testing.B) {
	f, err := crossover.New(crossover.HighPass, crossover.Butterworth, 4, 200)
	if err != nil {
		b.Fatal(err)
	}
	frequency, dst := make([]float64, 256), make([]excursion.Limit, 256)
	for i := range frequency {
		frequency[i] = 20 * math.Pow(1000, float64(i)/255)
	}
	b.ReportAllocs()
	for b.Loop() {
		small.Limits(dst, frequency, f, excursion.Bounds{Excursion: 1e-3, Power: 2, Volt: 5})
	}
}
