package decode

import (
	"errors"
	"fmt"
	"io"

	"pappus/layout/prose"
)

// Errors that Open, Read and a Stream's Err wrap.
var (
	ErrFormat      = errors.New("not a WAV, FLAC, MP3 or Ogg Vorbis file")
	ErrUnsupported = errors.New("a kind of sound file that cannot be read")
	ErrBroken      = errors.New("damaged")
	ErrShort       = errors.New("cut short")
	ErrEmpty       = errors.New("holds no sound")
	ErrSilent      = errors.New("holds nothing but silence")
	ErrCancels     = errors.New("left and right cancel in the mono sum")
)

// broken says that a decoder gave up: at the end of the file because it is cut
// short, elsewhere because it is damaged.
func broken(err error) error {
	switch {
	case err == nil, errors.Is(err, ErrUnsupported), errors.Is(err, ErrBroken), errors.Is(err, ErrShort):
		return err
	case errors.Is(err, io.EOF), errors.Is(err, io.ErrUnexpectedEOF):
		return ErrShort
	}
	return prose.Saying(ErrBroken.Error(), ErrBroken, err) // a library's words say nothing to a listener
}

// guard turns a decoder's panic into an error. The decoders are libraries, and a
// file can hold anything.
func guard(err *error) {
	if p := recover(); p != nil {
		*err = prose.Saying(ErrBroken.Error(), ErrBroken, fmt.Errorf("%v", p))
	}
}
