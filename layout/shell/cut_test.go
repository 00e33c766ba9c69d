package shell_test

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"testing"

	"pappus/layout/body"
	"pappus/layout/shell"
	"pappus/testdata/testkit"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

func lantern(t testing.TB, cut float64) *body.Body {
	t.Helper()
	b, err := body.Geodesic("icosahedron", 2, 0.15)
	if err != nil {
		t.Fatal(err)
	}
	if b, err = b.CutAt(cut); err != nil {
		t.Fatal(err)
	}
	return b
}

// task is a job with the radius of all its cut-outs.
type task struct {
	shell.Job
	radius float64
}

func (j task) cut(b *body.Body, mounts []shell.Hole) (shell.Plan, error) {
	holes := slices.Clone(mounts)
	for i := range holes {
		holes[i].Radius = j.radius
	}
	return shell.Cut(b, holes, j.Job)
}

func job(x, y, z float64) task {
	return task{shell.Job{Bed: shell.Size{X: x, Y: y, Z: z}, Wall: 0.003, Margin: 0.001, Density: 1240}, 0.01}
}

func cubeOf(t testing.TB, edge float64) *body.Body { return platonic(t, "cube", edge/2*math.Sqrt(3)) }

// TestHollow: a cube's hollow is a cube, a ball's a ball, and the planes of a
// regular solid's faces moved in leave one that is smaller by the same share as
// its inscribed ball.
func TestHollow(t *testing.T) {
	check := func(name string, b *body.Body, wall, want float64) {
		t.Helper()
		got, err := shell.Hollow(b, wall)
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(got/want-1) > 1e-12 {
			t.Errorf("%s: %.15g m3, want %.15g", name, got, want)
		}
	}
	const thin = 0.003
	check("cube", cubeOf(t, 0.1), thin, math.Pow(0.094, 3))
	check("ball", body.Ball(0.1), thin, 4*math.Pi/3*math.Pow(0.097, 3))
	for _, name := range []string{"tetrahedron", "octahedron", "dodecahedron", "icosahedron"} {
		b := platonic(t, name, 0.15)
		in := 3 * b.Volume() / b.Area() // radius of the inscribed ball
		check(name, b, thin, b.Volume()*math.Pow(1-0.003/in, 3))
	}
	half, err := body.Ball(0.1).CutAt(0)
	if err != nil {
		t.Fatal(err)
	}
	check("open half ball", half, thin, 2*math.Pi/3*math.Pow(0.097, 3))
	low, err := cubeOf(t, 0.1).CutAt(0)
	if err != nil {
		t.Fatal(err)
	}
	check("open half cube", low, thin, 0.094*0.094*0.047)
}

// TestCut: pieces of a cube and a ball follow by hand.
func TestCut(t *testing.T) {
	cube := cubeOf(t, 0.1)
	root := math.Sqrt(0.5)
	dome, err := body.Ball(0.1).CutAt(0)
	if err != nil {
		t.Fatal(err)
	}
	sides := onFaces(cube, 0)
	slices.SortFunc(sides, func(p, q shell.Hole) int { return int(1e6 * (q.Point.Z - p.Point.Z)) })
	sides = sides[1:5]
	cases := []struct {
		name            string
		b               *body.Body
		mounts          []shell.Hole
		job             task
		sectors, levels int
		size            shell.Size // of the first
	}{
		{"fits", cube, nil, job(0.1, 0.1, 0.1), 1, 1, shell.Size{X: 0.1, Y: 0.1, Z: 0.1}},
		{"too tall", cube, nil, job(0.1, 0.1, 0.06), 1, 2, shell.Size{X: 0.1, Y: 0.1, Z: 0.05}},
		{"much too tall", cube, nil, job(0.1, 0.1, 0.034), 1, 3, shell.Size{X: 0.1, Y: 0.1, Z: 0.1 / 3}},
		{"too wide one way", cube, nil, job(0.1, 0.06, 0.1), 2, 1, shell.Size{X: 0.1, Y: 0.05, Z: 0.1}},
		{"with a driver on each side", cube, sides, job(0.1*math.Sqrt2, 0.1*root, 0.1), 2, 1,
			shell.Size{X: 0.1 * math.Sqrt2, Y: 0.1 * root, Z: 0.1}},
		{"twelve levels", cube, nil, job(0.1, 0.1, 0.1/12), 1, 12, shell.Size{X: 0.1, Y: 0.1, Z: 0.1 / 12}},
		{"dome", dome, nil, job(0.21, 0.21, 0.1), 1, 1, shell.Size{X: 0.2, Y: 0.2, Z: 0.1}},
		{"dome in quarters", dome, nil, job(0.1001, 0.1001, 0.1), 4, 1, shell.Size{X: 0.1, Y: 0.1, Z: 0.1}},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			p, err := c.job.cut(c.b, c.mounts)
			if err != nil {
				t.Fatal(err)
			}
			s := p.Segments[0].Size
			if p.Sectors != c.sectors || len(p.Heights)+1 != c.levels || len(p.Segments) != c.sectors*c.levels {
				t.Errorf("%d sectors, %d levels, %d segments; want %d and %d", p.Sectors, len(p.Heights)+1, len(p.Segments), c.sectors, c.levels)
			}
			off := max(math.Abs(s.X-c.size.X), math.Abs(s.Y-c.size.Y), math.Abs(s.Z-c.size.Z))
			if bound := 1e-9 + 4e-5*0.2*float64(btoi(c.b.IsBall())); off > bound {
				t.Errorf("%+v, want %+v", s, c.size)
			}
		})
	}
}

func btoi(b bool) int {
	if b {
		return 1
	}
	return 0
}

// The walls of a box, cut in half by height: mass and area by hand.
func TestMass(t *testing.T) {
	j := job(0.1, 0.1, 0.05)
	cube := cubeOf(t, 0.1)
	p, err := j.cut(cube, onFaces(cube, 0)[:1]) // on top
	if err != nil {
		t.Fatal(err)
	}
	half := (1e-3 - math.Pow(0.094, 3)) / 2
	for i, want := range []float64{half, half - math.Pi*1e-4*0.003} {
		s := p.Segments[i]
		if math.Abs(s.Volume/want-1) > 1e-12 || math.Abs(s.Mass/(want*1240)-1) > 1e-12 || math.Abs(s.Area-0.03) > 1e-15 || len(s.Mounts) != i {
			t.Errorf("%+v, want a volume of %g", s, want)
		}
	}
}

func TestCannot(t *testing.T) {
	cube := cubeOf(t, 0.1)
	nan := math.NaN()
	wide := job(0.1, 0.1, 0.1)
	wide.radius = 0.049
	narrow := func(x, y, z, hole float64) task {
		j := job(x, y, z)
		j.radius = hole
		return j
	}
	bad := func(f func(*task)) task {
		j := job(0.1, 0.1, 0.1)
		f(&j)
		return j
	}
	cases := []struct {
		name string
		job  task
		want error
	}{
		{"bed of no height", job(0.1, 0.1, 0), errBed},
		{"bed no number", job(nan, 0.1, 0.1), errBed},
		{"endless bed", job(math.Inf(1), 0.1, 0.1), errBed},
		{"no wall", bad(func(j *task) { j.Wall = 0 }), errWall},
		{"all wall", bad(func(j *task) { j.Wall = 0.05 }), errWall},
		{"margin below 0", bad(func(j *task) { j.Margin = -1 }), errNumber},
		{"density no number", bad(func(j *task) { j.Density = nan }), errNumber},
		{"smaller than a mount", job(0.015, 0.1, 0.1), errBedSmall},
		{"lower than a mount", job(0.1, 0.1, 0.015), errBedSmall},
		{"holes as wide as the sides", narrow(0.1, 0.1, 0.099, 0.049), shell.ErrNoCleanCut},
		{"thirteen levels", narrow(0.1, 0.1, 0.1/12.5, 0.001), shell.ErrTooMany},
		{"too small to be worth it", narrow(0.004, 0.004, 0.004, 0.0001), shell.ErrTooMany},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			p, err := c.job.cut(cube, onFaces(cube, 0))
			if !testkit.Says(err, c.want) {
				t.Errorf("%v, want %v; %d segments", err, c.want, len(p.Segments))
			}
		})
	}
	if _, err := wide.cut(cube, onFaces(cube, 0)); err != nil {
		t.Errorf("wide holes in a whole cube: %v", err)
	}
}

// Whatever the body, the bed and the mounts: segments add up to the whole, each
// fits the bed, each mount is on one, and no cut meets a cut-out.
func TestSegments(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		name := rapid.SampledFrom([]string{"cube", "dodecahedron", "icosahedron", "geodesic", "ball"}).Draw(t, "shape")
		var b *body.Body
		var err error
		var mounts []shell.Hole
		switch name {
		case "ball":
			b = body.Ball(0.15)
			for i := range 6 {
				sin, cos := math.Sincos(float64(i))
				mounts = append(mounts, shell.Hole{Point: r3.Vec{X: 0.15 * cos, Y: 0.15 * sin}, Normal: r3.Vec{X: cos, Y: sin}})
			}
		case "geodesic":
			b, err = body.Geodesic("icosahedron", 2, 0.15)
		default:
			b, err = body.Platonic(name, 0.15)
		}
		if err != nil {
			t.Fatal(err)
		}
		if rapid.Bool().Draw(t, "cut") {
			if b, err = b.CutAt(rapid.Float64Range(-0.1, -0.02).Draw(t, "height")); err != nil {
				t.Fatal(err)
			}
		}
		if name != "ball" {
			mounts = onFaces(b, 0)
		}
		side := func(n string) float64 { return rapid.Float64Range(0.12, 0.35).Draw(t, n) }
		j := job(side("x"), side("y"), side("z"))
		j.radius = rapid.Float64Range(0.002, 0.012).Draw(t, "hole")
		p, err := j.cut(b, mounts)
		if errors.Is(err, shell.ErrNoCleanCut) || errors.Is(err, shell.ErrTooMany) {
			return
		} else if err != nil {
			t.Fatal(err)
		}
		checkPlan(t, b, mounts, j, p)
	})
}

// failer is a test or a property's.
type failer interface {
	Helper()
	Fatal(args ...any)
	Fatalf(format string, args ...any)
}

// checkPlan: segments add up to the whole, each fits the bed, each mount is on one, and no
// seam meets a cut-out.
func checkPlan(t failer, b *body.Body, mounts []shell.Hole, j task, p shell.Plan) {
	t.Helper()
	hollow, err := shell.Hollow(b, j.Wall)
	if err != nil {
		t.Fatal(err)
	}
	volume, area, carried := 0.0, 0.0, make([]int, len(mounts))
	for _, s := range p.Segments {
		volume, area = volume+s.Volume, area+s.Area
		if s.Size.X > j.Bed.X*1.000001 || s.Size.Y > j.Bed.Y*1.000001 || s.Size.Z > j.Bed.Z*1.000001 || s.Volume <= 0 {
			t.Fatalf("%+v does not fit", s)
		}
		for _, m := range s.Mounts {
			carried[m]++
			if len(s.Cells) > 0 {
				inCells(t, p, s, m, mounts[m], j)
			} else {
				onePiece(t, s, mounts[m], j)
			}
		}
	}
	want := b.Volume() - hollow - float64(len(mounts))*math.Pi*j.radius*j.radius*j.Wall
	if math.Abs(volume/want-1) > 1e-9 || math.Abs(area/b.Area()-1) > 1e-9 {
		t.Fatalf("volume %.15g of %.15g, area %.15g of %.15g", volume, want, area, b.Area())
	}
	if slices.ContainsFunc(carried, func(n int) bool { return n != 1 }) {
		t.Fatalf("mounts carried %v times", carried)
	}
}

// onePiece checks the rim of a cut-out, widened by almost the margin, point by
// point.
func onePiece(t failer, s shell.Segment, m shell.Hole, j task) {
	side := r3.Unit(r3.Cross(m.Normal, r3.Vec{X: 0.31, Y: 0.52, Z: 0.8}))
	up := r3.Cross(m.Normal, side)
	for i := range 90 {
		sin, cos := math.Sincos(float64(i) * math.Pi / 45)
		p := r3.Add(m.Point, r3.Add(r3.Scale(j.radius*cos, side), r3.Scale(j.radius*sin, up)))
		low, high := p.Z-s.Low, s.High-p.Z
		if s.Level > 0 && low < j.Margin*0.999 || high < -1e-9 {
			t.Fatalf("a cut by height at %g m runs %g m from a cut-out", s.Low, low)
		}
		if s.To-s.From > 2*math.Pi-1e-9 {
			continue
		}
		turn := math.Mod(math.Atan2(p.Y, p.X)-s.From+4*math.Pi, 2*math.Pi)
		if turn > s.To-s.From {
			t.Fatalf("a sector's plane runs through a cut-out")
		}
		for _, plane := range []float64{s.From, s.To} {
			sin, cos := math.Sincos(plane)
			if out := p.X*cos + p.Y*sin; out > 0 && math.Abs(p.Y*cos-p.X*sin) < j.Margin*0.999 {
				t.Fatalf("a sector's plane runs %g m from a cut-out", math.Abs(p.Y*cos-p.X*sin))
			}
		}
	}
}

// inCells checks the rim of a cut-out against the seams of a segment of cells.
func inCells(t failer, p shell.Plan, s shell.Segment, at int, m shell.Hole, j task) {
	side := r3.Unit(r3.Cross(m.Normal, r3.Vec{X: 0.31, Y: 0.52, Z: 0.8}))
	up := r3.Cross(m.Normal, side)
	for i := range 90 {
		sin, cos := math.Sincos(float64(i) * math.Pi / 45)
		rim := r3.Add(m.Point, r3.Add(r3.Scale(j.radius*cos, side), r3.Scale(j.radius*sin, up)))
		for _, c := range p.Cells[at].Sides {
			if away := -r3.Dot(rim, c.Normal); !slices.Contains(s.Cells, c.Beyond) && away < j.Margin*0.999 {
				t.Fatalf("a seam runs %g m from the cut-out of mount %d", away, at)
			}
		}
	}
}

func ExampleCut() {
	b, err := body.Geodesic("icosahedron", 2, 0.15)
	if err != nil {
		fmt.Println(err)
		return
	}
	if b, err = b.CutAt(0); err != nil {
		fmt.Println(err)
		return
	}
	p, err := shell.Cut(b, onFaces(b, 0.0165), shell.Job{
		Bed:  shell.Size{X: 0.2, Y: 0.2, Z: 0.18},
		Wall: 0.003, Margin: 0.001, Density: 1240,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, s := range p.Segments {
		fmt.Printf("level %d, sector %d: %.0f x %.0f x %.0f mm, %.0f g, %d mounts\n", s.Level+1, s.Sector+1,
			1000*s.Size.X, 1000*s.Size.Y, 1000*s.Size.Z, 1000*s.Mass, len(s.Mounts))
	}
	// Output:
	// level 1, sector 1: 170 x 50 x 75 mm, 37 g, 4 mounts
	// level 1, sector 2: 170 x 50 x 75 mm, 37 g, 4 mounts
	// level 1, sector 3: 170 x 50 x 75 mm, 37 g, 4 mounts
	// level 1, sector 4: 170 x 50 x 75 mm, 37 g, 4 mounts
	// level 1, sector 5: 170 x 50 x 75 mm, 37 g, 4 mounts
	// level 2, sector 1: 127 x 121 x 75 mm, 33 g, 4 mounts
	// level 2, sector 2: 127 x 121 x 75 mm, 33 g, 4 mounts
	// level 2, sector 3: 127 x 121 x 75 mm, 33 g, 4 mounts
	// level 2, sector 4: 127 x 121 x 75 mm, 33 g, 4 mounts
	// level 2, sector 5: 127 x 121 x 75 mm, 33 g, 4 mounts
}

func BenchmarkCut(b *testing.B) {
	fine, err := body.Geodesic("icosahedron", 8, 0.15)
	if err != nil {
		b.Fatal(err)
	}
	coarse := lantern(b, 0)
	for _, c := range []struct {
		name string
		body *body.Body
		hole float64
	}{{"lantern", coarse, 0.0165}, {"1280 faces", fine, 0.002}} {
		j := job(0.2, 0.2, 0.18)
		j.radius = c.hole
		b.Run(c.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := j.cut(c.body, onFaces(c.body, 0)); err != nil && !errors.Is(err, shell.ErrNoCleanCut) {
					b.Fatal(err)
				}
			}
		})
	}
}
