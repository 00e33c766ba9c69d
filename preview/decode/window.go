package decode

import (
	"bufio"
	"errors"
	"io"
)

// window is a stretch of a file, read through a buffer: decoders read few bytes
// at a time.
type window struct {
	file       io.ReadSeeker
	start, end int64
	at         int64 // of the next byte, from start
	buffer     *bufio.Reader
}

// newWindow stands at the beginning of its stretch.
func newWindow(file io.ReadSeeker, start, end int64) (*window, error) {
	w := &window{file: file, start: start, end: end, buffer: bufio.NewReaderSize(nil, 1<<15)}
	return w, w.jump(0)
}

func (w *window) size() int64 { return w.end - w.start }

func (w *window) Read(p []byte) (int, error) {
	n, err := w.buffer.Read(p)
	w.at += int64(n)
	return n, err
}

func (w *window) Seek(offset int64, whence int) (int64, error) {
	switch whence {
	case io.SeekCurrent:
		offset += w.at
	case io.SeekEnd:
		offset += w.size()
	}
	if offset < 0 {
		return w.at, errors.New("seek before the beginning")
	}
	if ahead := offset - w.at; ahead >= 0 && ahead <= int64(w.buffer.Buffered()) {
		_, err := w.buffer.Discard(int(ahead))
		w.at = offset
		return w.at, err
	}
	err := w.jump(offset)
	return w.at, err
}

// jump goes to an offset and forgets what was read ahead.
func (w *window) jump(offset int64) error {
	if _, err := w.file.Seek(w.start+offset, io.SeekStart); err != nil {
		return err
	}
	w.at = offset
	w.buffer.Reset(io.LimitReader(w.file, max(0, w.size()-offset)))
	return nil
}
