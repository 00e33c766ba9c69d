package preview_test

import (
	"math"
	"math/cmplx"
	"testing"

	"pappus/layout"
	"pappus/layout/body"
	"pappus/preview"
	"pappus/timing"

	"github.com/gopxl/beep/v2"
	"gonum.org/v1/gonum/dsp/fourier"
	"gonum.org/v1/gonum/spatial/r3"
)

const halfMillisecond = 0.5e-3 // s

// pair plans two like drivers on one line with the spot, the rear one later by
// the given time in s.
func pair(t testing.TB, later float64) *timing.Spot {
	t.Helper()
	a := &layout.Array{
		Air:    layout.Air{Temperature: 293.15, Humidity: 0.5, Pressure: 101325},
		Body:   body.Ball(0.25),
		Driver: layout.Driver{ConeRadius: 0.02, NominalOhm: 8, DCOhm: 6.4},
		Timing: layout.Timing{Model: "point", DelaysBy: "path"},
		Spot:   r3.Vec{X: 20},
	}
	at := func(x float64) layout.Mount {
		return layout.Mount{ID: len(a.Mounts) + 1, Point: r3.Vec{X: x}, Normal: r3.Vec{X: 1}, Face: -1}
	}
	a.Mounts = append(a.Mounts, at(0.2))
	probe, err := timing.NewPlanner(a)
	if err != nil {
		t.Fatal(err)
	}
	alone, err := probe.Spot(a.Spot)
	if err != nil {
		t.Fatal(err)
	}
	a.Mounts = append(a.Mounts, at(0.2-later*alone.SpeedOfSound))
	planner, err := timing.NewPlanner(a)
	if err != nil {
		t.Fatal(err)
	}
	p, err := planner.Spot(a.Spot)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// click streams one sample of 1 and then silence, a second in all.
func click() beep.Streamer {
	at := 0
	return beep.Take(48000, beep.StreamerFunc(func(s [][2]float64) (int, bool) {
		for i := range s {
			s[i] = [2]float64{}
			if at == 0 {
				s[i] = [2]float64{1, 1}
			}
			at++
		}
		return len(s), true
	}))
}

// spectrum returns the magnitudes at every hertz of what a stream holds.
func spectrum(s beep.Streamer) []float64 {
	mono := make([]float64, 48000)
	buffer := make([][2]float64, 1000)
	for at := 0; at < len(mono); at += len(buffer) {
		n, _ := s.Stream(buffer)
		for i, v := range buffer[:n] {
			mono[at+i] = v[0]
		}
	}
	level := make([]float64, len(mono)/2+1)
	for k, c := range fourier.NewFFT(len(mono)).Coefficients(nil, mono) {
		level[k] = cmplx.Abs(c)
	}
	return level
}

// Two like sounds, one later by tau, add to |2 cos(pi f tau)|: nothing is left at
// 1/(2 tau), and again two such steps higher (F. A. Everest and K. C. Pohlmann,
// Master Handbook of Acoustics, comb filtering). In step there is no notch.
func TestNotchOfTwoDrivers(t *testing.T) {
	s, err := preview.NewSet(t.Context(), pair(t, halfMillisecond), preview.Listener{}, preview.Cases, click, 48000)
	if err != nil {
		t.Fatal(err)
	}
	built, aligned, point := spectrum(s.Streamer(0)), spectrum(s.Streamer(1)), spectrum(s.Streamer(2))
	for _, want := range []int{1000, 3000, 5000} {
		least := want - 900
		for f := want - 900; f <= want+900; f++ {
			if built[f] < built[least] {
				least = f
			}
		}
		if math.Abs(float64(least-want)) > 0.01*float64(want) {
			t.Errorf("as built: notch at %d Hz, want %d", least, want)
		}
		if db := 20 * math.Log10(built[least]/built[want+1000]); db > -30 {
			t.Errorf("as built: notch at %d Hz only %.1f dB deep", least, -db)
		}
	}
	// The ideal point lies as far away, so that the air's absorption is the same.
	for f := 50; f <= 8000; f++ {
		if db := 20 * math.Log10(aligned[f]/point[f]*point[500]/aligned[500]); math.Abs(db) > 0.1 {
			t.Fatalf("aligned: %+.2f dB of the ideal point at %d Hz", db, f)
		}
	}
}
