package outdir

import (
	"cmp"
	"context"
	"io"
	"sync/atomic"

	"pappus/timing/cores"
)

// File is a file to be written: its name, and what writes it.
type File struct {
	Name  string
	Write func(io.Writer) error
}

// Write writes files into a folder on all cores, all or none, beginning with the first.
// It tells say, from several goroutines, which it comes to, and stops once ctx ends.
func Write(ctx context.Context, path string, files []File, say func(name string)) error {
	d, err := Open(path)
	if err != nil {
		return err
	}
	defer d.Abort()
	errs := make([]error, len(files))
	var failed atomic.Bool
	cores.Each(len(files), func(_, i int) {
		if failed.Load() {
			return
		}
		if errs[i] = ctx.Err(); errs[i] == nil {
			say(files[i].Name)
			errs[i] = d.Add(files[i].Name, files[i].Write)
		}
		if errs[i] != nil {
			failed.Store(true)
		}
	})
	if err := cmp.Or(errs...); err != nil {
		return err
	}
	return d.Commit()
}
