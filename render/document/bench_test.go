package document_test

import (
	"math"
	"slices"
	"testing"

	"pappus/layout/design"
	"pappus/render/document"
	"pappus/testdata/planned"

	"gonum.org/v1/gonum/spatial/r3"
)

// TestBenchReadings adds resistances up by hand.
func TestBenchReadings(t *testing.T) {
	p := planned.Demo(t, func(d *design.Design) { d.Wiring.WireLength, d.Wiring.WireSection = 5, 0.75e-6 })
	b := document.OfBench(p)
	const copper = 1.724e-8                          // ohm m at 20 C, IEC 60028
	inside, outside := copper/0.5e-6, copper/0.75e-6 // ohm for each metre of single wire
	for _, c := range b.Channels {
		siemens := map[float64]float64{} // by how far the coils are off
		near := func(what string, r document.Reading, ohm func(off float64) float64) {
			for _, got := range []struct {
				off float64
				ohm document.Number
			}{{0, r.Ohm}, {-0.1, r.Low}, {0.1, r.High}} {
				if want := ohm(got.off); math.Abs(float64(got.ohm)-want) > 0.006 {
					t.Errorf("channel %d, %s: %+v, want %.3f", c.Channel, what, r, want)
				}
			}
		}
		for _, s := range c.Strings {
			ohm := func(off float64) float64 {
				return (1+off)*float64(len(s.Drivers))*p.Array.Driver.DCOhm + inside*float64(s.Wire)
			}
			for _, off := range []float64{-0.1, 0, 0.1} {
				siemens[off] += 1 / ohm(off)
			}
			near("alone", s.Alone, ohm)
			near("joined", s.Joined, func(off float64) float64 { return 1 / siemens[off] })
		}
		near("whole", c.Whole, func(off float64) float64 { return 1/siemens[off] + 10*outside })
	}
	if len(b.Joints) != len(p.Array.Mounts) || b.Halves {
		t.Errorf("%d joints of %d drivers, on two discs: %t", len(b.Joints), len(p.Array.Mounts), b.Halves)
	}
}

// TestBenchFromInside: in a dome seen from below, the front is up and the loudspeaker's left
// at the right; a ball's lower half is seen from above.
func TestBenchFromInside(t *testing.T) {
	ball := func(d *design.Design) {
		d.Body.Shape, d.Body.HasCut, d.Mounts.On, d.Mounts.Count, d.Mounts.Skip = "ball", false, "even", 24, nil
		d.Wiring.Channels = 2
		d.Surface.Present = false
	}
	for _, test := range []struct {
		name   string
		change func(*design.Design)
		halves bool
	}{
		{"the dome", func(*design.Design) {}, false},
		{"a ball", ball, true},
	} {
		t.Run(test.name, func(t *testing.T) {
			p := planned.Demo(t, test.change)
			b := document.OfBench(p)
			if b.Halves != test.halves {
				t.Fatalf("on two discs: %t", b.Halves)
			}
			lower := 0
			for i, j := range b.Joints {
				at := p.Array.Mounts[i].Point
				if math.Hypot(float64(j.Right), float64(j.Up)) > 1.0001 {
					t.Errorf("driver %d is beyond the rim", j.ID)
				}
				if math.Abs(at.X) > 1e-6 && at.X > 0 != (j.Up > 0) {
					t.Errorf("driver %d is %g m before the middle, and %g up", j.ID, at.X, float64(j.Up))
				}
				if left := at.Y > 0; math.Abs(at.Y) > 1e-6 && left == (j.Right > 0) == j.Lower {
					t.Errorf("driver %d is %g m to the left, lower: %t, and %g right", j.ID, at.Y, j.Lower, float64(j.Right))
				}
				if j.Lower {
					lower++
				}
			}
			if test.halves && (lower == 0 || lower == len(b.Joints)) {
				t.Errorf("%d of %d drivers are in the lower half", lower, len(b.Joints))
			}
		})
	}
}

// TestOneDisc draws a body on one disc up to where the projection is more than twice as wide along
// the rim as towards the middle, and on two beyond.
func TestOneDisc(t *testing.T) {
	p := planned.Demo(t, nil)
	p.Array.Mounts = slices.Clone(p.Array.Mounts) // others share them
	for angle, halves := range map[float64]bool{110: false, 120: true} {
		sin, cos := math.Sincos(angle * math.Pi / 180)
		p.Array.Mounts[0].Point = r3.Vec{X: 0.15 * sin, Z: 0.15 * cos}
		if b := document.OfBench(p); b.Halves != halves {
			t.Errorf("a driver at %g degrees: on two discs: %t", angle, b.Halves)
		}
	}
}
