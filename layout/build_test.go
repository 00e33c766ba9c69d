package layout_test

import (
	"errors"
	"fmt"
	"io/fs"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"pappus/layout"
	"pappus/layout/advice"
	"pappus/layout/body"
	"pappus/layout/box"
	"pappus/layout/design"
	"pappus/layout/fit"
	"pappus/layout/wiring"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

var near = cmpopts.EquateApprox(0, 1e-12)

// parse reads a design that a test has written.
func parse(t testing.TB, path, text string) *design.Design {
	t.Helper()
	d, err := design.Parse(path, []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return d
}

// build lays a good design out.
func build(t testing.TB, text string) *layout.Array {
	t.Helper()
	a, err := layout.Build(parse(t, "a.toml", text))
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// with makes a design of a body, mounts and whatever else.
func with(body, mounts, rest string) string {
	return "[body]\n" + body + "\n[mounts]\n" + mounts + "\n[spot]\nx_m = 2\ny_m = 0\nz_m = 0\n" + rest
}

const small = "[driver]\ndiameter_mm = 10\n"

func ExampleBuild() {
	a, err := layout.Build(design.Default())
	if err != nil {
		fmt.Println(err)
		return
	}
	first, last := a.Mounts[0], a.Mounts[len(a.Mounts)-1]
	fmt.Printf("%s: %d drivers, %d warnings\n", a.Name, len(a.Mounts), len(a.Warnings))
	fmt.Printf("driver %d is %.0f mm above the centre, driver %d %.0f mm\n", first.ID, 1000*first.Point.Z, last.ID, 1000*last.Point.Z)
	// Output:
	// Lantern for the story corner: 39 drivers, 0 warnings
	// driver 1 is 135 mm above the centre, driver 40 22 mm
}

func TestBuildInSI(t *testing.T) {
	const rest = `[air]
temperature_c = 26.85
humidity_percent = 40
pressure_kpa = 100
[driver]
diameter_mm = 40
cutout_mm = 42
flange_mm = 50
depth_mm = 20
nominal_ohm = 8
dc_ohm = 7
sensitivity_db = 84
power_w = 3
resonance_hz = 150
resonance_q = 0.9
[timing]
model = "baffle"
field_low_hz = 1000
field_high_hz = 4000
[wiring]
minimum_load_ohm = 4
amplifier_w = 4
amplifier_into_ohm = 4
[surface]
absorption = [0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6]
[[channel]]
drivers = [5, 1, 2, 3]
gain_db = -20
invert = true
delay_us = 250
[[channel]]
drivers = [4, 6]
[coverage]
half_width_m = 3
cells = 16
smear_limit_us = 250
`
	got := build(t, `name = "Cube"`+"\n"+with("shape = \"cube\"\nradius_mm = 300\nstand_height_mm = 50\nwall_mm = 4", "", rest))
	h := 0.3 / math.Sqrt(3) // half a cube's edge
	face := func(id int, x, y, z float64) layout.Mount {
		n := r3.Vec{X: x, Y: y, Z: z}
		return layout.Mount{ID: id, Point: r3.Scale(h, n), Normal: n}
	}
	want := &layout.Array{
		File:  "a.toml",
		Name:  "Cube",
		Air:   layout.Air{Temperature: 300, Humidity: 0.4, Pressure: 100000},
		Stand: 0.05, On: layout.OnSurface, Placings: []layout.Placing{{}},
		Wall: 0.004,
		// 50 mm below the cube's lower face.
		Surface: layout.Surface{Present: true, Near: true, On: layout.OnSurface, Height: -h - 0.05, Absorption: layout.Absorption{0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6}},
		// From the top down, the ring round the middle counter-clockwise from x.
		Mounts: []layout.Mount{
			face(1, 0, 0, 1), face(2, 1, 0, 0), face(3, 0, 1, 0), face(4, -1, 0, 0), face(5, 0, -1, 0), face(6, 0, 0, -1),
		},
		Driver: layout.Driver{
			ConeRadius: 0.02, Outline: fit.Outline{CutoutRadius: 0.021, FlangeRadius: 0.025, Depth: 0.02},
			NominalOhm: 8, DCOhm: 7, Sensitivity: 84, PowerHandling: 3,
			Resonance: 150, ResonanceQ: 0.9,
		},
		Limits:     fit.Limits{Wall: 0.004, Apart: 0.001},
		Box:        layout.Box{TargetQ: 0.707, VentRadius: 0.004, VentHoles: 6, Stuffing: 10},
		Kit:        layout.Kit{Gap: 0.0002, Joint: "lap", Mounting: "front"},
		Print:      layout.Print{Bed: r3.Vec{X: 0.22, Y: 0.22, Z: 0.25}, Margin: 0.001, Density: 1240, Flow: 5e-9},
		Build:      design.Build{Spares: 0.05, Slack: 0.06, InnerSection: 0.5e-6, JointTime: 240, DriverTime: 360},
		Timing:     layout.Timing{Model: "baffle", SolveTo: 4000, DelaysBy: "straight", FieldLow: 1000, FieldHigh: 4000},
		Wiring:     layout.Wiring{MinimumLoad: 4, Voltage: 4, HasAmplifier: true, Watt: 4, IntoOhm: 4, Split: "arrival", WireSection: 0.75e-6},
		Protection: layout.Protection{Family: "butterworth", Order: 4},
		Processor:  layout.Processor{Rate: 48000, Step: 1.0 / 48000},
		Channels: []layout.Channel{
			// Two strings of two: 7 ohm; all four in parallel would be 1.75.
			{ID: 1, Mounts: []int{4, 0, 1, 2}, Gain: -20, Invert: true, Delay: 250e-6, Series: 2, Parallel: 2, NominalOhm: 8, DCOhm: 7},
			{ID: 2, Mounts: []int{3, 5}, Delay: math.NaN(), Series: 2, Parallel: 1, NominalOhm: 16, DCOhm: 14},
		},
		Spot:     r3.Vec{X: 2},
		Seating:  layout.Seating{Aim: "even", Head: 0.15, Loud: 0.5},
		Coverage: layout.Coverage{HalfWidth: 3, Cells: 16, SmearLimit: 250e-6},
	}
	ignore := cmp.Options{cmpopts.IgnoreFields(layout.Array{}, "Body", "Fits"), cmpopts.IgnoreFields(layout.Mount{}, "Face"), cmpopts.EquateNaNs(), near}
	if d := cmp.Diff(want, got, ignore); d != "" {
		t.Error(d)
	}
	for _, m := range got.Mounts {
		if d := cmp.Diff(m.Normal, got.Body.Normal(m.Face), near); d != "" {
			t.Errorf("face of mount %d: %s", m.ID, d)
		}
	}
}

func TestShapes(t *testing.T) {
	dir := t.TempDir()
	// A square pyramid round the origin, corners in mm.
	const pyramid = "OFF\n5 5 0\n0 0 30\n40 0 -10\n0 40 -10\n-40 0 -10\n0 -40 -10\n" +
		"3 0 1 2\n3 0 2 3\n3 0 3 4\n3 0 4 1\n4 4 3 2 1\n"
	if err := os.WriteFile(filepath.Join(dir, "pyramid.off"), []byte(pyramid), 0o644); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name, body string
		mounts     int // on faces: Cundy and Rollett, Mathematical Models, 3.7
	}{
		{"snub cube", `shape = "snub cube"`, 38},
		{"truncated icosahedron", `shape = "truncated icosahedron"`, 32},
		{"its dual", "shape = \"truncated icosahedron\"\ndual = true", 60},
		{"prism", "shape = \"prism\"\nsides = 6", 8},
		{"antiprism", "shape = \"antiprism\"\nsides = 5\nheight_mm = 90", 12},
		{"class III", "shape = \"geodesic\"\nm = 2\nn = 1", 20 * 7},
		{"file", `shape = "file"` + "\nfile = \"pyramid.off\"", 5},
	} {
		t.Run(c.name, func(t *testing.T) {
			a, err := layout.Build(parse(t, filepath.Join(dir, "a.toml"), with(c.body+"\nradius_mm = 100", "", small)))
			if err != nil {
				t.Fatal(err)
			}
			if len(a.Mounts) != c.mounts {
				t.Errorf("%d mounts, want %d", len(a.Mounts), c.mounts)
			}
			for _, m := range a.Mounts {
				if m.Face < 0 || a.Body.Margin(m.Face, m.Point) < 0 {
					t.Errorf("mount %d is on face %d", m.ID, m.Face)
				}
			}
			if c.name == "file" && math.Abs(a.Body.Radius-0.1) > 1e-9 {
				t.Errorf("radius %g m", a.Body.Radius)
			}
		})
	}
	for _, c := range []struct{ name, text, want string }{
		{"no file", "shape = \"file\"\nfile = \"none.off\"", "there is no such file; must be a file's name, beside the design or with its folder"},
		{"open", "shape = \"file\"\nfile = \"open.off\"", "body.file"},
	} {
		t.Run(c.name, func(t *testing.T) {
			open := strings.Replace(strings.Replace(pyramid, "5 5 0", "5 4 0", 1), "4 4 3 2 1\n", "", 1)
			if err := os.WriteFile(filepath.Join(dir, "open.off"), []byte(open), 0o644); err != nil {
				t.Fatal(err)
			}
			_, err := layout.Build(parse(t, filepath.Join(dir, "a.toml"), with(c.text+"\nradius_mm = 100", "", small)))
			if err == nil || !strings.Contains(err.Error(), c.want) || strings.Contains(err.Error(), "\n") {
				t.Errorf("got %v", err)
			}
		})
	}
}

// TestHollowOfTheDemo: volumes add up, and the alignment is Small's for what is
// left (JAES 20 (1972) 798).
func TestHollowOfTheDemo(t *testing.T) {
	a, err := layout.Build(design.Default())
	if err != nil {
		t.Fatal(err)
	}
	h, err := a.Hollow()
	if err != nil {
		t.Fatal(err)
	}
	r := h.Room
	if r.Net <= 0 || math.Abs(r.Gross-r.Walls-39*r.Drivers-r.Braces-r.Net) > 1e-12 && math.Abs(r.Gross-r.Walls-r.Drivers-r.Braces-r.Net) > 1e-12 {
		t.Errorf("volumes do not add up: %+v", r)
	}
	s := a.Driver.Small
	qts := s.Qms * s.Qes / (s.Qms + s.Qes)
	up := math.Sqrt(1 + 39*h.Driver.Vas/r.Net)
	if h.Closed == nil || math.Abs(h.Closed.Resonance/(s.Fs*up)-1) > 1e-12 || math.Abs(h.Closed.Q/(qts*up)-1) > 1e-12 {
		t.Errorf("closed: %+v", h.Closed)
	}
	if a.Driver.Resonance != h.Closed.Resonance || a.Driver.ResonanceQ != h.Closed.Q {
		t.Errorf("the driver resonates at %g Hz with %g, the box says %+v", a.Driver.Resonance, a.Driver.ResonanceQ, h.Closed)
	}
	if h.Vented == nil && h.Why == "" {
		t.Error("no vent, and no reason")
	}
}

func TestSegmentsOfTheDemo(t *testing.T) {
	a, err := layout.Build(design.Default())
	if err != nil {
		t.Fatal(err)
	}
	p, err := a.Segments()
	if err != nil {
		t.Fatal(err)
	}
	carried := 0
	for _, s := range p.Segments {
		carried += len(s.Mounts)
		if s.Size.X > 0.22 || s.Size.Y > 0.22 || s.Size.Z > 0.25 {
			t.Errorf("a segment of %+v does not fit", s.Size)
		}
	}
	if carried != len(a.Mounts) || len(p.Segments) < 2 {
		t.Errorf("%d segments carry %d drivers", len(p.Segments), carried)
	}
	a.Print.Bed = r3.Vec{X: 0.4, Y: 0.4, Z: 0.4}
	if p, err := a.Segments(); err != nil || len(p.Segments) != 1 {
		t.Errorf("on a large bed: %d segments, %v", len(p.Segments), err)
	}
}

func TestZones(t *testing.T) {
	const ball = "shape = \"ball\"\nradius_mm = 100\n"
	t.Run("dome", func(t *testing.T) {
		a := build(t, with(ball+"cut_height_mm = 20", "on = \"even\"\ncount = 24\nover = \"dome\"\nsymmetry = 4", small))
		if len(a.Mounts) != 24 {
			t.Errorf("%d mounts", len(a.Mounts))
		}
		quarter := r3.NewRotation(math.Pi/2, r3.Vec{Z: 1})
		for _, m := range a.Mounts {
			turned, found := quarter.Rotate(m.Point), false
			for _, n := range a.Mounts {
				found = found || r3.Norm(r3.Sub(turned, n.Point)) < 1e-9
			}
			if !found {
				t.Errorf("mount %d has no like a quarter round", m.ID)
			}
		}
	})
	t.Run("kept clear", func(t *testing.T) {
		handle := r3.Vec{X: -1}
		for _, mounts := range []string{"on = \"even\"\ncount = 40", "on = \"list\""} {
			text := with(ball, mounts+"\nkeep_clear_deg = [[180, 0, 30]]", small)
			if strings.Contains(mounts, "list") {
				text = with("shape = \"geodesic\"\nradius_mm = 100\n", "keep_clear_deg = [[180, 0, 30]]", small)
			}
			for _, m := range build(t, text).Mounts {
				if angle := math.Acos(r3.Dot(r3.Unit(m.Point), handle)); angle < 30*math.Pi/180+math.Atan(0.05)-1e-9 {
					t.Errorf("mount %d is %g rad from the handle", m.ID, angle)
				}
			}
		}
	})
}

func TestFitOfTheDemo(t *testing.T) {
	a, err := layout.Build(design.Default())
	if err != nil {
		t.Fatal(err)
	}
	f := a.Fit()
	for i, r := range f.Reports {
		if !r.Fits(a.Limits) {
			t.Errorf("driver %d does not fit: %+v", a.Mounts[i].ID, r)
		}
	}
	if f.Largest.FlangeRadius <= a.Driver.Outline.FlangeRadius || f.Smallest <= 0.1 || f.Smallest >= a.Body.Radius {
		t.Errorf("largest flange %g m, smallest body %g m", 2*f.Largest.FlangeRadius, f.Smallest)
	}
}

func TestNoSensitivity(t *testing.T) {
	if a := build(t, with("shape = \"cube\"\nradius_mm = 100", "", small)); !math.IsNaN(a.Driver.Sensitivity) {
		t.Errorf("sensitivity %g", a.Driver.Sensitivity)
	}
}

// Counts of faces, edges and vertices are those of Coxeter, Regular Polytopes,
// table I, and of Euler's formula for the geodesic: 20 n^2 faces.
func TestWhereMountsAre(t *testing.T) {
	cases := []struct {
		name         string
		body, mounts string
		count        int
		radius       float64 // mm from the centre; 0: not all alike
	}{
		{"faces of an icosahedron", `shape = "icosahedron"`, ``, 20, 79.4654472},
		{"faces of a dodecahedron", `shape = "dodecahedron"`, `on = "faces"`, 12, 79.4654472},
		{"vertices of a dodecahedron", `shape = "dodecahedron"`, `on = "vertices"`, 20, 100},
		{"edges of an icosahedron", `shape = "icosahedron"`, `on = "edges"`, 30, 85.0650808},
		{"edges of a tetrahedron", `shape = "tetrahedron"`, `on = "edges"`, 6, 57.7350269},
		{"faces of a geodesic", "shape = \"geodesic\"\nsubdivision = 4", ``, 320, 0},
		{"vertices of a geodesic", "shape = \"geodesic\"\nsubdivision = 4", `on = "vertices"`, 162, 100},
		{"even on a ball", `shape = "ball"`, `count = 33`, 33, 100},
		{"even on an octahedron", `shape = "octahedron"`, "on = \"even\"\ncount = 33", 33, 0},
		{"even on a tetrahedron finely divided", "shape = \"geodesic\"\nbase = \"tetrahedron\"\nsubdivision = 5", "on = \"even\"\ncount = 50", 50, 0},
		{"skipped", `shape = "icosahedron"`, `skip = [20, 3]`, 18, 79.4654472},
		{"kept clear at the middle", `shape = "dodecahedron"`, `keep_clear_below_deg = 0`, 6, 79.4654472},
		{"kept clear but for the top", `shape = "cube"`, `keep_clear_below_deg = 90`, 1, 57.7350269},
		{"cut at the middle", "shape = \"geodesic\"\ncut_height_mm = 0", ``, 40, 0},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			a := build(t, with(c.body+"\nradius_mm = 100", c.mounts, small))
			if len(a.Mounts) != c.count {
				t.Fatalf("%d mounts, want %d", len(a.Mounts), c.count)
			}
			for _, m := range a.Mounts {
				if got := 1000 * r3.Norm(m.Point); c.radius > 0 && math.Abs(got-c.radius) > 1e-6 {
					t.Errorf("mount %d is %.7f mm from the centre, want %.7f", m.ID, got, c.radius)
				}
				if math.Abs(r3.Norm(m.Normal)-1) > 1e-12 || r3.Dot(m.Normal, m.Point) <= 0 {
					t.Errorf("mount %d: normal %v at %v", m.ID, m.Normal, m.Point)
				}
				if m.Face >= 0 && (r3.Norm(r3.Sub(m.Normal, a.Body.Normal(m.Face))) > 1e-8 || a.Body.Margin(m.Face, m.Point) < -1e-9) {
					t.Errorf("mount %d is not on face %d", m.ID, m.Face)
				}
			}
		})
	}
}

func TestSkipLeavesGaps(t *testing.T) {
	a := build(t, with("shape = \"cube\"\nradius_mm = 100", "skip = [2, 5]", small))
	var ids []int
	for _, m := range a.Mounts {
		ids = append(ids, m.ID)
	}
	if d := cmp.Diff([]int{1, 3, 4, 6}, ids); d != "" {
		t.Error(d)
	}
}

// A hole of 20 mm in the side of a cube has its middle at height 0 and reaches
// down to -10 mm; one in the top does not reach down at all.
func TestCutClearsTheHole(t *testing.T) {
	cases := []struct {
		name, cut string
		want      int
	}{
		{"below the sides' holes", "-10.001", 5},
		{"just at the sides' holes", "-10", 5},
		{"into the sides' holes", "-9.999", 1},
		{"just under the top", "57", 1},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			a := build(t, with("shape = \"cube\"\nradius_mm = 100\ncut_height_mm = "+c.cut, "", "[driver]\ndiameter_mm = 20\n"))
			if len(a.Mounts) != c.want {
				t.Errorf("%d mounts, want %d", len(a.Mounts), c.want)
			}
			if !a.Body.IsCut {
				t.Error("the body is whole")
			}
		})
	}
}

func TestBuildFaults(t *testing.T) {
	cases := []struct {
		name string
		text string
		kind error
		want string
	}{
		{"cut away", with("shape = \"cube\"\nradius_mm = 100\ncut_height_mm = 60", "", small), body.ErrNothingLeft,
			"a.toml:4: body.cut_height_mm = 60: nothing of the body is left above this height; must be lower"},
		{"no driver left", with("shape = \"cube\"\nradius_mm = 100\ncut_height_mm = -5", "keep_clear_below_deg = 5\nskip = [1]", small), layout.ErrNoMounts,
			"a.toml:5: mounts: no driver left: of 6 places 1 are cut away, 4 kept clear and 1 skipped; must leave at least 1"},
		{"too many drivers", with("shape = \"geodesic\"\nradius_mm = 1000\nsubdivision = 16", "", small), layout.ErrTooManyMounts,
			"a.toml:5: mounts: 5120 drivers; must be at most 2000"},
		{"skipped place that is not there", with("shape = \"cube\"\nradius_mm = 100", "skip = [7]", small), layout.ErrNoSuchMount,
			"a.toml:5: mounts.skip: there is no mount 7; must be from 1 to 6"},
		{"skipped place where none is left", with("shape = \"cube\"\nradius_mm = 100", "keep_clear_deg = [[0, 90, 90], [0, -90, 90]]\nskip = [1]", small), layout.ErrNoMounts,
			"a.toml:4: mounts: no driver left: of 6 places 0 are cut away, 6 kept clear and 0 skipped; must leave at least 1"},
		{"braces fill the body", with("shape = \"cube\"\nradius_mm = 100", "", small+"fs_hz = 100\n[box]\nbraces_l = 900\n"), box.ErrFull,
			"a.toml:14: box.braces_l = 900: must be less than 1.31, which is what walls and drivers leave of the body"},
		{"drivers fill the body", with("shape = \"cube\"\nradius_mm = 100", "", small+"fs_hz = 100\ndepth_mm = 500\ncutout_mm = 60\n"), box.ErrFull,
			"a.toml:3: body.radius_mm = 100: must be more: walls and drivers take 8.71 l, and the body has 1.54 l"},
		{"channel with a driver that is not there", with("shape = \"cube\"\nradius_mm = 100", "", small+"[[channel]]\ndrivers = [1]\n[[channel]]\ndrivers = [2, 7]\n"), layout.ErrNoSuchMount,
			"a.toml:15: channel[2].drivers: there is no driver 7; must be a mount number from 1 to 6 that is not skipped"},
		{"driver in no channel", with("shape = \"cube\"\nradius_mm = 100", "", small+"[[channel]]\ndrivers = [1, 2, 3, 4, 6]\n"), design.ErrConflict,
			"a.toml:12: channel: driver 5 is in no channel; must be in one, or its place in mounts.skip"},
		{"no load is high enough", with("shape = \"cube\"\nradius_mm = 100", "", small+"nominal_ohm = 8\ndc_ohm = 7\n[wiring]\nchannels = 2\nminimum_load_ohm = 50\n"), wiring.ErrLoad,
			"a.toml:16: wiring.minimum_load_ohm = 50: 6 drivers of 7 ohm in one string load the amplifier with 42 ohm, and no other way with more; must be at most that, and only if the amplifier allows it: else take more drivers, or some of more ohm"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			a, err := layout.Build(parse(t, "a.toml", c.text))
			var e *design.Error
			if a != nil || !errors.Is(err, c.kind) || !errors.As(err, &e) {
				t.Fatalf("array %v, error %v", a, err)
			}
			if err.Error() != c.want {
				t.Errorf("\n got %s\nwant %s", err, c.want)
			}
		})
	}
}

func TestSpotInside(t *testing.T) {
	d := design.Default()
	d.Spot = r3.Vec{X: 0.03, Y: 0.04}
	_, err := layout.Build(d)
	want := regexp.MustCompile(`^lantern\.toml:\d+: spot: the listening spot is 0\.05 m from the body's centre, inside the body; must be outside$`)
	if !errors.Is(err, layout.ErrInside) || !want.MatchString(err.Error()) {
		t.Errorf("\n got %v\nwant %s", err, want)
	}
}

func TestWarnings(t *testing.T) {
	cube := "shape = \"cube\"\nradius_mm = 100" // edges of 115.47 mm
	cases := []struct {
		name string
		text string
		want []string
	}{
		{"all fits", with(cube, "", "[driver]\ndiameter_mm = 60\nflange_mm = 114\ndepth_mm = 15\n"), nil},
		// The middle of a face is 57.7 mm from each edge.
		{"over the edge", with(cube, "skip = [2, 3, 4, 5, 6]", "[driver]\ndiameter_mm = 90\nflange_mm = 120\n"), []string{
			"1 of 1 driver does not fit: 1 flange reaches over the edge of the face (driver 1 most, by 2.3 mm): take flange_mm of at most 115.4, or take radius_mm of at least 104"}},
		{"touching", with(cube, "on = \"vertices\"\nskip = [5, 6, 7, 8]", "[driver]\ndiameter_mm = 90\nflange_mm = 150\n"), []string{
			// Planes square to two neighbouring corners' directions meet 100 mm times
			// tan(35.26 degrees) = 70.71 mm from each corner: 150 less 141.42.
			"4 of 4 drivers do not fit: 4 flanges overlap (drivers 1 and 2 most, by 8.6 mm): leave 2 places empty with skip = [1, 3, 5, 6, 7, 8], or take flange_mm of at most 140.4, or take radius_mm of at least 107"}},
		{"too near", with(cube, "", "[driver]\ndiameter_mm = 90\nflange_mm = 115\n"), []string{
			"6 of 6 drivers do not fit: 6 flanges are too near a neighbour (drivers 1 and 2 most, 0.5 mm where 1 is asked): take flange_mm of at most 114.4, or take radius_mm of at least 101"}},
		// A rear rim of 10 mm radius meets the opposite wall's inner side, 112.5 mm
		// behind the face.
		{"too deep", with(cube, "skip = [2, 3, 4, 5, 6]", "[driver]\ndiameter_mm = 20\ndepth_mm = 113\n"), []string{
			"1 of 1 driver does not fit: 1 basket is too deep for the body (driver 1 most, by 0.5 mm): take depth_mm of at most 111.4, or take radius_mm of at least 102"}},
		// 37.7 mm from the face to the cut, less 3 of wall.
		{"through the cut", with(cube+"\ncut_height_mm = 20", "", "[driver]\ndiameter_mm = 90\ndepth_mm = 40\n"), []string{
			"1 of 1 driver does not fit: 1 basket is too deep for the body (driver 1 most, by 5.3 mm): take depth_mm of at most 33.7, or take radius_mm of at least 117 with cut_height_mm = 23.4"}},
		{"screws", with(cube, "", "[driver]\ndiameter_mm = 60\nflange_mm = 68\nscrew_mm = 4\n[fit]\nedge_mm = 0.5\n"), []string{
			"6 of 6 drivers do not fit: 6 flanges are too narrow for their screws (driver 1 most, by 0.5 mm): take screw_mm of at most 3.0"}},
		{"more channels than drivers", with(cube, "", small+"[wiring]\nchannels = 8\n"), []string{
			"2 of 8 channels stay unused, for there are 6 drivers: set channels = 6"}},
		{"channel under the minimum", with(cube, "", small+"nominal_ohm = 4\ndc_ohm = 3.5\n[[channel]]\ndrivers = [1]\n[[channel]]\ndrivers = [2, 3, 4, 5, 6]\n"), []string{
			"1 channel is under the amplifier's minimum of 4.0 ohm; channel 1 is at 3.5 ohm, and the amplifier can overheat: do not connect it so; put more drivers in series"}},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			if d := cmp.Diff(c.want, advice.Lines(build(t, c.text).Warnings), cmpopts.EquateEmpty()); d != "" {
				t.Error(d)
			}
		})
	}
}

// Whatever the body, numbers run from 1 from the top down and, within a ring,
// counter-clockwise from x.
func TestNumbersRunDown(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		shape := rapid.SampledFrom([]string{"tetrahedron", "cube", "octahedron", "dodecahedron", "icosahedron", "geodesic"}).Draw(t, "shape")
		on := rapid.SampledFrom([]string{"faces", "vertices", "edges"}).Draw(t, "on")
		base := ""
		if shape == "geodesic" {
			base = fmt.Sprintf("\nbase = %q\nsubdivision = %d",
				rapid.SampledFrom([]string{"icosahedron", "octahedron", "tetrahedron"}).Draw(t, "base"), rapid.IntRange(1, 5).Draw(t, "subdivision"))
		}
		cut := rapid.Float64Range(-500, 100).Draw(t, "cut in mm")
		d, err := design.Parse("a.toml", []byte(with(fmt.Sprintf("shape = %q\nradius_mm = 500%s\ncut_height_mm = %g", shape, base, cut), fmt.Sprintf("on = %q", on), small)))
		if err != nil {
			t.Skip(err)
		}
		a, err := layout.Build(d)
		if err != nil {
			t.Skip(err)
		}
		turn := func(m layout.Mount) float64 {
			if math.Hypot(m.Point.X, m.Point.Y) < 1e-9 {
				return 0
			}
			return math.Mod(math.Atan2(m.Point.Y, m.Point.X)+2*math.Pi+1e-9, 2*math.Pi)
		}
		for i, m := range a.Mounts {
			if m.ID != i+1 {
				t.Fatalf("mount %d has the number %d", i, m.ID)
			}
			// The lowest point of the hole is at least at the cut; a plane that
			// passes below the body has cut nothing.
			if down := m.Point.Z - 0.005*math.Sqrt(max(0, 1-m.Normal.Z*m.Normal.Z)); a.Body.IsCut && down < cut/1000-1e-8 {
				t.Fatalf("the hole of mount %d reaches down to %g m", m.ID, down)
			}
			if i == 0 {
				continue
			}
			switch last := a.Mounts[i-1]; {
			case m.Point.Z > last.Point.Z+1e-6:
				t.Fatalf("mount %d is above mount %d", m.ID, last.ID)
			case m.Point.Z > last.Point.Z-1e-7 && turn(m) <= turn(last):
				t.Fatalf("mount %d at %g rad follows mount %d at %g in a ring", m.ID, turn(m), last.ID, turn(last))
			}
		}
	})
}

func TestMountList(t *testing.T) {
	dir := t.TempDir()
	const list = "# places of the second ring\nx_mm,y_mm, z_mm,nx,ny,nz\n" +
		"0,0,-100,0,0,-2\n\n" + // on the ball, any length of normal
		"98, 0, 0, 1, 0, 0.1\n" + // let in 2 mm and tilted
		"0,0,105,0,0,1\n" // on a block
	if err := os.WriteFile(filepath.Join(dir, "places.csv"), []byte("\ufeff"+strings.ReplaceAll(list, "\n", "\r\n")), 0o600); err != nil {
		t.Fatal(err)
	}
	text := with("shape = \"ball\"\nradius_mm = 100", "on = \"list\"\nlist = \"places.csv\"", small)
	a, err := layout.Build(parse(t, filepath.Join(dir, "a.toml"), text))
	if err != nil {
		t.Fatal(err)
	}
	want := []layout.Mount{
		{ID: 1, Point: r3.Vec{Z: -0.1}, Normal: r3.Vec{Z: -1}, Face: -1},
		{ID: 2, Point: r3.Vec{X: 0.098}, Normal: r3.Unit(r3.Vec{X: 1, Z: 0.1}), Face: -1},
		{ID: 3, Point: r3.Vec{Z: 0.105}, Normal: r3.Vec{Z: 1}, Face: -1},
	}
	if d := cmp.Diff(want, a.Mounts, near); d != "" {
		t.Error(d)
	}
}

// A list on a body with faces finds them again, also after a cut.
func TestMountListFindsFaces(t *testing.T) {
	dir := t.TempDir()
	cut := "shape = \"geodesic\"\nradius_mm = 100\ncut_height_mm = 10"
	whole := build(t, with(cut, "", small))
	var b strings.Builder
	b.WriteString("x_mm,y_mm,z_mm,nx,ny,nz\n")
	for _, m := range whole.Mounts {
		fmt.Fprintf(&b, "%v,%v,%v,%v,%v,%v\n", 1000*m.Point.X, 1000*m.Point.Y, 1000*m.Point.Z, m.Normal.X, m.Normal.Y, m.Normal.Z)
	}
	if err := os.WriteFile(filepath.Join(dir, "p.csv"), []byte(b.String()), 0o600); err != nil {
		t.Fatal(err)
	}
	a, err := layout.Build(parse(t, filepath.Join(dir, "a.toml"), with(cut, "on = \"list\"\nlist = \"p.csv\"", small)))
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(whole.Mounts, a.Mounts, near); d != "" {
		t.Error(d)
	}
}

func TestMountListFaults(t *testing.T) {
	const head = "x_mm,y_mm,z_mm,nx,ny,nz\n"
	cases := []struct {
		name, list string
		kind       error
		want       string // after the folder
	}{
		{"empty", "", design.ErrSyntax, "p.csv:1: must begin with the line x_mm,y_mm,z_mm,nx,ny,nz"},
		{"no first line", "0,0,100,0,0,1\n", design.ErrSyntax, "p.csv:1: must begin with the line x_mm,y_mm,z_mm,nx,ny,nz"},
		{"too few values", head + "0,0,100\n", design.ErrSyntax, "p.csv:2: 3 values; must be 6: x_mm,y_mm,z_mm,nx,ny,nz"},
		{"quote in the midst", head + "\n0,0,1\"00,0,0,1\n", design.ErrSyntax, "p.csv:3: not readable as CSV: bare \" in non-quoted-field"},
		{"text for a number", head + "0,0,high,0,0,1\n", design.ErrType, `p.csv:2: z_mm = "high": must be a number from -10000 to 10000`},
		{"not a number", head + "0,0,100,0,0,1\n# next\n0,0,NaN,0,0,1\n", design.ErrRange, `p.csv:4: z_mm = "NaN": must be a number from -10000 to 10000`},
		{"without end", head + "0,0,100,0,0,-Inf\n", design.ErrRange, `p.csv:2: nz = "-Inf": must be a number from -1000 to 1000`},
		{"absurd", head + "1e999,0,100,0,0,1\n", design.ErrRange, `p.csv:2: x_mm = "1e999": must be a number from -10000 to 10000`},
		{"no normal", head + "0,0,100,0,0,0\n", design.ErrRange, "p.csv:2: nx,ny,nz: the normal has no length; must point away from the body"},
		{"inward", head + "0,0,100,0,0,-1\n", design.ErrRange, "p.csv:2: nx,ny,nz: the normal does not point outward; must point away from the body"},
		{"sideways", head + "0,0,100,1,0,0\n", design.ErrRange, "p.csv:2: nx,ny,nz: the normal does not point outward; must point away from the body"},
		{"far inside", head + "0,0,100,0,0,1\n0,0,89,0,0,1\n", design.ErrRange, "p.csv:3: x_mm,y_mm,z_mm: the point of mount 2 is 11.0 mm inside the body's surface; must be within 10 mm of it; all points together fit radius_mm = 94.5 best"},
		{"far outside", head + "0,0,150,0,0,1\n", design.ErrRange, "p.csv:2: x_mm,y_mm,z_mm: the point of mount 1 is 50.0 mm outside the body's surface; must be within 10 mm of it; all points together fit radius_mm = 150.0 best"},
		{"too long", head + strings.Repeat("0,0,100,0,0,1\n", 10001), layout.ErrTooManyMounts, "p.csv:10002: too many mounts; must be at most 10000"},
		{"too large", head + strings.Repeat("#", 1<<20), design.ErrRange, "p.csv: too large; must be at most 1048576 bytes"},
	}
	dir := t.TempDir()
	d := parse(t, filepath.Join(dir, "a.toml"), with("shape = \"ball\"\nradius_mm = 100", "on = \"list\"\nlist = \"p.csv\"", small))
	check := func(t *testing.T, kind error, want string) {
		t.Helper()
		_, err := layout.Build(d)
		var e *design.Error
		if !errors.Is(err, kind) || !errors.As(err, &e) {
			t.Fatalf("error %v", err)
		}
		want = fmt.Sprintf("%s:%d: mounts.list = \"p.csv\": %s", d.Path, d.Lines["mounts.list"], filepath.Join(dir, want))
		if err.Error() != want || d.Lines["mounts.list"] == 0 {
			t.Errorf("\n got %s\nwant %s", err, want)
		}
	}
	check(t, fs.ErrNotExist, "p.csv: there is no such file; must be a file's name, beside the design or with its folder")
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			if err := os.WriteFile(filepath.Join(dir, "p.csv"), []byte(c.list), 0o600); err != nil {
				t.Fatal(err)
			}
			check(t, c.kind, c.want)
		})
	}
	if err := os.WriteFile(filepath.Join(dir, "p.csv"), []byte(head), 0o600); err != nil {
		t.Fatal(err)
	}
	_, err := layout.Build(d)
	if !errors.Is(err, layout.ErrNoMounts) {
		t.Errorf("a list of nothing: %v", err)
	}
}

func BenchmarkBuild(b *testing.B) {
	d := design.Default()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := layout.Build(d); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkBuild1280(b *testing.B) {
	d := parse(b, "a.toml", with("shape = \"geodesic\"\nsubdivision = 8\nradius_mm = 1000\ncut_height_mm = -900", "", small))
	b.ReportAllocs()
	for b.Loop() {
		if _, err := layout.Build(d); err != nil {
			b.Fatal(err)
		}
	}
}
