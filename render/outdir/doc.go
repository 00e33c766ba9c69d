// Package outdir writes a set of files into a folder whole or not at all, on all cores, and
// never over a file that somebody else wrote or changed.
//
// Each file goes first to a hidden name in the same folder. Commit puts them all into place in
// one step (layout/wholefolder, which also has the manifest by which the program knows its own
// files); until then nothing that was there changes, and Abort or any error takes the hidden
// files away again. Runs that write into one folder do so one after another.
package outdir
