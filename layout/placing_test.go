package layout_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"pappus/layout"
	"pappus/layout/design"

	"github.com/google/go-cmp/cmp"
	"gonum.org/v1/gonum/spatial/r3"
)

// held lays the built-in design out, held in another way.
func held(t *testing.T, change func(d *design.Design)) (*layout.Array, error) {
	t.Helper()
	d := design.Default()
	change(d)
	return layout.Build(d)
}

// TestTurn: where the body's front mark and top point, exactly where turns are quarters.
func TestTurn(t *testing.T) {
	x, y, z := r3.Vec{X: 1}, r3.Vec{Y: 1}, r3.Vec{Z: 1}
	minus := func(v r3.Vec) r3.Vec { return r3.Add(r3.Scale(-1, v), r3.Vec{}) }
	half := math.Sqrt(0.5)
	for _, test := range []struct {
		name       string
		on         string
		angles     design.Angles
		front, top r3.Vec
		exact      bool
	}{
		{"standing", "surface", design.Angles{}, x, z, true},
		{"to the left", "surface", design.Angles{YawDeg: 90}, y, z, true},
		{"round", "surface", design.Angles{YawDeg: 180}, minus(x), z, true},
		{"front tipped down", "surface", design.Angles{PitchDeg: 90}, minus(z), x, true},
		{"left side tipped up", "surface", design.Angles{RollDeg: 90}, x, minus(y), true},
		{"yaw, then pitch about the new axis", "surface", design.Angles{YawDeg: 90, PitchDeg: 90}, minus(z), y, true},
		{"yaw, then pitch, then roll", "surface", design.Angles{YawDeg: 90, PitchDeg: 90, RollDeg: 90}, minus(z), x, true},
		{"hung", "ceiling", design.Angles{}, x, minus(z), true},
		{"hung and to the left", "ceiling", design.Angles{YawDeg: 90}, y, minus(z), true},
		{"on a wall", "wall", design.Angles{}, minus(z), x, true},
		{"on a wall, rolled over", "wall", design.Angles{RollDeg: 180}, z, x, true},
		{"half a quarter", "surface", design.Angles{YawDeg: -45}, r3.Vec{X: half, Y: -half}, z, false},
	} {
		t.Run(test.name, func(t *testing.T) {
			turn := design.Placing{On: test.on}.Turn(test.angles)
			front, top := turn.Out(x), turn.Out(z)
			if test.exact && (front != test.front || top != test.top) || r3.Norm(r3.Sub(front, test.front))+r3.Norm(r3.Sub(top, test.top)) > 1e-15 {
				t.Errorf("front %v, top %v", front, top)
			}
			for _, v := range []r3.Vec{x, y, z, {X: 0.3, Y: -2, Z: 0.7}} {
				if back := turn.In(turn.Out(v)); r3.Norm(r3.Sub(back, v)) > 1e-15 {
					t.Errorf("%v comes back as %v", v, back)
				}
			}
		})
	}
	if (design.Placing{On: "surface"}).Turn(design.Angles{}) != (design.Turn{}) {
		t.Error("who stands as designed is not turned")
	}
}

// TestHeldSurface: how far off what the body is fixed to is, and what keeps a place from being
// heard. The built-in body is half a geodesic of 150 mm over a gap of 25 mm.
func TestHeldSurface(t *testing.T) {
	for _, test := range []struct {
		name   string
		change func(d *design.Design)
		height float64
		beyond r3.Vec
		err    error
		whole  bool // its ball is the whole body's: the mirror makes it whole
	}{
		{"standing", func(*design.Design) {}, -0.025, r3.Vec{X: 2, Z: -0.1}, layout.ErrBelowSurface, true},
		{"hung", func(d *design.Design) { d.Placing.On, d.Spot.Z = "ceiling", -1 }, 0.025, r3.Vec{X: 2, Z: 0.1}, layout.ErrAboveCeiling, true},
		{"on a wall", func(d *design.Design) { d.Placing.On = "wall" }, -0.025, r3.Vec{X: -0.1, Z: 1}, layout.ErrBehindWall, true},
		{"standing on its head", func(d *design.Design) { d.Placing.RollDeg = 180 }, -0.175, r3.Vec{X: 2, Z: -0.2}, layout.ErrBelowSurface, false},
		{"far under the ceiling", func(d *design.Design) { d.Placing.On, d.Spot.Z, d.Body.Stand = "ceiling", -1, 0.2 }, 0.2, r3.Vec{X: 2, Z: 0.3}, layout.ErrAboveCeiling, false},
	} {
		t.Run(test.name, func(t *testing.T) {
			a, err := held(t, test.change)
			if err != nil {
				t.Fatal(err)
			}
			if math.Abs(a.Surface.Height-test.height) > 2e-3*math.Abs(test.height) {
				t.Errorf("at %g, want %g", a.Surface.Height, test.height)
			}
			if got := a.Reach(test.beyond); got != test.err {
				t.Errorf("beyond: %v", got)
			}
			if got := a.Reach(a.Spot); got != nil {
				t.Errorf("at the spot: %v", got)
			}
			flip, shift := a.Surface.Mirror()
			mirrored := r3.Add(r3.Vec{X: flip.X * test.beyond.X, Y: flip.Y * test.beyond.Y, Z: flip.Z * test.beyond.Z}, shift)
			if g := a.Surface.Gap(test.beyond) + a.Surface.Gap(mirrored); math.Abs(g) > 1e-15 {
				t.Errorf("the mirror is off by %g", g)
			}
			if whole := a.Body.BallCentre == (r3.Vec{}); whole != test.whole {
				t.Errorf("ball at %v", a.Body.BallCentre)
			}
		})
	}
}

// TestHeldFaults: what is said of a spot beyond a ceiling or a wall, and of a body that a room
// does not hold as it is turned.
func TestHeldFaults(t *testing.T) {
	const surface = "[surface]\n"
	half := "shape = \"ball\"\nradius_mm = 100\ncut_height_mm = 0\nstand_height_mm = 5\n"
	room := func(z string) string {
		return "[room]\nsize_m = [4, 4, 3]\nbody_at_m = [1, 2, " + z + "]\nabsorption = 0.2\n"
	}
	spot := func(x, z string) string { return "[spot]\nx_m = " + x + "\ny_m = 0\nz_m = " + z + "\n" }
	on := func(what string) string { return "[placing]\non = \"" + what + "\"\n" }
	text := func(rest string) string {
		return "[body]\n" + half + "[mounts]\non = \"even\"\ncount = 8\nover = \"dome\"\n" + rest + small
	}
	for _, test := range []struct{ name, text, want string }{
		{"above the ceiling", text(on("ceiling") + surface + spot("2", "0.5")), "spot.z_m = 0.5: the listening spot is above the ceiling; must be at most 0.005"},
		{"behind the wall", text(on("wall") + surface + spot("-0.5", "0")), "spot.x_m = -0.5: the listening spot is behind the wall; must be at least -0.005"},
		{"hung under the ceiling of a room", text(on("ceiling") + room("3") + spot("2", "-1")), ""},
		{"hung too low in a room", text(on("ceiling") + room("0.05") + spot("2", "1")), "room.body_at_m = [1, 2, 0.05]: must be from 0.1 to 3 in z, for the body to be inside the room"},
		{"standing under the ceiling of a room", text(room("3") + spot("2", "-1")), "room.body_at_m = [1, 2, 3]: must be from 0 to 2.9 in z, for the body to be inside the room"},
		{"not one of them", text(on("tree") + spot("2", "0")), "placing.on = \"tree\": must be \"surface\", \"ceiling\" or \"wall\""},
	} {
		t.Run(test.name, func(t *testing.T) {
			d, err := design.Parse("a.toml", []byte(test.text))
			if err == nil {
				_, err = layout.Build(d)
			}
			var e *design.Error
			got := ""
			if errors.As(err, &e) {
				e.Line, e.File = 0, ""
				got = strings.TrimPrefix(e.Error(), ": ")
			}
			if d := cmp.Diff(test.want, got); d != "" {
				t.Error(d)
			}
		})
	}
}
