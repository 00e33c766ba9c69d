package preview

import (
	"bytes"
	"context"
	"errors"
	"math"
	"testing"
	"time"

	"pappus/layout"
	"pappus/preview/programme"
	"pappus/preview/wave"
	"pappus/timing"

	"github.com/gopxl/beep/v2"
	beepwav "github.com/gopxl/beep/v2/wav"
	"gonum.org/v1/gonum/dsp/fourier"
	"gonum.org/v1/gonum/spatial/r3"
)

const rate = 48000

// heard returns the level in dB over frequency of one period of the click train
// in a case, all the way through the set and a 24 bit WAV file.
func heard(t *testing.T, s *Set, i, period int) []float64 {
	t.Helper()
	var file bytes.Buffer
	if err := wave.Write(&file, s.Streamer(i), wave.Format{Rate: rate, Channels: 1, Depth: wave.PCM24}); err != nil {
		t.Fatal(err)
	}
	stream, _, err := beepwav.Decode(bytes.NewReader(file.Bytes()))
	if err != nil {
		t.Fatal(err)
	}
	if err := stream.Seek(period); err != nil { // the first period lacks the echo of one before
		t.Fatal(err)
	}
	samples := make([][2]float64, period)
	stream.Stream(samples)
	mono := make([]float64, period)
	for k, v := range samples {
		mono[k] = v[0]
	}
	spectrum := fourier.NewFFT(period).Coefficients(nil, mono)
	level := make([]float64, len(spectrum))
	for k, c := range spectrum {
		level[k] = 20 * math.Log10(math.Hypot(real(c), imag(c)))
	}
	return level
}

// Two equal arrivals 0.5 ms apart have notches at 1, 3, 5 kHz and so on, and are
// full at 2, 4, 6 kHz (Everest and Pohlmann, Master Handbook of Acoustics, comb
// filters). They must be heard where they belong as built, and be gone when
// aligned, in what is written to the file.
func TestNotchesAreHeard(t *testing.T) {
	clicks := programme.Clicks(rate)
	s, err := NewSet(t.Context(), pair(), Listener{}, Cases, func() beep.Streamer { return beep.Take(3*len(clicks), clicks.Streamer()) }, rate)
	if err != nil {
		t.Fatal(err)
	}
	built, aligned, point := heard(t, s, 0, len(clicks)), heard(t, s, 1, len(clicks)), heard(t, s, 2, len(clicks))
	step := float64(rate) / float64(len(clicks))
	bin := func(hz float64) int { return int(math.Round(hz / step)) }
	for notch := 1000.0; notch < 16000; notch += 2000 {
		low := bin(notch - 400)
		for k := low; k <= bin(notch+400); k++ {
			if built[k]-point[k] < built[low]-point[low] {
				low = k
			}
		}
		if f := float64(low) * step; math.Abs(f-notch) > 0.01*notch {
			t.Errorf("notch at %.1f Hz, want %g", f, notch)
		}
		peak := bin(notch + 1000)
		if depth := built[peak] - point[peak] - built[low] + point[low]; depth < 30 {
			t.Errorf("notch at %g Hz only %.1f dB deep", notch, depth)
		}
	}
	offset := aligned[bin(1000)] - point[bin(1000)]
	for k := bin(300); k < bin(15000); k++ {
		if d := aligned[k] - point[k] - offset; math.Abs(d) > 0.1 {
			t.Fatalf("aligned differs by %.2f dB from the ideal point at %.0f Hz", d, float64(k)*step)
		}
	}
}

func TestCasesAreMatched(t *testing.T) {
	for _, p := range programme.All {
		loop := p.Make(rate)
		s, err := NewSet(t.Context(), pair(), Listener{}, Cases, func() beep.Streamer { return beep.Take(2*rate, loop.Streamer()) }, rate)
		if err != nil {
			t.Fatal(err)
		}
		peak := 0.0
		first := LevelOf(s.Streamer(0), rate)
		for i, c := range Cases {
			l := LevelOf(s.Streamer(i), rate)
			if math.Abs(l.Integrated-first.Integrated) > 0.1 {
				t.Errorf("%s, %s: %.3f LUFS, and %.3f as built", p.Name, c.Name, l.Integrated, first.Integrated)
			}
			peak = max(peak, l.Peak)
		}
		if math.Abs(peak-Ceiling) > 1e-9 {
			t.Errorf("%s: highest true peak %g, want %g", p.Name, peak, Ceiling)
		}
	}
}

func TestSetThroughAnotherSource(t *testing.T) {
	loop := programme.Clicks(rate)
	s, err := NewSet(t.Context(), pair(), Listener{}, Cases, func() beep.Streamer { return beep.Take(rate, loop.Streamer()) }, rate)
	if err != nil {
		t.Fatal(err)
	}
	want, have := make([][2]float64, rate), make([][2]float64, rate)
	s.Streamer(1).Stream(want)
	s.Through(1, loop.Streamer()).Stream(have)
	for i := range want {
		if math.Abs(have[i][0]-want[i][0]) > 1e-14 {
			t.Fatalf("sample %d: %v, want %v", i, have[i], want[i])
		}
	}
}

type broken struct{ error }

func (broken) Stream([][2]float64) (int, bool) { return 0, false }
func (b broken) Err() error                    { return b.error }

// The source's error is told once, not once for each case.
func TestSetTellsTheSourcesError(t *testing.T) {
	why := errors.New("broken")
	if _, err := NewSet(t.Context(), pair(), Listener{}, Cases, func() beep.Streamer { return broken{why} }, rate); err != why {
		t.Errorf("error %v", err)
	}
}

// Matching an endless programme would last for ever, were it not told to stop.
func TestStopWhileMatching(t *testing.T) {
	loop := programme.Pink(rate)
	ctx, stop := context.WithTimeout(t.Context(), 50*time.Millisecond)
	defer stop()
	if _, err := NewSet(ctx, pair(), Listener{}, Cases, func() beep.Streamer { return loop.Streamer() }, rate); err != context.DeadlineExceeded {
		t.Errorf("error %v", err)
	}
	if _, err := NewWalk(ctx, lantern(t, same), Listener{}, past, Cases, func() beep.Streamer { return loop.Streamer() }, rate); err != context.DeadlineExceeded {
		t.Errorf("walk: error %v", err)
	}
}

// A place that no sound can reach is told with what is wrong about it.
func TestReach(t *testing.T) {
	a := lantern(t, same).Array
	room := *a
	room.Room = layout.Room{Present: true, Size: r3.Vec{X: 6, Y: 5, Z: 2.6}, Body: r3.Vec{X: 2, Y: 2.5, Z: 0.9}}
	for name, c := range map[string]struct {
		a    *layout.Array
		at   r3.Vec
		want error
	}{
		"good":    {a, r3.Vec{X: 1, Z: 0.3}, nil},
		"inside":  {a, r3.Vec{X: 0.01}, layout.ErrInside},
		"below":   {a, r3.Vec{X: 1, Z: -2}, layout.ErrBelowSurface},
		"outside": {&room, r3.Vec{X: 4.5}, layout.ErrOutsideRoom},
	} {
		err := reach(c.a, r3.Vec{X: 1, Z: 0.3}, c.at)
		if !errors.Is(err, c.want) || (err == nil) != (c.want == nil) {
			t.Errorf("%s: error %v, want %v", name, err, c.want)
		}
	}
}

func TestCasesHaveTheirOwnWords(t *testing.T) {
	seen := map[string]bool{}
	cases := map[timing.Case]bool{}
	for _, c := range Cases {
		if c.Name == "" || c.Words == "" || seen[c.Name] || seen[c.Words] || cases[c.Case] {
			t.Errorf("%+v", c)
		}
		seen[c.Name], seen[c.Words], cases[c.Case] = true, true, true
	}
}

func BenchmarkSet(b *testing.B) {
	plan, loop := pair(), programme.Pink(rate)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := NewSet(b.Context(), plan, Listener{}, Cases, func() beep.Streamer { return beep.Take(6*rate, loop.Streamer()) }, rate); err != nil {
			b.Fatal(err)
		}
	}
}
