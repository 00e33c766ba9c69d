package recording

import (
	"errors"
	"math"
	"slices"
	"strings"
	"testing"

	"pappus/layout"
)

// TestTakeRates: rates from 1 kHz to 10 MHz are those of recordings.
func TestTakeRates(t *testing.T) {
	x := []float64{0.5, -0.4, 0.3, -0.2}
	for rate, good := range map[float64]bool{900: false, 1100: true, 0.9e7: true, 1.1e7: false} {
		if err := (Take{Rate: rate, Samples: x}).check(); (err == nil) != good || err != nil && !errors.Is(err, errTake) {
			t.Errorf("%g Hz: %v", rate, err)
		}
	}
}

// TestQuietWords: a level is told in decibels below full scale.
func TestQuietWords(t *testing.T) {
	x := slices.Repeat([]float64{1e-5, -1e-5}, 100)
	if err := sound(x, "it"); err == nil || !strings.Contains(err.Error(), "100 dB below full scale, must have less than 80") {
		t.Error(err)
	}
}

// TestClippedLayers: what counts as the top is a thousandth of the peak or two steps of 16 bits, and what it is held
// against is as much below that.
func TestClippedLayers(t *testing.T) {
	for _, c := range []struct {
		name       string
		peak, next float64 // values, of which there are 65 and 30
		want       bool
	}{
		{"below the top", 0.5, 0.49945, false},
		{"in the top", 0.5, 0.49955, true},
		{"in the layer below", 0.5, 0.49905, false},
		{"two layers below", 0.5, 0.49895, true},
		{"a faint one within two steps", 0.01, 0.01 - 1.8/32768, true},
		{"a faint one below two steps", 0.01, 0.01 - 2.2/32768, false},
	} {
		x := slices.Concat(slices.Repeat([]float64{c.peak}, 65), slices.Repeat([]float64{c.next}, 30), []float64{-c.peak})
		if got := Clipped(x) > 0; got != c.want {
			t.Errorf("%s: %v", c.name, got)
		}
	}
}

// TestMicrophoneRange: a microphone that is 200 dB off is none.
func TestMicrophoneRange(t *testing.T) {
	for level, good := range map[float64]bool{199: true, -199: true, 201: false, -201: false} {
		err := Options{Microphone: []layout.MicrophonePoint{{Frequency: 100, Level: level}}}.checkMicrophone()
		if (err == nil) != good {
			t.Errorf("%g dB: %v", level, err)
		}
	}
}

// TestGateRange: a gate lasts from a period of the highest tone to half of what is heard after the sweep; the usual one
// is 10 ms, or a period of the lowest tone if that is longer.
func TestGateRange(t *testing.T) {
	s := seldom(t)
	for _, c := range []struct {
		gate, span, start, want float64 // 0: refused
	}{
		{0, 0.4, 200, 0.01}, {0, 0.4, 50, 0.02}, {0, 0.012, 200, 0.006},
		{0.19, 0.4, 200, 0.19}, {0.21, 0.4, 200, 0}, {1.1 / s.Stop, 0.4, 200, 1.1 / s.Stop}, {0.9 / s.Stop, 0.4, 200, 0},
	} {
		s.Start = c.start
		got, err := Options{Gate: c.gate}.gate(s, c.span)
		if math.Abs(got-c.want) > 1e-12 || (err == nil) != (c.want > 0) {
			t.Errorf("%g s of %g s: %g, %v", c.gate, c.span, got, err)
		}
	}
}

// TestWire: what the wire has is told over the sweep at full scale, and by how much the recorder's clock is fast in
// millionths.
func TestWire(t *testing.T) {
	const rate, fast = 8000.0, 120.0
	s := seldom(t)
	x := s.Samples(rate * (1 + fast/1e6))
	wire := make([]float64, len(x))
	for i, v := range x {
		wire[i] = -v / 2
	}
	m, err := Analyse(Take{Rate: rate, Samples: x, Reference: wire}, s, Options{})
	if err != nil {
		t.Fatal(err)
	}
	if want := 20 * math.Log10(0.5); math.Abs(m.Wire-want) > 0.01 || !m.WireInverted || math.Abs(m.Drift-fast) > 1 {
		t.Errorf("%.3f dB, upside down %v, %.2f millionths; want %.3f, true, %g", m.Wire, m.WireInverted, m.Drift, want, fast)
	}
}
