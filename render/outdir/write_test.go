package outdir

import (
	"context"
	"errors"
	"fmt"
	"path/filepath"
	"sync"
	"testing"
)

// TestWrite: all files or none, each said once; the first error is returned and stops the
// rest, and so does a context that has ended.
func TestWrite(t *testing.T) {
	var files []File
	want := map[string]string{}
	for i := range 20 {
		name := fmt.Sprintf("f%d.csv", i)
		want[name] = name
		files = append(files, File{name, text(name)})
	}
	ended, stop := context.WithCancel(t.Context())
	stop()
	for _, c := range []struct {
		name  string
		ctx   context.Context
		files []File
		want  map[string]string
		err   error
	}{
		{"all", t.Context(), files, want, nil},
		{"one fails", t.Context(), append([]File{{"bad.csv", halfWay}}, files...), nil, errHalfWay},
		{"ended", ended, files, nil, context.Canceled},
	} {
		t.Run(c.name, func(t *testing.T) {
			path := filepath.Join(t.TempDir(), "out")
			var mu sync.Mutex
			said := map[string]int{}
			err := Write(c.ctx, path, c.files, func(name string) {
				mu.Lock()
				defer mu.Unlock()
				said[name]++
			})
			if !errors.Is(err, c.err) {
				t.Fatalf("got %v, want %v", err, c.err)
			}
			if c.err != nil {
				if entries, _ := filepath.Glob(path); len(entries) > 0 {
					t.Errorf("the folder was left: %v", entries)
				}
				return
			}
			check(t, path, c.want)
			for name := range c.want {
				if said[name] != 1 {
					t.Errorf("%s was said %d times", name, said[name])
				}
			}
		})
	}
}
