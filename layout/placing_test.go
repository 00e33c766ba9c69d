package layout_test

import (
	"errors"
	"math"
	"regexp"
	"strings"
	"testing"

	"pappus/layout"
	"pappus/layout/advice"
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

// TestCopies: bodies like the first have its drivers, with numbers of their own, and its
// channels where these are laid out by hand.
func TestCopies(t *testing.T) {
	a, err := held(t, func(d *design.Design) {
		d.Wiring.Channels, d.Mounts.Skip = 0, nil
		var even, odd []int
		for id := 1; id <= 40; id += 2 {
			odd, even = append(odd, id), append(even, id+1)
		}
		d.Channels = []design.Channel{{Drivers: odd, Gain: -1}, {Drivers: even}}
		d.Copies = []design.Copy{
			{At: r3.Vec{Y: 2}, Angles: design.Angles{YawDeg: 90}, Channels: design.OwnChannels},
			{At: r3.Vec{Y: -2}, Channels: design.SharedChannels},
		}
	})
	if err != nil {
		t.Fatal(err)
	}
	if len(a.Mounts) != 120 || len(a.Own()) != 40 || len(a.Fits) != 40 || len(a.Holes()) != 40 {
		t.Fatalf("%d mounts, %d on each", len(a.Mounts), len(a.Own()))
	}
	if d := cmp.Diff([]int{1, 40, 201, 240, 301, 340}, a.IDs([]int{0, 39, 40, 79, 80, 119})); d != "" {
		t.Error(d)
	}
	if d := cmp.Diff([][]int{{0, 2}, {1}}, a.Sets()); d != "" {
		t.Error(d)
	}
	if a.LeastLoad() != 2*a.Wiring.MinimumLoad {
		t.Errorf("a bank may load with %g ohm", a.LeastLoad())
	}
	var drivers, parallel []int
	for _, c := range a.Channels {
		drivers, parallel = append(drivers, len(c.Mounts)), append(parallel, c.Series*c.Parallel)
		if c.DCOhm < a.Wiring.MinimumLoad || a.BodiesOf(c.Mounts) != len(c.Mounts)/20 {
			t.Errorf("channel %d: %.2f ohm on %d bodies", c.ID, c.DCOhm, a.BodiesOf(c.Mounts))
		}
	}
	if d := cmp.Diff([]int{40, 40, 20, 20}, drivers) + cmp.Diff(drivers, parallel); d != "" {
		t.Error(d)
	}
	if a.Channels[2].ID != 3 || a.Channels[2].Gain != -1 || a.IDs(a.Channels[2].Mounts[:1])[0] != 201 {
		t.Errorf("channel of the second body: %+v", a.Channels[2])
	}
	if at := a.PlaceOf(a.Mounts[40]); r3.Norm(r3.Sub(at, r3.Vec{X: -a.Mounts[0].Point.Y, Y: 2 + a.Mounts[0].Point.X, Z: a.Mounts[0].Point.Z})) > 1e-15 {
		t.Errorf("its first driver at %v", at)
	}
	for _, p := range []r3.Vec{{Y: 2.1}, {Y: -2.1, Z: 0.05}} {
		if a.Reach(r3.Add(p, r3.Vec{Z: 0.05})) != layout.ErrInside || a.ReachSpot(r3.Add(p, r3.Vec{Z: 1})) != nil {
			t.Errorf("at %v", p)
		}
	}
}

// TestCopyFaults: what is said of bodies that are in one another, or where none can be.
func TestCopyFaults(t *testing.T) {
	room := func(d *design.Design) {
		d.Surface.Present = false
		d.Room = layout.Room{Present: true, Size: r3.Vec{X: 5, Y: 4, Z: 2.5}, Body: r3.Vec{X: 2, Y: 2, Z: 0.5}}
	}
	at := func(x, y, z float64) []design.Copy {
		return []design.Copy{{At: r3.Vec{X: x, Y: y, Z: z}, Channels: "own"}}
	}
	for _, test := range []struct {
		name   string
		change func(d *design.Design)
		want   string
		kind   error
	}{
		{"in the first", func(d *design.Design) { d.Copies = at(0, 0.2, 0) }, "body_at[1]: its centre is 0.2 m from that of body 1; must be at least 0.3, twice body.radius_mm", layout.ErrOverlap},
		{"in another copy", func(d *design.Design) { d.Copies = append(at(0, 1, 0), at(0, 1.25, 0)...) },
			"body_at[2]: its centre is 0.25 m from that of body 2; must be at least 0.3, twice body.radius_mm", layout.ErrOverlap},
		{"outside the room", func(d *design.Design) { room(d); d.Copies = at(0, 1.95, 0) }, "body_at[1].y_m = 1.95: must be from -1.85 to 1.85, for the body to be inside the room", layout.ErrOutsideRoom},
		{"through the table", func(d *design.Design) { d.Copies = at(0, 1, -0.1) }, "body_at[1].z_m = -0.1: the body reaches below the surface; must be at least -0.025", layout.ErrBelowSurface},
		{"through the ceiling", func(d *design.Design) { d.Placing.On, d.Spot.Z, d.Copies = "ceiling", -1, at(0, 1, 0.1) },
			"body_at[1].z_m = 0.1: the body reaches above the ceiling; must be at most 0.025", layout.ErrAboveCeiling},
		{"round the spot", func(d *design.Design) { d.Copies = at(d.Spot.X, d.Spot.Y, d.Spot.Z) }, "spot: the listening spot is 0 m from the body's centre, inside the body; must be outside", layout.ErrInside},
		{"too many drivers", func(d *design.Design) {
			d.Mounts.On, d.Body.Subdivision, d.Mounts.Skip = "edges", 6, nil
			d.Copies = append(append(at(0, 1, 0), at(0, 2, 0)...), at(0, 3, 0)...)
			d.Copies = append(append(d.Copies, at(0, 4, 0)...), at(0, 5, 0)...)
		}, "body_at: 6 bodies make 2790 drivers; must be at most 2000", layout.ErrTooManyMounts},
	} {
		t.Run(test.name, func(t *testing.T) {
			_, err := held(t, test.change)
			if err == nil || !errors.Is(err, test.kind) {
				t.Fatalf("%v", err)
			}
			if d := cmp.Diff(test.want, regexp.MustCompile(`^lantern.toml:([0-9]+:)? `).ReplaceAllString(err.Error(), "")); d != "" {
				t.Error(d)
			}
		})
	}
}

// TestOverhead: what can fall on people is said, once for all bodies.
func TestOverhead(t *testing.T) {
	for _, c := range []struct {
		name, on, what string
		copies         []design.Copy
	}{
		{"on a table", "surface", "", nil},
		{"hung", "ceiling", "the body is fixed to the ceiling, and can fall on people", nil},
		{"two on a wall", "wall", "2 bodies are fixed to the wall, and can fall on people", []design.Copy{{At: r3.Vec{Y: 1}}}},
	} {
		a, err := held(t, func(d *design.Design) {
			d.Placing.On, d.Copies, d.Spot = c.on, c.copies, r3.Vec{X: 2, Y: 0.3, Z: -0.5}
			if c.on == "surface" {
				d.Spot.Z = 0.5
			}
		})
		if err != nil {
			t.Fatal(c.name, err)
		}
		what := ""
		for _, f := range a.Warnings {
			if f.Code == "overhead" && f.Rank == advice.Caution {
				what += f.What
			}
		}
		if what != c.what {
			t.Errorf("%s: %q", c.name, what)
		}
	}
}
