// Package design reads and checks the design file: one TOML file that says
// everything about a loudspeaker of many small drivers.
//
// The reader is strict. An unknown key, a wrong type, a missing or an
// impossible value is one *Error, one line of text, that names file, line, key
// and what is allowed. Everything but body, driver and spot has a default; the
// tables surface and room stand for things that are there only if they are.
//
// Sources: TOML 1.0 (toml.io). The allowed ranges are the program's own: wide
// enough for any loudspeaker that one person can build, narrow enough to catch
// a wrong unit.
package design
