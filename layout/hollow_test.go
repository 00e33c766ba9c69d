package layout_test

import (
	"math"
	"testing"

	"pappus/layout"
	"pappus/layout/box"
	"pappus/layout/design"
)

// TestLeastHoles: air that weighs more than 0.3 of the vent's resistance takes more holes, over
// which its mass goes down.
func TestLeastHoles(t *testing.T) {
	for mass, want := range map[float64]int{0: 0, 0.29: 0, 0.31: 11, 0.6: 20, math.NaN(): 0} {
		h := layout.Hollow{Vent: box.Vent{Number: 10}, Mass: mass}
		if got := h.LeastHoles(); got != want {
			t.Errorf("%g takes %d holes, want %d", mass, got, want)
		}
	}
}

// TestVentSpeed is linear in the voltage, and not known without the driver's values.
func TestVentSpeed(t *testing.T) {
	a, err := layout.Build(design.Default())
	if err != nil {
		t.Fatal(err)
	}
	h, err := a.Hollow()
	if err != nil {
		t.Fatal(err)
	}
	_, flow, err := h.Vented.Flow(1, h.Vented.Resonance)
	if err != nil {
		t.Fatal(err)
	}
	if one, two := h.VentSpeed(1), h.VentSpeed(2); math.Abs(two/one-2) > 1e-12 || math.Abs(one-math.Sqrt2*flow/h.Vent.Area()) > 1e-12 {
		t.Errorf("%g and %g m/s", one, two)
	}
	h.Vented = &box.Vented{}
	if got := h.VentSpeed(1); !math.IsNaN(got) {
		t.Errorf("%g m/s of nothing", got)
	}
}
