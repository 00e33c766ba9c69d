package timing_test

import (
	"math"
	"slices"
	"testing"

	"pappus/layout/advice"
	"pappus/layout/wiring"
	"pappus/timing"

	"github.com/google/go-cmp/cmp"
)

// finding returns the finding of a code, if the plan has it.
func finding(p *timing.Plan, code string) (timing.Finding, bool) {
	i := slices.IndexFunc(p.Warnings, func(f timing.Finding) bool { return f.Code == code })
	if i < 0 {
		return timing.Finding{}, false
	}
	return p.Warnings[i], true
}

// TestStringsWaste: by Ohm's law. 52 drivers on one channel can only be 4 strings of 13,
// 7.1 ohm * 13/4 = 23 ohm, which give each 2.83 V / 13 and so (2.83/13)^2 / 7.1 W = 7 mW;
// 49 as 7 by 7 are 7.1 ohm and 7/4 of the sound, 4.9 dB; 4 strings of 7 and 4 of 6 are 8 for
// 4, 6 dB, and their drivers differ by 20 log10(7/6) dB.
func TestStringsWaste(t *testing.T) {
	tests := []struct {
		name              string
		drivers, channels int
		empty             int
		gain              float64 // dB, by the strings alone
		strings           wiring.Arrangement
		watt              float64 // of each
		left, series      int
		unequal           float64 // dB; 0: none
	}{
		{"52 on one", 52, 1, 3, 20 * math.Log10(7.0/4), wiring.Arrangement{{Series: 13, Parallel: 4}}, 6.7e-3, 49, 7, 20 * math.Log10(2)},
		{"13 on one", 13, 1, 1, 20 * math.Log10(4), wiring.Arrangement{{Series: 13, Parallel: 1}}, 0, 12, 3, 0},
		{"53 on one", 53, 1, 4, 20 * math.Log10(7), wiring.Arrangement{{Series: 53, Parallel: 1}}, 0, 49, 7, 20 * math.Log10(8)},
		{"5 on four", 5, 4, 1, 20 * math.Log10(2*4.0/5), wiring.Arrangement{{Series: 2, Parallel: 1}}, 0, 4, 1, 0},
		{"49 on one", 49, 1, 0, 0, nil, 0, 0, 0, 0},
		{"52 on eight", 52, 8, 0, 0, nil, 0, 0, 0, 0},
		{"2 on two", 2, 2, 0, 0, nil, 0, 0, 0, 0},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			a := onOne(t, test.drivers, test.channels)
			p := plan(t, a)
			f, found := finding(p, "strings_waste")
			if found != (test.empty > 0) {
				t.Fatalf("found %v: %v", found, f)
			}
			if !found {
				return
			}
			waste := f.Fact.(timing.StringsWaste)
			if f.Rank != advice.Cost || waste.Channels != test.channels || waste.Drivers != len(p.Channels[waste.Channel-1].Mounts) {
				t.Errorf("rank %v, %+v", f.Rank, waste)
			}
			if d := cmp.Diff(test.strings, waste.Strings); d != "" || test.watt > 0 && math.Abs(waste.Watt/test.watt-1) > 0.01 {
				t.Errorf("%+v: %s", waste, d)
			}
			if waste.Empty == nil || waste.Empty.Drivers != test.left || waste.Empty.Series != test.series {
				t.Fatalf("left empty: %+v", waste.Empty)
			}
			if u := waste.Unequal; (u != nil) != (test.unequal > 0) || u != nil && (math.Abs(u.Gain-test.unequal) > 1e-9 || math.Abs(u.Apart-20*math.Log10(7.0/6)) > 1e-9) {
				t.Errorf("unequal: %+v", u)
			}
			cured := *a
			cured.Mounts = nil
			for _, m := range a.Mounts {
				if !slices.Contains(waste.Empty.Places, m.ID) {
					cured.Mounts = append(cured.Mounts, m)
				}
			}
			q := plan(t, &cured)
			if len(q.Arrivals) != test.drivers-test.empty {
				t.Fatalf("%d left by %+v", len(q.Arrivals), waste.Empty)
			}
			if _, again := finding(q, "strings_waste"); again {
				t.Errorf("the cure cures nothing: %v", q.Warnings)
			}
			louder := func(p *timing.Plan) float64 {
				sum := 0.0
				for i, hz := range p.Response.Frequency {
					if hz < 300 {
						sum = p.Response.Aligned[i] + 20*math.Log10(p.DriverVolt())
					}
				}
				return sum
			}
			if gain := louder(q) - louder(p); math.Abs(gain-test.gain) > 1 {
				t.Errorf("%.2f dB louder at low tones, the strings alone promise %.2f", gain, test.gain)
			}
		})
	}
}
