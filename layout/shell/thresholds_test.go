package shell

import (
	"math"
	"testing"

	"pappus/layout/body"
	"pappus/layout/poly"

	"gonum.org/v1/gonum/spatial/r3"
)

// TestThresholds: where each line is drawn.
func TestThresholds(t *testing.T) {
	// one tells whether a plane turned by an angle in rad and moved out by a length is another's.
	one := func(turn, out float64) bool {
		sin, cos := math.Sincos(turn)
		n := r3.Vec{X: sin, Z: cos}
		m := &maker{slack: merge, planes: []poly.Plane{{Normal: r3.Vec{Z: 1}, Offset: 1}, {Normal: n, Offset: cos * (1 + out)}},
			outer: surface{1: {0}}, mesh: poly.Mesh{Vertices: []r3.Vec{{Z: 1 + out}}}}
		m.findLeads()
		return m.lead[1] == 0
	}
	for _, test := range []struct {
		why       string
		got, want any
	}{
		{"planes 0.0052 degrees apart are one", one(0.9e-4, 0), true},
		{"0.0063 degrees are a bend", one(1.1e-4, 0), false},
		{"planes two hundred-thousandths of the radius apart are one", one(0, 1.9e-5), true},
		{"more is a step", one(0, 2.1e-5), false},
		{"corners stand out of a hole of 6.81 mm by less than 20 um with 44 sides, the next number after 41 that divides by four", Sides(0.00681), 44},
	} {
		t.Run(test.why, func(t *testing.T) {
			if test.got != test.want {
				t.Errorf("%v, want %v", test.got, test.want)
			}
		})
	}
}

// TestFacets: how far what stands for a ball stands out of it, for prints and for measures.
func TestFacets(t *testing.T) {
	const radius = 0.15
	ball, err := Make(body.Ball(radius), 0.003, nil)
	if err != nil {
		t.Fatal(err)
	}
	stock, err := pieces(body.Ball(radius), 0.003)
	if err != nil {
		t.Fatal(err)
	}
	c := cutter{stock: stock}
	outer, _ := c.facetted()
	for _, test := range []struct {
		name        string
		points      []r3.Vec
		least, most float64
	}{{"printed", ball.Vertices, 0.0011, 0.0012}, {"measured", outer.Vertices, 0.0028, 0.0031}} {
		t.Run(test.name, func(t *testing.T) {
			if got := poly.Farthest(test.points)/radius - 1; got < test.least || got > test.most {
				t.Errorf("%.5f of the radius", got)
			}
		})
	}
}
