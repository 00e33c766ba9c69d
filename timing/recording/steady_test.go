package recording

import (
	"errors"
	"math"
	"math/cmplx"
	"strings"
	"testing"

	"pappus/timing/sweep"

	"gonum.org/v1/gonum/dsp/fourier"
)

// delayedBy returns what is heard of a sweep in its band where a frequency in Hz comes later by a time in s.
func delayedBy(s sweep.Sweep, rate float64, by func(hz float64) float64) listened {
	n := Length(int(2 * rate))
	spectrum, phase := make([]complex128, n/2+1), 0.0
	for k := range spectrum {
		hz := float64(k) * rate / float64(n)
		phase -= 2 * math.Pi * by(hz) * rate / float64(n)
		spectrum[k] = cmplx.Rect(edges(s, hz)/float64(n), phase)
	}
	h := &impulse{h: fourier.NewFFT(n).Sequence(nil, spectrum), rate: rate}
	return listened{impulse: h, sweep: s, span: 0.3}
}

// TestDrift: what comes later by a millisecond an octave, from 500 Hz on and over three octaves at least, is of another
// sweep.
func TestDrift(t *testing.T) {
	const rate = 16000.0
	for _, c := range []struct {
		name string
		stop float64 // Hz
		by   func(hz float64) float64
		want bool
	}{
		{"1.1 ms", 6000, func(hz float64) float64 { return 0.0011 * math.Log2(max(hz, 1)/1000) }, true},
		{"-1.1 ms", 6000, func(hz float64) float64 { return -0.0011 * math.Log2(max(hz, 1)/1000) }, true},
		{"0.9 ms", 6000, func(hz float64) float64 { return 0.0009 * math.Log2(max(hz, 1)/1000) }, false},
		{"only below 500 Hz", 6000, func(hz float64) float64 { return 0.004 * math.Log2(min(max(hz, 1), 500)/500) }, false},
		{"up to 4050 Hz: three octaves", 4500, func(hz float64) float64 { return 0.003 * math.Log2(max(hz, 1)/1000) }, true},
		{"up to 3900 Hz: two", 3900 / 0.9, func(hz float64) float64 { return 0.003 * math.Log2(max(hz, 1)/1000) }, false},
	} {
		s := sweep.Sweep{Start: 100, Stop: c.stop, Length: 3}
		l := delayedBy(s, rate, c.by)
		l.findPeak(2000, 2000)
		if got := math.Abs(l.drift(s)) > driftMost; got != c.want {
			t.Errorf("%s: %.2f ms each octave", c.name, 1000*l.drift(s))
		}
	}
}

// TestSwappedWords: it is told by how much too soon the microphone hears.
func TestSwappedWords(t *testing.T) {
	s := seldom(t)
	l := delayedBy(s, 16000, func(float64) float64 { return -0.005 })
	l.take.Reference = []float64{1}
	if err := l.locate(); !errors.Is(err, errSwapped) || !strings.Contains(err.Error(), " 5.0 ms before") {
		t.Error(err)
	}
}

// TestChange: half a decibel between the markers is told; 0.3 s after each belong to it, for the room, but no more than
// half of the gap.
func TestChange(t *testing.T) {
	const rate = 8000.0
	s := seldom(t)
	for _, c := range []struct{ gap, after, want float64 }{
		{1, 0.29, 10 * math.Log10(2)}, {1, 0.31, 0}, {0.4, 0.19, 10 * math.Log10(2)}, {0.4, 0.21, 0},
	} {
		s.Gap = c.gap
		x := s.Samples(rate)
		marker := make([]float64, s.MarkerSamples(rate))
		s.FillMarker(marker, rate, 0)
		first := int(s.First() * rate)
		second := int(math.Round((s.First() + s.Apart()) * rate))
		clear(x[second:])
		copy(x[second:], marker)
		end := second + int((s.MarkerSeconds()+c.after)*rate)
		for i, v := range marker[:len(marker)*9/10] { // once more, so that most of it ends there
			if c.want > 0 {
				x[end-len(marker)*9/10+i] += v
			} else {
				x[end+i] += v
			}
		}
		if got := (found{first, rate}).change(x, s); math.Abs(got-c.want) > 0.3 {
			t.Errorf("gap %g s, once more %g s after the marker: %.2f dB, want %.2f", c.gap, c.after, got, c.want)
		}
	}
}

// TestToldChange: from half a decibel on a change of gain is told, with how much it is.
func TestToldChange(t *testing.T) {
	const rate = 8000.0
	s := seldom(t)
	for _, db := range []float64{0.45, 0.55} {
		x := s.Samples(rate)
		for i := int((s.First()+s.Apart())*rate) - 100; i < len(x); i++ {
			x[i] *= math.Pow(10, db/20)
		}
		m, err := Analyse(Take{Rate: rate, Samples: x}, s, Options{})
		if err != nil {
			t.Fatal(err)
		}
		told := len(m.Cautions) > 0 && m.Cautions[0].Code == GainChanged
		if told != (db > 0.5) || told && math.Abs(m.Cautions[0].DB-db) > 0.02 {
			t.Errorf("%g dB: %+v", db, m.Cautions)
		}
	}
}

// TestStoppedWords: it is told for how long and when a recording stands still.
func TestStoppedWords(t *testing.T) {
	const rate = 8000.0
	s := seldom(t)
	x := s.Samples(rate)
	from := int((s.Begin() + 0.5) * rate)
	for i := range int(0.05 * rate) {
		x[from+i] = x[from]
	}
	if _, err := Analyse(Take{Rate: rate, Samples: x}, s, Options{}); !errors.Is(err, errUnsteady) || !strings.Contains(err.Error(), "for 50 ms at 1.6 s") {
		t.Error(err)
	}
}

// TestDriftFine: times that the lowest octave can tell are no more than half of driftMost apart, and would be with one
// point less.
func TestDriftFine(t *testing.T) {
	apart := func(points int) float64 { return 1 / (float64(points) * driftFrom) }
	if apart(driftFine) > driftMost/2+1e-12 || apart(driftFine-1) < driftMost/2+1e-12 {
		t.Errorf("%g s, and %g s", apart(driftFine), apart(driftFine-1))
	}
}
