package design_test

import (
	"errors"
	"io/fs"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"pappus/layout/design"
	"pappus/layout/fit"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// least is a design with nothing that has a default. Tests add to it.
const least = `[body]
shape = "ball"
radius_mm = 100
[mounts]
count = 12
[driver]
diameter_mm = 30
[spot]
x_m = 2
y_m = 0
z_m = 1
`

func TestDefaults(t *testing.T) {
	got, err := design.Parse("a.toml", []byte(least))
	if err != nil {
		t.Fatal(err)
	}
	want := &design.Design{
		Path:    "a.toml",
		Name:    "Unnamed array",
		Air:     design.Air{Temperature: 293.15, Humidity: 0.5, Pressure: 101325},
		Body:    design.Body{Shape: "ball", Radius: 0.1, Wall: 0.003},
		Placing: design.Placing{On: "surface"},
		Mounts: design.Mounts{
			On: "even", Count: 12, Over: "ball", Symmetry: 1,
		},
		Driver:     design.Driver{ConeRadius: 0.015, Outline: fit.Outline{CutoutRadius: 0.015, FlangeRadius: 0.015}, NominalOhm: 8, DCOhm: 6.8, PowerHandling: 1, ResonanceQ: 0.707},
		Fit:        design.Fit{Apart: 0.001},
		Box:        design.Box{TargetQ: 0.707, VentRadius: 0.004, VentHoles: 6, Stuffing: 10},
		Build:      design.Build{Spares: 0.05, Slack: 0.06, InnerSection: 0.5e-6, JointTime: 240, DriverTime: 360},
		Kit:        design.Kit{Gap: 0.0002, Joint: "lap", Mounting: "front"},
		Print:      design.Print{Bed: r3.Vec{X: 0.22, Y: 0.22, Z: 0.25}, Margin: 0.001, Density: 1240, Flow: 5e-9},
		Timing:     design.Timing{Model: "sphere", SolveTo: 4000, DelaysBy: "field", FieldLow: 500, FieldHigh: 8000},
		Wiring:     design.Wiring{MinimumLoad: 4, Voltage: 2.83, Split: "arrival", WireSection: 0.75e-6},
		Protection: design.Protection{Family: "butterworth", Order: 4},
		Processor:  design.Processor{Rate: 48000},
		Spot:       r3.Vec{X: 2, Z: 1},
		Seating:    design.Seating{Aim: "even", Head: 0.15, Loud: 0.5},
		Room:       design.Room{Order: 3},
		Woofer:     design.Woofer{Order: 4},
		Coverage:   design.Coverage{HalfWidth: 1.5 * math.Sqrt(5), Cells: 64, SmearLimit: 100e-6},
		Search:     design.Search{Drivers: 120, LeastDrivers: 12, Aims: []string{"loss", "level", "cost"}},
	}
	if d := cmp.Diff(want, got, cmpopts.EquateApprox(1e-12, 0)); d != "" {
		t.Error(d)
	}
}

func TestEveryKey(t *testing.T) {
	const text = `name = "All of it"
air = { temperature_c = 25, humidity_percent = 30.5, pressure_kpa = 90 } # an inline table will do
driver.diameter_mm = 40
driver.cutout_mm = 41.5
driver.flange_mm = 50
driver.depth_mm = 20
driver.nominal_ohm = 4
driver.dc_ohm = 3.4
driver.sensitivity_db = 84
driver.power_w = 3
driver.response = "driver.csv"
driver.resonance_hz = 160
driver.resonance_q = 0.9
driver.magnet_mm = 30
driver.magnet_height_mm = 9
driver.terminal_reach_mm = 22
driver.terminal_front_mm = 6
driver.terminal_length_mm = 5
driver.screw_mm = 2.5
driver.fs_hz = 140
driver.qms = 3
driver.qes = 1
driver.vas_l = 0.2
driver.bl_tm = 2.5
driver.mms_g = 0.9
driver.sd_cm2 = 9
driver.le_mh = 0.06
driver.xmax_mm = 2
driver.impedance = "ohm.csv"
driver.mass_g = 30.5
driver.price = 4.5
protection = { family = "bessel", order = 3, corner_hz = 99 }
processor = { rate_hz = 96000, step_us = 10 }
fit = { apart_mm = 2, edge_mm = 0.5 }
box = { braces_l = 0.2, target_q = 0.8, vent_hole_mm = 5, vent_holes = 12, stuffing_kg_m3 = 8 }
placing = { on = "ceiling", yaw_deg = 10, pitch_deg = -20, roll_deg = 30.5 }
kit = { gap_mm = 0.15, joint = "flange", mounting = "rear", recess_mm = 1 }
print = { bed_mm = [200, 180, 170], margin_mm = 2, density_kg_m3 = 1050, price_kg = 20.5, flow_mm3_s = 8 }
[body]
shape = "geodesic"
base = "octahedron"
subdivision = 3
radius_mm = 200.0
cut_height_mm = -50
stand_height_mm = 10
wall_mm = 4
[mounts]
on = "vertices"
keep_clear_below_deg = -5
keep_clear_deg = [[180, 10.5, 15], [0, 90, 1]]
skip = [
  3,
  7, # two places
]
[timing]
model = "baffle"
delays_by = "field"
field_low_hz = 700
field_high_hz = 6000.5
[wiring]
minimum_load_ohm = 2
amplifier_w = 8
amplifier_into_ohm = 2
amplifier_volt = 4
split = "height"
longest_string = 6
wire_m = 3
wire_mm2 = 1.5
[[channel]]
drivers = [1, 2]
gain_db = -3
invert = true
delay_us = 120.5
[[channel]]
drivers = [4]
[spot]
x_m = 0
y_m = -3
z_m = 0.5
[seats]
aim = "round"
head_mm = 100
loud = 0.25
[[seat]]
name = "door"
x_m = 1
y_m = 2
z_m = 0.4
weight = 2
[[seat]]
x_m = 1
y_m = -2
z_m = 0.3
[[area]]
name = "row"
shape = "line"
count = 3
weight = 1.5
from_m = [2, -1, 0.5]
to_m = [2, 1, 0.5]
[[area]]
shape = "arc"
count = 2
radius_m = 1.5
z_m = 0.25
from_deg = -45
to_deg = 45.5
[coverage]
half_width_m = 4
cells = 32
smear_limit_us = 150
[search]
drivers = 100
least_drivers = 20
channels = 6
width_mm = 410
height_mm = 300
depth_mm = 350
mass_kg = 8.5
price = 500
hours = 60
litres_least = 2
litres_most = 10.5
level_db = 91.5
lowest_hz = 210
pieces = 2
aims = ["level", "hours"]
wiring = { channels = [4, 6] }
[search.body]
subdivision = { from = 2, to = 6, step = 2 }
shape = ["geodesic", "cube"]
radius_mm = { from = 90, to = 180.5 }
[search.mounts]
skip = [[], [33]]
[room]
size_m = [6, 8.5, 2.7]
body_at_m = [2, 4, 0.8]
absorption = 0.2
order = 2
back_absorption = 0.1
front_absorption = [0, 0.1, 0.2, 0.3, 0.4, 0.5, 1]
right_absorption = 0.3
left_absorption = 0
floor_absorption = 1
ceiling_absorption = 0.5
[woofer]
x_m = -1
y_m = 0.5
z_m = -0.8
crossover_hz = 350
order = 8
sensitivity_db = 88.5
gain_db = -2
invert = true
[build]
spare_percent = 10
slack_mm = 80
inner_mm2 = 0.25
wire_price_m = 4.5
joint_minutes = 2
driver_minutes = 3
[[part]]
name = "screw"
count = 156
price = 4.5
mass_g = 0.5
minutes = 0.5
`
	even := func(v float64) (o design.Absorption) {
		for i := range o {
			o[i] = v
		}
		return o
	}
	clear, delay, level, price, kilo := -5.0, 120.5*1e-6, 91.5, 4.5, 20.5
	want := &design.Design{
		Path: "all.toml",
		Name: "All of it",
		Air:  design.Air{Temperature: 298.15, Humidity: 0.305, Pressure: 90000},
		Body: design.Body{
			Shape: "geodesic", Base: "octahedron", Subdivision: 3, Radius: 0.2,
			Cut: -0.05, HasCut: true, Stand: 0.01, Wall: 0.004,
		},
		Placing: design.Placing{On: "ceiling", Angles: design.Angles{YawDeg: 10, PitchDeg: -20, RollDeg: 30.5}},
		Mounts:  design.Mounts{On: "vertices", KeepClear: []design.Zone{{AzimuthDeg: 180, ElevationDeg: 10.5, HalfAngleDeg: 15}, {ElevationDeg: 90, HalfAngleDeg: 1}}, KeepClearBelowDeg: &clear, Skip: []int{3, 7}},
		Driver: design.Driver{
			ConeRadius: 0.02, Outline: fit.Outline{CutoutRadius: 0.02075, FlangeRadius: 0.025, Depth: 0.02,
				MagnetRadius: 0.015, MagnetHeight: 0.009, TerminalReach: 0.022, TerminalFront: 0.006, TerminalLength: 0.005, ScrewRadius: 0.00125},
			NominalOhm: 4, DCOhm: 3.4, Sensitivity: 84, PowerHandling: 3,
			ResponseFile: "driver.csv", Resonance: 160, ResonanceQ: 0.9,
			Small:         design.Small{Fs: 140, Qms: 3, Qes: 1, Vas: 0.0002, BL: 2.5, Mass: 0.0009, Area: 0.0009, Inductance: 0.00006, Reach: 0.002},
			ImpedanceFile: "ohm.csv",
			Mass:          0.0305, Price: &price,
		},
		Protection: design.Protection{Family: "bessel", Order: 3, Corner: 99},
		Processor:  design.Processor{Rate: 96000, Step: 10e-6},
		Fit:        design.Fit{Apart: 0.002, Edge: 0.0005},
		Box:        design.Box{Braces: 0.0002, TargetQ: 0.8, VentRadius: 0.0025, VentHoles: 12, Stuffing: 8},
		Build:      design.Build{Spares: 0.1, Slack: 0.08, InnerSection: 0.25 * 1e-6, WirePrice: &price, JointTime: 120, DriverTime: 180},
		Parts:      []design.Part{{Name: "screw", Count: 156, Price: &price, Mass: 0.0005, Time: 30}},
		Kit:        design.Kit{Gap: 0.00015, Joint: "flange", Mounting: "rear", Recess: 0.001},
		Print:      design.Print{Bed: r3.Vec{X: 0.2, Y: 0.18, Z: 0.17}, Margin: 0.002, Density: 1050, Price: &kilo, Flow: 8e-9},
		Timing:     design.Timing{Model: "baffle", SolveTo: 4000, DelaysBy: "field", FieldLow: 700, FieldHigh: 6000.5},
		Wiring:     design.Wiring{MinimumLoad: 2, Voltage: 4, HasAmplifier: true, Watt: 8, IntoOhm: 2, Split: "height", LongestString: 6, WireLength: 3, WireSection: 1.5e-6},
		Channels:   []design.Channel{{Drivers: []int{1, 2}, Gain: -3, Invert: true, Delay: &delay}, {Drivers: []int{4}}},
		Spot:       r3.Vec{X: 0, Y: -3, Z: 0.5},
		Seating:    design.Seating{Aim: "round", Head: 0.1, Loud: 0.25},
		Seats:      []design.Seat{{Name: "door", At: r3.Vec{X: 1, Y: 2, Z: 0.4}, Weight: 2}, {Name: "seat 2", At: r3.Vec{X: 1, Y: -2, Z: 0.3}, Weight: 1}},
		Areas: []design.Area{
			{Name: "row", Shape: "line", Count: 3, Weight: 1.5, From: r3.Vec{X: 2, Y: -1, Z: 0.5}, To: r3.Vec{X: 2, Y: 1, Z: 0.5}},
			{Shape: "arc", Count: 2, Weight: 2, Radius: 1.5, Z: 0.25, FromDeg: -45, ToDeg: 45.5},
		},
		Room: design.Room{
			Present: true, Size: r3.Vec{X: 6, Y: 8.5, Z: 2.7}, Body: r3.Vec{X: 2, Y: 4, Z: 0.8}, Order: 2,
			Absorption: [6]design.Absorption{even(0.1), {0, 0.1, 0.2, 0.3, 0.4, 0.5, 1}, even(0.3), even(0), even(1), even(0.5)},
		},
		Woofer: design.Woofer{Present: true, At: r3.Vec{X: -1, Y: 0.5, Z: -0.8}, Crossover: 350, Order: 8,
			Sensitivity: 88.5, Gain: -2, Invert: true},
		Coverage: design.Coverage{HalfWidth: 4, Cells: 32, SmearLimit: 150e-6},
		Search: design.Search{
			Present: true, Drivers: 100, LeastDrivers: 20, Channels: 6, Width: 0.41, Height: 0.3, Depth: 0.35, Mass: 8.5, Price: 500, Hours: 60,
			LeastVolume: 0.002, MostVolume: 0.0105, Level: &level, Lowest: 210, Pieces: 2, Aims: []string{"level", "hours"},
			Vary: []design.Vary{
				{Key: "body.shape", Choices: []any{"geodesic", "cube"}}, {Key: "body.subdivision", From: 2, To: 6, Step: 2, Whole: true},
				{Key: "body.radius_mm", From: 90, To: 180.5}, {Key: "mounts.skip", Choices: []any{[]any{}, []any{int64(33)}}},
				{Key: "wiring.channels", Choices: []any{int64(4), int64(6)}},
			},
		},
	}
	for name, text := range map[string]string{
		"unix":    text,
		"windows": "\ufeff" + strings.ReplaceAll(text, "\n", "\r\n"),
	} {
		got, err := design.Parse("all.toml", []byte(text))
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		if d := cmp.Diff(want, got, cmpopts.EquateApprox(1e-12, 0)); d != "" {
			t.Errorf("%s: %s", name, d)
		}
	}
}

func TestSurface(t *testing.T) {
	even := design.Absorption{0.3, 0.3, 0.3, 0.3, 0.3, 0.3, 0.3}
	cases := []struct {
		name, text string
		want       design.Surface
	}{
		{"none", "", design.Surface{}},
		{"bare table", "[surface]\n", design.Surface{Present: true}},
		{"one number", "[surface]\nabsorption = 0.3\n", design.Surface{Present: true, Absorption: even}},
		{"a whole number", "[surface]\nabsorption = 0\n", design.Surface{Present: true}},
		{"seven numbers", "[surface]\nabsorption = [0, 1, 0.1, 0.2, 0.3, 0.4, 0.5]\n",
			design.Surface{Present: true, Absorption: design.Absorption{0, 1, 0.1, 0.2, 0.3, 0.4, 0.5}}},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			got, err := design.Parse("a.toml", []byte(least+c.text))
			if err != nil {
				t.Fatal(err)
			}
			if d := cmp.Diff(c.want, got.Surface); d != "" {
				t.Error(d)
			}
		})
	}
	for _, text := range []string{"surface = {}\n", "surface.absorption = 0.3\n"} {
		if got, err := design.Parse("a.toml", []byte(text+least)); err != nil || !got.Surface.Present {
			t.Errorf("%q: %v", text, err)
		}
	}
}

// TestAmplifier: watts into ohms, or volts; P = U^2 / R. The least load is the one that
// the watts are for unless it is given.
func TestAmplifier(t *testing.T) {
	for _, test := range []struct {
		name, wiring string
		volt, least  float64
		has          bool
	}{
		{"neither", "", 2.83, 4, false},
		{"volts", "amplifier_volt = 10\n", 10, 4, true},
		{"50 W into 4 ohm", "amplifier_w = 50\namplifier_into_ohm = 4\n", math.Sqrt(200), 4, true},
		{"25 W into 8 ohm", "amplifier_w = 25\namplifier_into_ohm = 8\n", math.Sqrt(200), 8, true},
		{"25 W into 8 ohm, 4 allowed", "amplifier_w = 25\namplifier_into_ohm = 8\nminimum_load_ohm = 4\n", math.Sqrt(200), 4, true},
		{"both, rounded", "amplifier_w = 50\namplifier_into_ohm = 4\namplifier_volt = 14.1\n", 14.1, 4, true},
		{"both, a tenth of a dB off", "amplifier_w = 50\namplifier_into_ohm = 4\namplifier_volt = 14.3\n", 14.3, 4, true},
	} {
		t.Run(test.name, func(t *testing.T) {
			d, err := design.Parse("a.toml", []byte(least+"[wiring]\n"+test.wiring))
			if err != nil {
				t.Fatal(err)
			}
			w := d.Wiring
			if math.Abs(w.Voltage-test.volt) > 1e-12 || w.MinimumLoad != test.least || w.HasAmplifier != test.has {
				t.Errorf("%+v", w)
			}
		})
	}
}

// The straight line is the default where there is no body to go round.
func TestDelaysByDefault(t *testing.T) {
	for model, want := range map[string]string{"sphere": "field", "body": "field", "baffle": "straight", "point": "straight"} {
		got, err := design.Parse("a.toml", []byte(least+"[timing]\nmodel = \""+model+"\"\n"))
		if err != nil {
			t.Fatal(err)
		}
		if got.Timing.DelaysBy != want {
			t.Errorf("%s: %s, want %s", model, got.Timing.DelaysBy, want)
		}
	}
}

// A body may fill the room, and one that is cut may stand on the floor.
func TestRoomFits(t *testing.T) {
	cases := []struct{ name, cut, room string }{
		{"touching walls", "", "size_m = [4, 1, 1.1]\nbody_at_m = [0.1, 0.9, 0.1]"},
		{"touching the ceiling", "", "size_m = [4, 1, 1.1]\nbody_at_m = [0.1, 0.1, 1]"},
		{"cut in the middle, on the floor", "cut_height_mm = 0\n", "size_m = [4, 4, 2]\nbody_at_m = [1, 1, 0]"},
		{"cut below the middle, on the floor", "cut_height_mm = -40\n", "size_m = [4, 4, 2]\nbody_at_m = [1, 1, 0.04]"},
		{"cut above the middle, on the floor", "cut_height_mm = 40\n", "size_m = [4, 4, 2]\nbody_at_m = [1, 1, 0]"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			text := strings.Replace(least, "radius_mm = 100\n", "radius_mm = 100\n"+c.cut, 1)
			text = strings.Replace(text, "z_m = 1\n", "z_m = 0.1\n", 1)
			if _, err := design.Parse("a.toml", []byte(text+"[room]\nabsorption = 0.1\n"+c.room+"\n")); err != nil {
				t.Error(err)
			}
		})
	}
}

// Each case changes the least design in one place: a line is replaced, or text
// goes above or below it.
func TestFaults(t *testing.T) {
	cases := []struct {
		name         string
		line, with   string // the line to replace, and what by
		above, below string
		kind         error
		want         string
	}{
		{name: "not TOML", line: "radius_mm = 100", with: "radius_mm = = 100", kind: design.ErrSyntax,
			want: "bad.toml:3: body.radius_mm = = 100: not written as TOML has it; must be a number from 20 to 5000; write 100"},
		{name: "dome without a cut", line: "count = 12", with: "count = 12\nover = \"dome\"", kind: design.ErrConflict,
			want: `bad.toml:6: mounts.over = "dome": must be "ball" where the body has no cut`},
		{name: "a zone of two numbers", line: "count = 12", with: "count = 12\nkeep_clear_deg = [[1, 2]]", kind: design.ErrRange,
			want: "bad.toml:6: mounts.keep_clear_deg = [[…]]: must be a list of [azimuth from -360 to 360, elevation from -90 to 90, half angle from 0.1 to 90], in degrees, at most 100"},
		{name: "a zone too wide", line: "count = 12", with: "count = 12\nkeep_clear_deg = [[1, 2, 91]]", kind: design.ErrRange,
			want: "bad.toml:6: mounts.keep_clear_deg = [[…]]: must be a list of [azimuth from -360 to 360, elevation from -90 to 90, half angle from 0.1 to 90], in degrees, at most 100"},
		{name: "sides of a ball", line: "radius_mm = 100", with: "radius_mm = 100\nsides = 6", kind: design.ErrConflict,
			want: `bad.toml:4: body.sides: only for body.shape = "prism" or "antiprism"; leave it out`},
		{name: "prism without sides", line: "shape = \"ball\"\nradius_mm = 100\n[mounts]", with: "shape = \"prism\"\nradius_mm = 100\n[mounts]\non = \"even\"", kind: design.ErrMissing,
			want: "bad.toml:1: body.sides: missing; must be a whole number from 3 to 64"},
		{name: "file without a name", line: "shape = \"ball\"\nradius_mm = 100\n[mounts]", with: "shape = \"file\"\nradius_mm = 100\n[mounts]\non = \"even\"", kind: design.ErrMissing,
			want: "bad.toml:1: body.file: missing; must be the name of an OFF or STL file"},
		{name: "two ways to divide", line: `shape = "ball"`, with: "shape = \"geodesic\"\nsubdivision = 2\nm = 2", kind: design.ErrConflict,
			want: "bad.toml:4: body.m = 2: must be left out where body.subdivision is given"},
		{name: "n alone", line: `shape = "ball"`, with: "shape = \"geodesic\"\nn = 2", kind: design.ErrConflict,
			want: "bad.toml:3: body.n = 2: must be left out where there is no body.m"},
		{name: "divided too finely", line: `shape = "ball"`, with: "shape = \"geodesic\"\nm = 12\nn = 5", kind: design.ErrConflict,
			want: "bad.toml:4: body.n = 5: must be at most 4, so that m and n together are at most 16"},
		{name: "dual of a ball", line: "radius_mm = 100", with: "radius_mm = 100\ndual = true", kind: design.ErrConflict,
			want: "bad.toml:4: body.dual = true: must be false for a ball or a body that is cut"},
		{name: "magnet higher than the driver", line: "diameter_mm = 30", with: "diameter_mm = 30\nmagnet_height_mm = 5", kind: design.ErrConflict,
			want: "bad.toml:8: driver.magnet_height_mm = 5: must be at most driver.depth_mm, 0"},
		{name: "a key twice", line: "radius_mm = 100", with: "radius_mm = 100\nradius_mm = 90", kind: design.ErrSyntax,
			want: "bad.toml:4: not readable as TOML: radius_mm is there already; leave one of them out"},
		{name: "a table twice", below: "[body]\n", kind: design.ErrSyntax, want: "bad.toml:12: not readable as TOML: [body] is there already; put all its keys under one"},
		{name: "a number with no end", line: "x_m = 2", with: "x_m = 2_", kind: design.ErrSyntax,
			want: "bad.toml:9: spot.x_m = 2_: must be a plain number, with a point for decimals; write 2"},
		{name: "a whole number too big for the machine", line: "count = 12", with: "count = 99999999999999999999", kind: design.ErrSyntax,
			want: "bad.toml:5: mounts.count = 99999999999999999999: must be a whole number from 0 to 2000"},

		{name: "key misspelt", line: "radius_mm = 100", with: "radus_mm = 100", kind: design.ErrUnknownKey,
			want: "bad.toml:3: body.radus_mm: not a known key; did you mean radius_mm?"},
		{name: "key in capitals", line: "radius_mm = 100", with: "Radius_MM = 100", kind: design.ErrUnknownKey,
			want: "bad.toml:3: body.Radius_MM: not a known key; did you mean radius_mm?"},
		{name: "key of another table", line: "radius_mm = 100", with: "radius_mm = 100\npower_w = 3", kind: design.ErrUnknownKey,
			want: "bad.toml:4: body.power_w: not a known key here; it belongs in [driver]"},
		{name: "key of a channel", line: "radius_mm = 100", with: "radius_mm = 100\ngain_db = 3", kind: design.ErrUnknownKey,
			want: "bad.toml:4: body.gain_db: not a known key here; it belongs in [woofer] or a [[channel]]"},
		{name: "name below a table", below: `name = "late"` + "\n", kind: design.ErrUnknownKey,
			want: "bad.toml:12: spot.name: not a known key here; it belongs above the first table"},
		{name: "key unheard of", below: `colour = "red"` + "\n", kind: design.ErrUnknownKey,
			want: "bad.toml:12: spot.colour: not a known key; known here: x_m, y_m, z_m"},
		{name: "key at the top that has a table", above: "\n\nradius_mm = 3\n", kind: design.ErrUnknownKey,
			want: "bad.toml:3: radius_mm: not a known key here; it belongs in [body]"},
		{name: "table misspelt", below: "[coverge]\ncells = 32\n", kind: design.ErrUnknownKey,
			want: "bad.toml:12: coverge: not a known table; did you mean coverage?"},
		{name: "table unheard of", below: "[garden.pond]\nfish = 32\n", kind: design.ErrUnknownKey,
			want: "bad.toml:12: garden: not a known key; known here: name, air, body, placing, mounts, driver, fit, box, print, kit, build, part, timing, wiring, protection, processor, spot, seats, seat, area, surface, room, woofer, coverage, search, body_at, channel"},
		{name: "key that would break the line", below: `"a\nb\u001b[31m" = 1` + "\n", kind: design.ErrUnknownKey,
			want: `bad.toml:12: spot."a\nb\x1b[31m": not a known key; known here: x_m, y_m, z_m`},
		{name: "key without a name", above: `"" = 1` + "\n", kind: design.ErrUnknownKey,
			want: `bad.toml:1: "": not a known key; known here: name, air, body, placing, mounts, driver, fit, box, print, kit, build, part, timing, wiring, protection, processor, spot, seats, seat, area, surface, room, woofer, coverage, search, body_at, channel`},
		{name: "key of a channel misspelt", below: "[[channel]]\ndrivers = [1]\n[[channel]]\ndrivers = [2]\ngain = 3\n", kind: design.ErrUnknownKey,
			want: "bad.toml:16: channel[2].gain: not a known key; did you mean gain_db?"},

		{name: "text for a number", line: "radius_mm = 100", with: `radius_mm = "big"`, kind: design.ErrType,
			want: `bad.toml:3: body.radius_mm = "big": must be a number from 20 to 5000`},
		{name: "number for text", line: `shape = "ball"`, with: "shape = 3", kind: design.ErrType,
			want: `bad.toml:2: body.shape = 3: must be "geodesic", "ball", "prism", "antiprism", "file" or a solid such as "cube" or "truncated icosahedron"`},
		{name: "broken number for a whole one", line: "count = 12", with: "count = 12.0", kind: design.ErrType,
			want: "bad.toml:5: mounts.count = 12.0: must be a whole number from 0 to 2000; write 12"},
		{name: "date for a number", line: "radius_mm = 100", with: "radius_mm = 2001-02-03", kind: design.ErrType,
			want: "bad.toml:3: body.radius_mm = 2001-02-03: must be a number from 20 to 5000"},
		{name: "number for a table", above: "air = 20\n", kind: design.ErrType,
			want: "bad.toml:1: air = 20: must be a table that begins with [air]"},
		{name: "many tables for one", below: "[[air]]\ntemperature_c = 20\n", kind: design.ErrType,
			want: "bad.toml:12: air = [{…}]: must be a table that begins with [air]"},
		{name: "one table for many", below: "[channel]\ndrivers = [1]\n", kind: design.ErrType,
			want: "bad.toml:12: channel = {…}: must be tables that begin with [[channel]]"},
		{name: "numbers for channels", above: "channel = [1, 2]\n", kind: design.ErrType,
			want: "bad.toml:1: channel[1] = 1: must be a table that begins with [[channel]]"},
		{name: "text for a list", line: "count = 12", with: "count = 12\nskip = \"3\"", kind: design.ErrType,
			want: `bad.toml:6: mounts.skip = "3": must be whole numbers from 1 to 10000 in square brackets, none twice; write [3], without quotes`},
		{name: "text in a list", line: "count = 12", with: "count = 12\nskip = [1, \"3\"]", kind: design.ErrType,
			want: `bad.toml:6: mounts.skip = [1, "3"]: must be whole numbers from 1 to 10000 in square brackets, none twice; write [1, 3]`},
		{name: "number for a flag", below: "[[channel]]\ndrivers = [1]\ninvert = 1\n", kind: design.ErrType,
			want: "bad.toml:14: channel[1].invert = 1: must be true or false; write true"},

		{name: "no shape", line: `shape = "ball"`, with: "", kind: design.ErrMissing,
			want: `bad.toml:1: body.shape: missing; must be "geodesic", "ball", "prism", "antiprism", "file" or a solid such as "cube" or "truncated icosahedron"`},
		{name: "no radius", line: "radius_mm = 100", with: "", kind: design.ErrMissing,
			want: "bad.toml:1: body.radius_mm: missing; must be a number from 20 to 5000"},
		{name: "no diameter", line: "diameter_mm = 30", with: "", kind: design.ErrMissing,
			want: "bad.toml:6: driver.diameter_mm: missing; must be a number from 5 to 500"},
		{name: "no spot", line: "[spot]\nx_m = 2\ny_m = 0\nz_m = 1", with: "", kind: design.ErrMissing,
			want: "bad.toml: spot.x_m: missing; must be a number from -100 to 100"},
		{name: "no drivers in a channel", below: "[[channel]]\ngain_db = 1\n", kind: design.ErrMissing,
			want: "bad.toml:12: channel[1].drivers: missing; must be whole numbers from 1 to 10000 in square brackets, none twice"},
		{name: "no count for even", line: "count = 12", with: "", kind: design.ErrMissing,
			want: "bad.toml:4: mounts.count: missing; must be from 1 to 2000 where mounts are even"},
		{name: "no list", line: "count = 12", with: `on = "list"`, kind: design.ErrMissing,
			want: "bad.toml:4: mounts.list: missing; must be the name of a CSV file of points and normals"},

		{name: "negative radius", line: "radius_mm = 100", with: "radius_mm = -3", kind: design.ErrRange,
			want: "bad.toml:3: body.radius_mm = -3: must be from 20 to 5000"},
		{name: "radius zero", line: "radius_mm = 100", with: "radius_mm = 0", kind: design.ErrRange,
			want: "bad.toml:3: body.radius_mm = 0: must be from 20 to 5000"},
		{name: "radius not a number", line: "radius_mm = 100", with: "radius_mm = nan", kind: design.ErrRange,
			want: "bad.toml:3: body.radius_mm = nan: must be from 20 to 5000"},
		{name: "radius without end", line: "radius_mm = 100", with: "radius_mm = inf", kind: design.ErrRange,
			want: "bad.toml:3: body.radius_mm = inf: must be from 20 to 5000"},
		{name: "spot without end", line: "x_m = 2", with: "x_m = -inf", kind: design.ErrRange,
			want: "bad.toml:9: spot.x_m = -inf: must be from -100 to 100"},
		{name: "absurd diameter", line: "diameter_mm = 30", with: "diameter_mm = 3e300", kind: design.ErrRange,
			want: "bad.toml:7: driver.diameter_mm = 3e300: must be from 5 to 500"},
		{name: "shape unheard of", line: `shape = "ball"`, with: `shape = "egg"`, kind: design.ErrRange,
			want: `bad.toml:2: body.shape = "egg": must be "geodesic", "ball", "prism", "antiprism", "file" or a solid such as "cube" or "truncated icosahedron"`},
		{name: "too many mounts", line: "count = 12", with: "count = 5000", kind: design.ErrRange,
			want: "bad.toml:5: mounts.count = 5000: must be from 0 to 2000"},
		{name: "no mounts", line: "count = 12", with: "count = 0", kind: design.ErrRange,
			want: "bad.toml:5: mounts.count = 0: must be from 1 to 2000 where mounts are even"},
		{name: "skipped mount zero", line: "count = 12", with: "count = 12\nskip = [\n1,\n0,\n]", kind: design.ErrRange,
			want: "bad.toml:6: mounts.skip = [1, 0]: must be whole numbers from 1 to 10000 in square brackets, none twice"},
		{name: "skipped twice", line: "count = 12", with: "count = 12\nskip = [4, 4]", kind: design.ErrRange,
			want: "bad.toml:6: mounts.skip = [4, 4]: must be whole numbers from 1 to 10000 in square brackets, none twice"},
		{name: "name on two lines", above: `name = "a\nb"` + "\n", kind: design.ErrRange,
			want: `bad.toml:1: name = "a\nb": must be 1 to 120 letters on one line`},
		{name: "name empty", above: `name = ""` + "\n", kind: design.ErrRange,
			want: `bad.toml:1: name = "": must be 1 to 120 letters on one line`},
		{name: "model unheard of", below: "[timing]\nmodel = \"magic\"\n", kind: design.ErrRange,
			want: `bad.toml:13: timing.model = "magic": must be "sphere", "point", "baffle" or "body"`},
		{name: "second channel too loud", below: "[[channel]]\ndrivers = [1]\n\n[[channel]]\ndrivers = [2]\ngain_db = 40\n", kind: design.ErrRange,
			want: "bad.toml:17: channel[2].gain_db = 40: must be from -60 to 12"},
		{name: "inline channel too late", above: "channel = [{drivers = [1]},\n {drivers = [2], delay_us = 1e9}]\n", kind: design.ErrRange,
			want: "bad.toml:2: channel[2].delay_us = 1e9: must be from 0 to 1000000"},
		{name: "dotted key", above: "air.temperature_c = 80\n", kind: design.ErrRange,
			want: "bad.toml:1: air.temperature_c = 80: must be from -20 to 50"},
		{name: "the first of several", line: "radius_mm = 100", with: "wall_mm = 0\nradius_mm = 1\nx = 1", kind: design.ErrRange,
			want: "bad.toml:3: body.wall_mm = 0: must be from 0.4 to 100"},

		{name: "field band beyond hearing", below: "[timing]\nfield_high_hz = 30000\n", kind: design.ErrRange,
			want: "bad.toml:13: timing.field_high_hz = 30000: must be from 50 to 20000"},
		{name: "resonance too low", line: "diameter_mm = 30", with: "diameter_mm = 30\nresonance_hz = 0", kind: design.ErrRange,
			want: "bad.toml:8: driver.resonance_hz = 0: must be from 20 to 20000"},
		{name: "resonance that rings for ever", line: "diameter_mm = 30", with: "diameter_mm = 30\nresonance_hz = 90\nresonance_q = 11", kind: design.ErrRange,
			want: "bad.toml:9: driver.resonance_q = 11: must be from 0.2 to 10"},
		{name: "response without a name", line: "diameter_mm = 30", with: "diameter_mm = 30\nresponse = \"\"", kind: design.ErrRange,
			want: `bad.toml:8: driver.response = "": must be 1 to 1000 letters on one line`},
		{name: "amplifier that is off", below: "[wiring]\namplifier_volt = 0\n", kind: design.ErrRange,
			want: "bad.toml:13: wiring.amplifier_volt = 0: must be from 0.1 to 200"},
		{name: "no smear at all", below: "[coverage]\nsmear_limit_us = 0\n", kind: design.ErrRange,
			want: "bad.toml:13: coverage.smear_limit_us = 0: must be from 1 to 10000"},
		{name: "surface that sounds", below: "[surface]\nabsorption = -0.1\n", kind: design.ErrRange,
			want: "bad.toml:13: surface.absorption = -0.1: must be from 0 to 1, or seven such numbers in square brackets for the octaves from 125 Hz to 8 kHz"},
		{name: "six octaves", below: "[surface]\nabsorption = [0, 0, 0, 0, 0, 0]\n", kind: design.ErrRange,
			want: "bad.toml:13: surface.absorption = [0, 0, 0, 0, 0, 0]: must be from 0 to 1, or seven such numbers in square brackets for the octaves from 125 Hz to 8 kHz"},
		{name: "octave out of range", below: "[surface]\nabsorption = [0, 0, 0, 0, 0, 0, nan]\n", kind: design.ErrRange,
			want: "bad.toml:13: surface.absorption = [0, 0, 0, 0, 0, 0, nan]: must be from 0 to 1, or seven such numbers in square brackets for the octaves from 125 Hz to 8 kHz"},
		{name: "text for an octave", below: "[surface]\nabsorption = [0, 0, 0, 0, 0, 0, \"1\"]\n", kind: design.ErrType,
			want: `bad.toml:13: surface.absorption = [0, 0, 0, 0, 0, 0, "1"]: must be a number from 0 to 1, or seven such numbers in square brackets for the octaves from 125 Hz to 8 kHz; write [0, 0, 0, 0, 0, 0, 1]`},
		{name: "text for octaves", below: "[surface]\nabsorption = \"wood\"\n", kind: design.ErrType,
			want: `bad.toml:13: surface.absorption = "wood": must be a number from 0 to 1, or seven such numbers in square brackets for the octaves from 125 Hz to 8 kHz`},
		{name: "number for a surface", above: "surface = 1\n", kind: design.ErrType,
			want: "bad.toml:1: surface = 1: must be a table that begins with [surface]"},
		{name: "key of two tables", line: "radius_mm = 100", with: "radius_mm = 100\nabsorption = 0.1", kind: design.ErrUnknownKey,
			want: "bad.toml:4: body.absorption: not a known key here; it belongs in [surface] or [room]"},
		{name: "number for a room", above: "room = 1\n", kind: design.ErrType,
			want: "bad.toml:1: room = 1: must be a table that begins with [room]"},
		{name: "room without a size", below: "[room]\nbody_at_m = [1, 1, 1]\nabsorption = 0.1\n", kind: design.ErrMissing,
			want: "bad.toml:12: room.size_m: missing; must be three numbers from 1 to 100 in square brackets"},
		{name: "room without a place", below: "[room]\nsize_m = [4, 4, 4]\nabsorption = 0.1\n", kind: design.ErrMissing,
			want: "bad.toml:12: room.body_at_m: missing; must be three numbers from 0 to 100 in square brackets"},
		{name: "room without an absorption", below: "[room]\nsize_m = [4, 4, 4]\nbody_at_m = [1, 1, 1]\n", kind: design.ErrMissing,
			want: "bad.toml:12: room.absorption: missing; must be a number from 0 to 1, or seven such numbers in square brackets for the octaves from 125 Hz to 8 kHz"},
		{name: "room of two numbers", below: box("size_m = [4, 4]", "body_at_m = [1, 1, 1]"), kind: design.ErrRange,
			want: "bad.toml:14: room.size_m = [4, 4]: must be three numbers from 1 to 100 in square brackets"},
		{name: "room without walls", below: box("size_m = [4, 4, inf]", "body_at_m = [1, 1, 1]"), kind: design.ErrRange,
			want: "bad.toml:14: room.size_m = [4, 4, inf]: must be three numbers from 1 to 100 in square brackets"},
		{name: "number for a size", below: box("size_m = 4", "body_at_m = [1, 1, 1]"), kind: design.ErrType,
			want: "bad.toml:14: room.size_m = 4: must be three numbers from 1 to 100 in square brackets"},
		{name: "wall that sounds", below: box("size_m = [4, 4, 4]", "body_at_m = [1, 1, 1]", "floor_absorption = 1.1"), kind: design.ErrRange,
			want: "bad.toml:16: room.floor_absorption = 1.1: must be from 0 to 1, or seven such numbers in square brackets for the octaves from 125 Hz to 8 kHz"},
		{name: "too many walls", below: box("size_m = [4, 4, 4]", "body_at_m = [1, 1, 1]", "order = 11"), kind: design.ErrRange,
			want: "bad.toml:16: room.order = 11: must be from 0 to 10"},

		{name: "woofer without a crossover", below: woofer("x_m = 0"), kind: design.ErrMissing,
			want: "bad.toml:12: woofer.crossover_hz: missing; must be a number from 40 to 2000"},
		{name: "crossover above the woofer", below: woofer("x_m = 0", "crossover_hz = 2001"), kind: design.ErrRange,
			want: "bad.toml:16: woofer.crossover_hz = 2001: must be from 40 to 2000"},
		{name: "order that no such filter has", below: woofer("x_m = 0", "crossover_hz = 300", "order = 3"), kind: design.ErrRange,
			want: "bad.toml:17: woofer.order = 3: must be 2, 4 or 8"},
		{name: "order in quotes", below: woofer("x_m = 0", "crossover_hz = 300", "order = \"4\""), kind: design.ErrType,
			want: `bad.toml:17: woofer.order = "4": must be 2, 4 or 8; write 4, without quotes`},
		{name: "woofer at the spot", below: woofer("x_m = 1.95", "crossover_hz = 300"), kind: design.ErrConflict,
			want: "bad.toml:15: woofer.x_m = 1.95: must be such that the woofer is 0.1 m or more from the spot, not 0.05 m"},
		{name: "woofer in the next room", below: woofer("x_m = 3.5", "crossover_hz = 300") + box("size_m = [4, 4, 4]", "body_at_m = [1, 1, 1]"), kind: design.ErrConflict,
			want: "bad.toml:15: woofer.x_m = 3.5: must be from -1 to 3, inside the room"},

		{name: "room and surface", below: box("size_m = [4, 4, 4]", "body_at_m = [1, 1, 1]", "[surface]"), kind: design.ErrConflict,
			want: "bad.toml:16: surface: must be left out where there is a [room]: its floor, walls and ceiling take its place"},
		{name: "body in the back wall", below: box("size_m = [4, 4, 4]", "body_at_m = [0.05, 1, 1]"), kind: design.ErrConflict,
			want: "bad.toml:15: room.body_at_m = [0.05, 1, 1]: must be from 0.1 to 3.9 in x, for the body to be inside the room"},
		{name: "body in the left wall", below: box("size_m = [4, 4.1, 4]", "body_at_m = [1, 4.05, 1]"), kind: design.ErrConflict,
			want: "bad.toml:15: room.body_at_m = [1, 4.05, 1]: must be from 0.1 to 4 in y, for the body to be inside the room"},
		{name: "body in the floor", below: box("size_m = [4, 4, 4]", "body_at_m = [1, 1, 0]"), kind: design.ErrConflict,
			want: "bad.toml:15: room.body_at_m = [1, 1, 0]: must be from 0.1 to 3.9 in z, for the body to be inside the room"},
		{name: "cut body in the floor", line: "radius_mm = 100", with: "radius_mm = 100\ncut_height_mm = -40", below: box("size_m = [4, 4, 4]", "body_at_m = [1, 1, 0.03]"), kind: design.ErrConflict,
			want: "bad.toml:16: room.body_at_m = [1, 1, 0.03]: must be from 0.04 to 3.9 in z, for the body to be inside the room"},
		{name: "body larger than the room", line: "radius_mm = 100", with: "radius_mm = 800", below: box("size_m = [4, 4, 1.5]", "body_at_m = [1, 1, 0.5]"), kind: design.ErrConflict,
			want: "bad.toml:14: room.size_m = [4, 4, 1.5]: must be at least 1.6 in z, for the body to fit in"},
		{name: "spot in the next room", below: box("size_m = [2.5, 4, 4]", "body_at_m = [1, 1, 1]"), kind: design.ErrConflict,
			want: "bad.toml:9: spot.x_m = 2: must be from -1 to 1.5, inside the room"},
		{name: "spot above the ceiling", below: box("size_m = [4, 4, 2]", "body_at_m = [1, 1, 1.2]"), kind: design.ErrConflict,
			want: "bad.toml:11: spot.z_m = 1: must be from -1.2 to 0.8, inside the room"},
		{name: "ringing without a resonance", line: "diameter_mm = 30", with: "diameter_mm = 30\nresonance_q = 1", kind: design.ErrConflict,
			want: "bad.toml:8: driver.resonance_q = 1: only with driver.resonance_hz; leave it out"},
		{name: "field band upside down", below: "[timing]\nfield_low_hz = 3000\nfield_high_hz = 2000\n", kind: design.ErrConflict,
			want: "bad.toml:13: timing.field_low_hz = 3000: must be at most two thirds of timing.field_high_hz, 2000"},
		{name: "field band narrow at the default's top", below: "[timing]\nfield_low_hz = 5334\n", kind: design.ErrConflict,
			want: "bad.toml:13: timing.field_low_hz = 5334: must be at most two thirds of timing.field_high_hz, 8000"},
		{name: "field band narrow at the default's bottom", below: "[timing]\nfield_high_hz = 749\n", kind: design.ErrConflict,
			want: "bad.toml:13: timing.field_high_hz = 749: must be at least one and a half times timing.field_low_hz, 500"},
		{name: "base without geodesic", line: `shape = "ball"`, with: "shape = \"ball\"\nbase = \"octahedron\"", kind: design.ErrConflict,
			want: `bad.toml:3: body.base: only for body.shape = "geodesic"; leave it out`},
		{name: "cut above the body", line: "radius_mm = 100", with: "radius_mm = 100\ncut_height_mm = 100", kind: design.ErrConflict,
			want: "bad.toml:4: body.cut_height_mm = 100: must be between -100 and 100, inside body.radius_mm"},
		{name: "wall thicker than the body", line: "radius_mm = 100", with: "radius_mm = 40\nwall_mm = 60", kind: design.ErrConflict,
			want: "bad.toml:4: body.wall_mm = 60: must be less than body.radius_mm, 40"},
		{name: "faces of a ball", line: "count = 12", with: `on = "faces"`, kind: design.ErrConflict,
			want: `bad.toml:5: mounts.on = "faces": must be "even" or "list" for a ball: it has no faces, vertices or edges`},
		{name: "count without even", line: "count = 12", with: "count = 12\non = \"list\"\nlist = \"a.csv\"", kind: design.ErrConflict,
			want: `bad.toml:5: mounts.count = 12: only for mounts.on = "even"; leave it out`},
		{name: "list without list", line: "count = 12", with: "count = 12\nlist = \"a.csv\"", kind: design.ErrConflict,
			want: `bad.toml:6: mounts.list = "a.csv": only for mounts.on = "list"; leave it out`},
		{name: "driver wider than the body", line: "diameter_mm = 30", with: "diameter_mm = 200", kind: design.ErrConflict,
			want: "bad.toml:7: driver.diameter_mm = 200: must be less than the width of the body, 200"},
		{name: "cut-out smaller than the cone", line: "diameter_mm = 30", with: "diameter_mm = 30\ncutout_mm = 20", kind: design.ErrConflict,
			want: "bad.toml:8: driver.cutout_mm = 20: must be at least nine tenths of driver.diameter_mm, 30"},
		{name: "flange smaller than the cut-out", line: "diameter_mm = 30", with: "diameter_mm = 30\nflange_mm = 29", kind: design.ErrConflict,
			want: "bad.toml:8: driver.flange_mm = 29: must be at least driver.cutout_mm, 30"},
		{name: "flange wider than the body", line: "diameter_mm = 30", with: "diameter_mm = 30\nflange_mm = 300", kind: design.ErrConflict,
			want: "bad.toml:8: driver.flange_mm = 300: must be less than the width of the body, 200"},
		{name: "resistance over impedance", line: "diameter_mm = 30", with: "diameter_mm = 30\ndc_ohm = 16", kind: design.ErrConflict,
			want: "bad.toml:8: driver.dc_ohm = 16: must be from 0.3 to 1.25 times driver.nominal_ohm, 8"},
		{name: "high-pass that does not exist", below: "[protection]\nfamily = \"linkwitz-riley\"\norder = 3\n", kind: design.ErrConflict,
			want: `bad.toml:14: protection.order = 3: must be 2, 4, 6 or 8 for protection.family = "linkwitz-riley"`},
		{name: "high-pass above half the rate", below: "[processor]\nrate_hz = 8000\n[protection]\ncorner_hz = 4500\n", kind: design.ErrConflict,
			want: `bad.toml:13: processor.rate_hz = 8000: must be above 9000, twice protection.corner_hz`},
		{name: "high-pass at half the rate", below: "[processor]\nrate_hz = 8000\n[protection]\ncorner_hz = 4000\n", kind: design.ErrConflict,
			want: `bad.toml:13: processor.rate_hz = 8000: must be above 8000, twice protection.corner_hz`},
		{name: "channels twice over", below: "[wiring]\nchannels = 2\n[[channel]]\ndrivers = [1]\n", kind: design.ErrConflict,
			want: "bad.toml:13: wiring.channels = 2: must be left out where there are [[channel]] tables"},
		{name: "watts into nothing", below: "[wiring]\namplifier_w = 50\n", kind: design.ErrMissing,
			want: "bad.toml:13: wiring.amplifier_into_ohm: missing; must be the load that wiring.amplifier_w is for, such as 4 or 8: see the amplifier's data"},
		{name: "a load without watts", below: "[wiring]\namplifier_into_ohm = 4\n", kind: design.ErrConflict,
			want: "bad.toml:13: wiring.amplifier_into_ohm = 4: only with wiring.amplifier_w; give the watts, or leave it out"},
		{name: "watts and volts that all but agree", below: "[wiring]\namplifier_w = 50\namplifier_into_ohm = 4\namplifier_volt = 14.32\n", kind: design.ErrConflict,
			want: "bad.toml:15: wiring.amplifier_volt = 14.32: must be left out, or 14.1: 50 W into 4 ohm are that many volts"},
		{name: "watts and volts that disagree", below: "[wiring]\namplifier_w = 50\namplifier_into_ohm = 4\namplifier_volt = 20\n", kind: design.ErrConflict,
			want: "bad.toml:15: wiring.amplifier_volt = 20: must be left out, or 14.1: 50 W into 4 ohm are that many volts"},
		{name: "far too many watts", below: "[wiring]\namplifier_w = 5000\namplifier_into_ohm = 16\n", kind: design.ErrConflict,
			want: "bad.toml:13: wiring.amplifier_w = 5000: must be such that it comes to 0.1 to 200 V; into 16 ohm it is 283 V"},
		{name: "watts for less than the load allowed", below: "[wiring]\namplifier_w = 50\namplifier_into_ohm = 4\nminimum_load_ohm = 8\n", kind: design.ErrConflict,
			want: "bad.toml:15: wiring.minimum_load_ohm = 8: must be at most wiring.amplifier_into_ohm, 4: an amplifier bears the load that its watts are for"},
		{name: "channel with nothing", below: "[[channel]]\ndrivers = []\n", kind: design.ErrConflict,
			want: "bad.toml:13: channel[1].drivers = []: must be at least one mount number"},
		{name: "driver in two channels", below: "[[channel]]\ndrivers = [1, 2]\n[[channel]]\ndrivers = [3, 2]\n", kind: design.ErrConflict,
			want: "bad.toml:15: channel[2].drivers: driver 2 is in channel 1 already; must be in one only"},
		{name: "driver that is skipped", line: "count = 12", with: "count = 12\nskip = [3]", below: "[[channel]]\ndrivers = [1, 3]\n", kind: design.ErrConflict,
			want: "bad.toml:14: channel[1].drivers: driver 3 is in mounts.skip; must be a mount that has a driver"},
		{name: "spot in the body", line: "x_m = 2\ny_m = 0\nz_m = 1", with: "x_m = 0.03\ny_m = 0\nz_m = 0.04", kind: design.ErrConflict,
			want: "bad.toml:9: spot.x_m = 0.03: the spot is 0.05 m from the body's centre and so inside the body; must be further than body.radius_mm, 100 mm"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			text := least
			if c.line != "" {
				if !strings.Contains(text, c.line) {
					t.Fatalf("no line %q", c.line)
				}
				text = strings.Replace(text, c.line, c.with, 1)
			}
			d, err := design.Parse("bad.toml", []byte(c.above+text+c.below))
			if err == nil {
				t.Fatalf("no error; %+v", d)
			}
			if !errors.Is(err, c.kind) {
				t.Errorf("kind %v, want %v", errors.Unwrap(err), c.kind)
			}
			if got := err.Error(); got != c.want {
				t.Errorf("\n got %s\nwant %s", got, c.want)
			}
		})
	}
}

// woofer gives a woofer as high as the spot, with a few lines more.
func woofer(lines ...string) string {
	return "[woofer]\ny_m = 0\nz_m = 1\n" + strings.Join(lines, "\n") + "\n"
}

// box gives a room of a few lines, with walls like any others.
func box(lines ...string) string {
	return "[room]\nabsorption = 0.1\n" + strings.Join(lines, "\n") + "\n"
}

func TestSize(t *testing.T) {
	_, err := design.Parse("big.toml", []byte(least+strings.Repeat("#", 1<<20)))
	if want := "big.toml: too large; must be at most 1048576 bytes"; !errors.Is(err, design.ErrRange) || err.Error() != want {
		t.Errorf("got %v, want %s", err, want)
	}
}

// Long names in long files must not cost their product in time or memory.
func TestLongNames(t *testing.T) {
	for name, text := range map[string]string{
		"deep":   strings.Repeat("a.", 1<<18) + "a = 1",
		"table":  "[" + strings.Repeat("b", 1<<19) + "]\n" + manyKeys(1<<18),
		"nested": "a = " + strings.Repeat("[", 9000) + strings.Repeat("]", 9000),
	} {
		_, err := design.Parse("long.toml", []byte(text))
		if err == nil || len(err.Error()) > 500 {
			t.Errorf("%s: %.600v", name, err)
		}
	}
}

func manyKeys(size int) string {
	var b strings.Builder
	for i := 0; b.Len() < size; i++ {
		b.WriteString("k" + strings.Repeat("x", i%7) + string(rune('a'+i%26)) + "_" + strings.Repeat("y", i/182%40) + strings.Repeat("z", i/7280) + " = 1\n")
	}
	return b.String()
}

func TestRead(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "a.toml")
	if err := os.WriteFile(path, []byte(least), 0o600); err != nil {
		t.Fatal(err)
	}
	d, err := design.Read(path)
	if err != nil {
		t.Fatal(err)
	}
	if d.Path != path {
		t.Errorf("path %q", d.Path)
	}
	none := filepath.Join(dir, "none.toml")
	_, err = design.Read(none)
	if want := none + ": there is no such file"; !errors.Is(err, fs.ErrNotExist) || err.Error() != want {
		t.Errorf("got %v, want %s", err, want)
	}
	var e *design.Error
	if _, err = design.Read(dir); !errors.As(err, &e) || strings.Contains(err.Error(), "\n") {
		t.Errorf("a folder: %v", err)
	}
}

func TestBuiltIn(t *testing.T) {
	d := design.Default()
	if got, want := d.Name, "Lantern for the story corner"; got != want {
		t.Errorf("name %q, want %q", got, want)
	}
	s, err := design.Parse("lantern.toml", design.DefaultTOML())
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(d, s); diff != "" {
		t.Error(diff)
	}
	if want := (design.Timing{Model: "sphere", SolveTo: 4000, DelaysBy: "field", FieldLow: 500, FieldHigh: 8000}); d.Timing != want {
		t.Errorf("timing %+v, want %+v", d.Timing, want)
	}
	if !d.Surface.Present || d.Surface.Absorption[3] != 0.1 || d.Room.Present {
		t.Errorf("surface %+v, room %+v", d.Surface, d.Room)
	}
	design.DefaultTOML()[0] = '!' // the caller's copy alone
	if diff := cmp.Diff(d, design.Default()); diff != "" {
		t.Error(diff)
	}
}

// Whatever stands on the line of a number, the message names that line.
func TestLineOfFault(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		gap := rapid.SliceOfN(rapid.SampledFrom([]string{"\n", "# note\n", "\t \n", "\r\n", "# [body]\n"}), 0, 20).Draw(t, "lines above")
		above := strings.Join(gap, "")
		v := rapid.Float64().Filter(func(v float64) bool { return !(v >= 20 && v <= 5000) }).Draw(t, "value")
		text := above + strings.Replace(least, "radius_mm = 100", "radius_mm = "+asTOML(v), 1)
		_, err := design.Parse("a.toml", []byte(text))
		var e *design.Error
		if !errors.As(err, &e) || e.Line != 3+len(gap) || e.Key != "body.radius_mm" || !errors.Is(err, design.ErrRange) {
			t.Fatalf("%v; want line %d", err, 3+len(gap))
		}
	})
}
