//go:build unix

package intake

import (
	"path/filepath"
	"strings"
	"syscall"
	"testing"
)

// TestPipe: a pipe that nobody writes to keeps nobody waiting; the others are judged.
func TestPipe(t *testing.T) {
	dir := t.TempDir()
	if err := syscall.Mkfifo(filepath.Join(dir, "a.csv"), 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := source(t, dir).Read(t.Context()); err == nil || !strings.Contains(err.Error(), "a.csv") {
		t.Errorf("%v, want one that names a.csv", err)
	}
}
