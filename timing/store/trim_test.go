package store_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"pappus/layout/wholefile"
	"pappus/timing/store"
)

// kept says which of entries are there, without counting as a use of them.
func kept(t *testing.T, s store.Store, names string) string {
	t.Helper()
	aside := store.Store{Folder: t.TempDir()}
	if err := os.CopyFS(aside.Folder, os.DirFS(s.Folder)); err != nil {
		t.Fatal(err)
	}
	var out strings.Builder
	for _, name := range names {
		if _, there := aside.Get(key(string(name))); there {
			out.WriteRune(name)
		}
	}
	return out.String()
}

// TestTrim: entries used longest ago go first, none of them sooner than it must.
func TestTrim(t *testing.T) {
	const size = overhead + 1
	for _, c := range []struct {
		name string
		most int64
		does string // a letter puts an entry of one byte, a capital gets it
		want string
	}{
		{"all within", 4 * size, "abcd", "abcd"},
		{"the first goes", 4 * size, "abcde", "bcde"},
		{"a byte too small for four", 4*size - 1, "abcd", "bcd"},
		{"a byte more than three", 3*size + 1, "abcd", "bcd"},
		{"one that was used stays", 3 * size, "abcAd", "acd"},
		{"in the order of use", 3 * size, "abcBAde", "ade"},
		{"put again is a use", 3 * size, "abcad", "acd"},
		{"one alone", size, "abc", "c"},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := store.Store{Folder: t.TempDir(), Most: c.most}
			for _, r := range c.does {
				time.Sleep(tick)
				name := strings.ToLower(string(r))
				if name == string(r) {
					put(t, s, name)
				} else if _, there := s.Get(key(name)); !there {
					t.Fatalf("%s is not there", name)
				}
			}
			if got := kept(t, s, "abcde"); got != c.want {
				t.Errorf("%s are there, not %s", got, c.want)
			}
		})
	}
}

// TestClockSetBack: an entry just put stays, though others seem to have been used later.
func TestClockSetBack(t *testing.T) {
	s := store.Store{Folder: t.TempDir(), Most: overhead + 1}
	put(t, s, "a")
	age(t, path(t, s), -time.Hour)
	put(t, s, "b")
	if got := kept(t, s, "ab"); got != "b" {
		t.Errorf("%s are there", got)
	}
}

// tick is longer than the step in which file systems count time of change here (10 ms at a
// kernel's 100 Hz).
const tick = 12 * time.Millisecond

// TestTooLarge: a result that is larger than the bound is not kept, and drives nothing out; its
// place is not taken by a lesser one.
func TestTooLarge(t *testing.T) {
	s := store.Store{Folder: t.TempDir(), Most: 2 * (overhead + 1)}
	put(t, s, "a", "b")
	err := s.Put(key("c"), make([]byte, overhead+3))
	if err == nil || !strings.Contains(err.Error(), s.Folder) {
		t.Error(err)
	}
	if got := kept(t, s, "abc"); got != "ab" {
		t.Errorf("%s are there", got)
	}
	if err := s.Put(key("c"), make([]byte, overhead+2)); err != nil {
		t.Error(err)
	}
	if got := kept(t, s, "abc"); got != "c" {
		t.Errorf("%s are there", got)
	}
}

// TestMost: without a bound of its own a store takes 512 MB.
func TestMost(t *testing.T) {
	for _, c := range []struct {
		name   string
		beside int64
		want   string
	}{
		{"just within", 512e6 - 2*(overhead+1), "ab"},
		{"a byte more", 512e6 - 2*(overhead+1) + 1, "b"},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := store.Store{Folder: t.TempDir()}
			put(t, s, "a")
			// A file that takes no room on most disks, and was used after all others.
			large := filepath.Join(s.Folder, strings.Repeat("f", 64)+".entry")
			write(t, large, -time.Hour)
			if err := os.Truncate(large, c.beside); err != nil {
				t.Fatal(err)
			}
			age(t, large, -time.Hour)
			put(t, s, "b")
			if err := os.Remove(large); err != nil {
				t.Fatal(err)
			}
			if got := kept(t, s, "ab"); got != c.want {
				t.Errorf("%s are there, not %s", got, c.want)
			}
		})
	}
}

// write writes a file, and makes it as old as is said.
func write(t *testing.T, path string, old time.Duration) {
	t.Helper()
	if err := os.WriteFile(path, make([]byte, 1000), 0o600); err != nil {
		t.Fatal(err)
	}
	age(t, path, old)
}

// age makes a file as old as is said.
func age(t *testing.T, path string, old time.Duration) {
	t.Helper()
	when := time.Now().Add(-old)
	if err := os.Chtimes(path, when, when); err != nil {
		t.Fatal(err)
	}
}

// TestWrittenStays: what another run is writing stays.
func TestWrittenStays(t *testing.T) {
	s := store.Store{Folder: t.TempDir()}
	other := filepath.Join(s.Folder, strings.Repeat("0a", 32)+".entry")
	draft, err := wholefile.Begin(other)
	if err != nil {
		t.Fatal(err)
	}
	put(t, s, "a", "b")
	if err := draft.Put([]byte("whole"), 0); err != nil {
		t.Error(err)
	}
	if text, err := os.ReadFile(other); err != nil || string(text) != "whole" {
		t.Errorf("%q, %v", text, err)
	}
}

// TestOthersStay: files that are no entries are neither counted nor removed; drafts of entries
// that nobody is writing go.
func TestOthersStay(t *testing.T) {
	const hex = "0123456789abcdef0123456789abcdef0123456789abcdef0123456789abcdef"
	for _, c := range []struct {
		name  string
		old   time.Duration
		stays bool
	}{
		{"README", 1e6 * time.Hour, true},
		{hex, 1e6 * time.Hour, true},
		{hex + ".entry.1", 1e6 * time.Hour, true},
		{hex + ".entry~", 1e6 * time.Hour, true},
		{"0" + hex + ".entry", 1e6 * time.Hour, true},
		{hex[1:] + ".entry", 1e6 * time.Hour, true},
		{strings.ToUpper(hex) + ".entry", 1e6 * time.Hour, true},
		{"." + hex + ".entry", 1e6 * time.Hour, true},
		{"." + hex + ".entry.1x", 1e6 * time.Hour, true},
		{"." + hex + ".entry.123", 0, false},
		{wholefile.Name(hex + ".entry"), 0, false},
		{hex + ".entry", 0, false}, // an entry: larger than all that may be
	} {
		t.Run(c.name+" "+c.old.String(), func(t *testing.T) {
			s := store.Store{Folder: t.TempDir(), Most: 2 * (overhead + 1)}
			other := filepath.Join(s.Folder, c.name)
			write(t, other, c.old)
			put(t, s, "a", "b")
			if _, err := os.Stat(other); (err == nil) != c.stays {
				t.Error(err)
			}
			if got := kept(t, s, "ab"); got != "ab" && c.stays {
				t.Errorf("%s are there", got)
			}
		})
	}
}
