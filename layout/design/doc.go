// Package design reads and checks the design file: one TOML file that says
// everything about a loudspeaker of many small drivers.
//
// What there is to say stands in one table (keys.go), a row for each key: what may stand
// there, in which unit, what it is where nothing does, and where in a Design, which is in
// SI, its value goes. Reading, messages, the listing for forms, values written back and
// edits all follow from the rows; so does package dampinglog, whose own rows Decode reads.
// check.go has what hangs on several keys.
//
// The reader is strict. An unknown key, a wrong type, a missing or an
// impossible value is one *Error, one line of text, that names file, line, key
// and what is allowed. Everything but body, driver and spot has a default; the
// tables surface, room and woofer stand for things that are there only if they are.
//
// Sources: TOML 1.0 (toml.io). The allowed ranges are the program's own: wide
// enough for any loudspeaker that one person can build, narrow enough to catch
// a wrong unit.
package design
