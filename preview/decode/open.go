package decode

import (
	"errors"
	"fmt"
	"os"
	"syscall"

	"pappus/layout/prose"
	"pappus/layout/regular"
)

// Limits of what is read and of the rate that may be wanted, in samples a second.
const (
	minRate, maxRate = 8000, 384000
	maxChannels      = 64
)

// sound is an opened file.
type sound struct {
	rate, channels int
	frames         int  // as the file says; 0 or less where it does not know
	short          bool // the file says that there were more
	decoder        decoder
	weights        []float64 // of channels in their mono sum
}

// decoder gives the numbers of all channels in turn.
type decoder interface {
	// read fills dst, which has room for whole frames, from one to block, with at least
	// one, a number for each channel, and returns how many frames there were. Where there
	// is none it returns 0 and an error, which is io.EOF at the end.
	read(dst []float64) (int, error)
}

// limits returns an error that wraps ErrUnsupported where a file has a rate or a
// number of channels that no recording has.
func limits(rate, channels int) error {
	if rate < minRate || rate > maxRate {
		return fmt.Errorf("%w: %d samples a second, %d to %d are possible", ErrUnsupported, rate, minRate, maxRate)
	}
	if channels < 1 || channels > maxChannels {
		return fmt.Errorf("%w: %d channels, 1 to %d are possible", ErrUnsupported, channels, maxChannels)
	}
	return nil
}

// Open opens a sound file to stream it at a rate of 8000 to 384000 samples a
// second. The file stays open until the stream is closed.
//
// Errors name the file and wrap those of this package or of os.
func Open(path string, rate int) (*Stream, error) {
	file, err := openFile(path)
	if err != nil {
		return nil, err
	}
	s, err := Read(file, rate)
	if err != nil {
		file.Close()
		return nil, fmt.Errorf("%s: %w", path, err)
	}
	s.name, s.closer = path, file
	return s, nil
}

// openFile opens a file, and nothing that might keep the caller waiting for ever.
func openFile(path string) (*os.File, error) {
	f, err := regular.Open(path)
	switch {
	case errors.Is(err, syscall.EISDIR):
		return nil, fmt.Errorf("%s: it is a folder, %w", path, ErrFormat)
	case errors.Is(err, regular.ErrKind):
		return nil, fmt.Errorf("%s: %w", path, prose.Saying(err.Error(), err, ErrFormat))
	}
	return f, err
}

// Read streams a sound file that r holds, as Open does. The
// caller closes r, and leaves it alone until the stream is done with.
func Read(r File, rate int) (*Stream, error) {
	if rate < minRate || rate > maxRate {
		return nil, fmt.Errorf("a rate of %d samples a second, %d to %d are possible", rate, minRate, maxRate)
	}
	w, kind, open, err := recognise(r)
	if err != nil {
		return nil, err
	}
	s := &Stream{kind: kind, window: w, open: open, rate: rate}
	if err := s.rewind(); err != nil {
		return nil, err
	}
	if s.sound.frames <= 0 {
		if err := s.count(); err != nil {
			return nil, err
		}
	}
	if s.frames == 0 {
		return nil, fmt.Errorf("%s: %w", kind, ErrEmpty)
	}
	return s, nil
}
