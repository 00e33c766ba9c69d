package trust_test

import (
	"math"
	"math/cmplx"
	"testing"

	"pappus/layout/body"
	"pappus/testdata/thorough"
	"pappus/timing/ball"
	"pappus/timing/boundary"
	"pappus/timing/trust"

	"gonum.org/v1/gonum/spatial/r3"
)

// solids are bodies of 150 mm with the most in dB that the level of a driver of 25 mm radius (13 mm on
// 80 faces) is off in front at some Hz, as worst solves for it.
var solids = []struct {
	name string
	make func() (*body.Body, error)
	cone float64 // m
	dB   map[float64]float64
}{
	{"tetrahedron", platonic("tetrahedron"), 0.025, map[float64]float64{500: 0.62, 1000: 3.35, 2000: 4.53}},
	{"cube", platonic("cube"), 0.025, map[float64]float64{500: 0.52, 1000: 3.67, 2000: 3.87}},
	{"octahedron", platonic("octahedron"), 0.025, map[float64]float64{500: 0.28, 1000: 1.93, 2000: 3.51}},
	{"dodecahedron", platonic("dodecahedron"), 0.025, map[float64]float64{500: 0.20, 1000: 0.96, 1500: 3.65, 2000: 3.33}},
	{"icosahedron", platonic("icosahedron"), 0.025, map[float64]float64{500: 0.11, 1000: 0.64, 2000: 1.78}},
	{"prism of 6 sides", func() (*body.Body, error) { return body.Prism(6, 0.15, 0.2) }, 0.025, map[float64]float64{500: 1.58, 1000: 4.75, 2000: 3.02}},
	{"80 faces", func() (*body.Body, error) { return body.Geodesic("icosahedron", 2, 0.15) }, 0.013, map[float64]float64{2000: 0.69, 4000: 1.22, 5600: 1.49}},
}

func platonic(name string) func() (*body.Body, error) {
	return func() (*body.Body, error) { return body.Platonic(name, 0.15) }
}

// TestFacesOfKnownBodies: what is said of bodies is within a factor of 1.3 of the most that a driver is
// off in front; with THOROUGH=1 that is solved for again.
func TestFacesOfKnownBodies(t *testing.T) {
	for _, c := range solids {
		b, err := c.make()
		if err != nil {
			t.Fatal(err)
		}
		for hz, want := range c.dB {
			k := 2 * math.Pi * hz / 343.2
			if said := trust.Faces(b.Deviation(), k*b.BallRadius); said > 1.3*want || said < want/1.3 {
				t.Errorf("%s at %g Hz: %.2f dB are said, it is off by %.2f", c.name, hz, said, want)
			}
			if thorough.Set {
				if got := worst(t, b, c.cone, k); math.Abs(got-want) > 0.006 {
					t.Errorf("%s at %g Hz: %.3f dB, want %.2f", c.name, hz, got, want)
				}
			}
		}
	}
}

// worst returns by how much in dB the level of a piston in the middle of a face, of each kind of faces, is off
// the ball's at most, 2 m away within 90 degrees of the driver, of 400 directions.
func worst(t *testing.T, b *body.Body, cone, k float64) (most float64) {
	t.Helper()
	var pistons []boundary.Piston
	var faces [][]r3.Vec
	kinds := map[int]bool{}
	for f, face := range b.Faces {
		var corners []r3.Vec
		for _, v := range face.Corners {
			corners = append(corners, b.Vertices[v])
		}
		faces = append(faces, corners)
		if !kinds[len(corners)] {
			kinds[len(corners)] = true
			pistons = append(pistons, boundary.Piston{At: b.Centroid(f), Axis: b.Normal(f), Radius: cone})
		}
	}
	s, err := (&boundary.Problem{Patches: boundary.Polyhedron(faces)}).NewSolver(pistons)
	if err != nil {
		t.Fatal(err)
	}
	x, err := s.Solve(k, 5, 1e-6)
	if err != nil {
		t.Fatal(err)
	}
	series, err := ball.NewSeries(ball.Cap{Radius: b.BallRadius, HalfAngle: math.Asin(cone / b.BallRadius)}, []float64{k}, 1e-12)
	if err != nil {
		t.Fatal(err)
	}
	series.Move(2)
	onBall := make([]complex128, 1)
	const n = 400
	for j := range n {
		z, golden := 1-2*(float64(j)+0.5)/n, 2.399963*float64(j)
		towards := r3.Vec{X: math.Sqrt(1-z*z) * math.Cos(golden), Y: math.Sqrt(1-z*z) * math.Sin(golden), Z: z}
		for i, p := range pistons {
			if angle := math.Acos(r3.Dot(r3.Unit(p.At), towards)); angle < math.Pi/2 {
				series.At(onBall, angle)
				most = max(most, math.Abs(20*math.Log10(cmplx.Abs(2*x.At(i, r3.Scale(2, towards))/onBall[0]))))
			}
		}
	}
	return most
}
