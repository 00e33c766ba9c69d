package folder

import (
	"fmt"
	"path/filepath"

	"pappus/layout/design"
	"pappus/render/outdir"
	"pappus/timing/impedancefit"
)

// SetKeys sets keys of a design that is a file, once the outcome is a good design. The
// file is replaced as a whole.
func SetKeys(path string, keys []impedancefit.Key) error {
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
	if path, err = filepath.EvalSymlinks(path); err != nil {
		return err
	}
	return outdir.Replace(path, text)
}
