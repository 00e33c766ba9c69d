package outdir

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"maps"
	"slices"

	"pappus/layout/prose"
)

// Commit puts all added files into place, removes unchanged files of an earlier
// run that were not added this time, and writes the manifest. On an error
// nothing in the folder has changed; the error wraps ErrForeignFile where a
// file stands in the way, or is that of the first Add that failed.
func (d *Dir) Commit() error {
	if !d.end() {
		return ErrDone
	}
	err := d.commit()
	d.finish()
	if err != nil {
		d.unmake()
	}
	return err
}

func (d *Dir) commit() error {
	if d.err != nil {
		return d.err
	}
	fresh := manifest{About: manifestNote, Files: map[string][]string{}}
	names := slices.Sorted(maps.Keys(d.added))
	for _, name := range names {
		if err := d.mayReplace(name); err != nil {
			return err
		}
		fresh.Files[name] = []string{d.added[name]}
	}
	moves := journal{rename: d.rename}
	if err := d.move(&moves, names, fresh); err != nil {
		return errors.Join(fmt.Errorf("%s: %w", d.path, prose.Reason(err)), moves.undo())
	}
	d.temps = append(d.temps, moves.aside...)
	return nil
}

// move renames everything into place. The manifest comes first, with the
// hashes of both runs, and last, with those of this one.
func (d *Dir) move(moves *journal, names []string, fresh manifest) error {
	if err := d.putFirstManifest(moves, d.old.with(fresh)); err != nil {
		return err
	}
	for _, name := range names {
		if err := d.put(moves, name); err != nil {
			return err
		}
	}
	for _, name := range slices.Sorted(maps.Keys(d.old.Files)) {
		if err := d.removeStale(moves, name); err != nil {
			return err
		}
	}
	return d.putManifest(moves, "last", fresh)
}

// put puts the old file of a name aside, if there is one, and the new one in
// its place.
func (d *Dir) put(moves *journal, name string) error {
	_, err := d.root.Lstat(name)
	if err == nil {
		err = moves.putAside(name, d.temp("old", name))
	}
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	return moves.move(d.temp("new", name), name)
}

// removeStale puts a file of an earlier run aside where this run did not write
// it and nobody changed it.
func (d *Dir) removeStale(moves *journal, name string) error {
	if _, again := d.added[name]; again {
		return nil
	}
	if ours, err := d.isOurs(name); err != nil || !ours {
		return nil // gone, or somebody else's by now: not ours to remove
	}
	return moves.putAside(name, d.temp("old", name))
}

// putFirstManifest writes the manifest over the old one, of which it keeps a
// copy to undo by. There is no moment without a manifest.
func (d *Dir) putFirstManifest(moves *journal, m manifest) error {
	if _, err := d.root.Lstat(Manifest); errors.Is(err, fs.ErrNotExist) {
		return d.putManifest(moves, "first", m)
	}
	if err := d.writeManifest("copy", d.old); err != nil {
		return err
	}
	if err := d.writeManifest("first", m); err != nil {
		return err
	}
	return moves.replace(d.temp("list", "first"), Manifest, d.temp("list", "copy"))
}

// putManifest writes a manifest and renames it into place; step tells apart
// the temporary names.
func (d *Dir) putManifest(moves *journal, step string, m manifest) error {
	if err := d.writeManifest(step, m); err != nil {
		return err
	}
	return moves.move(d.temp("list", step), Manifest)
}

// writeManifest writes a manifest under the temporary name of a step.
func (d *Dir) writeManifest(step string, m manifest) error {
	data, err := m.bytes()
	if err != nil {
		return err
	}
	_, err = d.writeTemp(d.temp("list", step), func(w io.Writer) error {
		_, err := w.Write(data)
		return err
	})
	return err
}

// journal renames files and remembers how to undo it.
type journal struct {
	rename func(from, to string) error
	undos  []func() error
	aside  []string // old files under temporary names, to be removed in the end
}

func (j *journal) move(from, to string) error {
	return j.replace(from, to, "")
}

// replace renames a file over another, of which copied is a copy, if any.
func (j *journal) replace(from, to, copied string) error {
	if err := j.rename(from, to); err != nil {
		return err
	}
	j.undos = append(j.undos, func() error {
		if copied != "" {
			return j.rename(copied, to)
		}
		return j.rename(to, from)
	})
	return nil
}

func (j *journal) putAside(name, aside string) error {
	if err := j.move(name, aside); err != nil {
		return err
	}
	j.aside = append(j.aside, aside)
	return nil
}

// undo renames everything back, last first.
func (j *journal) undo() error {
	var failed error
	for _, undo := range slices.Backward(j.undos) {
		failed = errors.Join(failed, undo())
	}
	return failed
}
