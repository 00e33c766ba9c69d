package figure

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/floats"
	"pgregory.net/rapid"
)

const testRate = 48000

func sine(frequency float64, rate, samples int) []float64 {
	out := make([]float64, samples)
	for i := range out {
		out[i] = math.Sin(2 * math.Pi * frequency * float64(i) / float64(rate))
	}
	return out
}

func noise(samples int) []float64 {
	r := rand.New(rand.NewPCG(4, 2))
	out := make([]float64, samples)
	for i := range out {
		out[i] = r.NormFloat64()
	}
	return out
}

// steady returns the mean power in each of so many rows from 50 Hz to 20 kHz.
func steady(samples []float64, rows int) []float64 {
	const columns = 60
	power := newSpectra(testRate, rows, lowest, highest).of(samples, columns, float64(len(samples))/columns)
	mean := make([]float64, rows)
	for i := 2; i < columns-2; i++ { // the ends hear half a window
		floats.AddScaled(mean, 1.0/(columns-4), power[i*rows:(i+1)*rows])
	}
	return mean
}

// row returns where a frequency stands among rows, counted from 0 at the lowest
// edge.
func row(frequency float64, rows int) float64 {
	return float64(rows) * math.Log(frequency/lowest) / math.Log(highest/lowest)
}

func TestToneStandsAtItsRow(t *testing.T) {
	const rows = 640
	rapid.Check(t, func(t *rapid.T) {
		f := math.Exp(rapid.Float64Range(math.Log(55), math.Log(19500)).Draw(t, "log of frequency"))
		mean := steady(sine(f, testRate, testRate/2), rows)
		ridge := floats.MaxIdx(mean)
		bin := float64(testRate) / float64(windowLength(testRate))
		low, high := row(f-bin/2, rows)-1, row(f+bin/2, rows)+1
		if r := float64(ridge) + 0.5; r < low || r > high {
			t.Errorf("%.1f Hz: the ridge is at %.1f, not from %.1f to %.1f", f, r, low, high)
		}
		// Half of a tone between two rows is 3 dB; one between two bins loses
		// 1.42 dB (F. J. Harris, Proc. IEEE 66 (1978) 51, table 1, Hann).
		if level := 10 * math.Log10(mean[ridge]); level < -3.2 || level > 0.1 {
			t.Errorf("%.1f Hz: %.2f dB, want 0", f, level)
		}
	})
}

// The noise bandwidth of a Hann window is 1.50 bins (Harris, table 1).
func TestNoiseBandwidth(t *testing.T) {
	if b := newSpectra(testRate, 10, lowest, highest).bandwidth; math.Abs(b-1.5) > 0.005 {
		t.Errorf("%.4f bins", b)
	}
}

// White noise of variance 1 has 1/(rate/2) in a hertz, twice that where a sine of
// amplitude 1 has 1.
func TestWhiteNoiseInRows(t *testing.T) {
	const rows = 60
	mean := steady(noise(6*testRate), rows)
	bin := float64(testRate) / float64(windowLength(testRate))
	for i, v := range mean {
		low := lowest * math.Pow(highest/lowest, float64(i)/rows)
		high := lowest * math.Pow(highest/lowest, float64(i+1)/rows)
		want := 2 * max(high-low, 1.5*bin) / (testRate / 2)
		// The mean of some 56 windows of 1.5 bins scatters by 13 % or less; the bound
		// is three times that.
		if d := 10 * math.Log10(v/want); math.Abs(d) > 1.7 {
			t.Errorf("%.0f Hz: %+.2f dB", low, d)
		}
	}
}

// Two paths 0.5 ms apart cancel at odd multiples of 1 kHz, and add at even ones.
func TestCombStandsAtItsRows(t *testing.T) {
	const rows, late = 320, 24
	direct := noise(2*testRate + late)
	both := make([]float64, 2*testRate)
	for i := range both {
		both[i] = direct[i+late] + direct[i]
	}
	mean := steady(both, rows)
	for f := 1000.0; f < 8000; f += 2000 {
		notch, peak := mean[int(row(f, rows))], mean[int(row(f+1000, rows))]
		if depth := 10 * math.Log10(peak/notch); depth < 20 {
			t.Errorf("%g Hz lies only %.1f dB below %g Hz", f, depth, f+1000)
		}
	}
}

func TestClickStandsAtItsColumn(t *testing.T) {
	const columns, rows, at = 200, 50, 31234
	samples := make([]float64, testRate)
	samples[at] = 1
	step := float64(len(samples)) / columns
	power := newSpectra(testRate, rows, lowest, highest).of(samples, columns, step)
	half := float64(windowLength(testRate)) / 2
	best := 0
	for i := range columns {
		middle := (float64(i) + 0.5) * step
		if power[i*rows+rows/2] > power[best*rows+rows/2] {
			best = i
		}
		if math.Abs(middle-at) > half+1 && power[i*rows+rows/2] > 0 {
			t.Errorf("column %d hears a click %.0f samples away", i, math.Abs(middle-at))
		}
	}
	if best != int(at/step) {
		t.Errorf("the click is in column %d, want %d", best, int(at/step))
	}
}

// A long sound has several windows to a column, and none of it is passed over.
func TestNothingIsPassedOver(t *testing.T) {
	s := newSpectra(8000, 20, lowest, 4000)
	const columns = 10
	samples := make([]float64, 20*8000)
	for at := 0; at < len(samples); at += 997 {
		clear(samples)
		samples[at] = 1
		power := s.of(samples, columns, float64(len(samples))/columns)
		if floats.Sum(power) == 0 {
			t.Fatalf("a click at sample %d is nowhere", at)
		}
	}
}

func TestNoRowIsEmpty(t *testing.T) {
	for _, rate := range []int{1000, 8000, 44100, 192000} {
		t.Run(fmt.Sprint(rate), func(t *testing.T) {
			power := newSpectra(rate, 700, lowest, min(highest, float64(rate)/2)).of(noise(rate/2), 4, float64(rate)/8)
			if least := floats.Min(power); !(least > 0) {
				t.Errorf("a row has %g", least)
			}
		})
	}
}

func TestIndices(t *testing.T) {
	have := indices([]float64{2, 2e-3, 2e-6, 2e-9, 0, math.NaN(), math.Inf(1)}, 2)
	for i, want := range []uint8{255, 128, 0, 0, 0, 0, 255} { // 0, -30, -60, -90 dB and the odd ones
		if have[i] != want {
			t.Errorf("value %d: step %d, want %d", i, have[i], want)
		}
	}
}

func TestWrap(t *testing.T) {
	const wide = 80
	for _, c := range []struct {
		name  string
		lines int
	}{{"", 0}, {"as built", 1}, {"measured at the listening spot", 2}, {"a great many words that go on and on for longer than there is room", 3}, {"Donaudampfschifffahrtsgesellschaft", 1}} {
		lines := wrap(c.name, wide, 3)
		if len(lines) != c.lines {
			t.Errorf("%q: %q, want %d lines", c.name, lines, c.lines)
		}
		for _, line := range lines {
			if w := font(nameSize, ink).Width(line); w > wide {
				t.Errorf("%q is %.1f wide", line, w)
			}
		}
	}
}

func BenchmarkSpectra(b *testing.B) {
	samples := noise(6 * testRate)
	b.ReportAllocs()
	for b.Loop() {
		newSpectra(testRate, 640, lowest, highest).of(samples, 560, float64(len(samples))/560)
	}
}
