package sheets_test

import (
	"bytes"
	"encoding/csv"
	"math"
	"strconv"
	"strings"
	"testing"

	"pappus/layout/design"
	"pappus/render/sheets"
	"pappus/testdata/planned"
)

// TestMarks works out distances over a ball from azimuths and elevations alone, by the haversine
// of the angle between two places, and holds the table of marks to them.
func TestMarks(t *testing.T) {
	p := planned.Demo(t, func(d *design.Design) {
		d.Body.Shape, d.Body.HasCut, d.Body.Cut = "ball", false, 0
		d.Mounts.On, d.Mounts.Count = "even", 40
	})
	files, err := sheets.Files(p, sheets.Options{NoShell: true})
	if err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	for _, f := range files {
		if f.Name == "marks.csv" {
			if err := f.Write(&out); err != nil {
				t.Fatal(err)
			}
		}
	}
	rows, err := csv.NewReader(&out).ReadAll()
	if err != nil || len(rows) != 1+len(p.Array.Own()) || len(rows[0]) != 9 {
		t.Fatalf("%d rows: %v", len(rows), err)
	}
	number := func(row []string, k int) float64 {
		v, err := strconv.ParseFloat(row[k], 64)
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
	radius := 1e3 * p.Array.Body.Radius
	for k := 3; k < 9; k += 2 {
		id := strings.Split(rows[0][k], "_")[2]
		var ref []string
		for _, r := range rows[1:] {
			if r[0] == id {
				ref = r
			}
		}
		for _, r := range rows[1:] {
			sin := func(a, b []string, column int) float64 {
				return math.Sin((number(a, column) - number(b, column)) * math.Pi / 360)
			}
			cos := func(a []string) float64 { return math.Cos(number(a, 2) * math.Pi / 180) }
			half := math.Asin(math.Sqrt(sin(r, ref, 2)*sin(r, ref, 2) + cos(r)*cos(ref)*sin(r, ref, 1)*sin(r, ref, 1)))
			// Degrees are rounded to 0.01, distances to 0.1 mm.
			off := 0.05 + 0.02*math.Pi/180*radius
			if d := 2 * radius * math.Sin(half); math.Abs(d-number(r, k)) > off {
				t.Errorf("mount %s: chord %s mm from %s, want %.2f", r[0], r[k], id, d)
			}
			if d := 2 * radius * half; math.Abs(d-number(r, k+1)) > off {
				t.Errorf("mount %s: string %s mm from %s, want %.2f", r[0], r[k+1], id, d)
			}
		}
	}
}
