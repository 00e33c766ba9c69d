package page

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io/fs"
	"net/http"
	"os"
	"path/filepath"
	"sync"

	"pappus/layout/design"
	"pappus/layout/prose"
	"pappus/layout/wholefile"
)

// mostText is the most that a design may hold, in bytes.
const mostText = design.MostBytes

// disk is the one file that the page may write.
type disk struct {
	path  string // empty: none, the built-in demo stands for it
	mu    sync.Mutex
	place string          // where the path led to when it was first read, over whatever links
	names map[string]bool // files that it names
}

// hashOf names a text by its content.
func hashOf(text []byte) string {
	sum := sha256.Sum256(text)
	return hex.EncodeToString(sum[:16])
}

// read returns what the file holds.
func (d *disk) read() ([]byte, error) {
	if d.path == "" {
		return design.DefaultTOML(), nil
	}
	d.mu.Lock()
	defer d.mu.Unlock()
	text, err := d.load()
	return text, onPage(err)
}

// load reads the file, and which files it names. The caller has locked d.
func (d *disk) load() ([]byte, error) {
	if err := d.stays(); err != nil {
		return nil, err
	}
	text, err := design.ReadFile(d.path, mostText)
	if err == nil {
		d.names = namesOf(text)
	}
	return text, err
}

// onPage puts an error of the file into words for the page, which knows which file it is.
func onPage(err error) error {
	var bad *design.Error
	if errors.As(err, &bad) && !errors.Is(err, fs.ErrNotExist) {
		return &failure{http.StatusConflict, "the design’s file cannot be read: " + bad.Reason}
	}
	return err
}

// stays tells whether the path leads where it did: what a link leads to that came later is neither
// shown nor written over. The caller has locked d.
func (d *disk) stays() error {
	now, err := filepath.EvalSymlinks(d.path)
	switch {
	case err != nil:
		return nil // who reads it says why
	case d.place == "":
		d.place = now
	case now != d.place:
		return &failure{http.StatusConflict, fmt.Sprintf("the design’s file leads elsewhere since the program began, to %s; start the program again if that is meant", prose.Path(now))}
	}
	return nil
}

// own tells whether the file names that file.
func (d *disk) own(name string) bool {
	d.mu.Lock()
	defer d.mu.Unlock()
	return d.names[name]
}

// holds is the error where the file does not hold what has that hash. The caller has locked d.
func (d *disk) holds(hash string) error {
	now, err := d.load()
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return &failure{http.StatusConflict, "the file is gone from the disk"}
	case err != nil:
		return onPage(err)
	case hashOf(now) != hash:
		return &failure{http.StatusConflict, "the file was changed by another program since it was read; take that, merge both, or keep yours and save once more"}
	}
	return nil
}

// save replaces the file, whole or not at all and with no other run in between, if it still holds
// what has that hash. It returns the hash of what is there then.
func (d *disk) save(text []byte, held string) (string, error) {
	switch {
	case d.path == "":
		return "", &failure{http.StatusForbidden, "the built-in design has no file; download it instead"}
	case len(text) > mostText:
		return "", &failure{http.StatusRequestEntityTooLarge, "too large; at most 1 MB of text"}
	case held == "":
		return "", &failure{http.StatusBadRequest, "read: missing; must say which state of the file is to be written over"}
	}
	d.mu.Lock()
	defer d.mu.Unlock()
	if err := d.holds(held); err != nil {
		return "", err
	}
	draft, err := wholefile.Begin(d.place)
	if err != nil {
		return "", fmt.Errorf("the file cannot be written: %w", prose.Reason(err))
	}
	defer draft.Abandon()
	if err := d.holds(held); err != nil { // nobody else writes it now
		return "", err
	}
	// A link stays one: what it points to is replaced.
	info, err := os.Stat(d.place)
	if err == nil {
		err = draft.Put(text, info.Mode())
	}
	if err != nil {
		return "", fmt.Errorf("the file cannot be written: %w", prose.Reason(err))
	}
	d.names = namesOf(text)
	return hashOf(text), nil
}
