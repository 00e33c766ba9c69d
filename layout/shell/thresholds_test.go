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
	// meet tells whether four cells round the z axis meet in one line where the last one's is
	// turned off it by an angle in rad.
	meet := func(turn float64) bool {
		var c cutter
		cells := make([]share, 4)
		for i := range cells {
			sin, cos := math.Sincos(float64(i) * math.Pi / 2)
			c.sites = append(c.sites, Hole{Point: r3.Vec{X: cos, Y: sin, Z: 5}})
			up := r3.Vec{Y: 1}
			if i == 3 {
				up = r3.Vec{Y: math.Cos(turn), Z: math.Sin(turn)}
			}
			cells[i].Sides = []Side{{Normal: r3.Vec{X: 1}}, {Normal: up}}
		}
		return len(c.crossings(cells)) == 1
	}
	// lies tells whether a rod at an azimuth in degrees fits a bed that is as long and hardly as wide.
	lies := func(azimuth float64) bool {
		sin, cos := math.Sincos(azimuth * degree)
		var s Segment
		return s.measure([]r3.Vec{{}, {X: cos, Y: sin}, {X: cos, Y: sin, Z: 0.001}}, Size{1, 0.001, 0.001})
	}
	for _, test := range []struct {
		why       string
		got, want any
	}{
		{"planes 0.0052 degrees apart are one", one(0.9e-4, 0), true},
		{"0.0063 degrees are a bend", one(1.1e-4, 0), false},
		{"planes two hundred-thousandths of the radius apart are one", one(0, 1.9e-5), true},
		{"more is a step", one(0, 2.1e-5), false},
		{"lines a hundredth of a millimetre apart on a body of 100 mm are one", meet(0.9e-4), true},
		{"farther apart they are two", meet(1.1e-4), false},
		{"a segment is tried in every whole degree", lies(7) && lies(90) && lies(179), true},
		{"and in no part of one", lies(7.5), false},
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
