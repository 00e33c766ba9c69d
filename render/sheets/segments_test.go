package sheets_test

import (
	"fmt"
	"math"
	"testing"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/layout/shell"
	"pappus/testdata/testkit"
)

// TestCutsMakeTheSegments: the shell cut by the planes has in each part the
// volume that the printing plan computes, the cut-outs' small rounding aside, and
// all parts together the whole.
func TestCutsMakeTheSegments(t *testing.T) {
	a, err := layout.Build(design.Default())
	if err != nil {
		t.Fatal(err)
	}
	p, err := a.Segments()
	if err != nil {
		t.Fatal(err)
	}
	whole, err := shells(a, shell.Plan{})
	if err != nil {
		t.Fatal(err)
	}
	parts, err := shells(a, p)
	if err != nil {
		t.Fatal(err)
	}
	if len(parts) != len(p.Segments) {
		t.Fatalf("%d parts, %d segments", len(parts), len(p.Segments))
	}
	sum := 0.0
	for i, m := range parts {
		sum += m.Volume()
		if want := p.Segments[i].Volume; math.Abs(m.Volume()/want-1) > 0.01 {
			t.Errorf("segment %d: %g m3, the plan has %g", i+1, m.Volume(), want)
		}
	}
	if math.Abs(sum/whole[0].Volume()-1) > 1e-4 {
		t.Errorf("parts have %g m3, the whole %g", sum, whole[0].Volume())
	}
	p.Segments = p.Segments[:1]
	if one, err := shells(a, p); err != nil || len(one) != 1 || one[0].Volume() != whole[0].Volume() {
		t.Error("one segment is cut", err)
	}
}

// steppedDesign is one that no flat seam cuts.
const steppedDesign = `
[body]
%s
[mounts]
%s
[driver]
diameter_mm = 28
cutout_mm = 33
flange_mm = 40
depth_mm = 18
nominal_ohm = 8
[print]
bed_mm = [%[3]g, %[3]g, %[3]g]
[spot]
x_m = 2
y_m = 0
z_m = 0
`

// TestSteppedSeams: where no flat seam keeps off the cut-outs (each of these designs was
// left whole before stepped ones were tried) the parts are closed by themselves and by
// another program's judgement, add up to the whole, and have the volume that the plan
// tells.
func TestSteppedSeams(t *testing.T) {
	for _, c := range []struct {
		name, body, mounts string
		bed                float64
	}{
		{"ball of 60", "shape = \"ball\"\nradius_mm = 150", "on = \"even\"\ncount = 60", 220},
		{"dome of a ball of 96", "shape = \"ball\"\nradius_mm = 180\ncut_height_mm = 0", "on = \"even\"\ncount = 96", 180},
		{"raised dome", "shape = \"ball\"\nradius_mm = 180\ncut_height_mm = 10", "on = \"even\"\ncount = 80", 150},
		{"a mesh corner within a micrometre of a seam", "shape = \"ball\"\nradius_mm = 200", "on = \"even\"\ncount = 47", 110},
		{"four shares in one line", "shape = \"ball\"\nradius_mm = 200\ncut_height_mm = 0", "on = \"even\"\ncount = 96\nsymmetry = 3", 150},
		{"geodesic", "shape = \"geodesic\"\nsubdivision = 3\nradius_mm = 230", "on = \"faces\"", 180},
		{"geodesic with places left out", "shape = \"geodesic\"\nsubdivision = 3\nradius_mm = 230\ncut_height_mm = -60", "on = \"faces\"\nskip = [3, 4, 5, 60]", 150},
		{"dodecahedron, sites between", "shape = \"dodecahedron\"\nradius_mm = 150", "on = \"faces\"", 100},
		{"dome of a dodecahedron", "shape = \"dodecahedron\"\nradius_mm = 150\ncut_height_mm = 0", "on = \"faces\"", 100},
	} {
		t.Run(c.name, func(t *testing.T) {
			d, err := design.Parse("a.toml", fmt.Appendf(nil, steppedDesign, c.body, c.mounts, c.bed))
			if err != nil {
				t.Fatal(err)
			}
			a, err := layout.Build(d)
			if err != nil {
				t.Fatal(err)
			}
			p, err := a.Segments()
			if err != nil {
				t.Fatal(err)
			}
			if len(p.Cells) == 0 {
				t.Fatalf("%d segments with flat seams: the case shows nothing", len(p.Segments))
			}
			whole, err := shells(a, shell.Plan{})
			if err != nil {
				t.Fatal(err)
			}
			parts, err := shells(a, p)
			if err != nil {
				t.Fatal(err)
			}
			sum, carried := 0.0, 0
			for i, m := range parts {
				sum += m.Volume()
				carried += len(p.Segments[i].Mounts)
				if want := p.Segments[i].Volume; math.Abs(m.Volume()/want-1) > 0.03 {
					t.Errorf("segment %d: %g m3, the plan has %g", i+1, m.Volume(), want)
				}
				if i%3 == 0 { // a third, for time
					testkit.Printable(t, m, 0)
				}
			}
			if math.Abs(sum/whole[0].Volume()-1) > 1e-4 || carried != len(a.Mounts) {
				t.Errorf("parts have %g m3 and %d mounts, the whole %g and %d", sum, carried, whole[0].Volume(), len(a.Mounts))
			}
			t.Logf("%d mounts, %d segments", len(a.Mounts), len(p.Segments))
		})
	}
}
