package document

import (
	"encoding/json"
	"math"
	"testing"

	"pappus/layout"
	"pappus/layout/kit"
	"pappus/timing/bill"

	"gonum.org/v1/gonum/spatial/r3"
)

// TestOfKit: how a segment comes off and what holds two together, in the units of their keys, by hand; of
// what nothing keeps and of a shell in one there is none.
func TestOfKit(t *testing.T) {
	m := kit.Made{Parts: []kit.Part{{Name: "segment-1", Count: 1}, {Name: "segment-2", Count: 1, Off: r3.Unit(r3.Vec{X: -1, Z: 1}), Lean: 0.05}},
		Beside: kit.Beside{Meetings: []kit.Meeting{{A: 1, B: 2, Long: 0.0805, Lapped: 0.06, Fasteners: 3}, {A: 1, B: 3, Long: 0.03}}}}
	a := &layout.Array{}
	a.Print.Density, a.Print.Flow = 1250, 1e-8
	got := OfKit(Written{}, a, m, bill.Bill{})
	off := got.Parts[1].Off
	if got.Parts[0].Off != nil || off == nil || *off != (KitOff{180, 45, To(1, 0.05*180/math.Pi)}) {
		t.Errorf("%+v", got.Parts)
	}
	if j := got.Meetings; len(j) != 2 || j[0] != (KitMeeting{[2]int{1, 2}, 80.5, 60, 3, false}) || j[1] != (KitMeeting{[2]int{1, 3}, 30, 0, 0, true}) {
		t.Errorf("%+v", j)
	}
	text, err := json.Marshal(OfKit(Written{}, a, kit.Made{}, bill.Bill{}).Meetings)
	if err != nil || string(text) != "[]" {
		t.Errorf("%s %v", text, err)
	}
}
