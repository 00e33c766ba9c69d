//go:build unix

package regular_test

import (
	"syscall"
	"testing"
)

// pipe makes a named pipe that nobody writes to.
func pipe(t *testing.T, path string) {
	t.Helper()
	if err := syscall.Mkfifo(path, 0o600); err != nil {
		t.Fatal(err)
	}
}
