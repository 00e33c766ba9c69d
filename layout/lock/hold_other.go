//go:build !(darwin || dragonfly || freebsd || illumos || linux || netbsd || openbsd || windows)

package lock

import "os"

// hold does nothing on systems without such locks.
func hold(*os.File) (sure bool, err error) { return false, nil }
