package layout_test

import (
	"errors"
	"math"
	"os"
	"path/filepath"
	"testing"

	"pappus/layout"
	"pappus/layout/design"

	"github.com/google/go-cmp/cmp"
	"gonum.org/v1/gonum/spatial/r3"
)

const cube = "shape = \"cube\"\nradius_mm = 300" // half an edge is 173.205 mm

// The surface is below the body by the stand, whatever the body's lowest point is.
func TestSurface(t *testing.T) {
	const lying = "[surface]\nabsorption = 0.2\n"
	all := layout.Absorption{0.2, 0.2, 0.2, 0.2, 0.2, 0.2, 0.2}
	cases := []struct {
		name, body, mounts, rest string
		want                     layout.Surface
	}{
		{"none", cube + "\nstand_height_mm = 40", "", "", layout.Surface{}},
		{"rigid", "shape = \"ball\"\nradius_mm = 100", "count = 5", "[surface]\n", layout.Surface{Present: true, Near: true, On: layout.OnSurface, Height: -0.1}},
		{"under a cube", cube + "\nstand_height_mm = 40", "", lying, layout.Surface{Present: true, Near: true, On: layout.OnSurface, Height: -0.04 - 0.3/math.Sqrt(3), Absorption: all}},
		{"under a cut", cube + "\ncut_height_mm = -30\nstand_height_mm = 10", "", lying, layout.Surface{Present: true, Near: true, On: layout.OnSurface, Height: -0.04, Absorption: all}},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			if d := cmp.Diff(c.want, build(t, with(c.body, c.mounts, small+c.rest)).Surface, near); d != "" {
				t.Error(d)
			}
		})
	}
}

// TestBallOfACutBody: on a table, or on a room's floor, a cut body keeps the ball of the
// whole; with nothing hard near below, it gets the ball half way to its own. The cut half
// ball of 100 mm has its own centroid 37.5 mm up (3/8 of the radius) and, by its volume, a
// ball of 100 mm over the cube root of 2.
func TestBallOfACutBody(t *testing.T) {
	const half = "shape = \"ball\"\nradius_mm = 100\ncut_height_mm = 0\nstand_height_mm = "
	room := func(z string) string {
		return "[room]\nsize_m = [6, 5, 2.5]\nbody_at_m = [1, 2, " + z + "]\nabsorption = 0.3\n"
	}
	own := 0.1 / math.Cbrt(2)
	cases := []struct {
		name, body, rest string
		open             bool
	}{
		{"whole", "shape = \"ball\"\nradius_mm = 100", "", false},
		{"hung", half + "0", "", true},
		{"on a table", half + "0", "[surface]\n", false},
		{"on a stand", half + "25", "[surface]\n", false},
		{"high over the floor", half + "900", "[surface]\n", true},
		{"on a room's floor", half + "0", room("0.02"), false},
		{"hung in a room", half + "0", room("1.5"), true},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			b := build(t, with(c.body, "count = 5", small+c.rest)).Body
			radius, centre := 0.1, r3.Vec{}
			if c.open {
				radius, centre = (0.1+own)/2, r3.Vec{Z: 0.0375 / 2}
			}
			if math.Abs(b.BallRadius-radius) > 1e-12 || r3.Norm(r3.Sub(b.BallCentre, centre)) > 1e-12 {
				t.Errorf("ball of %g m at %v, want %g at %v", b.BallRadius, b.BallCentre, radius, centre)
			}
		})
	}
}

func TestRoom(t *testing.T) {
	a := build(t, with(cube, "", small+`[room]
size_m = [6, 5, 2.5]
body_at_m = [1, 2, 0.5]
absorption = [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7]
left_absorption = 0.9
ceiling_absorption = [1, 0, 0, 0, 0, 0, 0]
order = 2
`))
	rest := layout.Absorption{0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7}
	left := layout.Absorption{0.9, 0.9, 0.9, 0.9, 0.9, 0.9, 0.9}
	want := layout.Room{
		Present: true, Size: r3.Vec{X: 6, Y: 5, Z: 2.5}, Body: r3.Vec{X: 1, Y: 2, Z: 0.5},
		Absorption: [6]layout.Absorption{rest, rest, rest, left, rest, {1}}, Order: 2,
	}
	if d := cmp.Diff(want, a.Room); d != "" {
		t.Error(d)
	}
	if !(layout.Surface{}).Clears(r3.Vec{Z: -1e6}) {
		t.Error("nothing is in the way where there is no surface")
	}
}

func TestPlaceFaults(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "a.toml")
	const list = "x_mm,y_mm,z_mm,nx,ny,nz\n0,0,100,0,0,1\n0,0,-105,0,0,-1\n"
	if err := os.WriteFile(filepath.Join(dir, "p.csv"), []byte(list), 0o600); err != nil {
		t.Fatal(err)
	}
	listed := "[body]\nshape = \"ball\"\nradius_mm = 100\nstand_height_mm = 2\n[mounts]\non = \"list\"\nlist = \"p.csv\"\n"
	spot := func(z string) string { return "[spot]\nx_m = 2\ny_m = 0\nz_m = " + z + "\n" }
	room := "[room]\nsize_m = [4, 4, 4]\nbody_at_m = [1, 2, 0.1]\nabsorption = 0.2\n"
	cases := []struct {
		name, text string
		kind       error
		want       string // after the folder
	}{
		{"spot below the surface", listed + spot("-0.2") + "[surface]\n" + small, layout.ErrBelowSurface,
			"a.toml:11: spot.z_m = -0.2: the listening spot is below the surface; must be at least -0.102"},
		{"seat below the surface", listed + spot("0") + "[surface]\n[[seat]]\nx_m = 1\ny_m = 0\nz_m = 0\n[[seat]]\nx_m = 1\ny_m = 1\nz_m = -0.2\n" + small, layout.ErrBelowSurface,
			`a.toml:20: seat[2].z_m = -0.2: seat "seat 2" is below the surface; must be at least -0.102`},
		{"row below the surface", listed + spot("0") + "[surface]\n[[area]]\nname = \"row\"\nshape = \"arc\"\ncount = 2\nradius_m = 2\nz_m = -0.2\nfrom_deg = 0\nto_deg = 90\n" + small, layout.ErrBelowSurface,
			`a.toml:13: area[1]: seat "row 1" is below the surface; must be at least -0.102`},
		{"mount below the surface", listed + spot("0") + "[surface]\n" + small, layout.ErrBelowSurface,
			"a.toml:5: mounts: driver 2 is 3 mm below the surface; must be above it"},
		{"mount below the floor of the room", listed + spot("0") + room + small, layout.ErrOutsideRoom,
			"a.toml:5: mounts: driver 2 is outside the room; must be inside"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			_, err := layout.Build(parse(t, path, c.text))
			var e *design.Error
			if !errors.Is(err, c.kind) || !errors.As(err, &e) {
				t.Fatalf("error %v", err)
			}
			if got, want := err.Error(), filepath.Join(dir, c.want); got != want {
				t.Errorf("\n got %s\nwant %s", got, want)
			}
		})
	}
}

// An array has the seats of its areas, and of one seat alone its spot.
func TestSeatsOfArray(t *testing.T) {
	a := build(t, "[body]\nshape = \"ball\"\nradius_mm = 100\n[mounts]\ncount = 4\n[seats]\naim = \"worst\"\n[[area]]\nname = \"row\"\nshape = \"line\"\ncount = 3\nfrom_m = [2, -1, 0]\nto_m = [2, 1, 0]\n"+small)
	want := []layout.Seat{{Name: "row 1", At: r3.Vec{X: 2, Y: -1}, Weight: 1}, {Name: "row 2", At: r3.Vec{X: 2}, Weight: 1}, {Name: "row 3", At: r3.Vec{X: 2, Y: 1}, Weight: 1}}
	if d := cmp.Diff(want, a.Seats); d != "" || a.Spot != (r3.Vec{X: 2}) || a.Seating.Aim != "worst" {
		t.Errorf("spot %v, %+v: %s", a.Spot, a.Seating, d)
	}
}

func TestSpotOutsideRoom(t *testing.T) {
	d := parse(t, "a.toml", with(cube, "", small+"[room]\nsize_m = [4, 4, 4]\nbody_at_m = [1, 2, 1]\nabsorption = 0.2\n"))
	d.Spot.Y = 3
	_, err := layout.Build(d)
	const want = "a.toml:6: spot: the listening spot is outside the room; must be inside"
	if !errors.Is(err, layout.ErrOutsideRoom) || err.Error() != want {
		t.Errorf("\n got %v\nwant %s", err, want)
	}
}

// What keeps sound from a place, and from a spot the ball that stands for the body too.
func TestReach(t *testing.T) {
	table := build(t, with(cube, "", small+"[surface]\n"))
	room := build(t, with(cube, "", small+"[room]\nsize_m = [6, 5, 2.5]\nbody_at_m = [1, 2, 0.5]\nabsorption = 0.1\n"))
	face := r3.Vec{X: 0.175} // a cube of 300 mm has its faces 173.2 mm out, its ball 215 mm
	for _, c := range []struct {
		name        string
		a           *layout.Array
		at          r3.Vec
		place, spot error
	}{
		{"free", table, r3.Vec{X: 2}, nil, nil},
		{"in the body", table, r3.Vec{X: 0.1}, layout.ErrInside, layout.ErrInside},
		{"before a face", table, face, nil, layout.ErrInside},
		{"below the table", table, r3.Vec{X: 2, Z: -1}, layout.ErrBelowSurface, layout.ErrBelowSurface},
		{"in the room", room, r3.Vec{X: 2}, nil, nil},
		{"beyond a wall", room, r3.Vec{X: 5.1}, layout.ErrOutsideRoom, layout.ErrOutsideRoom},
	} {
		if got := c.a.Reach(c.at); got != c.place {
			t.Errorf("%s: %v, want %v", c.name, got, c.place)
		}
		if got := c.a.ReachSpot(c.at); got != c.spot {
			t.Errorf("%s as a spot: %v, want %v", c.name, got, c.spot)
		}
	}
}

func TestIDs(t *testing.T) {
	a := build(t, with(cube, "skip = [2]", small))
	if d := cmp.Diff([]int{3, 1}, a.IDs([]int{1, 0})); d != "" || a.IDs(nil) == nil {
		t.Error(d)
	}
}
