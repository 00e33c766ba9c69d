//go:build unix

package page

import "syscall"

func pipe(path string) error { return syscall.Mkfifo(path, 0o600) }
