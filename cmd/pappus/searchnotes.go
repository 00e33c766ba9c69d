package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"pappus/layout/lock"
	"pappus/layout/prose"
	"pappus/layout/regular"
	"pappus/timing/search"
)

// notes are the journals of a search in its folder: the one that is being written, which has
// ".part" at its end until all is in it, so that make takes only a whole one for done.
type notes struct {
	folder, path string     // of the whole journal
	part         *lock.Held // other runs wait until it is closed
	made         bool       // the folder was made for it
	carried      bool       // part begins with what a whole one of before held
	reading      string     // the share that is being read
	open         []*os.File
}

// partEnding ends the name of a journal that is not whole yet.
const partEnding = ".part"

// openNotes opens the journal of a search or of a share of it, and makes its folder. Where another
// run is at the same it waits for it, and waits says so. A whole
// one is gone on from where it is of the same job.
func openNotes(ctx context.Context, folder string, share, shares int, waits func(path string) func()) (*notes, error) {
	n := &notes{folder: folder, path: filepath.Join(folder, "screened.csv")}
	if shares > 0 {
		n.path = filepath.Join(folder, fmt.Sprintf("screened_%d_of_%d.csv", share, shares))
	}
	n.made = !exists(folder)
	if err := os.MkdirAll(folder, 0o777); err != nil {
		return nil, fmt.Errorf("the folder %s cannot be made: %w; name another", folder, prose.Reason(err))
	}
	var err error
	if n.part, err = lock.Take(ctx, n.path+partEnding, waits(n.path)); err != nil {
		return nil, fmt.Errorf("%s: %w", n.path+partEnding, prose.Reason(err))
	}
	return n, n.carryOver()
}

// carryOver begins a journal that is empty with what a whole one of before holds: the search
// may be the same.
func (n *notes) carryOver() error {
	info, err := n.part.Stat()
	if err != nil || info.Size() > 0 {
		return err
	}
	whole, err := regular.Open(n.path)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err != nil {
		return fmt.Errorf("%s: %w", n.path, prose.Reason(err))
	}
	defer whole.Close()
	begin := make([]byte, len(search.JournalBegins))
	if _, err := io.ReadFull(whole, begin); err != nil || string(begin) != search.JournalBegins {
		return fmt.Errorf("%s is in the way: no search wrote it; name another folder, or move that file away", n.path)
	}
	n.carried = true
	_, err = io.Copy(n.part, io.MultiReader(bytes.NewReader(begin), whole))
	return err
}

// afresh takes out what was carried over of another search, and tells whether there was any.
func (n *notes) afresh() bool {
	if !n.carried {
		return false
	}
	n.carried = false
	return n.part.Truncate(0) == nil
}

// journal is what a search writes to; nil where nothing is kept.
func (n *notes) journal() search.Journal {
	if n.part == nil {
		return nil
	}
	return n.part
}

// done puts the journal in its place, as whole.
func (n *notes) done() error {
	if n.part == nil {
		return nil
	}
	err := n.part.Rename(filepath.Base(n.path))
	n.part = nil
	return err
}

// shares opens the journals of all shares in the folder, by their names.
func (n *notes) shares() ([]io.Reader, error) {
	paths, err := filepath.Glob(filepath.Join(escaped(n.folder), "screened_*_of_*.csv"))
	if err != nil || len(paths) == 0 {
		return nil, fmt.Errorf("--join: %s has no screened_1_of_16.csv or the like; first: pappus search --share 1/16, 2/16 and so on", n.folder)
	}
	var out []io.Reader
	for _, path := range paths {
		f, err := regular.Open(path)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", path, prose.Reason(err))
		}
		n.open = append(n.open, f)
		out = append(out, named{f, path, n})
	}
	return out, nil
}

// escaped writes a folder so that a pattern takes it as it is.
func escaped(folder string) string {
	return strings.NewReplacer(`*`, `\*`, `?`, `\?`, `[`, `\[`).Replace(folder)
}

// named is a share's journal that tells when it is read.
type named struct {
	io.Reader
	path string
	of   *notes
}

// Read reads of the journal.
func (r named) Read(p []byte) (int, error) {
	r.of.reading = r.path
	return r.Reader.Read(p)
}

// explained says what an error of the journals means, and what to do.
func (n *notes) explained(err error) error {
	path := n.path + partEnding
	if n.reading != "" {
		path = n.reading
	}
	switch {
	case errors.Is(err, search.ErrJournal):
		return fmt.Errorf("%s is of another search, another seed or another Pappus; name another folder with -o, or delete that file", prose.Path(path))
	case errors.Is(err, search.ErrMissing):
		return fmt.Errorf("--join: not all shares are in %s: %w", n.folder, err)
	}
	return err
}

// drop empties the journal of a search that found nothing.
func (n *notes) drop() {
	if n.part != nil {
		_ = n.part.Truncate(0) // where it cannot be, it is gone on from
	}
}

// close closes what is open, and takes a journal away that nothing was written to, with the
// folder where that was made for it and holds nothing else.
func (n *notes) close() {
	for _, f := range n.open {
		_ = f.Close() // read
	}
	if n.part == nil {
		return
	}
	if info, err := n.part.Stat(); err != nil || info.Size() > 0 {
		_ = n.part.Close() // written before
		return
	}
	_ = n.part.Drop()
	if n.made {
		_ = os.Remove(n.folder) // stays where it holds anything
	}
}
