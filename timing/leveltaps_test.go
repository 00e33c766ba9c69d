package timing_test

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"pappus/timing"
	"pappus/timing/equaliser"
)

// TestCorrection sums the taps' response up one by one at frequencies of its own,
// and sets it against the shapes' levels where these are known: a peak has its gain
// at its middle, a shelf all of it far away and half of it, in dB, at its frequency
// (Audio EQ Cookbook).
func TestCorrection(t *testing.T) {
	tests := []struct {
		name    string
		section equaliser.Section
		hz, db  float64
	}{
		{"a peak", equaliser.Section{Shape: equaliser.Peaking, Frequency: 1500, Q: 2, Gain: 3}, 1500, 3},
		{"a low narrow dip", equaliser.Section{Shape: equaliser.Peaking, Frequency: 125, Q: 4, Gain: -9}, 125, -9},
		{"a low shelf", equaliser.Section{Shape: equaliser.LowShelf, Frequency: 2000, Q: equaliser.ShelfQ, Gain: -6}, 2000, -3},
		{"far below a low shelf", equaliser.Section{Shape: equaliser.LowShelf, Frequency: 4000, Q: equaliser.ShelfQ, Gain: -6}, 100, -6},
		{"a high shelf", equaliser.Section{Shape: equaliser.HighShelf, Frequency: 800, Q: equaliser.ShelfQ, Gain: -4}, 800, -2},
		{"far above a high shelf", equaliser.Section{Shape: equaliser.HighShelf, Frequency: 300, Q: equaliser.ShelfQ, Gain: 2}, 18000, 2},
	}
	for _, test := range tests {
		for _, rate := range []float64{44100, 96000} {
			t.Run(fmt.Sprintf("%s at %g Hz", test.name, rate), func(t *testing.T) {
				c, err := timing.Levelling{Sections: []equaliser.Section{test.section}}.Correction(rate)
				if err != nil {
					t.Fatal(err)
				}
				for name, h := range map[string]timing.Taps{"minimum": c.Minimum, "linear": c.Linear} {
					if got := tapLevel(h.Samples, test.hz/rate); math.Abs(got-test.db) > 0.06 || h.Off > 0.05 {
						t.Errorf("%s phase, %d taps: %.3f dB at %g Hz, want %g; says off by %.3f dB", name, len(h.Samples), got, test.hz, test.db, h.Off)
					}
				}
			})
		}
	}
}

// tapLevel returns the level in dB at a frequency over the rate.
func tapLevel(h []float64, share float64) float64 {
	var re, im float64
	for i, v := range h {
		sin, cos := math.Sincos(2 * math.Pi * math.Mod(share*float64(i), 1))
		re, im = re+v*cos, im-v*sin
	}
	return 20 * math.Log10(math.Hypot(re, im))
}

// TestCorrectionInTime: minimum phase has its energy at the beginning, linear phase
// is symmetric about the time by which it is late.
func TestCorrectionInTime(t *testing.T) {
	l, err := timing.Level(&plan(t, demo(t)).Spot)
	if err != nil {
		t.Fatal(err)
	}
	c, err := l.Correction(48000)
	if err != nil {
		t.Fatal(err)
	}
	early, all := 0.0, 0.0
	for i, v := range c.Minimum.Samples {
		all += v * v
		if i < 48 { // 1 ms
			early += v * v
		}
	}
	if early < 0.99*all || c.Minimum.Latency != 0 {
		t.Errorf("%.1f percent of the energy in the first millisecond, %g s late", 100*early/all, c.Minimum.Latency)
	}
	h := c.Linear.Samples
	for i := range h {
		if h[i] != h[len(h)-1-i] {
			t.Fatalf("tap %d is %g, its mirror %g", i, h[i], h[len(h)-1-i])
		}
	}
	if middle := (len(h) - 1) / 2; math.Abs(c.Linear.Latency*48000-float64(middle)) > 1e-9 {
		t.Errorf("%g s late, the middle is tap %d", c.Linear.Latency, middle)
	}
	if boost := l.Boost(); boost <= 0 || boost > 3 {
		t.Errorf("raised by %g dB", boost)
	}
}

// TestCorrectionOfNothing: no sections pass the sound as it is.
func TestCorrectionOfNothing(t *testing.T) {
	c, err := timing.Levelling{}.Correction(48000)
	if err != nil || len(c.Sections) != 0 || c.Minimum.Samples[0] != 1 || c.Linear.Samples[127] != 1 || c.Minimum.Off > 1e-12 {
		t.Errorf("%v, %v", c, err)
	}
}

func TestCorrectionErrors(t *testing.T) {
	l := timing.Levelling{Sections: []equaliser.Section{{Shape: equaliser.Peaking, Frequency: 5000, Q: 1, Gain: 1}}}
	if _, err := l.Correction(8000); !errors.Is(err, equaliser.ErrSection) {
		t.Errorf("got %v", err)
	}
}

func BenchmarkCorrection(b *testing.B) {
	l, err := timing.Level(&plan(b, demo(b)).Spot)
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := l.Correction(48000); err != nil {
			b.Fatal(err)
		}
	}
}

func ExampleLevelling_Correction() {
	l := timing.Levelling{Sections: []equaliser.Section{{Shape: equaliser.LowShelf, Frequency: 1000, Q: equaliser.ShelfQ, Gain: -4}}}
	c, err := l.Correction(48000)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("minimum phase: %d taps\n", len(c.Minimum.Samples))
	fmt.Printf("linear phase: %d taps, %.2f ms late\n", len(c.Linear.Samples), 1000*c.Linear.Latency)
	// Output:
	// minimum phase: 256 taps
	// linear phase: 511 taps, 5.31 ms late
}
