package seats

import (
	"math"
	"math/cmplx"
	"math/rand/v2"
	"testing"
)

// TestTapsSlope: the gradient is what differences of the cost are.
func TestTapsSlope(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	f := &Field{Frequency: []float64{500, 700, 1000, 1500}, Ends: []int{2, 4}, Drivers: 3, Seat: []int{0, 0, 1}, Weight: []float64{1, 2}}
	for range 3 {
		var row []complex128
		for range f.Drivers * len(f.Frequency) {
			row = append(row, cmplx.Rect(random.Float64(), 6*random.Float64()))
		}
		f.Place = append(f.Place, row)
	}
	c := newTapping(f, [][]int{{0, 2}, {1}}, []float64{1, -0.5}, []float64{0, 1e-4}, 5, 8000)
	x, slope := make([]float64, 10), make([]float64, 10)
	for i := range x {
		x[i] = random.Float64() - 0.3
	}
	c.cost(slope, x)
	const step = 1e-6
	for i := range x {
		at := x[i]
		x[i] = at + step
		up := c.cost(nil, x)
		x[i] = at - step
		down := c.cost(nil, x)
		x[i] = at
		if want := (up - down) / (2 * step); math.Abs(slope[i]-want) > 1e-5*(1+math.Abs(want)) {
			t.Errorf("tap %d: slope %g, want %g", i, slope[i], want)
		}
	}
}
