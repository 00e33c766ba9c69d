package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"pappus/layout/design"
	"pappus/layout/prose"

	"github.com/spf13/cobra"
)

func newNew(f *flags) *cobra.Command {
	return &cobra.Command{
		Use:   "new [DESIGN.toml]",
		Short: "Write a starter design with remarks; it never replaces a file",
		Args:  oneDesign,
		RunE: func(c *cobra.Command, args []string) error {
			path := first(args)
			if path == "" {
				path = "design.toml"
			}
			if err := create(path, design.DefaultTOML()); err != nil {
				return err
			}
			if f.quiet {
				return nil
			}
			_, err := fmt.Fprintf(c.OutOrStdout(), "%s is ready to edit; then: pappus plan %s\n", path, prose.Path(path))
			return err
		},
	}
}

// create writes a new file whole or not at all.
func create(path string, data []byte) error {
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if errors.Is(err, fs.ErrExist) {
		return prose.Saying(path+" is there already and stays as it is; name another file, or move that one away", err)
	}
	if folder := filepath.Dir(path); errors.Is(err, fs.ErrNotExist) && !exists(folder) {
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
