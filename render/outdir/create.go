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

// Create writes a new file whole or not at all.
func Create(path string, data []byte) error {
	draft, err := wholefile.Begin(path)
	if err == nil {
		err = draft.PutNew(data)
	}
	if errors.Is(err, fs.ErrExist) {
		return prose.Saying(path+" is there already and stays as it is; name another file, or move that one away", err)
	}
	folder := filepath.Dir(path)
	if _, missing := os.Stat(folder); errors.Is(err, fs.ErrNotExist) && missing != nil {
		return prose.Saying(fmt.Sprintf("%s: there is no folder %s; make it first, or name another", path, folder), err)
	}
	return err
}
