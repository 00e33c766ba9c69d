package wholefolder

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io/fs"
	"iter"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"pappus/testdata/thorough"

	"github.com/google/go-cmp/cmp"
)

var errBroken = errors.New("broken off")

type files map[string]string

func put(t *testing.T, path, name, content string) {
	t.Helper()
	if err := os.WriteFile(filepath.Join(path, name), []byte(content), 0o666); err != nil {
		t.Fatal(err)
	}
}

// contents are all files of a folder but the manifest, hidden ones too.
func contents(t *testing.T, path string) files {
	t.Helper()
	entries, err := os.ReadDir(path)
	if err != nil {
		t.Fatal(err)
	}
	out := files{}
	for _, e := range entries {
		if e.Name() == Manifest {
			continue
		}
		data, err := os.ReadFile(filepath.Join(path, e.Name()))
		if err != nil {
			t.Fatal(err)
		}
		out[e.Name()] = string(data)
	}
	return out
}

// seen are the files that people see.
func seen(t *testing.T, path string) files {
	out := contents(t, path)
	for name := range out {
		if strings.HasPrefix(name, ".pappus-") {
			delete(out, name)
		}
	}
	return out
}

// write commits files as a run does, whose steps fail as broken says of their numbers, from 1 on.
func write(path string, in files, broken func(step int) bool) error {
	return writeWith(path, in, broken, false)
}

func writeWith(path string, in files, broken func(step int) bool, noLinks bool) error {
	f, err := hold(context.Background(), path, nil, stepping(broken))
	if err != nil {
		return err
	}
	defer f.Release()
	if noLinks {
		f.link = func(string, string) error { return fs.ErrInvalid }
	}
	hashes := map[string]string{}
	for name, text := range in {
		if err := f.MayReplace(name); err != nil {
			return err
		}
		sum := sha256.Sum256([]byte(text))
		hashes[name] = hex.EncodeToString(sum[:])
		if err := f.Root.WriteFile(f.Hidden(name), []byte(text), 0o666); err != nil {
			return err
		}
	}
	return f.Commit(hashes)
}

func stepping(broken func(step int) bool) func() error {
	count := 0
	return func() error {
		if count++; broken(count) {
			return errBroken
		}
		return nil
	}
}

// steps are the numbers of a run's steps, and of one more.
func steps(t *testing.T, before, after files) iter.Seq[int] {
	t.Helper()
	most := 0
	if err := write(begin(t, before), after, func(step int) bool { most = step; return false }); err != nil {
		t.Fatal(err)
	}
	return func(yield func(int) bool) {
		for n := 1; n <= most+1 && yield(n); n++ {
		}
	}
}

func never(int) bool { return false }

func once(last int) func(int) bool { return func(step int) bool { return step == last } }

func killed(last int) func(int) bool { return func(step int) bool { return step >= last } }

type set struct {
	name          string
	before, after files
}

// sets are what a folder may hold before and after; every day only the first two are tried.
var sets = []set{
	{"some new, some gone", files{"a.csv": "1", "gone.csv": "g", "stale.csv": "s"}, files{"a.csv": "2", "new.csv": "n"}},
	{"into an empty folder", nil, files{"a.csv": "a", "b.csv": "b"}},
	{"the same names", files{"a.csv": "1", "b.csv": "1"}, files{"a.csv": "2", "b.csv": "2"}},
	{"some the same", files{"a.csv": "1", "b.csv": "1"}, files{"a.csv": "2", "b.csv": "1"}},
	{"others", files{"gone.csv": "g", "stale.csv": "s"}, files{"a.csv": "2", "new.csv": "n"}},
	{"none any more", files{"gone.csv": "g"}, files{}},
}

func tried() []set {
	if thorough.Set {
		return sets
	}
	return sets[:2]
}

func begin(t *testing.T, before files) string {
	t.Helper()
	path := t.TempDir()
	put(t, path, "notes.txt", "the builder's own")
	if before != nil {
		if err := write(path, before, never); err != nil {
			t.Fatal(err)
		}
	}
	return path
}

func with(in files) files {
	out := files{"notes.txt": "the builder's own"}
	for name, text := range in {
		out[name] = text
	}
	return out
}

// TestFails: where a step fails nothing has changed, and nothing is left behind; or, late, all
// has changed.
func TestFails(t *testing.T) {
	for _, c := range tried() {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			refused := 0
			for last := range steps(t, c.before, c.after) {
				path := begin(t, c.before)
				err := write(path, c.after, once(last))
				want := with(c.before)
				if err == nil {
					want = with(c.after)
				} else if refused++; !errors.Is(err, errBroken) {
					t.Fatalf("step %d: %v", last, err)
				}
				if diff := cmp.Diff(want, seen(t, path)); diff != "" {
					t.Fatalf("step %d, %v: %s", last, err, diff)
				}
				whole(t, path, c.after)
			}
			if refused < 4 {
				t.Errorf("only %d steps can fail", refused)
			}
		})
	}
}

// whole: the next run has its way, and leaves nothing behind.
func whole(t *testing.T, path string, next files) {
	t.Helper()
	if err := write(path, next, never); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(with(next), contents(t, path)); diff != "" {
		t.Fatalf("after the next run: %s", diff)
	}
}

// TestKilled: a run is killed before each step. Who looks next sees all as before or all as
// after, even where that look is killed too, and the next run leaves nothing behind.
func TestKilled(t *testing.T) {
	for _, c := range tried() {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			for last := range steps(t, c.before, c.after) {
				for again := range 5 { // 0: the look is not killed; it takes at most 20 steps or so
					path := begin(t, c.before)
					err := write(path, c.after, killed(last))
					if again > 0 {
						lookKilled(path, 4*again-3)
					}
					if err := Settle(path); err != nil {
						t.Fatal(err)
					}
					got := seen(t, path)
					if !cmp.Equal(got, with(c.after)) && (err == nil || !cmp.Equal(got, with(c.before))) {
						t.Fatalf("killed at step %d, looked at again after %d: %v", last, again, got)
					}
					whole(t, path, files{"next.csv": "x"})
				}
			}
		})
	}
}

// lookKilled is a look that is killed before a step.
func lookKilled(path string, last int) {
	if f, err := hold(context.Background(), path, nil, stepping(killed(last))); err == nil {
		f.Release()
	}
}

// TestBackKilled: a run whose step fails turns back, and is killed meanwhile.
func TestBackKilled(t *testing.T) {
	for _, c := range tried() {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			for fails := range steps(t, c.before, c.after) {
				for last := fails + 1; last < fails+10; last++ {
					path := begin(t, c.before)
					err := write(path, c.after, func(step int) bool { return step == fails || step >= last })
					if err := Settle(path); err != nil {
						t.Fatal(err)
					}
					got := seen(t, path)
					if !cmp.Equal(got, with(c.before)) && !cmp.Equal(got, with(c.after)) {
						t.Fatalf("failed at step %d, killed at %d: %v, %v", fails, last, got, err)
					}
					whole(t, path, files{"next.csv": "x"})
				}
			}
		})
	}
}

// halfWay is a folder whose run was killed when some files were in place.
func halfWay(t *testing.T) string {
	t.Helper()
	for last := 1; last < 60; last++ {
		path := begin(t, files{"a.csv": "1", "b.csv": "1", "gone.csv": "g"})
		_ = write(path, files{"a.csv": "2", "b.csv": "2", "new.csv": "2"}, killed(last))
		if now := seen(t, path); now["a.csv"] == "2" && now["b.csv"] == "1" {
			return path
		}
	}
	t.Fatal("no step leaves the folder half changed")
	return ""
}

// TestChangedMeanwhile: what people did to a folder that was left half changed stays.
func TestChangedMeanwhile(t *testing.T) {
	done := files{"a.csv": "2", "b.csv": "2", "new.csv": "2"}
	for _, c := range []struct {
		name   string
		change func(t *testing.T, path string)
		want   files
	}{
		{"nothing", func(*testing.T, string) {}, done},
		{"an old one edited", func(t *testing.T, path string) { put(t, path, "b.csv", "mine") }, files{"a.csv": "2", "b.csv": "mine", "new.csv": "2"}},
		{"a new one edited", func(t *testing.T, path string) { put(t, path, "a.csv", "mine") }, files{"a.csv": "mine", "b.csv": "2", "new.csv": "2"}},
		{"one to come written", func(t *testing.T, path string) { put(t, path, "new.csv", "mine") }, files{"a.csv": "2", "b.csv": "2", "new.csv": "mine"}},
		{"one to go edited", func(t *testing.T, path string) { put(t, path, "gone.csv", "mine") },
			files{"a.csv": "2", "b.csv": "2", "new.csv": "2", "gone.csv": "mine"}},
		{"an old one removed", func(t *testing.T, path string) { _ = os.Remove(filepath.Join(path, "b.csv")) }, done},
	} {
		t.Run(c.name, func(t *testing.T) {
			path := halfWay(t)
			c.change(t, path)
			if err := Settle(path); err != nil {
				t.Fatal(err)
			}
			if diff := cmp.Diff(with(c.want), seen(t, path)); diff != "" {
				t.Error(diff)
			}
		})
	}
}

// TestForeignJournal: a file that has the journal's name and is none stays, and is told of.
func TestForeignJournal(t *testing.T) {
	for _, text := range []string{"", "mine", `{"about":"x"}`, `{"about":"` + journalNote + `","tag":"../x"}`,
		`{"about":"` + journalNote + `","tag":"AAAAAAAAAAAA","files":{"../x":"00"}}`} {
		path := t.TempDir()
		put(t, path, journalName, text)
		if err := Settle(path); err != nil {
			t.Errorf("%q: %v", text, err)
		}
		if err := write(path, files{"a.csv": "1"}, never); !errors.Is(err, ErrForeign) {
			t.Errorf("%q: %v", text, err)
		}
		if diff := cmp.Diff(files{journalName: text}, contents(t, path)); diff != "" {
			t.Errorf("%q: %s", text, diff)
		}
	}
}

// TestSweep: the next run takes away what a killed one left, and nothing else.
func TestSweep(t *testing.T) {
	path := t.TempDir()
	mine := files{".pappus-mine": "m", ".pappus-new-short-a.csv": "m", "pappus-new-ABCDEFGHIJKL-a.csv": "m", ".pappus": "m", ".a.toml.123": "m"}
	for name, text := range mine {
		put(t, path, name, text)
	}
	for _, kind := range []string{"new", "old", "list", "ahead", "back"} {
		put(t, path, hidden(kind, "ABCDEFGHIJ27", "a.csv"), "litter")
	}
	put(t, path, lockName, "")
	if err := write(path, files{}, never); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(mine, contents(t, path)); diff != "" {
		t.Error(diff)
	}
}

// TestWaits: a second run waits, says so once, and goes on when the first is done, or is told
// that it is to stop. What the first has under way stays.
func TestWaits(t *testing.T) {
	path := t.TempDir()
	first, err := Hold(t.Context(), path, func() { t.Error("waits for nobody") })
	if err != nil {
		t.Fatal(err)
	}
	put(t, path, first.Hidden("a.csv"), "under way")
	said := 0
	ended, end := context.WithCancel(t.Context())
	if _, err := Hold(ended, path, func() { said++; end() }); !errors.Is(err, context.Canceled) || said != 1 {
		t.Errorf("said %d times, %v", said, err)
	}
	if text, err := os.ReadFile(filepath.Join(path, first.Hidden("a.csv"))); err != nil || string(text) != "under way" {
		t.Errorf("%q, %v", text, err)
	}
	second, err := Hold(t.Context(), path, func() { go first.Release() })
	if err != nil {
		t.Fatal(err)
	}
	second.Release()
	if left := contents(t, path); len(left) > 0 {
		t.Errorf("left behind: %v", left)
	}
}

// TestCopies: where there are no hard links the old files are kept as copies.
func TestCopies(t *testing.T) {
	before, after := files{"a.csv": "1", "gone.csv": "g"}, files{"a.csv": "2", "new.csv": "n"}
	for last := range steps(t, before, after) {
		path := begin(t, before)
		err := writeWith(path, after, once(last), true)
		want := with(before)
		if err == nil {
			want = with(after)
		}
		if diff := cmp.Diff(want, seen(t, path)); diff != "" {
			t.Fatalf("step %d, %v: %s", last, err, diff)
		}
		whole(t, path, after)
	}
}

// BenchmarkCommit is how long a folder of as many files as a plan has is between old and new.
func BenchmarkCommit(b *testing.B) {
	path := b.TempDir()
	for n := 0; b.Loop(); n++ {
		in := files{}
		for i := range 60 {
			in[fmt.Sprintf("file_%d.csv", i)] = fmt.Sprint(n)
		}
		if err := write(path, in, never); err != nil {
			b.Fatal(err)
		}
	}
}
