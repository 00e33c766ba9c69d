package body_test

import (
	"fmt"
	"math"
	"testing"

	"pappus/layout/body"
	"pappus/testdata/testkit"

	"pgregory.net/rapid"
)

// TestPrisms checks volume and surface against closed forms: area of a regular
// polygon times height; for an antiprism of edge 1, n sqrt(4 cos^2(pi/2n) - 1)
// sin(3 pi/2n) / (12 sin^2(pi/n)) (quoted from memory; for three sides it is the
// octahedron's, which is checked too).
func TestPrisms(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sides := rapid.IntRange(3, body.MostSides).Draw(t, "sides")
		height := rapid.Float64Range(radius/100, radius*100).Draw(t, "height")
		n := float64(sides)
		ends := n / 2 * radius * radius * math.Sin(2*math.Pi/n)
		b := testkit.Body(t)(body.Prism(sides, radius, height))
		testkit.Near(t, "volume", b.Volume(), ends*height, 1e-11)
		testkit.Near(t, "area", b.Area(), 2*ends+n*height*2*radius*math.Sin(math.Pi/n), 1e-11)
		testkit.Near(t, "radius", b.Radius, math.Hypot(radius, height/2), 1e-14)
		a := testkit.Body(t)(body.Antiprism(sides, radius, height))
		// By Simpson's rule, which is exact here; the middle section has twice
		// the sides, its corners the middles of the slanted edges.
		middle := n * math.Pow(radius*math.Cos(math.Pi/2/n), 2) * math.Sin(math.Pi/n)
		testkit.Near(t, "volume", a.Volume(), height/6*(2*ends+4*middle), 1e-11)
		for _, b := range []*body.Body{a, b} {
			testkit.Near(t, "ball", 4*math.Pi/3*math.Pow(b.BallRadius, 3), b.Volume(), 1e-12)
			testkit.Near(t, "lowest", b.Lowest(), -height/2, 1e-12)
		}
	})
}

func TestEqualEdges(t *testing.T) {
	for sides := 3; sides <= body.MostSides; sides++ {
		n := float64(sides)
		for _, b := range []*body.Body{testkit.Body(t)(body.Prism(sides, radius, 0)), testkit.Body(t)(body.Antiprism(sides, radius, 0))} {
			for _, e := range b.Edges() {
				testkit.Near(t, b.Name, testkit.Length(b, e), 2*radius*math.Sin(math.Pi/n), 1e-10)
			}
		}
		a := testkit.Body(t)(body.Antiprism(sides, radius, 0))
		edge := testkit.Length(a, a.Edges()[0])
		volume := n * math.Sqrt(4*math.Pow(math.Cos(math.Pi/2/n), 2)-1) * math.Sin(1.5*math.Pi/n) / (12 * math.Pow(math.Sin(math.Pi/n), 2))
		testkit.Near(t, "volume", a.Volume(), volume*edge*edge*edge, 1e-10)
	}
	octahedron := testkit.Body(t)(body.Antiprism(3, radius, 0))
	edge := testkit.Length(octahedron, octahedron.Edges()[0])
	testkit.Near(t, "octahedron", octahedron.Volume(), math.Sqrt2/3*edge*edge*edge, 1e-13)
	cube := testkit.Body(t)(body.Prism(4, radius, 0))
	testkit.Near(t, "cube", cube.Volume(), math.Pow(radius*math.Sqrt2, 3), 1e-13)
}

func TestPrismStance(t *testing.T) {
	p := testkit.Body(t)(body.Prism(6, radius, 0.2))
	if n := p.Normal(1); math.Abs(n.X-1) > 1e-14 || math.Abs(p.Normal(0).Z-1) > 1e-14 {
		t.Errorf("faces look to %v and %v", p.Normal(0), n)
	}
	if v := testkit.Body(t)(body.Antiprism(6, radius, 0.2)).Vertices[0]; v.Y != 0 || v.X <= 0 {
		t.Errorf("the first corner of the antiprism is %v", v)
	}
}

func TestPrismErrors(t *testing.T) {
	cases := []struct {
		sides          int
		radius, height float64
		want           error
	}{
		{2, 1, 1, errSides},
		{0, 1, 0, errSides},
		{257, 1, 1, errSides},
		{5, 0, 1, errRadius},
		{5, math.NaN(), 0, errRadius},
		{5, 1, -1, errProportion},
		{5, 1, math.NaN(), errProportion},
		{5, 1, 1e-3, errProportion},
		{5, 1, 101, errProportion},
	}
	for _, c := range cases {
		if _, err := body.Prism(c.sides, c.radius, c.height); !testkit.Says(err, c.want) {
			t.Errorf("prism %+v: %v", c, err)
		}
		if _, err := body.Antiprism(c.sides, c.radius, c.height); !testkit.Says(err, c.want) {
			t.Errorf("antiprism %+v: %v", c, err)
		}
	}
}

func ExamplePrism() {
	b, err := body.Prism(6, 0.1, 0.4)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%d faces, %.2f litres\n", len(b.Faces), 1000*b.Volume())
	// Output: 8 faces, 10.39 litres
}
