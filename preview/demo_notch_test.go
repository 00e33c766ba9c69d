package preview_test

import (
	"math"
	"math/cmplx"
	"testing"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/preview"
	"pappus/timing"

	"github.com/gopxl/beep/v2"
)

// dips returns the frequencies in Hz from 1 to 8.5 kHz where a spectrum, one value
// every step Hz, has a local minimum that lies 6 dB or more below its value at 500
// Hz.
func dips(level []float64, step int) []float64 {
	var out []float64
	for k := 1000 / step; k < 8500/step; k++ {
		if level[k] < level[k-1] && level[k] <= level[k+1] && level[k] < level[500/step]/2 {
			out = append(out, float64(k*step))
		}
	}
	return out
}

// TestDemoNotches: what is heard of the demo as built, without the table below it,
// has its notches where a plain sum of phasors puts them, each driver as loud as it
// is alone and as late as the plan says that it arrives; aligned there is none.
func TestDemoNotches(t *testing.T) {
	a, err := layout.Build(design.Default())
	if err != nil {
		t.Fatal(err)
	}
	p, err := timing.Make(t.Context(), a)
	if err != nil {
		t.Fatal(err)
	}
	const step = 10
	frequency := make([]float64, 9000/step)
	for i := range frequency {
		frequency[i] = float64(i * step)
	}
	sum, alone := make([]complex128, len(frequency)), make([]complex128, len(frequency))
	planner := *a
	planner.Surface.Present, planner.Channels = false, nil
	planner.Wiring.Channels, planner.Wiring.MinimumLoad = 1, 0.5
	for m, arrival := range p.Arrivals {
		planner.Mounts = a.Mounts[m : m+1]
		single, err := timing.NewPlanner(&planner)
		if err != nil {
			t.Fatal(err)
		}
		one, err := single.Spot(a.Spot)
		if err != nil {
			t.Fatal(err)
		}
		one.Transfer(alone, timing.AsBuilt, frequency)
		for i, f := range frequency {
			sum[i] += cmplx.Rect(cmplx.Abs(alone[i]), -2*math.Pi*f*arrival.Time)
		}
	}
	level := make([]float64, len(sum))
	for i, v := range sum {
		level[i] = cmplx.Abs(v)
	}
	want := dips(level, step)
	if len(want) < 2 {
		t.Fatalf("the arrivals give notches at %v only", want)
	}
	s, err := preview.NewSet(t.Context(), &p.Spot, preview.Listener{Dry: true}, preview.Cases, func() beep.Streamer { return click() }, 48000)
	if err != nil {
		t.Fatal(err)
	}
	have := dips(spectrum(s.Streamer(0)), 1)
	if len(have) < len(want) {
		t.Fatalf("as built: notches at %v, want %v", have, want)
	}
	for i, w := range want {
		if math.Abs(have[i]/w-1) > 0.02 {
			t.Errorf("as built: notch at %g Hz, the arrivals put it at %g", have[i], w)
		}
	}
	t.Logf("as built: notches at %v Hz, by the arrivals at %v", have, want)
	if left := dips(spectrum(s.Streamer(1)), 1); len(left) > 0 {
		t.Errorf("aligned: notches at %v", left)
	}
}
