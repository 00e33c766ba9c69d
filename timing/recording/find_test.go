package recording

import (
	"errors"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"pappus/timing/sweep"
)

// seldom is a sweep that is over soon, for tests of what is found where.
func seldom(t *testing.T) sweep.Sweep {
	t.Helper()
	s, err := sweep.New(100, 3000, 1)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// peaks returns what is like a marker at some of so many samples, and nothing like one elsewhere.
func peaks(n int, at map[int]float64) []float64 {
	out := make([]float64, n)
	for i, v := range at {
		out[i] = v
	}
	return out
}

// TestPair: the two that stand apart as markers do are found beside what is louder by up to 14 dB, and not beside
// what is louder by more; a clock may be 250 millionths off.
func TestPair(t *testing.T) {
	const apart, slack = 10000, 2.5
	for _, c := range []struct {
		name          string
		first, second float64
		by            int // samples from where the second is to be
		want          int
	}{
		{"13.2 dB under a click", 0.22, 0.22, 0, 100},
		{"14.9 dB under it", 0.18, 0.18, 0, 0},
		{"3 samples late", 0.5, 0.5, 3, 100},
		{"5 samples late", 0.5, 0.1, 5, 0},
	} {
		like := peaks(20000, map[int]float64{100: c.first, 100 + apart + c.by: c.second, 5000: 1})
		if c.by > 3 {
			like = peaks(20000, map[int]float64{100: c.first, 100 + apart + c.by: c.second})
		}
		first, score := pair(like, apart, slack)
		if found := score > 0; found != (c.want > 0) || found && first != c.want {
			t.Errorf("%s: at %d with %g", c.name, first, score)
		}
	}
}

// TestSure: markers that reach 6 standard deviations of what is like them by chance are found, no fainter ones.
func TestSure(t *testing.T) {
	const rate = 8000.0
	s := seldom(t)
	random := rand.New(rand.NewPCG(5, 5))
	noise := make([]float64, int(s.Duration()*rate))
	for i := range noise {
		noise[i] = random.NormFloat64()
	}
	marker := make([]float64, s.MarkerSamples(rate))
	s.FillMarker(marker, rate, 0)
	found, missed := false, false
	for size := 0.3; size < 0.8; size += 0.01 {
		x := append([]float64(nil), noise...)
		for _, at := range []float64{s.First(), s.First() + s.Apart()} {
			for i, v := range marker {
				x[int(at*rate)+i] += size * v
			}
		}
		like := correlate(x, marker)
		_, score := pair(like, s.Apart()*rate, clocks*s.Apart()*rate)
		over := score / deviation(like)
		_, err := find(x, rate, s)
		if over > 5 && over < 5.95 && err == nil || over > 6.05 && over < 7 && err != nil {
			t.Errorf("%.2f standard deviations: %v", over, err)
		}
		found, missed = found || over > 6.05 && over < 7, missed || over > 5 && over < 5.95
	}
	if !found || !missed {
		t.Error("nothing near the line was tried")
	}
}

// TestDeviation: of normally distributed values, of which half lie within 0.6745 standard deviations (Abramowitz and
// Stegun, Handbook of Mathematical Functions, table 26.5).
func TestDeviation(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 1))
	x := make([]float64, 400000)
	for i := range x {
		x[i] = math.Abs(3 * random.NormFloat64())
	}
	if got := deviation(x); math.Abs(got-3) > 0.05 {
		t.Errorf("%.3f, want 3", got)
	}
}

// TestMissing: what is said where no two markers stand apart as they are to.
func TestMissing(t *testing.T) {
	const rate, apart, slack = 1000.0, 3000.0, 1.0
	for _, c := range []struct {
		name string
		like []float64
		want error
		says string
	}{
		{"one marker 12.5 standard deviations over the noise", peaks(4000, map[int]float64{2000: 12.5}), errTruncated, "at 2.0 s"},
		{"one of 11.5", peaks(4000, map[int]float64{2000: 11.5}), errNoSweep, "right file"},
		{"two 2 s apart", peaks(9000, map[int]float64{2000: 20, 4000: 13}), errNoSweep, "2.000 s apart, 0.6667 times"},
		{"the second hardly half as loud", peaks(9000, map[int]float64{2000: 30, 4000: 16}), errNoSweep, "2.000 s apart"},
		{"the second less than half as loud", peaks(9000, map[int]float64{2000: 30, 4000: 14}), errNoSweep, "right file"},
		{"the second too faint", peaks(9000, map[int]float64{2000: 20, 4000: 11}), errNoSweep, "right file"},
		{"0.55 s apart", peaks(9000, map[int]float64{2000: 20, 2550: 20}), errNoSweep, "0.550 s apart"},
		{"0.45 s apart", peaks(9000, map[int]float64{2000: 20, 2450: 20}), errNoSweep, "right file"},
	} {
		err := missing(c.like, apart, slack, 1, rate)
		if !errors.Is(err, c.want) || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v", c.name, err)
		}
	}
}

// TestAbove: the background is what is heard in the lead but for its last tenth, where that is 50 ms or more.
func TestAbove(t *testing.T) {
	const rate = 10000.0
	s := seldom(t)
	s.Lead = 1
	for _, c := range []struct {
		name        string
		first       int // samples before the marker
		from, until int // louder before the marker: samples before it
		want        float64
	}{
		{"55 ms of it", 612, 0, 0, 10},
		{"48 ms of it", 533, 0, 0, 0},
		{"a step at the end", 10000, 900, 0, 10},
		{"a step in the middle", 10000, 5000, 4000, 10 / math.Sqrt(1+99.0/9)},
	} {
		x := make([]float64, c.first+int(s.Duration()*rate))
		for i := range x {
			switch {
			case i >= c.first || i >= c.first-c.from && i < c.first-c.until:
				x[i] = 10
			default:
				x[i] = 1
			}
		}
		if got := (found{c.first, rate}).above(x, s); math.Abs(got-c.want) > 0.01*c.want {
			t.Errorf("%s: %g, want %g", c.name, got, c.want)
		}
	}
}

// TestClocks: markers that are 245 millionths too far apart or too near are found, by a long sweep and by a short one,
// and what is told of them is right within 1; 255 are another sweep's, though no more than a part of a sample is between.
func TestClocks(t *testing.T) {
	const rate = 8000.0
	random := rand.New(rand.NewPCG(7, 7))
	for _, length := range []float64{1, 20} {
		s := seldom(t)
		s.Length = length
		marker := make([]float64, s.MarkerSamples(rate)+1)
		for ppm, want := range map[float64]bool{245: true, -245: true, 255: false, -255: false} {
			x := make([]float64, int((s.Duration()+0.1)*rate))
			for i := range x {
				x[i] = 0.003 * random.NormFloat64()
			}
			for _, at := range []float64{s.First() * rate, s.First()*rate + s.Apart()*rate*(1+ppm/1e6)} {
				whole := math.Floor(at)
				s.FillMarker(marker, rate, at-whole)
				for i, v := range marker {
					x[int(whole)+i] += 0.2 * v
				}
			}
			where, err := find(x, rate, s)
			if (err == nil) != want || err != nil && !(errors.Is(err, errNoSweep) && strings.Contains(err.Error(), "250")) {
				t.Errorf("%g s, %g millionths: %+v, %v", length, ppm, where, err)
			}
			if drift := 1e6 * (where.rate/rate - 1); want && math.Abs(drift-ppm) > 1 {
				t.Errorf("%g s, %g millionths: %.1f are told", length, ppm, drift)
			}
		}
	}
}
