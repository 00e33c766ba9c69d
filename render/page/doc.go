// Package page serves a page in the browser that shows a design and lets it be
// changed: the browser's side is in the folder built, embedded, and made from web
// by go generate.
//
// It is for one person on one machine. It answers only where the Host header, and
// the Origin header where there is one, name a loopback address: a foreign site
// can neither read it nor, by giving its own name this machine's address, speak to
// it. It runs no script but its own (Content Security Policy Level 3, W3C; Fetch
// and Origin, WHATWG; WebSocket, RFC 6455). The design's own path is the only file
// that it writes.
//
// # API
//
// All is JSON. Requests are POST with Content-Type application/json unless said;
// fields that are not known are refused. What goes wrong is {"error": one line}
// with the status: 400 not understood, 403 a foreign host or origin, or nothing to
// save to, 409 the file changed, 413 too large, 415 not JSON, 429 too much at once,
// 501 not there. A design with faults is 422 with
//
//	faults[]      line (0: none), key (may be empty), value, reason
//	cure          of /api/plan, where one press mends it: as /api/edit answers
//
// GET /api/start
//
//	path, name, text, can_save, version, read (hash of the file, for save)
//	programmes[], cases[], files[], walks[]   name, words
//	keys[]        key, table, name, unit, kind (number, whole, choice, flag, text,
//	              list), low, high, choices, default, needed, label, remark
//	tables[]      table, optional, remark
//
// /api/plan {text}
//
//	id, name, text, values{} of every key, given[] (keys that the text has)
//	plan          as package planjson has it, without octaves and in_step_area_m2
//	processor[], counts[], protection, signs   as planjson.WriteChannels has them
//	wiring[]      channels as planjson.WriteWiring has them: strings and loads
//	findings[]    what to know first, worst first, at most seven: rank, lead (the word for it),
//	              stops (it should not be built so), what, cure
//	more_findings how many more there are
//	place         where the spot is: along_m (along the floor), and in words short, tape, high
//	front_rule    by which rule strings are chosen, in words; empty where there is no choice
//	rounding      step_us, and octave_hz with loss_db: what setting the delays to the step
//	              costs each octave of the sum at the spot
//	solid         vertices_mm, faces (corners counter-clockwise from outside)
//	drivers[]     id, at_mm, normal, cone_mm and flange_mm (across)
//	sentences[]   what was found, in words
//	spot_m, floor_m (null: nothing below), room (null, or low_m and high_m), slice
//
// /api/survey {text}: octaves and in_step_area_m2, as package planjson has them.
//
// /api/edit {text, set[] of key and value}: {text, mended[]} with the keys set; null
// remarks a key out, or a table that may be away. What that breaks elsewhere in the
// design is mended, and said in sentences. See package repair.
//
// /api/save {text, read}: {saved, read}.
//
// /api/sound {text, spot_m, programme, case, two_ears, dry} and /api/walk {text,
// from_m, way (a walk's name), programme, case, two_ears, dry}: audio/wav.
//
// /api/files {text, what}: application/zip.
//
// /api/measure is a form (multipart/form-data, RFC 7578) of text, as_built (true: no
// delays were set) and up to 65 files named recording, WAV files of what the array played
// of its sweep, named as for pappus measure; 256 MB in all. The answer is that of
// planjson.WriteMeasured and
//
//	sentences[]   how the whole array measured, in words
//
// GET /api/live is a WebSocket for a spot that is being moved. The client sends
//
//	seq, id (of a plan), spot_m, view (above, side), cells, band_hz,
//	quantity (level, smear, comb_onset, summing_loss; empty: no map)
//
// and gets, for the newest message when the one before is done,
//
//	seq, spot_m, place (as in a plan; where it is none, too)
//	drivers[]     id, channel, delay_us, level_db, field_arrival_us, path_m, straight_path_m, seen
//	channels[]    id, drivers, delay_us (what can be set), exact_us (before rounding), gain_db
//	response, measures   as in plan.json
//	echoes[]      as in plan.json
//	map           columns, rows, low_m and high_m (outer edges along and up),
//	              step_m, unit, values (row by row, lowest first; null: none),
//	              most_hz (held by cells without a comb onset)
//	polar         angle_deg, band_hz, level_db and unaligned_db; with cells above 32
//
// or seq with unknown (plan the text again), fault (the spot, in words) or error.
// Up to 32 cells is for dragging: such an answer is always finished. A finer one is
// for a spot at rest, and is given up when a newer message comes.
package page
