package recording_test

import (
	"fmt"
	"math"
	"testing"

	"pappus/layout"
	"pappus/testdata/reference"
	"pappus/timing/recording"
	"pappus/timing/sweep"
)

// TestHarmonics sends a sweep through a known polynomial. What a tone of amplitude A becomes
// follows from the powers of a cosine (Abramowitz and Stegun, Handbook of Mathematical
// Functions, 4.3.27 and 22.3.15): the k-th harmonics stand L ln k ahead (Farina, AES 108th
// Convention, 2000, preprint 5093). Within 0.5 dB from the second to the fifth.
func TestHarmonics(t *testing.T) {
	const a, twice = 0.5, 2 * rate
	a2, a3, a4, a5 := 0.05, 0.08, 0.4, 0.8
	s := usual(t, 6)
	x := scaled(s.Samples(twice), a)
	for i, v := range x {
		x[i] = v + v*v*(a2+v*(a3+v*(a4+v*a5)))
	}
	p := func(k int) float64 { return math.Pow(a, float64(k)) }
	first := a + 3*a3*p(3)/4 + 5*a5*p(5)/8
	want := map[int]float64{
		2: (a2*p(2)/2 + a4*p(4)/2) / first,
		3: (a3*p(3)/4 + 5*a5*p(5)/16) / first,
		4: a4 * p(4) / 8 / first,
		5: a5 * p(5) / 16 / first,
	}
	m, err := recording.Analyse(recording.Take{Rate: twice, Samples: noisy(x, a, 75, 1)}, s, recording.Options{})
	if err != nil {
		t.Fatal(err)
	}
	if len(m.Harmonics) != 4 {
		t.Fatalf("%d harmonics", len(m.Harmonics))
	}
	for _, h := range m.Harmonics {
		count := 0
		for f, hz := range m.Frequency {
			if math.IsNaN(h.Level[f]) {
				if hz > m.Low && float64(h.Order)*hz < m.High {
					t.Errorf("harmonic %d of %.0f Hz: nothing", h.Order, hz)
				}
				continue
			}
			if hz < 150 || hz > 3000 {
				continue // what is above half the rate folds back in a digital nonlinearity
			}
			count++
			if off := h.Level[f] - 20*math.Log10(want[h.Order]); math.Abs(off) > 0.5 || h.Floor[f] > h.Level[f]-20 {
				t.Errorf("harmonic %d of %.0f Hz: off by %.2f dB, floor %.1f dB", h.Order, hz, off, h.Floor[f])
			}
		}
		if count < 100 {
			t.Errorf("harmonic %d: only %d frequencies", h.Order, count)
		}
	}
}

// TestNoHarmonics: what is linear has none above the floor of its noise.
func TestNoHarmonics(t *testing.T) {
	m, err := recording.Analyse(take(t, 4, systems[2], 0.5, 50, 0, true), usual(t, 4), recording.Options{})
	if err != nil {
		t.Fatal(err)
	}
	for _, h := range m.Harmonics {
		var level, floor, count float64
		for f := range m.Frequency {
			if !math.IsNaN(h.Level[f]) {
				level, floor, count = level+math.Pow(10, h.Level[f]/10), floor+math.Pow(10, h.Floor[f]/10), count+1
			}
		}
		for f, v := range h.Clear() {
			if !math.IsNaN(v) {
				t.Errorf("harmonic %d stands out at %.0f Hz, by %.1f dB", h.Order, m.Frequency[f], v-h.Floor[f])
			}
		}
		if over := 10 * math.Log10(level/floor); math.Abs(over) > 3 {
			t.Errorf("harmonic %d: %.1f dB over the noise", h.Order, over)
		}
	}
}

// TestClear: a harmonic stands out where it does so for a third of an octave, no less.
func TestClear(t *testing.T) {
	h := recording.Harmonic{Level: make([]float64, 60), Floor: make([]float64, 60)}
	for i := range h.Level {
		if h.Level[i] = -80; i >= 10 && i < 26 || i >= 40 && i < 55 {
			h.Level[i] = -60
		}
		h.Floor[i] = -75
	}
	for i, v := range h.Clear() {
		if want := i >= 10 && i < 26; want != !math.IsNaN(v) || want && v != -60 {
			t.Errorf("at %d: %g", i, v)
		}
	}
	if got := (recording.Harmonic{}).Clear(); len(got) != 0 {
		t.Errorf("of nothing: %v", got)
	}
}

// TestReference holds a response against an independent deconvolution in numpy: see
// testdata/reference/sweep.py, which makes the same sweep, filter and comb by itself.
func TestReference(t *testing.T) {
	rows, err := reference.Table("sweep.csv")
	if err != nil {
		t.Fatal(err)
	}
	s, err := sweep.New(40, 20000, 2)
	if err != nil {
		t.Fatal(err)
	}
	y := make([]float64, 0)
	x := scaled(s.Samples(rate), 0.5)
	const delay, echo = 137, 22 // samples
	for i := range x {
		v := 0.0
		if i >= delay {
			v = x[i-delay]
		}
		if i >= delay+echo {
			v += 0.5 * x[i-delay-echo]
		}
		y = append(y, v)
	}
	chain.Filter(y, y)
	m, err := recording.Analyse(recording.Take{Rate: rate, Samples: y, Reference: x}, s, recording.Options{Gate: 0.1})
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range rows {
		hz := row.Float("frequency_hz")
		for f := range m.Frequency[1:] {
			if m.Frequency[f+1] < hz || m.Frequency[f] > hz {
				continue
			}
			share := math.Log(hz/m.Frequency[f]) / math.Log(m.Frequency[f+1]/m.Frequency[f])
			got := m.Whole.Level[f] + share*(m.Whole.Level[f+1]-m.Whole.Level[f])
			bend := math.Abs(m.Whole.Level[f+1]-2*m.Whole.Level[f]+m.Whole.Level[max(f-1, 0)]) / 4 // between two frequencies
			if want := row.Float("level_db"); math.Abs(got-want) > 0.05+bend {
				t.Errorf("%g Hz: %.3f dB, want %.3f", hz, got, want)
			}
			break
		}
	}
}

// TestMicrophone: a microphone's own response is taken out.
func TestMicrophone(t *testing.T) {
	o := recording.Options{Microphone: []layout.MicrophonePoint{{Frequency: 100, Level: -1}, {Frequency: 1000, Level: 0}, {Frequency: 20000, Level: 3}}}
	x := take(t, 3, systems[0], 0.5, 60, 0, true)
	s := usual(t, 3)
	plain, err := recording.Analyse(x, s, recording.Options{})
	if err != nil {
		t.Fatal(err)
	}
	right, err := recording.Analyse(x, s, o)
	if err != nil {
		t.Fatal(err)
	}
	for f, hz := range plain.Frequency {
		want := math.Log(hz/1000) / math.Log(20) * 3
		if hz < 1000 {
			want = math.Log10(hz / 1000)
		}
		if got := plain.Whole.Level[f] - right.Whole.Level[f]; math.Abs(got-want) > 1e-9 {
			t.Fatalf("%.0f Hz: %.4f dB, want %.4f", hz, got, want)
		}
	}
	for _, bad := range [][]layout.MicrophonePoint{{{Frequency: 100, Level: 0}, {Frequency: 100, Level: 0}}, {{Frequency: -1, Level: 0}}, {{Frequency: 100, Level: math.NaN()}}} {
		if _, err := recording.Analyse(x, s, recording.Options{Microphone: bad}); err == nil {
			t.Errorf("%v passes", bad)
		}
	}
}

// TestEnergy: two sounds stand where they are and are as strong as they are.
func TestEnergy(t *testing.T) {
	m, err := recording.Analyse(take(t, 3, systems[3], 0.5, 60, 0, true), usual(t, 3), recording.Options{})
	if err != nil {
		t.Fatal(err)
	}
	time, level := m.Energy(0.0002)
	for _, want := range []struct{ at, level float64 }{{0.0071239, 0}, {0.0092609, 20 * math.Log10(0.6)}} {
		best := math.Inf(-1)
		for i := range time {
			if math.Abs(time[i]-want.at) < 0.0002 {
				best = max(best, level[i])
			}
		}
		if math.Abs(best-want.level) > 0.8 {
			t.Errorf("at %g s: %.2f dB, want %.2f", want.at, best, want.level)
		}
	}
	if math.Abs(m.At-0.0071239) > 2e-6 || m.Inverted || m.AtError > 1e-7 {
		t.Errorf("strongest sound at %.7f s (%.2g), inverted %v", m.At, m.AtError, m.Inverted)
	}
}

func ExampleAnalyse() {
	s, _ := sweep.New(100, 20000, 3)
	x := s.Samples(48000)
	heard := make([]float64, len(x))
	for i := range x[:len(x)-480] { // 10 ms later, half as strong
		heard[i+480] = x[i] / 2
	}
	m, err := recording.Analyse(recording.Take{Rate: 48000, Samples: heard, Reference: x}, s, recording.Options{})
	fmt.Println(err)
	fmt.Printf("%.3f ms, %.1f dB\n", 1000*m.At, m.Whole.Level[200])
	// Output:
	// <nil>
	// 10.000 ms, -6.0 dB
}

func BenchmarkAnalyse(b *testing.B) {
	for _, reference := range []bool{false, true} {
		b.Run(fmt.Sprintf("10 s/reference %v", reference), func(b *testing.B) {
			x, s := take(b, 10, systems[2], 0.5, 60, 20, reference), usual(b, 10)
			b.ReportAllocs()
			for b.Loop() {
				if _, err := recording.Analyse(x, s, recording.Options{}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
