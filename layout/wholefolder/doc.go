// Package wholefolder changes the files that the program has in a folder, all at once, one run at
// a time, and never over a file that somebody else wrote or changed.
//
// The folder's manifest, [Manifest], lists the files that were written, with the SHA-256 (FIPS
// 180-4) of what was written. A file is the program's own while it is listed and its content still
// has that hash. Anything else belongs to somebody else and stays as it is.
//
// One step. New files stand in the folder under hidden names until a journal is put into place by
// one rename: with it the folder has changed. What then follows, each file to its own name, is
// finished by whoever looks next, should the program be killed amid it: [Settle] is called
// wherever the program reads a file, and [Hold] wherever it writes some. Where a step fails while
// the program lives, another journal turns everything back. Both ways may be broken off
// and begun again any number of times; a file that somebody changed in between stays.
//
// For other programs each file is the old or the new one, whole, at every instant, as they change
// from first to last within some milliseconds. An exchange of whole folders would have it
// in one instant, but the same program that opens one file before and one after has a mixture
// either way; and it would take from under people what is theirs: a file saved into the folder
// amid the exchange would be lost with the old folder, a shell that stands in it would stand in
// one that is gone, folders of theirs inside cannot be in both at once, and it cannot be where the
// folder is ".", a mount, or in a parent that may not be written. So there is this one way, on
// all systems.
//
// A run holds the folder (layout/lock) while it writes; the next waits. What lies there
// under hidden names when nobody holds it is of a run that was killed, and is swept. New
// files and the journal are on the disk before the first name changes, so that a loss of
// power is as a kill.
package wholefolder
