package design

import "slices"

// The words that a design may use.
var (
	solids = []string{"tetrahedron", "cube", "octahedron", "dodecahedron", "icosahedron"}
	halves = []string{
		"truncated tetrahedron", "cuboctahedron", "truncated cube", "truncated octahedron", "rhombicuboctahedron",
		"truncated cuboctahedron", "snub cube", "icosidodecahedron", "truncated dodecahedron", "truncated icosahedron",
		"rhombicosidodecahedron", "truncated icosidodecahedron", "snub dodecahedron",
	}
	bases  = []string{"icosahedron", "octahedron", "tetrahedron"}
	places = []string{"faces", "vertices", "edges", "even", "list"}
	models = []string{sphere, point, "baffle"}
	ways   = []string{"path", "field", straight}
	splits = []string{"arrival", "neighbours", "height"}
	// The families of high-passes, by the names that the trade has for them.
	families = []string{"butterworth", linkwitz, "bessel"}
	walls    = []string{"back", "front", "right", "left", "floor", "ceiling"}
)

const (
	geodesic = "geodesic"
	ball     = "ball"
	prism    = "prism"
	anti     = "antiprism"
	file     = "file"
	dome     = "dome"
	sphere   = "sphere"
	point    = "point"
	straight = "straight"
)

// linkwitz is the family that is not there in every order; these are those that it
// has.
const linkwitz = "linkwitz-riley"

var (
	linkwitzOrders = []int{2, 4, 8}    // of the crossover to a woofer
	highPassOrders = []int{2, 4, 6, 8} // of the high-pass
)

// MaxDrivers is the most drivers that one design may have.
const MaxDrivers = 2000

// maxNumber is the highest mount number that a design may name: that of the
// finest geodesic's edges.
const maxNumber = 10000

// key is one key of a table. A key without a default is needed.
type key struct {
	name   string
	needed bool
	kind
}

// table is one table of the design file; the nameless one is the top. The keys
// that an optional one needs are needed only where it is there.
type table struct {
	name     string
	optional bool
	keys     []key
}

// tables lists every key of the file but those of [[channel]], with where in
// the design its value goes.
func (d *Design) tables() []table {
	shape := choice(&d.Body.Shape, slices.Concat(solids, halves, []string{geodesic, prism, anti, ball, file}))
	shape.allowed = `"geodesic", "ball", "prism", "antiprism", "file" or a solid such as "cube" or "truncated icosahedron"`
	shape.kindly = shape.allowed
	return []table{
		{"", false, []key{
			{"name", false, text(&d.Name, 120)},
		}},
		{"air", false, []key{
			{"temperature_c", false, number(&d.Air.TemperatureC, -20, 50)},
			{"humidity_percent", false, number(&d.Air.HumidityPercent, 0, 100)},
			{"pressure_kpa", false, number(&d.Air.PressureKPa, 50, 110)},
		}},
		{"body", false, []key{
			{"shape", true, shape},
			{"base", false, choice(&d.Body.Base, bases)},
			{"subdivision", false, whole(&d.Body.Subdivision, 1, 16)},
			{"m", false, whole(&d.Body.M, 1, 16)},
			{"n", false, whole(&d.Body.N, 0, 16)},
			{"sides", false, whole(&d.Body.Sides, 3, 64)},
			{"height_mm", false, number(&d.Body.HeightMM, 10, 10000)},
			{"file", false, text(&d.Body.File, 1000)},
			{"dual", false, flag(&d.Body.Dual)},
			{"radius_mm", true, number(&d.Body.RadiusMM, 20, 5000)},
			{"cut_height_mm", false, number(&d.Body.CutHeightMM, -5000, 5000)},
			{"stand_height_mm", false, number(&d.Body.StandHeightMM, 0, 3000)},
			{"wall_mm", false, number(&d.Body.WallMM, 0.4, 100)},
		}},
		{"mounts", false, []key{
			{"on", false, choice(&d.Mounts.On, places)},
			{"count", false, whole(&d.Mounts.Count, 0, MaxDrivers)},
			{"over", false, choice(&d.Mounts.Over, []string{ball, dome})},
			{"symmetry", false, whole(&d.Mounts.Symmetry, 1, 72)},
			{"list", false, text(&d.Mounts.List, 1000)},
			{"keep_clear_deg", false, zones(&d.Mounts.KeepClear)},
			{"keep_clear_below_deg", false, optional(&d.Mounts.KeepClearBelowDeg, -90, 90)},
			{"skip", false, wholes(&d.Mounts.Skip, 1, maxNumber)},
		}},
		{"driver", false, []key{
			{"diameter_mm", true, number(&d.Driver.DiameterMM, 5, 500)},
			{"cutout_mm", false, number(&d.Driver.CutoutMM, 5, 600)},
			{"flange_mm", false, number(&d.Driver.FlangeMM, 5, 800)},
			{"depth_mm", false, number(&d.Driver.DepthMM, 0, 500)},
			{"nominal_ohm", false, number(&d.Driver.NominalOhm, 1, 1000)},
			{"dc_ohm", false, number(&d.Driver.DCOhm, 0.3, 1000)},
			{"sensitivity_db", false, optional(&d.Driver.SensitivityDB, 50, 120)},
			{"power_w", false, number(&d.Driver.PowerW, 0.05, 2000)},
			{"response", false, text(&d.Driver.Response, 1000)},
			{"resonance_hz", false, number(&d.Driver.ResonanceHz, 20, 20000)},
			{"resonance_q", false, number(&d.Driver.ResonanceQ, 0.2, 10)},
			{"magnet_mm", false, number(&d.Driver.MagnetMM, 1, 500)},
			{"magnet_height_mm", false, number(&d.Driver.MagnetHeightMM, 0, 500)},
			{"terminal_reach_mm", false, number(&d.Driver.TerminalReachMM, 1, 500)},
			{"terminal_front_mm", false, number(&d.Driver.TerminalFrontMM, 0, 500)},
			{"terminal_length_mm", false, number(&d.Driver.TerminalLengthMM, 0, 200)},
			{"screw_mm", false, number(&d.Driver.ScrewMM, 0.5, 20)},
			{"fs_hz", false, number(&d.Driver.FsHz, 20, 20000)},
			{"qms", false, number(&d.Driver.Qms, 0.1, 100)},
			{"qes", false, number(&d.Driver.Qes, 0.05, 100)},
			{"vas_l", false, number(&d.Driver.VasL, 0.0001, 10000)},
			{"bl_tm", false, number(&d.Driver.BLTM, 0.05, 100)},
			{"mms_g", false, number(&d.Driver.MmsG, 0.01, 1000)},
			{"sd_cm2", false, number(&d.Driver.SdCM2, 0.1, 2000)},
			{"le_mh", false, number(&d.Driver.LeMH, 0, 10)},
			{"xmax_mm", false, number(&d.Driver.XmaxMM, 0.05, 50)},
			{"impedance", false, text(&d.Driver.Impedance, 1000)},
		}},
		{"fit", false, []key{
			{"apart_mm", false, number(&d.Fit.ApartMM, 0, 100)},
			{"edge_mm", false, number(&d.Fit.EdgeMM, 0, 100)},
		}},
		{"box", false, []key{
			{"braces_l", false, number(&d.Box.BracesL, 0, 1000)},
			{"target_q", false, number(&d.Box.TargetQ, 0.5, 3)},
			{"vent_hole_mm", false, number(&d.Box.VentHoleMM, 0.5, 200)},
			{"vent_holes", false, whole(&d.Box.VentHoles, 1, 1000)},
			{"stuffing_kg_m3", false, number(&d.Box.StuffingKgM3, 0, 50)},
		}},
		{"print", false, []key{
			{"bed_mm", false, three(&d.Print.BedMM, 10, 5000)},
			{"margin_mm", false, number(&d.Print.MarginMM, 0, 100)},
			{"density_kg_m3", false, number(&d.Print.DensityKgM3, 50, 20000)},
		}},
		{"timing", false, []key{
			{"model", false, choice(&d.Timing.Model, models)},
			{"delays_by", false, choice(&d.Timing.DelaysBy, ways)},
			{"field_low_hz", false, number(&d.Timing.FieldLowHz, 50, 20000)},
			{"field_high_hz", false, number(&d.Timing.FieldHighHz, 50, 20000)},
		}},
		{"wiring", false, []key{
			{"channels", false, whole(&d.Wiring.Channels, 0, MaxDrivers)},
			{"minimum_load_ohm", false, number(&d.Wiring.MinimumLoadOhm, 0.5, 100)},
			{"amplifier_volt", false, number(&d.Wiring.AmplifierVolt, 0.1, 200)},
			{"split", false, choice(&d.Wiring.Split, splits)},
			{"longest_string", false, whole(&d.Wiring.LongestString, 1, MaxDrivers)},
			{"wire_m", false, number(&d.Wiring.WireM, 0, 1000)},
			{"wire_mm2", false, number(&d.Wiring.WireMM2, 0.05, 50)},
		}},
		{"protection", false, []key{
			{"family", false, choice(&d.Protection.Family, families)},
			{"order", false, whole(&d.Protection.Order, 1, 8)},
			{"corner_hz", false, number(&d.Protection.CornerHz, 10, 5000)},
		}},
		{"processor", false, []key{
			{"rate_hz", false, number(&d.Processor.RateHz, 8000, 384000)},
			{"step_us", false, number(&d.Processor.StepUS, 0.1, 10000)},
		}},
		{"spot", false, []key{
			{"x_m", true, number(&d.Spot.XM, -100, 100)},
			{"y_m", true, number(&d.Spot.YM, -100, 100)},
			{"z_m", true, number(&d.Spot.ZM, -100, 100)},
		}},
		{"surface", true, []key{
			{"absorption", false, octaves(&d.Surface.Absorption, 0, 1)},
		}},
		{"room", true, append([]key{
			{"size_m", true, three(&d.Room.SizeM, 1, 100)},
			{"body_at_m", true, three(&d.Room.BodyAtM, 0, 100)},
			{"absorption", true, everywhere(&d.Room.Absorption, 0, 1)},
			{"order", false, whole(&d.Room.Order, 0, 10)},
		}, d.Room.walls()...)},
		{"woofer", true, []key{
			{"x_m", true, number(&d.Woofer.XM, -100, 100)},
			{"y_m", true, number(&d.Woofer.YM, -100, 100)},
			{"z_m", true, number(&d.Woofer.ZM, -100, 100)},
			{"crossover_hz", true, number(&d.Woofer.CrossoverHz, 40, 2000)},
			{"order", false, wholeOf(&d.Woofer.Order, linkwitzOrders...)},
			{"sensitivity_db", false, optional(&d.Woofer.SensitivityDB, 50, 120)},
			{"gain_db", false, number(&d.Woofer.GainDB, -40, 20)},
			{"invert", false, flag(&d.Woofer.Invert)},
		}},
		{"coverage", false, []key{
			{"half_width_m", false, number(&d.Coverage.HalfWidthM, 0.2, 100)},
			{"cells", false, whole(&d.Coverage.Cells, 8, 512)},
			{"smear_limit_us", false, number(&d.Coverage.SmearLimitUS, 1, 10000)},
		}},
	}
}

// walls lists the keys for walls that are not like the others. They come after
// the one for all walls, which they override.
func (r *Room) walls() []key {
	keys := make([]key, len(walls))
	for i, name := range walls {
		keys[i] = key{name + "_absorption", false, octaves(&r.Absorption[i], 0, 1)}
	}
	return keys
}

// keys lists the keys of one [[channel]].
func (c *Channel) keys() []key {
	return []key{
		{"drivers", true, wholes(&c.Drivers, 1, maxNumber)},
		{"gain_db", false, number(&c.GainDB, -60, 12)},
		{"invert", false, flag(&c.Invert)},
		{"delay_us", false, optional(&c.DelayUS, 0, 1e6)},
	}
}

// defaults gives a design before anything is read into it. Defaults that hang
// on other values are filled in afterwards, by fill.
func defaults() *Design {
	return &Design{
		Name:       "Unnamed array",
		Air:        Air{TemperatureC: 20, HumidityPercent: 50, PressureKPa: 101.325},
		Body:       Body{WallMM: 3},
		Fit:        Fit{ApartMM: 1},
		Driver:     Driver{NominalOhm: 8, PowerW: 1, ResonanceQ: 0.707},
		Timing:     Timing{Model: sphere, DelaysBy: "field", FieldLowHz: 500, FieldHighHz: 8000},
		Wiring:     Wiring{MinimumLoadOhm: 4, AmplifierVolt: 2.83, Split: "arrival", WireMM2: 0.75},
		Protection: Protection{Family: "butterworth", Order: 4},
		Processor:  Processor{RateHz: 48000},
		Room:       Room{Order: 3},
		Woofer:     Woofer{Order: 4},
		Box:        Box{TargetQ: 0.707, VentHoleMM: 8, VentHoles: 6, StuffingKgM3: 10},
		Print:      Print{BedMM: [3]float64{220, 220, 250}, MarginMM: 1, DensityKgM3: 1240},
		Coverage:   Coverage{Cells: 64, SmearLimitUS: 100},
	}
}
