// Package layout lays a design out: the body, where each driver sits on it,
// whether it fits, and which channel it belongs to by hand. Build is the way
// in, Array what comes out.
//
// A design may name files beside it: a body, and tables as CSV (a list of mounts, a
// driver's measured response or impedance). The surroundings are a flat surface that the body
// is fixed to (a table or floor below, a ceiling above, a wall behind), or a box room, or
// nothing. A body can be hung and turned, and have copies; Placing turns places between the
// room's frame and a body's own.
//
// It knows nothing of sound. The sub-packages know one thing each:
//
//	advice      findings: what a builder should know, how bad it is, what cures it
//	design      the design file: keys, checks, edits that keep its remarks
//	repair      what a change to a design breaks elsewhere in it, mended
//	body        the closed surface that carries drivers
//	spread      places on a ball as evenly as can be
//	fit         drivers in each other's way, or over an edge
//	wiring      strings and banks
//	impedance   the load over frequency, and what dead drivers do to it
//	box         the shared box: resonance, vent, stuffing
//	dampinglog  the log of damping trials
//	poly        convex polyhedra and meshes: cuts, measures, files
//	shell       the printable shell, and its segments for a printer's bed
//	csvtable    tables as spreadsheets save them
//	prose       what people read: numbers, counts, lists, paths, guesses at words
//
// Mounts are laid out on the whole body. One stays when its cut-out clears the
// cut plane: a round hole of radius a in a plane whose unit normal is n reaches
// a sqrt(1-n_z^2) below its own centre (plane geometry).
//
// Mounts are numbered from the top down, ring by ring, each ring
// counter-clockwise from x seen from above. Places that are cut away or kept
// clear are not counted; places that are skipped are, and leave a gap.
package layout
