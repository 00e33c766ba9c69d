package sheets_test

import (
	"math"
	"testing"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/render/sheets"
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
	whole, err := sheets.Shells(a, nil)
	if err != nil {
		t.Fatal(err)
	}
	parts, err := sheets.Shells(a, sheets.Cuts(p))
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
	if sheets.Cuts(p) != nil {
		t.Error("one segment is cut")
	}
}
