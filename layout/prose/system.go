package prose

import (
	"context"
	"errors"
	"io/fs"
	"net"
	"os"
	"strings"
	"syscall"
)

// Reason puts what the system said of a file or a port into plain words, without the
// path: the caller has said which it is. The error that it gives wraps the one given. An
// error that the system did not give is returned as it is.
func Reason(err error) error {
	text, ok := cause(err)
	if !ok {
		return err
	}
	return Saying(text, err)
}

// Saying returns an error of a text that says all there is to say of others, which it
// wraps.
func Saying(text string, of ...error) error { return saying{text, of} }

type saying struct {
	text string
	of   []error
}

func (s saying) Error() string   { return s.text }
func (s saying) Unwrap() []error { return s.of }

// said is what the errors of systems mean. Those of package fs stand for each system's
// own, and come after what they would hide.
var said = []struct {
	err  error
	text string
}{
	{context.Canceled, "stopped"},
	{context.DeadlineExceeded, "it took too long"},
	{syscall.EISDIR, "it is a folder, not a file"},
	{syscall.ENOTDIR, "what should be a folder there is a file"},
	{syscall.ENOSPC, "the disk is full"},
	{syscall.EROFS, "the disk can be read but not written"},
	{syscall.ENAMETOOLONG, "the name is too long"},
	{syscall.EMFILE, "too many files are open"},
	{syscall.ELOOP, "the links there lead round in a circle"},
	{syscall.ENOTEMPTY, "the folder is not empty"},
	{syscall.EADDRINUSE, "another program answers there; take another port, or 0 for any that is free"},
	{syscall.EIO, "the disk does not answer as it should"},
	{fs.ErrNotExist, "there is no such file"},
	{fs.ErrExist, "it is there already"},
	{fs.ErrPermission, "the system does not allow it; look at who may read and write there"},
	{fs.ErrClosed, "it was closed already"},
}

// cause returns what an error of the system means, and whether it is one.
func cause(err error) (text string, ok bool) {
	for _, s := range said {
		if errors.Is(err, s.err) {
			return s.text + instead(err), true
		}
	}
	var number syscall.Errno
	if errors.As(err, &number) {
		return "the system says: " + number.Error(), true
	}
	return "", false
}

// Error returns the text of an error with what the system said in it in plain words and
// without the names of system calls, on one line.
func Error(err error) string {
	if err == nil {
		return ""
	}
	text := strings.Join(strings.Fields(err.Error()), " ")
	each(err, func(e error) {
		plain, ok := inWords(e)
		if !ok {
			return
		}
		// "a.csv: open a.csv: ..." names the file once.
		text = strings.ReplaceAll(text, strings.Join(strings.Fields(e.Error()), " "), plain)
		if path, _, more := strings.Cut(plain, ": "); more {
			text = strings.ReplaceAll(text, path+": "+path+": ", path+": ")
		}
	})
	return text
}

// inWords puts one error of the system into words, and says whether it is one.
func inWords(err error) (string, bool) {
	about := ""
	switch e := err.(type) {
	case *fs.PathError:
		about = e.Path
	case *os.LinkError:
		about = e.New
	case *os.SyscallError, *net.OpError, syscall.Errno:
	default:
		if err != context.Canceled && err != context.DeadlineExceeded {
			return "", false
		}
	}
	text, ok := cause(err)
	if ok && about != "" {
		text = about + ": " + text
	}
	return text, ok
}

// each visits an error and all that it wraps, outermost first.
func each(err error, visit func(error)) {
	visit(err)
	switch e := err.(type) {
	case interface{ Unwrap() error }:
		if inner := e.Unwrap(); inner != nil {
			each(inner, visit)
		}
	case interface{ Unwrap() []error }:
		for _, inner := range e.Unwrap() {
			each(inner, visit)
		}
	}
}
