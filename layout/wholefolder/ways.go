package wholefolder

import (
	"errors"
	"io/fs"
	"maps"
	"os"
	"slices"
)

// ahead puts new files into place, takes those away that are gone, lists the new ones, and takes
// the journal away. It may be broken off and begun again anywhere.
func (f *Folder) ahead(c change) error {
	for _, name := range slices.Sorted(maps.Keys(c.Files)) {
		if !f.there(c.new(name)) {
			continue // in place already
		}
		ours, err := f.stillOurs(c, name)
		switch {
		case err != nil:
			return err
		case ours:
			err = f.do(func() error { return f.Root.Rename(c.new(name), name) })
		case c.live:
			return foreign(f.Root, name)
		default: // somebody changed it since, and has the last word
			err = f.remove(c.new(name))
		}
		if err != nil {
			return err
		}
	}
	for _, name := range c.gone() {
		ours, err := f.stillOurs(c, name)
		if err == nil && ours && f.there(name) {
			err = f.remove(name)
		}
		if err != nil {
			return err
		}
	}
	if f.there(c.list()) {
		if err := f.do(func() error { return f.Root.Rename(c.list(), Manifest) }); err != nil {
			return err
		}
	}
	return f.done(c)
}

// back puts the old files into place again and takes the new ones away, and then the journal. It
// may be broken off and begun again anywhere.
func (f *Folder) back(c change) error {
	for _, name := range slices.Sorted(maps.Keys(c.Files)) {
		if f.there(c.new(name)) { // it was not put into place
			continue
		}
		ours, err := isOurs(f.Root, name, []string{c.Files[name]})
		if errors.Is(err, fs.ErrNotExist) {
			ours, err = true, nil
		}
		if err == nil && ours {
			err = f.restore(c, name)
		}
		if err != nil {
			return err
		}
	}
	for _, name := range c.gone() {
		if f.there(c.kept(name)) && !f.there(name) {
			if err := f.restore(c, name); err != nil {
				return err
			}
		}
	}
	if !f.there(c.list()) {
		if err := f.restore(c, Manifest); err != nil {
			return err
		}
	}
	return f.done(c)
}

// restore gives a name to what it stood for before; where that was nothing, it is taken away.
func (f *Folder) restore(c change, name string) error {
	if f.there(c.kept(name)) {
		return f.do(func() error { return f.Root.Rename(c.kept(name), name) })
	}
	if slices.Contains(c.Kept, name) {
		return nil // done already, by a run that was broken off
	}
	return f.remove(name)
}

// done takes the journal away, after which what is left under hidden names is litter.
func (f *Folder) done(c change) error {
	f.sync()
	if err := f.remove(journalName); err != nil {
		return err
	}
	f.sweep(func(name string) bool { return of(name, c.Tag) })
	return nil
}

// stillOurs tells whether a name is free or has what was the program's own before the change or
// is so after it. In the run that began the change a file that is the one that was just
// looked at need not be read again.
func (f *Folder) stillOurs(c change, name string) (bool, error) {
	if c.live {
		now, err := f.Root.Lstat(name)
		kept, none := f.Root.Lstat(c.kept(name))
		if err == nil && none == nil && os.SameFile(now, kept) {
			return true, nil
		}
	}
	hashes := c.Old[name]
	if hash, is := c.Files[name]; is {
		hashes = append(slices.Clone(hashes), hash)
	}
	ours, err := isOurs(f.Root, name, hashes)
	if errors.Is(err, fs.ErrNotExist) {
		return true, nil
	}
	return ours, err
}

func (f *Folder) there(name string) bool {
	_, err := f.Root.Lstat(name)
	return err == nil
}

// remove removes a file that may be gone.
func (f *Folder) remove(name string) error {
	err := f.do(func() error { return f.Root.Remove(name) })
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	return err
}
