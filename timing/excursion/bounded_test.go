package excursion_test

import (
	"math"
	"testing"

	"pappus/timing/excursion"
)

// TestBounded: the impulse response of the closed box, added up step by step, has the integral
// that the closed form says; and the signal that follows its signs backwards reaches the bound.
func TestBounded(t *testing.T) {
	for _, c := range []struct {
		name string
		q    float64
	}{{"overdamped", 0.4}, {"critical", 0.5}, {"flat", math.Sqrt(0.5)}, {"one", 1}, {"rings", 3}} {
		t.Run(c.name, func(t *testing.T) {
			d := excursion.Driver{BL: 2.1, Mass: 0.75e-3, DCOhm: 7.1, Resonance: 200, Q: c.q}
			const most = 1.5e-3
			w := 2 * math.Pi * d.Resonance
			h := func(s float64) float64 { // of x'' + w/Q x' + w^2 x = Bl/(Re Mms) v
				force := d.BL / (d.DCOhm * d.Mass)
				switch z := 1 / (2 * d.Q); {
				case z < 1:
					wd := w * math.Sqrt(1-z*z)
					return force / wd * math.Exp(-z*w*s) * math.Sin(wd*s)
				case z == 1:
					return force * s * math.Exp(-w*s)
				default:
					b := w * math.Sqrt(z*z-1)
					return force / b * math.Exp(-z*w*s) * math.Sinh(b*s)
				}
			}
			sum, step := 0.0, 1e-7
			for s := step / 2; s < 0.2; s += step {
				sum += math.Abs(h(s)) * step
			}
			volt := d.Bounded(most)
			if got := volt * sum / most; math.Abs(got-1) > 1e-5 {
				t.Errorf("%.4f V moves the cone %.6f times as far as allowed", volt, got)
			}
			// What a sine of that peak does is less, at any frequency.
			for hz := 1.0; hz < 2000; hz *= 1.01 {
				if x := d.Excursion(hz) * volt / math.Sqrt2; x > most*(1+1e-9) {
					t.Fatalf("a sine of %.1f Hz moves it %.3g m", hz, x)
				}
			}
		})
	}
	known := excursion.Driver{BL: 2.1, Mass: 0.75e-3, DCOhm: 7.1, Resonance: 200, Q: 0.7}
	for _, c := range []struct {
		name string
		d    excursion.Driver
		most float64
	}{{"unknown", excursion.Driver{}, 1e-3}, {"no reach", known, 0}, {"endless", known, math.Inf(1)}} {
		if v := c.d.Bounded(c.most); !math.IsInf(v, 1) {
			t.Errorf("%s: %v", c.name, v)
		}
	}
}
