package timing_test

import (
	"math"
	"testing"

	"pappus/layout"
	"pappus/timing"

	"github.com/google/go-cmp/cmp"
	"gonum.org/v1/gonum/spatial/r3"
)

// tilted turns an array's mounts about the y axis by an angle in degrees.
func tilted(a *layout.Array, degrees float64) *layout.Array {
	out := *a
	out.Mounts = append([]layout.Mount(nil), a.Mounts...)
	turn := r3.NewRotation(degrees*math.Pi/180, r3.Vec{Y: 1})
	for m := range out.Mounts {
		out.Mounts[m].Point, out.Mounts[m].Normal = turn.Rotate(a.Mounts[m].Point), turn.Rotate(a.Mounts[m].Normal)
	}
	return &out
}

// TestDodecahedronIsEvenInParallel: a source of twelve drivers in parallel is what rooms
// are measured with by ISO 3382-1, and its makers claim its limits up to the octave of
// 4 kHz (common practice; T. W. Leishman, S. Rollins and H. M. Smith, J. Acoust. Soc. Am.
// 120 (2006) 1411, measure such bodies; from memory): so it is here, however it is
// turned, and to within a hundredth of a decibel at 500 Hz, for a rigid ball; nearest to
// the limit at 4 kHz, by 5.1 of 6 dB. Delays aim it at the spot: then it keeps no limit
// from 250 Hz to 2 kHz. The floor below it changes nothing.
func TestDodecahedronIsEvenInParallel(t *testing.T) {
	for _, degrees := range []float64{0, 10, 20, 31.717, 45, 58.283} {
		o, err := plan(t, tilted(dodecahedron(t, false), degrees)).Omni()
		if err != nil {
			t.Fatal(err)
		}
		if to := timing.UpTo(o.AsBuilt); math.Abs(to-3981) > 1 {
			t.Errorf("turned by %g degrees it passes up to %g Hz in parallel: %+v", degrees, to, o.AsBuilt)
		}
		for i, r := range o.AsBuilt {
			if r.Band < 600 && math.Abs(r.Deviation) > 0.01 {
				t.Errorf("turned by %g degrees, in parallel: %+v", degrees, r)
			}
			if aimed := o.Aligned[i]; r.Band > 200 && r.Band < 2500 && aimed.Pass {
				t.Errorf("turned by %g degrees it passes with the delays: %+v", degrees, aimed)
			}
		}
		over, err := plan(t, tilted(dodecahedron(t, true), degrees)).Omni()
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(o, over); diff != "" {
			t.Errorf("turned by %g degrees, over a floor: %s", degrees, diff)
		}
	}
}

// TestNothingBelowTheSurface: round the upright circle levels are no numbers where it
// runs below the surface, and numbers elsewhere, without a surface everywhere.
func TestNothingBelowTheSurface(t *testing.T) {
	a := dodecahedron(t, true)
	a.Spot = r3.Vec{X: 1.5, Z: 0.4}
	a.Surface.Height = -0.3
	p := plan(t, a)
	open := *a
	open.Surface.Present = false
	free, below := plan(t, &open), 0
	for i, angle := range p.Vertical.Angle {
		under := r3.Norm(a.Spot)*math.Sin(angle) < a.Surface.Height
		if under {
			below++
		}
		for b := range p.Vertical.Band {
			for name, v := range map[string][2]float64{"with": {p.Vertical.Aligned[b][i], free.Vertical.Aligned[b][i]}, "without": {p.Vertical.Unaligned[b][i], free.Vertical.Unaligned[b][i]}} {
				if math.IsNaN(v[0]) != under || math.IsNaN(v[1]) {
					t.Errorf("%s delays, %.0f degrees: %g dB over a floor, %g dB in the open", name, angle*180/math.Pi, v[0], v[1])
				}
			}
		}
	}
	if below < 30 || below > 60 {
		t.Errorf("%d of %d places below the floor", below, len(p.Vertical.Angle))
	}
}
