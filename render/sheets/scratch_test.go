package sheets_test

import (
	"fmt"
	"os"
	"testing"

	"pappus/layout"
	"pappus/layout/design"
	"pappus/render/sheets"
)

func TestScratchSweep(t *testing.T) {
	if os.Getenv("GRID") == "" {
		t.Skip()
	}
	n, bad, flat := 0, 0, 0
	for _, count := range []int{13, 30, 47, 60, 72, 96, 130} {
		for _, cut := range []string{"", "\ncut_height_mm = 0", "\ncut_height_mm = -70"} {
			for _, sym := range []int{1, 3} {
				for _, bed := range []float64{110, 150, 200} {
					if count%sym != 0 {
						continue
					}
					d, err := design.Parse("a.toml", fmt.Appendf(nil, steppedDesign, "shape = \"ball\"\nradius_mm = 200"+cut, fmt.Sprintf("on = \"even\"\ncount = %d\nsymmetry = %d", count, sym), bed))
					if err != nil {
						t.Fatal(err)
					}
					a, err := layout.Build(d)
					if err != nil {
						t.Log(err)
						continue
					}
					p, err := a.Segments()
					if err != nil {
						t.Log(count, cut, bed, err)
						continue
					}
					if len(p.Cells) == 0 {
						flat++
						continue
					}
					n++
					parts, err := sheets.Shells(a, sheets.Cuts(p))
					if err != nil {
						bad++
						t.Log(count, cut, bed, err)
						continue
					}
					for i, m := range parts {
						if i%7 == 0 {
							checkClosed(t, m)
						}
					}
				}
			}
		}
	}
	t.Logf("%d stepped, %d bad, %d flat", n, bad, flat)
}
