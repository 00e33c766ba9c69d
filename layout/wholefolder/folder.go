package wholefolder

import (
	"context"
	"crypto/rand"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"time"

	"pappus/layout/lock"
	"pappus/layout/prose"
)

// Folder is a folder that this run holds.
type Folder struct {
	Root *os.Root
	tag  string // part of this run's hidden names
	held *lock.Held
	old  manifest
	step func() error                  // called before each change; nil but in tests, which flush nothing to the disk
	link func(name, kept string) error // Root.Link but in tests
}

// Hold takes a folder that is there: it waits until no other run holds it, and calls waits once
// if that is not at once; what a run that was killed has left is put right and swept. Call
// Release when done. An error is of ctx, of the file system, or ErrForeign where the
// manifest's name is taken by another file.
func Hold(ctx context.Context, path string, waits func()) (*Folder, error) {
	return hold(ctx, path, waits, nil)
}

func hold(ctx context.Context, path string, waits func(), step func() error) (*Folder, error) {
	held, err := lock.Take(ctx, filepath.Join(path, lockName), waits)
	if err != nil {
		return nil, err
	}
	f := &Folder{Root: held.Root, link: held.Root.Link, tag: rand.Text()[:12], held: held, step: step}
	if err := f.begin(); err != nil {
		f.Release()
		return nil, err
	}
	return f, nil
}

// begin puts right and sweeps, and reads what is the program's own.
func (f *Folder) begin() (err error) {
	if err = f.settle(); err != nil {
		return err
	}
	if f.held.Sure {
		f.sweep(litter.MatchString)
	}
	f.old, err = readManifest(f.Root)
	return err
}

// Release takes away what is left of this run under hidden names, and lets the next run in.
func (f *Folder) Release() {
	if f.held == nil {
		return
	}
	if _, err := f.Root.Lstat(journalName); err != nil { // else it names what is needed
		f.sweep(func(name string) bool { return of(name, f.tag) })
	}
	if f.do(f.held.Drop) != nil { // the next run takes it up
		_ = f.held.Close()
	}
	f.held = nil
}

// Hidden is the name under which a new file stands until Commit.
func (f *Folder) Hidden(name string) string { return hidden("new", f.tag, name) }

// sweep removes the files that are asked for.
func (f *Folder) sweep(what func(name string) bool) {
	all, _ := fs.ReadDir(f.Root.FS(), ".") // what cannot be seen is swept another time
	for _, e := range all {
		if what(e.Name()) {
			_ = f.do(func() error { return f.Root.Remove(e.Name()) })
		}
	}
}

// do does one change to the folder.
func (f *Folder) do(change func() error) error {
	if f.step != nil {
		if err := f.step(); err != nil {
			return err
		}
	}
	return change()
}

// longestChange is how long a look waits for a run that is just changing the folder, which takes
// some milliseconds: long enough for any disk that works.
const longestChange = 10 * time.Second

// Settle puts a folder right whose change was broken off, so that what is read there is of one
// run. It is called before a file in the folder is read; where there is nothing to do, that is
// one look at the disk. An error says that it cannot be put right, and why.
func Settle(path string) error {
	if _, err := os.Lstat(filepath.Join(path, journalName)); err != nil {
		return nil
	}
	ctx, stop := context.WithTimeout(context.Background(), longestChange)
	defer stop()
	f, err := Hold(ctx, path, nil)
	if errors.Is(err, fs.ErrNotExist) || errors.Is(err, ErrForeign) {
		return nil // there is no folder, or nothing of the program's own in it
	}
	if errors.Is(err, context.DeadlineExceeded) {
		err = lock.ErrHeld
	}
	if err != nil {
		return fmt.Errorf("%s: a run that was ended amid writing left this folder half changed, and it cannot be put right: %w", path, prose.Reason(err))
	}
	f.Release()
	return nil
}
