package wholefolder

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"

	"pappus/layout/prose"
)

// ErrForeign tells that a file in the folder stands in the way that was not
// written by the program, or was changed since.
var ErrForeign = errors.New("not written by this program, or changed since")

// Manifest is the name of the file in the folder that lists what was written.
const Manifest = "pappus-files.json"

const manifestNote = "The files that the program wrote here, with the SHA-256 of each. " +
	"It replaces and removes only these, and only while they are unchanged."

// manifest lists the files that were written, each with the hashes, in hexadecimal, of the
// contents that it may have.
type manifest map[string][]string

// manifestFile is a manifest as it is written: JSON, names in order.
type manifestFile struct {
	About string   `json:"about"`
	Files manifest `json:"files"`
}

// readManifest reads the folder's manifest; one that is not there lists
// nothing. A file of that name that is not a manifest is somebody else's.
func readManifest(root *os.Root) (manifest, error) {
	data, err := root.ReadFile(Manifest)
	if errors.Is(err, fs.ErrNotExist) {
		return manifest{}, nil
	}
	if err != nil {
		return nil, err
	}
	var read manifestFile
	if json.Unmarshal(data, &read) != nil || read.About != manifestNote {
		return nil, foreign(root, Manifest)
	}
	for name := range read.Files {
		if CheckName(name) != nil {
			return nil, foreign(root, Manifest)
		}
	}
	return read.Files, nil
}

// foreign is the error for a file that is in the way.
func foreign(root *os.Root, name string) error {
	return fmt.Errorf("%s is in the way: it was %w, and stays as it is; write into another folder, or move that file away",
		filepath.Join(root.Name(), name), ErrForeign)
}

// isOurs reports whether a file is a regular one whose content has one of the hashes.
func isOurs(root *os.Root, name string, hashes []string) (bool, error) {
	info, err := root.Lstat(name)
	if err != nil {
		return false, err
	}
	if !info.Mode().IsRegular() || len(hashes) == 0 {
		return false, nil
	}
	file, err := root.Open(name)
	if err != nil {
		return false, err
	}
	defer file.Close()
	hash, err := HashOf(file)
	if err != nil {
		return false, err
	}
	return slices.Contains(hashes, hash), nil
}

// MayReplace gives nil where a name is free or has a file of the program's own, ErrForeign where
// it has another.
func (f *Folder) MayReplace(name string) error {
	ours, err := isOurs(f.Root, name, f.old[name])
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil
	case err != nil:
		return fmt.Errorf("%s: %w", filepath.Join(f.Root.Name(), name), prose.Reason(err))
	case !ours:
		return foreign(f.Root, name)
	}
	return nil
}

// HashOf returns the hash of all that is still to be read, as manifests have it.
func HashOf(r io.Reader) (string, error) {
	sum := sha256.New()
	if _, err := io.Copy(sum, r); err != nil {
		return "", err
	}
	return hex.EncodeToString(sum.Sum(nil)), nil
}
