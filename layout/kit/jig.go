package kit

import (
	"math"

	"pappus/layout/poly"

	"gonum.org/v1/gonum/spatial/r3"
)

// Measures of jigs in m.
const (
	jigTall   = 8e-3
	drill     = 1.6e-3 // of a drill of 3 mm, with room
	penHole   = 1.1e-3
	penHoles  = 8
	testRim   = 6e-3 // of a test piece, round the flange
	jigFacets = 96
)

// jigs makes what parts are tried and marked with: a seat alone, and for a ball a jig that sits
// on it round a marked place.
func (k *maker) jigs() []Job {
	out := []Job{k.seatTest}
	if k.array.Body.IsBall() {
		out = append(out, k.drillJig)
	}
	return out
}

// seatTest is a disc of the wall with one seat, to try a driver in before the shell is printed.
func (k *maker) seatTest() (Part, error) {
	d := k.array.Driver
	p := Part{Name: "seat-test", Count: 1, Loose: true}
	b := &blank{name: p.Name}
	b.add(body, upward.pin(d.FlangeRadius+testRim, -k.wall.thick, 0, 64))
	b.add(cut, upward.pin(d.CutoutRadius, -k.wall.thick-1e-3, 1e-3, 64))
	b.add(cut, k.seated(upward)...)
	var err error
	p.Mesh, err = b.carve()
	return p, err
}

// drillJig is a cap that fits on the ball: a hole for the drill in its middle, pen holes round
// the cut-out, and holes for the screws.
func (k *maker) drillJig() (Part, error) {
	d, radius := k.array.Driver, k.array.Body.Radius
	p := Part{Name: "drill-jig", Count: 1, Loose: true}
	rim := min(d.FlangeRadius+3e-3, 0.9*radius)
	profile := [][2]float64{{drill, jigTall}}
	for i := range 25 {
		r := drill + (rim-drill)*float64(i)/24
		profile = append(profile, [2]float64{r, math.Sqrt(radius*radius-r*r) - radius})
	}
	profile = append(profile, [2]float64{rim, jigTall})
	b := &blank{name: p.Name}
	b.add(body, revolved(profile, jigFacets))
	low := math.Sqrt(radius*radius-rim*rim) - radius - 2e-3
	hole := func(r, x, y float64) {
		at := upward
		at.at = r3.Vec{X: x, Y: y}
		b.add(cut, at.pin(r, low, jigTall+1e-3, 16))
	}
	for _, c := range circle(d.CutoutRadius, penHoles) {
		hole(penHole, c[0], c[1])
	}
	if d.ScrewRadius > 0 && k.ring() > d.CutoutRadius+penHole+d.ScrewRadius {
		for _, c := range circle(k.ring(), screws) {
			hole(d.ScrewRadius, c[0], c[1])
		}
	}
	var err error
	p.Mesh, err = b.carve()
	return p, err
}

// revolved returns what an outline of radius and height leaves as it goes round the z axis; the
// outline runs counter-clockwise seen with the radius to the right.
func revolved(profile [][2]float64, sides int) (m poly.Mesh) {
	n := len(profile)
	for i := range sides {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(sides))
		for _, p := range profile {
			m.Vertices = append(m.Vertices, r3.Vec{X: p[0] * cos, Y: p[0] * sin, Z: p[1]})
		}
	}
	for i := range sides {
		next := (i + 1) % sides
		for j := range n {
			k := (j + 1) % n
			a, b, c, d := i*n+j, next*n+j, next*n+k, i*n+k
			m.Triangles = append(m.Triangles, [3]int{a, b, c}, [3]int{a, c, d})
		}
	}
	return m
}
