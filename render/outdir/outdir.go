package outdir

import (
	"bufio"
	"crypto/rand"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"syscall"

	"pappus/layout/prose"
)

// errForeign tells that a file in the folder stands in the way that was not
// written by the program, or was changed since.
var errForeign = errors.New("not written by this program, or changed since")

// errName tells of a file name that is not plain, or is given twice.
var errName = errors.New("file name not allowed")

// errDone tells that the folder was committed or aborted already.
var errDone = errors.New("folder already committed or aborted")

// Dir is a folder that is being written. Add may be called from several
// goroutines at once; Commit and Abort when all of them are done.
type Dir struct {
	path string
	root *os.Root
	made []string // folders made for it, outermost first
	old  manifest
	tag  string // part of this run's temporary names

	mu    sync.Mutex
	added map[string]string // name to hash; "" while being written
	temps []string          // to be removed in the end
	err   error             // of the first Add that failed
	done  bool

	rename func(from, to string) error // root.Rename, where no test says otherwise
}

// Open gets a folder ready to be written, and makes it, with its parents,
// where it is not there. It is an error where the name of the
// manifest is taken by another file. Call Abort when done, whatever happened:
// after Commit it does nothing.
func Open(path string) (*Dir, error) {
	path = filepath.Clean(path)
	made, err := makeFolder(path)
	if err != nil {
		return nil, unusable(path, err)
	}
	d := &Dir{
		path:  path,
		made:  made,
		added: map[string]string{},
		tag:   rand.Text()[:12],
	}
	if d.root, err = os.OpenRoot(path); err != nil {
		d.unmake()
		return nil, unusable(path, err)
	}
	d.rename = d.root.Rename
	if d.old, err = readManifest(d.root); err != nil {
		d.finish()
		d.unmake()
		return nil, err
	}
	return d, nil
}

// unusable is the error for a folder that cannot be written into.
func unusable(path string, err error) error {
	if info, no := os.Stat(path); no == nil && !info.IsDir() {
		return fmt.Errorf("%s: %w; name another folder", path, prose.Reason(&fs.PathError{Op: "mkdir", Path: path, Err: syscall.ENOTDIR}))
	}
	if errors.Is(err, fs.ErrNotExist) {
		return prose.Saying("no folder can be made at "+path+"; name another", err)
	}
	return fmt.Errorf("the folder %s cannot be written into: %w; name another", path, prose.Reason(err))
}

// makeFolder makes a folder and its parents, and returns those it made,
// outermost first.
func makeFolder(path string) (made []string, err error) {
	for at := path; ; at = filepath.Dir(at) {
		_, err := os.Stat(at)
		if err == nil || at == filepath.Dir(at) {
			break
		}
		if !errors.Is(err, fs.ErrNotExist) {
			return nil, err
		}
		made = append([]string{at}, made...)
	}
	return made, os.MkdirAll(path, 0o777)
}

// unmake removes the folders that were made and are empty.
func (d *Dir) unmake() {
	for i := len(d.made) - 1; i >= 0; i-- {
		if os.Remove(d.made[i]) != nil {
			return
		}
	}
}

// Add writes one file: write is called once with a buffered writer, which can go
// back too, as an io.WriteSeeker. It may be called from several goroutines at once.
// The error is that of write or of the disk, or says what is wrong with the name or stands
// in its way; after any error Commit will refuse.
func (d *Dir) Add(name string, write func(io.Writer) error) error {
	err := d.add(name, write)
	d.mu.Lock()
	defer d.mu.Unlock()
	if d.err == nil {
		d.err = err
	}
	return err
}

func (d *Dir) add(name string, write func(io.Writer) error) error {
	if err := d.claim(name); err != nil {
		return err
	}
	if err := d.mayReplace(name); err != nil {
		return err
	}
	hash, err := d.writeTemp(d.temp("new", name), write)
	if err != nil {
		return fmt.Errorf("%s: %w", filepath.Join(d.path, name), prose.Reason(err))
	}
	d.mu.Lock()
	d.added[name] = hash
	d.mu.Unlock()
	return nil
}

// claim takes a name for a file, once. Names that differ only by case are the
// same file on some systems.
func (d *Dir) claim(name string) error {
	if err := checkName(name); err != nil {
		return err
	}
	d.mu.Lock()
	defer d.mu.Unlock()
	if d.done {
		return errDone
	}
	for other := range d.added {
		if strings.EqualFold(name, other) {
			return fmt.Errorf("%w: %q is there twice", errName, name)
		}
	}
	d.added[name] = ""
	return nil
}

// temp returns the temporary name of a file; kind tells apart new ones, old ones
// put aside, and manifests.
func (d *Dir) temp(kind, name string) string {
	return fmt.Sprintf(".pappus-%s-%s-%s", kind, d.tag, name)
}

// writeTemp writes one temporary file and returns the hash of its content.
func (d *Dir) writeTemp(temp string, write func(io.Writer) error) (hash string, err error) {
	file, err := d.root.OpenFile(temp, os.O_RDWR|os.O_CREATE|os.O_EXCL, 0o666)
	if err != nil {
		return "", err
	}
	d.mu.Lock()
	d.temps = append(d.temps, temp)
	d.mu.Unlock()
	defer func() { err = errors.Join(err, file.Close()) }()
	out := &seeker{bufio.NewWriterSize(file, 1<<16), file}
	if err := write(out); err != nil {
		return "", err
	}
	if _, err := out.Seek(0, io.SeekStart); err != nil {
		return "", err
	}
	return hashOf(file)
}

// seeker is a file with a buffer before it. That it can go back lets a writer that
// learns a length last do without all of the file in memory.
type seeker struct {
	*bufio.Writer
	file *os.File
}

// Seek is that of the file, with the buffer written out.
func (s *seeker) Seek(offset int64, whence int) (int64, error) {
	if err := s.Flush(); err != nil {
		return 0, err
	}
	return s.file.Seek(offset, whence)
}

// hashOf returns the hash of all that is still to be read.
func hashOf(r io.Reader) (string, error) {
	sum := sha256.New()
	if _, err := io.Copy(sum, r); err != nil {
		return "", err
	}
	return hex.EncodeToString(sum.Sum(nil)), nil
}

// mayReplace gives nil where a name is free or holds an unchanged file of ours.
func (d *Dir) mayReplace(name string) error {
	ours, err := d.isOurs(name)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err != nil {
		return fmt.Errorf("%s: %w", filepath.Join(d.path, name), prose.Reason(err))
	}
	if !ours {
		return foreign(d.root, name)
	}
	return nil
}

// isOurs reports whether a file is a regular one, listed in the manifest and
// unchanged.
func (d *Dir) isOurs(name string) (bool, error) {
	info, err := d.root.Lstat(name)
	if err != nil {
		return false, err
	}
	if !info.Mode().IsRegular() || len(d.old[name]) == 0 {
		return false, nil
	}
	file, err := d.root.Open(name)
	if err != nil {
		return false, err
	}
	defer file.Close()
	hash, err := hashOf(file)
	if err != nil {
		return false, err
	}
	return slices.Contains(d.old[name], hash), nil
}

func foreign(root *os.Root, name string) error {
	return fmt.Errorf("%s is in the way: it was %w, and stays as it is; write into another folder, or move that file away",
		filepath.Join(root.Name(), name), errForeign)
}

// Abort takes the temporary files away, and the folder too where Open made it.
// After Commit, or a second time, it does nothing.
func (d *Dir) Abort() {
	if d.end() {
		d.finish()
		d.unmake()
	}
}

// end marks the folder as done and reports whether it was not so before.
func (d *Dir) end() bool {
	d.mu.Lock()
	defer d.mu.Unlock()
	was := d.done
	d.done = true
	return !was
}

// finish removes what temporary files are left and closes the folder.
func (d *Dir) finish() {
	for _, temp := range d.temps {
		_ = d.root.Remove(temp) // gone already, or nothing more can be done
	}
	_ = d.root.Close()
}
