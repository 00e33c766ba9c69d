// Package planned plans the built-in design with changes, and one on faces, for the tests of what is made of a plan.
package planned

import (
	"fmt"
	"testing"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/timing"
)

// Demo plans the built-in design with some changes, none where change is nil.
func Demo(t testing.TB, change func(*design.Design)) *timing.Plan {
	t.Helper()
	d := design.Default()
	if change != nil {
		change(d)
	}
	return Of(t, d)
}

// Faces is the text of a design: a body of 150 mm in open air with a driver on each face, and further tables. What
// shapes there are says body.shape.
func Faces(shape, tables string) string {
	return fmt.Sprintf(facesText, shape, tables)
}

const facesText = `
name = "Faces"
[body]
shape = %q
radius_mm = 150
wall_mm = 3
[mounts]
on = "faces"
[driver]
diameter_mm = 32
flange_mm = 40
nominal_ohm = 8
dc_ohm = 7.1
sensitivity_db = 82
power_w = 2
resonance_hz = 200
resonance_q = 0.707
%s
[protection]
corner_hz = 150
[spot]
x_m = 1.8
y_m = 0.4
z_m = 0.6
`

// SmallDome is the text of a design whose printed parts are made in about a second.
const SmallDome = `name = "Small dome"
[body]
shape = "icosahedron"
radius_mm = 60
cut_height_mm = 0
[mounts]
on = "faces"
[driver]
diameter_mm = 22
flange_mm = 26
depth_mm = 12
[timing]
model = "point"
[spot]
x_m = 2
y_m = 0
z_m = 1
[coverage]
cells = 8
`

// Text plans a design that is a text.
func Text(t testing.TB, text string) *timing.Plan {
	t.Helper()
	d, err := design.Parse("text.toml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return Of(t, d)
}

// Of plans a design.
func Of(t testing.TB, d *design.Design) *timing.Plan {
	t.Helper()
	a, err := layout.Build(d)
	if err != nil {
		t.Fatal(err)
	}
	p, err := timing.Make(t.Context(), a)
	if err != nil {
		t.Fatal(err)
	}
	return p
}
