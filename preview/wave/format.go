package wave

import (
	"errors"
	"fmt"
	"strings"
)

// ErrFormat is wrapped by the error of a format that cannot be.
var ErrFormat = errors.New("unusable format")

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

// header returns what stands before so many samples.
func (f Format) header(frames int) []byte {
	form, tag := []byte(nil), uint16(1)
	if f.Depth == Float32 {
		tag = 3
	}
	form = little.AppendUint16(form, tag)
	form = little.AppendUint16(form, uint16(f.Channels))
	form = little.AppendUint32(form, uint32(f.Rate))
	form = little.AppendUint32(form, uint32(f.Rate*f.frame()))
	form = little.AppendUint16(form, uint16(f.frame()))
	form = little.AppendUint16(form, uint16(f.Depth.bits()))
	head := []byte("WAVE")
	if f.Depth == Float32 { // with an empty extension to the format
		head = chunk(chunk(head, "fmt ", append(form, 0, 0)), "fact", little.AppendUint32(nil, uint32(frames)))
	} else {
		head = chunk(head, "fmt ", form)
	}
	data := frames * f.frame()
	head = little.AppendUint32(append(head, "data"...), uint32(data))
	return append(little.AppendUint32([]byte("RIFF"), uint32(len(head)+data+data%2+len(f.text()))), head...)
}

// text returns the file's text chunk, empty where there is nothing to say.
func (f Format) text() []byte {
	if f.Title == "" && f.Comment == "" {
		return nil
	}
	info := []byte("INFO")
	for _, t := range [][2]string{{"ICMT", f.Comment}, {"INAM", f.Title}, {"ISFT", "Pappus"}} {
		if t[1] != "" { // a NUL within would end it early
			info = chunk(info, t[0], []byte(even(strings.ReplaceAll(t[1], "\x00", " ")+"\x00")))
		}
	}
	return chunk(nil, "LIST", info)
}

// even makes a text such that it fills an even number of bytes, as chunks must.
func even(text string) string { return text + "\x00"[:len(text)%2] }

// chunk appends a chunk of an even length.
func chunk(dst []byte, name string, data []byte) []byte {
	return append(little.AppendUint32(append(dst, name...), uint32(len(data))), data...)
}
