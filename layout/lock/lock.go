// Package lock lets one run of the program at a time have a file.
//
// The system keeps the lock (flock, or LockFileEx on Windows) and takes it back when the process
// ends, however it ends: what is not held belongs to no living run. It binds only those who ask
// for it here. Where a file system has no locks, nobody waits and [Held.Sure] is false.
package lock

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"syscall"
	"time"
)

// ErrHeld tells that another run has the file.
var ErrHeld = errors.New("another run of pappus has it")

// pause is how often Take looks again: people do not notice it, and it costs nothing.
const pause = 20 * time.Millisecond

// Held is a file that this run has.
type Held struct {
	*os.File
	Root *os.Root // its folder
	name string
	Sure bool // the file system keeps locks: nobody else has it
}

// Take opens the file at path to read and write, made where there is none, and waits until
// nobody else has it. waits is called once if that is not at once; it may be nil. An error is of
// ctx or of the file system.
func Take(ctx context.Context, path string, waits func()) (*Held, error) {
	for {
		h, err := Try(path)
		if !errors.Is(err, ErrHeld) {
			return h, err
		}
		if waits != nil {
			waits()
			waits = nil
		}
		select {
		case <-ctx.Done():
			return nil, ctx.Err()
		case <-time.After(pause):
		}
	}
}

// Try is Take without waiting: ErrHeld where another run has the file.
func Try(path string) (*Held, error) {
	folder := filepath.Dir(path)
	root, err := os.OpenRoot(folder)
	if err != nil {
		if info, no := os.Stat(folder); no == nil && !info.IsDir() { // which OpenRoot tells in words of its own
			err = &fs.PathError{Op: "open", Path: path, Err: syscall.ENOTDIR}
		}
		return nil, err
	}
	h, err := try(root, filepath.Base(path))
	if err != nil {
		return nil, errors.Join(err, root.Close())
	}
	return h, nil
}

// tries is how often a file may be exchanged for another between opening and locking it.
const tries = 100

func try(root *os.Root, name string) (*Held, error) {
	for range tries {
		f, err := root.OpenFile(name, os.O_RDWR|os.O_CREATE, 0o666)
		if err != nil {
			return nil, err
		}
		sure, err := hold(f)
		if err == nil && same(f, root, name) {
			return &Held{f, root, name, sure}, nil
		}
		if err = errors.Join(err, f.Close()); err != nil {
			return nil, err
		}
	}
	return nil, fmt.Errorf("%s: %w", filepath.Join(root.Name(), name), ErrHeld)
}

// same tells whether a name still stands for the file that was opened: who had it before may
// have removed it, or given it another name.
func same(f *os.File, root *os.Root, name string) bool {
	mine, err := f.Stat()
	now, gone := root.Stat(name)
	return err == nil && gone == nil && os.SameFile(mine, now)
}

// Drop removes the file and lets others have its name.
func (h *Held) Drop() error {
	err := h.Root.Remove(h.name)
	if errors.Is(err, fs.ErrNotExist) {
		err = nil
	}
	return errors.Join(err, h.Close())
}

// Rename gives the file another name in its folder, in the place of what has that name.
func (h *Held) Rename(to string) error {
	if err := h.Root.Rename(h.name, to); err != nil {
		return err
	}
	return h.Close()
}

// Close lets others have the file.
func (h *Held) Close() error { return errors.Join(h.File.Close(), h.Root.Close()) }
