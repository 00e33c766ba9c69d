package outdir

import (
	"cmp"
	"context"
	"errors"
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
// It tells say, from several goroutines, which it comes to, and calls waits once where another
// run writes there first. Once ctx ends nothing is left behind at once, whatever a file's writer
// is still about; only a change that has begun by then is finished.
func Write(ctx context.Context, path string, files []File, say func(name string), waits func()) error {
	d, err := Open(ctx, path, waits)
	if err != nil {
		return err
	}
	defer d.Abort()
	defer context.AfterFunc(ctx, d.Abort)()
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
	if err := cmp.Or(ctx.Err(), cmp.Or(errs...)); err != nil {
		return err
	}
	if err := d.Commit(); !errors.Is(err, errDone) {
		return err
	}
	return ctx.Err()
}
