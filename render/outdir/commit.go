package outdir

import (
	"errors"
	"fmt"
	"maps"
	"slices"

	"pappus/layout/prose"
)

// Commit puts all added files into place, removes unchanged files of an earlier
// run that were not added this time, and writes the manifest. On an error
// nothing in the folder has changed; the error says what
// file stands in the way, or is that of the first Add that failed.
func (d *Dir) Commit() error {
	if !d.end() {
		return errDone
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
	names := slices.Sorted(maps.Keys(d.added))
	for _, name := range names {
		if err := d.mayReplace(name); err != nil {
			return err
		}
	}
	moves, err := d.moves(names)
	if err == nil {
		err = d.move(moves)
	}
	if err != nil {
		return fmt.Errorf("%s: %w", d.path, prose.Reason(err))
	}
	return nil
}

// move is one rename of a commit.
type move struct {
	from, to string
	copied   string // what stood at to before, to undo by; empty: nothing did
	aside    bool   // an old file, to be removed in the end
}

// moves lists the renames: the manifest comes first, with the hashes of both runs, and last,
// with those of this one, so that there is no moment without one.
func (d *Dir) moves(names []string) ([]move, error) {
	fresh, copied := manifest{}, ""
	for _, name := range names {
		fresh[name] = []string{d.added[name]}
	}
	if _, err := d.root.Lstat(Manifest); err == nil {
		copied = d.temp("list", "copy")
		if err := d.writeManifest(copied, d.old); err != nil {
			return nil, err
		}
	}
	first, last := d.temp("list", "first"), d.temp("list", "last")
	if err := errors.Join(d.writeManifest(first, d.old.with(fresh)), d.writeManifest(last, fresh)); err != nil {
		return nil, err
	}
	out := []move{{from: first, to: Manifest, copied: copied}}
	for _, name := range names {
		if _, err := d.root.Lstat(name); err == nil {
			out = append(out, move{from: name, to: d.temp("old", name), aside: true})
		}
		out = append(out, move{from: d.temp("new", name), to: name})
	}
	for _, name := range slices.Sorted(maps.Keys(d.old)) {
		if _, again := d.added[name]; again {
			continue
		}
		// What is gone, or somebody else's by now, is not ours to remove.
		if ours, err := d.isOurs(name); err == nil && ours {
			out = append(out, move{from: name, to: d.temp("old", name), aside: true})
		}
	}
	return append(out, move{from: last, to: Manifest}), nil
}

// move renames everything; where one fails, those before it are undone, the last first.
func (d *Dir) move(moves []move) error {
	for i, m := range moves {
		err := d.rename(m.from, m.to)
		if err == nil {
			continue
		}
		for _, done := range slices.Backward(moves[:i]) {
			back := [2]string{done.to, done.from}
			if done.copied != "" {
				back = [2]string{done.copied, done.to}
			}
			err = errors.Join(err, d.rename(back[0], back[1]))
		}
		return err
	}
	for _, m := range moves {
		if m.aside {
			d.temps = append(d.temps, m.to)
		}
	}
	return nil
}
