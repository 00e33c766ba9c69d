// Package dampinglog is the damping log: a TOML file beside the design that keeps each
// trial of vent openings and stuffing with what was measured then.
//
//	# What there is room for; what is left out is not known.
//	[fits]
//	stuffing_g = 90
//	depth_mm = 80
//	vents = 6
//
//	[[trial]]
//	date = 2025-03-01           # may be left out
//	vents = 0                   # openings
//	vent_mm = 0                 # across each; needed where there are some
//	fill_g = 0                  # of filling in each vent; may be left out
//	stuffing_g = 30.5           # in the body
//	depth_mm = 40               # as packed; 0 or left out: not measured
//	impedance = "trial-2.csv"   # frequency_hz,ohm,degrees
//	response = "trial-2-r.csv"  # frequency_hz,level_db,phase_deg; may be left out
//	remark = "loose, at the rear"
//
// Reading is strict: whatever is wrong is one *design.Error that names file, line, key
// and what is allowed. A log only ever grows: [Add] writes what was there, byte for
// byte, and the new trial behind it, whole or not at all.
//
// Source: TOML 1.0 (toml.io). The ranges are the program's own.
package dampinglog
