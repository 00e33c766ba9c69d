package body_test

import (
	"math"
	"slices"
	"testing"

	"pappus/layout/body"
	"pappus/layout/poly"
	"pappus/testdata/testkit"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

func cutAt(t rapid.TB, b *body.Body, height float64) *body.Body {
	t.Helper()
	c, err := b.CutAt(height)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// TestKnownCuts checks cuts that are named solids: J1, J2 and J11 of N. W.
// Johnson, Convex polyhedra with regular faces, Canad. J. Math. 18 (1966) 169,
// of edge 1, and elementary ones.
func TestKnownCuts(t *testing.T) {
	s5 := math.Sqrt(5)
	ico := geodesic(t, "icosahedron", 1)
	edge := testkit.Length(ico, ico.Edges()[0])
	a3 := edge * edge * edge
	octa := platonic(t, "octahedron")
	cube := platonic(t, "cube")
	side := 2 * radius / math.Sqrt(3)
	cases := []struct {
		name                  string
		whole                 *body.Body
		height                float64
		vertices, edges, face int
		volume                float64
	}{
		{"square pyramid, J1", octa, 0, 5, 8, 5, math.Pow(testkit.Length(octa, octa.Edges()[0]), 3) * math.Sqrt2 / 6},
		{"pentagonal pyramid, J2", ico, radius / s5, 6, 10, 6, a3 * (5 + s5) / 24},
		{"gyroelongated pentagonal pyramid, J11", ico, -radius / s5, 11, 25, 16, a3 * (25 + 9*s5) / 24},
		{"half icosahedron", ico, 0, 16, 30, 16, ico.Volume() / 2},
		{"half cube", cube, 0, 8, 12, 6, side * side * side / 2},
		{"a quarter of a cube", cube, side / 4, 8, 12, 6, side * side * side / 4},
		{"top eighth of a tetrahedron", platonic(t, "tetrahedron"), radius / 3, 4, 6, 4, platonic(t, "tetrahedron").Volume() / 8},
		{"half geodesic", geodesic(t, "icosahedron", 2), 0, 26, 65, 41, geodesic(t, "icosahedron", 2).Volume() / 2},
		{"half geodesic through triangles", geodesic(t, "icosahedron", 3), 0, 76, 180, 106, geodesic(t, "icosahedron", 3).Volume() / 2},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			b := cutAt(t, c.whole, c.height)
			if got := [3]int{len(b.Vertices), len(b.Edges()), len(b.Faces)}; got != [3]int{c.vertices, c.edges, c.face} {
				t.Errorf("%d vertices, edges, faces; want %d", got, [3]int{c.vertices, c.edges, c.face})
			}
			testkit.Near(t, "volume", b.Volume(), c.volume, 1e-13)
			testkit.Closed(t, b, 1e-12*radius)
			base := len(b.Faces) - 1
			if !b.Faces[base].Base() || b.Normal(base).Z > -1+1e-14 {
				t.Errorf("the last face is no base: %+v", b.Faces[base])
			}
			if b.Radius != radius || b.BallRadius != c.whole.BallRadius || !b.IsCut || b.Lowest() != b.Cut {
				t.Errorf("radius %g, ball radius %g, cut %v at %g", b.Radius, b.BallRadius, b.IsCut, b.Cut)
			}
		})
	}
}

// TestCutBall checks the cap of a ball (Archimedes, On the sphere and cylinder:
// its round surface is 2 pi R h; half a ball is two thirds of its cylinder).
func TestCutBall(t *testing.T) {
	square, cube := radius*radius, radius*radius*radius
	cases := []struct {
		name                 string
		height, volume, area float64
	}{
		{"half", 0, 2 * math.Pi / 3 * cube, 3 * math.Pi * square},
		{"upper cap", radius / 2, 5 * math.Pi / 24 * cube, math.Pi*square + 0.75*math.Pi*square},
		{"all but a cap", -radius / 2, (4./3 - 5./24) * math.Pi * cube, 3*math.Pi*square + 0.75*math.Pi*square},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			b := cutAt(t, body.Ball(radius), c.height)
			testkit.Near(t, "volume", b.Volume(), c.volume, 1e-14)
			testkit.Near(t, "area", b.Area(), c.area, 1e-14)
			if !b.IsCut || b.Cut != c.height || b.Lowest() != c.height || b.BallRadius != radius {
				t.Errorf("%+v", b)
			}
		})
	}
}

func TestCutLimits(t *testing.T) {
	cases := []struct {
		name   string
		height float64
		want   error
		cut    bool
	}{
		{"above", 1, body.ErrNothingLeft, false},
		{"at the top", radius, body.ErrNothingLeft, false},
		{"a hair under the top", radius * (1 - 1e-9), body.ErrNothingLeft, false},
		{"far above", math.Inf(1), body.ErrNothingLeft, false},
		{"no number", math.NaN(), errHeight, false},
		{"at the bottom", -radius, nil, false},
		{"below", -1, nil, false},
		{"far below", math.Inf(-1), nil, false},
		{"just under the top", radius * 0.999, nil, true},
		{"just over the bottom", -radius * 0.999, nil, true},
	}
	for _, whole := range []*body.Body{platonic(t, "octahedron"), geodesic(t, "icosahedron", 3), body.Ball(radius)} {
		for _, c := range cases {
			t.Run(whole.Name+" "+c.name, func(t *testing.T) {
				b, err := whole.CutAt(c.height)
				if !testkit.Says(err, c.want) {
					t.Fatalf("%v, want %v", err, c.want)
				}
				if err == nil && (b.IsCut != c.cut || b.Volume() > whole.Volume()) {
					t.Errorf("cut %v, want %v", b.IsCut, c.cut)
				}
			})
		}
	}
}

// TestCutSnaps: a height that is rounded to a hundredth of a millimetre goes
// through the ring that it means, and leaves no sliver.
func TestCutSnaps(t *testing.T) {
	ico := platonic(t, "icosahedron")
	exact := cutAt(t, ico, radius/math.Sqrt(5)) // 67.08203932 mm
	for _, height := range []float64{0.06708, 0.067082, 0.0670821, 0.06709} {
		b := cutAt(t, ico, height)
		if len(b.Vertices) != 6 || b.Volume() != exact.Volume() || b.Cut != exact.Cut {
			t.Errorf("at %g: %d vertices, volume %g, cut %.12g", height, len(b.Vertices), b.Volume(), b.Cut)
		}
	}
	if b := cutAt(t, ico, 0.067); len(b.Vertices) != 16 || b.Cut != 0.067 {
		t.Errorf("a tenth of a millimetre under the ring: %d vertices, cut %g", len(b.Vertices), b.Cut)
	}
}

// anyBody draws a whole body with faces.
func anyBody(t *rapid.T) *body.Body {
	var b *body.Body
	var err error
	if name := rapid.SampledFrom(append(solids, "geodesic")).Draw(t, "shape"); name != "geodesic" {
		b, err = body.Platonic(name, radius)
	} else {
		base, n := rapid.SampledFrom(bases).Draw(t, "base"), rapid.IntRange(1, 6).Draw(t, "subdivision")
		b, err = body.Geodesic(base, n, radius)
	}
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// mirrored turns a body upside down.
func mirrored(b *body.Body) *body.Body {
	m := *b
	m.Vertices = slices.Clone(b.Vertices)
	for i := range m.Vertices {
		m.Vertices[i].Z = -m.Vertices[i].Z
	}
	m.Faces = nil
	for _, f := range b.Faces {
		c := slices.Clone(f.Corners)
		slices.Reverse(c)
		m.Faces = append(m.Faces, poly.Face{Corners: c})
	}
	return &m
}

func top(b *body.Body) float64 {
	return slices.MaxFunc(b.Vertices, func(p, q r3.Vec) int {
		if p.Z < q.Z {
			return -1
		}
		return 1
	}).Z
}

// Both sides of a cut are closed and make up the whole.
func TestCutParts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := anyBody(t)
		low, high := b.Lowest(), top(b)
		height := low + (high-low)*rapid.Float64Range(0.001, 0.999).Draw(t, "height")
		upper, lower := cutAt(t, b, height), cutAt(t, mirrored(b), -height)
		// Where a plane passes near several rings they are all put on it.
		testkit.Closed(t, upper, 2e-6*radius)
		testkit.Closed(t, lower, 2e-6*radius)
		if sum := upper.Volume() + lower.Volume(); math.Abs(sum/b.Volume()-1) > 1e-12 {
			t.Errorf("%g + %g m3 is not %g", upper.Volume(), lower.Volume(), b.Volume())
		}
		if math.Abs(upper.Cut-height) > 1e-4*radius || upper.Cut != -lower.Cut {
			t.Errorf("cut at %g and %g, want %g", upper.Cut, -lower.Cut, height)
		}
		base := upper.Faces[len(upper.Faces)-1]
		for _, c := range base.Corners {
			if upper.Vertices[c].Z != upper.Cut {
				t.Errorf("corner %d of the base is at %g, not at %g", c, upper.Vertices[c].Z, upper.Cut)
			}
		}
	})
}

// What is cut twice is as if cut once at the higher plane.
func TestCutTwice(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := anyBody(t)
		low, high := b.Lowest(), top(b)
		first := low + (high-low)*rapid.Float64Range(0.01, 0.9).Draw(t, "first")
		second := low + (high-low)*rapid.Float64Range(0.01, 0.9).Draw(t, "second")
		if math.Abs(first-second) < 1e-3*radius {
			t.Skip("one plane")
		}
		twice, once := cutAt(t, cutAt(t, b, first), second), cutAt(t, b, max(first, second))
		testkit.Closed(t, twice, 2e-6*radius)
		if math.Abs(twice.Volume()/once.Volume()-1) > 1e-5 || len(twice.Faces) != len(once.Faces) {
			t.Errorf("volume %g and %d faces, want %g and %d", twice.Volume(), len(twice.Faces), once.Volume(), len(once.Faces))
		}
		bases := 0
		for _, f := range twice.Faces {
			if f.Base() {
				bases++
			}
		}
		if bases != 1 {
			t.Errorf("%d bases", bases)
		}
	})
}

// A cut leaves the body that it was made from alone.
func TestCutLeavesWhole(t *testing.T) {
	b, again := geodesic(t, "icosahedron", 2), geodesic(t, "icosahedron", 2)
	cutAt(t, b, 0.01)
	if !slices.Equal(b.Vertices, again.Vertices) || b.Volume() != again.Volume() || b.IsCut {
		t.Error("the whole body changed")
	}
}

// Points between the vertices are inside, cut or not; beyond a face and under
// the base they are outside.
func TestContains(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := anyBody(t)
		if rapid.Bool().Draw(t, "cut") {
			b = cutAt(t, b, b.Lowest()+(top(b)-b.Lowest())*rapid.Float64Range(0.1, 0.9).Draw(t, "height"))
		}
		var mean r3.Vec
		for _, v := range b.Vertices {
			mean = r3.Add(mean, r3.Scale(1/float64(len(b.Vertices)), v))
		}
		v := rapid.SampledFrom(b.Vertices).Draw(t, "vertex")
		if !b.Contains(v) || !b.Contains(mean) {
			t.Errorf("vertex or middle is outside")
		}
		along := rapid.Float64Range(0, 1).Draw(t, "along")
		if p := r3.Add(mean, r3.Scale(along, r3.Sub(v, mean))); !b.Contains(p) {
			t.Errorf("%v is outside", p)
		}
		f := rapid.IntRange(0, len(b.Faces)-1).Draw(t, "face")
		c, step := b.Centroid(f), r3.Scale(1e-9*radius, b.Normal(f))
		if !b.Contains(c) || !b.Contains(r3.Sub(c, step)) || b.Contains(r3.Add(c, step)) {
			t.Errorf("face %d: on, inside, outside are %v %v %v", f, b.Contains(c), b.Contains(r3.Sub(c, step)), b.Contains(r3.Add(c, step)))
		}
	})
}

func TestContainsBall(t *testing.T) {
	whole := body.Ball(radius)
	dome := cutAt(t, whole, 0.05)
	cases := []struct {
		name          string
		p             r3.Vec
		inBall, inCut bool
	}{
		{"centre", r3.Vec{}, true, false},
		{"top", r3.Vec{Z: radius}, true, true},
		{"over the top", r3.Vec{Z: radius * 1.000001}, false, false},
		{"on the slope", r3.Scale(radius/3, r3.Vec{X: 1, Y: 2, Z: 2}), true, true},
		{"on the cut", r3.Vec{X: 0.1, Z: 0.05}, true, true},
		{"under the cut", r3.Vec{X: 0.1, Z: 0.0499}, true, false},
		{"beside", r3.Vec{X: radius, Z: 0.05}, false, false},
		{"no number", r3.Vec{X: math.NaN()}, false, false},
	}
	for _, c := range cases {
		if whole.Contains(c.p) != c.inBall || dome.Contains(c.p) != c.inCut {
			t.Errorf("%s: ball %v, dome %v", c.name, whole.Contains(c.p), dome.Contains(c.p))
		}
	}
}

// TestVolumeCentroid: that of a half ball lies 3/8 of the radius up, that of a half cube
// that stands on a face a quarter of its edge, and that of a whole body at its centre; cutting lower and lower
// brings it and the ball that stands for the body in open air back to the whole one's.
func TestVolumeCentroid(t *testing.T) {
	cube, err := body.Platonic("cube", math.Sqrt(3)/2) // of edge 1
	if err != nil {
		t.Fatal(err)
	}
	for _, test := range []struct {
		name string
		body *body.Body
		cut  float64
		up   float64
	}{
		{"half ball", body.Ball(2), 0, 0.75},
		{"ball", body.Ball(2), -2, 0},
		{"cap", body.Ball(3), 2, 3 * 25.0 / (4 * 8)}, // 3 (2r-h)^2 / (4 (3r-h)) with h = 1 and r = 3
		{"half cube", cube, 0, 0.25},
	} {
		got, err := test.body.CutAt(test.cut)
		if err != nil {
			t.Fatal(err)
		}
		if c := got.VolumeCentroid(); math.Abs(c.Z-test.up) > 1e-12 {
			t.Errorf("%s: %v, want %g up", test.name, c, test.up)
		}
	}
	if c := cube.VolumeCentroid(); r3.Norm(c) > 1e-15 {
		t.Errorf("cube: %v", c)
	}
	low, err := cube.CutAt(0.9998 * cube.Lowest())
	if err != nil {
		t.Fatal(err)
	}
	open := low.InOpenAir()
	if d := math.Abs(open.BallRadius - cube.BallRadius); d > 1e-4 || r3.Norm(open.BallCentre) > 1e-3 {
		t.Errorf("hardly cut: ball of %g m at %v, whole %g", open.BallRadius, open.BallCentre, cube.BallRadius)
	}
}

// TestOnBall: places move along their own direction to the ball about its own centre.
func TestOnBall(t *testing.T) {
	b, err := body.Ball(2).CutAt(0)
	if err != nil {
		t.Fatal(err)
	}
	b = b.InOpenAir()
	for _, p := range []r3.Vec{{X: 2}, {Z: 2}, {X: 0.1, Y: -1, Z: 0.4}, {X: 5, Z: 3}} {
		on, from := b.OnBall(p), r3.Sub(p, b.BallCentre)
		if math.Abs(r3.Norm(on)-b.BallRadius) > 1e-12 || r3.Norm(r3.Cross(on, from)) > 1e-12 || r3.Dot(on, from) <= 0 {
			t.Errorf("%v: %v", p, on)
		}
		if !b.InBall(r3.Add(b.BallCentre, r3.Scale(0.999, on))) || b.InBall(r3.Add(b.BallCentre, r3.Scale(1.001, on))) {
			t.Errorf("%v: the ball's edge is elsewhere", p)
		}
	}
	if on := b.OnBall(b.BallCentre); on != (r3.Vec{}) {
		t.Errorf("the centre goes to %v", on)
	}
}

// TestSnap: a plane is put through a vertex that is nearer than a ten-thousandth of the radius.
func TestSnap(t *testing.T) {
	ring := radius / math.Sqrt(5)
	b := platonic(t, "icosahedron")
	testkit.Near(t, "a plane near a vertex", cutAt(t, b, ring+0.85e-4*radius).Cut, ring, 1e-12)
	testkit.Near(t, "a plane off it", cutAt(t, b, ring+1.15e-4*radius).Cut, ring+1.15e-4*radius, 1e-12)
}

// TestExtent: how far a body reaches is the farthest of its points in a direction, and its base
// that of the nearest.
func TestExtent(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := rapid.Float64Range(-1, 1)
		u := r3.Vec{X: c.Draw(t, "x"), Y: c.Draw(t, "y"), Z: c.Draw(t, "z")}
		if r3.Norm(u) < 0.1 {
			return
		}
		u = r3.Unit(u)
		cut := rapid.Float64Range(-0.9, 0.9).Draw(t, "cut")
		b, err := body.Ball(2).CutAt(2 * cut)
		if err != nil {
			t.Fatal(err)
		}
		most, base := math.Inf(-1), math.Inf(1)
		for i := range 120 {
			for j := range 61 {
				sin, cos := math.Sincos(2 * math.Pi * float64(i) / 120)
				lowest := math.Asin(cut)
				z, across := math.Sincos(lowest + (math.Pi/2-lowest)*float64(j)/60)
				d := 2 * r3.Dot(u, r3.Vec{X: across * cos, Y: across * sin, Z: z})
				if most = max(most, d); j == 0 {
					base = min(base, d)
				}
			}
		}
		if math.Abs(b.Extent(u)-most) > 5e-3 || math.Abs(b.BaseExtent(u)-base) > 5e-3 {
			t.Fatalf("reaches %g and its base %g, want %g and %g", b.Extent(u), b.BaseExtent(u), most, base)
		}
	})
	cube, err := body.Platonic("cube", math.Sqrt(3))
	if err != nil {
		t.Fatal(err)
	}
	half, err := cube.CutAt(0)
	if err != nil {
		t.Fatal(err)
	}
	slant := r3.Unit(r3.Vec{X: 3, Z: 4})
	for _, test := range []struct{ got, want float64 }{
		{cube.Extent(slant), 1.4}, {cube.BaseExtent(slant), 0}, {half.Extent(slant), 1.4}, {half.BaseExtent(slant), -0.6}, {half.Extent(r3.Vec{Z: -1}), 0},
	} {
		if math.Abs(test.got-test.want) > 1e-12 {
			t.Errorf("%g, want %g", test.got, test.want)
		}
	}
}
