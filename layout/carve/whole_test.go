package carve_test

import (
	"errors"
	"math"
	"testing"

	"pappus/layout/carve"
	"pappus/layout/poly"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// TestAnyRule: of three solids anywhere, what any rule keeps has the volume of the cells that it
// keeps, each made by itself; what a rule does not hang on is not cut, and all is closed still.
func TestAnyRule(t *testing.T) {
	all := solids(t)
	rapid.Check(t, func(t *rapid.T) {
		var three []poly.Mesh
		for range 3 {
			m := all[rapid.IntRange(0, len(all)-1).Draw(t, "solid")]
			step := rapid.IntRange(-40, 40)
			by := r3.Scale(1e-3, r3.Vec{X: float64(step.Draw(t, "x")), Y: float64(step.Draw(t, "y")), Z: float64(step.Draw(t, "z"))})
			turn := rapid.SampledFrom([]float64{0, 0, math.Pi / 2, 0.3, 1.1}).Draw(t, "turn")
			three = append(three, turned(m, turn, rapid.SampledFrom([]r3.Vec{{Z: 1}, {X: 0.4, Y: 0.3, Z: 1}}).Draw(t, "axis"), by))
		}
		cell := func(in []bool) (n int) {
			for k, is := range in {
				if is {
					n |= 1 << k
				}
			}
			return n
		}
		kept := rapid.IntRange(1, 127).Draw(t, "rule") << 1 // outside of all nothing is
		got, err := carve.Combine(func(in []bool) bool { return kept>>cell(in)&1 == 1 }, three...)
		if errors.Is(err, carve.ErrPinch) {
			t.Skip("cells that touch in an edge")
		}
		if err != nil && !errors.Is(err, carve.ErrEmpty) {
			t.Fatal(err)
		}
		want := 0.0
		for n := 1; n < 8; n++ {
			one, err := carve.Combine(func(in []bool) bool { return cell(in) == n }, three...)
			if errors.Is(err, carve.ErrPinch) {
				t.Skip("a cell that touches itself in an edge")
			}
			if kept>>n&1 == 1 && err == nil {
				want += one.Volume()
			}
		}
		if math.Abs(got.Volume()-want) > 1e-9*three[0].Volume() {
			t.Errorf("rule %b keeps %g m3, its cells have %g", kept, got.Volume(), want)
		}
	})
}
