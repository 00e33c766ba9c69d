package page

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io/fs"
	"net/http"
	"path/filepath"
	"sync"

	"pappus/layout/design"
	"pappus/layout/prose"
	"pappus/render/outdir"
)

// mostText is the most that a design may hold, in bytes; package design has the
// same limit.
const mostText = 1 << 20

// disk is the one file that the page may write.
type disk struct {
	path  string // empty: none, the built-in demo stands for it
	mu    sync.Mutex
	seen  string          // hash of what was read or written last
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
	if err == nil {
		d.seen = hashOf(text)
	}
	return text, err
}

// now returns what the file holds for those who will not save it.
func (d *disk) now() ([]byte, error) {
	if d.path == "" {
		return design.DefaultTOML(), nil
	}
	d.mu.Lock()
	defer d.mu.Unlock()
	return d.load()
}

// load reads the file, and which files it names. The caller has locked d.
func (d *disk) load() ([]byte, error) {
	text, err := design.ReadFile(d.path, mostText)
	if err == nil {
		d.names = namesOf(text)
	}
	return text, err
}

// own tells whether the file names that file.
func (d *disk) own(name string) bool {
	d.mu.Lock()
	defer d.mu.Unlock()
	return d.names[name]
}

// save replaces the file, whole or not at all, if it still holds what has that
// hash; where none is given, what was read or written last. It returns the hash of
// what is there then.
func (d *disk) save(text []byte, held string) (string, error) {
	if d.path == "" {
		return "", &failure{http.StatusForbidden, "the built-in design has no file; download it instead"}
	}
	if len(text) > mostText {
		return "", &failure{http.StatusRequestEntityTooLarge, "too large; at most 1 MB of text"}
	}
	d.mu.Lock()
	defer d.mu.Unlock()
	if held == "" {
		held = d.seen
	}
	// A link stays one: what it points to is replaced.
	path, err := filepath.EvalSymlinks(d.path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return "", &failure{http.StatusConflict, "the file is gone from the disk"}
	case err != nil:
		return "", fmt.Errorf("the file cannot be written: %w", prose.Reason(err))
	}
	now, err := design.ReadFile(path, mostText)
	if err != nil {
		return "", err
	}
	if hashOf(now) != held {
		return "", &failure{http.StatusConflict, "the file was changed by another program since it was read"}
	}
	if err := outdir.Replace(path, text); err != nil {
		return "", fmt.Errorf("the file cannot be written: %w", prose.Reason(err))
	}
	d.seen, d.names = hashOf(text), namesOf(text)
	return d.seen, nil
}
