package table_test

import (
	"bytes"
	"encoding/csv"
	"strings"
	"testing"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/render/table"
	"pappus/render/words"
)

func fits(t *testing.T, flangeMM float64) (*layout.Array, layout.Fits) {
	t.Helper()
	d := design.Default()
	d.Driver.FlangeRadius = flangeMM / 2000
	a, err := layout.Build(d)
	if err != nil {
		t.Fatal(err)
	}
	return a, a.Fit()
}

func TestFit(t *testing.T) {
	for _, test := range []struct {
		name   string
		flange float64
		says   string
		first  string
	}{
		{"fits", 40, "All 39 drivers fit.", "true"},
		{"too wide", 80, "39 of 39 drivers do not fit: 1, 2, 3, 4, 5, 6, 7, 8 and others", "false"},
	} {
		t.Run(test.name, func(t *testing.T) {
			a, f := fits(t, test.flange)
			if got := words.Fit(a, f); !strings.HasPrefix(got, test.says) {
				t.Errorf("says %q", got)
			}
			var b bytes.Buffer
			if err := table.Fit(&b, a, f); err != nil {
				t.Fatal(err)
			}
			rows, err := csv.NewReader(&b).ReadAll()
			if err != nil {
				t.Fatal(err)
			}
			if len(rows) != 40 || rows[1][1] != test.first || strings.Contains(b.String(), "NaN") || strings.Contains(b.String(), "Inf") {
				t.Errorf("rows %d, first %v", len(rows), rows[1])
			}
		})
	}
}
