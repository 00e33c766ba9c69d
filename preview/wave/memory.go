package wave

import (
	"errors"
	"io"
)

// memory is a file in memory, for writers that cannot go back.
type memory struct {
	data []byte
	at   int
}

func (m *memory) Write(p []byte) (int, error) {
	if end := m.at + len(p); end > len(m.data) {
		m.data = append(m.data, make([]byte, end-len(m.data))...)
	}
	m.at += copy(m.data[m.at:], p)
	return len(p), nil
}

func (m *memory) Seek(offset int64, whence int) (int64, error) {
	switch whence {
	case io.SeekCurrent:
		offset += int64(m.at)
	case io.SeekEnd:
		offset += int64(len(m.data))
	}
	if offset < 0 || offset > int64(len(m.data)) {
		return 0, errors.New("seek outside the file")
	}
	m.at = int(offset)
	return offset, nil
}
