package outdir

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"sync"
	"testing"
	"time"
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
			}, nil)
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

// TestWriteEnds: where ctx ends amid writing, nothing is left behind by the time Write returns,
// nor while a file's writer goes on as if nothing were.
func TestWriteEnds(t *testing.T) {
	for range 20 {
		path := filepath.Join(t.TempDir(), "out")
		ctx, end := context.WithCancel(t.Context())
		defer end()
		var files []File
		for i := range 30 {
			files = append(files, File{fmt.Sprintf("f%d.csv", i), func(w io.Writer) error {
				if i == 10 {
					end()
				}
				return text("x")(w)
			}})
		}
		if err := Write(ctx, path, files, func(string) {}, nil); !errors.Is(err, context.Canceled) {
			t.Fatal(err)
		}
		if _, err := os.Stat(path); !errors.Is(err, fs.ErrNotExist) {
			t.Fatalf("the folder was left: %v", err)
		}
	}
}

// TestWriteGoesOn: a writer that does not look at ctx keeps nothing from being taken away.
func TestWriteGoesOn(t *testing.T) {
	path := filepath.Join(t.TempDir(), "out")
	ctx, end := context.WithCancel(t.Context())
	under, goOn := make(chan bool), make(chan bool)
	done := make(chan error)
	go func() {
		done <- Write(ctx, path, []File{{"a.csv", func(w io.Writer) error {
			close(under)
			<-goOn
			return text("x")(w)
		}}}, func(string) {}, nil)
	}()
	<-under
	end()
	for exists(path) {
		time.Sleep(time.Millisecond)
	}
	close(goOn)
	if err := <-done; !errors.Is(err, context.Canceled) || exists(path) {
		t.Error(err, exists(path))
	}
}
