// Package kill runs a program under ptrace and ends it, or fails it, at a system call that
// changes a file: at each in turn, which no clock can hit.
package kill

import "syscall"

// Fate is what comes of a program at the system calls that change files in a folder.
type Fate struct {
	Folder string        // of whose files writes count
	At     int           // the number of the call, from 1; 0: none
	Errno  syscall.Errno // as of that call those that need room on the disk fail so; 0: the program is killed before it
	All    bool          // with Errno: all fail, not only those that need room
}

// End is how a program ended.
type End struct {
	Calls  int  // that change files, up to its end
	Killed bool // by its fate
	Code   int  // its exit code, where it was not killed
}
