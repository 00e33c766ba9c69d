package fit

import (
	"math"
	"testing"

	"pappus/layout/body"

	"gonum.org/v1/gonum/spatial/r3"
)

// TestThresholds: where each line is drawn.
func TestThresholds(t *testing.T) {
	d := Outline{CutoutRadius: 0.02, FlangeRadius: 0.025, Depth: 0.03}
	// smallest returns by how many octaves a ball so many octaves under 1 m must grow.
	smallest := func(octaves float64) (float64, error) {
		radius := math.Exp2(-octaves)
		z := r3.Vec{Z: 1}
		factor, err := SmallestBody(body.Ball(radius), []Mount{{Point: r3.Scale(radius, z), Normal: z, Face: -1}}, d, Limits{Wall: 0.003})
		return math.Log2(factor), err
	}
	least, err := smallest(0) // of 1 m, in octaves
	if err != nil {
		t.Fatal(err)
	}
	grows := func(octaves float64) bool {
		got, err := smallest(octaves - least)
		return err == nil && math.Abs(got-octaves) < 1e-5
	}
	lacks := func(by float64) bool { return Report{Flange: -by}.Fits(Limits{}) }
	off := func(by float64) bool {
		cube, err := body.Platonic("cube", 1)
		if err != nil {
			t.Fatal(err)
		}
		w := newWalls(cube, false)
		p := w.planes[0]
		return w.isOwn(Mount{Point: r3.Scale(p.Offset+by, p.Normal), Normal: p.Normal, Face: -1}, 0)
	}
	for _, test := range []struct {
		why       string
		got, want bool
	}{
		{"a body may have to be a million times as large: 2^19.9", grows(19.9), true},
		{"2^20.1 is none that was meant", grows(20.1), false},
		{"or a millionth as large", grows(-19.9), true},
		{"what lacks 0.9 nm is there", lacks(0.9e-9), true},
		{"1.1 nm lack", lacks(1.1e-9), false},
		{"a place 0.9 ten-thousandths of the radius over a wall is on it", off(0.9e-4), true},
		{"at 1.1 it is not", off(1.1e-4), false},
	} {
		t.Run(test.why, func(t *testing.T) {
			if test.got != test.want {
				t.Error(test.got)
			}
		})
	}
}
