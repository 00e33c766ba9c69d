package lock_test

import (
	"context"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"testing"

	"pappus/layout/lock"
)

func take(t *testing.T, path string) *lock.Held {
	t.Helper()
	h, err := lock.Try(path)
	if err != nil {
		t.Fatal(err)
	}
	if !h.Sure {
		t.Skip("no locks here")
	}
	return h
}

// TestOne: one has a file, and the next when that one has dropped it, closed it or given it
// another name.
func TestOne(t *testing.T) {
	for _, c := range []struct {
		name   string
		end    func(h *lock.Held) error
		leaves string
	}{
		{"dropped", (*lock.Held).Drop, ""},
		{"dropped when it is gone", func(h *lock.Held) error { return errors.Join(os.Remove(h.Name()), h.Drop()) }, ""},
		{"closed", (*lock.Held).Close, "a"},
		{"renamed", func(h *lock.Held) error { return h.Rename("b") }, "b"},
	} {
		t.Run(c.name, func(t *testing.T) {
			path := filepath.Join(t.TempDir(), "a")
			first := take(t, path)
			if _, err := lock.Try(path); !errors.Is(err, lock.ErrHeld) {
				t.Errorf("the second: %v", err)
			}
			waited := 0
			second, err := lock.Take(t.Context(), path, func() {
				waited++
				if err := c.end(first); err != nil {
					t.Error(err)
				}
				left, _ := filepath.Glob(filepath.Join(filepath.Dir(path), "*"))
				if (c.leaves == "") != (len(left) == 0) || len(left) == 1 && filepath.Base(left[0]) != c.leaves {
					t.Errorf("left: %v", left)
				}
			})
			if err != nil || waited != 1 {
				t.Fatalf("%v, waited %d times", err, waited)
			}
			now, err := os.Stat(path)
			mine, no := second.Stat()
			if err != nil || no != nil || !os.SameFile(now, mine) {
				t.Errorf("has a file that is not there: %v, %v", err, no)
			}
			if err := second.Drop(); err != nil {
				t.Error(err)
			}
		})
	}
}

// TestNone: no file, no lock.
func TestNone(t *testing.T) {
	if _, err := lock.Try(filepath.Join(t.TempDir(), "none", "a")); !errors.Is(err, fs.ErrNotExist) {
		t.Error(err)
	}
	path := filepath.Join(t.TempDir(), "a")
	defer take(t, path).Close()
	ctx, end := context.WithCancel(t.Context())
	end()
	if _, err := lock.Take(ctx, path, nil); !errors.Is(err, context.Canceled) {
		t.Error(err)
	}
}
