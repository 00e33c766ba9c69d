package damping_test

import (
	"errors"
	"math"
	"testing"

	"pappus/layout"
	"pappus/layout/box"
	"pappus/layout/dampinglog"
	"pappus/timing/damping"
	"pappus/timing/impedancefit"
)

// TestSounding: what sounds of light vents that read 0.70 has the Q of 0.91 that the roots of the box's own
// polynomial have (by NumPy 1.24 roots, 39 drivers of 150 Hz with vents of twice the resistance), and where as little
// is read as can be, the target is there. Nothing is told of closed bodies.
func TestSounding(t *testing.T) {
	air := box.Air{Density: 1.2, SoundSpeed: 343.8}
	d := box.Driver{Fs: 150, Qms: 3.2, Qes: 1.14, Qts: 3.2 * 1.14 / (3.2 + 1.14), Re: 7.1, Vas: 0.136277e-3}
	v, err := box.Damp(d, 39, 5.435325e-3, 0.707, air)
	if err != nil {
		t.Fatal(err)
	}
	h := layout.Hollow{Driver: d, Vented: &v, Vent: box.Vent{Depth: 0}}
	open := func(vents int, mm, q float64) damping.Trial {
		return damping.Trial{Trial: dampinglog.Trial{Vents: vents, VentMM: mm}, Q: impedancefit.Estimate{Value: q}}
	}
	alpha := 39 * d.Vas / 5.435325e-3
	twice := readQ(211, func(hz float64) complex128 { // the circuit, written out
		w := complex(0, hz/d.Fs)
		vent := w * complex(2*math.Pi*d.Fs*2*15904*5.435325e-3/(1.2*343.8*343.8), 0)
		moving := w + complex(1/d.Qms, 0) + 1/w + complex(alpha, 0)/w*vent/(1+vent)
		return complex(d.Re, 0) * (1 + complex(1/d.Qes, 0)/moving)
	})
	for _, c := range []struct {
		name  string
		trial damping.Trial
		q     float64
	}{
		{"half way", open(100000, 30, twice), 0.912},
		{"all", open(100000, 30, 0.6), 0.707},
		{"next to closed", open(100000, 30, 1.17), 1.18},
	} {
		got := damping.SoundingOf(c.trial, h, damping.Goal{Q: 0.707})
		if got == nil || math.Abs(got.Q/c.q-1) > 0.03 || math.Abs(got.Best/0.707-1) > 0.01 || math.Abs(got.Read/0.608-1) > 0.03 {
			t.Errorf("%s: %+v, want %g", c.name, got, c.q)
		}
	}
	// Few holes carry much air, and come to no target.
	few, err := box.DampHeavy(d, 39, 5.435325e-3, 0.707, box.Vent{Radius: 15e-3, Number: 12}.Mass(air), air)
	if got := damping.SoundingOf(open(12, 30, 0.9), h, damping.Goal{Q: 0.707}); !errors.Is(err, box.ErrTarget) || got == nil || got.Best != few.Q || got.Best < 0.75 {
		t.Errorf("12 holes: %+v, want %g (%v)", got, few.Q, err)
	}
	if got := damping.SoundingOf(open(0, 0, 0.7), h, damping.Goal{Q: 0.707}); got != nil {
		t.Errorf("closed: %+v", got)
	}
	if got := damping.SoundingOf(open(4, 30, 0.7), layout.Hollow{}, damping.Goal{Q: 0.707}); got != nil {
		t.Errorf("nothing known: %+v", got)
	}
}
