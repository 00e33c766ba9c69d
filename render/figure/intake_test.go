package figure

import (
	"bytes"
	"strings"
	"testing"

	"pappus/timing/impedancefit"
	"pappus/timing/intake"
)

// TestLotPicture: drivers with an impedance are marked, the rejected named, copies left out.
func TestLotPicture(t *testing.T) {
	fit := func(hz, q float64) *impedancefit.Fit {
		return &impedancefit.Fit{Resonance: impedancefit.Estimate{Value: hz}, Qts: impedancefit.Estimate{Value: q}}
	}
	l := &intake.Lot{Drivers: []intake.Driver{{Name: "alpha", Fit: fit(150, 0.8)}, {Name: "beta", Fit: fit(100, 0.5), Reasons: []intake.Reason{{Code: intake.Odd}}},
		{Name: "gamma", Fit: fit(150, 0.8), Reasons: []intake.Reason{{Code: intake.Copy}}}}}
	var b bytes.Buffer
	if err := Lot(&b, SVG, "a lot", l, nil); err != nil {
		t.Fatal(err)
	}
	for name, there := range map[string]bool{"good": true, "rejected": true, "beta": true, "alpha": false, "gamma": false, "spare": false} {
		if strings.Contains(b.String(), ">"+name) != there {
			t.Errorf("%s: there %v", name, !there)
		}
	}
	if err := Lot(&b, SVG, "a lot", &intake.Lot{Drivers: make([]intake.Driver, 3)}, nil); err == nil || !strings.Contains(err.Error(), "nothing to draw") {
		t.Errorf("%v", err)
	}
	if err := Sorted(&b, SVG, &intake.Deal{}); err == nil || !strings.Contains(err.Error(), "nothing to draw") {
		t.Errorf("%v", err)
	}
}
