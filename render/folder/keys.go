package folder

import (
	"fmt"
	"os"
	"path/filepath"

	"pappus/layout/design"
	"pappus/layout/wholefile"
	"pappus/timing/impedancefit"
)

// SetKeys sets keys of a design that is a file, once the outcome is a good design. The
// file is replaced as a whole, and no other run changes it meanwhile.
func SetKeys(path string, keys []impedancefit.Key) error {
	path, err := filepath.EvalSymlinks(path)
	if err != nil {
		return err
	}
	draft, err := wholefile.Begin(path)
	if err != nil {
		return err
	}
	defer draft.Abandon()
	info, err := os.Stat(path)
	if err != nil {
		return err
	}
	text, err := design.ReadFile(path, design.MostBytes)
	if err != nil {
		return err
	}
	for _, k := range keys {
		if text, err = design.Set(text, k.Name, k.Value); err != nil {
			return err
		}
	}
	if _, err := design.Parse(path, text); err != nil {
		return fmt.Errorf("nothing written: %w", err)
	}
	return draft.Put(text, info.Mode())
}
