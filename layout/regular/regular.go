// Package regular opens files that can be read to their end at once: no pipe, terminal or other
// device, which might keep who reads it waiting for ever, whatever the name led to before.
package regular

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"syscall"

	"pappus/layout/prose"
	"pappus/layout/wholefile"
	"pappus/layout/wholefolder"
)

// Errors of what a name leads to.
var (
	ErrKind  = errors.New("not a file that can be read")
	ErrLarge = errors.New("too large")
)

// Open opens the file at path, or what a link there points to, without waiting for anybody but a
// run that is just changing the folder; where one was ended amid that, the folder is put right
// first (layout/wholefolder), and a draft of the file that one left is taken away
// (layout/wholefile). An error is the system's, with EISDIR for a folder, or says what is there in place of a file and
// wraps ErrKind.
func Open(path string) (*os.File, error) {
	if err := wholefolder.Settle(filepath.Dir(path)); err != nil {
		return nil, err
	}
	sweep(path)
	if info, err := os.Stat(path); err == nil { // to open a device may do something to it
		if err := kind(path, info); err != nil {
			return nil, err
		}
	}
	f, err := os.OpenFile(path, os.O_RDONLY|syscall.O_NONBLOCK, 0)
	if err != nil {
		return nil, err
	}
	info, err := f.Stat()
	if err == nil {
		err = kind(path, info) // it may be another by now
	}
	if err != nil {
		return nil, errors.Join(err, f.Close())
	}
	return f, nil
}

// sweep takes the draft of a file away that no living run has.
func sweep(path string) {
	draft := filepath.Join(filepath.Dir(path), wholefile.Name(filepath.Base(path)))
	if info, err := os.Lstat(draft); err == nil && info.Mode().IsRegular() {
		wholefile.Sweep(draft)
	}
}

// Read reads the file at path, of so many bytes at most; of a larger one the error is ErrLarge.
func Read(path string, most int) ([]byte, error) {
	f, err := Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	data, err := io.ReadAll(io.LimitReader(f, int64(most)+1))
	if err == nil && len(data) > most {
		err = prose.Saying(fmt.Sprintf("too large; must be at most %d bytes", most), ErrLarge)
	}
	if err != nil {
		return nil, err
	}
	return data, nil
}

// kind is the error of what is no file.
func kind(path string, info fs.FileInfo) error {
	what := ""
	switch mode := info.Mode(); {
	case mode.IsRegular():
		return nil
	case mode.IsDir():
		return &fs.PathError{Op: "open", Path: path, Err: syscall.EISDIR}
	case mode&fs.ModeNamedPipe != 0:
		what = "a pipe"
	case mode&fs.ModeSocket != 0:
		what = "a socket"
	case mode&fs.ModeDevice != 0:
		what = "a device"
	default:
		what = "something else"
	}
	return prose.Saying("it is "+what+", not a file", ErrKind)
}
