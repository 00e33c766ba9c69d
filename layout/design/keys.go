package design

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r3"
)

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
	models = []string{sphere, point, "baffle", bodyModel}
	ways   = []string{"path", "field", straight}
	splits = []string{"arrival", "neighbours", "height"}
	held   = []string{OnSurface, OnCeiling, OnWall}
	aims   = []string{"even", "worst", "mean", round}
	areas  = []string{lineShape, arc, rectangle, ring}
	// The families of high-passes, by the names that the trade has for them.
	families = []string{"butterworth", linkwitz, "bessel"}
	walls    = []string{"back", "front", "right", "left", "floor", "ceiling"}
)

const (
	geodesic  = "geodesic"
	ball      = "ball"
	prism     = "prism"
	anti      = "antiprism"
	file      = "file"
	dome      = "dome"
	sphere    = "sphere"
	bodyModel = "body"
	point     = "point"
	straight  = "straight"
	// What seats can be good at for nobody in particular, and the shapes of areas.
	round     = "round"
	lineShape = "line"
	arc       = "arc"
	rectangle = "rectangle"
	ring      = "ring"
	linkwitz  = "linkwitz-riley" // the family that is not there in every order
)

// The orders that Linkwitz-Riley filters have.
var (
	linkwitzOrders = []int{2, 4, 8}    // of the crossover to a woofer
	highPassOrders = []int{2, 4, 6, 8} // of the high-pass
)

// The RMS voltages that an amplifier may have.
const leastVolt, mostVolt = 0.1, 200.0

// Unnamed is what a design without a name is called.
const Unnamed = "Unnamed array"

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

// What one of a file's units is in SI.
const (
	mm, milli, litre = 1e-3, 1e-3, 1e-3
	cm2, mm2, us     = 1e-4, 1e-6, 1e-6
	percent          = 0.01
	minute           = 60.0
	zeroCelsius      = 273.15 // K
)

// tables is the table of keys: one row for each key of the file, in the order of the
// file. All else that is said of a key follows from its row, but for the remark, which is
// the starter's (lantern.toml).
func (d *Design) tables() []Table {
	return append(d.plainTables(), d.searchTable(),
		Many("body_at", MaxBodies-1, &d.Copies, (*Copy).rows),
		Many("channel", MaxDrivers, &d.Channels, (*Channel).rows))
}

// plainTables are all but [search] and the last two.
func (d *Design) plainTables() []Table {
	return []Table{
		{Name: "", Rows: []Row{
			{"name", &d.Name, Letters(120), 1, Unnamed, ""},
		}},
		{Name: "air", Rows: []Row{
			{"temperature_c", kelvin{&d.Air.Temperature}, From(-20, 50), 1, 20.0, ""},
			{"humidity_percent", &d.Air.Humidity, From(0, 100), percent, 50.0, ""},
			{"pressure_kpa", &d.Air.Pressure, From(50, 110), 1000, 101.325, "air pressure"},
		}},
		{Name: "body", Rows: []Row{
			{"shape", &d.Body.Shape, shapes, 1, needed, ""},
			{"base", &d.Body.Base, among(bases...), 1, nil, "solid to divide"},
			{"subdivision", &d.Body.Subdivision, From(1, 16), 1, nil, "parts of each edge"},
			{"m", &d.Body.M, From(1, 16), 1, nil, "steps along an edge"},
			{"n", &d.Body.N, From(0, 16), 1, nil, "steps to the side"},
			{"sides", &d.Body.Sides, From(3, 64), 1, nil, ""},
			{"height_mm", &d.Body.Height, From(10, 10000), mm, nil, "height"},
			{"file", &d.Body.File, Letters(1000), 1, nil, "file of the shape"},
			{"dual", &d.Body.Dual, Limits{}, 1, nil, "faces for corners"},
			{"radius_mm", &d.Body.Radius, From(20, 5000), mm, needed, ""},
			{"cut_height_mm", cut{&d.Body}, From(-5000, 5000), mm, nil, "cut at height"},
			{"stand_height_mm", &d.Body.Stand, From(0, 3000), mm, nil, "gap to the table"},
			{"wall_mm", &d.Body.Wall, From(0.4, 100), mm, 3.0, "shell thickness"},
		}},
		{Name: "placing", Rows: append([]Row{
			{"on", &d.Placing.On, among(held...), 1, OnSurface, "fixed to"},
		}, d.Placing.Angles.rows()...)},
		{Name: "mounts", Rows: []Row{
			{"on", &d.Mounts.On, among(places...), 1, nil, "drivers sit on"},
			{"count", &d.Mounts.Count, From(0, MaxDrivers), 1, nil, "how many"},
			{"over", &d.Mounts.Over, among(ball, dome), 1, nil, "spread over"},
			{"symmetry", &d.Mounts.Symmetry, From(1, 72), 1, nil, "turns that change nothing"},
			{"list", &d.Mounts.List, Letters(1000), 1, nil, "file of places"},
			{"keep_clear_deg", &d.Mounts.KeepClear, From(-360, 360), 1, nil, "zones kept clear"},
			{"keep_clear_below_deg", &d.Mounts.KeepClearBelowDeg, From(-90, 90), 1, nil, "none lower than"},
			{"skip", &d.Mounts.Skip, From(1, maxNumber), 1, nil, "places left empty"},
		}},
		{Name: "driver", Rows: []Row{
			{"diameter_mm", &d.Driver.ConeRadius, From(5, 500), mm / 2, needed, "cone, across"},
			{"cutout_mm", &d.Driver.CutoutRadius, From(5, 600), mm / 2, nil, "hole in the shell"},
			{"flange_mm", &d.Driver.FlangeRadius, From(5, 800), mm / 2, nil, "flange, across"},
			{"depth_mm", &d.Driver.Depth, From(0, 500), mm, nil, "depth behind the flange"},
			{"nominal_ohm", &d.Driver.NominalOhm, From(1, 1000), 1, 8.0, "nominal impedance"},
			{"dc_ohm", &d.Driver.DCOhm, From(0.3, 1000), 1, nil, "DC resistance"},
			{"sensitivity_db", &d.Driver.Sensitivity, From(50, 120), 1, nil, ""},
			{"power_w", &d.Driver.PowerHandling, From(0.05, 2000), 1, 1.0, "long-term power"},
			{"response", &d.Driver.ResponseFile, Letters(1000), 1, nil, "file of its response"},
			{"resonance_hz", &d.Driver.Resonance, From(20, 20000), 1, nil, "resonance in the body"},
			{"resonance_q", &d.Driver.ResonanceQ, From(0.2, 10), 1, 0.707, "Q in the body"},
			{"magnet_mm", &d.Driver.MagnetRadius, From(1, 500), mm / 2, nil, "magnet, across"},
			{"magnet_height_mm", &d.Driver.MagnetHeight, From(0, 500), mm, nil, ""},
			{"terminal_reach_mm", &d.Driver.TerminalReach, From(1, 500), mm, nil, "terminals, from the axis"},
			{"terminal_front_mm", &d.Driver.TerminalFront, From(0, 500), mm, nil, "terminals, from the face"},
			{"terminal_length_mm", &d.Driver.TerminalLength, From(0, 200), mm, nil, "terminals, along the axis"},
			{"screw_mm", &d.Driver.ScrewRadius, From(0.5, 20), mm / 2, nil, "screw hole"},
			{"fs_hz", &d.Driver.Small.Fs, From(20, 20000), 1, nil, "free-air resonance Fs"},
			{"qms", &d.Driver.Small.Qms, From(0.1, 100), 1, nil, "mechanical Q (Qms)"},
			{"qes", &d.Driver.Small.Qes, From(0.05, 100), 1, nil, "electrical Q (Qes)"},
			{"vas_l", &d.Driver.Small.Vas, From(0.0001, 10000), litre, nil, "compliance volume Vas"},
			{"bl_tm", &d.Driver.Small.BL, From(0.05, 100), 1, nil, "force factor Bl"},
			{"mms_g", &d.Driver.Small.Mass, From(0.01, 1000), milli, nil, "moving mass Mms"},
			{"sd_cm2", &d.Driver.Small.Area, From(0.1, 2000), cm2, nil, "cone area Sd"},
			{"le_mh", &d.Driver.Small.Inductance, From(0, 10), milli, nil, "coil inductance Le"},
			{"xmax_mm", &d.Driver.Small.Reach, From(0.05, 50), mm, nil, "furthest cone travel Xmax"},
			{"impedance", &d.Driver.ImpedanceFile, Letters(1000), 1, nil, "file of its impedance"},
			{"mass_g", &d.Driver.Mass, From(0.1, 100000), milli, nil, "mass of one"},
			{"price", &d.Driver.Price, From(0, 1e6), 1, nil, "price of one"},
		}},
		{Name: "fit", Rows: []Row{
			{"apart_mm", &d.Fit.Apart, From(0, 100), mm, 1.0, "between drivers"},
			{"edge_mm", &d.Fit.Edge, From(0, 100), mm, nil, "to the edge of a face"},
		}},
		{Name: "box", Rows: []Row{
			{"braces_l", &d.Box.Braces, From(0, 1000), litre, nil, "volume of braces"},
			{"target_q", &d.Box.TargetQ, From(0.5, 3), 1, 0.707, "Q to reach"},
			{"vent_hole_mm", &d.Box.VentRadius, From(0.5, 200), mm / 2, 8.0, "vent hole, across"},
			{"vent_holes", &d.Box.VentHoles, From(1, 1000), 1, 6, ""},
			{"stuffing_kg_m3", &d.Box.Stuffing, From(0, 50), 1, 10.0, "stuffing density"},
		}},
		{Name: "print", Rows: []Row{
			{"bed_mm", &d.Print.Bed, From(10, 5000), mm, []any{220.0, 220.0, 250.0}, "printer's bed"},
			{"margin_mm", &d.Print.Margin, From(0, 100), mm, 1.0, "seam to cut-out"},
			{"density_kg_m3", &d.Print.Density, From(50, 20000), 1, 1240.0, "density of the material"},
			{"price_kg", &d.Print.Price, From(0, 1e6), 1, nil, "price of the material"},
			{"flow_mm3_s", &d.Print.Flow, From(0.1, 1000), mm * mm2, 5.0, "material laid down"},
		}},
		{Name: "kit", Rows: []Row{
			{"gap_mm", &d.Kit.Gap, From(0.05, 2), mm, 0.2, "between parts"},
			{"joint", &d.Kit.Joint, among("lap", "flange"), 1, "lap", "segments joined by"},
			{"mounting", &d.Kit.Mounting, among("front", "rear"), 1, "front", "drivers put on from"},
			{"recess_mm", &d.Kit.Recess, From(0, 20), mm, 0.0, "recess for the flange"},
		}},
		{Name: "build", Rows: []Row{
			{"spare_percent", &d.Build.Spares, From(0, 100), percent, 5.0, "drivers to spare"},
			{"slack_mm", &d.Build.Slack, From(0, 1000), mm, 60.0, "wire to spare at a joint"},
			{"inner_mm2", &d.Build.InnerSection, From(0.05, 10), mm2, 0.5, "copper inside, cross-section"},
			{"wire_price_m", &d.Build.WirePrice, From(0, 1e6), 1, nil, "price of the wire inside"},
			{"joint_minutes", &d.Build.JointTime, From(0, 1000), minute, 4.0, "work for a joint"},
			{"driver_minutes", &d.Build.DriverTime, From(0, 1000), minute, 6.0, "work to put a driver in"},
		}},
		Many("part", maxParts, &d.Parts, (*Part).rows),
		{Name: "timing", Rows: []Row{
			{"model", &d.Timing.Model, among(models...), 1, sphere, "model of a driver"},
			{"solve_to_hz", &d.Timing.SolveTo, From(500, 20000), 1, 4000.0, "body's field solved up to"},
			{"delays_by", &d.Timing.DelaysBy, among(ways...), 1, "field", ""},
			{"field_low_hz", &d.Timing.FieldLow, From(50, 20000), 1, 500.0, "phase fitted from"},
			{"field_high_hz", &d.Timing.FieldHigh, From(50, 20000), 1, 8000.0, "phase fitted up to"},
		}},
		{Name: "wiring", Rows: []Row{
			{"channels", &d.Wiring.Channels, From(0, MaxDrivers), 1, nil, ""},
			{"minimum_load_ohm", &d.Wiring.MinimumLoad, From(0.5, 100), 1, 4.0, "least load allowed"},
			{"amplifier_w", &d.Wiring.Watt, From(0.1, 5000), 1, nil, "amplifier, as it is sold"},
			{"amplifier_into_ohm", &d.Wiring.IntoOhm, From(0.5, 100), 1, nil, "into a load of"},
			{"amplifier_volt", &d.Wiring.Voltage, From(leastVolt, mostVolt), 1, 2.83, "amplifier output, RMS"},
			{"amplifier_gain_db", &d.Wiring.Gain, From(-20, 60), 1, 0.0, "amplifier's gain, of voltage"},
			{"split", &d.Wiring.Split, among(splits...), 1, "arrival", "drivers shared out by"},
			{"longest_string", &d.Wiring.LongestString, From(1, MaxDrivers), 1, nil, "most drivers in a string"},
			{"wire_m", &d.Wiring.WireLength, From(0, 1000), 1, nil, "wire, one way"},
			{"wire_mm2", &d.Wiring.WireSection, From(0.05, 50), mm2, 0.75, "copper, cross-section"},
		}},
		{Name: "protection", Rows: []Row{
			{"family", &d.Protection.Family, among(families...), 1, "butterworth", "kind of high-pass"},
			{"order", &d.Protection.Order, From(1, 8), 1, 4, ""},
			{"corner_hz", &d.Protection.Corner, From(10, 5000), 1, nil, "high-pass corner"},
		}},
		{Name: "processor", Rows: []Row{
			{"rate_hz", &d.Processor.Rate, From(8000, 384000), 1, 48000.0, "sample rate"},
			{"step_us", &d.Processor.Step, From(0.1, 10000), us, nil, "step of the delays"},
			{"full_scale_volt", &d.Processor.FullScale, From(0.01, mostVolt), 1, nil, "output at full scale, RMS"},
		}},
		{Name: "spot", Unless: []string{"seat", "area"}, Rows: place(&d.Spot)},
		{Name: "seats", Rows: []Row{
			{"aim", &d.Seating.Aim, among(aims...), 1, "even", "best for the seats"},
			{"head_mm", &d.Seating.Head, From(0, 1000), mm, 150.0, "how far a head moves"},
			{"loud", &d.Seating.Loud, From(0, 1), 1, 0.5, "0 even to 1 loud"},
		}},
		Many("seat", MaxSeats, &d.Seats, (*Seat).rows),
		Many("area", MaxSeats, &d.Areas, (*Area).rows),
		{Name: "surface", Optional: true, Rows: []Row{
			{"absorption", &d.Surface.Absorption, From(0, 1), 1, nil, ""},
		}},
		{Name: "room", Optional: true, Rows: append([]Row{
			{"size_m", &d.Room.Size, From(1, 100), 1, needed, "length, width, height"},
			{"body_at_m", &d.Room.Body, From(0, 100), 1, needed, "body from the corner"},
			{"absorption", &d.Room.Absorption, From(0, 1), 1, needed, "absorption of all walls"},
			{"order", &d.Room.Order, From(0, 10), 1, 3, "reflections followed"},
		}, d.Room.walls()...)},
		{Name: "woofer", Optional: true, Rows: append(place(&d.Woofer.At), []Row{
			{"crossover_hz", &d.Woofer.Crossover, From(40, 2000), 1, needed, "crossover"},
			{"order", &d.Woofer.Order, either(linkwitzOrders...), 1, 4, ""},
			{"sensitivity_db", &d.Woofer.Sensitivity, From(50, 120), 1, nil, ""},
			{"gain_db", &d.Woofer.Gain, From(-40, 20), 1, nil, ""},
			{"invert", &d.Woofer.Invert, Limits{}, 1, nil, "wires swapped"},
		}...)},
		{Name: "coverage", Rows: []Row{
			{"half_width_m", &d.Coverage.HalfWidth, From(0.2, 100), 1, nil, "half the map's width"},
			{"cells", &d.Coverage.Cells, From(8, 512), 1, 64, "cells along each side"},
			{"smear_limit_us", &d.Coverage.SmearLimit, From(1, 10000), us, 100.0, "most smear that is good"},
		}},
	}
}

// place lists the keys of a place in the room.
func place(at *r3.Vec) []Row {
	return []Row{
		{"x_m", &at.X, From(-100, 100), 1, needed, "forward"},
		{"y_m", &at.Y, From(-100, 100), 1, needed, "to the loudspeaker's left"},
		{"z_m", &at.Z, From(-100, 100), 1, needed, "up"},
	}
}

// rows lists the keys of how a body is turned.
func (a *Angles) rows() []Row {
	return []Row{
		{"yaw_deg", &a.YawDeg, From(-180, 180), 1, nil, "turned to the left"},
		{"pitch_deg", &a.PitchDeg, From(-180, 180), 1, nil, "front tipped down"},
		{"roll_deg", &a.RollDeg, From(-180, 180), 1, nil, "left side tipped up"},
	}
}

// rows lists the keys of one [[body_at]].
func (c *Copy) rows() []Row {
	return slices.Concat(place(&c.At), c.Angles.rows(),
		[]Row{{"channels", &c.Channels, among(OwnChannels, SharedChannels), 1, OwnChannels, "driven by channels"}})
}

// walls lists the keys for walls that are not like the others. They come after
// the one for all walls, which they override.
func (r *Room) walls() []Row {
	rows := make([]Row, len(walls))
	for i, name := range walls {
		rows[i] = Row{name + "_absorption", &r.Absorption[i], From(0, 1), 1, nil, ""}
	}
	return rows
}

// rows lists the keys of one [[channel]].
func (c *Channel) rows() []Row {
	return []Row{
		{"drivers", &c.Drivers, From(1, maxNumber), 1, needed, ""},
		{"gain_db", &c.Gain, From(-60, 12), 1, nil, ""},
		{"invert", &c.Invert, Limits{}, 1, nil, "wires swapped"},
		{"delay_us", &c.Delay, From(0, 1e6), us, nil, ""},
	}
}

// rows lists the keys of one [[part]].
func (p *Part) rows() []Row {
	return []Row{
		{"name", &p.Name, Letters(longestName), 1, nil, ""},
		{"count", &p.Count, From(1, 100000), 1, 1, ""},
		{"price", &p.Price, From(0, 1e6), 1, nil, "price of one"},
		{"mass_g", &p.Mass, From(0, 1e6), milli, nil, "mass of one"},
		{"minutes", &p.Time, From(0, 10000), minute, nil, "work for one"},
	}
}

// rows lists the keys of one [[seat]].
func (s *Seat) rows() []Row {
	return slices.Concat([]Row{{"name", &s.Name, Letters(longestName), 1, nil, ""}}, place(&s.At),
		[]Row{{"weight", &s.Weight, From(leastWeight, mostWeight), 1, 1.0, "counts as so many"}})
}

// rows lists the keys of one [[area]].
func (a *Area) rows() []Row {
	return []Row{
		{"name", &a.Name, Letters(longestName), 1, nil, ""},
		{"shape", &a.Shape, among(areas...), 1, needed, ""},
		{"count", &a.Count, From(1, MaxSeats), 1, needed, "how many seats"},
		{"weight", &a.Weight, From(leastWeight, MaxSeats*mostWeight), 1, nil, "counts as so many"},
		{"from_m", &a.From, From(-100, 100), 1, nil, "from"},
		{"to_m", &a.To, From(-100, 100), 1, nil, "to"},
		{"radius_m", &a.Radius, From(0.01, 100), 1, nil, "from the body's axis"},
		{"z_m", &a.Z, From(-100, 100), 1, nil, "up"},
		{"from_deg", &a.FromDeg, From(-360, 360), 1, nil, "from angle"},
		{"to_deg", &a.ToDeg, From(-360, 360), 1, nil, "to angle"},
	}
}
