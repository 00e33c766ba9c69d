package wholefile_test

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"sync"
	"testing"

	"pappus/layout/wholefile"

	"github.com/google/go-cmp/cmp"
)

// TestWrite: a file is new or in the place of another, with its permissions; where that cannot
// be, all is as it was. Nothing else is left in the folder.
func TestWrite(t *testing.T) {
	for _, c := range []struct {
		name    string
		path    string
		before  func(folder string) error
		mode    fs.FileMode
		fails   bool
		entries []string
	}{
		{"new", "a", func(string) error { return nil }, 0o640, false, []string{"a"}},
		{"in place of another", "a", file("a"), 0o600, false, []string{"a"}},
		{"in place of a link", "a", link("b", "a"), 0o644, false, []string{"a", "b"}},
		{"no folder", "none/a", func(string) error { return nil }, 0o644, true, nil},
		{"a folder in the way", "a", file("a/b"), 0o644, true, []string{"a"}},
		{"a file for a folder", "a/b", file("a"), 0o644, true, []string{"a"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			folder := t.TempDir()
			if err := c.before(folder); err != nil {
				t.Skip(err)
			}
			path := filepath.Join(folder, c.path)
			err := wholefile.Write(path, []byte("new"), c.mode)
			if (err != nil) != c.fails {
				t.Fatalf("fails %v, got %v", c.fails, err)
			}
			if diff := cmp.Diff(c.entries, names(t, folder)); diff != "" {
				t.Errorf("in the folder: %s", diff)
			}
			if c.fails {
				return
			}
			info, err := os.Lstat(path)
			if err != nil || !info.Mode().IsRegular() || runtime.GOOS != "windows" && info.Mode().Perm() != c.mode {
				t.Errorf("%v, %v", info, err)
			}
			if data, err := os.ReadFile(path); err != nil || string(data) != "new" {
				t.Errorf("%q, %v", data, err)
			}
		})
	}
}

// file makes a file, and its folder.
func file(name string) func(string) error {
	return func(folder string) error {
		path := filepath.Join(folder, name)
		if err := os.MkdirAll(filepath.Dir(path), 0o777); err != nil {
			return err
		}
		return os.WriteFile(path, []byte("old"), 0o666)
	}
}

// link makes a file and a link to it.
func link(to, name string) func(string) error {
	return func(folder string) error {
		if err := file(to)(folder); err != nil {
			return err
		}
		return os.Symlink(to, filepath.Join(folder, name))
	}
}

func names(t *testing.T, folder string) (out []string) {
	t.Helper()
	entries, err := os.ReadDir(folder)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		out = append(out, e.Name())
	}
	return out
}

// TestPutNew: a new file, never in the place of another, and without a draft left behind.
func TestPutNew(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "a")
	for i, want := range []error{nil, fs.ErrExist} {
		d, err := wholefile.Begin(path)
		if err != nil {
			t.Fatal(err)
		}
		if err := d.PutNew([]byte{byte('1' + i)}); !errors.Is(err, want) {
			t.Errorf("got %v, want %v", err, want)
		}
		if data, err := os.ReadFile(path); err != nil || string(data) != "1" {
			t.Errorf("%q, %v", data, err)
		}
	}
	if diff := cmp.Diff([]string{"a"}, names(t, folder)); diff != "" {
		t.Error(diff)
	}
}

// TestLeftDraft: the draft of a run that was killed is taken up, however long it is; one that is
// being written is not swept, and one that nobody writes is.
func TestLeftDraft(t *testing.T) {
	folder := t.TempDir()
	path, draft := filepath.Join(folder, "a"), filepath.Join(folder, wholefile.Name("a"))
	left := func() {
		t.Helper()
		if err := os.WriteFile(draft, []byte("half of something long"), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	left()
	if err := wholefile.Write(path, []byte("new"), 0o644); err != nil {
		t.Fatal(err)
	}
	if data, err := os.ReadFile(path); err != nil || string(data) != "new" {
		t.Errorf("%q, %v", data, err)
	}
	d, err := wholefile.Begin(path)
	if err != nil {
		t.Fatal(err)
	}
	wholefile.Sweep(draft)
	if diff := cmp.Diff([]string{wholefile.Name("a"), "a"}, names(t, folder)); diff != "" {
		t.Error(diff)
	}
	d.Abandon()
	d.Abandon()
	left()
	wholefile.Sweep(draft)
	if diff := cmp.Diff([]string{"a"}, names(t, folder)); diff != "" {
		t.Error(diff)
	}
}

// TestAtOnce: each of many that read a file and write it again sees what the others wrote.
func TestAtOnce(t *testing.T) {
	path := filepath.Join(t.TempDir(), "a")
	if err := os.WriteFile(path, nil, 0o644); err != nil {
		t.Fatal(err)
	}
	const many = 20
	var group sync.WaitGroup
	for range many {
		group.Go(func() {
			d, err := wholefile.Begin(path)
			if err != nil {
				t.Error(err)
				return
			}
			defer d.Abandon()
			text, err := os.ReadFile(path)
			if err = errors.Join(err, d.Put(append(text, 'x'), 0o644)); err != nil {
				t.Error(err)
			}
		})
	}
	group.Wait()
	if text, err := os.ReadFile(path); err != nil || len(text) != many {
		t.Errorf("%d of %d, %v", len(text), many, err)
	}
}

// TestNames: errors name the file that was asked for, not its draft.
func TestNames(t *testing.T) {
	path := filepath.Join(t.TempDir(), "none", "a")
	if err := file("none")(filepath.Dir(filepath.Dir(path))); err != nil {
		t.Fatal(err)
	}
	var at *fs.PathError
	if err := wholefile.Write(filepath.Join(path, "b"), nil, 0); !errors.As(err, &at) || at.Path != filepath.Join(path, "b") {
		t.Error(err)
	}
}
