package outdir

import (
	"encoding/json"
	"errors"
	"io"
	"io/fs"
	"maps"
	"os"
	"slices"
)

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
		return nil, unusable(root.Name(), err)
	}
	var read manifestFile
	if json.Unmarshal(data, &read) != nil || read.About != manifestNote {
		return nil, foreign(root, Manifest)
	}
	for name := range read.Files {
		if checkName(name) != nil {
			return nil, foreign(root, Manifest)
		}
	}
	return read.Files, nil
}

// with returns the manifest with the hashes of another added.
func (m manifest) with(other manifest) manifest {
	both := manifest{}
	maps.Copy(both, m)
	for name, hashes := range other {
		both[name] = slices.Concat(m[name], hashes)
	}
	return both
}

// writeManifest writes a manifest under a temporary name.
func (d *Dir) writeManifest(temp string, m manifest) error {
	_, err := d.writeTemp(temp, func(w io.Writer) error {
		out := json.NewEncoder(w)
		out.SetIndent("", "  ")
		return out.Encode(manifestFile{manifestNote, m})
	})
	return err
}
