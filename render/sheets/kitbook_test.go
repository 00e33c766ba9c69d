package sheets

import (
	"bytes"
	"fmt"
	"math"
	"strings"
	"testing"

	"pappus/layout"
	"pappus/layout/kit"
	"pappus/layout/poly"
	"pappus/testdata/planned"
	"pappus/timing/bill"

	"gonum.org/v1/gonum/spatial/r3"
)

// TestBook: a kit's book has its steps, its floor to scale with what is on it, each plate with
// each part, and the bill; and it is written.
func TestBook(t *testing.T) {
	p := planned.Demo(t, nil)
	bed := p.Array.Print.Bed
	k := Kit{kit.Made{Parts: []kit.Part{{Name: "segment-1", Mesh: poly.Box(0.05).Mesh(), Count: 1}, {Name: "foot", Mesh: poly.Box(0.01).Mesh(), Count: 4, Loose: true}},
		Beside: kit.Beside{Fittings: []kit.Fitting{{Bought: kit.FloorScrew, Count: 9}, {Bought: "cable gland M25", Count: 1}}}}}
	counts := []int{1, 4}
	for _, part := range k.Parts {
		k.Prints = append(k.Prints, kit.Lay(part, bed))
	}
	k.Spots = kit.Plates(k.Prints, counts, bed)
	gland := r3.Vec{X: -0.1}
	k.Ground = kit.Ground{Sectors: 1, Outline: []r3.Vec{{X: 0.12}, {Y: 0.12}, {X: -0.12}, {Y: -0.12}}, Feet: []r3.Vec{{X: 0.05, Y: 0.03}}, Gland: &gland}
	pages := k.Book(p, bill.OfKit(p, k.Made, 0))
	var names []string
	count := map[string]int{}
	for _, s := range pages {
		names = append(names, s.Name)
		for _, i := range s.items {
			count[i.words]++
		}
	}
	if got := strings.Join(names[:3], " "); got != "kit-1 kit-floor kit-plates-1" {
		t.Errorf("pages %v", names)
	}
	for words, want := range map[string]int{"foot": 4 + 2, "The floor, 1:1.5": 1, "plate 1": 1, "feet, by M3 from above: 50.0, 30.0": 1, "cable gland M25": 1, "screw M3 x 12": 1} {
		if count[words] != want {
			t.Errorf("%q stands there %d times, want %d", words, count[words], want)
		}
	}
	// The foot is to the front and the left, which is up and left on the page, at 1:1.5.
	for _, i := range pages[1].items {
		if i.radius > 0 && i.pen.colour == orange {
			if x, y := short/2-i.points[0].X, margin+heading+120/1.5-i.points[0].Y; x < 19.9 || x > 20.1 || y < 33.2 || y > 33.4 {
				t.Errorf("the foot is %g to the left, %g up", x, y)
			}
		}
	}
	var out bytes.Buffer
	if err := WritePDF(&out, "kit", pages...); err != nil || out.Len() < 1000 {
		t.Errorf("%d bytes, %v", out.Len(), err)
	}
}

// TestOnto: segments stand in their order with from where they go on, by hand: a direction up and to the
// left front, which a driver shares only where it is within the lean; the first and loose things go anywhere.
func TestOnto(t *testing.T) {
	k := Kit{kit.Made{Parts: []kit.Part{{Name: "segment-1"}, {Name: "segment-2", Off: r3.Unit(r3.Vec{X: 1, Y: 1, Z: math.Sqrt2}), Lean: math.Pi / 60},
		{Name: "segment-3", Off: r3.Vec{Y: -1}, Lean: math.Pi / 30}, {Name: "foot"}},
		Beside: kit.Beside{Meetings: []kit.Meeting{{A: 1, B: 2}, {A: 1, B: 3}, {A: 2, B: 3}}}}}
	a := &layout.Array{Mounts: []layout.Mount{{ID: 7, Normal: r3.Vec{X: 1}}, {ID: 8, Normal: r3.Unit(r3.Vec{X: 0.05, Y: -1})}}}
	want := "[[segment-2 45 45 3.0  1] [segment-3 270 0 6.0 8 1 and 2]]"
	if got := fmt.Sprint(k.onto(a).rows); got != want {
		t.Errorf("%s\nwant %s", got, want)
	}
}
