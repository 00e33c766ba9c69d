// Package layout lays a design out: body, mounts, fit, strings and channels.
// It knows nothing of sound.
//
// Build turns a checked design file (package design) into an Array, the one
// value that the other rooms read. Sub-packages hold one idea each:
//
//	design   the TOML design file, strictly read
//	body     solids, geodesics, the ball, and cuts
//	spread   even points on a sphere
//	fit      flanges that touch or overhang
//	wiring   strings in series, banks in parallel
package layout
