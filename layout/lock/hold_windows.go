package lock

import (
	"errors"
	"os"

	"golang.org/x/sys/windows"
)

// beyond is where the byte stands that is locked, high above what a file may hold: Windows keeps
// others from reading and writing what is locked.
const beyond = 1 << 30

// hold takes the lock of a file, and tells whether the file system has locks.
func hold(f *os.File) (sure bool, err error) {
	const how = windows.LOCKFILE_EXCLUSIVE_LOCK | windows.LOCKFILE_FAIL_IMMEDIATELY
	err = windows.LockFileEx(windows.Handle(f.Fd()), how, 0, 1, 0, &windows.Overlapped{OffsetHigh: beyond})
	switch {
	case err == nil:
		return true, nil
	case errors.Is(err, windows.ERROR_LOCK_VIOLATION), errors.Is(err, windows.ERROR_IO_PENDING):
		return false, ErrHeld
	case errors.Is(err, windows.ERROR_NOT_SUPPORTED), errors.Is(err, windows.ERROR_INVALID_FUNCTION):
		return false, nil
	}
	return false, &os.PathError{Op: "lock", Path: f.Name(), Err: err}
}
