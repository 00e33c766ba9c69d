package wholefolder

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"maps"
	"os"
	"slices"

	"pappus/layout/prose"
)

// change is what a commit is to do, as its journal has it.
type change struct {
	About string            `json:"about"`
	Back  bool              `json:"back"`  // it is to be undone
	Tag   string            `json:"tag"`   // of the run that began it
	Files map[string]string `json:"files"` // new files: name and hash
	Old   manifest          `json:"old"`   // what was the program's own before
	Kept  []string          `json:"kept"`  // what has a second name meanwhile
	live  bool              // it is this run's, and old files have just been looked at
}

const journalNote = "A change to this folder that is under way. Pappus finishes it when it looks here next."

func (c change) new(name string) string  { return hidden("new", c.Tag, name) }
func (c change) kept(name string) string { return hidden("old", c.Tag, name) }
func (c change) list() string            { return hidden("list", c.Tag, "") }

// gone are the files of before that are not in the new set.
func (c change) gone() (out []string) {
	for _, name := range slices.Sorted(maps.Keys(c.Old)) {
		if _, again := c.Files[name]; !again {
			out = append(out, name)
		}
	}
	return out
}

// Commit puts files into place, whose hashes it is given by their names and which stand under
// their hidden names; removes those of before that are not among them; and writes the manifest.
// On an error nothing in the folder has changed.
func (f *Folder) Commit(files map[string]string) error {
	c := change{About: journalNote, Tag: f.tag, Files: files, Old: f.old, live: true}
	if err := f.prepare(&c); err != nil {
		return err
	}
	if err := f.do(func() error { return f.Root.Rename(hidden("ahead", c.Tag, ""), journalName) }); err != nil {
		return err
	}
	f.sync()
	err := f.ahead(c)
	if err == nil {
		return nil
	}
	if turn := f.do(func() error { return f.Root.Rename(hidden("back", c.Tag, ""), journalName) }); turn != nil {
		return errors.Join(err, turn)
	}
	return errors.Join(err, f.back(c))
}

// prepare keeps what is to be replaced, by another name, and writes the manifest that is to be,
// and a journal for each way.
func (f *Folder) prepare(c *change) error {
	for _, name := range slices.Sorted(maps.Keys(c.Files)) {
		if err := f.keep(c, name, c.Old[name]); err != nil {
			return err
		}
	}
	for _, name := range c.gone() {
		// What is gone, or somebody else's by now, is not ours to remove.
		if err := f.keep(c, name, c.Old[name]); err != nil && !errors.Is(err, ErrForeign) {
			return err
		}
	}
	if f.there(Manifest) {
		if err := f.second(Manifest, c.kept(Manifest)); err != nil {
			return err
		}
		c.Kept = append(c.Kept, Manifest)
	}
	list := manifestFile{manifestNote, manifest{}}
	for name, hash := range c.Files {
		list.Files[name] = []string{hash}
	}
	turned := *c
	turned.Back = true
	err := errors.Join(f.write(c.list(), list), f.write(hidden("ahead", c.Tag, ""), c), f.write(hidden("back", c.Tag, ""), turned))
	f.sync()
	return err
}

// keep gives a file of ours a second name, if it is there.
func (f *Folder) keep(c *change, name string, hashes []string) error {
	info, err := f.Root.Lstat(name)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err != nil {
		return err
	}
	if !info.Mode().IsRegular() || len(hashes) == 0 {
		return foreign(f.Root, name)
	}
	if err := f.second(name, c.kept(name)); err != nil {
		return err
	}
	if ours, err := isOurs(f.Root, c.kept(name), hashes); err != nil || !ours {
		return errors.Join(err, f.do(func() error { return f.Root.Remove(c.kept(name)) }), foreign(f.Root, name))
	}
	c.Kept = append(c.Kept, name)
	return nil
}

// second gives a file a second name; where there are no links it has a copy.
func (f *Folder) second(name, kept string) error {
	if f.do(func() error { return f.link(name, kept) }) == nil {
		return nil
	}
	from, err := f.Root.Open(name)
	if err != nil {
		return err
	}
	defer from.Close()
	return f.fill(kept, func(w io.Writer) error {
		_, err := io.Copy(w, from)
		return err
	})
}

// write writes JSON under a hidden name.
func (f *Folder) write(name string, v any) error {
	return f.fill(name, func(w io.Writer) error {
		out := json.NewEncoder(w)
		out.SetIndent("", "  ")
		return out.Encode(v)
	})
}

// fill writes a new file and puts it on the disk.
func (f *Folder) fill(name string, write func(io.Writer) error) error {
	return f.do(func() (err error) {
		file, err := f.Root.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
		if err != nil {
			return err
		}
		defer func() { err = errors.Join(err, file.Close()) }()
		return errors.Join(write(file), f.flush(file))
	})
}

// sync puts the names on the disk, where the system does that.
func (f *Folder) sync() {
	if at, err := f.Root.Open("."); err == nil {
		_ = f.flush(at)
		_ = at.Close()
	}
}

// flush waits until a file is on the disk.
func (f *Folder) flush(file *os.File) error {
	if f.step != nil {
		return nil
	}
	return file.Sync()
}

// settle finishes the change that a journal tells of, if there is one.
func (f *Folder) settle() error {
	text, err := f.Root.ReadFile(journalName)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err != nil {
		return err
	}
	var c change
	if json.Unmarshal(text, &c) != nil || c.About != journalNote || !of(c.list(), c.Tag) {
		return foreign(f.Root, journalName)
	}
	for _, name := range slices.Concat(slices.Collect(maps.Keys(c.Files)), c.gone()) {
		if CheckName(name) != nil {
			return foreign(f.Root, journalName)
		}
	}
	if c.Back {
		err = f.back(c)
	} else {
		err = f.ahead(c)
	}
	if err != nil {
		return fmt.Errorf("%s: %w", f.Root.Name(), prose.Reason(err))
	}
	return nil
}
