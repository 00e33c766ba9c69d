package words

import (
	"strings"
	"testing"

	"pappus/layout"
	"pappus/layout/kit"

	"gonum.org/v1/gonum/spatial/r3"
)

// TestKitFindings: what does not lie on the bed, and what nothing but glue holds, is said with what to do;
// nothing is said where all is well.
func TestKitFindings(t *testing.T) {
	a := &layout.Array{}
	a.Kit.Joint, a.Print.Bed = kit.Lap, r3.Vec{X: 0.15, Y: 0.15, Z: 0.12}
	well := kit.Made{Parts: []kit.Part{{Name: "segment-1"}, {Name: "segment-2"}}, Prints: []kit.Print{{Fits: true}, {Fits: true}},
		Beside: kit.Beside{Meetings: []kit.Meeting{{A: 1, B: 2, Long: 0.1, Lapped: 0.1, Fasteners: 3}, {A: 1, B: 3, Long: 0.02}}}}
	if said := OffBed(a, well) + Unheld(a, well); said != "" {
		t.Errorf("of what is well: %q", said)
	}
	m := well
	m.Prints = []kit.Print{{Fits: true}, {Size: r3.Vec{X: 0.1513, Y: 0.1, Z: 0.05}}}
	if got := OffBed(a, m); !strings.HasPrefix(got, "Larger than the bed of 150 by 150 by 120 mm, and on no plate: segment-2, 151 by 100 by 50 mm. ") || !strings.Contains(got, "give print.bed_mm a larger one") {
		t.Error(got)
	}
	m.Meetings = append(m.Meetings, kit.Meeting{A: 2, B: 5, Long: 0.0414, Lapped: 0.0123})
	if got := Unheld(a, m); !strings.HasPrefix(got, "Drivers leave no room for a screw or a dowel where these segments meet: 2 and 5 (a tongue under 12 of 41 mm). Glue alone holds them there:") {
		t.Error(got)
	}
	for i := range 7 {
		m.Meetings = append(m.Meetings, kit.Meeting{A: 6, B: 7 + i, Long: 0.03})
	}
	a.Kit.Joint = kit.Flange
	if got := Unheld(a, m); !strings.Contains(got, "meet: 2 and 5, 6 and 7, 6 and 8, 6 and 9, 6 and 10, 6 and 11 and 2 pairs more. ") {
		t.Error(got)
	}
}

// TestMaking: what is left is said as long as something is.
func TestMaking(t *testing.T) {
	for _, c := range []struct {
		n, of int
		left  float64
		want  string
	}{{3, 47, 240, "making the parts: 3 of 47, about 4 minutes left"}, {47, 47, 0, "making the parts: 47 of 47"}, {120, 1300, 86400, "making the parts: 120 of 1300, about 1440 minutes left"}} {
		if got := Making(c.n, c.of, c.left); got != c.want || len(got) > 60 {
			t.Errorf("%q, want %q", got, c.want)
		}
	}
}
