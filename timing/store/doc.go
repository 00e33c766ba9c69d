// Package store keeps what takes minutes to compute in a folder of the user's, from one run of
// the program to the next.
//
// An entry is a file, named by its [Key]: a hash of what went in. It begins with a line that
// says which form of entry it is, and the SHA-256 (FIPS 180-4) of form, key and content; one
// that is cut, damaged, of another form or under another's name is removed when it is asked
// for, and counts as not there. Entries are written whole or not at all (layout/wholefile).
//
// The folder's size has a bound. When an entry is put in, those go that were used longest ago
// (the file's time of change is when it was last used), until the rest is within it. Other
// files in the folder are neither counted nor touched.
//
// Several processes may use one folder at once. Each entry is written by one at a time, and what
// one that was killed left half written goes when another puts an entry in. Of two that put the same key,
// the later one stays; an entry may go between two looks at it, and is then computed again.
// Whoever is last to put one in sees all others, so that the bound holds in the end.
//
// All of it may be deleted at any time, and may fail: a folder that is not there and cannot be
// made, or cannot be written into, keeps nothing, and the program works as if it were empty.
//
// Numbers are kept by [Pack] in single precision and not compressed. For the coefficients of 40
// pistons on a rigid ball of 150 mm, 40 frequencies from 100 Hz to 4 kHz, orders to 25, with an
// error of 1e-3 of the largest as a numerical solution has it, DEFLATE (RFC 1951) leaves 93 % of
// 8.7 MB, or 85 % with the bytes of each place together: not worth the time.
package store
