package outdir

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"syscall"

	"pappus/layout/prose"
	"pappus/layout/wholefolder"
)

// errDone tells that the folder was committed or aborted already.
var errDone = errors.New("folder already committed or aborted")

// Dir is a folder that is being written. Add and Abort may be called from several
// goroutines at once; Commit when all of Add are done.
type Dir struct {
	path   string
	folder *wholefolder.Folder
	made   []string // folders made for it, outermost first

	over  sync.Mutex // held while Commit or Abort is at work
	mu    sync.Mutex
	added map[string]string // name to hash; "" while being written
	err   error             // of the first Add that failed
	done  bool
}

// Open gets a folder ready to be written, and makes it, with its parents,
// where it is not there. While another run writes there it waits, and calls waits once, which may
// be nil. It is an error where ctx ends, or the name of the
// manifest is taken by another file. Call Abort when done, whatever happened:
// after Commit it does nothing.
func Open(ctx context.Context, path string, waits func()) (*Dir, error) {
	path = filepath.Clean(path)
	d := &Dir{path: path, added: map[string]string{}}
	for {
		made, err := makeFolder(path)
		if err != nil {
			return nil, unusable(path, err)
		}
		d.made = append(d.made, made...)
		d.folder, err = wholefolder.Hold(ctx, path, waits)
		switch {
		case err == nil:
			return d, nil
		case errors.Is(err, fs.ErrNotExist) && ctx.Err() == nil && !exists(path):
			continue // who had made it took it away again
		}
		d.unmake()
		if ctx.Err() != nil || errors.Is(err, wholefolder.ErrForeign) {
			return nil, err
		}
		return nil, unusable(path, err)
	}
}

func exists(path string) bool {
	_, err := os.Lstat(path)
	return err == nil
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
	if err := d.folder.MayReplace(name); err != nil {
		return err
	}
	hash, err := d.write(name, write)
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
	if err := wholefolder.CheckName(name); err != nil {
		return err
	}
	d.mu.Lock()
	defer d.mu.Unlock()
	if d.done {
		return errDone
	}
	for other := range d.added {
		if strings.EqualFold(name, other) {
			return fmt.Errorf("%w: %q is there twice", wholefolder.ErrName, name)
		}
	}
	d.added[name] = ""
	return nil
}

// write writes one file under its hidden name and returns the hash of its content.
func (d *Dir) write(name string, write func(io.Writer) error) (hash string, err error) {
	file, err := d.create(name)
	if err != nil {
		return "", err
	}
	defer func() { err = errors.Join(err, file.Close()) }()
	out := &seeker{bufio.NewWriterSize(file, 1<<16), file}
	if err := write(out); err != nil {
		return "", err
	}
	if _, err := out.Seek(0, io.SeekStart); err != nil {
		return "", err
	}
	if hash, err = wholefolder.HashOf(file); err != nil {
		return "", err
	}
	return hash, file.Sync()
}

// create makes the hidden file, unless Abort has begun to take such away.
func (d *Dir) create(name string) (*os.File, error) {
	d.mu.Lock()
	defer d.mu.Unlock()
	if d.done {
		return nil, errDone
	}
	return d.folder.Root.OpenFile(d.folder.Hidden(name), os.O_RDWR|os.O_CREATE|os.O_EXCL, 0o666)
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

// Commit puts all added files into place, removes unchanged files of an earlier
// run that were not added this time, and writes the manifest. On an error
// nothing in the folder has changed; the error says what
// file stands in the way, or is that of the first Add that failed.
func (d *Dir) Commit() error {
	d.over.Lock()
	defer d.over.Unlock()
	if !d.end() {
		return errDone
	}
	err := d.err
	if err == nil {
		if err = d.folder.Commit(d.added); err != nil && !errors.Is(err, wholefolder.ErrForeign) {
			err = fmt.Errorf("%s: %w", d.path, prose.Reason(err))
		}
	}
	d.folder.Release()
	if err != nil {
		d.unmake()
	}
	return err
}

// Abort takes the hidden files away, and the folder too where Open made it.
// After Commit, or a second time, it does nothing; while either is at work it waits.
func (d *Dir) Abort() {
	d.over.Lock()
	defer d.over.Unlock()
	if d.end() {
		d.folder.Release()
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
