package kit

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"pappus/layout/poly"
)

// TestPlates: each print is there as often as it is wanted, on the bed, apart from others, and as
// far from the bed's left edge as from its right; one that is too large is on none.
func TestPlates(t *testing.T) {
	bed := r3.Vec{X: 0.2, Y: 0.2, Z: 0.2}
	var prints []Print
	for _, size := range []r3.Vec{{X: 0.09, Y: 0.05, Z: 0.03}, {X: 0.15, Y: 0.12, Z: 0.02}, {X: 0.3, Y: 0.3, Z: 0.3}} {
		box := poly.Box(0.5).Mesh().Moved(func(v r3.Vec) r3.Vec { return r3.Vec{X: size.X * v.X, Y: size.Y * v.Y, Z: size.Z * v.Z} })
		prints = append(prints, Lay(Part{Mesh: box}, bed))
	}
	counts := []int{7, 3, 1}
	spots := Plates(prints, counts, bed)
	left := map[int][2]float64{}
	for i, s := range spots {
		size := prints[s.Print].Size
		counts[s.Print]--
		if s.X < 0 || s.Y < 0 || s.X+size.X > bed.X+1e-12 || s.Y+size.Y > bed.Y+1e-12 {
			t.Errorf("%+v is off the bed", s)
		}
		edge, ok := left[s.Plate]
		if !ok {
			edge = [2]float64{1, 1}
		}
		left[s.Plate] = [2]float64{min(edge[0], s.X), min(edge[1], bed.X-s.X-size.X)}
		for _, o := range spots[:i] {
			other := prints[o.Print].Size
			if o.Plate == s.Plate && s.X < o.X+other.X+apart-1e-12 && o.X < s.X+size.X+apart-1e-12 && s.Y < o.Y+other.Y+apart-1e-12 && o.Y < s.Y+size.Y+apart-1e-12 {
				t.Errorf("%+v is in the way of %+v", s, o)
			}
		}
	}
	if counts[0] != 0 || counts[1] != 0 || counts[2] != 1 {
		t.Errorf("left over: %v", counts)
	}
	for plate, e := range left {
		if math.Abs(e[0]-e[1]) > 1e-12 {
			t.Errorf("plate %d is %g from the left and %g from the right", plate, e[0], e[1])
		}
	}
}
