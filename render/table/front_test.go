package table_test

import (
	"bytes"
	"encoding/csv"
	"strings"
	"testing"

	"pappus/layout"
	"pappus/render/table"
	"pappus/timing"

	"github.com/google/go-cmp/cmp"
)

// TestFrontOnScreens: both screens that strings are read from show what shorter ones cost
// and bring, mark the plan's own and say by which rule it is chosen; the table has the
// same rows.
func TestFrontOnScreens(t *testing.T) {
	tests := []struct {
		name     string
		with     func(*layout.Array)
		own      string // the row that is the plan's
		has, not []string
	}{
		{"as the rule has it", func(*layout.Array) {}, "up to 2", []string{"The rule takes the loudest"}, []string{"overrides", "stands"}},
		{"as the design has it", func(a *layout.Array) { a.Wiring.LongestString = 3 }, "up to 3", []string{"the rule's", "longest_string in the design overrides it"}, nil},
		{"more than drivers stand", func(a *layout.Array) { a.Wiring.Voltage = 14 }, "up to 3", []string{"3.77*", "* all that a driver stands"}, nil},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			a := *demo(t).Array
			test.with(&a)
			p, err := timing.Make(&a)
			if err != nil {
				t.Fatal(err)
			}
			var b, c bytes.Buffer
			if err := table.ChannelScreen(&b, p, settings(t, p), false); err != nil {
				t.Fatal(err)
			}
			if err := table.WiringScreen(&c, p, nil, false); err != nil {
				t.Fatal(err)
			}
			for _, screen := range []string{b.String(), c.String()} {
				_, rows, found := strings.Cut(screen, "strings of  smear us  comb onset  louder dB  V each  least ohm\n")
				rows, _, _ = strings.Cut(rows, "\n\n")
				if !found {
					t.Fatalf("no front in\n%s", screen)
				}
				var marked []string
				for _, row := range strings.Split(rows, "\n") {
					if strings.HasSuffix(row, " <") {
						marked = append(marked, strings.TrimSpace(row[:10]))
					}
					if len(row) > 80 {
						t.Errorf("%d letters: %s", len(row), row)
					}
				}
				if d := cmp.Diff([]string{test.own}, marked); d != "" {
					t.Errorf("%s\n%s", d, rows)
				}
				rows = strings.Join(strings.Fields(rows), " ")
				for _, part := range test.has {
					if !strings.Contains(rows, part) {
						t.Errorf("no %q in %s", part, rows)
					}
				}
				for _, part := range test.not {
					if strings.Contains(rows, part) {
						t.Errorf("%q in %s", part, rows)
					}
				}
			}
			b.Reset()
			if err := table.Front(&b, p); err != nil {
				t.Fatal(err)
			}
			all, err := csv.NewReader(&b).ReadAll()
			if err != nil || len(all) != 1+len(p.Front) {
				t.Fatalf("%d rows for %d splits: %v", len(all), len(p.Front), err)
			}
			for i, f := range p.Front {
				if got := all[i+1]; got[len(got)-1] == "true" != f.Chosen || "up to "+got[0] != test.own && f.Chosen {
					t.Errorf("%v for %+v", got, f)
				}
			}
		})
	}
}

// TestVoltWords: 2.83 V is called that, and an amplifier that the design describes by what
// it gives, with what keeps the array from more.
func TestVoltWords(t *testing.T) {
	for _, test := range []struct {
		name     string
		wiring   func(*layout.Wiring)
		has, not []string
	}{
		{"none", func(*layout.Wiring) {}, []string{"Pink noise at 2.83 V (RMS) comes to"}, []string{"full", "limit"}},
		{"volts", func(w *layout.Wiring) { w.Voltage, w.HasAmplifier = 4, true },
			[]string{"Pink noise at 4 V (RMS), the amplifier's full output, comes to", "up to 2 V and 0.56 W of the 2 W that it stands long: the amplifier's voltage is the limit"}, nil},
		{"watts", func(w *layout.Wiring) {
			w.Voltage, w.HasAmplifier, w.Watt, w.IntoOhm, w.LongestString = 14.142, true, 50, 4, 2
		}, []string{"14.1 V (RMS), the full output of an amplifier of 50 W into 4 ohm, comes to", "up to 7.07 V and 7 W, and stands 2 W long: the drivers are the limit, at 7.54 V from the amplifier"}, nil},
	} {
		t.Run(test.name, func(t *testing.T) {
			a := *demo(t).Array
			test.wiring(&a.Wiring)
			p, err := timing.Make(&a)
			if err != nil {
				t.Fatal(err)
			}
			words := strings.Join(strings.Fields(table.ProtectionWords(p)), " ")
			for _, part := range test.has {
				if !strings.Contains(words, part) {
					t.Errorf("no %q in %s", part, words)
				}
			}
			for _, part := range test.not {
				if strings.Contains(words, part) {
					t.Errorf("%q in %s", part, words)
				}
			}
		})
	}
}
