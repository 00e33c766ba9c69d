package decode

import (
	"errors"
	"fmt"
	"io"
	"math"

	"pappus/preview/resample"

	"github.com/gopxl/beep/v2"
)

// silent is the magnitude below which a whole file is silence: 80 dB below full
// scale, above the dither of 16 bits.
const silent = 1e-4

// longest is the most samples that a file can say it has: a year at the highest
// rate is less.
const longest = 1 << 44

// Stream streams a sound file, the same mono sum left and right. It is a
// beep.StreamSeekCloser, and not for several goroutines at once: open the file
// again for that.
type Stream struct {
	name   string // of the file, for errors; may be empty
	kind   string
	window *window
	open   opener
	closer io.Closer
	rate   int

	sound    sound
	frames   int // in the file
	decoded  int // of these
	peak     float64
	loudest  float64             // magnitude in any channel
	numbers  []float64           // of all channels, a block
	resample *resample.Resampler // nil where the rates are the same
	in       [block]float64
	from, to int // of in, not yet resampled
	out      [block]float64
	position int
	ended    error // what the decoder ended with
	err      error
}

var _ beep.StreamSeekCloser = (*Stream)(nil)

// Kind is "WAV", "FLAC", "MP3" or "Ogg Vorbis".
func (s *Stream) Kind() string { return s.kind }

// Format is the file's own rate and number of channels; 2 for every MP3.
func (s *Stream) Format() (rate, channels int) { return s.sound.rate, s.sound.channels }

// Stream fills samples.
func (s *Stream) Stream(samples [][2]float64) (n int, ok bool) {
	for n < len(samples) {
		got := s.next(s.out[:min(block, len(samples)-n)])
		if got == 0 {
			break
		}
		for i, v := range s.out[:got] {
			samples[n+i] = [2]float64{v, v}
		}
		n += got
	}
	return n, n > 0 || len(samples) == 0
}

// next fills dst as far as it can and moves on.
func (s *Stream) next(dst []float64) int {
	if s.err != nil {
		return 0
	}
	n := 0
	for n < len(dst) && s.fill() {
		n += s.convert(dst[n:])
	}
	if n < len(dst) && s.resample != nil {
		n += s.resample.Finish(dst[n:])
	}
	s.position += n
	if n == 0 {
		s.err = s.verdict()
	}
	return n
}

// convert brings what was decoded to the wanted rate.
func (s *Stream) convert(dst []float64) int {
	in := s.in[s.from:s.to]
	if s.resample == nil {
		n := copy(dst, in)
		s.from += n
		return n
	}
	n, took := s.resample.Process(dst, in)
	s.from += took
	return n
}

// fill decodes some more where there is nothing left, and reports whether there
// is something.
func (s *Stream) fill() bool {
	if s.from < s.to {
		return true
	}
	if s.ended != nil {
		return false
	}
	s.from = 0
	s.to, s.ended = s.decode(s.in[:])
	s.decoded += s.to
	for _, v := range s.in[:s.to] {
		s.peak = max(s.peak, math.Abs(v))
	}
	return s.to > 0
}

// decode calls the decoder, which may panic.
func (s *Stream) decode(dst []float64) (n int, err error) {
	defer guard(&err)
	n, err = s.sound.decoder.read(s.numbers)
	if n == 0 && err == nil {
		err = io.ErrNoProgress
	}
	s.loudest = max(s.loudest, mix(dst[:n], s.numbers, s.sound.weights))
	return n, err
}

// verdict is what there is to say of the file once all of it was decoded.
func (s *Stream) verdict() error {
	err := s.ended
	if errors.Is(err, io.EOF) {
		err = nil
	}
	switch {
	case err != nil:
		err = broken(err)
	case s.sound.short || s.decoded < s.frames:
		err = ErrShort
	case s.peak < silent && s.loudest >= silent:
		err = ErrCancels
	case s.peak < silent:
		err = ErrSilent
	}
	if err == nil {
		return nil
	}
	if s.name != "" {
		return fmt.Errorf("%s: %s: %w", s.name, s.kind, err)
	}
	return fmt.Errorf("%s: %w", s.kind, err)
}

// Err is what went wrong, once the stream has ended and what could be read was
// streamed: it wraps ErrBroken or ErrShort, or ErrSilent where the whole file was
// silent, or ErrCancels where only its mono sum was.
func (s *Stream) Err() error { return s.err }

// Len is how many samples the file has, at the wanted rate. A damaged file may give
// fewer.
func (s *Stream) Len() int {
	if s.resample == nil {
		return s.frames
	}
	return s.resample.Len(s.frames)
}

// Position is how many samples were streamed since the beginning.
func (s *Stream) Position() int { return s.position }

// Seek goes to a sample, from 0 to Len. The samples from there on are the same as
// those that streaming gives. It decodes all that lies between: from where the
// stream is, or from the beginning where that is behind it.
func (s *Stream) Seek(p int) error {
	if p < 0 || p > s.Len() {
		return fmt.Errorf("seek to sample %d, 0 to %d are possible", p, s.Len())
	}
	if p < s.position || s.err != nil {
		if err := s.rewind(); err != nil {
			return err
		}
	}
	for s.position < p {
		if s.next(s.out[:min(block, p-s.position)]) == 0 {
			return s.err
		}
	}
	return nil
}

// Close closes the file that Open opened.
func (s *Stream) Close() error {
	if s.closer == nil {
		return nil
	}
	return s.closer.Close()
}

// rewind goes to the beginning with a decoder anew, so that each time gives the
// same samples.
func (s *Stream) rewind() (err error) {
	defer guard(&err)
	if _, err := s.window.Seek(0, io.SeekStart); err != nil {
		return err
	}
	sound, err := s.open(s.window)
	if err != nil {
		return err
	}
	if sound.frames > longest {
		return fmt.Errorf("%s: %w: %d samples long", s.kind, ErrBroken, sound.frames)
	}
	s.sound = sound
	if sound.frames > 0 {
		s.frames = sound.frames
	}
	s.numbers = make([]float64, block*sound.channels)
	s.position, s.decoded, s.from, s.to, s.peak, s.loudest = 0, 0, 0, 0, 0, 0
	s.ended, s.err = nil, nil
	switch {
	case sound.rate == s.rate:
	case s.resample == nil:
		s.resample = resample.New(sound.rate, s.rate)
	default:
		s.resample.Reset()
	}
	return nil
}

// count finds the length of a file that does not say it.
func (s *Stream) count() error {
	for s.fill() {
		s.from = s.to
	}
	s.frames = s.decoded
	// One that is cut short is as long as what is there; its end tells.
	cut := s.frames > 0 && errors.Is(broken(s.ended), ErrShort)
	if !errors.Is(s.ended, io.EOF) && !cut {
		return s.verdict()
	}
	return s.rewind()
}
