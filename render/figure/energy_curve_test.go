package figure

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/plot/vg"
	"pgregory.net/rapid"
)

// pair is two impulses 0.5 ms apart, the second half as strong.
func pair() []float64 {
	h := make([]float64, 480)
	h[48], h[72] = 1, 0.5
	return h
}

func energyOf(t *testing.T, samples []float64, rate int) energy {
	t.Helper()
	e, ok := newEnergy(Sound{Samples: samples}, rate)
	if !ok {
		t.Fatal("no energy")
	}
	return e
}

func TestPairHasTwoPeaks(t *testing.T) {
	e := energyOf(t, pair(), testRate)
	var peaks []int
	for i := 1; i < len(e.smooth)-1; i++ {
		if e.smooth[i] > e.smooth[i-1] && e.smooth[i] > e.smooth[i+1] {
			peaks = append(peaks, i)
		}
	}
	if len(peaks) != 2 || e.after(peaks[0]) != 0 || math.Abs(e.after(peaks[1])-0.5e-3) > 1e-12 {
		t.Fatalf("peaks at samples %v, the first arrival at %d", peaks, e.first)
	}
	if d := 10 * math.Log10(e.smooth[peaks[0]]/e.smooth[peaks[1]]); math.Abs(d-6.0206) > 1e-4 {
		t.Errorf("the second lies %.4f dB lower", d)
	}
	for _, c := range []struct{ share, want float64 }{{0.5, 0}, {0.79, 0}, {0.81, 0.5e-3}, {0.99, 0.5e-3}} {
		if have := e.within(c.share); math.Abs(have-c.want) > 1e-12 {
			t.Errorf("%g of the energy within %g s, want %g", c.share, have, c.want)
		}
	}
	if math.Abs(e.toCome[60]-0.2) > 1e-12 {
		t.Errorf("between the two %g is to come, want 0.2", e.toCome[60])
	}
}

// On the page the peaks stand where the axis has 0 and 0.5 ms.
func TestPairOnThePage(t *testing.T) {
	all := energies{all: []energy{energyOf(t, pair(), testRate)}}
	all.settle()
	if all.time.high != 0.005 {
		t.Errorf("the axis ends at %g s, want 5 ms", all.time.high)
	}
	p := panel{vg.Rectangle{Max: vg.Point{X: 525, Y: 60}}} // 100 points to 1 ms, 1 to 1 dB
	line, integral := all.points(p, all.all[0])
	for _, want := range []vg.Point{{X: 25, Y: 60}, {X: 75, Y: 60 - 6.0206}} {
		found := false
		for _, at := range line {
			found = found || math.Hypot(float64(at.X-want.X), float64(at.Y-want.Y)) < 1e-3
		}
		if !found {
			t.Errorf("the line does not pass %v", want)
		}
	}
	if at := integral[0]; at.Y != 60 {
		t.Errorf("the integral begins at %v", at)
	}
}

func TestBackwardIntegralFalls(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		samples := rapid.SliceOfN(rapid.Float64Range(-1, 1), 1, 200).Draw(t, "samples")
		e, ok := newEnergy(Sound{Samples: samples}, testRate)
		if !ok || e.silent {
			t.Skip("silence")
		}
		if e.toCome[0] != 1 {
			t.Errorf("it begins at %g", e.toCome[0])
		}
		for i := 1; i < len(e.toCome); i++ {
			if e.toCome[i] > e.toCome[i-1] {
				t.Fatalf("it rises at sample %d", i)
			}
		}
		if s := floats.Sum(e.smooth); s > 1+1e-12 {
			t.Errorf("smoothing makes energy: %g", s)
		}
	})
}

// The backward integral of an exponential decay is a straight line in dB, as
// steep as the decay (Schroeder 1965).
func TestBackwardIntegralOfADecay(t *testing.T) {
	const reverberation = 0.1 // s for 60 dB
	h := make([]float64, testRate)
	for i := range h {
		h[i] = math.Pow(10, -3*float64(i)/(reverberation*testRate))
	}
	e := energyOf(t, h, testRate)
	for i := 0; i < testRate/10; i += 480 {
		want := -60 * float64(i) / (reverberation * testRate)
		if have := ratioLevel(e.toCome[i]); math.Abs(have-want) > 1e-6 {
			t.Errorf("sample %d: %.6f dB, want %.6f", i, have, want)
		}
	}
}

func TestFirstArrival(t *testing.T) {
	h := pair()
	h[40] = 0.09 // 20.9 dB below the greatest
	if e := energyOf(t, h, testRate); e.first != 48 {
		t.Errorf("at sample %d, want 48", e.first)
	}
	h[40] = 0.11 // 19.2 dB below
	if e := energyOf(t, h, testRate); e.first != 40 {
		t.Errorf("at sample %d, want 40", e.first)
	}
}

func TestSmoothing(t *testing.T) {
	const rate, middle = 80000, 50 // 0.05 ms are 4 samples
	square := make([]float64, 100)
	square[middle] = 1
	out := smoothed(square, rate)
	for _, i := range []int{middle - 2, middle + 2} {
		if r := out[i] / out[middle]; math.Abs(r-0.5) > 1e-12 {
			t.Errorf("0.025 ms from the middle: %g of it, want half", r)
		}
	}
	if s := floats.Sum(out); math.Abs(s-1) > 1e-12 {
		t.Errorf("energy %g, want 1", s)
	}
}

func TestExtent(t *testing.T) {
	for _, c := range []struct {
		name string
		last float64 // s, of an echo as strong as the first
		want float64
	}{{"short", 0.001, 0.005}, {"some", 0.0077, 0.008}, {"a room", 0.035, 0.035}, {"long", 0.5, 0.05}} {
		h := make([]float64, testRate)
		h[0], h[int(c.last*testRate)] = 1, 1
		e := energies{all: []energy{energyOf(t, h, testRate)}}
		if e.settle(); math.Abs(e.time.high-c.want) > 1e-12 {
			t.Errorf("%s: to %g s, want %g", c.name, e.time.high, c.want)
		}
	}
}

// Samples denser than the page keep their peaks.
func TestDensePeaks(t *testing.T) {
	const rate = 1_000_000
	h := make([]float64, 30000)
	h[100], h[100+15001] = 1, 1
	e := energies{all: []energy{energyOf(t, h, rate)}}
	e.settle()
	line, _ := e.points(panel{vg.Rectangle{Max: vg.Point{X: 600, Y: 60}}}, e.all[0])
	top := 0
	for i := 1; i < len(line)-1; i++ {
		if line[i].Y > 59.9 && (line[i-1].Y <= 59.9) {
			top++
		}
	}
	if top != 2 || len(line) > 2400 {
		t.Errorf("%d points with %d peaks", len(line), top)
	}
}
