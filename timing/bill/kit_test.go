package bill_test

import (
	"math"
	"testing"

	"pappus/layout/kit"
	"pappus/layout/poly"
	"pappus/testdata/planned"
	"pappus/timing/bill"
)

// TestOfKit: parts and fittings by hand; all but the shell is the plain bill's.
func TestOfKit(t *testing.T) {
	p := planned.Demo(t, nil)
	made := kit.Made{
		Parts:  []kit.Part{{Name: "floor", Mesh: poly.Box(0.01).Mesh(), Count: 3}},
		Beside: kit.Beside{Fittings: []kit.Fitting{{Bought: kit.FloorScrew, Count: 101}, {Bought: "cable gland M12", Count: 1}, {Bought: kit.Filling, Count: 2, Mass: 0.004}, {Bought: kit.Foam, Count: 1, Length: 0.8}}},
	}
	b := bill.OfKit(p, made, 0.01)
	print, err := p.Array.Segments()
	if err != nil {
		t.Fatal(err)
	}
	plain := bill.Of(p, print, 0.01)
	shell := 0.0
	for _, s := range print.Segments {
		shell += s.Volume
	}
	const volume = 3 * 8e-6
	if want := plain.Mass - shell*1240 + volume*1240 + 0.004; math.Abs(b.Mass/want-1) > 1e-9 {
		t.Errorf("%g kg, want %g", b.Mass, want)
	}
	if math.Abs(b.Print/(volume/5e-9)-1) > 1e-9 || b.Work != plain.Work || b.Joints != plain.Joints {
		t.Errorf("%g s of printing, %g s of work, %d joints", b.Print, b.Work, b.Joints)
	}
	spares := map[int]int{}
	for _, it := range b.Items {
		if it.Kind == bill.Fitting {
			spares[it.Index] = it.Spares
		}
	}
	if spares[0] != 11 || spares[1] != 0 || spares[2] != 0 || spares[3] != 0 {
		t.Errorf("spares %v", spares)
	}
}
