package document_test

import (
	"math"
	"slices"
	"testing"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/render/document"
	"pappus/timing"

	"gonum.org/v1/gonum/spatial/r3"
)

// planOf plans the built-in design with some changes.
func planOf(t *testing.T, change func(*design.Design)) *timing.Plan {
	t.Helper()
	d := design.Default()
	change(d)
	a, err := layout.Build(d)
	if err != nil {
		t.Fatal(err)
	}
	a.Coverage.Cells = 8
	p, err := timing.Make(t.Context(), a)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// TestBenchReadings adds resistances up by hand.
func TestBenchReadings(t *testing.T) {
	p := planOf(t, func(d *design.Design) { d.Wiring.WireLength, d.Wiring.WireSection = 5, 0.75e-6 })
	b := document.OfBench(p)
	const copper = 1.724e-8 // ohm m at 20 C, IEC 60028
	per := copper / 0.75e-6 // ohm for each metre of single wire
	for _, c := range b.Channels {
		siemens := 0.0
		for i, s := range c.Strings {
			ohm := float64(len(s.Drivers))*p.Array.Driver.DCOhm + per*float64(s.Wire)
			siemens += 1 / ohm
			for name, r := range map[string]struct {
				got  document.Reading
				want float64
			}{"alone": {s.Alone, ohm}, "joined": {s.Joined, 1 / siemens}} {
				if math.Abs(float64(r.got.Ohm)-r.want) > 0.006 || math.Abs(float64(r.got.Low)-0.95*r.want) > 0.006 || math.Abs(float64(r.got.High)-1.05*r.want) > 0.006 {
					t.Errorf("channel %d, string %d %s: %+v, want %.3f give or take 5 %%", c.Channel, i+1, name, r.got, r.want)
				}
			}
		}
		if want := 1/siemens + 10*per; math.Abs(float64(c.Whole.Ohm)-want) > 0.006 {
			t.Errorf("channel %d as a whole: %v, want %.3f", c.Channel, c.Whole.Ohm, want)
		}
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
			p := planOf(t, test.change)
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
	p := planOf(t, func(*design.Design) {})
	p.Array.Mounts = slices.Clone(p.Array.Mounts) // others share them
	for angle, halves := range map[float64]bool{110: false, 120: true} {
		sin, cos := math.Sincos(angle * math.Pi / 180)
		p.Array.Mounts[0].Point = r3.Vec{X: 0.15 * sin, Z: 0.15 * cos}
		if b := document.OfBench(p); b.Halves != halves {
			t.Errorf("a driver at %g degrees: on two discs: %t", angle, b.Halves)
		}
	}
}
