package timing_test

import (
	"math"
	"testing"

	"pappus/timing"
)

// TestMoreThanSold: 25 W into 8 ohm are 14.14 V, which draw 42 W from 4.73 ohm (Ohm's
// law); an amplifier sold with 50 W into 4 ohm has the same volts, and gives that.
func TestMoreThanSold(t *testing.T) {
	for _, test := range []struct {
		name       string
		watt, into float64
		says       bool
	}{
		{"25 W into 8 ohm", 25, 8, true},
		{"50 W into 4 ohm", 50, 4, false},
	} {
		t.Run(test.name, func(t *testing.T) {
			a := demo(t)
			w := &a.Wiring
			w.Watt, w.IntoOhm, w.Voltage, w.HasAmplifier, w.LongestString = test.watt, test.into, math.Sqrt(200), true, 2
			f, found := finding(plan(t, a), "amplifier_power")
			if found != test.says || found && math.Abs(f.Fact.(timing.ChannelDraw).Watt-42.2) > 0.1 {
				t.Errorf("%v: %+v", found, f)
			}
		})
	}
}
