package fit_test

import (
	"fmt"
	"math"
	"testing"

	"pappus/layout/body"
	"pappus/layout/fit"
	"pappus/layout/spread"
	"pappus/testdata/testkit"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

const mm = 1e-3

var small = fit.Outline{
	CutoutRadius: 16.5 * mm, FlangeRadius: 20 * mm, Depth: 18 * mm, MagnetRadius: 12 * mm, MagnetHeight: 6 * mm,
	TerminalReach: 18 * mm, TerminalFront: 6 * mm, TerminalLength: 4 * mm, ScrewRadius: 0.5 * mm,
}

func onFaces(b *body.Body) []fit.Mount {
	out := make([]fit.Mount, len(b.Faces))
	for f := range out {
		out[f] = fit.Mount{Point: b.Centroid(f), Normal: b.Normal(f), Face: f}
	}
	return out
}

func onBall(n int, radius float64) []fit.Mount {
	out := make([]fit.Mount, n)
	for i, p := range spread.Spiral(n) {
		out[i] = fit.Mount{Point: r3.Scale(radius, p), Normal: p, Face: -1}
	}
	return out
}

func solidOf(t testing.TB, name string, radius float64) *body.Body {
	t.Helper()
	b, err := body.Platonic(name, radius)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// TestCheckCube: every length on a box of 100 mm follows by hand.
func TestCheckCube(t *testing.T) {
	cube := solidOf(t, "cube", 50*mm*math.Sqrt(3))
	reports, err := fit.Check(cube, onFaces(cube), small, fit.Limits{Wall: 3 * mm, Edge: 1 * mm})
	if err != nil {
		t.Fatal(err)
	}
	for i, r := range reports {
		want := map[string][2]float64{
			"flange":     {r.Flange, 30},
			"cut-out":    {r.Cutout, 50 - 3 - 16.5},
			"gap":        {r.Gap, 100 - 40},                       // both touch the edge's middle
			"inside":     {r.Inside, math.Sqrt2 * (50 - 18 - 12)}, // rear rims, round the corner
			"wall":       {r.Wall, 50 - 3 - (16.5 - 4.5*3/12)},    // the basket behind the wall
			"terminal":   {r.Terminal, 3},                         // its own wall
			"ring":       {r.ScrewRing, 16.5 + 1 + 0.5},
			"in flange":  {r.ScrewFlange, 20 - 18 - 0.5},
			"from edge":  {r.ScrewEdge, 50 - 18 - 0.5},
			"through it": {r.Through, -1.5},
		}
		for name, v := range want {
			if math.Abs(v[0]/mm-v[1]) > 1e-6 {
				t.Errorf("mount %d, %s: %.9g mm, want %.9g", i, name, v[0]/mm, v[1])
			}
		}
		if r.GapTo < 0 || r.InsideTo < 0 || r.TerminalTo != -1 {
			t.Errorf("mount %d: neighbours %d, %d, %d", i, r.GapTo, r.InsideTo, r.TerminalTo)
		}
		if !r.Fits(fit.Limits{Apart: 2 * mm, Edge: 1 * mm}) || r.Fits(fit.Limits{Edge: 1.6 * mm}) {
			t.Errorf("mount %d: fits is wrong for %+v", i, r)
		}
	}
}

func TestCheckOneThing(t *testing.T) {
	cube := solidOf(t, "cube", 50*mm*math.Sqrt(3))
	dome, err := body.Ball(100 * mm).CutAt(0)
	if err != nil {
		t.Fatal(err)
	}
	top := fit.Mount{Point: r3.Vec{Z: 100 * mm}, Normal: z, Face: -1}
	onTop := fit.Mount{Point: r3.Vec{Z: 50 * mm}, Normal: z}
	deep := func(d float64) fit.Outline {
		return fit.Outline{CutoutRadius: 20 * mm, FlangeRadius: 20 * mm, Depth: d * mm}
	}
	cases := []struct {
		name   string
		b      *body.Body
		mounts []fit.Mount
		d      fit.Outline
		of     func(fit.Report) float64
		want   float64 // mm
	}{
		{"nothing to be near to", cube, []fit.Mount{onTop}, deep(10), func(r fit.Report) float64 { return r.Inside }, math.Inf(1)},
		{"through the far wall", cube, []fit.Mount{onTop}, deep(99), func(r fit.Report) float64 { return r.Wall }, -2},
		{"thinner than the wall", cube, []fit.Mount{onTop}, deep(2), func(r fit.Report) float64 { return r.Wall }, math.Inf(1)},
		{"down to a dome's base", dome, []fit.Mount{top}, deep(90), func(r fit.Report) float64 { return r.Wall }, 100 - 3 - math.Hypot(10, 20)},
		{"too long for a dome", dome, []fit.Mount{top}, deep(99), func(r fit.Report) float64 { return r.Wall }, -2},
		{"on no face", dome, []fit.Mount{top}, deep(9), func(r fit.Report) float64 { return r.Flange }, math.Inf(1)},
		{"no depth given", cube, []fit.Mount{onTop}, deep(0), func(r fit.Report) float64 { return r.Wall }, math.NaN()},
		{"one place twice", cube, []fit.Mount{onTop, onTop}, deep(10), func(r fit.Report) float64 { return r.Inside }, -10},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			if c.name == "down to a dome's base" {
				c.want = min(c.want, 10-3)
			}
			r, err := fit.Check(c.b, c.mounts, c.d, fit.Limits{Wall: 3 * mm})
			if err != nil {
				t.Fatal(err)
			}
			got := c.of(r[0]) / mm
			if got != c.want && !(math.Abs(got-c.want) < 1e-5) && !(math.IsNaN(got) && math.IsNaN(c.want)) {
				t.Errorf("%.9g mm, want %.9g", got, c.want)
			}
		})
	}
}

func TestBadInput(t *testing.T) {
	cube := solidOf(t, "cube", 0.1)
	mounts := onFaces(cube)
	nan := math.NaN()
	change := func(f func(*fit.Outline)) fit.Outline {
		d := small
		f(&d)
		return d
	}
	cases := []struct {
		name   string
		mounts []fit.Mount
		d      fit.Outline
		l      fit.Limits
		want   error
	}{
		{"no cut-out", mounts, change(func(d *fit.Outline) { d.CutoutRadius = 0 }), fit.Limits{}, errDriver},
		{"flange less than cut-out", mounts, change(func(d *fit.Outline) { d.FlangeRadius = 0.01 }), fit.Limits{}, errDriver},
		{"magnet longer than driver", mounts, change(func(d *fit.Outline) { d.MagnetHeight = 1 }), fit.Limits{}, errDriver},
		{"depth no number", mounts, change(func(d *fit.Outline) { d.Depth = nan }), fit.Limits{}, errDriver},
		{"endless terminal", mounts, change(func(d *fit.Outline) { d.TerminalReach = math.Inf(1) }), fit.Limits{}, errDriver},
		{"wall below nothing", mounts, small, fit.Limits{Wall: -1}, errLimits},
		{"no such face", []fit.Mount{{Normal: z, Face: 6}}, small, fit.Limits{}, errMount},
		{"no direction", []fit.Mount{{Face: 1}}, small, fit.Limits{}, errMount},
		{"nowhere", []fit.Mount{{Point: r3.Vec{X: nan}, Normal: z}}, small, fit.Limits{}, errMount},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			if _, err := fit.Check(cube, c.mounts, c.d, c.l); !testkit.Says(err, c.want) {
				t.Errorf("Check: %v", err)
			}
			if _, err := fit.LargestDriver(cube, c.mounts, c.d, c.l); !testkit.Says(err, c.want) {
				t.Errorf("LargestDriver: %v", err)
			}
			if _, err := fit.SmallestBody(cube, c.mounts, c.d, c.l); !testkit.Says(err, c.want) {
				t.Errorf("SmallestBody: %v", err)
			}
		})
	}
}

// TestLargestOnBall: a flange is seated on a flat circle of the ball, so that one driver
// alone on a ball is no larger than the ball.
func TestLargestOnBall(t *testing.T) {
	for _, n := range []int{1, 2} {
		d, err := fit.LargestDriver(body.Ball(0.1), onBall(n, 0.1), fit.Outline{CutoutRadius: 0.0165, FlangeRadius: 0.02, Depth: 0.018}, fit.Limits{Wall: 0.003, Edge: 0.002, Apart: 0.002})
		if err != nil {
			t.Fatal(err)
		}
		if d.FlangeRadius > 0.1 {
			t.Errorf("%d on a ball of 100 mm: the largest has a flange of %.1f mm", n, 2000*d.FlangeRadius)
		}
	}
}

// On the faces of a regular solid a flat disc may fill the face: its radius is
// the face's inscribed circle (Coxeter, Regular Polytopes, 3rd ed.). A long
// straight driver on a cube meets its neighbours where its rear rim is on the
// diagonal plane: half the edge less the depth is then its radius.
func TestSizes(t *testing.T) {
	for _, name := range []string{"tetrahedron", "cube", "octahedron", "dodecahedron", "icosahedron"} {
		b := solidOf(t, name, 0.15)
		plate := fit.Outline{CutoutRadius: 0.001, FlangeRadius: 0.02}
		d, err := fit.LargestDriver(b, onFaces(b), plate, fit.Limits{})
		if err != nil {
			t.Fatal(err)
		}
		full := b.InscribedRadius(0)
		if math.Abs(d.FlangeRadius/full-1) > 1.1e-6 || math.Abs(d.CutoutRadius/d.FlangeRadius-0.05) > 1e-12 {
			t.Errorf("%s: %+v, want a flange of %g", name, d, full)
		}
		f, err := fit.SmallestBody(b, onFaces(b), plate, fit.Limits{})
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(f*full/0.02-1) > 1.1e-6 {
			t.Errorf("%s: factor %g, want %g", name, f, 0.02/full)
		}
	}
	cube := solidOf(t, "cube", 0.05*math.Sqrt(3))
	rodlike := fit.Outline{CutoutRadius: 0.01, FlangeRadius: 0.01, Depth: 0.03}
	d, err := fit.LargestDriver(cube, onFaces(cube), rodlike, fit.Limits{})
	if err != nil {
		t.Fatal(err)
	}
	if want := 0.05 / 4; math.Abs(d.CutoutRadius/want-1) > 2e-6 {
		t.Errorf("rods meet at a radius of %g, want %g", d.CutoutRadius, want)
	}
	f, err := fit.SmallestBody(cube, onFaces(cube), rodlike, fit.Limits{Apart: 0.002})
	if err != nil {
		t.Fatal(err)
	}
	if want := (0.04 + 0.002/math.Sqrt2) / 0.05; math.Abs(f/want-1) > 2e-6 {
		t.Errorf("factor %g, want %g", f, want)
	}
}

func TestNoSize(t *testing.T) {
	cube := solidOf(t, "cube", 0.1)
	twice := []fit.Mount{onFaces(cube)[0], onFaces(cube)[0]}
	if _, err := fit.LargestDriver(cube, twice, small, fit.Limits{}); !testkit.Says(err, errNoFit) {
		t.Errorf("two in one place: %v", err)
	}
	if _, err := fit.SmallestBody(cube, twice, small, fit.Limits{}); !testkit.Says(err, errNoFit) {
		t.Errorf("two in one place: %v", err)
	}
	narrow := small
	narrow.ScrewRadius = 0.005
	if _, err := fit.SmallestBody(cube, onFaces(cube), narrow, fit.Limits{}); !testkit.Says(err, errNoFit) {
		t.Errorf("screws wider than the flange: %v", err)
	}
}

// What is found fits, and a little more does not.
func TestSizesAreEdges(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b, err := body.Geodesic(rapid.SampledFrom([]string{"icosahedron", "octahedron"}).Draw(t, "base"), rapid.IntRange(1, 2).Draw(t, "subdivision"), 0.15)
		if err != nil {
			t.Fatal(err)
		}
		if b, err = b.CutAt(rapid.Float64Range(-0.1, 0.05).Draw(t, "cut")); err != nil {
			t.Fatal(err)
		}
		var mounts []fit.Mount
		for _, m := range onFaces(b) {
			if !b.Faces[m.Face].Base() {
				mounts = append(mounts, m)
			}
		}
		d := small
		d.ScrewRadius, d.TerminalReach = 0, 0
		d.Depth = rapid.Float64Range(0.008, 0.1).Draw(t, "depth")
		l := fit.Limits{Wall: 0.002, Apart: 0.001, Edge: 0.0005}
		fits := func(d fit.Outline) bool {
			reports, err := fit.Check(b, mounts, d, l)
			if err != nil {
				t.Fatal(err)
			}
			for _, r := range reports {
				if !r.Fits(l) {
					return false
				}
			}
			return true
		}
		best, err := fit.LargestDriver(b, mounts, d, l)
		if testkit.Says(err, errNoFit) {
			return
		} else if err != nil {
			t.Fatal(err)
		}
		more := best
		for _, p := range []*float64{&more.CutoutRadius, &more.FlangeRadius, &more.Depth, &more.MagnetRadius, &more.MagnetHeight} {
			*p *= 1.00001
		}
		if !fits(best) || fits(more) {
			t.Fatalf("%+v is not the largest", best)
		}
		f, err := fit.SmallestBody(b, mounts, best, l)
		if err != nil {
			t.Fatal(err)
		}
		if f > 1+1e-5 {
			t.Fatalf("needs a body %g times as large", f)
		}
	})
}

// Sweeping finds the neighbours that comparing all with all finds.
func TestCheckFindsNearest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(2, 50).Draw(t, "mounts")
		mounts := onBall(n, 0.15)
		reports, err := fit.Check(body.Ball(0.15), mounts, small, fit.Limits{Wall: 0.003})
		if err != nil {
			t.Fatal(err)
		}
		for i, r := range reports {
			gap, inside := math.Inf(1), math.Inf(1)
			for j := range mounts {
				if i == j {
					continue
				}
				gap = min(gap, fit.Gap(mounts[i].Point, mounts[i].Normal, mounts[j].Point, mounts[j].Normal, small.FlangeRadius))
				pair, err := fit.Check(body.Ball(0.15), []fit.Mount{mounts[i], mounts[j]}, small, fit.Limits{Wall: 0.003})
				if err != nil {
					t.Fatal(err)
				}
				inside = min(inside, pair[0].Inside)
			}
			if math.Abs(r.Gap-gap) > 1e-12 || math.Abs(r.Inside-inside) > 1e-12 {
				t.Fatalf("mount %d: %+v, want a gap of %g and %g inside", i, r, gap, inside)
			}
		}
	})
}

func ExampleCheck() {
	b, err := body.Geodesic("icosahedron", 2, 0.15)
	if err != nil {
		fmt.Println(err)
		return
	}
	var mounts []fit.Mount
	for f := range b.Faces {
		mounts = append(mounts, fit.Mount{Point: b.Centroid(f), Normal: b.Normal(f), Face: f})
	}
	d := fit.Outline{CutoutRadius: 0.0165, FlangeRadius: 0.020, Depth: 0.018, MagnetRadius: 0.0125, MagnetHeight: 0.006}
	l := fit.Limits{Wall: 0.003, Apart: 0.001, Edge: 0.0005}
	reports, err := fit.Check(b, mounts, d, l)
	if err != nil {
		fmt.Println(err)
		return
	}
	r := reports[0]
	fmt.Printf("flange %.1f mm from the edge, baskets %.1f mm apart: fits %v\n", 1000*r.Flange, 1000*r.Inside, r.Fits(l))
	f, err := fit.SmallestBody(b, mounts, d, l)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("the smallest body has a radius of %.1f mm\n", 1000*f*b.Radius)
	// Output:
	// flange 2.5 mm from the edge, baskets 16.1 mm apart: fits true
	// the smallest body has a radius of 136.4 mm
}

func BenchmarkCheck(b *testing.B) {
	for _, n := range []int{60, 2000} {
		mounts := onBall(n, 0.16)
		d := fit.Outline{CutoutRadius: 0.12 / math.Sqrt(float64(n)), FlangeRadius: 0.14 / math.Sqrt(float64(n)), Depth: 0.03}
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := fit.Check(body.Ball(0.16), mounts, d, fit.Limits{Wall: 0.003}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkSmallestBody(b *testing.B) {
	ball, err := body.Geodesic("icosahedron", 2, 0.15)
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := fit.SmallestBody(ball, onFaces(ball), small, fit.Limits{Wall: 0.003}); err != nil {
			b.Fatal(err)
		}
	}
}
