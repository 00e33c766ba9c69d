// Package outdir writes a set of files into a folder whole or not at all, and
// never over a file that somebody else wrote or changed.
//
// Each file goes first to a hidden temporary name in the same folder. Commit
// renames them all into place; until then nothing that was there changes, and
// Abort or any error takes the temporary files away again.
//
// A manifest, [Manifest], in the folder lists the files that were written with
// the SHA-256 (FIPS 180-4) of what was written. A later run replaces or removes
// a file only when the manifest lists it and its content still has that hash.
// Anything else in the folder belongs to somebody else: Add and Commit give
// an error where a name clashes, and leave all other files alone. A
// file that was edited by hand counts as somebody else's.
//
// The renames of one Commit are undone where one of them fails. Should the
// program be killed amid them, the folder may hold files of both runs; the
// manifest then lists the hashes of both, so the next run puts it right.
// Files are not synced to the disk one by one: this guards against errors and
// interruption, not against loss of power. Two runs at once into one folder
// are not guarded against each other.
package outdir
