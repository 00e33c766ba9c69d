package timing_test

import (
	"math"
	"math/cmplx"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// TestPhaseInStep: points in open air with a delay each are heard at once, so that nothing is left
// when the arrival is taken out; without delays the group delay is the mean of the arrivals t,
// weighed by what each gives of the sum, w exp(-i 2 pi f t): Re(sum w t exp / sum w exp).
func TestPhaseInStep(t *testing.T) {
	a := plain(t)
	a.Wiring.Channels, a.Wiring.MinimumLoad = len(a.Mounts), 0
	p := plan(t, a)
	x := p.Phase
	first, last := math.Inf(1), 0.0
	for _, r := range p.Arrivals {
		first, last = min(first, r.Time), max(last, r.Time)
	}
	if math.Abs(x.Unaligned.First-first) > 1e-9 || math.Abs(x.Aligned.First-last) > 1e-9 {
		t.Errorf("first heard after %g s and %g with the delays, want %g and %g", x.Unaligned.First, x.Aligned.First, first, last)
	}
	for i, f := range x.Frequency {
		if math.Abs(x.Aligned.Angle[i]) > 1e-6 || math.Abs(x.Aligned.Group[i]) > 1e-9 || x.InStep.Angle[i] != 0 {
			t.Fatalf("%g Hz: in step %g rad and %g s are left", f, x.Aligned.Angle[i], x.Aligned.Group[i])
		}
		var sum, timed complex128
		for m, r := range p.Arrivals {
			at := r3.Norm(r3.Sub(a.PlaceOf(a.Mounts[m]), a.Spot))
			v := cmplx.Rect(1/at, -2*math.Pi*f*(r.Time-first))
			sum, timed = sum+v, timed+v*complex(r.Time-first, 0)
		}
		if want := real(timed / sum); f < 800 && math.Abs(x.Unaligned.Group[i]-want) > 3e-6 {
			t.Errorf("%g Hz: group delay %g s as built, want %g", f, x.Unaligned.Group[i], want)
		}
	}
}

// TestPhaseNotFollowed: where arrivals are so far apart that the phase turns more than half a turn
// from one frequency to the next, none is told.
func TestPhaseNotFollowed(t *testing.T) {
	a := plain(t)
	for i := range a.Mounts {
		a.Mounts[i].Point = r3.Scale(8, a.Mounts[i].Point)
	}
	a.Spot = r3.Scale(4, a.Spot)
	x := plan(t, a).Phase
	known := 0
	for known < len(x.Frequency) && !math.IsNaN(x.Unaligned.Angle[known]) {
		known++
	}
	if known == len(x.Frequency) {
		t.Fatal("all is told")
	}
	spread := 0.0
	p := plan(t, a)
	var mean, all float64
	for _, r := range p.Arrivals {
		w := math.Pow(10, r.Level/10)
		mean, all = mean+w*r.Time, all+w
	}
	for _, r := range p.Arrivals {
		spread = max(spread, math.Abs(r.Time-mean/all))
	}
	step := func(i int) float64 { return (x.Frequency[i] - x.Frequency[i-1]) * spread }
	if step(known-1) >= 0.5 || step(known) < 0.5 {
		t.Errorf("told to %g Hz, where each turns by %g of a turn, next %g", x.Frequency[known-1], step(known-1), step(known))
	}
	if !math.IsNaN(x.Unaligned.Group[known]) {
		t.Error("a group delay without a phase")
	}
}
