package table_test

import (
	"bytes"
	"encoding/csv"
	"strings"
	"testing"

	"pappus/render/table"
	"pappus/timing"
)

// stepped plans the demo for a processor with a rate in Hz and a step in s.
func stepped(t *testing.T, rate, step float64) (*timing.Plan, []timing.ProcessorRow) {
	t.Helper()
	a := demo(t).Array
	a.Processor.Rate, a.Processor.Step = rate, step
	p, err := timing.Make(t.Context(), a)
	if err != nil {
		t.Fatal(err)
	}
	rows := settings(t, p)
	return p, rows
}

// TestRoundingWords: a step of 100 us puts channels of the demo out of step at 8 kHz,
// whose period is 125 us, and says so in words in place of a figure; a rate of 8 kHz
// has no figure for what it does not carry; a fine step says nothing.
func TestRoundingWords(t *testing.T) {
	tests := []struct {
		name       string
		rate, step float64
		has, not   []string
	}{
		{"coarse", 48000, 100e-6, []string{"out of step", "Look out: the steps put channel", "step_us", "are in every delay"}, nil},
		{"a low rate", 8000, 125e-6, []string{"      -      -\n", "           -     -6.0"}, []string{"out of step"}},
		{"fine", 48000, 0.1e-6, []string{"0.00 dB", "costs all together, dB"}, []string{"out of step", "are in every delay", "-0.00"}},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			p, rows := stepped(t, test.rate, test.step)
			var b bytes.Buffer
			if err := table.ChannelScreen(&b, p, rows, false); err != nil {
				t.Fatal(err)
			}
			for _, want := range test.has {
				if !strings.Contains(b.String(), want) {
					t.Errorf("no %q in\n%s", want, b.String())
				}
			}
			for _, not := range test.not {
				if strings.Contains(b.String(), not) {
					t.Errorf("%q in\n%s", not, b.String())
				}
			}
		})
	}
}

// TestProcessorTableIsWhole: every row has the rate, every filter says how its
// coefficients are meant, and no cost is written where there is none.
func TestProcessorTableIsWhole(t *testing.T) {
	p, rows := stepped(t, 48000, 100e-6)
	var b bytes.Buffer
	if err := table.Processor(&b, rows, p.Array.Processor.Rate); err != nil {
		t.Fatal(err)
	}
	got, err := csv.NewReader(&b).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	column := map[string]int{}
	for i, name := range got[0] {
		column[name] = i
	}
	empty := 0
	for _, r := range got[1:] {
		if r[column["rate_hz"]] != "48000" || (r[column["filter"]] != "") != strings.Contains(r[column["signs"]], "a1 and a2 subtracted") {
			t.Errorf("%v", r)
		}
		if r[column["cost_8k_db"]] == "" {
			if empty++; r[column["out_of_step_hz"]] == "" {
				t.Errorf("no cost and not out of step: %v", r)
			}
		}
	}
	if empty == 0 {
		t.Error("nothing is out of step")
	}
	b.Reset()
	if err := table.Rounding(&b, p.Rounding); err != nil {
		t.Fatal(err)
	}
	if n := strings.Count(b.String(), "\n"); n != 8 {
		t.Errorf("%d rows for seven octaves and a head:\n%s", n, b.String())
	}
}
