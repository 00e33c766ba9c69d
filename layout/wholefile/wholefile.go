// Package wholefile writes one file whole or not at all, and one run at a time.
//
// What is new goes to a draft beside the file, which takes its name in one step: who reads the
// file sees the old one or the new one. The draft of a.toml is .a.toml.pappus-new, and its writer
// holds it (layout/lock). So who has the draft may read the file, change it and write it, and no
// other run of the program comes in between; and the draft of a run that was killed is used, and
// so taken away, by the next that writes the file, or swept by the next that reads it
// (layout/regular).
package wholefile

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"
	"time"

	"pappus/layout/lock"
)

// patience is how long one waits for another run that writes the same file: that takes moments,
// and a program that is halted in the midst of it should not halt all others for good.
const patience = 5 * time.Second

// Draft is what is to take the place of a file.
type Draft struct {
	held *lock.Held
	path string
	to   string // its last part
}

// Name is the name of a file's draft.
func Name(file string) string { return "." + file + ".pappus-new" }

// Begin makes the draft of the file at path; other runs wait until it is put into place, or
// abandoned, and so does this one for them, for some seconds (lock.ErrHeld then). A link is
// replaced itself.
func Begin(path string) (*Draft, error) {
	ctx, stop := context.WithTimeout(context.Background(), patience)
	defer stop()
	folder, file := filepath.Split(path)
	h, err := lock.Take(ctx, filepath.Join(folder, Name(file)), nil)
	if errors.Is(err, context.DeadlineExceeded) {
		err = fmt.Errorf("%s cannot be written: %w; try again when that is done", path, lock.ErrHeld)
	}
	if err != nil {
		return nil, naming(path, err)
	}
	return &Draft{h, path, file}, nil
}

// naming lets an error name the file: who asked for it knows of no draft.
func naming(path string, err error) error {
	var at *fs.PathError
	if errors.As(err, &at) {
		at.Path = path
	}
	return err
}

// Put writes data to the draft, with the permissions mode (0: those that new files have), and puts it in the place of the file.
// On an error the file is as it was. The draft is gone in either case.
func (d *Draft) Put(data []byte, mode fs.FileMode) error {
	err := d.fill(data, mode)
	if err == nil {
		err = d.held.Rename(d.to)
	}
	if err != nil {
		return errors.Join(err, d.held.Drop())
	}
	d.held = nil
	return nil
}

// PutNew is Put where there must be no file yet: an error that is fs.ErrExist where there is one.
func (d *Draft) PutNew(data []byte) error {
	defer d.Abandon()
	if err := d.fill(data, 0); err != nil {
		return err
	}
	draft := filepath.Base(d.held.Name())
	err := d.held.Root.Link(draft, d.to)
	if err == nil || errors.Is(err, fs.ErrExist) {
		return err
	}
	// Here are no links; no other run of the program comes in between these two.
	if _, err := d.held.Root.Lstat(d.to); err == nil {
		return &fs.PathError{Op: "create", Path: d.to, Err: fs.ErrExist}
	}
	return d.held.Root.Rename(draft, d.to)
}

// fill writes data to the draft and on to the disk.
func (d *Draft) fill(data []byte, mode fs.FileMode) error {
	return naming(d.path, d.write(data, mode))
}

func (d *Draft) write(data []byte, mode fs.FileMode) error {
	if err := d.held.Truncate(0); err != nil { // of a run that was killed
		return err
	}
	if _, err := d.held.Write(data); err != nil {
		return err
	}
	if mode != 0 {
		if err := d.held.Chmod(mode.Perm()); err != nil {
			return err
		}
	}
	return d.held.Sync()
}

// Abandon takes the draft away, and the file stays as it is. After Put it does nothing.
func (d *Draft) Abandon() {
	if d.held != nil {
		_ = d.held.Drop() // where it cannot be, the next takes it up
		d.held = nil
	}
}

// Write is Begin and Put.
func Write(path string, data []byte, mode fs.FileMode) error {
	d, err := Begin(path)
	if err != nil {
		return err
	}
	defer d.Abandon()
	return d.Put(data, mode)
}

// Sweep removes a draft that belongs to no living run.
func Sweep(draft string) {
	h, err := lock.Try(draft)
	switch {
	case err != nil: // in use, or next time
	case h.Sure:
		_ = h.Drop()
	default:
		_ = h.Close()
	}
}
