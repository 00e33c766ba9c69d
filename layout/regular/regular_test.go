package regular_test

import (
	"errors"
	"io/fs"
	"net"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"pappus/layout/regular"
	"pappus/layout/wholefile"
)

// TestRead: files and links to them are read; of anything else there is an error at once, which
// says what is there.
func TestRead(t *testing.T) {
	folder := t.TempDir()
	at := func(name string) string { return filepath.Join(folder, name) }
	if err := os.WriteFile(at("file"), []byte("12345678"), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.Mkdir(at("folder"), 0o700); err != nil {
		t.Fatal(err)
	}
	pipe(t, at("pipe"))
	for to, from := range map[string]string{"file": "link", "pipe": "link to a pipe", "none": "link to nothing"} {
		if err := os.Symlink(to, at(from)); err != nil {
			t.Skip(err)
		}
	}
	if l, err := net.Listen("unix", at("socket")); err == nil {
		defer l.Close()
	} else {
		t.Skip(err)
	}
	for _, c := range []struct {
		name, path string
		most       int
		is         error
		says       string
	}{
		{"a file", at("file"), 8, nil, ""},
		{"a link", at("link"), 8, nil, ""},
		{"a byte too large", at("file"), 7, regular.ErrLarge, "too large; must be at most 7 bytes"},
		{"a folder", at("folder"), 8, syscall.EISDIR, "is a directory"},
		{"a pipe", at("pipe"), 8, regular.ErrKind, "it is a pipe, not a file"},
		{"a link to a pipe", at("link to a pipe"), 8, regular.ErrKind, "it is a pipe, not a file"},
		{"a socket", at("socket"), 8, regular.ErrKind, "it is a socket, not a file"},
		{"a device", os.DevNull, 8, regular.ErrKind, "it is a device, not a file"},
		{"a device without an end", "/dev/zero", 8, regular.ErrKind, "it is a device, not a file"},
		{"nothing", at("none"), 8, fs.ErrNotExist, "no such file"},
		{"a link to nothing", at("link to nothing"), 8, fs.ErrNotExist, "no such file"},
	} {
		t.Run(c.name, func(t *testing.T) {
			data, err := regular.Read(c.path, c.most)
			if !errors.Is(err, c.is) || err != nil && !strings.Contains(err.Error(), c.says) {
				t.Fatalf("%v, want %v", err, c.is)
			}
			if want := map[bool]string{true: "12345678"}[c.is == nil]; string(data) != want {
				t.Errorf("%q", data)
			}
		})
	}
}

// TestSweeps: a draft of a run that was killed is gone once the file is read; that of a living run,
// what is no draft of a file and drafts of others stay, and the file is read as it is.
func TestSweeps(t *testing.T) {
	folder := t.TempDir()
	for name, text := range map[string]string{"a": "one", "b": "two", "c": "three", wholefile.Name("a"): "on", wholefile.Name("other"): "oth"} {
		if err := os.WriteFile(filepath.Join(folder, name), []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.Mkdir(filepath.Join(folder, wholefile.Name("c")), 0o700); err != nil {
		t.Fatal(err)
	}
	living, err := wholefile.Begin(filepath.Join(folder, "b"))
	if err != nil {
		t.Fatal(err)
	}
	defer living.Abandon()
	for name, text := range map[string]string{"a": "one", "b": "two", "c": "three"} {
		if data, err := regular.Read(filepath.Join(folder, name), 100); err != nil || string(data) != text {
			t.Errorf("%s: %q, %v", name, data, err)
		}
	}
	for name, stays := range map[string]bool{"a": false, "b": true, "c": true, "other": true} {
		if _, err := os.Lstat(filepath.Join(folder, wholefile.Name(name))); (err == nil) != stays {
			t.Errorf("the draft of %s: %v", name, err)
		}
	}
}
