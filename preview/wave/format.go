package wave

import (
	"errors"
	"fmt"
)

// Errors that Write wraps.
var (
	ErrFormat  = errors.New("unusable format")
	errTooLong = errors.New("longer than a WAV file can be (4 GiB)")
)

// Depth is how a sample is written.
type Depth int

const (
	PCM16   Depth = iota // 16 bit, dithered
	PCM24                // 24 bit, rounded
	Float32              // 32 bit floating point, unclipped
)

// bits returns the bits of a sample.
func (d Depth) bits() int { return [...]int{16, 24, 32}[d] }

// Format says what a file is to be like.
type Format struct {
	Rate     int // samples a second
	Channels int // 1: the mean of left and right; 2
	Depth    Depth
	Title    string // name of the sound, in the file's text chunk; empty: none
	Comment  string // what is heard, in words, in the same chunk; empty: none
}

// check returns an error that wraps ErrFormat where a file cannot be so.
func (f Format) check() error {
	switch {
	case f.Rate < 1 || f.Rate > 1<<24:
		return fmt.Errorf("%w: %d samples a second", ErrFormat, f.Rate)
	case f.Channels != 1 && f.Channels != 2:
		return fmt.Errorf("%w: %d channels, 1 or 2 are possible", ErrFormat, f.Channels)
	case f.Depth < PCM16 || f.Depth > Float32:
		return fmt.Errorf("%w: depth %d", ErrFormat, f.Depth)
	}
	return nil
}

// frame returns the bytes of one sample of all channels.
func (f Format) frame() int { return f.Channels * f.Depth.bits() / 8 }
