package outdir

import (
	"encoding/json"
	"errors"
	"io/fs"
	"os"
	"slices"
)

// Manifest is the name of the file in the folder that lists what was written.
const Manifest = "pappus-files.json"

const manifestNote = "The files that the program wrote here, with the SHA-256 of each. " +
	"It replaces and removes only these, and only while they are unchanged."

// manifest is the list of files that were written, each with the hashes, in
// hexadecimal, of the contents that it may have.
type manifest struct {
	About string              `json:"about"`
	Files map[string][]string `json:"files"`
}

// readManifest reads the folder's manifest; one that is not there lists
// nothing. A file of that name that is not a manifest is somebody else's.
func readManifest(root *os.Root) (manifest, error) {
	m := manifest{About: manifestNote, Files: map[string][]string{}}
	data, err := root.ReadFile(Manifest)
	if errors.Is(err, fs.ErrNotExist) {
		return m, nil
	}
	if err != nil {
		return m, unusable(root.Name(), err)
	}
	var read manifest
	if json.Unmarshal(data, &read) != nil || read.About != manifestNote {
		return m, foreign(root, Manifest)
	}
	for name, hashes := range read.Files {
		if checkName(name) != nil {
			return m, foreign(root, Manifest)
		}
		m.Files[name] = hashes
	}
	return m, nil
}

// lists reports whether the manifest lists a file with a hash.
func (m manifest) lists(name, hash string) bool {
	return slices.Contains(m.Files[name], hash)
}

// with returns the manifest with the hashes of another added.
func (m manifest) with(other manifest) manifest {
	both := manifest{About: m.About, Files: map[string][]string{}}
	for name, hashes := range m.Files {
		both.Files[name] = slices.Clone(hashes)
	}
	for name, hashes := range other.Files {
		for _, hash := range hashes {
			if !both.lists(name, hash) {
				both.Files[name] = append(both.Files[name], hash)
			}
		}
	}
	return both
}

// bytes returns the manifest as it is written: JSON, names in order.
func (m manifest) bytes() ([]byte, error) {
	data, err := json.MarshalIndent(m, "", "  ")
	if err != nil {
		return nil, err
	}
	return append(data, '\n'), nil
}
