package main

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/timing"
)

// oddDesign is a ball with few drivers, all at its front, and a spot behind it.
const oddDesign = `
[body]
shape = "ball"
radius_mm = 150
[mounts]
on = "list"
list = "%s"
[driver]
diameter_mm = 32
cutout_mm = 33
flange_mm = 40
depth_mm = 18
nominal_ohm = 8
sensitivity_db = 82
power_w = 2
[timing]
model = "%s"
[wiring]
channels = %d
[coverage]
half_width_m = 0.2
cells = 8
`

const (
	oddSpot   = "[spot]\nx_m = -1.8\ny_m = 0\nz_m = 0.6\n"
	oddSeats  = "[[seat]]\nname = \"a\"\nx_m = -1.8\ny_m = 0\nz_m = 0.6\n[[seat]]\nname = \"b\"\nx_m = -1.8\ny_m = 0.5\nz_m = 0.6\n"
	oddWoofer = "[woofer]\nx_m = -0.5\ny_m = 0.3\nz_m = 0.1\ncrossover_hz = 450\nsensitivity_db = 88\n"
)

// TestPlansOfNothingHeard: a design of which nothing, or next to nothing, is heard is planned, and
// each of its files can be written; what is not finite is not written as a number.
func TestPlansOfNothingHeard(t *testing.T) {
	folder := t.TempDir()
	for name, text := range map[string]string{"one.csv": "150,0,0,1,0,0\n", "two.csv": "150,0,0,1,0,0\n147,-30,0,0.98,-0.2,0\n"} {
		if err := os.WriteFile(filepath.Join(folder, name), []byte("x_mm,y_mm,z_mm,nx,ny,nz\n"+text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	for name, text := range map[string]string{
		"one driver away":           fmt.Sprintf(oddDesign, "one.csv", "baffle", 1) + oddSpot,
		"two, and a woofer":         fmt.Sprintf(oddDesign, "two.csv", "baffle", 2) + oddSpot + oddWoofer,
		"two, seats, and a woofer":  fmt.Sprintf(oddDesign, "two.csv", "baffle", 2) + oddSeats + oddWoofer,
		"one in the ball's shadow":  fmt.Sprintf(oddDesign, "one.csv", "sphere", 1) + oddSpot + oddWoofer,
		"one, seats in the shadow":  fmt.Sprintf(oddDesign, "one.csv", "sphere", 1) + oddSeats,
		"one, no body, and a table": fmt.Sprintf(oddDesign, "one.csv", "point", 1) + oddSpot + "[surface]\nabsorption = 1\n",
	} {
		t.Run(name, func(t *testing.T) {
			path := filepath.Join(folder, "odd.toml")
			if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
				t.Fatal(err)
			}
			d, err := design.Read(path)
			if err != nil {
				t.Fatal(err)
			}
			writeAll(t, d)
		})
	}
}

// writeAll writes every file of a design's plan.
func writeAll(t *testing.T, d *design.Design) {
	t.Helper()
	a, err := layout.Build(d)
	if err != nil {
		t.Fatal(err)
	}
	p, err := timing.Make(context.Background(), a)
	if err != nil {
		t.Fatal(err)
	}
	o, err := planned(nil, p)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range o.files {
		var b bytes.Buffer
		into := io.Writer(&b)
		if err := f.Write(into); err != nil {
			t.Errorf("%s: %v", f.Name, err)
		}
		if text := embedded.ReplaceAllString(b.String(), ""); strings.HasSuffix(f.Name, ".svg") && hasNoNumber(text) {
			t.Errorf("%s has what is no number", f.Name)
		}
	}
	var screen bytes.Buffer
	if err := o.screen(&screen, false); err != nil {
		t.Fatal(err)
	}
	if text := screen.String(); hasNoNumber(text) {
		t.Errorf("the screen has what is no number:\n%s", text)
	}
}

// embedded are pictures of dots in drawings, whose letters mean nothing.
var embedded = regexp.MustCompile(`"data:[^"]*"`)

func hasNoNumber(text string) bool {
	return strings.Contains(text, "NaN") || strings.Contains(text, "Inf")
}
