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
	linkwitz = "linkwitz-riley" // the family that is not there in every order
)

// The orders that Linkwitz-Riley filters have.
var (
	linkwitzOrders = []int{2, 4, 8}    // of the crossover to a woofer
	highPassOrders = []int{2, 4, 6, 8} // of the high-pass
)

// The RMS voltages that an amplifier may have.
const leastVolt, mostVolt = 0.1, 200.0

// MaxDrivers is the most drivers that one design may have.
const MaxDrivers = 2000

// maxNumber is the highest mount number that a design may name: that of the
// finest geodesic's edges.
const maxNumber = 10000

// shapes are too many for a sentence, which names the groups of them.
var shapes = Limits{
	words: slices.Concat([]string{geodesic, ball}, solids, halves, []string{prism, anti, file}),
	Says:  `"geodesic", "ball", "prism", "antiprism", "file" or a solid such as "cube" or "truncated icosahedron"`,
}

// tables is the table of keys: one row for each key of the file, in the order of the
// file. All else that is said of a key follows from its row, but for the remark, which is
// the starter's (lantern.toml).
func (d *Design) tables() []Table {
	return []Table{
		{Name: "", Rows: []Row{
			{"name", &d.Name, Letters(120), "Unnamed array", ""},
		}},
		{Name: "air", Rows: []Row{
			{"temperature_c", &d.Air.TemperatureC, From(-20, 50), 20.0, ""},
			{"humidity_percent", &d.Air.HumidityPercent, From(0, 100), 50.0, ""},
			{"pressure_kpa", &d.Air.PressureKPa, From(50, 110), 101.325, "air pressure"},
		}},
		{Name: "body", Rows: []Row{
			{"shape", &d.Body.Shape, shapes, needed, ""},
			{"base", &d.Body.Base, among(bases...), nil, "solid to divide"},
			{"subdivision", &d.Body.Subdivision, From(1, 16), nil, "parts of each edge"},
			{"m", &d.Body.M, From(1, 16), nil, "steps along an edge"},
			{"n", &d.Body.N, From(0, 16), nil, "steps to the side"},
			{"sides", &d.Body.Sides, From(3, 64), nil, ""},
			{"height_mm", &d.Body.HeightMM, From(10, 10000), nil, "height"},
			{"file", &d.Body.File, Letters(1000), nil, "file of the shape"},
			{"dual", &d.Body.Dual, Limits{}, nil, "faces for corners"},
			{"radius_mm", &d.Body.RadiusMM, From(20, 5000), needed, ""},
			{"cut_height_mm", cut{&d.Body}, From(-5000, 5000), nil, "cut at height"},
			{"stand_height_mm", &d.Body.StandHeightMM, From(0, 3000), nil, "gap to the table"},
			{"wall_mm", &d.Body.WallMM, From(0.4, 100), 3.0, "shell thickness"},
		}},
		{Name: "mounts", Rows: []Row{
			{"on", &d.Mounts.On, among(places...), nil, "drivers sit on"},
			{"count", &d.Mounts.Count, From(0, MaxDrivers), nil, "how many"},
			{"over", &d.Mounts.Over, among(ball, dome), nil, "spread over"},
			{"symmetry", &d.Mounts.Symmetry, From(1, 72), nil, "turns that change nothing"},
			{"list", &d.Mounts.List, Letters(1000), nil, "file of places"},
			{"keep_clear_deg", &d.Mounts.KeepClear, From(-360, 360), nil, "zones kept clear"},
			{"keep_clear_below_deg", &d.Mounts.KeepClearBelowDeg, From(-90, 90), nil, "none lower than"},
			{"skip", &d.Mounts.Skip, From(1, maxNumber), nil, "places left empty"},
		}},
		{Name: "driver", Rows: []Row{
			{"diameter_mm", &d.Driver.DiameterMM, From(5, 500), needed, "cone, across"},
			{"cutout_mm", &d.Driver.CutoutMM, From(5, 600), nil, "hole in the shell"},
			{"flange_mm", &d.Driver.FlangeMM, From(5, 800), nil, "flange, across"},
			{"depth_mm", &d.Driver.DepthMM, From(0, 500), nil, "depth behind the flange"},
			{"nominal_ohm", &d.Driver.NominalOhm, From(1, 1000), 8.0, "nominal impedance"},
			{"dc_ohm", &d.Driver.DCOhm, From(0.3, 1000), nil, "DC resistance"},
			{"sensitivity_db", &d.Driver.SensitivityDB, From(50, 120), nil, ""},
			{"power_w", &d.Driver.PowerW, From(0.05, 2000), 1.0, "long-term power"},
			{"response", &d.Driver.Response, Letters(1000), nil, "file of its response"},
			{"resonance_hz", &d.Driver.ResonanceHz, From(20, 20000), nil, "resonance in the body"},
			{"resonance_q", &d.Driver.ResonanceQ, From(0.2, 10), 0.707, "Q in the body"},
			{"magnet_mm", &d.Driver.MagnetMM, From(1, 500), nil, "magnet, across"},
			{"magnet_height_mm", &d.Driver.MagnetHeightMM, From(0, 500), nil, ""},
			{"terminal_reach_mm", &d.Driver.TerminalReachMM, From(1, 500), nil, "terminals, from the axis"},
			{"terminal_front_mm", &d.Driver.TerminalFrontMM, From(0, 500), nil, "terminals, from the face"},
			{"terminal_length_mm", &d.Driver.TerminalLengthMM, From(0, 200), nil, "terminals, along the axis"},
			{"screw_mm", &d.Driver.ScrewMM, From(0.5, 20), nil, "screw hole"},
			{"fs_hz", &d.Driver.FsHz, From(20, 20000), nil, "free-air resonance Fs"},
			{"qms", &d.Driver.Qms, From(0.1, 100), nil, "mechanical Q (Qms)"},
			{"qes", &d.Driver.Qes, From(0.05, 100), nil, "electrical Q (Qes)"},
			{"vas_l", &d.Driver.VasL, From(0.0001, 10000), nil, "compliance volume Vas"},
			{"bl_tm", &d.Driver.BLTM, From(0.05, 100), nil, "force factor Bl"},
			{"mms_g", &d.Driver.MmsG, From(0.01, 1000), nil, "moving mass Mms"},
			{"sd_cm2", &d.Driver.SdCM2, From(0.1, 2000), nil, "cone area Sd"},
			{"le_mh", &d.Driver.LeMH, From(0, 10), nil, "coil inductance Le"},
			{"xmax_mm", &d.Driver.XmaxMM, From(0.05, 50), nil, "furthest cone travel Xmax"},
			{"impedance", &d.Driver.Impedance, Letters(1000), nil, "file of its impedance"},
		}},
		{Name: "fit", Rows: []Row{
			{"apart_mm", &d.Fit.ApartMM, From(0, 100), 1.0, "between drivers"},
			{"edge_mm", &d.Fit.EdgeMM, From(0, 100), nil, "to the edge of a face"},
		}},
		{Name: "box", Rows: []Row{
			{"braces_l", &d.Box.BracesL, From(0, 1000), nil, "volume of braces"},
			{"target_q", &d.Box.TargetQ, From(0.5, 3), 0.707, "Q to reach"},
			{"vent_hole_mm", &d.Box.VentHoleMM, From(0.5, 200), 8.0, "vent hole, across"},
			{"vent_holes", &d.Box.VentHoles, From(1, 1000), 6, ""},
			{"stuffing_kg_m3", &d.Box.StuffingKgM3, From(0, 50), 10.0, "stuffing density"},
		}},
		{Name: "print", Rows: []Row{
			{"bed_mm", &d.Print.BedMM, From(10, 5000), []any{220.0, 220.0, 250.0}, "printer's bed"},
			{"margin_mm", &d.Print.MarginMM, From(0, 100), 1.0, "seam to cut-out"},
			{"density_kg_m3", &d.Print.DensityKgM3, From(50, 20000), 1240.0, "density of the material"},
		}},
		{Name: "timing", Rows: []Row{
			{"model", &d.Timing.Model, among(models...), sphere, "model of a driver"},
			{"delays_by", &d.Timing.DelaysBy, among(ways...), "field", ""},
			{"field_low_hz", &d.Timing.FieldLowHz, From(50, 20000), 500.0, "phase fitted from"},
			{"field_high_hz", &d.Timing.FieldHighHz, From(50, 20000), 8000.0, "phase fitted up to"},
		}},
		{Name: "wiring", Rows: []Row{
			{"channels", &d.Wiring.Channels, From(0, MaxDrivers), nil, ""},
			{"minimum_load_ohm", &d.Wiring.MinimumLoadOhm, From(0.5, 100), 4.0, "least load allowed"},
			{"amplifier_w", &d.Wiring.AmplifierW, From(0.1, 5000), nil, "amplifier, as it is sold"},
			{"amplifier_into_ohm", &d.Wiring.AmplifierIntoOhm, From(0.5, 100), nil, "into a load of"},
			{"amplifier_volt", &d.Wiring.AmplifierVolt, From(leastVolt, mostVolt), 2.83, "amplifier output, RMS"},
			{"split", &d.Wiring.Split, among(splits...), "arrival", "drivers shared out by"},
			{"longest_string", &d.Wiring.LongestString, From(1, MaxDrivers), nil, "most drivers in a string"},
			{"wire_m", &d.Wiring.WireM, From(0, 1000), nil, "wire, one way"},
			{"wire_mm2", &d.Wiring.WireMM2, From(0.05, 50), 0.75, "copper, cross-section"},
		}},
		{Name: "protection", Rows: []Row{
			{"family", &d.Protection.Family, among(families...), "butterworth", "kind of high-pass"},
			{"order", &d.Protection.Order, From(1, 8), 4, ""},
			{"corner_hz", &d.Protection.CornerHz, From(10, 5000), nil, "high-pass corner"},
		}},
		{Name: "processor", Rows: []Row{
			{"rate_hz", &d.Processor.RateHz, From(8000, 384000), 48000.0, "sample rate"},
			{"step_us", &d.Processor.StepUS, From(0.1, 10000), nil, "step of the delays"},
		}},
		{Name: "spot", Rows: []Row{
			{"x_m", &d.Spot.XM, From(-100, 100), needed, "forward"},
			{"y_m", &d.Spot.YM, From(-100, 100), needed, "to the loudspeaker's left"},
			{"z_m", &d.Spot.ZM, From(-100, 100), needed, "up"},
		}},
		{Name: "surface", Optional: true, Rows: []Row{
			{"absorption", &d.Surface.Absorption, From(0, 1), nil, ""},
		}},
		{Name: "room", Optional: true, Rows: append([]Row{
			{"size_m", &d.Room.SizeM, From(1, 100), needed, "length, width, height"},
			{"body_at_m", &d.Room.BodyAtM, From(0, 100), needed, "body from the corner"},
			{"absorption", &d.Room.Absorption, From(0, 1), needed, "absorption of all walls"},
			{"order", &d.Room.Order, From(0, 10), 3, "reflections followed"},
		}, d.Room.walls()...)},
		{Name: "woofer", Optional: true, Rows: []Row{
			{"x_m", &d.Woofer.XM, From(-100, 100), needed, "forward"},
			{"y_m", &d.Woofer.YM, From(-100, 100), needed, "to the loudspeaker's left"},
			{"z_m", &d.Woofer.ZM, From(-100, 100), needed, "up"},
			{"crossover_hz", &d.Woofer.CrossoverHz, From(40, 2000), needed, "crossover"},
			{"order", &d.Woofer.Order, either(linkwitzOrders...), 4, ""},
			{"sensitivity_db", &d.Woofer.SensitivityDB, From(50, 120), nil, ""},
			{"gain_db", &d.Woofer.GainDB, From(-40, 20), nil, ""},
			{"invert", &d.Woofer.Invert, Limits{}, nil, "wires swapped"},
		}},
		{Name: "coverage", Rows: []Row{
			{"half_width_m", &d.Coverage.HalfWidthM, From(0.2, 100), nil, "half the map's width"},
			{"cells", &d.Coverage.Cells, From(8, 512), 64, "cells along each side"},
			{"smear_limit_us", &d.Coverage.SmearLimitUS, From(1, 10000), 100.0, "most smear that is good"},
		}},
		{Name: "channel", Optional: true, Rows: new(Channel).rows(), Most: MaxDrivers, More: func() []Row {
			d.Channels = append(d.Channels, Channel{})
			return d.Channels[len(d.Channels)-1].rows()
		}},
	}
}

// walls lists the keys for walls that are not like the others. They come after
// the one for all walls, which they override.
func (r *Room) walls() []Row {
	rows := make([]Row, len(walls))
	for i, name := range walls {
		rows[i] = Row{name + "_absorption", &r.Absorption[i], From(0, 1), nil, ""}
	}
	return rows
}

// rows lists the keys of one [[channel]].
func (c *Channel) rows() []Row {
	return []Row{
		{"drivers", &c.Drivers, From(1, maxNumber), needed, ""},
		{"gain_db", &c.GainDB, From(-60, 12), nil, ""},
		{"invert", &c.Invert, Limits{}, nil, "wires swapped"},
		{"delay_us", &c.DelayUS, From(0, 1e6), nil, ""},
	}
}
