package table_test

import (
	"bytes"
	"encoding/csv"
	"strings"
	"testing"

	"pappus/render/table"
	"pappus/timing/tolerance"
)

// TestToleranceTables: a row for each figure of each cause, a row for each frequency, and a
// screen of at most 80 letters.
func TestToleranceTables(t *testing.T) {
	s, err := tolerance.Run(t.Context(), demo(t), tolerance.Setting{Spread: tolerance.Spread{Level: 2}, Runs: tolerance.LeastRuns, Seed: 1})
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	if err := table.Tolerance(&b, s); err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(&b).ReadAll()
	if err != nil || len(rows) != 1+2*6 || rows[1][0] != "sensitivity" || rows[7][0] != "all together" {
		t.Fatalf("%v, %v", rows, err)
	}
	for _, r := range rows[1:] {
		if v := numbersOf(t, r, 3); len(v) == 10 && !(v[1] <= v[0] && v[0] <= v[2] && v[0] <= v[3] && v[3] <= v[6]) {
			t.Errorf("%v", r)
		}
	}
	b.Reset()
	if err := table.ToleranceResponse(&b, s); err != nil {
		t.Fatal(err)
	}
	if rows, err := csv.NewReader(&b).ReadAll(); err != nil || len(rows) != 1+len(s.Frequency) {
		t.Errorf("%d rows, %v", len(rows), err)
	}
	b.Reset()
	if err := table.ToleranceScreen(&b, s, false); err != nil {
		t.Fatal(err)
	}
	for line := range strings.Lines(b.String()) {
		if len(strings.TrimRight(line, "\n")) > 80 {
			t.Errorf("%q has %d letters", line, len(line))
		}
	}
}
