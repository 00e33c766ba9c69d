package recording

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"pappus/timing/band"
	"pappus/timing/sweep"
)

// TestThresholds: where each line is drawn, and why there.
func TestThresholds(t *testing.T) {
	const rate = 8000
	noise := func(n int, rms float64) []float64 {
		random, x := rand.New(rand.NewPCG(1, 1)), make([]float64, n)
		for i := range x {
			x[i] = rms * math.Sqrt(3) * (2*random.Float64() - 1)
		}
		return x
	}
	s, err := sweep.New(100, 3000, 1)
	if err != nil {
		t.Fatal(err)
	}
	steady := func(spoil func(x []float64, second int)) (float64, error) {
		x := s.Samples(rate)
		spoil(x, int((s.First()+s.Apart())*rate))
		return found{int(s.First() * rate), rate}.steady(x, s)
	}
	turned := func(db float64) bool {
		_, err := steady(func(x []float64, second int) {
			for i := second; i < len(x); i++ {
				x[i] *= math.Pow(10, db/20)
			}
		})
		return errors.Is(err, errUnsteady)
	}
	stopped := func(seconds float64) bool {
		_, err := steady(func(x []float64, _ int) {
			from := int((s.Begin() + 0.5) * rate)
			for i := range int(seconds * rate) {
				x[from+i] = x[from]
			}
		})
		return errors.Is(err, errUnsteady)
	}
	bands := func(db float64) bool { return loud([]Band{{Level: 40}, {Level: db}, {Level: 0}}) == nil }
	harmonic := func(over float64, n int) bool {
		h := Harmonic{Level: slices.Repeat([]float64{-40}, n), Floor: slices.Repeat([]float64{-40 - over}, n)}
		return Measured{Harmonics: []Harmonic{h}}.HasHarmonics()
	}
	cutOff := func(db float64, octaves float64) bool {
		n := int(octaves * perOctave)
		m := evenly(2 * perOctave)
		level, floor := slices.Repeat([]float64{-90}, 2*perOctave), slices.Repeat([]float64{-100}, 2*perOctave)
		for i := range n {
			level[i] = db
		}
		m.Harmonics = []Harmonic{{Order: 3, Level: level, Floor: floor}}
		return len(m.overloaded()) > 0
	}
	clipped := func(top, next int) bool {
		x := slices.Concat(slices.Repeat([]float64{0.5}, top), slices.Repeat([]float64{0.4993}, next), noise(1000, 0.1))
		return Clipped(x) > 0
	}
	quiet := func(rms float64) bool { return sound(noise(100000, rms), "") != nil }
	together := func(share float64) bool {
		h := &impulse{h: make([]float64, 10000), rate: rate, at: 0}
		h.h[0], h.h[5000] = math.Sqrt(share), math.Sqrt(1-share)
		return h.share() >= wholeShare
	}
	belongs := func(seconds float64) bool {
		h := &impulse{h: make([]float64, 10000), rate: rate, at: 0}
		h.h[0], h.h[int(seconds*rate)] = 1, 3
		return h.share() == 1
	}
	heard := func(over float64) bool { // by a microphone beside a wire that has the sweep
		x := noise(len(s.Samples(rate)), 0.01)
		for i, from := 0, int(s.Begin()*rate); i < int(s.Length*rate); i++ {
			x[from+i] *= over
		}
		return errors.Is(strange(Take{Samples: x, Reference: x}, found{int(s.First() * rate), rate}, s), errOther)
	}
	for _, test := range []struct {
		why       string
		got, want bool
	}{
		{"half of the bands are 11 dB over the noise: levels are sure to 2 dB", bands(11), true},
		{"9 dB leave them to chance", bands(9), false},
		{"a gain that is 3.2 dB off after the sweep spoils all of it", turned(3.2), true},
		{"2.8 dB tilts it, which is told", turned(2.8), false},
		{"a microphone that stands still for 11 ms was off", stopped(0.011), true},
		{"9 ms are what a low tone of few bits does", stopped(0.0089), false},
		{"a harmonic 11 dB over the floor for a third of an octave is one", harmonic(11, 16), true},
		{"9 dB are noise once in 3,000 cases for each frequency", harmonic(9, 16), false},
		{"and for less than a third of an octave it may be", harmonic(11, 14), false},
		{"harmonics 19.5 dB under the tone over an octave are of something cut off", cutOff(-19.5, 1.1), true},
		{"20.5 dB are what small drivers do", cutOff(-20.5, 1.1), false},
		{"and over less than an octave a resonance does", cutOff(-19.5, 0.95), false},
		{"12 samples at the top with none below are cut off", clipped(12, 0), true},
		{"9 of them do not matter", clipped(9, 0), false},
		{"a sine has 2.4 times as many at the top as below: 5.5 is no line", clipped(55, 10), false},
		{"6.5 is", clipped(65, 10), true},
		{"79 dB below full scale is a faint microphone", quiet(1.1e-4), false},
		{"81 dB is a cable", quiet(0.9e-4), true},
		{"22 percent of the energy at once are a sound in an echoing hall", together(0.22), true},
		{"an echo 0.19 s later belongs to a sound", belongs(0.19), true},
		{"0.21 s later it does not", belongs(0.21), false},
		{"11 times the background is something else than the sweep", heard(11), true},
		{"9 times may hide it", heard(9), false},
		{"18 percent are another sweep, spread over its length", together(0.18), false},
	} {
		t.Run(test.why, func(t *testing.T) {
			if test.got != test.want {
				t.Error(fmt.Sprint(test.got))
			}
		})
	}
}

// evenly is a measurement of so many frequencies, at which all is as loud.
func evenly(n int) Measured {
	m := Measured{Frequency: make([]float64, n), Whole: Response{Level: make([]float64, n)}}
	band.Log(m.Frequency, 100, 100*math.Exp2(float64(n)/perOctave))
	return m
}

// TestOverloadedInARoom: echoes that put dips of 10 dB into a tone every eighth of an octave do not hide what is cut
// off.
func TestOverloadedInARoom(t *testing.T) {
	m := evenly(3 * perOctave)
	h := Harmonic{Order: 3, Level: make([]float64, 3*perOctave), Floor: slices.Repeat([]float64{-90}, 3*perOctave)}
	for i := range m.Frequency {
		dip := 5 * math.Cos(2*math.Pi*float64(i)/6)
		m.Whole.Level[i], h.Level[i] = -dip, -17+dip
	}
	m.Harmonics = []Harmonic{h}
	if len(m.overloaded()) == 0 {
		t.Error("nothing is told")
	}
}

// TestOverloadedEvened: energies are evened over a third of an octave. Of a run of harmonics 19.5 dB under the tone,
// 0.0112 of its energy, between such as have none, that leaves what is 0.39 of a third within both ends, where 0.89 of
// the third has as much.
func TestOverloadedEvened(t *testing.T) {
	for n, want := range map[int]bool{62: true, 59: false} { // an octave is 48, and 0.78 of a third 12.5
		m := evenly(3 * perOctave)
		h := Harmonic{Order: 3, Level: slices.Repeat([]float64{-90}, 3*perOctave), Floor: slices.Repeat([]float64{-120}, 3*perOctave)}
		for i := range n {
			h.Level[30+i] = -19.5
		}
		m.Harmonics = []Harmonic{h}
		if got := len(m.overloaded()) > 0; got != want {
			t.Errorf("%d frequencies: %v", n, got)
		}
	}
}

// TestEdges: the band is whole from 1.4 of where the sweep starts to 0.9 of where it stops, and nothing is taken from
// below 0.7 of the one or above the other.
func TestEdges(t *testing.T) {
	s := sweep.Sweep{Start: 100, Stop: 3000}
	for _, c := range []struct {
		hz   float64
		want string
	}{{69, "none"}, {71, "some"}, {139, "some"}, {141, "all"}, {2699, "all"}, {2701, "some"}, {2999, "some"}, {3001, "none"}} {
		got := "some"
		switch edges(s, c.hz) {
		case 0:
			got = "none"
		case 1:
			got = "all"
		}
		if got != c.want {
			t.Errorf("%g Hz: %s, want %s", c.hz, got, c.want)
		}
	}
}
