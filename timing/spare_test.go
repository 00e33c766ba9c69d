package timing_test

import (
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"pappus/layout"
	"pappus/layout/advice"
	"pappus/timing"
)

// finding returns the finding of a code, if the plan has it.
func finding(p *timing.Plan, code string) (advice.Finding, bool) {
	i := slices.IndexFunc(p.Warnings, func(f advice.Finding) bool { return f.Code == code })
	if i < 0 {
		return advice.Finding{}, false
	}
	return p.Warnings[i], true
}

// onOne lays so many drivers evenly on a ball, on so many channels, as the demo's:
// 7.1 ohm, 4 ohm allowed, 2.83 V.
func onOne(t *testing.T, drivers, channels int) *layout.Array {
	a := even(t, drivers, false)
	a.Driver.DCOhm, a.Wiring.Voltage, a.Wiring.Channels = 7.1, 2.83, channels
	a.Wiring.Split = "arrival"
	return a
}

// TestStringsWaste: by Ohm's law. 52 drivers on one channel can only be 4 strings of 13,
// 7.1 ohm * 13/4 = 23 ohm, which give each 2.83 V / 13 and so (2.83/13)^2 / 7.1 W = 7 mW;
// 49 as 7 by 7 are 7.1 ohm and 7/4 of the sound, 4.9 dB; 4 strings of 7 and 4 of 6 are 8 for
// 4, 6 dB, 7.1 ohm / (4/7 + 4/6) = 5.7 ohm, and their drivers differ by 20 log10(7/6) dB.
func TestStringsWaste(t *testing.T) {
	tests := []struct {
		name              string
		drivers, channels int
		empty             int
		gain              float64 // dB, by the strings alone
		says              []string
	}{
		{"52 on one", 52, 1, 3, 20 * math.Log10(7.0/4), []string{"52 drivers of channel 1", "4 strings of 13", "23.1 ohm", "1/13 of the 2.83 V", "6.7 mW", "49 drivers go in strings of 7", "4 strings of 7 and 4 strings of 6", "6.0 dB more, with drivers 1.3 dB apart"}},
		{"13 on one", 13, 1, 1, 20 * math.Log10(4), []string{"13 drivers of channel 1", "1 string of 13"}},
		{"53 on one", 53, 1, 4, 20 * math.Log10(7), []string{"1 string of 53", "49 drivers go in strings of 7"}},
		{"5 on four", 5, 4, 1, 20 * math.Log10(2*4.0/5), []string{"all others are turned down to that", "4 drivers need no strings"}},
		{"49 on one", 49, 1, 0, 0, nil},
		{"52 on eight", 52, 8, 0, 0, nil},
		{"2 on two", 2, 2, 0, 0, nil},
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
			for _, part := range test.says {
				if !strings.Contains(f.String(), part) {
					t.Errorf("no %q in %q", part, f)
				}
			}
			if f.Rank != advice.Cost {
				t.Errorf("rank %v", f.Rank)
			}
			var empty []string
			if m := regexp.MustCompile(`places? ([0-9, ]+) empty`).FindStringSubmatch(f.Cure); m != nil {
				empty = strings.Split(m[1], ", ")
			}
			cured := *a
			cured.Mounts = nil
			for _, m := range a.Mounts {
				if !slices.Contains(empty, strconv.Itoa(m.ID)) {
					cured.Mounts = append(cured.Mounts, m)
				}
			}
			q := plan(t, &cured)
			if len(q.Arrivals) != test.drivers-test.empty {
				t.Fatalf("%d left by %q", len(q.Arrivals), f.Cure)
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
