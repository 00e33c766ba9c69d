package outdir

import (
	"bytes"
	"context"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"pappus/layout/wholefolder"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

var errHalfWay = errors.New("no more room")

// text writes a text.
func text(s string) func(io.Writer) error {
	return func(w io.Writer) error {
		_, err := io.WriteString(w, s)
		return err
	}
}

// halfWay writes something and then fails.
func halfWay(w io.Writer) error {
	if _, err := w.Write(bytes.Repeat([]byte("x"), 1<<17)); err != nil {
		return err
	}
	return errHalfWay
}

// fill writes files into a folder and commits.
func fill(t *testing.T, path string, files map[string]string) {
	t.Helper()
	if err := tryFill(path, files); err != nil {
		t.Fatal(err)
	}
}

func tryFill(path string, files map[string]string) error {
	d, err := Open(context.Background(), path, nil)
	if err != nil {
		return err
	}
	defer d.Abort()
	for name, content := range files {
		if err := d.Add(name, text(content)); err != nil {
			return err
		}
	}
	return d.Commit()
}

// contents reads all files of a folder but the manifest, hidden ones too.
func contents(t *testing.T, path string) map[string]string {
	t.Helper()
	entries, err := os.ReadDir(path)
	if err != nil {
		t.Fatal(err)
	}
	files := map[string]string{}
	for _, e := range entries {
		if e.Name() == wholefolder.Manifest {
			continue
		}
		data, err := os.ReadFile(filepath.Join(path, e.Name()))
		if err != nil {
			t.Fatal(err)
		}
		files[e.Name()] = string(data)
	}
	return files
}

func check(t *testing.T, path string, want map[string]string) {
	t.Helper()
	if diff := cmp.Diff(want, contents(t, path)); diff != "" {
		t.Errorf("the folder differs (-want +got):\n%s", diff)
	}
}

// note is what manifests say of themselves.
func note(t *testing.T) string {
	t.Helper()
	path := t.TempDir()
	fill(t, path, nil)
	data, err := os.ReadFile(filepath.Join(path, wholefolder.Manifest))
	if err != nil {
		t.Fatal(err)
	}
	var read struct{ About string }
	if err := json.Unmarshal(data, &read); err != nil {
		t.Fatal(err)
	}
	return read.About
}

func put(t *testing.T, path, name, content string) {
	t.Helper()
	if err := os.WriteFile(filepath.Join(path, name), []byte(content), 0o666); err != nil {
		t.Fatal(err)
	}
}

func TestSecondRunReplacesAndRemovesItsOwn(t *testing.T) {
	path := filepath.Join(t.TempDir(), "a", "plan")
	fill(t, path, map[string]string{"plan.json": "1", "stale.csv": "old"})
	put(t, path, "notes.txt", "the builder's own")
	fill(t, path, map[string]string{"plan.json": "2", "new.csv": "n"})
	check(t, path, map[string]string{"plan.json": "2", "new.csv": "n", "notes.txt": "the builder's own"})
	fill(t, path, map[string]string{"plan.json": "3"})
	check(t, path, map[string]string{"plan.json": "3", "notes.txt": "the builder's own"})
}

// TestHash checks the manifest's hash against an example of FIPS 180-4 as
// published with it by NIST ("abc").
func TestHash(t *testing.T) {
	path := t.TempDir()
	fill(t, path, map[string]string{"abc.txt": "abc"})
	data, err := os.ReadFile(filepath.Join(path, wholefolder.Manifest))
	if err != nil {
		t.Fatal(err)
	}
	const want = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"
	if !bytes.Contains(data, []byte(want)) {
		t.Errorf("the manifest does not hold the hash of abc:\n%s", data)
	}
}

// TestGoingBack: what is written over an earlier part counts, in the file and in
// its hash, so that the next run takes the file for its own.
func TestGoingBack(t *testing.T) {
	path := t.TempDir()
	for range 2 {
		d, err := Open(context.Background(), path, nil)
		if err != nil {
			t.Fatal(err)
		}
		defer d.Abort()
		err = d.Add("a.txt", func(w io.Writer) error {
			file, ok := w.(io.WriteSeeker)
			if !ok {
				return errors.New("cannot go back")
			}
			if _, err := io.WriteString(file, "0 words"); err != nil {
				return err
			}
			if _, err := file.Seek(0, io.SeekStart); err != nil {
				return err
			}
			_, err := io.WriteString(file, "2")
			return err
		})
		if err != nil {
			t.Fatal(err)
		}
		if err := d.Commit(); err != nil {
			t.Fatal(err)
		}
		if have := contents(t, path)["a.txt"]; have != "2 words" {
			t.Fatalf("%q", have)
		}
	}
}

func TestForeignFiles(t *testing.T) {
	cases := []struct {
		name    string
		prepare func(t *testing.T, path string)
		want    map[string]string
	}{
		{"never ours", func(t *testing.T, path string) {
			put(t, path, "plan.json", "theirs")
		}, map[string]string{"plan.json": "theirs"}},
		{"edited", func(t *testing.T, path string) {
			fill(t, path, map[string]string{"plan.json": "ours"})
			put(t, path, "plan.json", "edited")
		}, map[string]string{"plan.json": "edited"}},
		{"hash of another file of ours", func(t *testing.T, path string) {
			fill(t, path, map[string]string{"delays.csv": "same"})
			put(t, path, "plan.json", "same")
		}, map[string]string{"delays.csv": "same", "plan.json": "same"}},
		{"manifest of somebody else", func(t *testing.T, path string) {
			put(t, path, wholefolder.Manifest, `{"files":{"plan.json":["00"]}}`)
		}, map[string]string{}},
		{"manifest of nothing", func(t *testing.T, path string) {
			put(t, path, wholefolder.Manifest, `{"about":"`+note(t)+`","files":null}`)
			put(t, path, "plan.json", "theirs")
		}, map[string]string{"plan.json": "theirs"}},
		{"manifest that points outside", func(t *testing.T, path string) {
			put(t, path, wholefolder.Manifest, `{"about":"`+note(t)+`","files":{"../x":["00"]}}`)
		}, map[string]string{}},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			path := t.TempDir()
			c.prepare(t, path)
			err := tryFill(path, map[string]string{"plan.json": "new", "other.csv": "o"})
			if !errors.Is(err, wholefolder.ErrForeign) {
				t.Errorf("got %v, want wholefolder.ErrForeign", err)
			}
			check(t, path, c.want)
		})
	}
}

func TestForeignFolderOrLinkInTheWay(t *testing.T) {
	path := t.TempDir()
	if err := os.Mkdir(filepath.Join(path, "plan.json"), 0o777); err != nil {
		t.Fatal(err)
	}
	if err := tryFill(path, map[string]string{"plan.json": "new"}); !errors.Is(err, wholefolder.ErrForeign) {
		t.Errorf("folder in the way: got %v", err)
	}
	outside := filepath.Join(t.TempDir(), "precious")
	put(t, filepath.Dir(outside), "precious", "theirs")
	if err := os.Symlink(outside, filepath.Join(path, "delays.csv")); err != nil {
		t.Skip("no symbolic links here:", err)
	}
	if err := tryFill(path, map[string]string{"delays.csv": "new"}); !errors.Is(err, wholefolder.ErrForeign) {
		t.Errorf("link in the way: got %v", err)
	}
	check(t, filepath.Dir(outside), map[string]string{"precious": "theirs"})
}

func TestEditedStaleFileStays(t *testing.T) {
	path := t.TempDir()
	fill(t, path, map[string]string{"old.csv": "ours"})
	put(t, path, "old.csv", "edited")
	fill(t, path, map[string]string{"plan.json": "1"})
	check(t, path, map[string]string{"old.csv": "edited", "plan.json": "1"})
	if err := tryFill(path, map[string]string{"old.csv": "2"}); !errors.Is(err, wholefolder.ErrForeign) {
		t.Errorf("got %v, want wholefolder.ErrForeign", err)
	}
}

func TestFailureChangesNothing(t *testing.T) {
	path := t.TempDir()
	before := map[string]string{"plan.json": "1", "stale.csv": "s"}
	fill(t, path, before)
	d, err := Open(context.Background(), path, nil)
	if err != nil {
		t.Fatal(err)
	}
	if err := d.Add("plan.json", text("2")); err != nil {
		t.Fatal(err)
	}
	if err := d.Add("level.png", halfWay); !errors.Is(err, errHalfWay) {
		t.Errorf("Add: got %v", err)
	}
	if err := d.Commit(); !errors.Is(err, errHalfWay) {
		t.Errorf("Commit: got %v", err)
	}
	check(t, path, before)
}

func TestPanicInWriterLeavesNothing(t *testing.T) {
	path := t.TempDir()
	func() {
		defer func() { _ = recover() }()
		d, err := Open(context.Background(), path, nil)
		if err != nil {
			t.Error(err)
			return
		}
		defer d.Abort()
		_ = d.Add("plan.json", func(io.Writer) error { panic("broken") })
	}()
	check(t, path, map[string]string{})
}

func TestChangedBetweenAddAndCommit(t *testing.T) {
	path := t.TempDir()
	d, err := Open(context.Background(), path, nil)
	if err != nil {
		t.Fatal(err)
	}
	if err := d.Add("plan.json", text("1")); err != nil {
		t.Fatal(err)
	}
	put(t, path, "plan.json", "theirs, written meanwhile")
	if err := d.Commit(); !errors.Is(err, wholefolder.ErrForeign) {
		t.Errorf("got %v, want wholefolder.ErrForeign", err)
	}
	check(t, path, map[string]string{"plan.json": "theirs, written meanwhile"})
}

func TestNames(t *testing.T) {
	bad := []string{"", ".", "..", ".hidden", "a/b", `a\b`, "../x", "/x", "C:x", "ends.", "nul", "CON.txt",
		"Com1.csv", "a b", "ö.csv", "new\nline", wholefolder.Manifest, strings.ToUpper(wholefolder.Manifest), strings.Repeat("a", 121)}
	good := []string{"plan.json", "level-1k.png", "coverage_from_above.svg", "a", "console.csv", "com.csv", strings.Repeat("a", 120)}
	path := t.TempDir()
	for _, name := range bad {
		if err := tryFill(path, map[string]string{name: "x"}); !errors.Is(err, wholefolder.ErrName) {
			t.Errorf("%q: got %v, want wholefolder.ErrName", name, err)
		}
	}
	for _, name := range good {
		if err := tryFill(path, map[string]string{name: "x"}); err != nil {
			t.Errorf("%q: %v", name, err)
		}
	}
	err := tryFill(path, map[string]string{"plan.json": "x", "PLAN.json": "y"})
	if !errors.Is(err, wholefolder.ErrName) {
		t.Errorf("twice: got %v, want wholefolder.ErrName", err)
	}
}

func TestAbortTakesItsFoldersAway(t *testing.T) {
	base := t.TempDir()
	d, err := Open(context.Background(), filepath.Join(base, "a", "b"), nil)
	if err != nil {
		t.Fatal(err)
	}
	if err := d.Add("plan.json", text("1")); err != nil {
		t.Fatal(err)
	}
	d.Abort()
	d.Abort()
	if _, err := os.Stat(filepath.Join(base, "a")); !errors.Is(err, os.ErrNotExist) {
		t.Errorf("the folder is still there: %v", err)
	}
	if err := d.Add("late.csv", text("x")); !errors.Is(err, errDone) {
		t.Errorf("Add: got %v, want errDone", err)
	}
	if err := d.Commit(); !errors.Is(err, errDone) {
		t.Errorf("Commit: got %v, want errDone", err)
	}
}

func TestCannotOpen(t *testing.T) {
	base := t.TempDir()
	put(t, base, "file", "x")
	if _, err := Open(context.Background(), filepath.Join(base, "file"), nil); err == nil {
		t.Error("opened a file as a folder")
	}
	if _, err := Open(context.Background(), filepath.Join(base, "file", "below"), nil); err == nil {
		t.Error("opened a folder below a file")
	}
	check(t, base, map[string]string{"file": "x"})
}

func TestReadOnlyFolder(t *testing.T) {
	path := t.TempDir()
	fill(t, path, map[string]string{"plan.json": "1"})
	if err := os.Chmod(path, 0o555); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = os.Chmod(path, 0o755) })
	if os.WriteFile(filepath.Join(path, "probe"), nil, 0o666) == nil {
		_ = os.Remove(filepath.Join(path, "probe"))
		t.Skip("this user may write into read-only folders")
	}
	if err := tryFill(path, map[string]string{"plan.json": "2"}); !errors.Is(err, os.ErrPermission) {
		t.Errorf("got %v, want a permission error", err)
	}
	check(t, path, map[string]string{"plan.json": "1"})
}

func TestConcurrentAdds(t *testing.T) {
	path := t.TempDir()
	d, err := Open(context.Background(), path, nil)
	if err != nil {
		t.Fatal(err)
	}
	want := map[string]string{}
	var group sync.WaitGroup
	for i := range 40 {
		name, content := fmt.Sprintf("f%d.csv", i), strings.Repeat(fmt.Sprint(i), 1000*i)
		want[name] = content
		group.Go(func() {
			if err := d.Add(name, text(content)); err != nil {
				t.Error(err)
			}
		})
	}
	group.Wait()
	if err := d.Commit(); err != nil {
		t.Fatal(err)
	}
	check(t, path, want)
}

// TestAgainstModel runs random sequences of runs, edits and deletions against
// a plain model of who owns what.
func TestAgainstModel(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		path, err := os.MkdirTemp("", "outdir")
		if err != nil {
			r.Fatal(err)
		}
		defer os.RemoveAll(path)
		ours, there := map[string]string{}, map[string]string{} // name to hash, name to content
		name := rapid.SampledFrom([]string{"a.csv", "b.csv", "c.csv"})
		for range rapid.IntRange(1, 8).Draw(r, "steps") {
			switch rapid.IntRange(0, 2).Draw(r, "step") {
			case 0:
				run := rapid.MapOf(name, rapid.SampledFrom([]string{"1", "2"})).Draw(r, "run")
				modelRun(r, path, run, ours, there)
			case 1:
				n := name.Draw(r, "edited")
				there[n] = rapid.SampledFrom([]string{"1", "theirs"}).Draw(r, "edit")
				put(t, path, n, there[n])
			case 2:
				n := name.Draw(r, "deleted")
				delete(there, n)
				_ = os.Remove(filepath.Join(path, n))
			}
			if diff := cmp.Diff(there, contents(t, path)); diff != "" {
				r.Fatalf("(-want +got):\n%s", diff)
			}
		}
	})
}

func modelRun(r *rapid.T, path string, run, ours, there map[string]string) {
	owned := func(n string) bool { return ours[n] != "" && ours[n] == hash(there[n]) }
	clash := false
	for n := range run {
		_, exists := there[n]
		clash = clash || exists && !owned(n)
	}
	err := tryFill(path, run)
	if clash != errors.Is(err, wholefolder.ErrForeign) || !clash && err != nil {
		r.Fatalf("clash %v, but got %v", clash, err)
	}
	if clash {
		return
	}
	for n := range ours {
		if owned(n) {
			delete(there, n)
		}
	}
	clear(ours)
	for n, content := range run {
		there[n], ours[n] = content, hash(content)
	}
}

func hash(content string) string {
	sum := sha256.Sum256([]byte(content))
	return hex.EncodeToString(sum[:])
}
