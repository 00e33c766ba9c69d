package outdir

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"pappus/layout/prose"
	"pappus/layout/wholefile"
)

// Replace writes a file in the place of the one at path, with the same permissions: whole or
// not at all. A link is replaced itself.
func Replace(path string, text []byte) error {
	info, err := os.Stat(path)
	if err != nil {
		return err
	}
	return wholefile.Write(path, text, info.Mode())
}

// Create writes a new file whole or not at all.
func Create(path string, data []byte) error {
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if errors.Is(err, fs.ErrExist) {
		return prose.Saying(path+" is there already and stays as it is; name another file, or move that one away", err)
	}
	folder := filepath.Dir(path)
	if _, missing := os.Stat(folder); errors.Is(err, fs.ErrNotExist) && missing != nil {
		return prose.Saying(fmt.Sprintf("%s: there is no folder %s; make it first, or name another", path, folder), err)
	}
	if err != nil {
		return err
	}
	_, err = f.Write(data)
	if err = errors.Join(err, f.Close()); err != nil {
		return errors.Join(err, os.Remove(path))
	}
	return nil
}
