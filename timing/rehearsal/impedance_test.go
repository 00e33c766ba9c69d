package rehearsal_test

import (
	"errors"
	"math"
	"math/cmplx"
	"testing"

	"pappus/timing/impedancefit"
	"pappus/timing/rehearsal"
)

// TestImpedance: what is made up with an open string is taken for just that, and without for
// nothing; the values behind it come back within the meter's noise.
func TestImpedance(t *testing.T) {
	p, _ := demo(t)
	bank, driver, _ := p.PlannedLoad(0)
	for _, test := range []struct {
		name string
		open []int
		want string
	}{
		{"whole", nil, "all strings play"},
		{"the last string", []int{2}, "a string of 2 is open"},
		{"two strings", []int{0, 1}, "2 strings of 2 are open"},
	} {
		t.Run(test.name, func(t *testing.T) {
			points, known, err := rehearsal.Impedance(p, 0, test.open, 3)
			if err != nil || !known {
				t.Fatal(known, err)
			}
			l, err := impedancefit.Compare(points, bank, driver)
			if err != nil || !l.Sure || l.Cause.String() != test.want {
				t.Errorf("%v, sure %v, %v; want %s", l.Cause, l.Sure, err, test.want)
			}
			f, err := impedancefit.Best(points)
			if err != nil {
				t.Fatal(err)
			}
			// The box raises the resonance; it must be where the plan's own curve is highest.
			top, most := 0.0, 0.0
			for hz := 100.0; hz < 400; hz += 0.5 {
				if ohm := cmplx.Abs(driver.At(hz)); ohm > most {
					top, most = hz, ohm
				}
			}
			if off := math.Abs(f.Resonance.Value/top - 1); off > 0.01 {
				t.Errorf("resonance at %.1f Hz, the plan's is at %.1f", f.Resonance.Value, top)
			}
		})
	}
	for _, test := range []struct {
		channel int
		open    []int
	}{{-1, nil}, {99, nil}, {0, []int{3}}, {0, []int{0, 1, 2}}} {
		if _, _, err := rehearsal.Impedance(p, test.channel, test.open, 1); !errors.Is(err, rehearsal.ErrSetting) {
			t.Errorf("channel %d, strings %v: %v", test.channel, test.open, err)
		}
	}
}
