package fit_test

import (
	"math"
	"testing"

	"pappus/layout/body"
	"pappus/layout/fit"
	"pappus/testdata/testkit"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// TestLeastAngle: flanges alone touch where each fills the tangent of half the
// angle; rods of the ball's radius meet at its middle.
func TestLeastAngle(t *testing.T) {
	plate := fit.Outline{CutoutRadius: 0.01, FlangeRadius: 0.02}
	for _, apart := range []float64{0, 0.003} {
		got, err := fit.LeastAngle(0.15, plate, fit.Limits{Apart: apart})
		if want := 2 * math.Atan((0.02+apart/2)/0.15); err != nil || math.Abs(got-want) > 2e-6 {
			t.Errorf("%g apart: %g, want %g, %v", apart, got, want, err)
		}
	}
	deep := fit.Outline{CutoutRadius: 0.01, FlangeRadius: 0.02, Depth: 0.15}
	if got, err := fit.LeastAngle(0.15, deep, fit.Limits{Apart: 0.001}); err != nil || !math.IsInf(got, 1) {
		t.Errorf("down to the middle: %g, %v", got, err)
	}
	if _, err := fit.LeastAngle(0.15, fit.Outline{}, fit.Limits{}); !testkit.Says(err, errDriver) {
		t.Error(err)
	}
}

// Two drivers at that angle fit, and a little nearer do not.
func TestLeastAngleIsEdge(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := small
		d.ScrewRadius = 0
		d.Depth = rapid.Float64Range(0.012, 0.1).Draw(t, "depth")
		if rapid.Bool().Draw(t, "no terminal") {
			d.TerminalReach = 0
		}
		l := fit.Limits{Wall: 0.003, Apart: rapid.Float64Range(0.0001, 0.005).Draw(t, "apart")}
		radius := rapid.Float64Range(0.12, 0.5).Draw(t, "radius")
		angle, err := fit.LeastAngle(radius, d, l)
		if err != nil {
			t.Fatal(err)
		}
		keep := func(angle float64) bool {
			sin, cos := math.Sincos(angle)
			n := r3.Vec{X: sin, Z: cos}
			pair := []fit.Mount{{Point: r3.Vec{Z: radius}, Normal: z, Face: -1}, {Point: r3.Scale(radius, n), Normal: n, Face: -1}}
			reports, err := fit.Check(body.Ball(radius), pair, d, l)
			if err != nil {
				t.Fatal(err)
			}
			r := reports[0]
			return !(r.Gap < l.Apart-fit.Slack || r.Inside < l.Apart-fit.Slack || r.TerminalTo >= 0 && r.Terminal < l.Apart-fit.Slack)
		}
		if !keep(angle) || angle > 1e-4 && keep(angle-1e-5) {
			t.Errorf("%g rad is not the least", angle)
		}
	})
}

// TestOffBase: a driver alone on a dome fits just where it keeps off the base, so
// long as the ball itself takes it.
func TestOffBase(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		dome, err := body.Ball(0.15).CutAt(rapid.Float64Range(-0.12, 0.08).Draw(t, "cut"))
		if err != nil {
			t.Fatal(err)
		}
		sin, cos := math.Sincos(rapid.Float64Range(-1.2, math.Pi/2).Draw(t, "elevation"))
		n := r3.Vec{X: cos, Z: sin}
		if n.Z*0.15 <= dome.Cut {
			t.Skip("cut away")
		}
		d := small
		d.ScrewRadius, d.TerminalReach = 0, 0
		d.Depth = rapid.Float64Range(0.008, 0.1).Draw(t, "depth")
		l := fit.Limits{Wall: 0.003, Apart: 0.001, Edge: rapid.Float64Range(0, 0.003).Draw(t, "edge")}
		mount := []fit.Mount{{Point: r3.Scale(0.15, n), Normal: n, Face: -1}}
		off, err := fit.OffBase(dome, mount, d, l)
		if err != nil {
			t.Fatal(err)
		}
		reports, err := fit.Check(dome, mount, d, l)
		if err != nil {
			t.Fatal(err)
		}
		if off[0] != reports[0].Fits(l) {
			t.Errorf("off the base: %v, but %+v", off[0], reports[0])
		}
		whole, err := fit.OffBase(body.Ball(0.15), mount, d, l)
		if err != nil || !whole[0] {
			t.Errorf("off a base that is not there: %v, %v", whole, err)
		}
	})
}

// At the very top of a dome no rounding brings a wall near.
func TestTopOfDome(t *testing.T) {
	dome, err := body.Ball(0.15).CutAt(0)
	if err != nil {
		t.Fatal(err)
	}
	d := fit.Outline{CutoutRadius: 0.0145, FlangeRadius: 0.017, Depth: 0.018}
	for tilt := 1e-12; tilt < 1e-3; tilt *= 3 {
		n := r3.Unit(r3.Vec{X: tilt, Z: 1})
		reports, err := fit.Check(dome, []fit.Mount{{Point: r3.Scale(0.15, n), Normal: n, Face: -1}}, d, fit.Limits{Wall: 0.003, Apart: 0.001})
		if err != nil || !reports[0].Fits(fit.Limits{Apart: 0.001}) {
			t.Errorf("%g rad off the top: %+v, %v", tilt, reports, err)
		}
	}
}

// A shallow driver on a ball is in no wall's way right behind its hole; one that
// reaches beyond the middle is, before it is through.
func TestBehindHole(t *testing.T) {
	for depth, want := range map[float64]bool{0.0041: true, 0.01: true, 0.14: true, 0.29: true, 0.2965: false, 0.31: false} {
		d := fit.Outline{CutoutRadius: 0.0165, FlangeRadius: 0.02, Depth: depth}
		reports, err := fit.Check(body.Ball(0.15), []fit.Mount{{Point: r3.Vec{Z: 0.15}, Normal: z, Face: -1}}, d, fit.Limits{Wall: 0.003})
		if err != nil || reports[0].Fits(fit.Limits{Apart: 0.001}) != want {
			t.Errorf("%g m deep: %+v, %v", depth, reports, err)
		}
	}
}

// TestFineFaces: on a fine geodesic the plane of the next face runs just before the
// front of a basket, but that face's wall begins far from it: as far as the cut-out,
// narrowed to where the basket comes through the wall, is from where the walls meet.
func TestFineFaces(t *testing.T) {
	b, err := body.Geodesic("icosahedron", 7, 0.6)
	if err != nil {
		t.Fatal(err)
	}
	d := fit.Outline{CutoutRadius: 0.012, FlangeRadius: 0.014, Depth: 0.018, MagnetRadius: 0.010, MagnetHeight: 0.006}
	l := fit.Limits{Wall: 0.003, Apart: 0.001}
	reports, err := fit.Check(b, onFaces(b), d, l)
	if err != nil {
		t.Fatal(err)
	}
	for i, r := range reports {
		narrowed := 0.002 * 0.003 / 0.012
		if !r.Fits(l) || math.Abs(r.Wall-r.Cutout-narrowed) > 1e-6 {
			t.Fatalf("mount %d: wall %g m, cut-out %g m from it", i, r.Wall, r.Cutout)
		}
	}
}

// All agrees with Check.
func TestAll(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b, err := body.Geodesic("icosahedron", rapid.IntRange(1, 4).Draw(t, "subdivision"), 0.15)
		if err != nil {
			t.Fatal(err)
		}
		mounts := onFaces(b)
		if rapid.Bool().Draw(t, "ball") {
			b, mounts = body.Ball(0.15), onBall(rapid.IntRange(1, 60).Draw(t, "mounts"), 0.15)
		}
		d := small
		scale := rapid.Float64Range(0.2, 1.2).Draw(t, "scale")
		for _, p := range []*float64{&d.CutoutRadius, &d.FlangeRadius, &d.MagnetRadius, &d.MagnetHeight, &d.TerminalReach, &d.ScrewRadius} {
			*p *= scale
		}
		d.Depth = rapid.Float64Range(0.008, 0.12).Draw(t, "depth")
		if rapid.Bool().Draw(t, "no terminal") {
			d.TerminalReach = 0
		}
		l := fit.Limits{Wall: 0.003, Apart: 0.001}
		want := true
		reports, err := fit.Check(b, mounts, d, l)
		if err != nil {
			t.Fatal(err)
		}
		for _, r := range reports {
			want = want && r.Fits(l)
		}
		if got, err := fit.All(b, mounts, d, l); got != want || err != nil {
			t.Errorf("all fit: %v, want %v, %v", got, want, err)
		}
	})
	if _, err := fit.All(body.Ball(1), nil, fit.Outline{}, fit.Limits{}); !testkit.Says(err, errDriver) {
		t.Error(err)
	}
}
