package store_test

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"

	"pappus/timing/store"
)

// overhead is what an entry takes beside its content: the line of its form, and a checksum.
const overhead = int64(len("pappus store 1\n") + 32)

// key is a key by a name.
func key(name string) store.Key { return store.KeyOf("test", 1, []byte(name)) }

// put puts entries, and ends the test where one is not kept.
func put(t *testing.T, s store.Store, names ...string) {
	t.Helper()
	for _, name := range names {
		if err := s.Put(key(name), []byte(name)); err != nil {
			t.Fatal(err)
		}
	}
}

// path is the only file in a store's folder.
func path(t *testing.T, s store.Store) string {
	t.Helper()
	files, err := filepath.Glob(filepath.Join(s.Folder, "*"))
	if err != nil || len(files) != 1 {
		t.Fatalf("%v, %v", files, err)
	}
	return files[0]
}

// TestGet: what was put is there for its key, for a second store of the folder too.
func TestGet(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "not", "yet")
	s := store.Store{Folder: folder}
	for _, data := range []string{"a", "", "\n", strings.Repeat("long ", 1e5)} {
		if got, there := s.Get(key("b")); there {
			t.Errorf("%q is there before it was put", got)
		}
		if err := s.Put(key("a"), []byte(data)); err != nil {
			t.Fatal(err)
		}
		got, there := store.Store{Folder: folder}.Get(key("a"))
		if !there || string(got) != data {
			t.Errorf("%d bytes of %d, %v", len(got), len(data), there)
		}
	}
	info, err := os.Stat(path(t, s))
	if err != nil || runtime.GOOS != "windows" && info.Mode().Perm() != 0o600 {
		t.Errorf("%v, %v", info, err)
	}
}

// TestKeyOf: another kind, version or input is another key; the same are the same.
func TestKeyOf(t *testing.T) {
	seen := map[store.Key]string{}
	for _, c := range []struct {
		kind    string
		version int
		input   string
	}{
		{"body", 1, "in"}, {"body", 2, "in"}, {"body", 1, "In"}, {"body", 1, ""}, {"bod", 1, "yin"},
		{"body 1", 1, "in"}, {"body", 11, "in"}, {"body", 1, "1\nin"}, {"", 1, "in"}, {"body\" 1\n", 1, "in"},
		{"body", 1, "y 2\nin"}, {"body 1\ny", 2, "in"},
	} {
		k := store.KeyOf(c.kind, c.version, []byte(c.input))
		if other, there := seen[k]; there {
			t.Errorf("%v has the key of %s", c, other)
		}
		if seen[k] = fmt.Sprint(c); k != store.KeyOf(c.kind, c.version, []byte(c.input)) {
			t.Errorf("%v has two keys", c)
		}
	}
}

// TestDamaged: an entry that is not as it was written is not there, and is removed.
func TestDamaged(t *testing.T) {
	flip := func(at int) func([]byte) []byte {
		return func(file []byte) []byte {
			if at < 0 {
				at += len(file)
			}
			file[at] ^= 1
			return file
		}
	}
	for _, c := range []struct {
		name   string
		change func(file []byte) []byte
	}{
		{"empty", func([]byte) []byte { return nil }},
		{"cut in the form", func(f []byte) []byte { return f[:5] }},
		{"cut after the form", func(f []byte) []byte { return f[:15] }},
		{"cut in the checksum", func(f []byte) []byte { return f[:40] }},
		{"cut after the checksum", func(f []byte) []byte { return f[:overhead] }},
		{"cut at the end", func(f []byte) []byte { return f[:len(f)-1] }},
		{"longer", func(f []byte) []byte { return append(f, 0) }},
		{"a bit of the checksum", flip(20)},
		{"a bit of the content", flip(-1)},
		{"another form", func(f []byte) []byte { return bytes.Replace(f, []byte("store 1"), []byte("store 2"), 1) }},
		{"another program's", func([]byte) []byte { return []byte("[Desktop Entry]\n") }},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := store.Store{Folder: t.TempDir()}
			put(t, s, "content")
			at := path(t, s)
			file, err := os.ReadFile(at)
			if err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(at, c.change(file), 0o600); err != nil {
				t.Fatal(err)
			}
			notThere(t, s, "content", at)
		})
	}
}

// TestForeign: what stands under an entry's name and is none goes too.
func TestForeign(t *testing.T) {
	s := store.Store{Folder: t.TempDir()}
	put(t, s, "one")
	one := path(t, s)
	put(t, s, "two")
	if err := os.Remove(one); err != nil {
		t.Fatal(err)
	}
	two := path(t, s)
	for _, c := range []struct {
		name string
		make func() error
	}{
		{"another key's entry", func() error { return os.Rename(two, one) }},
		{"a folder", func() error { return os.Mkdir(one, 0o777) }},
		{"a link", func() error { return os.Symlink(os.DevNull, one) }},
	} {
		t.Run(c.name, func(t *testing.T) {
			if err := c.make(); err != nil {
				t.Skip(err)
			}
			notThere(t, s, "one", one)
			put(t, s, "one")
			if _, there := s.Get(key("one")); !there {
				t.Error("it cannot be put again")
			}
			if err := os.Remove(one); err != nil {
				t.Error(err)
			}
		})
	}
}

// notThere checks that an entry is not there, and that its file is gone.
func notThere(t *testing.T, s store.Store, name, path string) {
	t.Helper()
	if got, there := s.Get(key(name)); there || got != nil {
		t.Errorf("%q is there", got)
	}
	if _, err := os.Lstat(path); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("the file is left: %v", err)
	}
}

// TestVersion: a result of another version is not there, and does not take the place of this one.
func TestVersion(t *testing.T) {
	s := store.Store{Folder: t.TempDir()}
	for version := 1; version < 4; version++ {
		k := store.KeyOf("field", version, []byte("in"))
		if _, there := s.Get(k); there {
			t.Errorf("version %d is there before it was put", version)
		}
		if err := s.Put(k, fmt.Append(nil, version)); err != nil {
			t.Fatal(err)
		}
	}
	for version := 1; version < 4; version++ {
		got, _ := s.Get(store.KeyOf("field", version, []byte("in")))
		if string(got) != fmt.Sprint(version) {
			t.Errorf("version %d: %q", version, got)
		}
	}
}

// TestNowhere: a store without a folder that can be used keeps nothing, and does no harm.
func TestNowhere(t *testing.T) {
	folder := t.TempDir()
	file := filepath.Join(folder, "file")
	if err := os.WriteFile(file, []byte("mine"), 0o666); err != nil {
		t.Fatal(err)
	}
	readOnly := filepath.Join(folder, "read only")
	if err := os.Mkdir(readOnly, 0o555); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name string
		at   string
		err  bool
	}{
		{"none", "", false},
		{"a file in its place", file, true},
		{"a file above it", filepath.Join(file, "below"), true},
		{"read only", readOnly, true},
	} {
		t.Run(c.name, func(t *testing.T) {
			if c.at == readOnly && (os.Geteuid() == 0 || runtime.GOOS == "windows") {
				t.Skip("may write everywhere")
			}
			s := store.Store{Folder: c.at}
			if err := s.Put(key("a"), nil); (err != nil) != c.err || err != nil && !strings.Contains(err.Error(), c.at) {
				t.Error(err)
			}
			if _, there := s.Get(key("a")); there {
				t.Error("an entry is there")
			}
		})
	}
	if data, err := os.ReadFile(file); err != nil || string(data) != "mine" {
		t.Errorf("%q, %v", data, err)
	}
}

// TestReadOnly: a folder that can only be read serves what it has.
func TestReadOnly(t *testing.T) {
	if os.Geteuid() == 0 || runtime.GOOS == "windows" {
		t.Skip("may write everywhere")
	}
	s := store.Store{Folder: t.TempDir()}
	put(t, s, "a")
	if err := os.Chmod(s.Folder, 0o555); err != nil {
		t.Fatal(err)
	}
	defer os.Chmod(s.Folder, 0o755)
	if got, _ := s.Get(key("a")); string(got) != "a" {
		t.Errorf("%q", got)
	}
	if err := s.Put(key("b"), nil); !errors.Is(err, fs.ErrPermission) {
		t.Error(err)
	}
}

// TestDefault: the folder is the user's, unless the variable names another or none.
func TestDefault(t *testing.T) {
	home := t.TempDir()
	for _, v := range []string{"HOME", "XDG_CACHE_HOME", "LocalAppData"} {
		t.Setenv(v, home)
	}
	cache, err := os.UserCacheDir()
	if err != nil {
		t.Fatal(err)
	}
	t.Setenv(store.Variable, "") // so that it is put back in the end
	if got := store.Default(); got != (store.Store{}) {
		t.Errorf("set to nothing: %+v", got)
	}
	t.Setenv(store.Variable, home)
	if got := store.Default(); got != (store.Store{Folder: home}) {
		t.Errorf("set: %+v", got)
	}
	if err := os.Unsetenv(store.Variable); err != nil {
		t.Fatal(err)
	}
	if got := store.Default(); got != (store.Store{Folder: filepath.Join(cache, "pappus", "computed")}) {
		t.Errorf("not set: %+v", got)
	}
	for _, v := range []string{"HOME", "XDG_CACHE_HOME", "LocalAppData"} {
		t.Setenv(v, "")
	}
	if got := store.Default(); got != (store.Store{}) {
		t.Errorf("no cache folder: %+v", got)
	}
}
