// Package wholefile writes one file whole or not at all.
package wholefile

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
)

// Write writes data, with the permissions mode, to a temporary file beside path and puts it in
// the place of what is there: who reads path sees the old file or the new one, whichever process
// writes it. A link is replaced itself. The temporary file's name is a point, the file's own and
// a number, as in ".a.toml.123"; it is left only where the program is killed.
func Write(path string, data []byte, mode fs.FileMode) (err error) {
	f, err := os.CreateTemp(filepath.Dir(path), "."+filepath.Base(path)+".*")
	if err != nil {
		return err
	}
	defer func() {
		if err != nil {
			_ = f.Close() // closed already where the rename failed
			err = errors.Join(err, os.Remove(f.Name()))
		}
	}()
	if _, err := f.Write(data); err != nil {
		return err
	}
	if err := f.Chmod(mode.Perm()); err != nil {
		return err
	}
	if err := f.Sync(); err != nil {
		return err
	}
	if err := f.Close(); err != nil {
		return err
	}
	return os.Rename(f.Name(), path)
}
