package design

import (
	"regexp"
	"strings"
)

// labels says in a few words what a key is, where its name alone does not.
var labels = map[string]string{
	"air.pressure_kpa":            "air pressure",
	"body.base":                   "solid to divide",
	"body.subdivision":            "parts of each edge",
	"body.m":                      "steps along an edge",
	"body.n":                      "steps to the side",
	"body.height_mm":              "height",
	"body.file":                   "file of the shape",
	"body.dual":                   "faces for corners",
	"body.cut_height_mm":          "cut at height",
	"body.stand_height_mm":        "gap to the table",
	"body.wall_mm":                "shell thickness",
	"mounts.on":                   "drivers sit on",
	"mounts.count":                "how many",
	"mounts.over":                 "spread over",
	"mounts.symmetry":             "turns that change nothing",
	"mounts.list":                 "file of places",
	"mounts.keep_clear_deg":       "zones kept clear",
	"mounts.keep_clear_below_deg": "none lower than",
	"mounts.skip":                 "places left empty",
	"driver.diameter_mm":          "cone, across",
	"driver.cutout_mm":            "hole in the shell",
	"driver.flange_mm":            "flange, across",
	"driver.depth_mm":             "depth behind the flange",
	"driver.nominal_ohm":          "nominal impedance",
	"driver.dc_ohm":               "DC resistance",
	"driver.power_w":              "long-term power",
	"driver.response":             "file of its response",
	"driver.resonance_hz":         "resonance in the body",
	"driver.resonance_q":          "Q in the body",
	"driver.magnet_mm":            "magnet, across",
	"driver.terminal_reach_mm":    "terminals, from the axis",
	"driver.terminal_front_mm":    "terminals, from the face",
	"driver.terminal_length_mm":   "terminals, along the axis",
	"driver.screw_mm":             "screw hole",
	"driver.fs_hz":                "free-air resonance Fs",
	"driver.qms":                  "mechanical Q (Qms)",
	"driver.qes":                  "electrical Q (Qes)",
	"driver.vas_l":                "compliance volume Vas",
	"driver.bl_tm":                "force factor Bl",
	"driver.mms_g":                "moving mass Mms",
	"driver.sd_cm2":               "cone area Sd",
	"driver.le_mh":                "coil inductance Le",
	"driver.xmax_mm":              "furthest cone travel Xmax",
	"driver.impedance":            "file of its impedance",
	"fit.apart_mm":                "between drivers",
	"fit.edge_mm":                 "to the edge of a face",
	"box.braces_l":                "volume of braces",
	"box.target_q":                "Q to reach",
	"box.vent_hole_mm":            "vent hole, across",
	"box.stuffing_kg_m3":          "stuffing density",
	"print.bed_mm":                "printer's bed",
	"print.margin_mm":             "seam to cut-out",
	"print.density_kg_m3":         "density of the material",
	"timing.model":                "model of a driver",
	"timing.field_low_hz":         "phase fitted from",
	"timing.field_high_hz":        "phase fitted up to",
	"wiring.minimum_load_ohm":     "least load allowed",
	"wiring.amplifier_w":          "amplifier, as it is sold",
	"wiring.amplifier_into_ohm":   "into a load of",
	"wiring.amplifier_volt":       "amplifier output, RMS",
	"wiring.longest_string":       "most drivers in a string",
	"wiring.split":                "drivers shared out by",
	"wiring.wire_m":               "wire, one way",
	"wiring.wire_mm2":             "copper, cross-section",
	"protection.family":           "kind of high-pass",
	"protection.corner_hz":        "high-pass corner",
	"processor.rate_hz":           "sample rate",
	"processor.step_us":           "step of the delays",
	"spot.x_m":                    "forward",
	"spot.y_m":                    "to the left",
	"spot.z_m":                    "up",
	"room.size_m":                 "length, width, height",
	"room.body_at_m":              "body from the corner",
	"room.absorption":             "absorption of all walls",
	"room.order":                  "reflections followed",
	"woofer.x_m":                  "forward",
	"woofer.y_m":                  "to the left",
	"woofer.z_m":                  "up",
	"woofer.crossover_hz":         "crossover",
	"woofer.invert":               "wires swapped",
	"coverage.half_width_m":       "half the map's width",
	"coverage.cells":              "cells along each side",
	"coverage.smear_limit_us":     "most smear that is good",
	"channel.invert":              "wires swapped",
}

// unitAtEnd is the unit that a key's name ends with.
var unitAtEnd = regexp.MustCompile(`_(mm2|cm2|mm|m|cm|ohm|db|w|hz|us|deg|kpa|c|percent|l|g|mh|tm|volt|kg_m3|ms)$`)

// labelOf names a key for a form: in words of its own, or by its name without the unit.
func labelOf(path, name string) string {
	if label, ok := labels[path]; ok {
		return label
	}
	return strings.ReplaceAll(unitAtEnd.ReplaceAllString(name, ""), "_", " ")
}
