package equaliser_test

import (
	"errors"
	"fmt"
	"math"
	"math/cmplx"
	"testing"

	"pappus/timing/biquad"
	"pappus/timing/equaliser"

	"pgregory.net/rapid"
)

// The cookbook's formulae worked out apart, by mpmath at 40 digits.
func TestCoefficients(t *testing.T) {
	tests := []struct {
		s    equaliser.Section
		rate float64
		want biquad.Section
	}{
		{equaliser.Section{Shape: equaliser.Peaking, Frequency: 1000, Q: 1.4, Gain: 6}, 48000,
			biquad.Section{B0: 1.0317962611279334, B1: -1.91954111759687698, B2: 0.904308501104669327, A1: -1.91954111759687698, A2: 0.936104762232602725}},
		{equaliser.Section{Shape: equaliser.Peaking, Frequency: 63, Q: 4, Gain: -9}, 44100,
			biquad.Section{B0: 0.99878701873480396, B1: -1.9961594894618825, B2: 0.997452886914337996, A1: -1.9961594894618825, A2: 0.996239905649141956}},
		{equaliser.Section{Shape: equaliser.LowShelf, Frequency: 200, Q: equaliser.ShelfQ, Gain: 4}, 48000,
			biquad.Section{B0: 1.00428061965105415, B1: -1.96684820958534167, B2: 0.963416421298848032, A1: -1.96700483707577463, A2: 0.967540413459469224}},
		{equaliser.Section{Shape: equaliser.HighShelf, Frequency: 6000, Q: 0.8, Gain: -5}, 48000,
			biquad.Section{B0: 0.651371052565336331, B1: -0.549995923363221512, B2: 0.224963798271964435, A1: -1.10503786009579276, A2: 0.431376787569872012}},
	}
	for _, test := range tests {
		t.Run(test.s.String(), func(t *testing.T) {
			got, err := test.s.Digital(test.rate)
			if err != nil {
				t.Fatal(err)
			}
			for _, c := range [][2]float64{{got.B0, test.want.B0}, {got.B1, test.want.B1}, {got.B2, test.want.B2}, {got.A1, test.want.A1}, {got.A2, test.want.A2}} {
				if math.Abs(c[0]-c[1]) > 1e-14 {
					t.Errorf("%.17g, want %.17g", c[0], c[1])
				}
			}
		})
	}
}

// analog is the cookbook's prototype, s in units of the section's frequency: the
// digital section is this on the axis that the bilinear transform bends.
func analog(e equaliser.Section, s complex128) complex128 {
	a := math.Pow(10, e.Gain/40)
	c := func(v float64) complex128 { return complex(v, 0) }
	switch root := math.Sqrt(a) / e.Q; e.Shape {
	case equaliser.Peaking:
		return (s*s + s*c(a/e.Q) + 1) / (s*s + s*c(1/(a*e.Q)) + 1)
	case equaliser.LowShelf:
		return c(a) * (s*s + s*c(root) + c(a)) / (c(a)*s*s + s*c(root) + 1)
	default:
		return c(a) * (c(a)*s*s + s*c(root) + 1) / (s*s + s*c(root) + c(a))
	}
}

func draw(t *rapid.T) equaliser.Section {
	return equaliser.Section{
		Shape:     equaliser.Shape(rapid.IntRange(0, 2).Draw(t, "shape")),
		Frequency: math.Exp(rapid.Float64Range(math.Log(20), math.Log(20000)).Draw(t, "ln Hz")),
		Q:         rapid.Float64Range(0.2, 12).Draw(t, "Q"),
		Gain:      rapid.Float64Range(-20, 20).Draw(t, "gain"),
	}
}

func TestSectionAgainstAnalog(t *testing.T) {
	const rate = 48000.0
	rapid.Check(t, func(t *rapid.T) {
		s := draw(t)
		b, err := s.Digital(rate)
		if err != nil {
			t.Fatal(err)
		}
		if !b.IsStable() {
			t.Fatalf("%v is not stable", s)
		}
		hz := math.Exp(rapid.Float64Range(math.Log(20), math.Log(23000)).Draw(t, "ln at"))
		bent := math.Tan(math.Pi*hz/rate) / math.Tan(math.Pi*s.Frequency/rate)
		want := analog(s, complex(0, bent))
		if got := b.At(hz, rate); cmplx.Abs(got/want-1) > 1e-6 { // cancellation near 0 Hz
			t.Fatalf("%v at %g Hz: %v, want %v", s, hz, got, want)
		}
	})
}

// TestGains: a peak has its gain at its frequency; a shelf half of it there, all
// at its end, none at the other (the cookbook's definitions).
func TestGains(t *testing.T) {
	const rate = 48000.0
	rapid.Check(t, func(t *rapid.T) {
		s := draw(t)
		b, err := s.Digital(rate)
		if err != nil {
			t.Fatal(err)
		}
		at := func(hz float64) float64 { return 20 * math.Log10(cmplx.Abs(b.At(hz, rate))) }
		want := map[equaliser.Shape][3]float64{ // at 0 Hz, its frequency, half the rate
			equaliser.Peaking:   {0, s.Gain, 0},
			equaliser.LowShelf:  {s.Gain, s.Gain / 2, 0},
			equaliser.HighShelf: {0, s.Gain / 2, s.Gain},
		}[s.Shape]
		for i, hz := range []float64{0, s.Frequency, rate / 2} {
			if math.Abs(at(hz)-want[i]) > 1e-5 {
				t.Fatalf("%v: %.8f dB at %g Hz, want %g", s, at(hz), hz, want[i])
			}
		}
	})
}

// TestOppositeGainsUndoEachOther holds for all three shapes of the cookbook.
func TestOppositeGainsUndoEachOther(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := draw(t)
		back := s
		back.Gain = -s.Gain
		c, err := equaliser.Chain([]equaliser.Section{s, back}, 48000)
		if err != nil {
			t.Fatal(err)
		}
		var h [1]complex128
		c.Fill(h[:], []float64{rapid.Float64Range(20, 20000).Draw(t, "Hz")}, 48000)
		if cmplx.Abs(h[0]-1) > 1e-6 {
			t.Fatalf("%v and back: %v", s, h[0])
		}
	})
}

func TestSectionErrors(t *testing.T) {
	good := equaliser.Section{Frequency: 1000, Q: 1, Gain: 3}
	tests := []struct {
		name   string
		change func(*equaliser.Section)
	}{
		{"0 Hz", func(s *equaliser.Section) { s.Frequency = 0 }},
		{"half the rate", func(s *equaliser.Section) { s.Frequency = 24000 }},
		{"no number", func(s *equaliser.Section) { s.Frequency = math.NaN() }},
		{"no Q", func(s *equaliser.Section) { s.Q = 0 }},
		{"gain", func(s *equaliser.Section) { s.Gain = 101 }},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			s := good
			test.change(&s)
			if _, err := equaliser.Chain([]equaliser.Section{good, s}, 48000); !errors.Is(err, equaliser.ErrSection) {
				t.Error(err)
			}
		})
	}
}

func ExampleSection_Digital() {
	s := equaliser.Section{Shape: equaliser.Peaking, Frequency: 1000, Q: 1.4, Gain: 6}
	b, err := s.Digital(48000)
	fmt.Printf("%v: b %.4f %.4f %.4f a 1 %.4f %.4f %v\n", s, b.B0, b.B1, b.B2, b.A1, b.A2, err)
	// Output: peaking at 1000 Hz, Q 1.40, +6.0 dB: b 1.0318 -1.9195 0.9043 a 1 -1.9195 0.9361 <nil>
}
