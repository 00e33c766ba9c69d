package wholefile_test

import (
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
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
