package timing_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"pappus/layout/wiring"
	"pappus/timing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

// TestStringings: every channel's drivers are offered in every way, one of which
// is how they are strung, and none that is too low goes unnamed.
func TestStringings(t *testing.T) {
	p := plan(t, demo(t))
	channels := 0
	for _, s := range timing.Stringings(p) {
		channels += len(s.Channels)
		chosen := 0
		for _, o := range s.Options {
			drivers := 0
			for _, length := range o.Lengths() {
				drivers += length
			}
			if drivers != s.Drivers {
				t.Errorf("%s: not %d drivers", o, s.Drivers)
			}
			if o.Chosen {
				chosen++
				if o.Refused != nil {
					t.Errorf("%s is chosen and refused: %v", o, o.Refused)
				}
			}
			if low := o.LowestOhm < p.Array.Wiring.MinimumLoad; low != (o.Refused != nil) {
				t.Errorf("%s: %.3g ohm at the lowest, refused: %v", o, o.LowestOhm, o.Refused)
			} else if low && !errors.Is(o.Refused, wiring.ErrLoad) {
				t.Errorf("%s: %v", o, o.Refused)
			}
			if o.IsEqual() != (o.MostWatt < o.LeastWatt*(1+1e-9)) {
				t.Errorf("%s: %g to %g W", o, o.LeastWatt, o.MostWatt)
			}
			if strings.Contains(o.String(), "unequal") == o.IsEqual() {
				t.Errorf("%s is not named as what it is", o)
			}
		}
		if chosen != 1 {
			t.Errorf("%d drivers: %d ways are chosen", s.Drivers, chosen)
		}
	}
	if channels != len(p.Channels) {
		t.Errorf("%d channels, want %d", channels, len(p.Channels))
	}
}

// TestUnequalPower: by Ohm's law each driver of a string of 2 gets (3/2)^2 of the
// power of one in a string of 3 beside it, and the load is that of 2 R and 3 R in
// parallel.
func TestUnequalPower(t *testing.T) {
	a := demo(t)
	a.Wiring.LongestString = len(a.Mounts) // as many as the least smear takes: five in one string
	p := plan(t, a)
	ohm := p.Array.Driver.DCOhm
	for _, s := range timing.Stringings(p) {
		if s.Drivers != 5 {
			continue
		}
		for _, o := range s.Options {
			if len(o.Arrangement) != 2 || o.Lengths()[0] != 3 || o.Lengths()[1] != 2 {
				continue
			}
			if math.Abs(o.MostWatt/o.LeastWatt-2.25) > 1e-9 || math.Abs(o.DCOhm-ohm*6/5) > 1e-12 {
				t.Errorf("%s: %g times the power, %g ohm", o, o.MostWatt/o.LeastWatt, o.DCOhm)
			}
			if all := 2*o.MostWatt + 3*o.LeastWatt; math.Abs(all/o.Watt-1) > 1e-9 {
				t.Errorf("the drivers get %g W of %g W", all, o.Watt)
			}
			return
		}
	}
	t.Fatal("the demo has no channel of five drivers in strings of 3 and 2")
}

// TestWire: 10 m of 0.75 mm2 into 4.73 ohm is 0.46 ohm (IEC 60028), 0.81 dB, and only
// twice the section and more brings that under 0.3 dB.
func TestWire(t *testing.T) {
	a := demo(t)
	if got, present := plan(t, a).Wire(); present {
		t.Errorf("no wire, and yet %+v", got)
	}
	a.Wiring.WireLength, a.Wiring.WireSection = 10, 0.75e-6
	got, present := plan(t, a).Wire()
	want := timing.Wire{Length: 10, Section: 0.75e-6, Ohm: 0.46, Loss: 0.81, Least: 2.5e-6, Gauge: 14}
	if d := cmp.Diff(want, got, cmpopts.EquateApprox(0, 5e-3)); !present || d != "" {
		t.Error(d)
	}
}
