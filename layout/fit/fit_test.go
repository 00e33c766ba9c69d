package fit_test

import (
	"math"
	"testing"

	"pappus/layout/body"
	"pappus/layout/fit"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

var x, z = r3.Vec{X: 1}, r3.Vec{Z: 1}

// TestGap checks what follows from plane geometry by hand, for flanges of a
// radius of 20 mm.
func TestGap(t *testing.T) {
	mm := func(a, b, c float64) r3.Vec { return r3.Scale(1e-3, r3.Vec{X: a, Y: b, Z: c}) }
	lean := func(deg float64) r3.Vec {
		sin, cos := math.Sincos(deg * math.Pi / 180)
		return r3.Vec{X: sin, Z: cos}
	}
	cases := []struct {
		name       string
		p, m, q, n r3.Vec
		gap        float64 // mm
	}{
		{"side by side", mm(0, 0, 0), z, mm(50, 0, 0), z, 10},
		{"rim to rim", mm(0, 0, 0), z, mm(24, 32, 0), z, 0},
		{"overlapping", mm(0, 0, 0), z, mm(0, 31, 0), z, -9},
		{"one on the other", mm(1, 2, 3), z, mm(1, 2, 3), z, -40},
		{"one place, two ways", mm(1, 2, 3), z, mm(1, 2, 3), x, -40},
		{"back to back, apart", mm(0, 0, 9), z, mm(0, 0, -9), r3.Scale(-1, z), math.Inf(1)},
		{"stacked, apart", mm(0, 0, 0), z, mm(10, 0, 30), z, math.Inf(1)},
		{"round a corner of a box", mm(-25, 0, 0), z, mm(0, 0, -25), x, 10},
		{"round it, one near and one far", mm(-15, 0, 0), z, mm(0, 0, -25), x, 10},
		{"round it, one beside the other", mm(-15, 0, 0), z, mm(0, 32, -15), x, 2*math.Hypot(15, 16) - 40},
		{"round a blunt edge", mm(-18, 0, 0), z, r3.Vec{X: 0.018 * math.Cos(math.Pi/6), Z: -0.018 * math.Sin(math.Pi/6)}, lean(30), -4},
		{"off it by less than a fiftieth", mm(0, 0, 0), z, mm(50, 0, 0.95), z, math.Hypot(50, 0.95) - 40},
		{"off it by more than a fiftieth", mm(0, 0, 0), z, mm(50, 0, 1.05), z, math.Inf(1)},
		{"in one plane but for rounding", mm(0, 0, 0), z, mm(30, 0, 0.05), lean(0.01), math.Hypot(30, 0.05) - 40},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			for _, got := range []float64{fit.Gap(c.p, c.m, c.q, c.n, 0.02), fit.Gap(c.q, c.n, c.p, c.m, 0.02)} {
				if got *= 1000; got != c.gap && !(math.Abs(got-c.gap) < 1e-11) {
					t.Errorf("%.15g mm, want %.15g", got, c.gap)
				}
			}
		})
	}
}

// TestSolids: round flanges on the faces of a regular solid touch, all at once,
// when they fill their faces (their circles touch in the middles of the edges).
func TestSolids(t *testing.T) {
	for _, name := range []string{"tetrahedron", "cube", "octahedron", "dodecahedron", "icosahedron"} {
		b := solidOf(t, name, 0.15)
		full := b.InscribedRadius(0)
		for _, over := range []float64{-1e-6, 0, 1e-6, 0.01} {
			for _, r := range check(t, b, onFaces(b), full*(1+over)) {
				if math.Abs(r.Gap+2*full*over) > 1e-12 || math.Abs(r.Flange+full*over) > 1e-12 || r.GapTo < 0 {
					t.Errorf("%s: %+v, want a gap of %g", name, r, -2*full*over)
				}
				if want := over <= 0; r.Fits(fit.Limits{}) != want {
					t.Errorf("%s, %g over: fits is %v", name, over, !want)
				}
			}
		}
	}
}

// check reports on flat discs.
func check(t rapid.TB, b *body.Body, mounts []fit.Mount, flangeRadius float64) []fit.Report {
	t.Helper()
	reports, err := fit.Check(b, mounts, fit.Outline{CutoutRadius: 1e-6, FlangeRadius: flangeRadius}, fit.Limits{})
	if err != nil {
		t.Fatal(err)
	}
	return reports
}

// Flanges on a ball at an angle from each other touch when each fills the
// tangent of half the angle.
func TestBallFlanges(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		angle := rapid.Float64Range(0.06, 3).Draw(t, "angle")
		radius := rapid.Float64Range(0.02, 5).Draw(t, "radius")
		sin, cos := math.Sincos(angle)
		turn := r3.NewRotation(rapid.Float64Range(0, 6).Draw(t, "turn"), direction(t, "axis"))
		p, q := turn.Rotate(z), turn.Rotate(r3.Vec{X: sin, Z: cos})
		touch := radius * math.Tan(angle/2)
		gap := fit.Gap(r3.Scale(radius, p), p, r3.Scale(radius, q), q, touch)
		if math.Abs(gap) > 1e-9*touch {
			t.Errorf("gap %g at the radius %g where they touch", gap, touch)
		}
	})
}

func direction(t *rapid.T, name string) r3.Vec {
	up := rapid.Float64Range(-1, 1).Draw(t, name+" height")
	sin, cos := math.Sincos(rapid.Float64Range(0, 2*math.Pi).Draw(t, name+" turn"))
	reach := math.Sqrt(1 - up*up)
	return r3.Vec{X: reach * cos, Y: reach * sin, Z: up}
}

// Discs of the radius that Gap speaks of have one point in common and no more:
// on the line where the planes meet no other is as near to both centres.
func TestGapIsLeast(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, q := r3.Scale(0.1, direction(t, "p")), r3.Scale(0.13, direction(t, "q"))
		m, n := direction(t, "m"), direction(t, "n")
		line := r3.Cross(m, n)
		across := r3.Sub(q, p)
		if r3.Norm(line) < 1e-3 || max(math.Abs(r3.Dot(across, m)), math.Abs(r3.Dot(across, n))) < 0.021*r3.Norm(across) {
			t.Skip("as good as parallel, or in one plane")
		}
		// A point of both planes (three planes meet in one point).
		at := r3.Scale(1/r3.Norm2(line), r3.Add(
			r3.Scale(r3.Dot(m, p), r3.Cross(n, line)),
			r3.Scale(r3.Dot(n, q), r3.Cross(line, m))))
		line = r3.Unit(line)
		farther := func(s float64) float64 {
			on := r3.Add(at, r3.Scale(s, line))
			return max(r3.Norm(r3.Sub(on, p)), r3.Norm(r3.Sub(on, q)))
		}
		low, high := -1000.0, 1000.0
		for range 200 {
			a, b := low+(high-low)/3, high-(high-low)/3
			if farther(a) < farther(b) {
				high = b
			} else {
				low = a
			}
		}
		want := farther(low)
		if got := fit.Gap(p, m, q, n, 0) / 2; math.Abs(got-want) > 1e-8*max(want, 0.1) {
			t.Errorf("they touch at %.12g, want %.12g", got, want)
		}
		if back := fit.Gap(q, n, p, m, 0) / 2; math.Abs(back-want) > 1e-8*max(want, 0.1) {
			t.Errorf("not the same the other way round: %g", back)
		}
	})
}

func TestOverhang(t *testing.T) {
	half := 0.05 // half the edge of the cube, m
	cube, err := body.Platonic("cube", half*math.Sqrt(3))
	if err != nil {
		t.Fatal(err)
	}
	dome, err := body.Ball(0.1).CutAt(0)
	if err != nil {
		t.Fatal(err)
	}
	slope := r3.Vec{X: 0.08, Z: 0.06}
	cases := []struct {
		name string
		b    *body.Body
		face int
		at   r3.Vec
		over float64 // of a flange of 20 mm radius, mm
	}{
		{"middle of a face", cube, 0, r3.Vec{Z: half}, -30},
		{"near an edge", cube, 0, r3.Vec{X: 0.035, Z: half}, 5},
		{"near a corner", cube, 0, r3.Vec{X: 0.035, Y: -0.04, Z: half}, 10},
		{"on an edge", cube, 0, r3.Vec{Y: half, Z: half}, 20},
		{"beyond it", cube, 0, r3.Vec{Y: 0.06, Z: half}, 30},
		{"just inside", cube, 0, r3.Vec{X: -0.03, Z: half}, 0},
		{"on no face", cube, -1, r3.Vec{X: half, Y: half, Z: half}, math.Inf(-1)},
		{"on a ball", body.Ball(0.1), -1, slope, math.Inf(-1)},
		{"on the slope of a dome", dome, -1, slope, 20 - 75},
		{"on top of a dome", dome, -1, r3.Vec{Z: 0.1}, math.Inf(-1)},
		{"at the rim of a dome", dome, -1, r3.Vec{X: 0.1}, 20},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			got := -1000 * check(t, c.b, []fit.Mount{{Point: c.at, Normal: z, Face: c.face}}, 0.02)[0].Flange
			if got != c.over && !(math.Abs(got-c.over) < 1e-11) {
				t.Errorf("%.15g mm, want %.15g", got, c.over)
			}
		})
	}
}

// A flange fits its face just when all of its rim is on the body.
func TestOverhangIsRim(t *testing.T) {
	b, err := body.Geodesic("icosahedron", 2, 0.15)
	if err != nil {
		t.Fatal(err)
	}
	if b, err = b.CutAt(0.02); err != nil {
		t.Fatal(err)
	}
	rapid.Check(t, func(t *rapid.T) {
		f := rapid.IntRange(0, len(b.Faces)-1).Draw(t, "face")
		corner := b.Vertices[rapid.SampledFrom(b.Faces[f].Corners).Draw(t, "corner")]
		toward := rapid.Float64Range(0, 0.9).Draw(t, "toward the corner")
		at := r3.Add(b.Centroid(f), r3.Scale(toward, r3.Sub(corner, b.Centroid(f))))
		room := 1e-3 + check(t, b, []fit.Mount{{Point: at, Normal: b.Normal(f), Face: f}}, 1e-3)[0].Flange
		across := r3.Unit(r3.Sub(corner, b.Centroid(f)))
		aside := r3.Cross(b.Normal(f), across)
		inside := func(radius float64) bool {
			for i := range 3600 {
				sin, cos := math.Sincos(float64(i) * math.Pi / 1800)
				if !b.Contains(r3.Add(at, r3.Add(r3.Scale(radius*cos, across), r3.Scale(radius*sin, aside)))) {
					return false
				}
			}
			return true
		}
		if !inside(room*0.999999) || inside(room*1.000001+1e-9) {
			t.Errorf("room for %g m is not the rim's", room)
		}
	})
}
