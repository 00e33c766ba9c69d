//go:build darwin || dragonfly || freebsd || illumos || linux || netbsd || openbsd

package lock

import (
	"errors"
	"os"
	"syscall"
)

// hold takes the lock of a file, and tells whether the file system has locks.
func hold(f *os.File) (sure bool, err error) {
	for {
		err := syscall.Flock(int(f.Fd()), syscall.LOCK_EX|syscall.LOCK_NB)
		switch {
		case err == nil:
			return true, nil
		case errors.Is(err, syscall.EINTR):
		case errors.Is(err, syscall.EWOULDBLOCK):
			return false, ErrHeld
		case errors.Is(err, errors.ErrUnsupported), errors.Is(err, syscall.ENOLCK), errors.Is(err, syscall.EINVAL):
			return false, nil
		default:
			return false, &os.PathError{Op: "lock", Path: f.Name(), Err: err}
		}
	}
}
