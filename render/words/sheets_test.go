package words

import (
	"strings"
	"testing"

	"pappus/layout"
	"pappus/layout/box"
	"pappus/layout/design"
	"pappus/layout/fit"
	"pappus/layout/shell"
)

// TestFit: eight drivers that do not fit are named, of more the first eight.
func TestFit(t *testing.T) {
	a := &layout.Array{Mounts: make([]layout.Mount, 10)}
	for i := range a.Mounts {
		a.Mounts[i].ID = i + 1
	}
	for _, test := range []struct {
		name     string
		all, bad int
		flange   float64
		smallest float64
		want     string
	}{
		{"one", 1, 0, 0, 0, "The driver fits."},
		{"all", 10, 0, 0.02, 0, "All 10 drivers fit. The largest of this driver's proportions has a flange of 40.0 mm."},
		{"a smaller body", 10, 0, 0.02, 0.12, "All 10 drivers fit. The largest of this driver's proportions has a flange of 40.0 mm; the smallest body that takes it as it is has a radius of 120 mm."},
		{"one does not", 1, 1, 0, 0, "1 of 1 driver does not fit: 1."},
		{"eight do not", 10, 8, 0, 0, "8 of 10 drivers do not fit: 1, 2, 3, 4, 5, 6, 7, 8."},
		{"nine do not", 10, 9, 0, 0, "9 of 10 drivers do not fit: 1, 2, 3, 4, 5, 6, 7, 8 and others; see fit.csv."},
	} {
		t.Run(test.name, func(t *testing.T) {
			f := layout.Fits{Reports: make([]fit.Report, test.all), Smallest: test.smallest}
			f.Largest.FlangeRadius = test.flange
			for i := range f.Reports {
				f.Reports[i] = fit.Report{Flange: 1, Cutout: 1, Gap: 1, Inside: 1, Wall: 1, Terminal: 1, ScrewFlange: 1, ScrewEdge: 1, Through: 1}
				if i < test.bad {
					f.Reports[i].Flange = -1
				}
			}
			if got := Fit(a, f); got != test.want {
				t.Errorf("says %q", got)
			}
		})
	}
}

// TestHeavyAir: where the air in a vent weighs more than 0.3 of its resistance more holes are
// asked for, as many as make it so.
func TestHeavyAir(t *testing.T) {
	for _, test := range []struct {
		mass float64
		says string
	}{{0.29, "to 0.70."}, {0.31, "to 0.70, but the air in so few is too heavy for a resistance: take 11 holes or more; with 11 the cloth is to have "}} {
		h := layout.Hollow{Vented: &box.Vented{Q: 0.7, Resistance: 1000}, Vent: box.Vent{Number: 10, Radius: 0.004}, Mass: test.mass}
		if got := strings.Join(Box(h), " "); !strings.Contains(got, "A vent of 10 holes of 8 mm") || !strings.Contains(got, test.says) {
			t.Errorf("%g: %s", test.mass, got)
		}
	}
	if got := Box(layout.Hollow{Why: "for want of values"}); len(got) != 3 || got[1] != "No vent: for want of values." {
		t.Errorf("says %q", got)
	}
}

// TestOpenBelow: the shell of a cut body is printed open below, and a box that is not closed
// is none; a whole body has nothing to close.
func TestOpenBelow(t *testing.T) {
	d := design.Default()
	a, err := layout.Build(d)
	if err != nil {
		t.Fatal(err)
	}
	if got := strings.Join(Shell(a, shell.Plan{}, "", "too wide"), "\n"); !a.Body.IsCut || !strings.Contains(got, "than the bed, since too wide.\nThe shell is open below: close it airtight with the floor that `pappus kit` makes, or a plate") {
		t.Errorf("cut %v, says %q", a.Body.IsCut, got)
	}
	if got := Shell(a, shell.Plan{}, "cut-outs meet", ""); len(got) != 1 || got[0] != "No shell to print: cut-outs meet." {
		t.Errorf("says %q", got)
	}
	d.Body = design.Body{Shape: "dodecahedron", Radius: 0.15, Wall: 0.003}
	d.Mounts = design.Mounts{On: "faces"}
	if a, err = layout.Build(d); err != nil {
		t.Fatal(err)
	}
	if got := Shell(a, shell.Plan{Segments: make([]shell.Segment, 1)}, "", ""); len(got) != 1 {
		t.Errorf("a whole body: %q", got)
	}
}
