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
			p, err := timing.Make(t.Context(), &a)
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
