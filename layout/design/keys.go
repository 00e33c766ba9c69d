package design

// tables is the table of keys: one row for each key of the file, in the order of the
// file. All else that is said of a key follows from its row, but for the remark, which is
// the starter's (lantern.toml).
func (d *Design) tables() []Table {
	return []Table{
		{Name: "", Rows: d.top},
		{Name: "air", Rows: d.Air.rows},
		{Name: "body", Needs: true, Rows: d.Body.rows},
		{Name: "placing", Rows: d.Placing.rows},
		{Name: "mounts", Rows: d.Mounts.rows},
		{Name: "driver", Needs: true, Rows: d.Driver.rows},
		{Name: "fit", Rows: d.Fit.rows},
		{Name: "box", Rows: d.Box.rows},
		{Name: "print", Rows: d.Print.rows},
		{Name: "kit", Rows: d.Kit.rows},
		{Name: "build", Rows: d.Build.rows},
		Many("part", maxParts, &d.Parts, (*Part).rows),
		{Name: "timing", Rows: d.Timing.rows},
		{Name: "wiring", Rows: d.Wiring.rows},
		{Name: "protection", Rows: d.Protection.rows},
		{Name: "processor", Rows: d.Processor.rows},
		{Name: "spot", Needs: true, Unless: []string{"seat", "area"}, Rows: func() []Row { return place(&d.Spot) }},
		{Name: "seats", Rows: d.Seating.rows},
		Many("seat", MaxSeats, &d.Seats, (*Seat).rows),
		Many("area", MaxSeats, &d.Areas, (*Area).rows),
		{Name: "surface", Optional: true, Rows: d.Surface.rows},
		{Name: "room", Optional: true, Rows: d.Room.rows},
		{Name: "woofer", Optional: true, Rows: d.Woofer.rows},
		{Name: "coverage", Rows: d.Coverage.rows},
		{Name: "search", Optional: true, Inner: d.varied, Rows: d.Search.rows},
		Many("body_at", MaxBodies-1, &d.Copies, (*Copy).rows),
		Many("channel", MaxDrivers, &d.Channels, (*Channel).rows),
	}
}

// top lists the keys above the first table.
func (d *Design) top() []Row {
	return []Row{
		{"name", &d.Name, Letters(120), 1, Unnamed, ""},
	}
}

// rows lists the keys of [air].
func (a *Air) rows() []Row {
	return []Row{
		{"temperature_c", kelvin{&a.Temperature}, From(-20, 50), 1, 20.0, ""},
		{"humidity_percent", &a.Humidity, From(0, 100), percent, 50.0, ""},
		{"pressure_kpa", &a.Pressure, From(50, 110), 1000, 101.325, "air pressure"},
	}
}

// rows lists the keys of [body].
func (b *Body) rows() []Row {
	return []Row{
		{"shape", &b.Shape, shapes, 1, needed, ""},
		{"base", &b.Base, among(bases...), 1, nil, "solid to divide"},
		{"subdivision", &b.Subdivision, From(1, 16), 1, nil, "parts of each edge"},
		{"m", &b.M, From(1, 16), 1, nil, "steps along an edge"},
		{"n", &b.N, From(0, 16), 1, nil, "steps to the side"},
		{"sides", &b.Sides, From(3, 64), 1, nil, ""},
		{"height_mm", &b.Height, From(10, 10000), mm, nil, "height"},
		{"file", &b.File, Letters(1000), 1, nil, "file of the shape"},
		{"dual", &b.Dual, Limits{}, 1, nil, "faces for corners"},
		{"radius_mm", &b.Radius, From(20, 5000), mm, needed, ""},
		{"cut_height_mm", cut{b}, From(-5000, 5000), mm, nil, "cut at height"},
		{"stand_height_mm", &b.Stand, From(0, 3000), mm, nil, "gap to the table"},
		{"wall_mm", &b.Wall, From(0.4, 100), mm, 3.0, "shell thickness"},
	}
}

// rows lists the keys of [placing].
func (p *Placing) rows() []Row {
	return append([]Row{
		{"on", &p.On, among(held...), 1, OnSurface, "fixed to"},
	}, p.Angles.rows()...)
}

// rows lists the keys of [mounts].
func (m *Mounts) rows() []Row {
	return []Row{
		{"on", &m.On, among(places...), 1, nil, "drivers sit on"},
		{"count", &m.Count, From(0, MaxDrivers), 1, nil, "how many"},
		{"over", &m.Over, among(ball, dome), 1, nil, "spread over"},
		{"symmetry", &m.Symmetry, From(1, 72), 1, nil, "turns that change nothing"},
		{"list", &m.List, Letters(1000), 1, nil, "file of places"},
		{"keep_clear_deg", &m.KeepClear, From(-360, 360), 1, nil, "zones kept clear"},
		{"keep_clear_below_deg", &m.KeepClearBelowDeg, From(-90, 90), 1, nil, "none lower than"},
		{"skip", &m.Skip, From(1, maxNumber), 1, nil, "places left empty"},
	}
}

// rows lists the keys of [driver].
func (d *Driver) rows() []Row {
	return []Row{
		{"diameter_mm", &d.ConeRadius, From(5, 500), mm / 2, needed, "cone, across"},
		{"cutout_mm", &d.CutoutRadius, From(5, 600), mm / 2, nil, "hole in the shell"},
		{"flange_mm", &d.FlangeRadius, From(5, 800), mm / 2, nil, "flange, across"},
		{"depth_mm", &d.Depth, From(0, 500), mm, nil, "depth behind the flange"},
		{"nominal_ohm", &d.NominalOhm, From(1, 1000), 1, 8.0, "nominal impedance"},
		{"dc_ohm", &d.DCOhm, From(0.3, 1000), 1, nil, "DC resistance"},
		{"sensitivity_db", &d.Sensitivity, From(50, 120), 1, nil, ""},
		{"power_w", &d.PowerHandling, From(0.05, 2000), 1, 1.0, "long-term power"},
		{"response", &d.ResponseFile, Letters(1000), 1, nil, "file of its response"},
		{"resonance_hz", &d.Resonance, From(20, 20000), 1, nil, "resonance in the body"},
		{"resonance_q", &d.ResonanceQ, From(0.2, 10), 1, 0.707, "Q in the body"},
		{"magnet_mm", &d.MagnetRadius, From(1, 500), mm / 2, nil, "magnet, across"},
		{"magnet_height_mm", &d.MagnetHeight, From(0, 500), mm, nil, ""},
		{"terminal_reach_mm", &d.TerminalReach, From(1, 500), mm, nil, "terminals, from the axis"},
		{"terminal_front_mm", &d.TerminalFront, From(0, 500), mm, nil, "terminals, from the face"},
		{"terminal_length_mm", &d.TerminalLength, From(0, 200), mm, nil, "terminals, along the axis"},
		{"screw_mm", &d.ScrewRadius, From(0.5, 20), mm / 2, nil, "screw hole"},
		{"fs_hz", &d.Small.Fs, From(20, 20000), 1, nil, "free-air resonance Fs"},
		{"qms", &d.Small.Qms, From(0.1, 100), 1, nil, "mechanical Q (Qms)"},
		{"qes", &d.Small.Qes, From(0.05, 100), 1, nil, "electrical Q (Qes)"},
		{"vas_l", &d.Small.Vas, From(0.0001, 10000), litre, nil, "compliance volume Vas"},
		{"bl_tm", &d.Small.BL, From(0.05, 100), 1, nil, "force factor Bl"},
		{"mms_g", &d.Small.Mass, From(0.01, 1000), milli, nil, "moving mass Mms"},
		{"sd_cm2", &d.Small.Area, From(0.1, 2000), cm2, nil, "cone area Sd"},
		{"le_mh", &d.Small.Inductance, From(0, 10), milli, nil, "coil inductance Le"},
		{"xmax_mm", &d.Small.Reach, From(0.05, 50), mm, nil, "furthest cone travel Xmax"},
		{"impedance", &d.ImpedanceFile, Letters(1000), 1, nil, "file of its impedance"},
		{"mass_g", &d.Mass, From(0.1, 100000), milli, nil, "mass of one"},
		{"price", &d.Price, From(0, 1e6), 1, nil, "price of one"},
	}
}

// rows lists the keys of [fit].
func (f *Fit) rows() []Row {
	return []Row{
		{"apart_mm", &f.Apart, From(0, 100), mm, 1.0, "between drivers"},
		{"edge_mm", &f.Edge, From(0, 100), mm, nil, "to the edge of a face"},
	}
}

// rows lists the keys of [box].
func (b *Box) rows() []Row {
	return []Row{
		{"braces_l", &b.Braces, From(0, 1000), litre, nil, "volume of braces"},
		{"target_q", &b.TargetQ, From(0.5, 3), 1, 0.707, "Q to reach"},
		{"vent_hole_mm", &b.VentRadius, From(0.5, 200), mm / 2, 8.0, "vent hole, across"},
		{"vent_holes", &b.VentHoles, From(1, 1000), 1, 6, ""},
		{"stuffing_kg_m3", &b.Stuffing, From(0, 50), 1, 10.0, "stuffing density"},
	}
}

// rows lists the keys of [print].
func (p *Print) rows() []Row {
	return []Row{
		{"bed_mm", &p.Bed, From(10, 5000), mm, []any{220.0, 220.0, 250.0}, "printer's bed"},
		{"margin_mm", &p.Margin, From(0, 100), mm, 1.0, "seam to cut-out"},
		{"density_kg_m3", &p.Density, From(50, 20000), 1, 1240.0, "density of the material"},
		{"price_kg", &p.Price, From(0, 1e6), 1, nil, "price of the material"},
		{"flow_mm3_s", &p.Flow, From(0.1, 1000), mm * mm2, 5.0, "material laid down"},
	}
}

// rows lists the keys of [kit].
func (k *Kit) rows() []Row {
	return []Row{
		{"gap_mm", &k.Gap, From(0.05, 2), mm, 0.2, "between parts"},
		{"joint", &k.Joint, among("lap", "flange"), 1, "lap", "segments joined by"},
		{"mounting", &k.Mounting, among("front", "rear"), 1, "front", "drivers put on from"},
		{"recess_mm", &k.Recess, From(0, 20), mm, 0.0, "recess for the flange"},
	}
}

// rows lists the keys of [build].
func (b *Build) rows() []Row {
	return []Row{
		{"spare_percent", &b.Spares, From(0, 100), percent, 5.0, "drivers to spare"},
		{"slack_mm", &b.Slack, From(0, 1000), mm, 60.0, "wire to spare at a joint"},
		{"inner_mm2", &b.InnerSection, From(0.05, 10), mm2, 0.5, "copper inside, cross-section"},
		{"wire_price_m", &b.WirePrice, From(0, 1e6), 1, nil, "price of the wire inside"},
		{"joint_minutes", &b.JointTime, From(0, 1000), minute, 4.0, "work for a joint"},
		{"driver_minutes", &b.DriverTime, From(0, 1000), minute, 6.0, "work to put a driver in"},
	}
}

// rows lists the keys of [timing].
func (t *Timing) rows() []Row {
	return []Row{
		{"model", &t.Model, among(models...), 1, sphere, "model of a driver"},
		{"solve_to_hz", &t.SolveTo, From(500, 20000), 1, 4000.0, "body's field solved up to"},
		{"delays_by", &t.DelaysBy, among(ways...), 1, "field", ""},
		{"field_low_hz", &t.FieldLow, From(50, 20000), 1, 500.0, "phase fitted from"},
		{"field_high_hz", &t.FieldHigh, From(50, 20000), 1, 8000.0, "phase fitted up to"},
	}
}

// rows lists the keys of [wiring].
func (w *Wiring) rows() []Row {
	return []Row{
		{"channels", &w.Channels, From(0, MaxDrivers), 1, nil, ""},
		{"minimum_load_ohm", &w.MinimumLoad, From(0.5, 100), 1, 4.0, "least load allowed"},
		{"amplifier_w", &w.Watt, From(0.1, 5000), 1, nil, "amplifier, as it is sold"},
		{"amplifier_into_ohm", &w.IntoOhm, From(0.5, 100), 1, nil, "into a load of"},
		{"amplifier_volt", &w.Voltage, From(leastVolt, mostVolt), 1, 2.83, "amplifier output, RMS"},
		{"amplifier_gain_db", &w.Gain, From(-20, 60), 1, 0.0, "amplifier's gain, of voltage"},
		{"split", &w.Split, among(splits...), 1, "arrival", "drivers shared out by"},
		{"longest_string", &w.LongestString, From(1, MaxDrivers), 1, nil, "most drivers in a string"},
		{"wire_m", &w.WireLength, From(0, 1000), 1, nil, "wire, one way"},
		{"wire_mm2", &w.WireSection, From(0.05, 50), mm2, 0.75, "copper, cross-section"},
	}
}

// rows lists the keys of [protection].
func (p *Protection) rows() []Row {
	return []Row{
		{"family", &p.Family, among(families...), 1, "butterworth", "kind of high-pass"},
		{"order", &p.Order, From(1, 8), 1, 4, ""},
		{"corner_hz", &p.Corner, From(10, 5000), 1, nil, "high-pass corner"},
	}
}

// rows lists the keys of [processor].
func (p *Processor) rows() []Row {
	return []Row{
		{"rate_hz", &p.Rate, From(8000, 384000), 1, 48000.0, "sample rate"},
		{"step_us", &p.Step, From(0.1, 10000), us, nil, "step of the delays"},
		{"full_scale_volt", &p.FullScale, From(0.01, mostVolt), 1, nil, "output at full scale, RMS"},
	}
}

// rows lists the keys of [seats].
func (s *Seating) rows() []Row {
	return []Row{
		{"aim", &s.Aim, among(aims...), 1, "even", "best for the seats"},
		{"head_mm", &s.Head, From(0, 1000), mm, 150.0, "how far a head moves"},
		{"loud", &s.Loud, From(0, 1), 1, 0.5, "0 even to 1 loud"},
	}
}

// rows lists the keys of [surface].
func (s *Surface) rows() []Row {
	return []Row{
		{"absorption", &s.Absorption, From(0, 1), 1, nil, ""},
	}
}

// rows lists the keys of [room].
func (r *Room) rows() []Row {
	return append([]Row{
		{"size_m", &r.Size, From(1, 100), 1, needed, "length, width, height"},
		{"body_at_m", &r.Body, From(0, 100), 1, needed, "body from the corner"},
		{"absorption", &r.Absorption, From(0, 1), 1, needed, "absorption of all walls"},
		{"order", &r.Order, From(0, 10), 1, 3, "reflections followed"},
	}, r.walls()...)
}

// rows lists the keys of [woofer].
func (w *Woofer) rows() []Row {
	return append(place(&w.At), []Row{
		{"crossover_hz", &w.Crossover, From(40, 2000), 1, needed, "crossover"},
		{"order", &w.Order, either(linkwitzOrders...), 1, 4, ""},
		{"sensitivity_db", &w.Sensitivity, From(50, 120), 1, nil, ""},
		{"gain_db", &w.Gain, From(-40, 20), 1, nil, ""},
		{"invert", &w.Invert, Limits{}, 1, nil, "wires swapped"},
	}...)
}

// rows lists the keys of [coverage].
func (c *Coverage) rows() []Row {
	return []Row{
		{"half_width_m", &c.HalfWidth, From(0.2, 100), 1, nil, "half the map's width"},
		{"cells", &c.Cells, From(8, 512), 1, 64, "cells along each side"},
		{"smear_limit_us", &c.SmearLimit, From(1, 10000), us, 100.0, "most smear that is good"},
	}
}
