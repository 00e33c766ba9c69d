package table_test

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"strings"
	"testing"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/render/table"
	"pappus/render/words"
)

func TestBox(t *testing.T) {
	for _, test := range []struct {
		name   string
		change func(*design.Design)
		says   []string
		rows   int // at least
	}{
		{"demo", func(*design.Design) {}, []string{"Closed, they resonate at 211 Hz with a Q of 1.18", "too heavy", "take 73 holes or more; with 73 the cloth is to have 58 Pa s/m", "Stuffing is a starting point"}, 18},
		{"many small holes", func(d *design.Design) { d.Box.VentHoles, d.Box.VentRadius = 400, 0.002 }, []string{"400 holes of 4 mm"}, 18},
		{"no small-signal values", func(d *design.Design) { d.Driver.Small.Fs = 0; d.Driver.Small.BL = 0 }, []string{"No vent: "}, 7},
		{"target above", func(d *design.Design) { d.Box.TargetQ = 2 }, []string{"No vent: "}, 10},
	} {
		t.Run(test.name, func(t *testing.T) {
			d := design.Default()
			test.change(d)
			a, err := layout.Build(d)
			if err != nil {
				t.Fatal(err)
			}
			h, err := a.Hollow()
			if err != nil {
				t.Fatal(err)
			}
			var screen bytes.Buffer
			if err := table.SheetsScreen(&screen, a, layout.Fits{}, h, nil); err != nil {
				t.Fatal(err)
			}
			words := screen.String()
			for _, want := range test.says {
				if !strings.Contains(strings.Join(strings.Fields(words), " "), want) {
					t.Errorf("does not say %q:\n%s", want, words)
				}
			}
			for _, line := range strings.Split(words, "\n") {
				if len(line) > 80 {
					t.Errorf("a line of %d columns: %s", len(line), line)
				}
			}
			var b bytes.Buffer
			if err := table.Box(&b, h, 1); err != nil {
				t.Fatal(err)
			}
			rows, err := csv.NewReader(&b).ReadAll()
			if err != nil || len(rows) < test.rows {
				t.Errorf("%d rows, %v:\n%v", len(rows), err, rows)
			}
		})
	}
}

func TestSegments(t *testing.T) {
	a, err := layout.Build(design.Default())
	if err != nil {
		t.Fatal(err)
	}
	p, err := a.Segments()
	if err != nil {
		t.Fatal(err)
	}
	var b bytes.Buffer
	if err := table.Segments(&b, a, p); err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(&b).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	drivers := 0
	for _, row := range rows[1:] {
		drivers += len(strings.Fields(row[len(row)-1]))
	}
	says := func() string { return strings.Join(words.Shell(a, p, "", ""), "\n") }
	if drivers != len(a.Mounts) || !strings.Contains(says(), fmt.Sprintf("in %d segments", len(rows)-1)) {
		t.Errorf("%d drivers in %d rows; %s", drivers, len(rows)-1, says())
	}
	p.Segments = p.Segments[:1]
	if got := says(); !strings.Contains(got, "whole") {
		t.Errorf("says %q", got)
	}
}
